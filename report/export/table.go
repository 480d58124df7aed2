// Package export writes what leaves the program other than as a page: the rows of a
// review and what is counted over them as a table or bars for a terminal and as
// Markdown; briefs, derivations and rows as JSON; accounts and rows as CSV that opens
// safely in a spreadsheet, and as workbooks; next steps as calendar entries. What
// people read is in the words asked for; what programs read is in English. It adds
// nothing to what it is given.
package export

import (
	"bufio"
	"cmp"
	"fmt"
	"io"
	"iter"
	"strings"

	"github.com/mattn/go-runewidth"

	"cutbrief/assess/review"
	"cutbrief/report/text"
	"cutbrief/rules/message"
)

// Sheet is what is written: rows by columns, and what was counted.
type Sheet struct {
	Fields []review.Field
	Rows   iter.Seq[*review.Row] // gone through more than once, and no row of it kept
	Totals review.Totals

	Width  int  // cells a line of the table may take; 0 is as many as it needs
	Chosen bool // the columns were asked for by name: none is left out of the table
	Words  *message.Catalog
}

// cells counts what a text takes up in a terminal, in every locale alike.
var cells = runewidth.Condition{StrictEmojiNeutral: true}

// Text writes a table in columns as wide as their contents, or shortened to fit
// Width, and below it how many files there are.
func (s Sheet) Text(w io.Writer) error {
	out := bufio.NewWriter(w)
	wide := make([]int, len(s.Fields))
	for i, f := range s.Fields {
		wide[i] = cells.StringWidth(s.heading(f))
	}
	n := 0
	for r := range s.Rows {
		n++
		for i, f := range s.Fields {
			wide[i] = max(wide[i], cells.StringWidth(f.Cell(s.Words, r)))
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
	line(s.heading)
	for r := range s.Rows {
		line(func(f review.Field) string { return f.Cell(s.Words, r) })
	}
	out.WriteString("\n")
	for _, note := range []string{s.count(n), s.leftOut(gone)} {
		if note != "" {
			out.WriteString(strings.Join(text.Wrap(note, cmp.Or(s.Width, len(note))), "\n") + "\n")
		}
	}
	return out.Flush()
}

// headings are the columns of the table, by field.
var headings = map[string]message.ID{
	"date": "DATE", "company": "COMPANY", "rep": "REP", "metals": "METALS", "thickest": "THICKEST", "critical": "CRITICAL", "system": "SYSTEM", "verdict": "VERDICT", "outcome": "OUTCOME",
	"against": "AGAINST", "due": "DUE", "flags": "FLAGS", "unanswered": "UNANSWERED", "interview": "INTERVIEW", "month": "MONTH", "file": "FILE", "reasons": "REASONS",
}

func (s Sheet) heading(f review.Field) string {
	if id, known := headings[f.ID]; known {
		return s.Words.Print(id.Message())
	}
	return strings.ToUpper(f.ID)
}

// count says how many files there are, are shown, and cannot be read.
func (s Sheet) count(n int) string {
	text := files(s.Totals.Files)
	if n != s.Totals.Files {
		text = message.New("{1} of {2}", message.Count(n), text)
	}
	if s.Totals.Unread > 0 {
		text = message.New("{1}; {2} of all cannot be read as a visit", text, message.Count(s.Totals.Unread))
	}
	return s.Words.Print(text)
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
			out.WriteString(" " + escaped(f.Cell(s.Words, r)) + " |")
		}
		out.WriteString("\n")
	}
	fmt.Fprintf(out, "\n%s\n", s.count(n))
	return out.Flush()
}

// markdown keeps a text from meaning something in Markdown.
var markdown = strings.NewReplacer(`\`, `\\`, "|", `\|`, "*", `\*`, "_", `\_`, "`", "\\`", "<", "&lt;", ">", "&gt;", "&", "&amp;", "[", `\[`, "]", `\]`, "#", `\#`)

func escaped(s string) string { return markdown.Replace(s) }
