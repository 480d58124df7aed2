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
	return able && m.unsaved() && m.pending == 0 && m.state != placing
}

// elsewhere asks for another place, or says that none is needed.
func (m *Model) elsewhere() {
	switch {
	case m.offersPlace():
		m.openPlace()
	case m.change == 0 && m.kept == "":
		m.told = "nothing is answered yet, so nothing is saved"
	case m.fault == "" && m.saved >= m.change:
		m.told = "all answers are saved in " + outside(m.kept)
	}
}

// openPlace asks for another place, from any screen. What is typed there waits.
func (m *Model) openPlace() {
	m.before, m.state, m.held = m.state, placing, m.field
	m.field = newField(m.look, fieldSpec{kind: assess.FormText, width: m.size.Main()})
}

// closePlace goes back to where saving failed, in the window's present size.
func (m *Model) closePlace() {
	m.state, m.field = m.before, m.held
	m.resize(m.size.Width, m.size.Height)
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
	lines := screen.Each(m.wrap("Where else should the visit be kept?", width), m.look.Strong.Render)
	lines = append(lines, screen.Each(m.wrap("Name a folder, or a file that is not there yet. The place tried before is left as it is.", width), m.look.Dim.Render)...)
	field, _ := m.field.view()
	return append(append(lines, ""), field...)
}
