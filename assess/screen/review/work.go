package review

import (
	"slices"

	"cutbrief/assess/review"
	"cutbrief/assess/screen"
	"cutbrief/rules/message"

	tea "github.com/charmbracelet/bubbletea"
)

// then is what to do with what was read or made in the background. It runs in
// Bubble Tea's loop, as keys do.
type then func() tea.Cmd

// Receive goes on with what was done in the background.
func (m *Model) Receive(msg tea.Msg) tea.Cmd {
	switch msg := msg.(type) {
	case then:
		return msg()
	case tea.WindowSizeMsg:
		return m.recount()
	}
	return nil
}

// Init begins to read the folder.
func (m *Model) Init() tea.Cmd { return tea.Batch(m.read(looking), m.wait()) }

// read reads the folder in the background. What is read goes through the inbox, so
// that a slow screen slows reading down and not the other way round.
func (m *Model) read(now stage) tea.Cmd {
	return func() tea.Msg {
		totals, err := m.Read(m.ctx, now == looking, func(rows []*review.Row) { m.post(m.gotRows(now, slices.Clone(rows)...)) })
		m.post(m.gotAll(now, totals, err))
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

// gotRows puts rows in their places. One that was remembered is replaced; those of a
// reading that was stopped are dropped.
func (m *Model) gotRows(of stage, rows ...*review.Row) then {
	return func() tea.Cmd {
		if m.stage == of {
			m.rows.Set(rows...)
			if of == judging {
				m.judged += len(rows)
			}
		}
		return tea.Batch(m.wait(), m.refresh(false))
	}
}

// gotAll goes on with the next stage.
func (m *Model) gotAll(of stage, totals review.Totals, err error) then {
	return func() tea.Cmd {
		if m.stage != of {
			return nil
		}
		m.totals = totals
		switch {
		case err != nil:
			m.stage, m.fault = stopped, message.Of(err)
			return m.refresh(true)
		case of == looking:
			m.stage = judging
			m.rows.Begin()
			return tea.Batch(m.refresh(true), m.read(judging), m.wait())
		}
		m.stage = whole
		m.rows.End()
		return m.together()
	}
}

// together raises the flags that need all rows.
func (m *Model) together() tea.Cmd {
	rows := m.rows.Snapshot()
	return func() tea.Msg {
		rows.Together()
		return then(func() tea.Cmd {
			m.rows = rows // no more come
			return tea.Batch(m.refresh(true), m.recount())
		})
	}
}

// refresh arranges the list anew, if it was asked for otherwise or there are
// twice as many rows as before: not at every handful.
func (m *Model) refresh(changed bool) tea.Cmd {
	if changed {
		m.arranged++
	} else if m.rows.Len() < 2*m.listed {
		return nil
	}
	return m.arrange()
}

// arrange arranges the list in the background: with very many rows it takes longer
// than a key may.
func (m *Model) arrange() tea.Cmd {
	if m.asked > 0 {
		return nil // when that one is done, the next begins
	}
	m.asked = m.arranged
	asked, rows, keep := m.asked, m.rows.Snapshot(), m.where()
	order, _ := review.ParseOrder(m.sorts[m.sorted])
	var by *review.Field
	if f, ok := review.FindField(string(groups[m.group])); ok {
		by = &f
	}
	return func() tea.Msg {
		list := review.Arrange(rows, keep, order, by)
		return then(func() tea.Cmd {
			focus := m.place()
			m.asked, m.list, m.listed = 0, list, rows.Len()
			m.keepFocus(focus)
			if n := m.rows.Len(); asked != m.arranged || (n >= 2*rows.Len() && n > rows.Len()) {
				return m.arrange()
			}
			return nil
		})
	}
}

// keepFocus stays on the row that had the focus, if it is still in the list.
func (m *Model) keepFocus(focus int) {
	if i := slices.Index(m.list.Lines, int32(focus)); i >= 0 && focus >= 0 && m.moved {
		m.at = screen.Focused(i)
		return
	}
	at := min(int(m.at), max(0, len(m.list.Lines)-1))
	for at < len(m.list.Lines)-1 && m.list.Head(at) != nil {
		at++
	}
	m.at = screen.Focused(at)
}

// openRow reads the visit that has the focus.
func (m *Model) openRow() tea.Cmd {
	i := m.place()
	if i < 0 {
		return nil
	}
	row := m.rows.At(i)
	return func() tea.Msg {
		v, raw, _ := m.Load(row.Path) // why it cannot be read is in the row
		return then(func() tea.Cmd {
			m.state, m.open, m.visit, m.raw, m.part = reading, &row, v, raw, flagsPart
			if v != nil && row.Flags == 0 {
				m.part = briefPart
			}
			m.text.Show(m.visitLines)
			return nil
		})
	}
}

// printVisit makes the page of the visit that is open.
func (m *Model) printVisit() tea.Cmd {
	if m.visit == nil || m.Page == nil {
		m.window.Told = message.New("no page can be made of this file")
		return nil
	}
	path, v := m.open.Path, m.visit
	return func() tea.Msg { return m.printed(m.Page(path, v)) }
}

// printCounts makes the page of the counts.
func (m *Model) printCounts() tea.Cmd {
	rows, files, by := m.kept(), m.rows.Len(), string(splits[m.split])
	return func() tea.Msg { return m.printed(m.Teller.Print(rows, files, by)) }
}

// printed says where a page is, or why there is none.
func (m *Model) printed(path string, err error) then {
	return func() tea.Cmd {
		m.window.Told = message.New("the page is in {1}", message.Name(path))
		if err != nil {
			m.window.Told = message.New("no page: {1}", message.Of(err))
		}
		return nil
	}
}

// count counts the rows that the filter keeps.
func (m *Model) count() tea.Cmd {
	if m.Teller == nil {
		return nil
	}
	rows, files, by, width := m.kept(), m.rows.Len(), string(splits[m.split]), m.width()
	return func() tea.Msg {
		text, err := m.Teller.Tell(rows, files, by, width)
		return m.counted(by, width, text, err)
	}
}

// counted shows the counts, unless they are no longer those asked for.
func (m *Model) counted(by string, width int, text string, err error) then {
	return func() tea.Cmd {
		switch {
		case by != string(splits[m.split]) || width != m.width() || m.state != counting && m.state != listing:
		case err != nil:
			m.window.Told = message.New("no counts: {1}", message.Of(err))
		default:
			m.show(counting, text)
		}
		return nil
	}
}

// recount counts again where the counts are shown and the rows or the width changed.
func (m *Model) recount() tea.Cmd {
	if m.state != counting {
		return nil
	}
	return m.count()
}

// measure reads the timed cuts: all files anew, as no index holds them. It waits
// until the rows are whole, so that the folder is not read twice at once.
func (m *Model) measure() tea.Cmd {
	switch {
	case m.Measured == nil || m.busy:
		return nil
	case m.stage != whole:
		m.window.Told = message.New("timed cuts can be shown once all files are read")
		return nil
	}
	m.busy, m.window.Told = true, message.New("reading the timed cuts …")
	filter := m.ours(m.filter)
	return func() tea.Msg {
		text, err := m.Measured(m.ctx, filter)
		return then(func() tea.Cmd {
			m.busy, m.window.Told = false, message.Message{}
			switch {
			case err != nil:
				m.window.Told = message.New("no timed cuts: {1}", message.Of(err))
			case m.state == listing: // and the manager has not gone on
				m.show(measuring, text)
			}
			return nil
		})
	}
}

// show shows a text that was worded elsewhere: from its top, or where the same was
// shown before, and at its end if that was in view.
func (m *Model) show(in state, text string) {
	end := m.state == in && m.text.AtEnd()
	m.worded = text
	if m.state != in {
		m.state = in
		m.text.Show(m.wordedLines)
	}
	m.text.Lay()
	if end { // what is split stands there
		m.text.End()
	}
}
