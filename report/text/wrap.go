package text

import (
	"strings"
	"unicode"

	"github.com/mattn/go-runewidth"
)

// cells counts what a text takes up in a terminal. Characters of doubtful
// width count as one, whatever the locale, so that a text is laid out alike
// everywhere.
var cells = runewidth.Condition{StrictEmojiNeutral: true}

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

// Wrap breaks a text into lines of at most width cells, at spaces where it
// can. A word wider than a line is broken.
func Wrap(s string, width int) []string {
	var lines []string
	line, used := "", 0
	for _, word := range strings.Fields(safe(s)) {
		wide := cells.StringWidth(word)
		if line != "" && used+1+wide > width {
			lines, line, used = append(lines, line), "", 0
		}
		for wide > width {
			head := fitting(word, width)
			lines = append(lines, head)
			word = word[len(head):]
			wide = cells.StringWidth(word)
		}
		if line != "" {
			line, used = line+" ", used+1
		}
		line, used = line+word, used+wide
	}
	if line != "" {
		lines = append(lines, line)
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

// pad fills a text with spaces to a width.
func pad(s string, width int) string {
	if missing := width - cells.StringWidth(s); missing > 0 {
		return s + strings.Repeat(" ", missing)
	}
	return s
}

// ahead fills a text with spaces in front, so that figures end in one column.
func ahead(s string, width int) string {
	if missing := width - cells.StringWidth(s); missing > 0 {
		return strings.Repeat(" ", missing) + s
	}
	return s
}
