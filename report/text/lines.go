package text

import (
	"strings"
	"unicode"

	"github.com/mattn/go-runewidth"
)

// Widths of a text, in cells.
const (
	DefaultWidth = 80
	Markdown     = -1 // in place of a width: the document as Markdown
	leastWidth   = 30
	leastRoom    = 8 // for a text, whatever stands before it
)

// cells counts what a text takes up in a terminal. Characters of doubtful
// width count as one, whatever the locale, so that a text is laid out alike
// everywhere.
var cells = runewidth.Condition{StrictEmojiNeutral: true}

// Lines is a text under way, of lines of at most Width cells.
type Lines struct {
	strings.Builder
	Width int
}

// Line writes one line, without the blanks at its end.
func (l *Lines) Line(s string) { l.WriteString(strings.TrimRight(s, " ") + "\n") }

// Block writes a text wrapped, its first line behind first and the others behind
// as many blanks.
func (l *Lines) Block(first, text string) { l.Hang(first, pad("", cells.StringWidth(first)), text) }

// Hang writes a text wrapped, its first line behind first and the others behind
// rest.
func (l *Lines) Hang(first, rest, text string) {
	for _, line := range wrap(first, rest, text, l.Width) {
		l.Line(line)
	}
}

// Rule is a line of one sign, as long as the text it stands under.
func Rule(text, sign string) string { return strings.Repeat(sign, widest(text)) }

// Wrap breaks a text into lines of at most width cells, at spaces where it
// can. A word wider than a line is broken. What a terminal could act on is taken
// out.
func Wrap(s string, width int) []string { return wrap("", "", s, width) }

// wrap is Wrap with what stands before the first line and before the others.
func wrap(first, rest, text string, width int) []string {
	var lines []string
	line, used, room := "", 0, 0
	begin := func(lead string) { // used is one less than nothing where no word stands yet
		line, used, room = lead, -1, max(width-cells.StringWidth(lead), min(leastRoom, width), 1)
	}
	end := func() {
		lines = append(lines, line)
		begin(rest)
	}
	begin(first)
	for word := range strings.FieldsSeq(safe(text)) {
		wide := cells.StringWidth(word)
		if used >= 0 && used+1+wide > room {
			end()
		}
		for ; wide > room; wide = cells.StringWidth(word) {
			head := fitting(word, room)
			line, word = line+head, word[len(head):]
			end()
		}
		if word == "" {
			continue
		}
		if used >= 0 {
			line += " "
		}
		line, used = line+word, used+1+wide
	}
	if used >= 0 {
		end()
	}
	return lines
}

// fitting is the start of a word that fits, at least one character.
func fitting(word string, width int) string {
	used := 0
	for i, r := range word {
		used += cells.RuneWidth(r)
		if used > width && i > 0 {
			return word[:i]
		}
	}
	return word
}

// safe takes out what a terminal could act on: control characters, escape
// among them, and marks that turn the direction of writing.
func safe(s string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case unicode.IsSpace(r) || unicode.IsControl(r):
			return ' '
		case unicode.Is(unicode.Cf, r):
			return -1
		}
		return r
	}, strings.ToValidUTF8(s, "�"))
}

// widest is how many cells the widest of some texts takes.
func widest(texts ...string) int {
	wide := 0
	for _, t := range texts {
		wide = max(wide, cells.StringWidth(safe(t)))
	}
	return wide
}

// pad fills a text with blanks to a width.
func pad(s string, width int) string {
	return s + strings.Repeat(" ", max(0, width-cells.StringWidth(s)))
}
