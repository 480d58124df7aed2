package review

import (
	"cmp"
	"hash/maphash"
	"slices"
	"strings"
	"time"

	"cutbrief/assess"
)

// Together raises the flags that no file shows by itself, once all rows are
// there: the same customer twice, and a next step that is overdue today.
func (rows *Rows) Together(today time.Time) {
	changed := map[int32]*Row{}
	raise := func(i int32, f Flag, reason string) {
		if changed[i] == nil {
			r := rows.At(int(i))
			changed[i] = &r
		}
		changed[i].raise(f, reason)
	}
	day, i := today.Format(time.DateOnly), int32(-1)
	names := make([]named, 0, rows.Len())
	seed := maphash.MakeSeed()
	for r := range rows.All() {
		i++
		if r.Due != "" && r.Due < day && !settledSale(r.Outcome) {
			raise(i, Overdue, "the next step was due on "+r.Due)
		}
		if name := customer(r.Company); name != "" {
			names = append(names, named{maphash.String(seed, name), i})
		}
	}
	rows.twice(names, func(i, other int32) { raise(i, Twice, "also in "+rows.Path(int(other))) })
	for i, r := range changed {
		rows.put(int(i), r)
	}
}

// named is the sum of a customer's name, and which row has it.
type named struct {
	sum uint64
	row int32
}

// twice tells of each row whose customer another has too which other: the first
// by its path, or the second for the first itself.
func (rows *Rows) twice(names []named, tell func(row, other int32)) {
	slices.SortFunc(names, func(a, b named) int {
		return cmp.Or(cmp.Compare(a.sum, b.sum), cmp.Compare(a.row, b.row))
	})
	for len(names) > 0 {
		n := 1
		for n < len(names) && names[n].sum == names[0].sum {
			n++
		}
		if n > 1 {
			rows.alike(names[:n], tell)
		}
		names = names[n:]
	}
}

// alike tells of rows whose names have the same sum, which nearly always means
// that the names are the same.
func (rows *Rows) alike(list []named, tell func(row, other int32)) {
	slices.SortFunc(list, func(a, b named) int { return strings.Compare(rows.Path(int(a.row)), rows.Path(int(b.row))) })
	first := map[string]int32{}
	told := map[int32]bool{}
	for _, one := range list {
		name := customer(rows.At(int(one.row)).Company)
		other, twice := first[name]
		if !twice {
			first[name] = one.row
			continue
		}
		tell(one.row, other)
		if !told[other] {
			tell(other, one.row)
			told[other] = true
		}
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
