package screen

import (
	"github.com/charmbracelet/bubbles/textinput"
	tea "github.com/charmbracelet/bubbletea"
)

// Line is a text of one line that is typed, and wrapped where it is shown.
type Line struct{ input textinput.Model }

// NewLine is a line with a text in it and the cursor behind it.
func NewLine(text string) Line {
	l := Line{textinput.New()}
	l.input.CharLimit = lineMost
	l.input.Focus() // its command blinks a cursor that is not drawn
	l.input.SetValue(text)
	return l
}

// Key edits the line, without what a terminal would not show as itself.
func (l *Line) Key(msg tea.KeyMsg) { l.input, _ = l.input.Update(printable(msg)) }

// Text is what is typed.
func (l *Line) Text() string { return l.input.Value() }

// Lines are the line with its cursor behind a lead, such as the mark of the focus,
// in lines of at most width cells.
func (l *Line) Lines(look Look, lead string, width int) []string {
	return look.typed(lead, []rune(l.input.Value()), l.input.Position(), width)
}
