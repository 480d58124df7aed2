package review

import (
	"cmp"
	"hash/maphash"
	"slices"
	"strings"

	"cutbrief/assess"
	"cutbrief/rules/message"
)

// overdue raises the flag of a next step that is past on a day. It is no part of
// what the index keeps.
func (r *Row) overdue(day string) {
	settled := r.Outcome == string(assess.Ordered) || r.Outcome == string(assess.No)
	if r.Due != "" && r.Due < day && !settled {
		r.raise(Overdue, message.New("the next step was due on {1}", message.Name(r.Due)))
	}
}

// customerSum is the sum of a customer's name, and which row has it.
type customerSum struct {
	sum uint64
	row int32
}

// Together raises the flag that no file shows by itself, once all rows are there:
// the same customer twice.
func (rows *Rows) Together() {
	names := make([]customerSum, 0, rows.Len())
	seed := maphash.MakeSeed()
	for i, e := range rows.entries.all() {
		if name := customer(e.row.Company); name != "" {
			names = append(names, customerSum{maphash.String(seed, name), int32(i)})
		}
	}
	slices.SortFunc(names, func(a, b customerSum) int { return cmp.Or(cmp.Compare(a.sum, b.sum), cmp.Compare(a.row, b.row)) })
	for len(names) > 0 {
		n := 1
		for n < len(names) && names[n].sum == names[0].sum {
			n++
		}
		if n > 1 {
			rows.twice(names[:n])
		}
		names = names[n:]
	}
}

// twice goes through rows whose names have the same sum, which nearly always means
// that the names are the same. The reason names the first row by its path, or the
// second for the first itself.
func (rows *Rows) twice(list []customerSum) {
	slices.SortFunc(list, func(a, b customerSum) int { return strings.Compare(rows.Path(int(a.row)), rows.Path(int(b.row))) })
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
	r, too := rows.At(int(i)), rows.At(int(other))
	if r.Flags.Has(Twice) {
		return
	}
	r.raise(Twice, message.New("also in {1}", message.Name(too.ShownPath())))
	rows.entries.set(int(i), &entry{path: r.Path, row: r})
}

// customer is a company's name as it is compared: capitals, spaces and marks do
// not tell two customers apart.
func customer(name string) string {
	return strings.Join(strings.FieldsFunc(strings.ToLower(name), func(r rune) bool { return strings.ContainsRune(" .,&'’-", r) }), " ")
}
