package screen

import (
	"strings"

	"github.com/charmbracelet/x/ansi"
)

// Wrap breaks a text into lines of at most width cells, between words where it
// can. An empty text has no lines.
func Wrap(text string, width int) []string {
	if text == "" {
		return nil
	}
	return strings.Split(ansi.Wrap(text, max(1, width), ""), "\n")
}

// Hang wraps a text behind a first word, with the later lines set in below it.
func Hang(first, text string, width int) []string {
	in := ansi.StringWidth(first)
	lines := Wrap(text, width-in)
	for i := range lines {
		if i == 0 {
			lines[i] = first + lines[i]
			continue
		}
		lines[i] = strings.Repeat(" ", in) + lines[i]
	}
	return lines
}

// Cut shortens a line to width cells and shows that it did.
func Cut(line string, width int) string { return ansi.Truncate(line, max(0, width), "…") }

// pad fills a line up to width cells.
func pad(line string, width int) string {
	return line + strings.Repeat(" ", max(0, width-ansi.StringWidth(line)))
}

// Each applies a style's render to every line.
func Each(lines []string, render func(...string) string) []string {
	styled := make([]string, len(lines))
	for i, l := range lines {
		styled[i] = render(l)
	}
	return styled
}

// Around returns at most height lines that include line at.
func Around(lines []string, at, height int) []string {
	height = max(0, height)
	if len(lines) <= height {
		return lines
	}
	from := min(max(0, at-height/2), len(lines)-height)
	return lines[from : from+height]
}
