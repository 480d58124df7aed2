package casebook

import (
	"slices"

	"cutbrief/assess"
	"cutbrief/report"
	"cutbrief/rules"
	"cutbrief/rules/message"
	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// Level says what a miss could have changed.
type Level int

// The levels, each graver than the one before.
const (
	ChangesNothing Level = iota
	ChangesVerdict
	ChangesDeciding
	ChangesSystem
)

// Effect is what one miss could have led to. Its sentence begins with why, such
// as "Without it".
type Effect struct {
	Level    Level
	why      message.Message
	sentence message.ID
	args     []any
}

// Sentence says what the miss would have led to; it is empty if nothing would
// have changed.
func (e Effect) Sentence() message.Message {
	if e.Level == ChangesNothing {
		return message.Message{}
	}
	return message.New(e.sentence, append([]any{e.why}, e.args...)...)
}

// Why a miss leads to something: one, or several of which each would.
const (
	withoutIt     message.ID = "Without it"
	withoutAnyOne message.ID = "Without any one of them"
)

// effect runs the rules with one fact as the trainee has it and all others true.
func (m *marking) effect(note assess.Answer, item Item) Effect {
	v, why := m.Customer.Facts.Clone(), withoutIt.Message()
	v.Clear(item.Asked)
	switch item.State {
	case WrongFact:
		v.Set(note)
		why = message.New("With {1} in place of {2}", item.Noted, item.Truth)
	case LeftOpen:
		why = message.New("Not answered")
	}
	job, _ := v.Job()
	r := rules.Evaluate(job, m.of.Offered)
	switch {
	case firstOf(&r) != firstOf(&m.truth):
		return Effect{ChangesSystem, why, "{1}, the result is: {2}. It should be: {3}.", []any{outcome(&r), outcome(&m.truth)}}
	case r.Critical.Requirement != m.truth.Critical.Requirement:
		return Effect{ChangesDeciding, why, "{1}, you would have shown {2}; the deciding requirement is {3}.", []any{requirement(r.Critical.Requirement), requirement(m.truth.Critical.Requirement)}}
	}
	if e := m.verdict(&r, why); e.Level > ChangesNothing {
		return e
	}
	for _, q := range r.Open {
		if q.Asked == item.Asked && !q.Could.IsEmpty() {
			return Effect{ChangesVerdict, why, "{1}, the answer {2}.", []any{q.Could}}
		}
	}
	return Effect{}
}

// verdict says which check of the right system would have been judged otherwise.
func (m *marking) verdict(r *rules.Result, why message.Message) Effect {
	if m.truth.First == nil {
		return Effect{}
	}
	word := func(v rules.Verdict) message.ID {
		if v == rules.Short {
			return "not met"
		}
		return message.ID(v)
	}
	other := candidate(r, m.truth.First.System.ID)
	for _, c := range m.truth.First.Checks {
		rule, _ := c.Rule.Find()
		for _, d := range other.Checks {
			if d.Rule == c.Rule && d.Verdict != c.Verdict && c.Verdict != "" {
				return Effect{ChangesVerdict, why, "{1}, the verdict on {2} is “{3}”; it should be “{4}”.", []any{rule.Title, word(d.Verdict), word(c.Verdict)}}
			}
		}
	}
	return Effect{}
}

// outcome words what a result recommends.
func outcome(r *rules.Result) message.Message {
	switch r.Outcome {
	case rules.Recommended:
		return described(r.First.System)
	case rules.NoneFits:
		return message.New("no system fits")
	}
	return message.New("not known yet")
}

// described is what a system is called in the mark: "Demo 30, a 30 A unit".
func described(s *system.System) message.Message {
	return message.New("{1}, a {2} unit", message.Name(s.Name), message.Figure(unit.Show(unit.Quantity{Value: float64(s.OutputMax), Kind: unit.Current}, unit.Metric, unit.Nearest)))
}

// requirement names what decides, in the words used to a customer.
func requirement(r rules.Requirement) message.Message {
	if !slices.Contains(rules.Requirements(), r) {
		return message.New("not clear yet")
	}
	return report.RequirementName(r).Message()
}

// shortfalls says where a system falls short of the truth: "clean cut needs
// 12 mm, and there is 8 mm".
func shortfalls(c *rules.Candidate) message.Message {
	var list []message.Message
	for _, k := range c.Checks {
		rule, _ := k.Rule.Find()
		switch {
		case k.Verdict != rules.Short || !(rule.Hard || rule.Site):
		case k.Need.Kind == unit.None:
			list = append(list, message.New("{1} does not suit this customer", rule.Title))
		default:
			list = append(list, message.New("{1} needs {2}, and there is {3}", rule.Title,
				message.Figure(unit.Show(k.Need, unit.Metric, unit.Up)), message.Figure(unit.Show(k.Have, unit.Metric, unit.Down))))
		}
	}
	return message.Join("; ", list...)
}

// candidate is a system of the range, by its identifier; nil if there is none.
func candidate(r *rules.Result, id string) *rules.Candidate {
	i := slices.IndexFunc(r.Candidates, func(c rules.Candidate) bool { return c.System.ID == id })
	if i < 0 {
		return nil
	}
	return &r.Candidates[i]
}
