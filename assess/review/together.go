package review

import (
	"cmp"
	"hash/maphash"
	"slices"
	"strings"

	"cutbrief/assess"
)

// overdue raises the flag of a next step that is past on a day. It is no part of
// what the index keeps.
func (r *Row) overdue(day string) {
	if r.Due != "" && r.Due < day && !settledSale(r.Outcome) {
		r.raise(Overdue, "the next step was due on "+r.Due)
	}
}

// Together raises the flag that no file shows by itself, once all rows are there:
// the same customer twice.
func (rows *Rows) Together() {
	names := make([]named, 0, rows.Len())
	seed, i := maphash.MakeSeed(), int32(0)
	for r := range rows.All() {
		if name := customer(r.Company); name != "" {
			names = append(names, named{maphash.String(seed, name), i})
		}
		i++
	}
	rows.twice(names)
}

// named is the sum of a customer's name, and which row has it.
type named struct {
	sum uint64
	row int32
}

// twice raises the flag of each row whose customer another has too.
func (rows *Rows) twice(names []named) {
	slices.SortFunc(names, func(a, b named) int {
		return cmp.Or(cmp.Compare(a.sum, b.sum), cmp.Compare(a.row, b.row))
	})
	for len(names) > 0 {
		n := 1
		for n < len(names) && names[n].sum == names[0].sum {
			n++
		}
		if n > 1 {
			rows.alike(names[:n])
		}
		names = names[n:]
	}
}

// alike goes through rows whose names have the same sum, which nearly always means
// that the names are the same. The reason names the first row by its path, or the
// second for the first itself.
func (rows *Rows) alike(list []named) {
	slices.SortFunc(list, func(a, b named) int { return strings.Compare(rows.Path(int(a.row)), rows.Path(int(b.row))) })
	first := map[string]int32{}
	for _, one := range list {
		name := customer(rows.At(int(one.row)).Company)
		other, twice := first[name]
		if !twice {
			first[name] = one.row
			continue
		}
		rows.also(one.row, other)
		rows.also(other, one.row) // unless it was the first of two already
	}
}

// also raises the flag of a row that another is about the same customer.
func (rows *Rows) also(i, other int32) {
	r := rows.At(int(i))
	if r.Flags.Has(Twice) {
		return
	}
	r.raise(Twice, "also in "+shownPath(rows.Path(int(other))))
	rows.put(int(i), &r)
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
