package system

import (
	"fmt"
	"maps"
	"strings"

	"cutbrief/rules/csvfile"
)

// row is one row while it is read.
type row struct {
	line     int
	system   System
	findings []Finding
	invented bool
	refused  map[string]bool // columns with an error: no check builds on them
}

func (r *row) report(severity Severity, column, problem, accepted string) {
	if severity == Error {
		r.refused[column] = true
	}
	r.findings = append(r.findings, Finding{Line: r.line, Column: column, Row: r.system.ID, Severity: severity, Problem: problem, Accepted: accepted})
}

// readRow reads and checks one row. It joins the range only without an error.
func (f *file) readRow(n int, cells []string) {
	r := &row{line: n, refused: map[string]bool{}}
	if f.fits(r, cells) {
		for i, h := range f.header {
			r.read(h, strings.TrimSpace(cells[i]))
		}
		r.check()
		f.unique(r)
	}
	for i := range r.findings {
		r.findings[i].Row = r.system.ID
	}
	f.findings = append(f.findings, r.findings...)
	if !f.broken && len(r.refused) == 0 {
		f.out.Systems = append(f.out.Systems, r.system)
		f.out.Invented = f.out.Invented || r.invented
		f.out.lines[r.system.ID] = n
	}
}

// fits checks the number of cells; blank ones past the last column do no harm.
func (f *file) fits(r *row, cells []string) bool {
	for len(cells) > len(f.header) && strings.TrimSpace(cells[len(cells)-1]) == "" {
		cells = cells[:len(cells)-1]
	}
	if len(cells) == len(f.header) {
		return true
	}
	accepted := "one cell for each column, blank where nothing is known"
	if len(cells) > len(f.header) {
		accepted += "; a cell with a comma in it stands in quotes, and decimals have a point"
	}
	r.report(Error, "", fmt.Sprintf("has %d cells where the header has %d", len(cells), len(f.header)), accepted)
	return false
}

// read reads one cell into the row's system.
func (r *row) read(h heading, text string) {
	if h.column == nil {
		return
	}
	c := &cell{text: text, column: h.column, name: h.name, system: &r.system, row: r}
	switch problem := csvfile.Flaw(text); {
	case problem != "":
		c.refuse("%s %s", csvfile.Quoted(text), problem)
	case text == "" && h.column.required:
		c.refuse("is blank")
	default:
		h.column.read(c)
	}
}

// check adds what Check finds, save where a cell it builds on was refused.
func (r *row) check() {
	unread := maps.Clone(r.refused)
	for _, f := range Check(r.system) {
		if !unread[f.Column] {
			r.report(f.Severity, f.Column, f.Problem, f.Accepted)
		}
	}
}

// unique reports an ID or a name that an earlier row has. A row that was
// refused for something else still counts, so that the repair shows no news.
func (f *file) unique(r *row) {
	id, name := r.system.ID, strings.ToLower(r.system.Name)
	if first, taken := f.ids[id]; taken && id != "" {
		r.report(Error, colID, fmt.Sprintf("%s is the id of line %d too", csvfile.Quoted(id), first), "an id of its own for every system")
	} else {
		f.ids[id] = r.line
	}
	if first, taken := f.names[name]; taken && name != "" {
		r.report(Warning, colName, fmt.Sprintf("%s is the name of line %d too", csvfile.Quoted(r.system.Name), first), "")
	} else {
		f.names[name] = r.line
	}
}
