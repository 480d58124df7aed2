// Package gate is the one gate that every string from a file, a flag, the
// environment or a paste passes before it reaches a terminal or the page. It
// takes out what could steer a terminal or turn a line round, and keeps the
// words. It does not judge what a text means, and it does not know which glyphs
// a font holds. Any package above the rules may import it.
//
// What becomes of what is not plain text:
//
//   - escape sequences (colour, links, titles) are removed with their contents;
//   - bytes that are no UTF-8 become U+FFFD;
//   - tabs, line ends and their relatives become a space, or stay line ends;
//   - other control characters and the marks that turn the direction of writing
//     are dangerous or a sign of a broken file: they are shown as <U+202E>;
//   - other invisible formatting characters, such as the zero-width space and
//     the soft hyphen, are dropped;
//   - what is left is put into Unicode normal form C, trimmed and shortened.
//
// A text that has passed the gate passes it again unchanged.
package sanitize

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/charmbracelet/x/ansi"
	"golang.org/x/text/unicode/norm"
)

// The caps, in characters (runes) and lines. They hold a long company name and
// a full page of notes; a text beyond them is a mistake or an attack.
const (
	lineCap  = 200 // Line
	noteCap  = 500 // each line of Lines
	linesCap = 40  // lines of Lines
)

const (
	more        = "…"      // a text was shortened here
	replacement = "\ufffd" // a byte that is no UTF-8 stood here
)

// Line makes s fit for one line: at most 200 characters, the last of them "…"
// if it was shortened; no line end.
func Line(s string) string {
	return line(clean(s), lineCap)
}

// Lines makes s fit for a note: line ends stay as LF, with at most 40 lines of
// at most 500 characters, each shortened like Line. A note of more lines ends
// in a line "…". Empty lines at the start and the end are dropped.
func Lines(s string) string {
	rows := strings.Split(clean(s), "\n")
	for i, row := range rows {
		rows[i] = line(row, noteCap)
	}
	rows = strings.Split(strings.Trim(strings.Join(rows, "\n"), "\n"), "\n")
	if len(rows) > linesCap {
		rows = append(rows[:linesCap-1], more)
	}
	return strings.Join(rows, "\n")
}

// clean takes s apart and leaves plain text with LF as the only control
// character. Stray bytes are marked first, because the stripper drops them
// without a trace; then sequences go, while they are whole; then the rest of
// what is no UTF-8 is replaced. It works row by row, so that a sequence without
// an end takes no more than its own row with it.
func clean(s string) string {
	rows := strings.Split(strings.ReplaceAll(s, "\r\n", "\n"), "\n")
	for i, row := range rows {
		row = strings.ToValidUTF8(ansi.Strip(markStray(row)), replacement)
		var b strings.Builder
		for _, r := range row {
			if r >= ' ' && r <= '~' {
				b.WriteByte(byte(r)) // nearly every character
				continue
			}
			b.WriteString(plain(r))
		}
		rows[i] = b.String()
	}
	return strings.Join(rows, "\n")
}

// markStray replaces each byte that is no UTF-8, except those from 0x80 to 0x9F:
// they can begin a sequence that has to be seen whole.
func markStray(s string) string {
	if utf8.ValidString(s) {
		return s
	}
	var b strings.Builder
	for i, r := range s {
		size := utf8.RuneLen(r)
		stray := r == utf8.RuneError && !strings.HasPrefix(s[i:], replacement)
		switch {
		case stray && s[i] >= 0xa0:
			b.WriteString(replacement)
		case stray:
			b.WriteByte(s[i])
		default:
			b.WriteString(s[i : i+size])
		}
	}
	return b.String()
}

// plain is what becomes of one character.
func plain(r rune) string {
	switch {
	case r == '\n', r == '\r', r == '\u0085', r == '\u2028', r == '\u2029':
		return "\n"
	case r == '\t', r == '\v', r == '\f':
		return " "
	case unicode.IsControl(r), unicode.Is(unicode.Bidi_Control, r):
		return fmt.Sprintf("<U+%04X>", r)
	case unicode.Is(unicode.Cf, r):
		return ""
	}
	return string(r)
}

// line puts a clean text on one line of at most limit characters.
func line(s string, limit int) string {
	s = norm.NFC.String(strings.ReplaceAll(s, "\n", " "))
	return shorten(strings.TrimSpace(s), limit)
}

// shorten cuts s to limit characters, the last of them the mark.
func shorten(s string, limit int) string {
	if utf8.RuneCountInString(s) <= limit {
		return s
	}
	kept := 0
	for i := range s {
		if kept == limit-1 {
			return strings.TrimSpace(s[:i]) + more
		}
		kept++
	}
	return s
}
