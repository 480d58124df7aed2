package interview

import (
	"strings"

	"cutbrief/assess"
	"cutbrief/assess/sanitize"
	"cutbrief/assess/screen/words"

	tea "github.com/charmbracelet/bubbletea"
)

// save stores the answers as they are, in the background.
func (m *Model) save() tea.Cmd {
	m.change++
	m.pending++
	return saveCmd(m.writer, m.visit, m.change)
}

// hasSaved takes the outcome of a save. A failure is shown at once; the answers
// stay in memory, and the next answer tries again.
func (m *Model) hasSaved(msg savedMsg) tea.Cmd {
	m.pending = max(0, m.pending-1)
	if msg.err != nil {
		m.fault = "not saved: " + outside(msg.err.Error())
	} else {
		m.saved, m.fault, m.kept = max(m.saved, msg.change), "", msg.path
	}
	if m.state == leaving && m.pending == 0 && (m.saved >= m.change || m.forced) {
		return tea.Quit
	}
	return nil
}

// leave keeps all that is typed, saves, and quits once that is done.
func (m *Model) leave() tea.Cmd {
	if m.state == placing {
		m.closePlace()
	}
	if m.state != leaving {
		m.from = m.state
		m.settle()
		m.state = leaving
	}
	if m.saved < m.change {
		return m.save() // one more does no harm: it is left out if overtaken
	}
	return tea.Quit
}

// settle accepts what is typed and can be understood. What cannot is named
// after leaving, so that it is not lost unseen.
func (m *Model) settle() {
	under := m.pending
	switch m.state {
	case noting:
		m.keepNote()
	case reasoning:
		m.keepReason()
	case asking, explaining, deriving:
		m.putAside()
	}
	m.unkept = nil
	if len(m.paste) > 0 {
		m.unkept = append(m.unkept, waitingLines(m.paste)+": "+sanitize.Line(strings.Join(m.paste, " / ")))
	}
	for _, s := range m.visit.Steps() {
		d, typed := m.drafts[s.Asked()]
		if !typed || d.empty() || s.Question.Form == assess.FormOne {
			continue // a row that has the focus is not an answer
		}
		a, err := m.read(s, d)
		if err != nil {
			m.unkept = append(m.unkept, words.Complaint(err)[0])
			continue
		}
		m.keep(a)
	}
	m.pending = under // the saves asked for here are not run: leave saves once
}

// reopen goes on with the interview after a save that failed.
func (m *Model) reopen() {
	switch m.from {
	case listing:
		m.openList()
	case reading, overruling, reasoning:
		m.openResult()
	default:
		m.backToLast()
	}
}
