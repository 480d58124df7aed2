package review

import (
	"slices"

	"cutbrief/assess"
	"cutbrief/assess/review"
	"cutbrief/assess/sanitize"

	tea "github.com/charmbracelet/bubbletea"
)

// rowsMsg hands over rows of a stage.
type rowsMsg struct {
	stage stage
	rows  []*review.Row
}

// readMsg ends a stage.
type readMsg struct {
	stage  stage
	totals review.Totals
	err    error
}

// togetherMsg hands over the rows with the flags that no file shows by itself.
type togetherMsg struct{ rows *review.Rows }

// arrangedMsg hands over the list as it was asked for.
type arrangedMsg struct {
	asked int
	rows  int // how many rows there were
	list  review.Listing
}

// openedMsg hands over a visit.
type openedMsg struct {
	row   *review.Row
	visit *assess.Visit // nil if it cannot be read
	raw   []byte
}

// pagedMsg says where the page of a visit is, or why there is none.
type pagedMsg struct {
	path string
	err  error
}

// read reads the folder in the background. Rows go through the inbox, so that a
// slow screen slows reading down and not the other way round.
func (m *Model) read(remembered bool) tea.Cmd {
	now := looking
	if !remembered {
		now = judging
	}
	return func() tea.Msg {
		totals, err := m.Read(m.ctx, remembered, func(rows []*review.Row) { m.post(rowsMsg{now, slices.Clone(rows)}) })
		m.post(readMsg{now, totals, err})
		return nil
	}
}

// post puts a message into the inbox, unless reading was stopped.
func (m *Model) post(msg tea.Msg) {
	select {
	case m.inbox <- msg:
	case <-m.ctx.Done():
	}
}

// wait takes the next message out of the inbox.
func (m *Model) wait() tea.Cmd { return func() tea.Msg { return m.next() } }

// fromInbox waits for the next message, or for the end of reading.
func (m *Model) fromInbox() tea.Msg {
	select {
	case msg := <-m.inbox:
		return msg
	case <-m.ctx.Done():
		return nil
	}
}

// arrangeCmd arranges the list in the background: with very many rows it takes
// longer than a key may.
func (m *Model) arrangeCmd() tea.Cmd {
	if m.asked > 0 {
		return nil // when that one is done, the next begins
	}
	m.asked = m.arrange
	asked, rows, text, today := m.asked, m.rows.Snapshot(), m.filter, m.Today
	order, _ := review.ParseOrder(m.sorts[m.sorted])
	var by *review.Field
	if f, ok := review.FindField(groups[m.group]); ok {
		by = &f
	}
	return func() tea.Msg {
		return arrangedMsg{asked, rows.Len(), review.Arrange(rows, review.Find(text, today), order, by)}
	}
}

// togetherCmd raises the flags that need all rows.
func (m *Model) togetherCmd() tea.Cmd {
	rows := m.rows.Snapshot()
	return func() tea.Msg {
		rows.Together()
		return togetherMsg{rows}
	}
}

// openCmd reads one visit.
func (m *Model) openCmd(row *review.Row) tea.Cmd {
	return func() tea.Msg {
		v, raw, _ := m.Load(row.Path) // why it cannot be read is in the row
		return openedMsg{row, v, raw}
	}
}

// pageCmd makes the page of the visit that is open.
func (m *Model) pageCmd() tea.Cmd {
	if m.visit == nil || m.Page == nil {
		m.told = "no page can be made of this file"
		return nil
	}
	path, v := m.open.Path, m.visit
	return func() tea.Msg {
		made, err := m.Page(path, v)
		return pagedMsg{made, err}
	}
}

func (m *Model) hasPaged(msg pagedMsg) {
	m.told = "the page is in " + sanitize.Line(msg.path)
	if msg.err != nil {
		m.told = "no page: " + sanitize.Line(msg.err.Error())
	}
}
