package assess

import (
	"slices"

	"cutbrief/rules"
	"cutbrief/rules/system"
)

// Course is the order of the questions in one session. Where somebody answers who
// sees what is asked, first comes what sizes a system at all, then what settles the
// recommendation in the fewest answers, then what cautions hang on, then the rest
// of the page, with who and where behind it. Input from a file cannot see what is
// asked: without Offered the order is that of the catalogue. Last, in both, come
// questions that were put off and those that cannot change what is recommended. A
// Course is not saved, and answers nothing.
type Course struct {
	Offered system.Range // what can be recommended; empty for the order of the catalogue
	Usual   Priors       // how the questions are usually answered; nil for the built-in ones

	put  []Group       // put off whole, to come back last
	left []rules.Asked // left open by the rep
	last bool          // the rest is being asked
}

// Next returns the question after a step; false once there is none. What the
// answers come to says which can wait. Questions with an answer are passed again
// on the way forward, but not among the rest.
func (c *Course) Next(v *Visit, at Step, r *rules.Result) (Step, bool) {
	if len(c.Offered.Systems) > 0 {
		return c.next(v, r)
	}
	steps := v.Steps()
	from := behind(steps, at)
	if !c.last {
		for _, s := range steps[from:] {
			if !c.waits(v, s, r) {
				return s, true
			}
		}
		c.last, from = true, 0
	}
	for _, s := range slices.Concat(steps[from:], steps[:from]) {
		if !v.has(s) && !slices.Contains(c.left, s.Asked()) {
			return s, true
		}
	}
	return Step{}, false
}

// next chooses among the open questions. Those with an answer are not asked again.
func (c *Course) next(v *Visit, r *rules.Result) (Step, bool) {
	open := c.open(v)
	now := slices.DeleteFunc(slices.Clone(open), func(s Step) bool { return c.waits(v, s, r) })
	c.last = len(now) == 0
	switch {
	case len(now) > 0:
		return c.pick(v, now, r), true
	case len(open) > 0:
		return open[0], true
	}
	return Step{}, false
}

// open lists the steps to ask, those about who and where behind the others.
func (c *Course) open(v *Visit) []Step {
	var open, who []Step
	for _, s := range v.Steps() {
		switch {
		case v.has(s) || slices.Contains(c.left, s.Asked()):
		case s.Question.Group == GroupVisit && s.Question.ID != FactUnits:
			who = append(who, s)
		default:
			open = append(open, s)
		}
	}
	return append(open, who...)
}

// opening are the questions that size a system, in the order asked.
var opening = []rules.Fact{FactUnits, rules.FactMetals, rules.FactThickest, rules.FactUse}

// pick chooses among the open questions that can still change something.
func (c *Course) pick(v *Visit, now []Step, r *rules.Result) Step {
	settled := r.Firm || v.nothingFits(r)
	order := cautioned
	switch {
	case r.Outcome == rules.NotYet:
		order = opening
	case !settled:
		if s := v.mostTelling(now, c.Offered, c.Usual); s.Question != nil {
			return understood(now, s)
		}
		order = nil
	}
	for _, f := range order {
		for _, s := range now {
			if s.Question.ID == f && (settled || f == FactUnits || slices.Contains(r.Missing, s.Asked())) {
				return s
			}
		}
	}
	return now[0]
}

// understood is the question to ask first where one hangs on another: nobody is
// asked what a compressor delivers before whether there is one.
func understood(now []Step, s Step) Step {
	for _, on := range now {
		if on.Question.ID == rules.FactDrier && hangsOn(s.Question.ID, on.Question.ID) {
			return on
		}
	}
	return s
}

// behind is where the steps behind a step begin, also where it is no longer asked
// itself.
func behind(steps []Step, at Step) int {
	if i := placeIn(steps, at); i >= 0 || at.Question == nil {
		return i + 1
	}
	next := slices.IndexFunc(steps, func(s Step) bool { return orderOf(s.Question) > orderOf(at.Question) })
	if next < 0 {
		return len(steps)
	}
	return next
}

// orderOf is where a question stands in the order asked.
func orderOf(q *Question) int { return slices.Index(asking(), q) }

// placeIn is where a step stands among others, −1 if it is not there.
func placeIn(steps []Step, s Step) int {
	if s.Question == nil {
		return -1
	}
	return slices.IndexFunc(steps, func(other Step) bool { return other.Asked() == s.Asked() })
}

// First returns the open question to begin with: one that can change something,
// else any, also if it was left; false if none is open.
func (c *Course) First(v *Visit, r *rules.Result) (Step, bool) {
	if len(c.Offered.Systems) > 0 {
		c.left = nil
		s, open := c.next(v, r)
		return s, open && !s.Question.Optional
	}
	for _, s := range v.Steps() {
		if !v.has(s) && !s.Question.Optional && !c.waits(v, s, r) {
			return s, true
		}
	}
	return v.NextOpen()
}

// waits reports whether a question comes last: its group was put off, it cannot
// change what is recommended, or it is a figure that nobody needs.
func (c *Course) waits(v *Visit, s Step, r *rules.Result) bool {
	typed := s.Question.Form == FormText || s.Question.Form == FormLong
	return !v.has(s) && (slices.Contains(c.put, s.Question.Group) || (s.Question.Optional && !typed) || v.Idle(s, r))
}

// Leave notes that the rep went past a question without an answer.
func (c *Course) Leave(s Step) {
	if s.Question != nil && !slices.Contains(c.left, s.Asked()) {
		c.left = append(c.left, s.Asked())
	}
}

// PutOff puts off what is not answered in a group, and returns it. It stays open,
// and comes back last; put off once more, it stays open for good.
func (c *Course) PutOff(v *Visit, g Group) []Step {
	var off []Step
	for _, s := range v.Steps() {
		if s.Question.Group != g || v.has(s) {
			continue
		}
		off = append(off, s)
		if c.last {
			c.Leave(s)
		}
	}
	if !c.last {
		c.put = append(c.put, g)
	}
	return off
}

// TakeUp takes up a group again that was put off.
func (c *Course) TakeUp(g Group) {
	c.put = slices.DeleteFunc(c.put, func(other Group) bool { return other == g })
	c.left = slices.DeleteFunc(c.left, func(a rules.Asked) bool {
		q, known := Find(a.Fact)
		return known && q.Group == g
	})
	c.last = false
}

// Last reports whether only the rest is still being asked.
func (c *Course) Last() bool { return c.last }

// PutOffSo reports whether a group is put off.
func (c *Course) PutOffSo(g Group) bool { return slices.Contains(c.put, g) }

// sizing are the groups whose answers size a system. The others are asked for
// the page and for safety, whatever is recommended.
var sizing = []Group{GroupWork, GroupHow, GroupSite}

// cautioned are the questions of these groups whose answers put cautions on the
// page: gouging, the place, closed spaces and permits.
var cautioned = []rules.Fact{rules.FactFeatures, rules.FactPlaces, rules.FactHotWork}

// Idle reports a question about the work or the site that can no longer change
// what is recommended or what decides, by any likely answer. Those that cautions
// hang on are never idle: they are asked for safety.
func (v *Visit) Idle(s Step, r *rules.Result) bool {
	if v.has(s) || r.Outcome == rules.NotYet || slices.Contains(cautioned, s.Question.ID) || !slices.Contains(sizing, s.Question.Group) {
		return false
	}
	if r.Outcome == rules.Recommended && !r.Firm && priorOf(s.Question.ID) != nil {
		return false // by itself it may change nothing, and still settle it together with others
	}
	return !slices.ContainsFunc(r.Open, func(o rules.OpenQuestion) bool {
		return o.Asked == s.Asked() || hangsOn(o.Asked.Fact, s.Question.ID)
	})
}

// hangsOn reports whether one question is only understood once another is
// answered, so that the other comes first though it changes nothing by itself.
func hangsOn(f, on rules.Fact) bool {
	switch on {
	case rules.FactStart:
		return f == rules.FactPierced
	case rules.FactSource:
		return f == rules.FactPhases || f == rules.FactVolts || f == rules.FactBreaker || f == rules.FactGenerator
	case rules.FactCord:
		return f == rules.FactCordSection
	case rules.FactDrier:
		return f == rules.FactAirDelivery || f == rules.FactAirPressure || f == rules.FactHoseBore || f == rules.FactHoseLength
	case rules.FactBusyCuts:
		return f == rules.FactBusyLength
	}
	return false
}

// Settled reports that no likely answer to what is still to be asked could change
// what is recommended: the choice is firm, or nothing fits whatever the answers
// are. It is not so while a question that cautions hang on has not been asked.
func (v *Visit) Settled(r *rules.Result) bool {
	if r.Outcome == rules.NotYet || (r.Outcome == rules.Recommended && !r.Firm) {
		return false
	}
	if slices.ContainsFunc(v.Steps(), func(s Step) bool { return slices.Contains(cautioned, s.Question.ID) && !v.has(s) }) {
		return false
	}
	return v.asked(r.Open)
}

// asked reports whether each of some open questions was asked: answered, or not
// known.
func (v *Visit) asked(open []rules.OpenQuestion) bool {
	return !slices.ContainsFunc(open, func(o rules.OpenQuestion) bool { return v.index(o.Asked) < 0 })
}

// has reports whether a step has an answer; "not known" is one.
func (v *Visit) has(s Step) bool { return v.index(s.Asked()) >= 0 }
