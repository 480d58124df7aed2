package price

import (
	"encoding/csv"
	"fmt"
	"strconv"
	"strings"
)

// Template returns an example file to start from: every item explained, then
// the demo list, marked as invented.
func Template() string {
	var b strings.Builder
	b.WriteString(preface)
	for _, i := range items {
		fmt.Fprintf(&b, "#   %-15s %s\n", i.ID, strings.TrimSpace(string(i.Name)+", for each "+unitNames(i)+means(i)))
	}
	b.WriteString(epilogue)
	b.WriteString(Demo().csv())
	return b.String()
}

// means is the rest of what an item says of itself.
func means(i Item) string {
	if i.Means == "" {
		return ""
	}
	return ": " + string(i.Means)
}

// csv writes the list as Read reads it.
func (l List) csv() string {
	var b strings.Builder
	out := csv.NewWriter(&b)
	_ = out.Write(columns) // a strings.Builder takes everything
	for _, row := range [][2]string{{rowCurrency, l.Currency}, {rowDate, l.Date}, {rowPlace, l.Place}} {
		_ = out.Write([]string{row[0], "", "", row[1], "", "", ""})
	}
	for _, i := range items {
		if p, ok := l.prices[i.ID]; ok {
			_ = out.Write([]string{string(i.ID), i.Unit(), figure(p.Low), figure(p.Likely), figure(p.High), string(p.Basis), p.Note})
		}
	}
	out.Flush()
	return b.String()
}

func figure(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

// The text around the items is plain ASCII: some spreadsheets misread more.
const preface = `# Your prices: one a line, commas between cells. Lines that start with # are
# comments. Replace the example lines by your customer's prices or your own.
#
# Each has a low, a likely and a high figure, in the currency of the list and for
# the unit named; decimals have a point. Leave a line out if the price is not
# known; never write 0 for it. basis is customer, own, public, practice or
# invented; public figures say in the note whose they are and of when.
#
# Items and their units:
`

const epilogue = `#
# The lines below are an invented example.
`
