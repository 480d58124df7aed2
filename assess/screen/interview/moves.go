package interview

import (
	"strings"

	"cutbrief/assess"
	"cutbrief/assess/screen"
	"cutbrief/assess/screen/words"

	tea "github.com/charmbracelet/bubbletea"
)

// accept takes what stands in the field as the answer and goes on. An empty
// field leaves the question open or not known, and takes a stored answer back.
func (m *Model) accept() tea.Cmd {
	d := m.field.draft()
	if d.empty() {
		return m.leaveOpen()
	}
	a, err := m.read(m.step, d)
	if err != nil {
		m.wrong = words.Complained(err)
		return nil
	}
	if a.State == assess.Told {
		a.State = m.how
	}
	save := m.keep(a)
	m.goOn()
	return save
}

// read checks a draft as the answer to a step.
func (m *Model) read(s assess.Step, d draft) (assess.Answer, error) {
	if form := s.Question.Form; form == assess.FormOne || form == assess.FormSeveral {
		return m.visit.Choose(s, d.chosen)
	}
	a, _, err := m.visit.Read(s, m.heard(s, d.text))
	return a, err
}

// keep stores an answer with the note there is already, and saves.
func (m *Model) keep(a assess.Answer) tea.Cmd {
	if old, has := m.visit.Answer(a.Asked()); has && a.Note == "" {
		a.Note = old.Note
	}
	m.visit.Set(a)
	delete(m.drafts, a.Asked())
	m.think()
	return m.save()
}

// leaveOpen goes on without an answer; a stored one is taken back.
func (m *Model) leaveOpen() tea.Cmd {
	asked := m.step.Asked()
	delete(m.drafts, asked)
	stored, has := m.visit.Answer(asked)
	if !has {
		m.course.Leave(m.step)
	}
	if !has || stored.State == assess.Unknown {
		m.goOn()
		if !has {
			m.told = "left open"
		}
		return nil
	}
	return m.takeBack(stored)
}

// takeBack removes a stored answer. Its note stays, beside "not known".
func (m *Model) takeBack(stored assess.Answer) tea.Cmd {
	m.visit.Clear(stored.Asked())
	told := "the answer is taken back"
	if stored.Note != "" {
		left := assess.NotKnown(m.step)
		left.Note = stored.Note
		m.visit.Set(left)
		told += "; its note stays, as not known"
	}
	m.think()
	m.goOn()
	m.told = told
	return m.save()
}

// notKnown stores that the customer does not know, and goes on.
func (m *Model) notKnown() tea.Cmd {
	save := m.keep(assess.NotKnown(m.step))
	m.goOn()
	return save
}

// goOn shows the next question; after the last one the result, and after a change
// to a visit without open questions the place the rep came from.
func (m *Model) goOn() {
	if m.home != asking && m.open == 0 {
		m.goHome()
		return
	}
	next, more := m.course.Next(m.visit, m.step, &m.panel.Result)
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
	return nil
}

// goBack shows the question before. Whatever stands in the field, it never
// holds the rep up; it is there again on the way forward. Back from the first
// question leaves.
func (m *Model) goBack() tea.Cmd {
	before, shown := m.stepBefore()
	i := m.place(m.step.Asked())
	switch {
	case shown:
	case i == 0:
		return m.leave()
	case i < 0:
		m.openList()
		return nil
	default:
		before = m.steps[i-1]
	}
	m.putAside()
	m.revisit(before)
	m.dropPaste()
	return nil
}

// stepBefore takes the question shown before off the trail, if it still matters.
func (m *Model) stepBefore() (assess.Step, bool) {
	for len(m.trail) > 0 {
		last := m.trail[len(m.trail)-1]
		m.trail = m.trail[:len(m.trail)-1]
		if i := m.place(last); i >= 0 {
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
func (m *Model) backToLast() {
	if len(m.steps) == 0 {
		m.openList()
		return
	}
	if m.place(m.step.Asked()) < 0 {
		m.step = m.steps[len(m.steps)-1]
	}
	m.show(m.step)
}

// goOpen shows the first open question, or says that there is none.
func (m *Model) goOpen() {
	next, open := m.course.First(m.visit, &m.panel.Result)
	if !open {
		m.told = "no question is open"
		return
	}
	m.home, m.trail = asking, nil
	m.revisit(next)
}

// putAside keeps what is typed and not accepted, if anything is.
func (m *Model) putAside() {
	if m.step.Question == nil || m.field.form == nil {
		return
	}
	d := m.field.draft()
	if d.equal(m.standing(m.step)) {
		delete(m.drafts, m.step.Asked())
		return
	}
	m.drafts[m.step.Asked()] = d
}

// putOff goes on behind the group. What is not answered in it stays open and
// comes back last.
func (m *Model) putOff() tea.Cmd {
	m.putAside()
	group := m.step.Question.Group
	off := m.course.PutOff(m.visit, group)
	m.goOn()
	m.dropPaste()
	m.told = strings.TrimPrefix(m.told+" · "+words.PutOff(group, off, "Esc asks"), " · ")
	return nil
}

// toResult shows the result, and leaves open what is open.
func (m *Model) toResult() tea.Cmd {
	m.putAside()
	m.openResult()
	m.dropPaste()
	return nil
}

// hows are the ways to know an answer, in the order the key turns them.
var hows = [...]assess.State{assess.Told, assess.Measured, assess.Assumed}

// turnHow turns how the answer is known, of the stored answer too.
func (m *Model) turnHow() tea.Cmd {
	for i, h := range hows {
		if h == m.how {
			m.how = hows[(i+1)%len(hows)]
			break
		}
	}
	a, has := m.visit.Answer(m.step.Asked())
	if !has || a.State == assess.Unknown {
		return nil
	}
	a.State = m.how
	m.visit.Set(a)
	m.think()
	return m.save()
}

// resize fits everything to the window; what is typed stays.
func (m *Model) resize(width, height int) {
	if width < 1 || height < 1 {
		return
	}
	m.size = screen.Size{Width: width, Height: height}
	m.side = sideLines(m.look, m.words, m.panel, m.size.Side())
	switch m.state {
	case noting, reasoning, placing:
		m.field = newField(m.look, fieldSpec{kind: m.field.kind, has: m.field.draft(), width: m.size.Main()})
	case overruling:
		m.field = m.requirementField(m.field.draft())
	case asking, explaining, deriving:
		m.field = m.fieldFor(m.field.draft(), m.field.row())
	}
	m.layResult()
}
