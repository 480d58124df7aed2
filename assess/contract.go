package assess

import (
	"errors"
	"time"

	"cutbrief/rules"
	"cutbrief/rules/metal"
	"cutbrief/rules/unit"
)

// Groups returns the groups in order, with their titles.
func Groups() []struct {
	ID    Group
	Title string
} {
	return nil
}

// Catalogue returns every question in the order asked.
func Catalogue() []*Question { return nil }

// Text returns the step's question with the metal's name put in.
func (s Step) Text() string { return "" }

// Asked returns the fact and metal the step asks for.
func (s Step) Asked() rules.Asked { return rules.Asked{} }

// New starts a visit.
func New(id string, now time.Time) *Visit { return nil }

// Steps returns the questions that can matter, given the answers so far, in
// the order asked. Steps of skipped groups are left out.
func (v *Visit) Steps() []Step { return nil }

// NextOpen returns the first step without an answer.
func (v *Visit) NextOpen() (Step, bool) { return Step{}, false }

// Answer returns the answer to a step.
func (v *Visit) Answer(a rules.Asked) (Answer, bool) { return Answer{}, false }

// Set stores an answer in place of any earlier one to the same step.
func (v *Visit) Set(a Answer) {}

// Clear removes the answer to a step.
func (v *Visit) Clear(a rules.Asked) {}

// Style returns the visit's units; metric until it is answered.
func (v *Visit) Style() unit.Style { return unit.Metric }

// Metals returns the metals chosen, in the order chosen.
func (v *Visit) Metals() []metal.ID { return nil }

// Read checks what was typed for a step that is answered by text, date or
// quantity, and returns the answer to store and an echo of how it was
// understood ("3/8 in = 9.5 mm"); the echo is "" when there is nothing to add.
func (v *Visit) Read(s Step, said string) (Answer, string, error) {
	return Answer{}, "", errors.New("not written yet")
}

// Choose checks the options chosen for a step and returns the answer.
func (v *Visit) Choose(s Step, options []string) (Answer, error) {
	return Answer{}, errors.New("not written yet")
}

// Problem is one answer that could not be understood, with what would be.
type Problem struct {
	Asked rules.Asked
	Text  string // names the question, the value and what is accepted
}

// Job turns the answers into what the rules need. Answers that cannot be
// understood become problems and stay not known.
func (v *Visit) Job() (rules.Job, []Problem) { return rules.Job{}, nil }

// Decode reads a saved visit. It refuses a newer version by name, a foreign
// format, and anything over its limits; unknown fields are kept and listed.
func Decode(data []byte) (v *Visit, unknown []string, err error) {
	return nil, nil, errors.New("not written yet")
}

// Encode writes the visit, indented, in stable order.
func (v *Visit) Encode() ([]byte, error) { return nil, errors.New("not written yet") }

// Schema returns the JSON Schema of the saved format.
func Schema() []byte { return nil }
