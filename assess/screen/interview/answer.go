package interview

import (
	"errors"
	"strings"

	"cutbrief/assess"
	"cutbrief/assess/sanitize"
	"cutbrief/assess/screen"
	"cutbrief/rules/message"

	tea "github.com/charmbracelet/bubbletea"
)

// accept takes what is in the field as the answer and goes on. An empty field
// skips the question or leaves it as not known, and removes a stored answer.
func (m *Model) accept() tea.Cmd {
	if m.picked {
		m.picked, m.Told = false, message.New("that number was enough: it is saved. Enter now answers this question")
		return nil
	}
	d := m.field.Draft()
	_, has := m.answer()
	switch {
	case d.Empty():
		return m.onward(m.skip())
	case has && d.Equal(m.standing(m.step)):
		delete(m.drafts, m.step.Asked())
		m.goOn()
		return m.onward(nil)
	}
	a, _, err := m.read(m.step, d)
	if err != nil {
		m.wrong = complaint(err)
		return nil
	}
	return m.onward(m.take(a))
}

// take stores an answer and goes on. How it is known is what was said before,
// unless the answer says.
func (m *Model) take(a assess.Answer) tea.Cmd {
	if a.State == assess.Told {
		a.State = m.known
	}
	save := m.keep(a)
	m.goOn()
	return save
}

// read checks a draft as the answer to a step, and says how it is understood.
func (m *Model) read(s assess.Step, d screen.Draft) (assess.Answer, message.Message, error) {
	switch s.Question.Form {
	case assess.FormOne, assess.FormSeveral:
		a, err := m.Visit.Choose(s, d.Chosen)
		return a, message.Message{}, err
	case assess.FormQuantity:
		return m.Visit.Read(s, m.Options.Words.Answer(d.Text)) // from the words of a language
	}
	return m.Visit.Read(s, d.Text)
}

// keep stores an answer with the note there is already, and saves.
func (m *Model) keep(a assess.Answer) tea.Cmd {
	if old, has := m.Visit.Answer(a.Asked()); has && a.Note == "" {
		a.Note = old.Note
	}
	m.Visit.Set(a)
	delete(m.drafts, a.Asked())
	m.think()
	return m.save()
}

// skip goes on without an answer; a stored one is removed.
func (m *Model) skip() tea.Cmd {
	stored, has := m.answer()
	delete(m.drafts, m.step.Asked())
	if !has {
		m.course.Leave(m.step)
	}
	if has && stored.State != assess.Unknown {
		save := m.remove()
		told := m.Told
		m.goOn()
		m.Told = told
		return save
	}
	m.goOn()
	if !has {
		m.Told = message.New("skipped")
	}
	return nil
}

// remove removes the stored answer. Its note stays, beside "not known".
func (m *Model) remove() tea.Cmd {
	stored, has := m.answer()
	if !has {
		m.Told = message.New("there is no answer to remove")
		return nil
	}
	m.Visit.Clear(stored.Asked())
	m.Told = message.New("answer removed")
	if stored.Note != "" {
		left := assess.NotKnown(m.step)
		left.Note = stored.Note
		m.Visit.Set(left)
		m.Told = message.New("answer removed; its note stays, and the answer is not known")
	}
	m.think()
	return m.save()
}

// notKnown stores that the customer does not know, and goes on.
func (m *Model) notKnown() tea.Cmd {
	save := m.keep(assess.NotKnown(m.step))
	m.goOn()
	return m.onward(save)
}

// takeOffer takes what the question offers as its answer.
func (m *Model) takeOffer() tea.Cmd {
	o, offered := m.Visit.Offered(m.step)
	if !offered {
		m.wrong = []message.Message{message.New("there is nothing to repeat here"), message.New("give {1}", m.step.Question.Example)}
		return nil
	}
	asked := m.step
	save := m.take(o.Answer)
	m.Told = message.New("{1}: {2} (Esc goes back)", asked.Name(), asked.Question.Said(o.Text()))
	return save
}

// states are the ways to know an answer, in the order the key turns them.
var states = [...]assess.State{assess.Told, assess.Measured, assess.Assumed}

// stateNames say how an answer is known.
var stateNames = map[assess.State]message.ID{assess.Told: "customer said", assess.Measured: "measured", assess.Assumed: "assumed"}

// turnKnown turns how the answer is known.
func (m *Model) turnKnown() tea.Cmd {
	for i, s := range states {
		if s == m.known {
			return m.setKnown(states[(i+1)%len(states)])
		}
	}
	return nil
}

// setKnown says how the answer is known, of the stored answer too.
func (m *Model) setKnown(s assess.State) tea.Cmd {
	m.known = s
	a, has := m.answer()
	if !has || a.State == assess.Unknown {
		return nil
	}
	a.State = s
	m.Visit.Set(a)
	m.think()
	return m.save()
}

func (m *Model) openNote() tea.Cmd {
	m.putAside()
	stored, _ := m.answer()
	m.openOver(noting)
	m.field = m.typing(screen.ManyLines, sanitize.Lines(stored.Note))
	return nil
}

// typing is a field for a text of any kind.
func (m *Model) typing(kind screen.FieldKind, text string) screen.Field {
	return screen.NewField(m.Look, screen.FieldSpec{Kind: kind, Has: screen.Draft{Text: text}, Width: m.Size.Main()})
}

func (m *Model) keepNote() tea.Cmd {
	text := m.field.Text()
	m.show(m.step)
	return m.note(text)
}

// note keeps a note to the question. It needs an answer to be kept beside: a
// question without one becomes "not known" until it is answered.
func (m *Model) note(text string) tea.Cmd {
	text = strings.TrimSpace(sanitize.Lines(text))
	a, has := m.answer()
	if text == a.Note {
		return nil
	}
	m.Told = message.New("note kept")
	if !has {
		a = assess.NotKnown(m.step)
		m.Told = message.New("note kept; the question counts as not known until it is answered")
	}
	a.Note = text
	m.Visit.Set(a)
	m.think()
	if m.state == asking {
		m.show(m.step)
	}
	return m.save()
}

// outside is a text that is not ours, in one line, without the full stop that Windows
// ends its errors with.
func outside(text string) message.Message {
	return message.Text(strings.TrimSuffix(sanitize.Line(text), "."))
}

// complaint is an error in two lines: what is wrong, and what would be taken.
func complaint(err error) []message.Message {
	var mistake *assess.Mistake
	if !errors.As(err, &mistake) {
		return []message.Message{outside(err.Error())}
	}
	return []message.Message{mistake.What(), mistake.Hint}
}
