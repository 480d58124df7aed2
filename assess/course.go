package assess

import (
	"slices"

	"cutbrief/rules"
)

// Course is the way through the questions in one sitting: first those that can
// still change something, in the order of the catalogue; then, last, those that
// were put off and those that cannot change what is recommended. It is not saved,
// and answers nothing.
type Course struct {
	put  []Group       // put off whole, to come back last
	left []rules.Asked // left open by the rep
	last bool          // the rest is being asked
}

// Next returns the question after a step; false once there is none. What the
// answers come to says which can wait. Questions with an answer are passed again
// on the way forward, but not among the rest.
func (c *Course) Next(v *Visit, at Step, r *rules.Result) (Step, bool) {
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
func orderOf(q *Question) int { return slices.Index(asking, q) }

// placeIn is where a step stands among others, −1 if it is not there.
func placeIn(steps []Step, s Step) int {
	if s.Question == nil {
		return -1
	}
	return slices.IndexFunc(steps, func(other Step) bool { return other.Asked() == s.Asked() })
}

// First returns the open question to begin with: one that can change something,
// else any; false if none is open.
func (c *Course) First(v *Visit, r *rules.Result) (Step, bool) {
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
	return !slices.ContainsFunc(r.Open, func(o rules.OpenQuestion) bool {
		_, answered := v.Answer(o.Asked)
		return !answered
	})
}

// has reports whether a step has an answer; "not known" is one.
func (v *Visit) has(s Step) bool { return v.index(s.Asked()) >= 0 }
