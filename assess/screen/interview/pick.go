package interview

import (
	"fmt"

	"cutbrief/assess"
	"cutbrief/assess/screen/words"
	"cutbrief/rules/message"

	tea "github.com/charmbracelet/bubbletea"
)

// oneDigit is the longest list of which a single digit names every option.
const oneDigit = 9

// pickedAlready answers an Enter pressed out of habit behind a number.
const pickedAlready = "the number was enough, and is taken; Enter is for this question now"

// letters hands typed text to the question: the number of one option takes it at
// once, "=" takes what is offered, and all else is edited.
func (m *Model) letters(msg tea.KeyMsg) tea.Cmd {
	text := msg.Type == tea.KeyRunes && len(msg.Runes) > 0
	switch kind := m.field.kind; {
	case text && kind == assess.FormOne && len(m.field.options) <= oneDigit && isDigit(msg.Runes[0]):
		return m.choose(msg)
	case text && kind == assess.FormQuantity && string(msg.Runes) == "=":
		return m.onward(m.takeOffer())
	}
	m.edit(msg)
	return nil
}

func isDigit(r rune) bool { return r >= '0' && r <= '9' }

// choose takes the option of a number and goes on, which Esc undoes. Digits typed
// ahead behind it are for the next question.
func (m *Model) choose(msg tea.KeyMsg) tea.Cmd {
	number, asked := int(msg.Runes[0]-'0'), m.step
	if number < 1 || number > len(m.field.options) {
		m.wrong = []string{fmt.Sprintf("there is no number %d here", number), fmt.Sprintf("choose by number, from 1 to %d", len(m.field.options))}
		return nil
	}
	m.wrong = nil
	option := m.field.options[number-1].Text
	m.field.pick(number)
	save := m.accept()
	if len(m.wrong) > 0 {
		return save
	}
	m.picked = true
	m.told = "taken: " + asked.Name().String() + ", " + message.Keep(string(option)) + " (Esc goes back to it)"
	msg.Runes = msg.Runes[1:]
	if len(msg.Runes) == 0 {
		return save
	}
	return tea.Batch(save, m.key(asText(msg)))
}

// takeOffer takes what the question offers as its answer.
func (m *Model) takeOffer() tea.Cmd {
	o, offered := m.visit.Offered(m.step)
	if !offered {
		m.wrong = []string{"nothing is offered here", "give " + string(m.step.Question.Example)}
		return nil
	}
	asked := m.step
	if o.Answer.State == assess.Told {
		o.Answer.State = m.how
	}
	save := m.keep(o.Answer)
	m.goOn()
	m.told = "taken: " + asked.Name().String() + ", " + words.SaidSo(asked.Question, o.Text()) + " (Esc goes back to it)"
	return save
}
