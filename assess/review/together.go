package review

import (
	"strings"
	"time"

	"cutbrief/assess"
)

// Together raises the flags that no file shows by itself, once all rows are
// there: the same customer twice, and a next step that is overdue today. It
// changes the rows.
func Together(rows []*Row, today time.Time) {
	first := make(map[string]*Row, len(rows))
	day := today.Format(time.DateOnly)
	for _, r := range rows {
		if r.Due != "" && r.Due < day && !settledSale(r.Outcome) {
			r.raise(Overdue, "the next step was due on "+r.Due)
		}
		name := customer(r.Company)
		if name == "" {
			continue
		}
		other, twice := first[name]
		if !twice {
			first[name] = r
			continue
		}
		r.raise(Twice, "also in "+other.Path)
		other.raise(Twice, "also in "+r.Path)
	}
}

// settledSale reports an outcome after which nothing is waiting.
func settledSale(outcome string) bool {
	return outcome == string(assess.Ordered) || outcome == string(assess.No)
}

// customer is a company's name as it is compared: capitals, spaces and marks do
// not tell two customers apart.
func customer(name string) string {
	return strings.Join(strings.FieldsFunc(strings.ToLower(name), func(r rune) bool { return strings.ContainsRune(" .,&'’-", r) }), " ")
}
