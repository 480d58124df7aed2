package interview

import (
	"slices"

	"cutbrief/assess"
	"cutbrief/assess/screen"
	"cutbrief/assess/screen/words"

	tea "github.com/charmbracelet/bubbletea"
)

// row is one line of the list of questions: a group's title, or a step.
type row struct {
	group   assess.Group
	title   string // of a group; "" for a step
	skipped bool
	put     bool // put off, to come back last
	step    assess.Step
	mark    string
	value   string
}

// openList shows all questions that matter, with their state.
func (m *Model) openList() {
	if m.state == asking {
		m.putAside()
		m.dropPaste()
	}
	if m.state == asking || m.state == reading {
		m.from = m.state
	}
	m.state = listing
	m.rows = m.listRows()
	m.at = m.rowOf(m.step)
}

func (m *Model) listRows() []row {
	var rows []row
	for _, g := range assess.Groups() {
		if m.visit.Skips(g.ID) {
			rows = append(rows, row{group: g.ID, title: string(g.Title), skipped: true})
			continue
		}
		rows = append(rows, row{group: g.ID, title: string(g.Title), put: m.course.PutOffSo(g.ID)})
		for _, s := range m.steps {
			if s.Question.Group == g.ID {
				mark, value := m.stateOf(s)
				rows = append(rows, row{group: g.ID, step: s, mark: mark, value: value})
			}
		}
	}
	return rows
}

// rowOf is the row of a step, else the first that can be opened.
func (m *Model) rowOf(s assess.Step) int {
	first := -1
	for i, r := range m.rows {
		if first < 0 && r.opens() {
			first = i
		}
		if r.step.Question != nil && s.Question != nil && r.step.Asked() == s.Asked() {
			return i
		}
	}
	return max(0, first)
}

func (r row) opens() bool { return r.skipped || r.step.Question != nil }

// stateOf is a step's mark and its answer in short.
func (m *Model) stateOf(s assess.Step) (mark, value string) {
	a, has := m.visit.Answer(s.Asked())
	switch {
	case has && a.State == assess.Unknown:
		return screen.Unknown, "not known"
	case has && a.State == assess.Assumed:
		return screen.Assumed, words.Marked(s.Question, a) + " (assumed)"
	case has:
		return screen.Ticked, words.Marked(s.Question, a)
	case s.Question.Optional:
		return screen.Free, "(optional)"
	}
	return screen.Free, ""
}

// openRow goes to the question of the row, or takes a skipped group back in.
func (m *Model) openRow() tea.Cmd {
	r := m.rows[m.at]
	m.home, m.trail = listing, nil
	if !r.skipped {
		if r.step.Question != nil {
			m.revisit(r.step)
		}
		return nil
	}
	m.visit.Ask(r.group)
	m.think()
	m.rows = m.listRows()
	return m.save()
}

// leaveOut leaves the group of the row out of this visit. Answers in it stay and
// count.
func (m *Model) leaveOut() tea.Cmd {
	g := m.rows[m.at].group
	if m.visit.Skips(g) {
		return nil
	}
	var out []assess.Step
	for _, s := range m.steps {
		if _, has := m.visit.Answer(s.Asked()); !has && s.Question.Group == g {
			out = append(out, s)
		}
	}
	m.visit.Skip(g)
	m.think()
	m.rows = m.listRows()
	m.at = slices.IndexFunc(m.rows, func(r row) bool { return r.group == g })
	m.told = words.LeftOut(g, out) + "; Enter takes it back"
	return m.save()
}

func (m *Model) closeList() {
	if m.from == reading {
		m.openResult()
		return
	}
	m.backToLast()
}

// moveInList moves to the next row that can be opened.
func (m *Model) moveInList(pressed string) {
	by := map[string]int{"up": -1, "k": -1, "down": 1, "j": 1, "pgup": -10, "pgdown": 10, "home": -len(m.rows), "end": len(m.rows)}[pressed]
	if by == 0 {
		return
	}
	aim := min(max(0, m.at+by), len(m.rows)-1)
	for _, towards := range []int{by / abs(by), -by / abs(by)} {
		for at := aim; at >= 0 && at < len(m.rows); at += towards {
			if m.rows[at].opens() {
				m.at = at
				return
			}
		}
	}
}

func abs(n int) int { return max(n, -n) }
