package screen

import (
	"github.com/charmbracelet/lipgloss"
	"github.com/muesli/termenv"
)

// Colours says which colours the screens use on the terminal at hand.
func Colours() string {
	switch lipgloss.ColorProfile() {
	case termenv.TrueColor, termenv.ANSI256:
		return "three colours, of the 256 the terminal shows"
	case termenv.ANSI:
		return "none, as the terminal shows 16 of its own choice; bold and faint text"
	}
	return "none; all is said in text"
}
