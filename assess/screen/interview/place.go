package interview

import (
	"errors"
	"strings"

	"cutbrief/assess"
	"cutbrief/assess/screen"

	tea "github.com/charmbracelet/bubbletea"
)

// Mover is a Saver that can go on in another place: a folder, or a file that is
// not there yet. Nothing is written before the next save.
type Mover interface {
	Saver
	MoveTo(place string) error
}

// move goes on in another place, and saves there.
func (w *writer) move(to string, v *assess.Visit, change int) savedMsg {
	if err := w.moveTo(to); err != nil {
		return savedMsg{change, w.path, err}
	}
	return w.save(v, change)
}

func (w *writer) moveTo(to string) error {
	w.mu.Lock()
	defer w.mu.Unlock()
	mover, able := w.saver.(Mover)
	if !able {
		return errors.New("there is no other place")
	}
	return mover.MoveTo(to)
}

// unsaved reports answers that are in memory only, because saving failed.
func (m *Model) unsaved() bool { return m.fault != "" && m.saved < m.change }

// offersPlace reports whether another place can be named now.
func (m *Model) offersPlace() bool {
	_, able := m.writer.saver.(Mover)
	if !able || !m.unsaved() || m.pending > 0 {
		return false
	}
	switch m.state {
	case asking, listing, reading, leaving:
		return true
	}
	return false
}

// openPlace asks for another place.
func (m *Model) openPlace() {
	if m.state == asking {
		m.putAside()
	}
	m.before, m.state = m.state, placing
	m.field = newField(m.look, fieldSpec{kind: assess.FormText, width: m.size.Main()})
}

// closePlace goes back to where saving failed.
func (m *Model) closePlace() {
	switch m.before {
	case listing:
		m.openList()
	case reading:
		m.openResult()
	case leaving:
		m.state = leaving
	default:
		m.backToLast()
	}
}

// keepElsewhere saves in the place named.
func (m *Model) keepElsewhere() tea.Cmd {
	to := strings.TrimSpace(*m.field.typed)
	m.closePlace()
	if to == "" {
		return nil
	}
	m.change++
	m.pending++
	w, v, change := m.writer, snapshot(m.visit), m.change
	return func() tea.Msg { return w.move(to, v, change) }
}

func (m *Model) viewPlacing() []string {
	width := m.size.Main()
	lines := screen.Each(screen.Wrap("Where else should the visit be kept?", width), m.look.Strong.Render)
	lines = append(lines, screen.Each(screen.Wrap("Name a folder, or a file that is not there yet. The place tried before is left as it is.", width), m.look.Dim.Render)...)
	field, _ := m.field.view()
	return append(append(lines, ""), field...)
}
