package interview

import (
	"slices"
	"sync"

	"cutbrief/assess"

	tea "github.com/charmbracelet/bubbletea"
)

// Saver keeps a visit and says where.
type Saver interface {
	Save(v *assess.Visit) (path string, err error)
}

// Pager makes the page of a visit and says where it is.
type Pager interface {
	Page(v *assess.Visit) (path string, err error)
}

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

// leaveMsg asks the screen to save and leave, from outside.
type leaveMsg struct{}

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

// saveCmd saves the answers as they are now.
func saveCmd(w *writer, v *assess.Visit, change int) tea.Cmd {
	v = snapshot(v)
	return func() tea.Msg { return w.save(v, change) }
}

// pageCmd saves and then makes the page.
func pageCmd(w *writer, p Pager, v *assess.Visit, change int) tea.Cmd {
	v = snapshot(v)
	return func() tea.Msg {
		if saved := w.save(v, change); saved.err != nil {
			return saved
		}
		path, err := p.Page(v)
		return pagedMsg{change, path, err}
	}
}

// snapshot is a copy that later answers do not reach.
func snapshot(v *assess.Visit) *assess.Visit {
	c := *v
	c.Answers, c.Skipped = slices.Clone(v.Answers), slices.Clone(v.Skipped)
	if v.Overrule != nil {
		o := *v.Overrule
		c.Overrule = &o
	}
	return &c
}
