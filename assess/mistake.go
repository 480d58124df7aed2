package assess

import (
	"fmt"

	"cutbrief/assess/sanitize"
)

// Mistake is an answer that could not be taken, with what would be. Its two
// parts can be shown on two lines.
type Mistake struct {
	Question string // name of the question, with its metal
	Value    string // as given
	Wrong    string // what is wrong with it: "is not a thickness"
	Hint     string // what would be accepted
}

// Error writes both parts in one line.
func (m *Mistake) Error() string { return m.What() + "; " + m.Hint }

// What is the first line: question, value and what is wrong.
func (m *Mistake) What() string {
	if m.Value == "" {
		return m.Question + ": " + m.Wrong
	}
	return fmt.Sprintf("%s: %q %s", m.Question, m.Value, m.Wrong)
}

// mistake reports a value given to a step.
func mistake(s Step, value, wrong, hint string) error {
	return &Mistake{s.Name(), brief(value), wrong, hint}
}

// brief makes a value from anywhere safe and short enough for a message.
func brief(value string) string {
	const long = 60
	value = sanitize.Line(value)
	if r := []rune(value); len(r) > long {
		return string(r[:long]) + "…"
	}
	return value
}
