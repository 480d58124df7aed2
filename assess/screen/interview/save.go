package interview

import (
	"errors"
	"strings"
	"sync"

	"cutbrief/assess"
	"cutbrief/assess/sanitize"
	"cutbrief/assess/screen"
	"cutbrief/rules/message"

	tea "github.com/charmbracelet/bubbletea"
)

// savedMsg reports a save of the answers up to a change.
type savedMsg struct {
	change int
	path   string
	err    error
}

// pagedMsg reports a page made, or why not.
type pagedMsg struct {
	change int // that was saved before
	path   string
	err    error
}

// writer saves, one save at a time. A save that a later one has overtaken is
// left out, and each builds on the revision of the last.
type writer struct {
	mu       sync.Mutex
	saver    Saver
	change   int
	revision int
	path     string
}

// save keeps a visit as it was after a change.
func (w *writer) save(v *assess.Visit, change int) savedMsg {
	w.mu.Lock()
	defer w.mu.Unlock()
	if change <= w.change {
		return savedMsg{w.change, w.path, nil}
	}
	v.Revision = max(v.Revision, w.revision)
	path, err := w.saver.Save(v)
	if err != nil {
		return savedMsg{change, w.path, err}
	}
	w.change, w.revision, w.path = change, v.Revision, path
	return savedMsg{change, path, nil}
}

// moveTo goes on in another place.
func (w *writer) moveTo(to string) error {
	w.mu.Lock()
	defer w.mu.Unlock()
	mover, able := w.saver.(Mover)
	if !able {
		return errors.New("there is no other place")
	}
	return mover.MoveTo(to)
}

// pageCmd saves and then makes the page.
func pageCmd(w *writer, p Pager, v *assess.Visit, change int) tea.Cmd {
	v = v.Clone()
	return func() tea.Msg {
		if saved := w.save(v, change); saved.err != nil {
			return saved
		}
		path, err := p.Page(v)
		return pagedMsg{change, path, err}
	}
}

// save stores the answers as they are, in the background.
func (m *Model) save() tea.Cmd {
	m.change++
	m.pending++
	w, v, change := m.writer, m.Visit.Clone(), m.change
	return func() tea.Msg { return w.save(v, change) }
}

// hasSaved takes the outcome of a save. A failure is shown at once; the answers
// stay in memory, and the next answer tries again.
func (m *Model) hasSaved(msg savedMsg) tea.Cmd {
	m.pending = max(0, m.pending-1)
	if m.failure = msg.err; msg.err != nil {
		m.fault = message.New("not saved: {1}", outside(msg.err.Error()))
	} else {
		m.saved, m.fault, m.kept = max(m.saved, msg.change), message.Message{}, msg.path
	}
	if m.state == leaving && m.pending == 0 && (m.saved >= m.change || m.forced) {
		return tea.Quit
	}
	return nil
}

// unsaved reports answers that are in memory only, because saving failed.
func (m *Model) unsaved() bool { return !m.fault.IsEmpty() && m.saved < m.change }

// offersPlace reports whether another place can be named now.
func (m *Model) offersPlace() bool {
	_, able := m.writer.saver.(Mover)
	return able && m.unsaved() && m.pending == 0 && m.state != placing
}

// openPlace asks for another place, from any state; what is typed there waits. It
// says where the answers are if they are saved.
func (m *Model) openPlace() tea.Cmd {
	switch {
	case m.offersPlace():
		m.openOver(placing)
		m.held = m.field
		m.field = m.typing(screen.OneLine, "")
	case m.change == 0 && m.kept == "":
		m.Told = message.New("nothing is answered yet, so nothing is saved")
	case m.fault.IsEmpty() && m.saved >= m.change:
		m.Told = message.New("all answers are saved in {1}", outside(m.kept))
	}
	return nil
}

// closePlace goes back to where saving failed, in the window's present size.
func (m *Model) closePlace() tea.Cmd {
	last := len(m.behind) - 1
	m.state, m.behind, m.field = m.behind[last], m.behind[:last], m.held
	m.resize()
	return nil
}

// keepElsewhere saves in the place named.
func (m *Model) keepElsewhere() tea.Cmd {
	to := strings.TrimSpace(m.field.Text())
	m.closePlace()
	if to == "" {
		return nil
	}
	m.change++
	m.pending++
	w, v, change := m.writer, m.Visit.Clone(), m.change
	return func() tea.Msg {
		if err := w.moveTo(to); err != nil {
			return savedMsg{change, w.path, err}
		}
		return w.save(v, change)
	}
}

// leave keeps all that is typed, saves, and quits once that is done.
func (m *Model) leave() tea.Cmd {
	if m.state == placing {
		m.closePlace()
	}
	if m.state != leaving {
		m.settle()
		m.openOver(leaving)
	}
	if m.saved < m.change {
		return m.save() // one more does no harm: it is left out if overtaken
	}
	return tea.Quit
}

// Leave leaves even if saving fails.
func (m *Model) Leave() tea.Cmd {
	m.forced = true
	return m.leave()
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
	case asking:
		m.putAside()
	case deriving:
		if m.behind[len(m.behind)-1] == asking {
			m.putAside()
		}
	}
	m.unkept = nil
	switch {
	case m.state == telling && strings.TrimSpace(m.field.Text()) != "":
		m.unkept = append(m.unkept, sanitize.Line(m.field.Text()))
	case m.state == offering:
		m.unkept = append(m.unkept, m.said)
	}
	if len(m.paste) > 0 {
		m.unkept = append(m.unkept, m.Print(pastedLines(m.paste))+": "+sanitize.Line(strings.Join(m.paste, " / ")))
	}
	for _, s := range m.Visit.Steps() {
		d, typed := m.drafts[s.Asked()]
		if !typed || d.Empty() || s.Question.Form == assess.FormOne {
			continue // a row that has the focus is not an answer
		}
		a, _, err := m.read(s, d)
		if err != nil {
			m.unkept = append(m.unkept, m.Print(complaint(err)[0]))
			continue
		}
		m.keep(a)
	}
	m.pending = under // the saves asked for here are not run: leave saves once
}

// reopen goes on with the interview after a save that failed.
func (m *Model) reopen() tea.Cmd {
	m.close()
	switch m.state {
	case listing:
		m.rows = m.listRows()
	case reading, choosing, reasoning:
		m.openResult()
	default:
		return m.backToLast()
	}
	return nil
}

// finish saves what no save has reached, and reports. It waits for a save that
// is under way.
func (m *Model) finish() Outcome {
	if m.state != leaving {
		m.settle() // the terminal went away
	}
	out := Outcome{Page: m.page, Open: m.open, Finished: m.open == 0, Unkept: m.unkept}
	if m.saved < m.change {
		out.Unsaved = m.writer.save(m.Visit, m.change).err
	}
	out.Path = m.writer.path
	m.Visit.Revision = max(m.Visit.Revision, m.writer.revision)
	return out
}
