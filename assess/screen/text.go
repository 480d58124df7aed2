package screen

import (
	"slices"
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

// MoreAbove and MoreBelow stand where a text goes on outside the window.
const (
	MoreAbove = "more above ↑"
	MoreBelow = "more below ↓"
)

// Fit returns the first height lines; the last says that there is more, if there
// is.
func Fit(lines []string, height int) []string {
	if len(lines) <= max(0, height) {
		return lines
	}
	shown := slices.Clone(lines[:max(0, height)])
	if height > 0 {
		shown[height-1] = "…"
	}
	return shown
}
