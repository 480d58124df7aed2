package review

import (
	"strings"
	"time"

	"cutbrief/assess"
)

// Together raises the flags that no file shows by itself, once all rows are
// there: the same customer twice, and a next step that is overdue today. It puts
// changed copies in the place of rows and leaves the rows themselves alone, which
// others may be reading.
func Together(rows []*Row, today time.Time) {
	first := make(map[string]int, len(rows))
	changed := map[int]bool{}
	raise := func(i int, f Flag, reason string) {
		if !changed[i] {
			own := *rows[i]
			rows[i], changed[i] = &own, true
		}
		rows[i].raise(f, reason)
	}
	day := today.Format(time.DateOnly)
	for i, r := range rows {
		if r.Due != "" && r.Due < day && !settledSale(r.Outcome) {
			raise(i, Overdue, "the next step was due on "+r.Due)
		}
		name := customer(r.Company)
		if name == "" {
			continue
		}
		other, twice := first[name]
		if !twice {
			first[name] = i
			continue
		}
		raise(i, Twice, "also in "+rows[other].Path)
		raise(other, Twice, "also in "+r.Path)
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
