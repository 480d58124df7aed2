package review

import (
	"strings"

	"cutbrief/assess/sanitize"
	"cutbrief/assess/screen"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"
)

// measuredMsg hands over what the timed cuts of the rows shown say.
type measuredMsg struct {
	text string
	err  error
}

// measuredCmd reads the timed cuts: all files anew, as no index holds them. It
// waits until the rows are whole, so that the folder is not read twice at once.
func (m *Model) measuredCmd() tea.Cmd {
	switch {
	case m.Measured == nil || m.timing:
		return nil
	case m.stage != whole:
		m.told = "timed cuts can be shown once all files are read"
		return nil
	}
	m.timing, m.told = true, "reading the timed cuts …"
	filter := m.filter
	return func() tea.Msg {
		text, err := m.Measured(m.ctx, filter)
		return measuredMsg{text, err}
	}
}

// hasMeasured shows them, unless the manager has gone on to something else.
func (m *Model) hasMeasured(msg measuredMsg) {
	m.timing, m.told = false, ""
	switch {
	case msg.err != nil:
		m.told = "no timed cuts: " + sanitize.Line(msg.err.Error())
	case m.state == listing:
		m.state, m.cuts = measuring, msg.text
		m.layOut()
		m.detail.GotoTop()
	}
}

func (m *Model) updateMeasuring(msg tea.KeyMsg) tea.Cmd {
	switch k := m.keys; {
	case key.Matches(msg, k.quit):
		return m.quit()
	case key.Matches(msg, k.back):
		m.state, m.cuts = listing, ""
	default:
		m.scroll(msg)
	}
	return nil
}

// cutLines are the words about timed cuts, later lines of one set in.
func (m *Model) cutLines(width int) string {
	var lines []string
	for line := range strings.Lines(m.cuts) {
		body := strings.TrimRight(line, "\n")
		in := body[:len(body)-len(strings.TrimLeft(body, " "))]
		if body = sanitize.Line(body); body == "" {
			lines = append(lines, "")
			continue
		}
		lines = append(lines, screen.Hang(in, body, width)...)
	}
	return strings.Join(lines, "\n")
}
