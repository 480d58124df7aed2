package screen

import (
	"github.com/charmbracelet/huh"
	"github.com/charmbracelet/lipgloss"
	"github.com/muesli/termenv"
)

// Marks say in text what colour says besides: without colour nothing is lost.
const (
	Focus   = "› "
	Ticked  = "[x] "
	Free    = "[ ] "
	Unknown = "[?] "
	Assumed = "[~] "
)

// Look is the palette: the sixteen colours every terminal has, few of them.
type Look struct {
	Strong, Dim, Accent, Good, Bad lipgloss.Style
	Cursor                         lipgloss.Style
}

// NewLook returns the look for the terminal at hand.
func NewLook() Look {
	plain := lipgloss.NewStyle()
	look := Look{
		Strong: plain.Bold(true),
		Dim:    plain.Faint(true),
		Accent: plain.Foreground(lipgloss.Color("6")),
		Good:   plain.Foreground(lipgloss.Color("2")),
		Bad:    plain.Bold(true).Foreground(lipgloss.Color("1")),
		Cursor: plain,
	}
	if lipgloss.ColorProfile() == termenv.Ascii {
		look.Cursor = plain.Transform(cursorAsText)
	}
	return look
}

// cursorAsText shows the place of the cursor where reverse video is not to be
// had.
func cursorAsText(under string) string {
	if under == " " || under == "" {
		return "_"
	}
	return "|" + under
}

// Theme is the look for a form of one field, without title or help of its own.
func (l Look) Theme() *huh.Theme {
	var t huh.Theme
	t.Focused.SelectSelector = l.Accent.SetString(Focus)
	t.Focused.MultiSelectSelector = l.Accent.SetString(Focus)
	t.Focused.SelectedOption = lipgloss.NewStyle()
	t.Focused.SelectedPrefix = l.Accent.SetString(Ticked)
	t.Focused.UnselectedPrefix = lipgloss.NewStyle().SetString(Free)
	t.Focused.TextInput.Cursor = l.Cursor
	t.Focused.TextInput.Prompt = l.Accent
	t.Focused.TextInput.Placeholder = l.Dim
	t.Blurred = t.Focused
	return &t
}
