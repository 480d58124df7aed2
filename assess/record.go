package assess

import (
	"slices"
	"time"

	"cutbrief/rules"
	"cutbrief/rules/metal"
	"cutbrief/rules/unit"
)

// New starts a visit. Times are kept to the second, as saved.
func New(id string, now time.Time) *Visit {
	now = now.Truncate(time.Second)
	return &Visit{ID: id, Created: now, Updated: now}
}

// Asked returns the fact and metal the answer belongs to.
func (a Answer) Asked() rules.Asked { return rules.Asked{Fact: a.Question, Metal: a.Metal} }

// Answer returns the answer to a step.
func (v *Visit) Answer(a rules.Asked) (Answer, bool) {
	if i := v.index(a); i >= 0 {
		return v.Answers[i], true
	}
	return Answer{}, false
}

func (v *Visit) index(a rules.Asked) int {
	for i := range v.Answers {
		if v.Answers[i].Question == a.Fact && v.Answers[i].Metal == a.Metal {
			return i
		}
	}
	return -1
}

// Set stores an answer in place of any earlier one to the same step.
func (v *Visit) Set(a Answer) {
	i := v.index(a.Asked())
	if i < 0 {
		v.Answers = append(v.Answers, a)
		return
	}
	if a.extra == nil {
		a.extra = v.Answers[i].extra
	}
	v.Answers[i] = a
}

// Clear removes the answer to a step.
func (v *Visit) Clear(a rules.Asked) {
	if i := v.index(a); i >= 0 {
		v.Answers = append(v.Answers[:i:i], v.Answers[i+1:]...)
	}
}

// NotKnown returns the answer of a customer who does not know.
func NotKnown(s Step) Answer {
	return Answer{Question: s.Question.ID, Metal: s.Metal, State: Unknown}
}

// Style returns the visit's units; metric until it is answered.
func (v *Visit) Style() unit.Style {
	if v.chose(FactUnits, string(unit.Inch)) {
		return unit.Inch
	}
	return unit.Metric
}

// Metals returns the metals chosen, in the order chosen, each once. Metals
// this program does not know are left out; Job reports them.
func (v *Visit) Metals() []metal.ID {
	a, ok := v.Answer(rules.Asked{Fact: rules.FactMetals})
	if !ok || a.State == Unknown {
		return nil
	}
	var metals []metal.ID
	for _, id := range a.Chosen {
		m, known := metal.Find(metal.ID(id))
		if known && !slices.Contains(metals, m.ID) {
			metals = append(metals, m.ID)
		}
	}
	return metals
}

// Said is what was said to a question asked once; "" if it was not, or is not
// known.
func (v *Visit) Said(f rules.Fact) string {
	a, _ := v.Answer(rules.Asked{Fact: f})
	if a.State == Unknown {
		return ""
	}
	return a.Said
}

// Thickest is the thickest regular clean cut of any metal, of the answers that are
// understood.
func (v *Visit) Thickest() unit.Maybe[unit.Millimetre] {
	var thickest unit.Maybe[unit.Millimetre]
	q, _ := Find(rules.FactThickest)
	for _, a := range v.Answers {
		if a.Question != q.ID || a.State == Unknown {
			continue
		}
		m, err := understand(Step{q, a.Metal}, a, v.Style())
		if t := unit.Millimetre(m.reading.Quantity.Value); err == nil && t > thickest.Or(-1) {
			thickest = unit.Known(t)
		}
	}
	return thickest
}
