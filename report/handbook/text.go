package handbook

import (
	"strings"

	"github.com/mattn/go-runewidth"
)

// Text is a page for a terminal, in lines of at most width cells where words
// allow. A row begins with what it is about; the rest stands below it.
func (p Page) Text(width int) string {
	var b strings.Builder
	heading(&b, p.Title, "=")
	paragraphs(&b, p.Says, width)
	for _, s := range p.Sections {
		b.WriteString("\n")
		heading(&b, s.Title, "-")
		paragraphs(&b, s.Says, width)
		for _, row := range s.Rows {
			b.WriteString("\n" + row[0] + "\n")
			for i, cell := range row[1:] {
				if cell != "" {
					b.WriteString(wrapped(s.Head[i+1]+": "+cell, "  ", "    ", width))
				}
			}
		}
	}
	return b.String()
}

func heading(b *strings.Builder, title, line string) {
	b.WriteString(title + "\n" + strings.Repeat(line, runewidth.StringWidth(title)) + "\n")
}

func paragraphs(b *strings.Builder, says []string, width int) {
	for _, s := range says {
		b.WriteString("\n" + wrapped(s, "", "", width))
	}
}

// wrapped breaks a text between its words; first stands before its first line,
// and rest before the others.
func wrapped(text, first, rest string, width int) string {
	var b strings.Builder
	line, empty := first, true
	for _, word := range strings.Fields(text) {
		if !empty && runewidth.StringWidth(line)+1+runewidth.StringWidth(word) > width {
			b.WriteString(line + "\n")
			line, empty = rest, true
		}
		if !empty {
			line += " "
		}
		line, empty = line+word, false
	}
	return b.String() + line + "\n"
}
