// Package table writes the rows of a review: as a table for a terminal, as
// Markdown, as CSV that opens safely in a spreadsheet, as JSON and as one JSON
// object a line. It lays out and adds nothing.
package table

import (
	"bufio"
	"cmp"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"io"
	"iter"
	"strconv"
	"strings"

	"github.com/mattn/go-runewidth"

	"cutbrief/assess/review"
)

// Sheet is what is written: rows by columns, and what was counted.
type Sheet struct {
	Fields []review.Field
	Rows   iter.Seq[*review.Row] // gone through more than once, and no row of it kept
	Totals review.Totals

	Width  int  // cells a line of the table may take; 0 is as many as it needs
	Chosen bool // the columns were asked for by name: none is left out of the table
}

// cells counts what a text takes up in a terminal, in every locale alike.
var cells = runewidth.Condition{StrictEmojiNeutral: true}

// unknown stands in a table where nothing is known.
const unknown = "–"

// shown is a cell for a reader.
func shown(f review.Field, r *review.Row) string {
	text := strings.Join(f.Items(r), ", ")
	if text == "" {
		return unknown
	}
	return text
}

// Text writes a table in columns as wide as their contents, or shortened to fit
// Width, and below it how many files there are.
func (s Sheet) Text(w io.Writer) error {
	out := bufio.NewWriter(w)
	wide := make([]int, len(s.Fields))
	for i, f := range s.Fields {
		wide[i] = len(f.ID)
	}
	n := 0
	for r := range s.Rows {
		n++
		for i, f := range s.Fields {
			wide[i] = max(wide[i], cells.StringWidth(shown(f, r)))
		}
	}
	columns, widths, gone := s.fit(wide)
	line := func(cell func(review.Field) string) {
		var b strings.Builder
		for _, i := range columns {
			text := cut(s.Fields[i].ID, cell(s.Fields[i]), widths[i])
			b.WriteString(padded(text, widths[i]+columnGap))
		}
		out.WriteString(strings.TrimRight(b.String(), " ") + "\n")
	}
	line(func(f review.Field) string { return strings.ToUpper(f.ID) })
	for r := range s.Rows {
		line(func(f review.Field) string { return shown(f, r) })
	}
	out.WriteString("\n")
	for _, text := range []string{s.count(n), leftOut(gone)} {
		if text != "" {
			out.WriteString(strings.Join(wrapped(text, cmp.Or(s.Width, len(text))), "\n") + "\n")
		}
	}
	return out.Flush()
}

// count says how many files there are, are shown, and cannot be read.
func (s Sheet) count(n int) string {
	text := files(s.Totals.Files)
	if n != s.Totals.Files {
		text = fmt.Sprintf("%d of %s", n, text)
	}
	if s.Totals.Unread > 0 {
		text += fmt.Sprintf("; %d of all cannot be read as a visit", s.Totals.Unread)
	}
	return text
}

func files(n int) string {
	if n == 1 {
		return "1 file"
	}
	return strconv.Itoa(n) + " files"
}

// Markdown writes a table of pipes.
func (s Sheet) Markdown(w io.Writer) error {
	out := bufio.NewWriter(w)
	out.WriteString("|")
	for _, f := range s.Fields {
		out.WriteString(" " + f.ID + " |")
	}
	out.WriteString("\n|" + strings.Repeat(" --- |", len(s.Fields)) + "\n")
	n := 0
	for r := range s.Rows {
		n++
		out.WriteString("|")
		for _, f := range s.Fields {
			out.WriteString(" " + escaped(shown(f, r)) + " |")
		}
		out.WriteString("\n")
	}
	fmt.Fprintf(out, "\n%s\n", s.count(n))
	return out.Flush()
}

// markdown keeps a text from meaning something in Markdown.
var markdown = strings.NewReplacer(`\`, `\\`, "|", `\|`, "*", `\*`, "_", `\_`, "`", "\\`", "<", "&lt;", ">", "&gt;", "&", "&amp;", "[", `\[`, "]", `\]`, "#", `\#`)

func escaped(s string) string { return markdown.Replace(s) }

// CSV writes comma-separated values (RFC 4180) in UTF-8, with the names of the
// columns first. Lengths are in mm and times in min, without the unit; what is not known is empty.
// What a spreadsheet could take for a formula is neutralised.
func (s Sheet) CSV(w io.Writer) error {
	out := csv.NewWriter(w)
	out.UseCRLF = true
	record := make([]string, len(s.Fields))
	for i, f := range s.Fields {
		record[i] = key(f)
	}
	if err := out.Write(record); err != nil {
		return err
	}
	for r := range s.Rows {
		for i, f := range s.Fields {
			record[i] = harmless(cell(f, r))
		}
		if err := out.Write(record); err != nil {
			return err
		}
	}
	out.Flush()
	return out.Error()
}

// key is the name of a column in a file: it tells the unit.
func key(f review.Field) string {
	if f.Unit() != "" {
		return f.ID + "_" + f.Unit()
	}
	return f.ID
}

func cell(f review.Field, r *review.Row) string {
	if f.Unit() != "" {
		return strings.TrimSuffix(f.Text(r), " "+f.Unit())
	}
	return strings.Join(f.Items(r), "; ")
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

// JSON writes one object: how many files there are, how many cannot be read, and
// the rows.
func (s Sheet) JSON(w io.Writer) error {
	out := bufio.NewWriter(w)
	fmt.Fprintf(out, "{\n  \"files\": %d,\n  \"unread\": %d,\n  \"rows\": [", s.Totals.Files, s.Totals.Unread)
	cut := ""
	for r := range s.Rows {
		out.WriteString(cut)
		cut = ","
		out.WriteString("\n    ")
		if err := s.object(out, r); err != nil {
			return err
		}
	}
	out.WriteString("\n  ]\n}\n")
	return out.Flush()
}

// NDJSON writes one JSON object a line.
func (s Sheet) NDJSON(w io.Writer) error {
	out := bufio.NewWriter(w)
	for r := range s.Rows {
		if err := s.object(out, r); err != nil {
			return err
		}
		out.WriteByte('\n')
	}
	return out.Flush()
}

// object writes a row in the order of the columns. What is not known is null, a
// list that holds nothing is empty.
func (s Sheet) object(out *bufio.Writer, r *review.Row) error {
	out.WriteByte('{')
	for i, f := range s.Fields {
		if i > 0 {
			out.WriteString(", ")
		}
		data, err := json.Marshal(value(f, r))
		if err != nil {
			return err
		}
		fmt.Fprintf(out, "%q: %s", key(f), data)
	}
	return out.WriteByte('}')
}

func value(f review.Field, r *review.Row) any {
	switch {
	case f.Shape == review.List:
		return append([]string{}, f.Items(r)...)
	case f.Text(r) == "":
		return nil
	case f.Unit() != "":
		return json.Number(strings.TrimSuffix(f.Text(r), " "+f.Unit()))
	}
	return f.Text(r)
}
