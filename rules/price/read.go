package price

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"cutbrief/rules/csvfile"
)

// maxRows keeps a wrong file from costing memory.
const maxRows = 200

// The columns of a file.
const (
	colItem   = "item"
	colUnit   = "unit"
	colLow    = "low"
	colLikely = "likely"
	colHigh   = "high"
	colBasis  = "basis"
	colNote   = "note"
)

var columns = []string{colItem, colUnit, colLow, colLikely, colHigh, colBasis, colNote}

// The rows that say what the list is; their text stands in the column likely.
const (
	rowCurrency = "currency"
	rowDate     = "date"
	rowPlace    = "place"
)

// Read reads a price list from a CSV file (RFC 4180, UTF-8, one price a line)
// and checks every line. name is what the list is called, such as the file's
// base name. Columns may come in any order; lines that start with # are
// comments. A line with an error is left out of the list.
func Read(r io.Reader, name string) (List, []csvfile.Finding) {
	f := &file{out: List{Name: name, prices: map[ID]Price{}}, seen: map[string]int{}}
	text, err := csvfile.Load(r)
	if err != nil {
		f.report(0, "", "", csvfile.Error, err.Error(), csvfile.Loadable(err))
		return f.out, f.findings
	}
	if !csvfile.Each(text, f.line) {
		return f.out, f.findings
	}
	f.finish()
	return f.out, f.findings
}

// file is a file while it is read.
type file struct {
	out      List
	findings []csvfile.Finding
	header   []string // folded names; nil until the header was read
	seen     map[string]int
	rows     int
}

func (f *file) report(line int, column, row string, severity csvfile.Severity, problem, accepted string) {
	f.findings = append(f.findings, csvfile.Finding{Line: line, Column: column, Row: row, Severity: severity, Problem: problem, Accepted: accepted})
}

// line takes the next line in and reports whether to go on.
func (f *file) line(n int, text string) bool {
	if csvfile.Skipped(text) {
		return true
	}
	cells, _, problem := csvfile.Split(text)
	if f.header == nil {
		return f.readHeader(n, cells, problem)
	}
	if f.rows++; f.rows > maxRows {
		f.report(n, "", "", csvfile.Error, fmt.Sprintf("has more than %d lines; this one and those after it were not read", maxRows), "")
		return false
	}
	switch {
	case problem != "":
		f.report(n, "", "", csvfile.Error, "a cell "+problem, `text without quotes, or "in quotes" with each inner quote doubled`)
	case len(cells) > len(f.header) && strings.Join(cells[len(f.header):], "") != "":
		f.report(n, "", "", csvfile.Error, fmt.Sprintf("has %d cells where the header has %d", len(cells), len(f.header)),
			"a cell with a comma in it stands in quotes, and decimals have a point")
	default:
		f.readRow(n, cells)
	}
	return true
}

// readHeader takes the header in and reports whether rows can be read by it.
func (f *file) readHeader(n int, cells []string, problem string) bool {
	for _, c := range cells {
		f.header = append(f.header, csvfile.Fold(c))
	}
	for _, c := range columns {
		known := slices.Contains(f.header, c)
		switch {
		case known && slices.Index(f.header, c) != lastIndex(f.header, c):
			problem = "names the column " + c + " twice"
		case !known && (c == colItem || c == colLikely):
			problem = "lacks the column " + c
		case !known:
			f.report(n, c, "", csvfile.Note, "is missing", "")
		}
	}
	if problem != "" {
		f.report(n, "", "", csvfile.Error, "the header "+problem, "a first line with commas: "+strings.Join(columns, ","))
		return false
	}
	for _, h := range f.header {
		if h != "" && !slices.Contains(columns, h) {
			f.report(n, "", "", csvfile.Warning, "column "+csvfile.Quoted(h)+" is not one this program knows, so it is not read", strings.Join(columns, ", "))
		}
	}
	return true
}

func lastIndex(list []string, s string) int {
	for i := len(list) - 1; i >= 0; i-- {
		if list[i] == s {
			return i
		}
	}
	return -1
}

// finish says what the list lacks.
func (f *file) finish() {
	if f.header == nil {
		f.report(0, "", "", csvfile.Error, "has no header row", "a first line "+strings.Join(columns, ",")+"; start from the template")
		return
	}
	if f.seen[rowCurrency] == 0 {
		f.report(0, "", rowCurrency, csvfile.Error, "names no currency", "a line such as currency,,,EUR")
	}
	for _, row := range []string{rowDate, rowPlace} {
		if f.seen[row] == 0 {
			f.report(0, "", row, csvfile.Warning, "says no "+row+", and prices differ by it", "a line such as "+row+",,,"+example(row))
		}
	}
	for _, i := range items {
		if f.seen[string(i.ID)] == 0 {
			f.report(0, "", string(i.ID), csvfile.Note, "has no line for "+string(i.ID)+": not known", "")
		}
	}
}

func example(row string) string {
	if row == rowDate {
		return "2026-01-31"
	}
	return "Velmoor"
}
