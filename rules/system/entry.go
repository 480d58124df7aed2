package system

import (
	"bytes"
	"encoding/csv"
	"io"
	"slices"
	"strings"

	"cutbrief/rules/message"
	"cutbrief/rules/tabular"
)

// Field is one thing to be written down of a system.
type Field struct {
	Name     string // of its column, with the unit of a number without one
	Required bool
	Means    message.ID
	Accepts  message.ID
}

// Entry is a system that is written down field by field, from its data sheet, and
// checked as the rows of a file are.
type Entry struct {
	header []string // of the file it goes into
	ids    string   // the rows of that file, to be held against
	cells  map[string]string
}

// NewEntry begins a system for a file, which may be empty. It fails where the file
// cannot be added to: a workbook, or a header that is not in order.
func NewEntry(file []byte) (*Entry, error) {
	e := &Entry{cells: map[string]string{}}
	if len(bytes.TrimSpace(file)) == 0 {
		for _, c := range Columns() {
			e.header = append(e.header, c.Name)
		}
		return e, nil
	}
	list := format().Read(bytes.NewReader(file))
	if !list.Complete || bytes.HasPrefix(file, []byte("PK")) {
		return nil, message.Errorf("can only be added to if it is CSV, and its header is in order")
	}
	e.header, e.ids = list.Header, string(file)
	return e, nil
}

// Fields are what is asked for, in the order of the file, apart from columns it
// does not know and the mark of invented rows.
func (e *Entry) Fields() []Field {
	var list []Field
	for _, heading := range e.header {
		base, _ := inCurrency(heading)
		for _, c := range columns() {
			if c.Name == base && base != colInvented {
				list = append(list, Field{heading, c.Required, c.Means, c.Accepts})
			}
		}
	}
	return list
}

// Set writes a field down, blank for not known, and returns what is found of it
// and of what was written down before. An error there keeps the text out.
func (e *Entry) Set(field, said string) []Finding {
	e.cells[field] = strings.TrimSpace(said)
	found := slices.DeleteFunc(e.findings(), func(f Finding) bool {
		_, known := e.cells[f.Column]
		return f.Column != "" && !known || f.Severity == Note
	})
	if tabular.Count(found, Error) > 0 {
		delete(e.cells, field)
	}
	return found
}

// findings are those about the row as it is. Where it stands is of no interest.
func (e *Entry) findings() []Finding {
	file, line := e.file()
	_, all := Read(strings.NewReader(file), "")
	all = slices.DeleteFunc(all, func(f Finding) bool { return f.Line != line })
	for i := range all {
		all[i].Line = 0
	}
	return all
}

// Range is the range with the system in it, for checks of others.
func (e *Entry) Range(name string) (Range, []Finding) { return Read(strings.NewReader(e.File()), name) }

// File is the file with the system added at its end, everything else as it was.
func (e *Entry) File() string { file, _ := e.file(); return file }

func (e *Entry) file() (text string, line int) {
	text = e.ids
	if text == "" {
		text = row(e.header)
	}
	if !strings.HasSuffix(text, "\n") {
		text += "\n"
	}
	cells := make([]string, len(e.header))
	for i, heading := range e.header {
		cells[i] = e.cells[heading]
	}
	return text + row(cells), strings.Count(text, "\n") + 1
}

// row is a line of a file.
func row(cells []string) string {
	var b strings.Builder
	out := csv.NewWriter(&b)
	_ = out.Write(cells) // a strings.Builder takes everything
	out.Flush()
	return b.String()
}

// ReadEntry reads the file that a system is to be added to, and begins it.
func ReadEntry(r io.Reader) (*Entry, error) {
	text, err := tabular.Load(r)
	if err != nil {
		return nil, err
	}
	return NewEntry([]byte(text))
}
