package casebook

import (
	"slices"

	"cutbrief/assess"
	"cutbrief/rules"
	"cutbrief/rules/system"
)

// Route is the way a good rep takes: always asking what the rules say could
// still change the system or what decides, following up as the manner needs,
// and never leaving out a question of safety.
type Route struct {
	Asked   []rules.Asked // in order
	Minutes int
	Arrives bool // it ends at the right system and at what decides
}

// questionsMost is more questions than a visit has.
const questionsMost = 100

// NewRoute walks the way with a customer and a range of systems.
func NewRoute(c *Customer, offered system.Range) Route {
	var r Route
	truth := rules.Judge(c.job(), offered)
	notes := c.introduced()
	walked := map[Act]bool{}
	learn := func(a rules.Asked) {
		r.Asked = append(r.Asked, a)
		r.Minutes += c.minutesFor(a, walked)
		t, known := c.Facts.Answer(a)
		if !known {
			t = assess.Answer{Question: a.Fact, Metal: a.Metal, State: assess.Unknown}
		}
		notes.Set(t)
	}
	for range questionsMost {
		j, _ := notes.Job()
		now := rules.Evaluate(j, offered)
		next, more := r.next(&now, &truth)
		if !more {
			r.Arrives = agree(&now, &truth)
			break
		}
		learn(next)
	}
	for _, f := range SkillSafety.row().facts {
		if a := (rules.Asked{Fact: f}); !slices.Contains(r.Asked, a) {
			learn(a)
		}
	}
	return r
}

// next is the question to ask now: what is missing, then what could change the
// system or what decides; then what points to what decides.
func (r *Route) next(now, truth *rules.Result) (rules.Asked, bool) {
	const matters = 2 // rules.OpenQuestion.Strength: what decides, or the system
	list := slices.Clone(now.Missing)
	for _, q := range now.Open {
		if q.Strength >= matters {
			list = append(list, q.Asked)
		}
	}
	if !agree(now, truth) {
		for _, f := range SkillDecides.row().facts {
			list = append(list, rules.Asked{Fact: f})
		}
		for _, e := range truth.Critical.Evidence {
			list = append(list, e.From)
		}
	}
	i := slices.IndexFunc(list, func(a rules.Asked) bool { return !slices.Contains(r.Asked, a) })
	if i < 0 {
		return rules.Asked{}, false
	}
	return list[i], true
}

// minutesFor is what it takes to learn one fact for certain. The walk to a plate
// is made once.
func (c *Customer) minutesFor(a rules.Asked, walked map[Act]bool) int {
	act, clears := c.clearedBy(a.Fact)
	_, known := c.truth(a)
	switch {
	case !known || c.plain(a) || !clears:
		return Ask.Minutes()
	case !c.onPlate(a.Fact):
		return Ask.Minutes() + act.Minutes()
	case walked[act]:
		return 0
	}
	walked[act] = true
	return act.Minutes()
}
