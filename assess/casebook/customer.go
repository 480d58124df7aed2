package casebook

import (
	"slices"

	"cutbrief/assess"
	"cutbrief/rules"
)

// Customer is one invented customer. Nothing in it is changed by a practice.
type Customer struct {
	Line    int    // of its file; 0 of a customer made from a number
	Name    string // of the case: lower case, "bench-top"; "" for one made from a number
	Level   int    // 1 easy to 5 hard
	Manner  Manner
	Minutes int           // of patience
	Seed    uint64        // chooses the words; of a made customer, everything
	Facts   *assess.Visit // what is true; a question without an answer is one the customer cannot answer
	Wrong   map[rules.Asked]assess.Answer
	Unclear map[rules.Asked]bool
	Opening string                 // the first words, "" for those of the manner
	Says    map[rules.Asked]string // own words at the first asking
}

// truth is what is true of a step; false if the customer does not know.
func (c *Customer) truth(a rules.Asked) (assess.Answer, bool) {
	t, ok := c.Facts.Answer(a)
	return t, ok && t.State != assess.Unknown
}

// What the instruments show. A piece of the rare thickest is never at hand.
var (
	caliper = []rules.Fact{rules.FactEveryday, rules.FactThickest, rules.FactPierced, rules.FactBevelled}
	plate   = []rules.Fact{rules.FactAirDelivery, rules.FactReceiver}
	panel   = []rules.Fact{rules.FactBreaker, rules.FactPhases, rules.FactVolts}
)

// onlySeen reports a figure that only its plate gives: few know it by heart.
func (c *Customer) onlySeen(f rules.Fact) bool {
	return c.Manner != Precise && (f == rules.FactAirDelivery || f == rules.FactBreaker)
}

// clears reports whether an act turns the first answer to a step into a true
// one.
func (c *Customer) clears(act Act, f rules.Fact) bool {
	switch {
	case act == Plate:
		return slices.Contains(plate, f)
	case act == Breaker:
		return slices.Contains(panel, f)
	case act == Measure && !slices.Contains(caliper, f), c.onlySeen(f):
		return false
	}
	return slices.Contains(c.Manner.row().clears, act)
}

// plain reports whether the first answer to a step is already true.
func (c *Customer) plain(a rules.Asked) bool {
	_, wrong := c.Wrong[a]
	return !wrong && !c.unclear(a) && !c.onlySeen(a.Fact)
}

// unclear reports a first answer that tells nothing yet. A vague customer gives
// no figure of any kind before being asked for it.
func (c *Customer) unclear(a rules.Asked) bool {
	if _, wrong := c.Wrong[a]; wrong {
		return false
	}
	q, _ := assess.Find(a.Fact)
	truth, known := c.truth(a)
	return c.Unclear[a] || c.Manner == Vague && known && q.Form == assess.FormQuantity && !isNone(truth)
}

// tricky lists the steps whose first answer is unclear or wrong, in the order
// of the interview.
func (c *Customer) tricky() []rules.Asked {
	var list []rules.Asked
	for _, s := range c.Facts.Steps() {
		if _, known := c.truth(s.Asked()); known && !c.plain(s.Asked()) {
			list = append(list, s.Asked())
		}
	}
	return list
}

// job is what is true, as the rules take it.
func (c *Customer) job() rules.Job {
	j, _ := c.Facts.Job()
	return j
}

// met is a visit that holds what a rep knows before the first question: who
// and where, and in which unit they speak.
func (c *Customer) met() *assess.Visit {
	v := &assess.Visit{ID: c.Facts.ID, Created: c.Facts.Created, Updated: c.Facts.Created, Demo: true}
	for _, a := range c.Facts.Answers {
		if q, ok := assess.Find(a.Question); ok && q.Group == assess.GroupVisit {
			v.Set(a)
		}
	}
	return v
}

func clone(v *assess.Visit) *assess.Visit {
	c := *v
	c.Answers, c.Skipped = slices.Clone(v.Answers), slices.Clone(v.Skipped)
	return &c
}

func said(v *assess.Visit, f rules.Fact) string {
	a, _ := v.Answer(rules.Asked{Fact: f})
	return a.Said
}

// Company is the customer's firm.
func (c *Customer) Company() string { return said(c.Facts, assess.FactCompany) }
