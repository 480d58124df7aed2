package message

import (
	"strings"

	"cutbrief/rules/csvfile"
)

// Template is a book to fill in: every sentence of the program with its holes,
// and the German words where filled is true.
func Template(filled bool) string {
	var out strings.Builder
	for line := range strings.SplitSeq(strings.TrimSuffix(german, "\n"), "\n") {
		cells, _, _ := csvfile.Split(line)
		switch {
		case csvfile.Skipped(line) && !filled:
			continue
		case !csvfile.Skipped(line) && !filled && cells[0] != colEnglish:
			line = inCell(cells[0]) + ","
		}
		out.WriteString(line + "\n")
	}
	return out.String()
}

// inCell writes a text as one cell of a CSV file.
func inCell(s string) string {
	if strings.ContainsAny(s, `",`) || strings.HasPrefix(s, "#") {
		return `"` + strings.ReplaceAll(s, `"`, `""`) + `"`
	}
	return s
}

// Lacks lists the sentences of the program that a book has no row for, in the
// order of the template.
func (b *Catalog) Lacks() []string {
	var list []string
	for _, s := range German().rows {
		if !b.has(s) {
			list = append(list, s)
		}
	}
	return list
}

// has reports whether the book has a row for a sentence.
func (b *Catalog) has(sentence string) bool {
	if _, ok := b.row(sentence); ok {
		return true
	}
	asked := newPattern(sentence, "")
	for _, p := range b.holed[asked.first()] {
		if folded(p.english) == folded(sentence) {
			return true
		}
	}
	return false
}

// Rows counts the rows of a book.
func (b *Catalog) Rows() int { return len(b.rows) }
