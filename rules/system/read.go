package system

import (
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
	"unicode"

	"cutbrief/rules/csvfile"
)

// Limits of a file. They keep a wrong or hostile file from costing memory.
const (
	MaxBytes   = csvfile.MaxBytes // size of the file
	MaxSystems = 500              // rows, damaged ones included
	maxColumns = 60               // cells in the header
)

// Read reads a range from a CSV file (RFC 4180, UTF-8, one system a line) and
// checks every line. name is what the range is called, such as the file's base
// name. Columns may come in any order; lines that start with # are comments.
//
// A row with an error is left out of the range, and every finding is returned,
// in the order of the file. A range read with errors is incomplete: show them
// before using it. Reading stops at the limits, with an error that says so.
func Read(r io.Reader, name string) (Range, []Finding) {
	f := &file{out: Range{Name: name, lines: map[string]int{}}, ids: map[string]int{}, names: map[string]int{}}
	text, problem, accepted := load(r)
	if problem != "" {
		f.report(0, "", Error, problem, accepted)
		return f.out, f.findings
	}
	csvfile.Each(text, f.line)
	f.finish()
	return f.out, f.findings
}

// load reads the whole file, but never more than the limit.
func load(r io.Reader) (text, problem, accepted string) {
	text, err := csvfile.Load(r)
	switch {
	case errors.Is(err, csvfile.ErrLarge):
		return "", err.Error(), fmt.Sprintf("at most %d systems in at most 1 MiB", MaxSystems)
	case err != nil:
		return "", err.Error(), csvfile.Loadable(err)
	}
	return text, "", ""
}

// file is a file while it is read.
type file struct {
	out      Range
	findings []Finding
	header   []heading // nil until the header was read
	broken   bool      // the header lacks something: check rows, keep none
	rows     int
	ids      map[string]int // line of each ID, refused rows included
	names    map[string]int // line of each name, in lower case
}

// heading is one cell of the header. column is nil for an unknown one.
type heading struct {
	name   string
	column *column
}

func (f *file) report(line int, column string, severity Severity, problem, accepted string) {
	f.findings = append(f.findings, Finding{Line: line, Column: column, Severity: severity, Problem: problem, Accepted: accepted})
}

// line takes the next line in and reports whether to go on.
func (f *file) line(n int, text string) bool {
	if csvfile.Skipped(text) {
		return true
	}
	cells, bad, problem := csvfile.Split(text)
	if f.header == nil {
		if problem != "" {
			f.report(n, "", Error, fmt.Sprintf("cell %d of the header %s", bad+1, problem), "the names of the columns, with commas between")
			return false
		}
		return f.readHeader(n, cells)
	}
	if f.rows++; f.rows > MaxSystems {
		f.report(n, "", Error, fmt.Sprintf("has more than %d systems; this line and those after it were not read", MaxSystems), "")
		return false
	}
	if problem != "" {
		f.report(n, f.columnName(bad), Error, problem, `text without quotes, or "in quotes" with each inner quote doubled`)
		return true
	}
	f.readRow(n, cells)
	return true
}

// columnName names the i-th cell of a row, as in the header where it has one.
func (f *file) columnName(i int) string {
	if i < len(f.header) && f.header[i].name != "" {
		return f.header[i].name
	}
	return fmt.Sprint("no ", i+1)
}

func (f *file) finish() {
	switch {
	case f.header == nil && len(f.findings) == 0:
		f.report(0, "", Error, "has no header row", "a first line with the names of the columns; start from the template")
	case f.header != nil && f.rows == 0:
		f.report(0, "", Error, "holds no systems", "at least one row under the header")
	}
}

// readHeader takes the header in and reports whether rows can be read by it.
func (f *file) readHeader(n int, cells []string) bool {
	if len(cells) == 1 && strings.ContainsAny(cells[0], ";\t") {
		f.report(n, "", Error, "has its cells separated by semicolons or tabs", "commas between cells")
		return false
	}
	if len(cells) > maxColumns {
		f.report(n, "", Error, fmt.Sprintf("has more than %d columns", maxColumns), columnNames())
		return false
	}
	known := columns()
	seen := map[*column]bool{}
	for _, text := range cells {
		f.header = append(f.header, f.heading(n, text, known, seen))
	}
	f.missing(n, known, seen)
	return true
}

// heading finds the column that a header cell names.
func (f *file) heading(n int, text string, known []column, seen map[*column]bool) heading {
	if problem := csvfile.Flaw(text); problem != "" {
		f.report(n, "", Error, "column name "+csvfile.Quoted(text)+" "+problem, "")
		f.broken = true
		return heading{}
	}
	name := csvfile.Fold(text)
	base, currency := inCurrency(name)
	i := slices.IndexFunc(known, func(c column) bool { return c.name == base })
	switch {
	case i < 0 && name == "":
		return heading{}
	case i < 0:
		f.report(n, shown(name), Warning, "is not a column this program knows, so it is not read", columnNames())
		return heading{name: shown(name)}
	case seen[&known[i]]:
		f.report(n, name, Error, "is there twice", "one column of this name")
		f.broken = true
	}
	seen[&known[i]] = true
	if base == colPrice {
		f.out.Currency = currency
	}
	return heading{name, &known[i]}
}

// inCurrency takes price_eur apart into price and EUR (a code of ISO 4217).
func inCurrency(name string) (base, currency string) {
	code, ok := strings.CutPrefix(name, colPrice+"_")
	if ok && csvfile.IsCurrency(strings.ToUpper(code)) {
		return colPrice, strings.ToUpper(code)
	}
	return name, ""
}

// missing reports the columns that are not in the header.
func (f *file) missing(n int, known []column, seen map[*column]bool) {
	for i := range known {
		c := &known[i]
		switch {
		case seen[c] || c.name == colInvented:
		case c.required:
			f.report(n, c.name, Error, "is missing, so no row can be used", "a column "+c.name+" with "+c.accepted)
			f.broken = true
		default:
			f.report(n, c.name, Note, "is missing: not known for any system", "")
		}
	}
	if i := slices.IndexFunc(f.header, func(h heading) bool { return h.name == colPrice }); i >= 0 {
		f.report(n, colPrice, Warning, "names no currency", "price_eur, price_usd and the like")
	}
}

// shown is an unknown column's name, fit for a finding's Column.
func shown(name string) string {
	if r := []rune(name); len(r) > maxID {
		name = string(r[:maxID-1]) + "…"
	}
	return strings.Map(func(r rune) rune {
		if unicode.IsPrint(r) {
			return r
		}
		return '?'
	}, name)
}

func columnNames() string {
	var names []string
	for _, c := range columns() {
		names = append(names, c.name)
	}
	return strings.Join(names, ", ")
}
