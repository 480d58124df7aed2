package tabular

import (
	"encoding/csv"
	"errors"
	"io"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"cutbrief/rules/message"
)

// maxColumns is how many cells a header may have. It keeps a wrong file from
// costing memory, as MaxBytes does.
const maxColumns = 60

// Column is one column of a list of T: what its cells mean, what they take, and
// how one is read and written. A unit in the name is the unit of a number that
// stands without one.
type Column[T any] struct {
	Name     string
	Required bool       // it must be there, and every row must fill it
	Blank    bool       // its cells may yet be blank
	Optional bool       // nothing is said where the header has not got it
	Means    message.ID // what it is about, for the template
	Accepts  message.ID // what a cell takes, for findings; "" if the problem says it
	Read     func(*Cell, *T)
	Write    func(*T) string
}

// TextColumn is a column whose cells are kept as they are.
func TextColumn[T any](name string, accepts message.ID, field func(*T) *string) Column[T] {
	return Column[T]{Name: name, Accepts: accepts,
		Read:  func(c *Cell, value *T) { *field(value) = c.Text },
		Write: func(value *T) string { return *field(value) }}
}

// Format is how a list of T is kept as a file. Its columns may come in any order.
type Format[T any] struct {
	Columns []Column[T]
	MaxRows int                             // damaged ones included
	Ragged  bool                            // a row may leave its last cells away
	Missing message.ID                      // said of a column that is not there and need not be
	Empty   message.ID                      // said of a header without rows; "" if there may be none
	Base    func(heading string) string     // the column that a folded heading names; nil if they are the same
	Headed  func(header []string) []Finding // judges the folded headings; may be nil
	Name    func(*T) string                 // what a row is called in findings; may be nil
	Check   func(*Row[T])                   // judges a row whose cells were read; may be nil
}

// Row is one row of a list while it is read.
type Row[T any] struct {
	Line     int
	Value    T
	refused  map[string]bool // columns with an error
	findings []Finding
}

// Refused reports whether the column has an error, so that no check builds on it.
func (r *Row[T]) Refused(column string) bool { return r.refused[column] }

// Sound reports whether the row has no error so far.
func (r *Row[T]) Sound() bool { return len(r.refused) == 0 }

// Report adds a finding about the row. One that is an error keeps the row out of
// the list.
func (r *Row[T]) Report(f Finding) {
	if f.Severity == Error {
		if r.refused == nil {
			r.refused = map[string]bool{}
		}
		r.refused[f.Column] = true
	}
	f.Line = r.Line
	r.findings = append(r.findings, f)
}

// Cell is one cell of a row while it is read.
type Cell struct {
	Text     string // without spaces around it
	Required bool   // as its column
	heading  string
	accepts  message.ID
	report   func(Finding)
}

// Refuse reports an error in the cell, and what its column takes.
func (c *Cell) Refuse(problem message.ID, args ...any) {
	c.RefuseFor(c.accepts.Message(), problem, args...)
}

// RefuseFor is Refuse with what would be accepted in this very case.
func (c *Cell) RefuseFor(accepted message.Message, problem message.ID, args ...any) {
	c.report(Finding{Column: c.heading, Severity: Error, Problem: message.New(problem, args...), Accepted: accepted})
}

// Note says what was assumed of the cell.
func (c *Cell) Note(problem message.ID, args ...any) {
	c.report(Finding{Column: c.heading, Severity: Note, Problem: message.New(problem, args...)})
}

// Quoted is the text of the cell for a finding.
func (c *Cell) Quoted() message.Name { return message.Name(Quoted(c.Text)) }

// List is what was read of a file.
type List[T any] struct {
	Rows     []Row[T] // those without an error, in the order of the file
	Header   []string // the headings, folded; nil where there is no header
	Findings []Finding
	Complete bool // the header is in order and every line was read
}

// Read reads a list from a CSV file (RFC 4180, UTF-8, one row a line), or from the
// first sheet of a workbook, and checks every line. Lines that start with # are
// comments. A row with an error is left
// out; with a broken header all are, and yet checked. Findings are in the order of
// the file. Reading stops at the limits, with an error that says so.
func (f *Format[T]) Read(r io.Reader) List[T] {
	rd := &reader[T]{format: f}
	text, err := Load(r)
	if err != nil {
		accepted := Loadable(err)
		if errors.Is(err, ErrLarge) {
			accepted = message.New("at most {1} rows in at most 1 MiB", message.Figure(strconv.Itoa(f.MaxRows)))
		}
		rd.report(Finding{Severity: Error, Problem: message.Of(err), Accepted: accepted})
		return rd.list
	}
	var all bool
	if IsWorkbook([]byte(text)) {
		all = rd.sheet([]byte(text))
	} else {
		all = Each(text, rd.line)
	}
	rd.list.Complete = all && !rd.broken && rd.list.Header != nil
	switch {
	case rd.list.Header == nil && len(rd.list.Findings) == 0:
		rd.report(Finding{Severity: Error, Problem: message.New("has no header row"), Accepted: message.New("a first line with the names of the columns; start from the template")})
	case rd.list.Header != nil && rd.rows == 0 && f.Empty != "":
		rd.report(Finding{Severity: Error, Problem: f.Empty.Message(), Accepted: message.New("at least one row under the header")})
	}
	return rd.list
}

// reader is a list while it is read.
type reader[T any] struct {
	format  *Format[T]
	list    List[T]
	columns []*Column[T] // by cell of the header; nil for an unknown one
	broken  bool         // the header has an error: check rows, keep none
	rows    int
	book    bool               // a workbook is read
	why     map[int]message.ID // of the row of a workbook: why some of its cells cannot be read
}

func (rd *reader[T]) report(f Finding) {
	if i := slices.Index(rd.list.Header, f.Column); rd.book && f.Column != "" && i >= 0 {
		f.Cell = CellName(i, f.Line)
	}
	rd.list.Findings = append(rd.list.Findings, f)
}

// sheet takes the lines of a workbook in and reports whether it had them all.
func (rd *reader[T]) sheet(data []byte) bool {
	rd.book = true
	rows, err := ReadWorkbook(data)
	if err != nil {
		rd.report(Finding{Severity: Error, Problem: message.Of(err), Accepted: message.New("a workbook (.xlsx) with the list on its first sheet, or CSV in UTF-8")})
	}
	for _, row := range rows {
		if len(row.Why) == 0 && Skipped(strings.Join(row.Cells, ",")) {
			continue
		}
		for n := len(row.Cells); n < len(rd.columns); n++ { // blank cells at the end are not kept
			row.Cells = append(row.Cells, "")
		}
		if rd.why = row.Why; !rd.take(row.Number, row.Cells, 0, "") {
			return false
		}
	}
	return err == nil
}

// unread reports a line whose cells could not be taken apart.
func (rd *reader[T]) unread(line int, column string, problem message.ID) {
	rd.report(Finding{Line: line, Column: column, Severity: Error, Problem: problem.Message(),
		Accepted: message.New(`text without quotes, or "in quotes" with each inner quote doubled`)})
}

// line takes the next line in and reports whether to go on.
func (rd *reader[T]) line(n int, text string) bool {
	if Skipped(text) {
		return true
	}
	cells, bad, problem := Split(text)
	return rd.take(n, cells, bad, problem)
}

// take takes the cells of the next line in and reports whether to go on. Problem
// says why they could not be taken apart, and bad at which cell.
func (rd *reader[T]) take(n int, cells []string, bad int, problem message.ID) bool {
	if rd.list.Header == nil {
		return rd.header(n, cells, problem)
	}
	if rd.rows++; rd.rows > rd.format.MaxRows {
		rd.report(Finding{Line: n, Severity: Error, Problem: message.New("has more than {1} rows; this one and those after it were not read", message.Figure(strconv.Itoa(rd.format.MaxRows)))})
		return false
	}
	if problem != "" {
		rd.unread(n, rd.heading(bad), problem)
		return true
	}
	rd.row(n, cells)
	return true
}

// heading names the i-th cell of a row, as in the header where it has a name.
func (rd *reader[T]) heading(i int) string {
	if i < len(rd.list.Header) && rd.list.Header[i] != "" {
		return rd.list.Header[i]
	}
	return "no " + strconv.Itoa(i+1)
}

// header takes the header in and reports whether rows can be read by it.
func (rd *reader[T]) header(n int, cells []string, problem message.ID) bool {
	switch {
	case problem != "":
		rd.unread(n, "", problem)
		return false
	case len(cells) == 1 && strings.ContainsAny(cells[0], ";\t"):
		rd.report(Finding{Line: n, Severity: Error, Problem: message.New("has its cells separated by semicolons or tabs"), Accepted: message.New("commas between cells")})
		return false
	case len(cells) > maxColumns:
		rd.report(Finding{Line: n, Severity: Error, Problem: message.New("has more than {1} columns", message.Figure(strconv.Itoa(maxColumns))), Accepted: rd.format.names()})
		return false
	}
	for _, text := range cells {
		name, column := rd.column(n, text)
		rd.list.Header, rd.columns = append(rd.list.Header, name), append(rd.columns, column)
	}
	rd.missing(n)
	if rd.format.Headed != nil {
		for _, found := range rd.format.Headed(rd.list.Header) {
			found.Line = n
			rd.report(found)
		}
	}
	return true
}

// column finds the column that a cell of the header names.
func (rd *reader[T]) column(n int, text string) (name string, column *Column[T]) {
	if flaw := Flaw(text); !flaw.IsEmpty() {
		rd.broken = true
		rd.report(Finding{Line: n, Severity: Error, Problem: message.New("has a column name, {1}, that {2}", message.Name(Quoted(text)), flaw)})
		return "", nil
	}
	name = Fold(text)
	base := name
	if rd.format.Base != nil {
		base = rd.format.Base(name)
	}
	i := slices.IndexFunc(rd.format.Columns, func(c Column[T]) bool { return c.Name == base })
	switch {
	case name == "":
		return "", nil
	case i < 0:
		name = shown(name)
		rd.report(Finding{Line: n, Column: name, Severity: Warning, Problem: message.New("is not a column this program knows, so it is not read"), Accepted: rd.format.names()})
		return name, nil
	case slices.Contains(rd.columns, &rd.format.Columns[i]):
		rd.broken = true
		rd.report(Finding{Line: n, Column: name, Severity: Error, Problem: message.New("is there twice"), Accepted: message.New("one column of this name")})
	}
	return name, &rd.format.Columns[i]
}

// missing reports the columns that are not in the header.
func (rd *reader[T]) missing(n int) {
	for i := range rd.format.Columns {
		c := &rd.format.Columns[i]
		switch {
		case slices.Contains(rd.columns, c) || c.Optional:
		case c.Required:
			rd.broken = true
			rd.report(Finding{Line: n, Column: c.Name, Severity: Error, Problem: message.New("is missing, so no row can be used"), Accepted: message.New("a column {1} with {2}", message.Name(c.Name), c.Accepts)})
		default:
			rd.report(Finding{Line: n, Column: c.Name, Severity: Note, Problem: rd.format.Missing.Message()})
		}
	}
}

// row reads and checks one row.
func (rd *reader[T]) row(n int, cells []string) {
	row := Row[T]{Line: n}
	if rd.fits(&row, cells) {
		cell := &Cell{report: row.Report}
		for i, text := range cells[:min(len(cells), len(rd.columns))] {
			if c := rd.columns[i]; c != nil {
				cell.Text, cell.heading, cell.accepts, cell.Required = strings.TrimSpace(text), rd.list.Header[i], c.Accepts, c.Required
				if why := rd.why[i]; why != "" {
					cell.Refuse(why)
				} else {
					c.read(cell, &row.Value)
				}
			}
		}
		if rd.format.Check != nil {
			rd.format.Check(&row)
		}
	}
	for _, f := range row.findings {
		if rd.format.Name != nil {
			f.Row = rd.format.Name(&row.Value)
		}
		rd.report(f)
	}
	if row.findings = nil; !rd.broken && row.Sound() {
		rd.list.Rows = append(rd.list.Rows, row)
	}
}

// fits checks the number of cells; blank ones past the last column do no harm.
func (rd *reader[T]) fits(row *Row[T], cells []string) bool {
	most, n := len(rd.columns), len(cells)
	for n > most && strings.TrimSpace(cells[n-1]) == "" {
		n--
	}
	if n == most || n < most && rd.format.Ragged {
		return true
	}
	accepted := message.ID("one cell for each column, blank where nothing is known")
	if n > most {
		accepted = "one cell for each column, blank where nothing is known; a cell with a comma in it stands in quotes, and decimals have a point"
	}
	row.Report(Finding{Severity: Error, Accepted: accepted.Message(),
		Problem: message.New("has {1} cells where the header has {2}", message.Figure(strconv.Itoa(n)), message.Figure(strconv.Itoa(most)))})
	return false
}

// read reads one cell into a row.
func (c *Column[T]) read(cell *Cell, value *T) {
	switch flaw := Flaw(cell.Text); {
	case !flaw.IsEmpty():
		cell.Refuse("{1} {2}", cell.Quoted(), flaw)
	case cell.Text == "" && c.Required && !c.Blank:
		cell.Refuse("is blank")
	default:
		c.Read(cell, value)
	}
}

// names are the names of the columns.
func (f *Format[T]) names() message.Message {
	var names []string
	for _, c := range f.Columns {
		names = append(names, c.Name)
	}
	return message.Text(strings.Join(names, ", "))
}

// Write writes a header and rows as a file that Read reads back to the same. A
// heading may say more than the column's name; nil takes the names.
func (f *Format[T]) Write(w io.Writer, heading func(*Column[T]) string, rows []T) error {
	out := csv.NewWriter(w)
	record := make([]string, len(f.Columns))
	for i := range f.Columns {
		record[i] = f.Columns[i].Name
		if heading != nil {
			record[i] = heading(&f.Columns[i])
		}
	}
	_ = out.Write(record) // the writer keeps its first error for Error
	for i := range rows {
		for k := range f.Columns {
			record[k] = f.Columns[k].Write(&rows[i])
		}
		_ = out.Write(record)
	}
	out.Flush()
	return out.Error()
}

// shown is an unknown column's name, fit for a finding.
func shown(name string) string {
	const most = 40
	if r := []rune(name); len(r) > most {
		name = string(r[:most-1]) + "…"
	}
	return strings.Map(func(r rune) rune {
		if unicode.IsPrint(r) {
			return r
		}
		return '?'
	}, name)
}
