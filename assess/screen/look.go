package screen

import (
	"github.com/charmbracelet/huh"
	"github.com/charmbracelet/lipgloss"
	"github.com/muesli/termenv"

	"cutbrief/rules/message"
)

// Marks say in text what colour says besides: without colour nothing is lost.
const (
	Focus   = "› "
	Ticked  = "[x] "
	Free    = "[ ] "
	Unknown = "[?] "
	Assumed = "[~] "
)

// Look is the palette: the terminal's own foreground, bold, faint, and three
// colours, each to be read on black and on white, as nobody asks the terminal
// which it has. The background is never painted.
type Look struct {
	Strong, Dim, Accent, Good, Bad lipgloss.Style
	Cursor                         lipgloss.Style
}

// The colours, by their number of the 256 that terminals agree on. What the
// sixteen before them look like is the terminal's choice, yellow on white or dark
// blue on black among them: with sixteen no text has a colour.
const (
	violet = "98"
	green  = "29"
	red    = "131"
)

// NewLook returns the look for the terminal at hand.
func NewLook() Look {
	plain := lipgloss.NewStyle()
	look := Look{
		Strong: plain.Bold(true),
		Dim:    plain.Faint(true),
		Accent: plain.Foreground(shade(violet)),
		Good:   plain.Foreground(shade(green)),
		Bad:    plain.Bold(true).Foreground(shade(red)),
		Cursor: plain,
	}
	switch lipgloss.ColorProfile() {
	case termenv.ANSI:
		look.Accent = look.Strong
	case termenv.Ascii:
		look.Cursor = plain.Transform(cursorAsText)
	}
	return look
}

// shade is a colour where there are 256, and none elsewhere.
func shade(number string) lipgloss.CompleteColor {
	return lipgloss.CompleteColor{TrueColor: number, ANSI256: number}
}

// typed is a text with the cursor before its rune at, behind a lead such as the mark
// of the focus, in lines of at most width cells.
func (l Look) typed(lead string, text []rune, at, width int) []string {
	under, after := nothing, ""
	if at < len(text) {
		under, after = string(text[at]), string(text[at+1:])
	}
	return Hang(l.Accent.Render(lead), string(text[:at])+l.Cursor.Reverse(true).Render(under)+after, width)
}

// nothing stands under the cursor at the end: a space that no line end takes
// away.
const nothing = "\u00a0"

// cursorAsText shows the place of the cursor where reverse video is not to be
// had.
func cursorAsText(under string) string {
	if under == " " || under == "" || under == nothing {
		return "_"
	}
	return "|" + under
}

// Colours says which colours the screens use on the terminal at hand.
func Colours() message.ID {
	switch lipgloss.ColorProfile() {
	case termenv.TrueColor, termenv.ANSI256:
		return "three colours, of the 256 the terminal shows"
	case termenv.ANSI:
		return "none, as the terminal shows 16 of its own choice; bold and faint text"
	}
	return "none; all is said in text"
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
