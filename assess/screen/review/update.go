package review

import (
	"slices"
	"unicode"

	"cutbrief/assess/sanitize"
	"cutbrief/assess/screen"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"
)

// Update takes one message. It does no I/O and nothing that grows with the rows:
// that is done by commands.
func (m *Model) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	switch msg := msg.(type) {
	case tea.WindowSizeMsg:
		m.size.Width, m.size.Height = max(1, msg.Width), max(1, msg.Height)
		m.layOut()
		return m, m.recount()
	case rowsMsg:
		m.take(msg)
		return m, tea.Batch(m.wait(), m.refresh(false))
	case readMsg:
		return m, m.hasRead(msg)
	case togetherMsg:
		return m, m.hasTogether(msg)
	case arrangedMsg:
		return m, m.hasArranged(msg)
	case openedMsg:
		m.hasOpened(msg)
	case pagedMsg:
		m.hasPaged(msg)
	case measuredMsg:
		m.hasMeasured(msg)
	case talliedMsg:
		m.hasTallied(msg)
	case tea.KeyMsg:
		return m, m.pressed(msg)
	}
	return m, nil
}

// take puts rows in their places. One that was remembered is replaced.
func (m *Model) take(msg rowsMsg) {
	if m.stage != msg.stage {
		return // of a reading that was stopped
	}
	m.rows.Set(msg.rows...)
	if msg.stage == judging {
		m.judged += len(msg.rows)
	}
}

// refresh arranges the list anew, if it was asked for otherwise or there are
// twice as many rows as before: not at every handful.
func (m *Model) refresh(changed bool) tea.Cmd {
	if changed {
		m.arrange++
		return m.arrangeCmd()
	}
	if m.rows.Len() >= 2*m.listed {
		return m.arrangeCmd()
	}
	return nil
}

// hasRead goes on with the next stage.
func (m *Model) hasRead(msg readMsg) tea.Cmd {
	if m.stage != msg.stage {
		return nil
	}
	m.totals = msg.totals
	switch {
	case msg.err != nil:
		m.stage, m.fault = stopped, sanitize.Line(msg.err.Error())
		return m.refresh(true)
	case m.stage == looking:
		m.stage = judging
		m.rows.Begin()
		return tea.Batch(m.refresh(true), m.read(false), m.wait())
	}
	m.stage = whole
	m.rows.End()
	return m.togetherCmd()
}

func (m *Model) hasTogether(msg togetherMsg) tea.Cmd {
	m.rows = msg.rows // no more come
	return tea.Batch(m.refresh(true), m.recount())
}

func (m *Model) hasArranged(msg arrangedMsg) tea.Cmd {
	m.asked = 0
	focus := m.place()
	m.list, m.listed = msg.list, msg.rows
	m.keepFocus(focus)
	if n := m.rows.Len(); msg.asked != m.arrange || (n >= 2*msg.rows && n > msg.rows) {
		return m.arrangeCmd()
	}
	return nil
}

// keepFocus stays on the row that had the focus, if it is still in the list.
func (m *Model) keepFocus(focus int) {
	m.at = min(m.at, max(0, len(m.list.Lines)-1))
	if focus >= 0 && m.moved {
		if i := slices.Index(m.list.Lines, int32(focus)); i >= 0 {
			m.at = i
			return
		}
	}
	m.settle(1)
}

// settle moves off the head of a group.
func (m *Model) settle(towards int) {
	for m.at >= 0 && m.at < len(m.list.Lines) && m.list.Head(m.at) != nil {
		m.at += towards
	}
	m.at = max(0, min(m.at, len(m.list.Lines)-1))
}

// pressed hands on letters that came together one by one, as keys that are pressed
// fast or ahead do. What is pasted is text, and only a filter takes it.
func (m *Model) pressed(msg tea.KeyMsg) tea.Cmd {
	if msg.Type != tea.KeyRunes || len(msg.Runes) < 2 || msg.Paste || m.state == filtering {
		return m.key(msg)
	}
	var cmds []tea.Cmd
	for _, r := range msg.Runes {
		cmds = append(cmds, m.key(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{r}}))
	}
	return tea.Batch(cmds...)
}

// key takes one key in the present state.
func (m *Model) key(msg tea.KeyMsg) tea.Cmd {
	if key.Matches(msg, m.keys.leave) {
		return m.quit()
	}
	if screen.Held(msg) {
		return nil
	}
	m.told = ""
	switch m.state {
	case filtering:
		return m.updateFiltering(msg)
	case reading:
		return m.updateReading(msg)
	case counting:
		return m.updateCounting(msg)
	case measuring:
		return m.updateMeasuring(msg)
	}
	return m.updateListing(msg)
}

func (m *Model) quit() tea.Cmd {
	m.stop()
	return tea.Quit
}

func (m *Model) updateListing(msg tea.KeyMsg) tea.Cmd {
	switch k := m.keys; {
	case key.Matches(msg, k.open):
		if i := m.place(); i >= 0 {
			row := m.rows.At(i)
			return m.openCmd(&row)
		}
	case key.Matches(msg, k.filter):
		m.state, m.typed = filtering, []rune(m.filter)
	case key.Matches(msg, k.sort):
		m.sorted = (m.sorted + 1) % len(m.sorts)
		return m.refresh(true)
	case key.Matches(msg, k.group):
		m.group = (m.group + 1) % len(groups)
		return m.refresh(true)
	case key.Matches(msg, k.due):
		return m.filterBy("due <= today and outcome != order and outcome != no")
	case key.Matches(msg, k.flagged):
		return m.filterBy("flags != ?")
	case key.Matches(msg, k.tally):
		return m.tallyCmd()
	case key.Matches(msg, k.measured):
		return m.measuredCmd()
	case key.Matches(msg, k.quit):
		return m.quit()
	case key.Matches(msg, k.cancel):
		return m.escape()
	default:
		m.move(msg.String())
	}
	return nil
}

// filterBy sets a filter, or takes it away if it is the present one.
func (m *Model) filterBy(text string) tea.Cmd {
	if m.filter == text {
		text = ""
	}
	m.filter, m.at, m.moved = text, 0, false
	return m.refresh(true)
}

// escape takes away the filter; without one it stops reading.
func (m *Model) escape() tea.Cmd {
	switch {
	case m.filter != "":
		return m.filterBy("")
	case m.busy():
		m.stop()
		m.stage = stopped
		return m.refresh(true)
	}
	return nil
}

func (m *Model) move(name string) {
	page := m.room()
	by := map[string]int{"up": -1, "k": -1, "down": 1, "j": 1, "pgup": -page, "pgdown": page, "home": -len(m.list.Lines), "end": len(m.list.Lines)}[name]
	if by == 0 {
		return
	}
	m.moved = true
	m.at = max(0, min(m.at+by, len(m.list.Lines)-1))
	m.settle(by)
	if by < 0 && m.place() < 0 {
		m.settle(1) // above it is only the head of the first group
	}
}

// updateFiltering takes the filter as it is typed; the list follows.
func (m *Model) updateFiltering(msg tea.KeyMsg) tea.Cmd {
	switch k := m.keys; {
	case key.Matches(msg, k.accept):
		m.state = listing
		return nil
	case key.Matches(msg, k.clear):
		m.state, m.typed = listing, nil
	case msg.Type == tea.KeyUp, msg.Type == tea.KeyDown, msg.Type == tea.KeyPgUp, msg.Type == tea.KeyPgDown:
		m.move(msg.String())
		return nil
	case msg.Type == tea.KeyBackspace:
		m.typed = m.typed[:max(0, len(m.typed)-1)]
	case msg.Type == tea.KeyCtrlU:
		m.typed = nil
	case msg.Type == tea.KeyRunes, msg.Type == tea.KeySpace:
		m.typed = append(m.typed, printable(msg.Runes)...)
	default:
		return nil
	}
	m.filter, m.at, m.moved = string(m.typed), 0, false
	return m.refresh(true)
}

// printable leaves out what a terminal would not show as itself.
func printable(typed []rune) []rune {
	var kept []rune
	for _, r := range typed {
		if !unicode.IsControl(r) && !unicode.Is(unicode.Cf, r) {
			kept = append(kept, r)
		}
	}
	return kept
}

func (m *Model) hasOpened(msg openedMsg) {
	m.state, m.open, m.visit, m.raw = reading, msg.row, msg.visit, msg.raw
	m.part = flagsPart
	if m.visit != nil && m.open.Flags == 0 {
		m.part = briefPart
	}
	m.layOut()
	m.detail.GotoTop()
}

func (m *Model) updateReading(msg tea.KeyMsg) tea.Cmd {
	switch k := m.keys; {
	case key.Matches(msg, k.quit):
		return m.quit()
	case key.Matches(msg, k.back):
		m.state, m.open, m.visit, m.raw = listing, nil, nil, nil
	case key.Matches(msg, k.turn):
		m.part = (m.part + 1) % parts
		m.layOut()
		m.detail.GotoTop()
	case key.Matches(msg, k.page):
		return m.pageCmd()
	default:
		m.scroll(msg)
	}
	return nil
}

// scroll moves in what is longer than the screen.
func (m *Model) scroll(msg tea.KeyMsg) {
	switch msg.Type {
	case tea.KeyHome:
		m.detail.GotoTop()
	case tea.KeyEnd:
		m.detail.GotoBottom()
	default:
		m.detail, _ = m.detail.Update(msg)
	}
}

// scrolls reports a state that shows a text.
func (m *Model) scrolls() bool {
	return m.state == reading || m.state == measuring || m.state == counting
}

// layOut words what is open for the window's size.
func (m *Model) layOut() {
	if !m.scrolls() {
		return
	}
	m.detail.Width = max(1, m.size.Width-2)
	m.detail.Height = max(1, m.size.Room(len(m.foot()))-1)
	m.detail.SetContent(m.content(m.detail.Width))
}
