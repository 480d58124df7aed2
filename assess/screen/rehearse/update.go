package rehearse

import (
	"math"
	"unicode"

	"cutbrief/assess"
	"cutbrief/assess/screen"
	"cutbrief/rules/unit"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"
)

// Update takes one message. It does no I/O; the clock it looks at was handed in.
func (m *Model) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	switch msg := msg.(type) {
	case tea.WindowSizeMsg:
		m.size.Width, m.size.Height = msg.Width, msg.Height
	case tickMsg:
		if msg.pulse == m.pulse {
			m.now = m.clock()
			return m, m.beat()
		}
	case leaveMsg:
		return m, tea.Quit
	case tea.KeyMsg:
		return m, m.typed(msg)
	}
	return m, nil
}

// typed hands on keys one by one: what was hit together means one key each.
func (m *Model) typed(msg tea.KeyMsg) tea.Cmd {
	if screen.Held(msg) {
		return nil
	}
	if msg.Type != tea.KeyRunes || m.state == reasoning {
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
		return tea.Quit
	}
	m.now = m.clock()
	switch m.state {
	case opening:
		return m.updateOpening(msg)
	case timing:
		return m.updateTiming(msg)
	case timed:
		return m.updateTimed(msg)
	case reasoning:
		m.updateReasoning(msg)
		return nil
	case bewaring:
		if key.Matches(msg, m.keys.closeIt) {
			m.state = m.from
		}
		return nil
	case ticking:
		m.updateTicking(msg)
		return nil
	case closing:
		return m.updateClosing(msg)
	}
	return m.updateReady(msg)
}

func (m *Model) updateOpening(msg tea.KeyMsg) tea.Cmd {
	switch k := m.keys; {
	case key.Matches(msg, k.begin):
		if m.began.IsZero() {
			m.began = m.now
		}
		m.open(0)
		return m.restart()
	case key.Matches(msg, k.lists):
		m.openLists()
	case key.Matches(msg, k.quit):
		return tea.Quit
	}
	return nil
}

// restart makes the clock beat anew, at the pace of the present state.
func (m *Model) restart() tea.Cmd {
	m.pulse++
	return m.beat()
}

// open shows a step: as it was left, if its time was taken.
func (m *Model) open(step int) {
	m.step, m.state = step, ready
	if c, ok := m.cuts[step]; ok && c.Took.IsKnown() {
		m.state = timed
	}
}

func (m *Model) updateReady(msg tea.KeyMsg) tea.Cmd {
	if m.isTimed() && key.Matches(msg, m.keys.timer) {
		return m.start()
	}
	m.anyStep(msg)
	return nil
}

// start begins to take the time.
func (m *Model) start() tea.Cmd {
	m.state, m.started = timing, m.now
	return m.restart()
}

func (m *Model) updateTiming(msg tea.KeyMsg) tea.Cmd {
	switch k := m.keys; {
	case key.Matches(msg, k.stop), key.Matches(msg, k.begin):
		if took := m.elapsed(); hundredths(took) > 0 {
			c := m.shown()
			c.Took = unit.Known(hundredths(took))
			m.cuts[m.step] = c
			m.state = timed
		}
		return m.restart()
	case key.Matches(msg, k.back):
		m.state = ready
		return m.restart()
	}
	return nil
}

// hundredths rounds a time to what a hand can tell and a file should hold.
func hundredths(t unit.Second) unit.Second { return unit.Second(math.Round(float64(t)*100) / 100) }

func (m *Model) updateTimed(msg tea.KeyMsg) tea.Cmd {
	if key.Matches(msg, m.keys.again) {
		return m.start()
	}
	m.anyStep(msg)
	return nil
}

// anyStep takes the keys that every step has.
func (m *Model) anyStep(msg tea.KeyMsg) {
	switch k := m.keys; {
	case key.Matches(msg, k.next):
		m.goOn()
	case key.Matches(msg, k.back):
		m.goBack()
	case key.Matches(msg, k.good):
		m.grade(assess.Good)
	case key.Matches(msg, k.fair):
		m.grade(assess.Fair)
	case key.Matches(msg, k.poor):
		m.grade(assess.Poor)
	case key.Matches(msg, k.beware):
		m.from, m.state = m.state, bewaring
	case key.Matches(msg, k.lists):
		m.openLists()
	case key.Matches(msg, k.quit):
		m.from, m.state = m.state, closing
	}
}

func (m *Model) goOn() {
	if m.step == len(m.bench.Steps)-1 {
		m.from, m.state = m.state, closing
		return
	}
	m.open(m.step + 1)
}

func (m *Model) goBack() {
	if m.step == 0 {
		m.state = opening
		return
	}
	m.open(m.step - 1)
}

// grade notes how the cut went; what was not good asks why.
func (m *Model) grade(r assess.Result) {
	c := m.shown()
	c.Result = r
	m.cuts[m.step] = c
	if r != assess.Good {
		m.from, m.state, m.why = m.state, reasoning, []rune(c.Why)
	}
}

// whyMost is the longest reason, in characters; the record keeps no longer
// line.
const whyMost = 200

func (m *Model) updateReasoning(msg tea.KeyMsg) {
	switch {
	case key.Matches(msg, m.keys.done), msg.Type == tea.KeyEsc, msg.Type == tea.KeyCtrlJ:
		m.keepWhy() // nothing typed is lost
		m.state = m.from
	case msg.Type == tea.KeyBackspace && len(m.why) > 0:
		m.why = m.why[:len(m.why)-1]
	case msg.Type == tea.KeyRunes || msg.Type == tea.KeySpace:
		for _, r := range msg.Runes {
			if len(m.why) < whyMost && unicode.IsPrint(r) {
				m.why = append(m.why, r)
			}
		}
	}
}

func (m *Model) keepWhy() {
	c := m.shown()
	c.Why = string(m.why)
	m.cuts[m.step] = c
}

func (m *Model) openLists() { m.from, m.state, m.row = m.state, ticking, 0 }

func (m *Model) updateTicking(msg tea.KeyMsg) {
	switch k := m.keys; {
	case key.Matches(msg, k.tick):
		m.ticks[m.list][m.row] = !m.ticks[m.list][m.row]
		m.row = min(m.row+1, len(m.lines())-1)
	case key.Matches(msg, k.other):
		m.list, m.row = 1-m.list, 0
	case key.Matches(msg, k.move):
		m.row = max(0, min(m.row+by(msg.String(), len(m.lines())), len(m.lines())-1))
	case key.Matches(msg, k.back), key.Matches(msg, k.begin), key.Matches(msg, k.lists):
		m.state = m.from
	}
}

// by is how far a key moves in a list of so many lines.
func by(pressed string, lines int) int {
	return map[string]int{"up": -1, "k": -1, "down": 1, "j": 1, "pgup": -10, "pgdown": 10, "home": -lines, "end": lines}[pressed]
}

func (m *Model) updateClosing(msg tea.KeyMsg) tea.Cmd {
	switch k := m.keys; {
	case key.Matches(msg, k.keep):
		m.keeps = true
		return tea.Quit
	case key.Matches(msg, k.drop):
		return tea.Quit
	case key.Matches(msg, k.back):
		m.state = m.from
	}
	return nil
}
