package casebook

import (
	"slices"
	"strings"

	"cutbrief/rules"
	"cutbrief/rules/demonstration"
	"cutbrief/rules/message"
	"cutbrief/rules/unit"
)

// system judges the system the trainee picked against what is true.
func (m *marking) system() {
	m.RightSystem = m.Decision.System == firstOf(&m.truth)
	m.count(SkillSystem, m.RightSystem)
	add := func(id message.ID, args ...any) { m.System = append(m.System, message.New(id, args...)) }
	picked := candidate(&m.truth, m.Decision.System)
	switch {
	case m.RightSystem && picked == nil:
		add("Right: no system of this range fits, and you said so.")
	case m.RightSystem:
		add("Right: {1}.", described(picked.System))
	case picked == nil:
		add("You said that none fits; {1} does.", outcome(&m.truth))
	default:
		m.wrongSystem(picked, add)
		add("Right is: {1}.", outcome(&m.truth))
	}
	switch enough := firstOf(&m.notes) == firstOf(&m.truth) && m.notes.Outcome == m.truth.Outcome; {
	case !enough && m.RightSystem:
		add("Your notes do not show it yet. They lead to: {1}.", outcome(&m.notes))
	case !enough:
		add("Your notes lead to: {1}.", outcome(&m.notes))
	case !m.RightSystem:
		add("Your notes were enough. They lead to: {1}.", outcome(&m.notes))
	}
}

// wrongSystem says what is wrong with a system picked, and what it costs more
// where both have a price.
func (m *marking) wrongSystem(picked *rules.Candidate, add func(message.ID, ...any)) {
	name, right := described(picked.System), m.truth.First
	if short := shortfalls(picked); !short.IsEmpty() {
		add("You would have sold {1}. It is not enough: {2}.", name, short)
		return
	}
	if right == nil || picked.System.Rated <= right.System.Rated {
		add("You would have sold {1}, which {2}.", name, message.ID(picked.Status))
		return
	}
	weighs, needed := rounded(float64(picked.System.Weight), "kg"), rounded(float64(right.System.Weight), "kg")
	a, priced := picked.System.Price.Get()
	b, both := right.System.Price.Get()
	if !priced || !both {
		add("You would have sold {1}. It does the work, and is larger than needed: {2} in place of {3}.", name, weighs, needed)
		return
	}
	more := message.Figure(unit.Show(unit.Quantity{Value: float64(a - b), Kind: unit.Price}, unit.Metric, unit.Nearest))
	add("You would have sold {1}. It does the work, and is larger than needed: {2} in place of {3}, and {4} more.", name, weighs, needed,
		message.Join(" ", message.Text(m.of.Offered.Currency), message.New("{1}", more)))
}

// decides judges the requirement the trainee named. One that is as strong
// counts.
func (m *marking) decides() {
	named, c := m.Decision.Decides, m.truth.Critical
	m.RightDecides = named == c.Requirement || slices.Contains(c.Tie, named)
	m.count(SkillDecides, m.RightDecides)
	said := message.New("You named {1}; the deciding requirement is {2}.", requirement(named), requirement(c.Requirement))
	if m.RightDecides {
		said = message.New("Right: {1}.", requirement(named))
	}
	m.Decides = append(m.Decides, said)
	if i := slices.IndexFunc(c.Evidence, func(e rules.Evidence) bool { return e.Requirement == c.Requirement }); i >= 0 {
		m.Decides = append(m.Decides, message.New(`The page tells them why: "{1}"`, c.Evidence[i].Sentence))
	}
}

// programme plans a demonstration of one system, whatever the rules say of it,
// with all the time there is, so that it says of every cut what it proves or why
// it cannot be shown.
func programme(job rules.Job, r rules.Result, id string) demonstration.Programme {
	const ample unit.Second = 24 * 3600
	job.Showing = unit.Known(ample)
	r.First = candidate(&r, id)
	return demonstration.Choose(job, r)
}

// Showable lists the cuts a demonstration of a system can be put together from,
// by name.
func (s *Session) Showable(id string) []demonstration.LeftOut {
	job, _ := s.Notes.Job()
	p := programme(job, rules.Judge(job, s.Offered), id)
	list := p.LeftOut
	for _, c := range p.Cuts {
		list = append(list, demonstration.LeftOut{ID: c.ID, Name: c.Name})
	}
	slices.SortFunc(list, func(a, b demonstration.LeftOut) int { return strings.Compare(a.Name.String(), b.Name.String()) })
	return list
}

// showing judges the demonstration: whether it proves what decides, opens with
// it, can be shown, and fits half an hour.
func (m *marking) showing() {
	add := func(id message.ID, args ...any) { m.Showing = append(m.Showing, message.New(id, args...)) }
	if m.truth.First == nil {
		add("No system fits, so there is nothing to show.")
		m.Proven = len(m.Decision.Cuts) == 0
		m.count(SkillShowing, m.Proven)
		return
	}
	id := m.Decision.System
	if id == "" {
		id = firstOf(&m.truth)
	}
	p := programme(m.Customer.job(), m.truth, id)
	opens, takes := false, unit.Second(0)
	for i, id := range m.Decision.Cuts {
		cut := m.weigh(&p, id, add)
		m.Proven, takes = m.Proven || m.proves(cut), takes+cut.Takes
		opens = opens || i == 0 && m.proves(cut)
	}
	m.count(SkillShowing, m.Proven)
	want := requirement(m.truth.Critical.Requirement)
	switch {
	case len(m.Decision.Cuts) == 0:
		add("You planned no cut.")
	case !m.Proven:
		add("Nothing in it shows {1}.", want)
	default:
		m.count(SkillShowing, opens)
		if !opens {
			add("It shows {1}, but does not open with it.", want)
		}
	}
	var proofs []message.Message
	for _, c := range p.Cuts {
		if c.Proves == m.truth.Critical.Requirement {
			proofs = append(proofs, c.Name.Within())
		}
	}
	if len(proofs) > 0 {
		add("{1} is shown by: {2}.", want.Capital(), message.Join("; ", proofs...))
	}
	const usual unit.Second = 30 * 60
	if takes > usual {
		add("The cuts take {1}, and a customer stays about 30.", rounded(float64(takes)/60, "min"))
	}
}

// weigh says what one cut would show this customer, and returns it; the zero Cut
// if it cannot be shown.
func (m *marking) weigh(p *demonstration.Programme, id string, add func(message.ID, ...any)) demonstration.Cut {
	for _, l := range p.LeftOut {
		if l.ID == id {
			add("{1}: it is not for this customer. {2}", l.Name, l.Reason)
		}
	}
	for _, c := range p.Cuts {
		switch {
		case c.ID != id:
			continue
		case m.proves(c):
			add("{1}: it shows the deciding requirement.", c.Name)
		default:
			add("{1}: it does not show the deciding requirement. {2}", c.Name, c.Chosen)
		}
		return c
	}
	return demonstration.Cut{}
}

// proves reports whether a cut shows what decides.
func (m *marking) proves(c demonstration.Cut) bool {
	return c.Proves != "" && c.Proves == m.truth.Critical.Requirement
}
