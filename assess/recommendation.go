package assess

import (
	"cutbrief/rules"
	"cutbrief/rules/unit"
)

// Recommendation is what was concluded when a visit was last saved, and by which
// rules and range: what the customer was told. It sizes nothing; a reader holds
// it against what would be concluded today.
type Recommendation struct {
	Outcome  rules.Outcome
	System   string                      // its identifier; "" if none is recommended
	Firm     bool                        // no plausible answer to an open question changes it
	Critical rules.Requirement           // what decides; "" if nothing points anywhere
	Rated    unit.Maybe[unit.Millimetre] // rated thickness needed, mild steel
	Rules    int                         // rules.Edition
	Range    string                      // system.Fingerprint

	extra extras // unknown fields, kept
}

// Conclude sums up a result for the record of the visit.
func Conclude(r rules.Result, fingerprint string) *Recommendation {
	c := &Recommendation{Outcome: r.Outcome, Firm: r.Firm, Critical: r.Critical.Requirement, Rules: rules.Edition, Range: fingerprint}
	if need, known := r.Need.Get(); known {
		c.Rated = unit.Known(need.Rated)
	}
	if r.First != nil {
		c.System = r.First.System.ID
	}
	return c
}

// Record keeps what a result concludes in place of what was concluded before,
// with what this program does not know of it.
func (v *Visit) Record(r rules.Result, fingerprint string) {
	c := Conclude(r, fingerprint)
	if v.Recommended != nil {
		c.extra = v.Recommended.extra
	}
	v.Recommended = c
}

// outcomes are what a visit can end in.
var outcomes = []rules.Outcome{rules.Recommended, rules.NotYet, rules.NoneFits}

func recommendationObject() *object[Recommendation] {
	return &object[Recommendation]{
		extra: func(c *Recommendation) *extras { return &c.extra },
		title: func(*Recommendation) string { return "recommended" },
		fields: []field[Recommendation]{
			{name: "outcome", says: "What it came to.", required: oneIsMissing("outcome", outcomes), shared: true,
				kind: oneOf(func(c *Recommendation) *rules.Outcome { return &c.Outcome }, outcomes)},
			{name: "system", says: "Identifier of the system recommended.", shared: true,
				kind: line(func(c *Recommendation) *string { return &c.System })},
			{name: "firm", says: "No plausible answer to an open question changes it.", shared: true,
				kind:    boolean(func(c *Recommendation) *bool { return &c.Firm }),
				written: func(c *Recommendation) bool { return c.Outcome == rules.Recommended }},
			{name: "critical", says: "The requirement that decides.", shared: true,
				kind: oneOf(func(c *Recommendation) *rules.Requirement { return &c.Critical }, rules.Requirements())},
			{name: "rated_mm", says: "Rated thickness needed, mm of mild steel.", shared: true,
				kind: figure(func(c *Recommendation) *unit.Maybe[unit.Millimetre] { return &c.Rated }, anyNumber)},
			{name: "rules", says: "Edition of the rules.", shared: true,
				kind: count(func(c *Recommendation) *int { return &c.Rules }, anyNumber)},
			{name: "range", says: "Fingerprint of the range of systems.", shared: true,
				kind: line(func(c *Recommendation) *string { return &c.Range })},
		},
	}
}
