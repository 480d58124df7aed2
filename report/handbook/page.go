// Package handbook writes what the program goes by as documents: the rules with
// their sources, the forms of its files, and a guide for each kind of reader. The
// first two are made of the tables that the program itself works with, so that the
// two cannot drift apart; only how a rule comes to its figures is told here, and
// held to the rules by a program that was written from it.
package handbook

import (
	"strings"

	"cutbrief/report/text"
	"cutbrief/rules/message"
)

// Page is one document, in the words asked for.
type Page struct {
	Title    string
	Says     []string // paragraphs
	Sections []Section
}

// Section is one table of a page. The first cell of a row is what it is about;
// an empty cell is left out where it can be.
type Section struct {
	Title string
	Says  []string
	Head  []string
	Rows  [][]string
}

// writer puts pages into words.
type writer struct{ words *message.Catalog }

func (w writer) say(id message.ID, args ...any) string {
	return w.words.Print(message.New(id, args...))
}

// cell prints what a cell holds: a message, a name, a figure, or a text that may
// have words of its own.
func (w writer) cell(v any) string {
	switch is := v.(type) {
	case message.Message:
		return w.words.Print(is)
	case message.ID:
		return w.say(is)
	case string:
		return w.words.Print(message.Worded(is))
	}
	return w.say("{1}", v)
}

// paragraphs prints some.
func (w writer) paragraphs(list ...message.ID) []string {
	var printed []string
	for _, id := range list {
		printed = append(printed, w.say(id))
	}
	return printed
}

// sentences prints paragraphs whose sentences may have words of their own.
func (w writer) sentences(paragraphs []string) []string {
	var printed []string
	for _, p := range paragraphs {
		sentences := strings.SplitAfter(p, ". ")
		for i, s := range sentences {
			sentences[i] = w.words.Print(message.Worded(strings.TrimSpace(s)))
		}
		printed = append(printed, strings.Join(sentences, " "))
	}
	return printed
}

// table is a section with a row for each item of a list.
func table[T any](w writer, title message.ID, says []string, head []message.ID, items []T, row func(T) []any) Section {
	s := Section{Title: w.say(title), Says: says}
	for _, h := range head {
		s.Head = append(s.Head, w.say(h))
	}
	for _, item := range items {
		var cells []string
		for _, v := range row(item) {
			cells = append(cells, w.cell(v))
		}
		s.Rows = append(s.Rows, cells)
	}
	return s
}

// Markdown is a page as CommonMark with tables.
func (p Page) Markdown() string {
	var b strings.Builder
	b.WriteString("# " + p.Title + "\n")
	for _, s := range p.Says {
		b.WriteString("\n" + s + "\n")
	}
	for _, s := range p.Sections {
		b.WriteString("\n## " + s.Title + "\n")
		for _, text := range s.Says {
			b.WriteString("\n" + text + "\n")
		}
		if len(s.Rows) == 0 {
			continue
		}
		b.WriteString("\n" + line(s.Head) + strings.Repeat("|---", len(s.Head)) + "|\n")
		for _, r := range s.Rows {
			b.WriteString(line(r))
		}
	}
	return b.String()
}

// line is a row of a table in Markdown.
func line(cells []string) string {
	var b strings.Builder
	for _, c := range cells {
		b.WriteString("| " + inCell.Replace(c) + " ")
	}
	return b.String() + "|\n"
}

// inCell keeps what has a meaning in a table from having it.
var inCell = strings.NewReplacer("|", `\|`, "\n", " ", "<", "&lt;", "*", `\*`, "_", `\_`, "`", "\\`")

// Text is a page for a terminal, in lines of at most width cells. A row begins
// with what it is about; the rest stands below it.
func (p Page) Text(width int) string {
	b := text.Lines{Width: width}
	title(&b, p.Title, "=", p.Says)
	for _, s := range p.Sections {
		b.Line("")
		title(&b, s.Title, "-", s.Says)
		for _, row := range s.Rows {
			b.Line("\n" + row[0])
			for i, cell := range row[1:] {
				if cell != "" {
					b.Hang("  ", "    ", s.Head[i+1]+": "+cell)
				}
			}
		}
	}
	return b.String()
}

// title writes a title with a line under it, and paragraphs.
func title(b *text.Lines, title, line string, says []string) {
	b.Line(title)
	b.Line(text.Rule(title, line))
	for _, s := range says {
		b.Line("")
		b.Block("", s)
	}
}
