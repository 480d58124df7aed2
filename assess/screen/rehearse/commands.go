package rehearse

import (
	"time"

	tea "github.com/charmbracelet/bubbletea"
)

// tickMsg says that the clock is worth a look. An old one, of a timer that was
// stopped, is passed over.
type tickMsg struct{ pulse int }

// leaveMsg asks the screen to leave, from outside.
type leaveMsg struct{}

// How often the clock is drawn: a hand cannot tell a tenth of a second, and
// minutes need no more than one look a second.
const (
	quick = 100 * time.Millisecond
	slow  = time.Second
)

// later waits, and then lets the screen look at the clock.
func later(d time.Duration) tea.Cmd {
	return tea.Tick(d, func(time.Time) tea.Msg { return tickMsg{} })
}

// beat asks for the next look at the clock.
func (m *Model) beat() tea.Cmd {
	d := slow
	if m.state == timing {
		d = quick
	}
	cmd := m.tick(d)
	if cmd == nil {
		return nil
	}
	pulse := m.pulse
	return func() tea.Msg {
		cmd()
		return tickMsg{pulse}
	}
}
