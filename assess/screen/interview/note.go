package interview

import (
	"strings"

	"cutbrief/assess"
	"cutbrief/assess/sanitize"

	tea "github.com/charmbracelet/bubbletea"
)

func (m *Model) openNote() {
	m.putAside()
	stored, _ := m.visit.Answer(m.step.Asked())
	m.state = noting
	m.field = newField(m.look, fieldSpec{kind: assess.FormLong, has: draft{text: sanitize.Lines(stored.Note)}, width: m.size.Main()})
}

// keepNote stores the note and goes back to its question. A note needs an
// answer to stand beside: a question without one becomes "not known" until it
// is answered.
func (m *Model) keepNote() tea.Cmd {
	note := strings.TrimSpace(sanitize.Lines(*m.field.typed))
	a, has := m.visit.Answer(m.step.Asked())
	if note == a.Note {
		m.show(m.step)
		return nil
	}
	m.told = "noted"
	if !has {
		a = assess.NotKnown(m.step)
		m.told = "noted; the question counts as not known until it is answered"
	}
	a.Note = note
	m.visit.Set(a)
	m.think()
	m.show(m.step)
	return m.save()
}
