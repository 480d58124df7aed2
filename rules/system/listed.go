package system

import "strings"

// Column is what the file says in one column.
type Column struct {
	Name     string // with its unit, where it has one
	Required bool   // every row must fill it
	Means    string
	Accepts  string
}

// Columns returns the columns in the order they are written.
func Columns() []Column {
	var list []Column
	for _, c := range columns() {
		list = append(list, Column{title(c, exampleCurrency), c.required, strings.Join(c.means, " "), c.accepted})
	}
	return list
}
