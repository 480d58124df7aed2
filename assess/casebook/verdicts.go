package casebook

import (
	"fmt"
	"slices"
	"strings"

	"cutbrief/assess/screen/words"
	"cutbrief/rules"
	"cutbrief/rules/demonstration"
	"cutbrief/rules/unit"
)

// system judges the system the trainee picked against what is true.
func (j *judge) system() {
	m := j.mark
	m.RightSystem = j.decision.System == firstOf(&j.truth)
	j.count(SkillSystem, m.RightSystem)
	add := func(format string, args ...any) { m.System = append(m.System, fmt.Sprintf(format, args...)) }
	picked := find(&j.truth, j.decision.System)
	switch {
	case m.RightSystem && picked == nil:
		add("Right: no system of this range fits, and you said so.")
	case m.RightSystem:
		add("Right: %s.", called(picked.System))
	case picked == nil:
		add("You said that none fits; %s does.", outcome(&j.truth))
	default:
		j.wrongSystem(picked, add)
	}
	switch enough := firstOf(&j.notes) == firstOf(&j.truth) && j.notes.Outcome == j.truth.Outcome; {
	case !enough && m.RightSystem:
		add("Your notes do not show it yet: from them the rules come to %s.", outcome(&j.notes))
	case !enough:
		add("From your notes the rules come to %s.", outcome(&j.notes))
	case !m.RightSystem:
		add("Your notes were enough: the rules come to %s from them too.", outcome(&j.notes))
	}
}

func (j *judge) wrongSystem(picked *rules.Candidate, add func(string, ...any)) {
	short := shortfalls(picked)
	right := j.truth.First
	switch {
	case len(short) > 0:
		add("You would have sold %s. It falls short: %s.", called(picked.System), strings.Join(short, "; "))
	case right != nil && picked.System.Rated > right.System.Rated:
		add("You would have sold %s. It does the work, and is larger than needed: %.0f kg in place of %.0f kg%s.",
			called(picked.System), float64(picked.System.Weight), float64(right.System.Weight), j.dearer(picked, right))
	default:
		add("You would have sold %s, which %s.", called(picked.System), picked.Status)
	}
	add("Right is %s.", outcome(&j.truth))
}

// dearer says what the larger one costs more, where both have a price.
func (j *judge) dearer(picked, right *rules.Candidate) string {
	a, ok1 := picked.System.Price.Get()
	b, ok2 := right.System.Price.Get()
	if !ok1 || !ok2 {
		return ""
	}
	return fmt.Sprintf(", and %s more", strings.TrimSpace(j.Offered.Currency+" "+unit.Show(unit.Quantity{Value: float64(a - b), Kind: unit.Price}, unit.Metric, unit.Nearest)))
}

// decides judges the requirement the trainee named. One that is as strong
// counts.
func (j *judge) decides() {
	m, c := j.mark, j.truth.Critical
	m.RightDecides = j.decision.Decides == c.Requirement || slices.Contains(c.Tie, j.decision.Decides)
	j.count(SkillDecides, m.RightDecides)
	if m.RightDecides {
		m.Decides = append(m.Decides, "Right: "+requirement(j.decision.Decides)+".")
	} else {
		m.Decides = append(m.Decides, fmt.Sprintf("You named %s; what decides is %s.", requirement(j.decision.Decides), requirement(c.Requirement)))
	}
	for _, e := range c.Evidence {
		if e.Requirement == c.Requirement {
			m.Decides = append(m.Decides, fmt.Sprintf("The page tells them why: %q", e.Sentence))
			break
		}
	}
}

// ample is a time that leaves no cut out for want of it.
const ample unit.Second = 24 * 3600

// programme plans a demonstration of one system with all the time there is, so
// that it says of every cut what it proves or why it cannot be shown.
func programme(job rules.Job, r rules.Result, id string) demonstration.Programme {
	job.Showing = unit.Known(ample)
	return demonstration.Choose(job, with(r, id))
}

// Showable lists the cuts a demonstration of a system can be put together from,
// by name.
func (s *Session) Showable(id string) []demonstration.LeftOut {
	job, _ := s.Notes.Job()
	p := programme(job, rules.Judge(job, s.Offered), id)
	list := slices.Clone(p.LeftOut)
	for _, c := range p.Cuts {
		list = append(list, demonstration.LeftOut{ID: c.ID, Name: c.Name})
	}
	slices.SortFunc(list, func(a, b demonstration.LeftOut) int { return strings.Compare(a.Name, b.Name) })
	return list
}

// showing judges the demonstration: whether it proves what decides, opens with
// it, can be shown, and fits half an hour.
func (j *judge) showing() {
	m := j.mark
	id := j.decision.System
	if id == "" {
		id = firstOf(&j.truth)
	}
	if j.truth.First == nil {
		m.Showing = append(m.Showing, "No system fits, so there is nothing to show.")
		m.Proven = len(j.decision.Cuts) == 0
		j.count(SkillShowing, m.Proven)
		return
	}
	p := programme(j.Customer.job(), j.truth, id)
	var takes unit.Second
	for _, cut := range j.decision.Cuts {
		if text, proves, minutes := weighCut(&p, cut, j.truth.Critical.Requirement); text != "" {
			m.Showing = append(m.Showing, text)
			m.Proven, takes = m.Proven || proves, takes+minutes
		}
	}
	j.count(SkillShowing, m.Proven)
	j.proof(&p, takes)
}

// proof sums the demonstration up.
func (j *judge) proof(p *demonstration.Programme, takes unit.Second) {
	m, want := j.mark, requirement(j.truth.Critical.Requirement)
	switch {
	case len(j.decision.Cuts) == 0:
		m.Showing = append(m.Showing, "You planned no cut.")
	case !m.Proven:
		m.Showing = append(m.Showing, "Nothing in it shows "+want+".")
	default:
		_, opens, _ := weighCut(p, j.decision.Cuts[0], j.truth.Critical.Requirement)
		j.count(SkillShowing, opens)
		if !opens {
			m.Showing = append(m.Showing, "It shows "+want+", but does not open with it.")
		}
	}
	var better []string
	for _, c := range p.Cuts {
		if c.Proves == j.truth.Critical.Requirement {
			better = append(better, lower(c.Name))
		}
	}
	if len(better) > 0 {
		m.Showing = append(m.Showing, capital(want)+" is shown by: "+strings.Join(better, "; ")+".")
	}
	const usual unit.Second = 30 * 60
	if takes > usual {
		m.Showing = append(m.Showing, fmt.Sprintf("The cuts take %.0f min, and a customer stays about 30.", float64(takes)/60))
	}
}

// weighCut says what one cut would show this customer.
func weighCut(p *demonstration.Programme, id string, want rules.Requirement) (text string, proves bool, takes unit.Second) {
	for _, c := range p.Cuts {
		if c.ID != id {
			continue
		}
		if c.Proves == want && want != "" {
			return c.Name + ": it shows what decides.", true, c.Takes
		}
		return c.Name + ": it does not show what decides. " + c.Chosen, false, c.Takes
	}
	for _, l := range p.LeftOut {
		if l.ID == id {
			return l.Name + ": it is not for this customer. " + l.Reason, false, 0
		}
	}
	return "", false, 0
}

// order says how soon the questions that decide were asked.
func (j *judge) order() {
	m := j.mark
	early, asked, first := 0, 0, []string{}
	for _, t := range j.Log {
		if t.Act != Ask {
			continue
		}
		if len(first) < 3 {
			first = append(first, stepOf(t.Asked).Name())
		}
	}
	for _, a := range m.Route.Asked {
		if at, ok := j.firstAsked(a); ok {
			asked++
			if at < j.Customer.Minutes/2 {
				early++
			}
		}
	}
	if len(first) > 0 {
		m.Order = append(m.Order, "You began with "+strings.Join(first, "; ")+".")
	}
	m.Order = append(m.Order, fmt.Sprintf("For this customer %d questions decide. You asked %d of them, %d within the first half of the time.", len(m.Route.Asked), asked, early))
	m.Order = append(m.Order, fmt.Sprintf("A good way through takes %d minutes: it always asks what could still change the system.", m.Route.Minutes))
}

// firstAsked is when a question was first asked, or its plate looked at.
func (j *judge) firstAsked(a rules.Asked) (int, bool) {
	for _, t := range j.Log {
		if (t.Act == Ask || t.Act == Measure) && t.Asked == a || (t.Act == Plate || t.Act == Breaker) && j.Customer.clears(t.Act, a.Fact) {
			return t.At, true
		}
	}
	return 0, false
}

// requirement names what decides, in the words used to a customer.
func requirement(r rules.Requirement) string {
	for _, o := range words.Requirements() {
		if o.ID == string(r) {
			return o.Text
		}
	}
	return "nothing clear"
}

func lower(s string) string { return strings.ToLower(s[:min(1, len(s))]) + s[min(1, len(s)):] }
