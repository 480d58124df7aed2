package export

import (
	"bufio"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"io"
	"iter"
	"strings"

	"cutbrief/assess/review"
)

// value is one named value for programs: a text, a number, a list of texts, or
// nil where it is not known.
type value struct {
	name string
	is   any
}

// CSV writes comma-separated values (RFC 4180) in UTF-8, with the names of the
// columns first. Lengths are in mm and times in min, without the unit; what is
// not known is empty. What a spreadsheet could take for a formula is neutralised.
func (s Sheet) CSV(w io.Writer) error { return writeCSV(w, s.record(&review.Row{}), s.records()) }

// JSON writes one object: how many files there are, how many cannot be read, and
// the rows. What is not known is null, a list that holds nothing is empty.
func (s Sheet) JSON(w io.Writer) error {
	return writeJSON(w, []value{{"files", s.Totals.Files}, {"unread", s.Totals.Unread}}, "rows", s.records())
}

// NDJSON writes one JSON object a line.
func (s Sheet) NDJSON(w io.Writer) error {
	out := bufio.NewWriter(w)
	for r := range s.records() {
		if err := writeObject(out, r); err != nil {
			return err
		}
		out.WriteByte('\n')
	}
	return out.Flush()
}

// records are the rows for programs. Each is used again for the next.
func (s Sheet) records() iter.Seq[[]value] {
	return func(yield func([]value) bool) {
		for r := range s.Rows {
			if !yield(s.record(r)) {
				return
			}
		}
	}
}

func (s Sheet) record(r *review.Row) []value {
	list := make([]value, len(s.Fields))
	for i, f := range s.Fields {
		list[i] = value{f.ID, nil}
		text := f.Text(r)
		switch {
		case f.Shape == review.List:
			list[i].is = append([]string{}, f.Items(r)...)
		case f.Unit() != "":
			list[i].name += "_" + f.Unit()
			if text != "" {
				list[i].is = json.Number(strings.TrimSuffix(text, " "+f.Unit()))
			}
		case text != "":
			list[i].is = text
		}
	}
	return list
}

// writeCSV writes records below the names of one.
func writeCSV(w io.Writer, names []value, records iter.Seq[[]value]) error {
	out := csv.NewWriter(w)
	out.UseCRLF = true
	line := make([]string, len(names))
	for i, v := range names {
		line[i] = v.name
	}
	err := out.Write(line)
	for r := range records {
		if err != nil {
			return err
		}
		for i, v := range r {
			line[i] = v.cell()
		}
		err = out.Write(line)
	}
	out.Flush()
	return out.Error()
}

// cell is the value in a spreadsheet. A number below 0 stands as it is: no
// spreadsheet takes one for a formula.
func (v value) cell() string {
	switch is := v.is.(type) {
	case nil:
		return ""
	case string:
		return harmless(is)
	case []string:
		return harmless(strings.Join(is, "; "))
	}
	return fmt.Sprint(v.is)
}

// writeJSON writes an object with some values and, as its last, a list of records.
func writeJSON(w io.Writer, head []value, name string, records iter.Seq[[]value]) error {
	out := bufio.NewWriter(w)
	out.WriteString("{\n")
	for _, v := range head {
		fmt.Fprintf(out, "  %q: %v,\n", v.name, v.is)
	}
	fmt.Fprintf(out, "  %q: [", name)
	comma := ""
	for r := range records {
		out.WriteString(comma + "\n    ")
		comma = ","
		if err := writeObject(out, r); err != nil {
			return err
		}
	}
	out.WriteString("\n  ]\n}\n")
	return out.Flush()
}

// writeObject writes a record in its order.
func writeObject(out *bufio.Writer, record []value) error {
	data, err := object(record).MarshalJSON()
	out.Write(data)
	return err
}

// object is a record as a JSON object that keeps its order.
type object []value

// MarshalJSON writes it on one line.
func (o object) MarshalJSON() ([]byte, error) {
	line := []byte("{")
	for i, v := range o {
		data, err := json.Marshal(v.is)
		if err != nil {
			return nil, err
		}
		if i > 0 {
			line = append(line, ", "...)
		}
		line = append(fmt.Appendf(line, "%q: ", v.name), data...)
	}
	return append(line, '}'), nil
}

// harmless neutralises a cell: an apostrophe goes before what could begin a
// formula, at its start and after each semicolon, at which a spreadsheet set to
// another country parts cells (from memory). One goes before an apostrophe in these
// places too, so that all of them can be taken away again.
func harmless(text string) string {
	if !risky(text, 0) && !strings.Contains(text, ";") {
		return text
	}
	var b strings.Builder
	for i := range len(text) {
		if (i == 0 || text[i-1] == ';') && risky(text, i) {
			b.WriteByte('\'')
		}
		b.WriteByte(text[i])
	}
	return b.String()
}

// risky reports a byte that begins a formula or a command, or the apostrophe that
// keeps one from doing so.
func risky(text string, i int) bool {
	return i < len(text) && strings.IndexByte("=+-@\t\r'", text[i]) >= 0
}
