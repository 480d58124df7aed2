package rehearse

import (
	"strings"

	"cutbrief/assess"
	"cutbrief/assess/screen"
	"cutbrief/rules/message"
	"cutbrief/rules/unit"

	tea "github.com/charmbracelet/bubbletea"
)

// Commands are those of the present state: big keys, to be hit with gloves on.
func (m *Model) Commands() []screen.Command {
	k := m.window.Keys
	leave := screen.Command{Binding: k.Leave, Do: m.Leave}
	lists := screen.Command{Binding: screen.Bind("checklists", "c"), Do: m.goTo(ticking)}
	switch m.state {
	case opening:
		return []screen.Command{{Binding: screen.Bind("begin", "enter", "ctrl+j"), Do: m.begin}, lists, {Binding: k.Quit, Do: m.Leave}}
	case timing:
		return []screen.Command{{Binding: screen.Bind("stop the time", " ", "enter", "ctrl+j"), Do: m.stop}, {Binding: k.Back, Do: m.cancel}, leave}
	case reasoning:
		return []screen.Command{{Binding: screen.Bind("keep", "enter", "esc", "ctrl+j"), Do: m.endReason}, leave}
	case ticking:
		return []screen.Command{{Binding: screen.Bind("tick", " ", "x"), Do: m.tickRow}, {Binding: k.Move}, {Binding: screen.Bind("the other list", "tab"), Do: m.otherList},
			{Binding: screen.Bind("back", "esc", "shift+tab", "enter", "c"), Do: m.goTo(m.from)}, leave}
	case closing:
		return []screen.Command{{Binding: screen.Bind("keep it and note the rest", "k"), Do: m.keep},
			{Binding: screen.Bind("leave without keeping", "q", "ctrl+c", "alt+ctrl+c"), Do: m.Leave}, {Binding: k.Back, Do: m.goTo(m.from)}}
	}
	list := []screen.Command{
		{Binding: screen.Bind("next", "enter", "right", "pgdown", "ctrl+j"), Do: m.next}, lists,
		{Binding: screen.Bind("back", "esc", "shift+tab", "left", "pgup", "backspace"), Do: m.back},
		{Binding: screen.Bind("leave", "q"), Do: m.goTo(closing)},
		m.grading("1", assess.Good), m.grading("2", assess.Fair), m.grading("3", assess.Poor), leave,
	}
	if m.isTimed() {
		does := message.ID("start the time")
		if m.state == timed {
			does = "take it again"
		}
		list = append([]screen.Command{{Binding: screen.Bind(does, " "), Do: m.start}}, list...)
	}
	return list
}

// goTo goes to a state that can be left again for the present one.
func (m *Model) goTo(to state) func() tea.Cmd {
	return func() tea.Cmd {
		m.from, m.state, m.row = m.state, to, 0
		return nil
	}
}

func (m *Model) begin() tea.Cmd {
	m.now = m.Now()
	if m.began.IsZero() {
		m.began = m.now
	}
	m.open(0)
	return m.restart()
}

// open shows a step: as it was left, if its time was taken.
func (m *Model) open(step int) {
	m.step, m.state = step, ready
	if c, ok := m.cuts[step]; ok && c.Took.IsKnown() {
		m.state = timed
	}
}

// start begins to take the time.
func (m *Model) start() tea.Cmd {
	m.now = m.Now()
	m.state, m.started = timing, m.now
	return m.restart()
}

// stop takes the time. One that is none runs on.
func (m *Model) stop() tea.Cmd {
	m.now = m.Now()
	if took := hundredths(m.elapsed()); took > 0 {
		c := m.shown()
		c.Took = unit.Known(took)
		m.cuts[m.step], m.state = c, timed
	}
	return m.restart()
}

func (m *Model) cancel() tea.Cmd {
	m.state = ready
	return m.restart()
}

func (m *Model) next() tea.Cmd {
	if m.step == len(m.Bench.Steps)-1 {
		return m.goTo(closing)()
	}
	m.open(m.step + 1)
	return nil
}

func (m *Model) back() tea.Cmd {
	if m.step == 0 {
		m.state = opening
	} else {
		m.open(m.step - 1)
	}
	return nil
}

// grading notes how the cut went; what was not good asks why.
func (m *Model) grading(key string, r assess.Result) screen.Command {
	return screen.Command{Binding: screen.Bind(message.ID(r), key), Do: func() tea.Cmd {
		c := m.shown()
		c.Result = r
		m.cuts[m.step] = c
		if r != assess.Good {
			m.from, m.state, m.why = m.state, reasoning, screen.NewLine(c.Why)
		}
		return nil
	}}
}

// endReason ends a reason; nothing typed is lost.
func (m *Model) endReason() tea.Cmd {
	m.keepWhy()
	m.state = m.from
	return nil
}

func (m *Model) keepWhy() {
	c := m.shown()
	c.Why = m.why.Text()
	m.cuts[m.step] = c
}

func (m *Model) tickRow() tea.Cmd {
	m.ticks[m.list][int(m.row)] = !m.ticks[m.list][int(m.row)]
	m.Type(tea.KeyMsg{Type: tea.KeyDown})
	return nil
}

func (m *Model) otherList() tea.Cmd {
	m.list, m.row = 1-m.list, 0
	return nil
}

func (m *Model) keep() tea.Cmd {
	m.keeps = true
	return tea.Quit
}

// Typing is the reason.
func (m *Model) Typing() (string, bool) { return m.why.Text(), m.state == reasoning }

// Type edits the reason, or moves in a checklist. Digits that came together are
// keys hit fast.
func (m *Model) Type(msg tea.KeyMsg) tea.Cmd {
	const page = 10
	switch {
	case m.state == reasoning:
		m.why.Key(msg)
	case m.state == ticking:
		m.row.Key(msg, len(m.lines()), page, func(int) bool { return true })
	case msg.Type == tea.KeyRunes && len(msg.Runes) > 1 && strings.Trim(string(msg.Runes), "123") == "":
		var cmds []tea.Cmd
		for _, r := range msg.Runes {
			cmds = append(cmds, m.window.Press(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{r}}))
		}
		return tea.Batch(cmds...)
	}
	return nil
}
