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

// most is more questions than a visit has.
const most = 100

// NewRoute walks the way with a customer and a range of systems.
func NewRoute(c *Customer, offered system.Range) Route {
	var r Route
	truth := rules.Judge(c.job(), offered)
	notes := c.met()
	walked := map[Act]bool{}
	learn := func(a rules.Asked) {
		r.Asked = append(r.Asked, a)
		r.Minutes += c.costs(a, walked)
		t, known := c.Facts.Answer(a)
		if !known {
			t = assess.Answer{Question: a.Fact, Metal: a.Metal, State: assess.Unknown}
		}
		notes.Set(t)
	}
	for range most {
		j, _ := notes.Job()
		now := rules.Evaluate(j, offered)
		next, more := r.next(&now, &truth)
		if !more {
			r.Arrives = agree(&now, &truth)
			break
		}
		learn(next)
	}
	for _, f := range safetyFacts {
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
		for _, f := range wishFacts {
			list = append(list, rules.Asked{Fact: f})
		}
		for _, e := range truth.Critical.Evidence {
			list = append(list, e.From)
		}
	}
	for _, a := range list {
		if !slices.Contains(r.Asked, a) {
			return a, true
		}
	}
	return rules.Asked{}, false
}

// costs is what it takes to learn one fact for certain.
func (c *Customer) costs(a rules.Asked, walked map[Act]bool) int {
	if _, known := c.truth(a); !known || c.plain(a) {
		return Ask.Minutes()
	}
	if c.onlySeen(a.Fact) {
		return walkTo(a.Fact, walked)
	}
	for _, act := range Acts()[1:] {
		if c.clears(act, a.Fact) {
			return Ask.Minutes() + act.Minutes()
		}
	}
	return Ask.Minutes()
}

// walkTo is the walk to a plate, which is made once.
func walkTo(f rules.Fact, walked map[Act]bool) int {
	act := Breaker
	if slices.Contains(plate, f) {
		act = Plate
	}
	if walked[act] {
		return 0
	}
	walked[act] = true
	return act.Minutes()
}

// agree reports whether two results recommend the same and name the same that
// decides.
func agree(a, b *rules.Result) bool {
	return a.Outcome == b.Outcome && firstOf(a) == firstOf(b) && a.Critical.Requirement == b.Critical.Requirement
}

// firstOf is the system recommended, "" if none is.
func firstOf(r *rules.Result) string {
	if r.First == nil {
		return ""
	}
	return r.First.System.ID
}
