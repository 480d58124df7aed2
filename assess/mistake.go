package assess

import (
	"strconv"

	"cutbrief/assess/sanitize"
	"cutbrief/rules/message"
)

// Mistake is an answer that could not be taken, with what would be. Its two
// parts can be shown on two lines.
type Mistake struct {
	Question message.Message // name of the question, with its metal
	Value    string          // as given
	Wrong    message.Message // what is wrong with it: "is not a thickness"
	Hint     message.Message // what would be accepted
}

// Error writes both parts in one line, in English.
func (m *Mistake) Error() string { return m.Message().String() }

// Message is both parts, for every language.
func (m *Mistake) Message() message.Message { return message.Join("; ", m.What(), m.Hint) }

// What is the first line: question, value and what is wrong.
func (m *Mistake) What() message.Message {
	if m.Value == "" {
		return message.New("{1}: {2}", m.Question, m.Wrong)
	}
	return message.New("{1}: {2} {3}", m.Question, message.Name(strconv.Quote(m.Value)), m.Wrong)
}

// mistake reports a value given to a step.
func mistake(s Step, value string, wrong message.ID, hint message.Message) error {
	return &Mistake{s.Name(), brief(value), wrong.Message(), hint}
}

// give is the hint that an answer such as the example would be accepted.
func give(s Step) message.Message { return message.New("give {1}", s.Question.Example) }

// brief makes a value from anywhere safe and short enough for a message.
func brief(value string) string {
	const long = 60
	value = sanitize.Line(value)
	if r := []rune(value); len(r) > long {
		return string(r[:long]) + "…"
	}
	return value
}
