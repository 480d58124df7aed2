package casebook

import (
	"fmt"
	"strings"

	"cutbrief/assess"
	"cutbrief/rules"
	"cutbrief/rules/unit"
)

// What a miss could have changed, strongest first.
const (
	costsNothing = iota
	costsVerdict
	costsDecides
	costsSystem
)

// cost runs the rules with one fact as the trainee has it and all others true,
// and says in a sentence what that would have led to.
func (j *judge) cost(s assess.Step, note assess.Answer, item Item) (string, int) {
	v := clone(j.Customer.Facts)
	if item.State == WrongFact {
		v.Set(note)
	} else {
		v.Clear(s.Asked())
	}
	job, _ := v.Job()
	r := rules.Evaluate(job, j.Offered)
	start := j.because(item) + ","
	switch {
	case firstOf(&r) != firstOf(&j.truth):
		return fmt.Sprintf("%s the rules come to %s; in truth to %s.", start, outcome(&r), outcome(&j.truth)), costsSystem
	case r.Critical.Requirement != j.truth.Critical.Requirement:
		return fmt.Sprintf("%s you would have shown %s; what decides is %s.", start, requirement(r.Critical.Requirement), requirement(j.truth.Critical.Requirement)), costsDecides
	}
	if text := j.verdict(&r); text != "" {
		return start + " " + text, costsVerdict
	}
	for _, q := range r.Open {
		if q.Asked == s.Asked() && q.Could != "" {
			return start + " as far as anyone knows, it " + stop(lower(q.Could)), costsVerdict
		}
	}
	return "", costsNothing
}

const withoutIt = "Without it"

// because names what the trainee had in place of the truth.
func (j *judge) because(item Item) string {
	switch item.State {
	case WrongFact:
		return "With " + item.Noted + " in place of " + item.Truth
	case LeftOpen:
		return "Left open"
	}
	return withoutIt
}

// verdict says which check of the right system would have been judged
// otherwise.
func (j *judge) verdict(r *rules.Result) string {
	if j.truth.First == nil {
		return ""
	}
	other := find(r, j.truth.First.System.ID)
	for _, c := range j.truth.First.Checks {
		rule, _ := c.Rule.Find()
		for _, d := range other.Checks {
			switch {
			case d.Rule != c.Rule || d.Verdict == c.Verdict || c.Verdict == "":
			case d.Verdict == rules.NotKnown:
				return fmt.Sprintf("the %s cannot be judged; in truth it is %s.", rule.Title, judged(c.Verdict))
			default:
				return fmt.Sprintf("the %s would have been judged %s; in truth it is %s.", rule.Title, judged(d.Verdict), judged(c.Verdict))
			}
		}
	}
	return ""
}

// judged words a verdict within a sentence.
func judged(v rules.Verdict) string {
	switch v {
	case rules.Met:
		return "good enough"
	case rules.Short:
		return "short"
	}
	return string(v)
}

// outcome words what a result recommends.
func outcome(r *rules.Result) string {
	switch r.Outcome {
	case rules.Recommended:
		return called(r.First.System)
	case rules.NoneFits:
		return "no system that fits"
	}
	return "nothing yet"
}

// shortfalls says where a system falls short of the truth: "clean cut needs
// 12 mm, and it gives 8 mm".
func shortfalls(c *rules.Candidate) []string {
	var list []string
	for _, k := range c.Checks {
		rule, _ := k.Rule.Find()
		if k.Verdict != rules.Short || !(rule.Hard || rule.Site) {
			continue
		}
		if k.Need.Kind == unit.None {
			list = append(list, rule.Title+" does not suit this customer")
			continue
		}
		list = append(list, fmt.Sprintf("%s needs %s, and there is %s", rule.Title, unit.Show(k.Need, unit.Metric, unit.Up), unit.Show(k.Have, unit.Metric, unit.Down)))
	}
	return list
}

// stop ends a sentence with a full stop.
func stop(s string) string { return strings.TrimRight(s, ". ") + "." }

func amperes(a unit.Ampere) string {
	return unit.Show(unit.Quantity{Value: float64(a), Kind: unit.Current}, unit.Metric, unit.Nearest)
}
