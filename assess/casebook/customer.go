package casebook

import (
	"math"
	"slices"

	"cutbrief/assess"
	"cutbrief/rules"
	"cutbrief/rules/message"
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

	ours bool // built in or made: its texts are messages, which catalogs have words for
}

// Company is the customer's firm.
func (c *Customer) Company() string { return c.told(assess.FactCompany) }

// Contact is who speaks, and Place is where; neither says anything if it is not
// known.
func (c *Customer) Contact() message.Message { return c.prose(c.told(assess.FactContact)) }

// Place is where the customer is met.
func (c *Customer) Place() message.Message { return c.prose(c.told(assess.FactPlace)) }

func (c *Customer) told(f rules.Fact) string {
	a, _ := c.Facts.Answer(rules.Asked{Fact: f})
	return a.Said
}

// prose is a text of the case. One of ours can be said in other words; one of a
// file is said as it is.
func (c *Customer) prose(text string) message.Message {
	if c.ours {
		return message.ID(text).Message()
	}
	return message.Text(text)
}

// truth is what is true of a step; false if the customer does not know.
func (c *Customer) truth(a rules.Asked) (assess.Answer, bool) {
	t, ok := c.Facts.Answer(a)
	return t, ok && t.State != assess.Unknown
}

// onPlate reports a figure that only a plate gives: few know it by heart.
func (c *Customer) onPlate(f rules.Fact) bool {
	return c.Manner != Precise && (f == rules.FactAirDelivery || f == rules.FactBreaker)
}

// clears reports whether an act turns the first answer to a step into a true
// one.
func (c *Customer) clears(act Act, f rules.Fact) bool {
	shown := slices.Contains(act.shows(), f)
	if act == Plate || act == Breaker {
		return shown
	}
	return (act != Measure || shown) && !c.onPlate(f) && slices.Contains(c.Manner.row().clears, act)
}

// clearedBy is the cheapest follow-up that brings the truth of a fact.
func (c *Customer) clearedBy(f rules.Fact) (Act, bool) {
	for _, act := range Acts()[1:] {
		if c.clears(act, f) {
			return act, true
		}
	}
	return "", false
}

// plain reports whether the first answer to a step is already true.
func (c *Customer) plain(a rules.Asked) bool {
	_, wrong := c.Wrong[a]
	return !wrong && !c.unclear(a) && !c.onPlate(a.Fact)
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

// toFollowUp lists the steps whose first answer is unclear or wrong, in the
// order of the interview.
func (c *Customer) toFollowUp() []rules.Asked {
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

// introduced is a visit that holds what a rep knows before the first question:
// who and where, and in which unit they speak.
func (c *Customer) introduced() *assess.Visit {
	v := &assess.Visit{ID: c.Facts.ID, Created: c.Facts.Created, Updated: c.Facts.Created, Demo: true}
	for _, a := range c.Facts.Answers {
		if q, ok := assess.Find(a.Question); ok && q.Group == assess.GroupVisit {
			v.Set(a)
		}
	}
	return v
}

// same reports whether a note says what is true. Free text is taken as it is.
func (c *Customer) same(s assess.Step, note assess.Answer) bool {
	truth, known := c.truth(s.Asked())
	if note.State == assess.Unknown || !known {
		return note.State == assess.Unknown && !known
	}
	return alike(c.Facts, s, note, truth)
}

// nominal is how far two figures may lie apart and still be the same: one
// nominal step, so that 12 mm and 1/2 in are one size. Common practice, no
// source.
const nominal = 0.06

// alike reports whether two answers to a step mean the same beside the other
// answers of a visit.
func alike(v *assess.Visit, s assess.Step, a, b assess.Answer) bool {
	switch s.Question.Form {
	case assess.FormOne, assess.FormSeveral:
		return slices.Equal(slices.Sorted(slices.Values(a.Chosen)), slices.Sorted(slices.Values(b.Chosen)))
	case assess.FormQuantity:
		x, known := v.Quantity(a).Get()
		y, too := v.Quantity(b).Get()
		return known && too && math.Abs(x.Value-y.Value) <= nominal*math.Max(math.Abs(x.Value), math.Abs(y.Value))
	}
	return true
}

// stepOf is the step that asks for a fact.
func stepOf(a rules.Asked) assess.Step {
	q, ok := assess.Find(a.Fact)
	if !ok {
		q = &assess.Question{ID: a.Fact, Name: message.ID(a.Fact)}
	}
	return assess.Step{Question: q, Metal: a.Metal}
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
