package interview

import (
	"slices"
	"strings"

	"cutbrief/assess"
	"cutbrief/assess/screen"
	"cutbrief/rules"
	"cutbrief/rules/message"

	tea "github.com/charmbracelet/bubbletea"
)

// goOn shows the next question; after the last one the result, and after a change
// to a visit without open questions the place the rep came from.
func (m *Model) goOn() {
	if m.home != asking && m.open == 0 {
		m.goHome()
		return
	}
	next, more := m.course.Next(m.Visit, m.step, &m.panel.Result)
	if !more {
		m.openResult()
		return
	}
	m.trail = append(m.trail, m.step.Asked())
	m.show(next)
}

func (m *Model) goHome() {
	if m.home == listing {
		m.openList()
		return
	}
	m.openResult()
}

// goLater goes on and keeps what is typed for the way back.
func (m *Model) goLater() tea.Cmd {
	m.putAside()
	m.course.Leave(m.step)
	m.goOn()
	return m.onward(nil)
}

// goBack shows the question before. Whatever is in the field, it never holds the
// rep up; it is there again on the way forward. Back from the first question
// leaves.
func (m *Model) goBack() tea.Cmd {
	before, shown := m.stepBefore()
	if !shown {
		return m.leave()
	}
	m.putAside()
	m.revisit(before)
	m.dropPaste()
	return nil
}

// stepBefore takes the question shown before off the trail, if it still matters.
// Before the first one shown come those answered before it, the last one first.
func (m *Model) stepBefore() (assess.Step, bool) {
	for len(m.trail) > 0 {
		last := m.trail[len(m.trail)-1]
		m.trail = m.trail[:len(m.trail)-1]
		if i := m.place(last); i >= 0 {
			return m.steps[i], true
		}
	}
	return m.earlier()
}

// earlier is the question before the one shown where none was shown before it: in
// the order of the catalogue, or of the answers.
func (m *Model) earlier() (assess.Step, bool) {
	if m.InOrder {
		i := m.place(m.step.Asked())
		return m.steps[max(0, i-1)], i > 0
	}
	from := slices.IndexFunc(m.Visit.Answers, func(a assess.Answer) bool { return a.Asked() == m.step.Asked() })
	if from < 0 {
		from = len(m.Visit.Answers)
	}
	for _, a := range slices.Backward(m.Visit.Answers[:from]) {
		if i := m.place(a.Asked()); i >= 0 {
			return m.steps[i], true
		}
	}
	return assess.Step{}, false
}

// revisit shows a question out of turn. Its group, if it was put off, is taken up
// again.
func (m *Model) revisit(s assess.Step) {
	m.course.TakeUp(s.Question.Group)
	m.show(s)
}

// backToLast shows the last question shown, if it still matters.
func (m *Model) backToLast() tea.Cmd {
	if len(m.steps) == 0 {
		m.openList()
		return nil
	}
	if m.place(m.step.Asked()) < 0 {
		m.step = m.steps[len(m.steps)-1]
	}
	m.show(m.step)
	return nil
}

// goOpen shows the first open question, or says that there is none.
func (m *Model) goOpen() tea.Cmd {
	next, open := m.course.First(m.Visit, &m.panel.Result)
	if !open {
		m.Told = message.New("every question is answered")
		return nil
	}
	m.home, m.trail = asking, nil
	m.revisit(next)
	return nil
}

// putAside keeps what is typed and not accepted, if anything is.
func (m *Model) putAside() {
	if m.step.Question == nil {
		return
	}
	d := m.field.Draft()
	if d.Equal(m.standing(m.step)) {
		delete(m.drafts, m.step.Asked())
		return
	}
	m.drafts[m.step.Asked()] = d
}

// putOff goes on behind the group. What is not answered in it stays open and
// comes back last; asks is the key or the word that asks it now.
func (m *Model) putOff(asks message.ID) tea.Cmd {
	m.putAside()
	group := m.step.Question.Group
	off := m.course.PutOff(m.Visit, group)
	m.goOn()
	m.dropPaste()
	m.Told = message.Join(" · ", m.Told, putOffSays(group, off, asks))
	return nil
}

// putOffSays says which questions come last, and what asks them now.
func putOffSays(g assess.Group, off []assess.Step, asks message.ID) message.Message {
	switch len(off) {
	case 0:
		return message.New("{1}: every question is answered", g.Title())
	case 1:
		return message.New("{1}: one question comes at the end, {2}. {3} asks it now", g.Title(), off[0].Name(), asks)
	}
	text := message.New("{1}: {2} questions come at the end, from {3} to {4}. {5} asks them now",
		g.Title(), message.Count(len(off)), off[0].Name(), off[len(off)-1].Name(), asks)
	if slices.ContainsFunc(off, func(s assess.Step) bool { return s.Question.ID == rules.FactBreaker }) {
		return message.Join(". ", text, message.New("The electrician can tell you about the power"))
	}
	return text
}

// skipGroup leaves what is not answered in a group out of this visit. Answers in
// it stay and count; back says what brings it back.
func (m *Model) skipGroup(g assess.Group, back message.ID) tea.Cmd {
	if m.Visit.Skips(g) {
		return nil
	}
	var out []assess.Step
	for _, s := range m.steps {
		if _, has := m.Visit.Answer(s.Asked()); !has && s.Question.Group == g {
			out = append(out, s)
		}
	}
	m.Visit.Skip(g)
	m.think()
	m.Told = message.Join("; ", skipSays(g, out), back.Message())
	return m.save()
}

func skipSays(g assess.Group, out []assess.Step) message.Message {
	switch len(out) {
	case 0:
		return message.New("{1} is skipped: no question in it was open", g.Title())
	case 1:
		return message.New("{1} is skipped: one question, {2}", g.Title(), out[0].Name())
	}
	return message.New("{1} is skipped: {2} questions, from {3} to {4}", g.Title(), message.Count(len(out)), out[0].Name(), out[len(out)-1].Name())
}

// takeIn asks a skipped group after all.
func (m *Model) takeIn(g assess.Group) tea.Cmd {
	m.Visit.Ask(g)
	m.course.TakeUp(g)
	m.think()
	return m.save()
}

// row is one line of the list of questions: a group's title, or a step.
type row struct {
	group   assess.Group
	skipped bool
	put     bool        // put off, to come back last
	step    assess.Step // none for a title
	mark    string
	value   message.Message
}

func (r row) opens() bool { return r.skipped || r.step.Question != nil }

// openList shows all questions that matter, with their state.
func (m *Model) openList() {
	if m.state == asking {
		m.putAside()
		m.dropPaste()
	}
	m.openOver(listing)
	m.rows = m.listRows()
	m.at = m.rowOf(m.step)
}

func (m *Model) listRows() []row {
	var rows []row
	for _, g := range assess.Groups() {
		rows = append(rows, row{group: g.ID, skipped: m.Visit.Skips(g.ID), put: m.course.PutOffSo(g.ID)})
		for _, s := range m.steps {
			if s.Question.Group == g.ID && !m.Visit.Skips(g.ID) {
				mark, value := m.stateOf(s)
				rows = append(rows, row{group: g.ID, step: s, mark: mark, value: value})
			}
		}
	}
	return rows
}

// rowOf is the row of a step, else the first that can be opened.
func (m *Model) rowOf(s assess.Step) screen.Focused {
	first := -1
	for i, r := range m.rows {
		if first < 0 && r.opens() {
			first = i
		}
		if r.step.Question != nil && s.Question != nil && r.step.Asked() == s.Asked() {
			return screen.Focused(i)
		}
	}
	return screen.Focused(max(0, first))
}

// stateOf is a step's mark and its answer in short.
func (m *Model) stateOf(s assess.Step) (mark string, value message.Message) {
	a, has := m.Visit.Answer(s.Asked())
	switch {
	case has && a.State == assess.Unknown:
		return screen.Unknown, message.New("not known")
	case has && a.State == assess.Assumed:
		return screen.Assumed, message.New("{1} (assumed)", s.Question.Shown(a))
	case has:
		return screen.Ticked, s.Question.Shown(a)
	case s.Question.Optional:
		return screen.Free, message.New("(optional)")
	}
	return screen.Free, message.Message{}
}

// openRow goes to the question of the row, or takes a skipped group back in.
func (m *Model) openRow() tea.Cmd {
	r := m.rows[m.at]
	m.home, m.trail = listing, nil
	switch {
	case r.skipped:
		save := m.takeIn(r.group)
		m.rows = m.listRows()
		return save
	case r.step.Question != nil:
		m.revisit(r.step)
	}
	return nil
}

// skipRow skips the group of the row.
func (m *Model) skipRow() tea.Cmd {
	g := m.rows[m.at].group
	save := m.skipGroup(g, "Enter brings it back")
	m.rows = m.listRows()
	m.at = screen.Focused(slices.IndexFunc(m.rows, func(r row) bool { return r.group == g }))
	return save
}

// closeList goes back to the result it was opened from, or to the last question.
func (m *Model) closeList() tea.Cmd {
	if slices.Contains(m.behind, reading) {
		m.openResult()
		return nil
	}
	return m.backToLast()
}

// unpaste takes pasted text apart into lines.
func unpaste(pasted []rune) []string {
	text := strings.NewReplacer("\r\n", "\n", "\r", "\n").Replace(string(pasted))
	return strings.Split(text, "\n")
}

// pasted hands on pasted lines to the questions, each but the last with an Enter.
// What follows a line that is not taken waits until that one is put right.
func (m *Model) pasted(lines []string) tea.Cmd {
	var cmds []tea.Cmd
	for i, line := range lines {
		at := m.step
		cmds = append(cmds, m.line(line))
		if i == len(lines)-1 {
			break
		}
		if len(m.wrong) == 0 && m.state == asking && m.step == at { // "=" goes on by itself
			m.picked = false
			cmds = append(cmds, m.accept())
		}
		if len(m.wrong) > 0 {
			m.paste = slices.DeleteFunc(lines[i+1:], func(s string) bool { return strings.TrimSpace(s) == "" })
			break
		}
	}
	return tea.Batch(cmds...)
}

// line puts one pasted line where it belongs: into a list by number or text, else
// as typed.
func (m *Model) line(text string) tea.Cmd {
	if text == "" || m.state != asking {
		return nil
	}
	if !m.field.IsList() {
		return m.typeAnswer(screen.AsText(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(text)}))
	}
	d := screen.Draft{Chosen: m.named(text)}
	if _, _, err := m.read(m.step, d); err != nil {
		m.wrong = complaint(err)
		return nil
	}
	m.wrong = nil
	m.field = m.fieldFor(d)
	return nil
}

// named are the choices that a line names: by number, identifier or text, several
// with commas between, or by digits together where several can be chosen. What
// names none stays as it is, to be complained of.
func (m *Model) named(line string) []string {
	chosen := screen.Chosen(m.field.Spec.Choices, line)
	if m.field.Spec.Kind != screen.Several || len(chosen) != 1 {
		return chosen
	}
	var together []string
	for _, n := range m.field.Numbers(line) {
		if n >= 1 && n <= len(m.field.Spec.Choices) {
			together = append(together, m.field.Spec.Choices[n-1].ID)
		}
	}
	if len(together) == 0 {
		return chosen
	}
	return together
}

// onward goes on with pasted lines that waited, once the question they waited for
// is behind.
func (m *Model) onward(done tea.Cmd) tea.Cmd {
	if len(m.wrong) > 0 || len(m.paste) == 0 {
		return done
	}
	lines := append(m.paste, "")
	m.paste = nil
	return tea.Batch(done, m.pasted(lines))
}

// dropPaste gives up the lines that wait, as the rep goes elsewhere, and says so.
func (m *Model) dropPaste() {
	if len(m.paste) > 0 {
		m.Told = message.New("{1} not used: {2}", pastedLines(m.paste), outside(strings.Join(m.paste, " / ")))
		m.paste = nil
	}
}

// pastedLines counts pasted lines.
func pastedLines(lines []string) message.Message {
	return message.Counted(len(lines), "{1} more pasted line", "{1} more pasted lines")
}
