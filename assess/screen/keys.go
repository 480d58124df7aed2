package screen

import (
	"strings"

	"github.com/charmbracelet/bubbles/key"
	"github.com/charmbracelet/lipgloss"
)

// Key is a binding with how it is shown and what it does, in one or two words.
func Key(shown, does string, keys ...string) key.Binding {
	return key.NewBinding(key.WithKeys(keys...), key.WithHelp(shown, does))
}

const between = "  "

// Keys lists bindings in as few lines as the width allows. A key and its word
// are never parted.
func (l Look) Keys(width int, keys ...key.Binding) []string {
	var lines []string
	var line strings.Builder
	used := 0
	for _, k := range keys {
		h := k.Help()
		w := lipgloss.Width(h.Key) + 1 + lipgloss.Width(h.Desc)
		if used > 0 && used+len(between)+w > width {
			lines = append(lines, line.String())
			line.Reset()
			used = 0
		}
		if used > 0 {
			line.WriteString(between)
			used += len(between)
		}
		line.WriteString(l.Accent.Render(h.Key) + " " + l.Dim.Render(h.Desc))
		used += w
	}
	return append(lines, line.String())
}
