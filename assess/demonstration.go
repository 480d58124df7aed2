package assess

import (
	"slices"

	"cutbrief/rules/message"
	"cutbrief/rules/metal"
	"cutbrief/rules/unit"
)

// Demonstration is the record of one demonstration: what was shown, how it went, what
// was said, and what comes next. Empty fields were not noted.
type Demonstration struct {
	Date       string // 2026-11-25
	System     string // identifier of the system shown
	Cuts       []ShownCut
	Words      string // the customer's own words
	Objections []Objection
	Outcome    Outcome
	Because    string  // why that outcome
	Against    Against // where it is no: what weighed most
	Next       Next

	extra, nextExtra extras // unknown fields, kept
}

// ShownCut is one cut as it was shown, with what was measured. Quantities are
// above 0 where they are known.
type ShownCut struct {
	Cut       string // stable identifier of the cut: "everyday-straight"
	Name      string // as it was called on the day
	Metal     metal.ID
	Thickness unit.Maybe[unit.Millimetre]
	Output    unit.Maybe[unit.Ampere]
	Length    unit.Maybe[unit.Millimetre]
	Took      unit.Maybe[unit.Second]
	Predicted unit.Maybe[unit.Second] // for that length, by the model of the day
	Result    Result
	Why       string // why it was not better, or what made it good

	extra extras
}

// Objection is what spoke against it, with the answer given.
type Objection struct {
	Said, Answer string

	extra extras
}

// Next is what is to be done, by whom and when.
type Next struct {
	Step, Owner string
	Date        string // 2026-11-25
}

// Result is how one cut went.
type Result string

// The results. "" is not noted.
const (
	Good Result = "good"
	Fair Result = "fair"
	Poor Result = "poor"
)

// Outcome is how a demonstration ended.
type Outcome string

// The outcomes. "" is not noted.
const (
	Ordered     Outcome = "order"
	Quote       Outcome = "quote"
	SecondVisit Outcome = "second-visit"
	No          Outcome = "no"
)

// Against is what weighed most with a customer who said no.
type Against string

// What can weigh most; our own list, common practice without a source. "" is not
// noted.
const (
	AgainstPrice     Against = "price"
	AgainstHabit     Against = "habit"     // they keep the way they cut today
	AgainstCut       Against = "cut"       // what was shown did not convince
	AgainstSite      Against = "site"      // supply, air or room
	AgainstElsewhere Against = "elsewhere" // they buy something else
	AgainstLater     Against = "later"     // no money or time now
	AgainstOther     Against = "other"
)

// AllAgainst lists what can weigh most.
func AllAgainst() []Against {
	return []Against{AgainstPrice, AgainstHabit, AgainstCut, AgainstSite, AgainstElsewhere, AgainstLater, AgainstOther}
}

// results and endings are all results and outcomes.
var (
	results = []Result{Good, Fair, Poor}
	endings = []Outcome{Ordered, Quote, SecondVisit, No}
)

// DemonstrationOn returns the record of the demonstration on a day, begun if there is
// none yet; they stand in the order of their days. The pointer holds until
// another one is begun or dropped.
func (v *Visit) DemonstrationOn(date string) *Demonstration {
	for i := range v.Demonstrations {
		if v.Demonstrations[i].Date == date {
			return &v.Demonstrations[i]
		}
	}
	at := len(v.Demonstrations)
	for at > 0 && v.Demonstrations[at-1].Date > date {
		at--
	}
	v.Demonstrations = slices.Insert(v.Demonstrations, at, Demonstration{Date: date})
	return &v.Demonstrations[at]
}

// DropDemonstration takes the record of the demonstration on a day out.
func (v *Visit) DropDemonstration(date string) {
	v.Demonstrations = slices.DeleteFunc(v.Demonstrations, func(s Demonstration) bool { return s.Date == date })
}

// Latest returns the demonstration of the last day, nil if there is none.
func (v *Visit) Latest() *Demonstration {
	if len(v.Demonstrations) == 0 {
		return nil
	}
	return &v.Demonstrations[len(v.Demonstrations)-1]
}

// Keep stores a cut in place of an earlier record of the same cut.
func (s *Demonstration) Keep(c ShownCut) {
	for i := range s.Cuts {
		if s.Cuts[i].Cut == c.Cut {
			c.extra = s.Cuts[i].extra
			s.Cuts[i] = c
			return
		}
	}
	s.Cuts = append(s.Cuts, c)
}

// Drop takes the record of a cut out.
func (s *Demonstration) Drop(cut string) {
	s.Cuts = slices.DeleteFunc(s.Cuts, func(c ShownCut) bool { return c.Cut == cut })
}

// Find returns the record of a cut.
func (s *Demonstration) Find(cut string) (ShownCut, bool) {
	for _, c := range s.Cuts {
		if c.Cut == cut {
			return c, true
		}
	}
	return ShownCut{}, false
}

func demonstrationObject() *object[Demonstration] {
	return &object[Demonstration]{
		says:  "One demonstration: what was shown, how it went, what was said, what comes next.",
		extra: func(s *Demonstration) *extras { return &s.extra },
		title: func(*Demonstration) string { return "showing" },
		fields: []field[Demonstration]{
			{name: "date", says: "The day it was held.", shared: true,
				kind: date(func(s *Demonstration) *string { return &s.Date })},
			{name: "system", says: "Identifier of the system shown.", shared: true,
				kind: line(func(s *Demonstration) *string { return &s.System })},
			{name: "cuts", says: "The cuts that were shown, in order.", shared: true,
				kind: list[Demonstration, ShownCut]{of: shownCutObject(), at: func(s *Demonstration) *[]ShownCut { return &s.Cuts }, most: maxShown}},
			{name: "words", says: "The customer's own words.",
				kind: lines(func(s *Demonstration) *string { return &s.Words })},
			{name: "objections", says: "What spoke against it, and the answers.",
				kind: list[Demonstration, Objection]{of: objectionObject(), at: func(s *Demonstration) *[]Objection { return &s.Objections }, most: maxShown}},
			{name: "outcome", says: "How it ended.", shared: true,
				kind: oneOf(func(s *Demonstration) *Outcome { return &s.Outcome }, endings)},
			{name: "because", says: "Why that outcome.",
				kind: lines(func(s *Demonstration) *string { return &s.Because })},
			{name: "against", says: "What weighed most, where the outcome is no.", shared: true,
				kind: oneOf(func(s *Demonstration) *Against { return &s.Against }, AllAgainst())},
			{name: "next", says: "What was agreed to do next.", shared: true,
				kind: part[Demonstration, Demonstration]{nextObject(), func(s *Demonstration, begin bool) *Demonstration {
					if begin || s.Next != (Next{}) || len(s.nextExtra) > 0 {
						return s
					}
					return nil
				}}},
		},
	}
}

func shownCutObject() *object[ShownCut] {
	return &object[ShownCut]{
		extra: func(c *ShownCut) *extras { return &c.extra },
		title: func(c *ShownCut) string { return "cut " + string(quote(c.Cut)) },
		fields: []field[ShownCut]{
			{name: "cut", says: "Identifier of the cut.", required: message.New("cut is missing; the identifier of a cut is accepted"), shared: true,
				kind: line(func(c *ShownCut) *string { return &c.Cut })},
			{name: "name", says: "What it was called.", kind: line(func(c *ShownCut) *string { return &c.Name })},
			{name: "metal", says: "Metal that was cut.", shared: true,
				kind: oneOf(func(c *ShownCut) *metal.ID { return &c.Metal }, metalIDs())},
			{name: "thickness_mm", says: "Thickness, mm.", shared: true,
				kind: positive(func(c *ShownCut) *unit.Maybe[unit.Millimetre] { return &c.Thickness })},
			{name: "output_a", says: "Output of the system, A.", shared: true,
				kind: positive(func(c *ShownCut) *unit.Maybe[unit.Ampere] { return &c.Output })},
			{name: "length_mm", says: "Length of the cut, mm.", shared: true,
				kind: positive(func(c *ShownCut) *unit.Maybe[unit.Millimetre] { return &c.Length })},
			{name: "took_s", says: "Time measured, s.", shared: true,
				kind: positive(func(c *ShownCut) *unit.Maybe[unit.Second] { return &c.Took })},
			{name: "predicted_s", says: "Time predicted on the day for that length, s.", shared: true,
				kind: positive(func(c *ShownCut) *unit.Maybe[unit.Second] { return &c.Predicted })},
			{name: "result", says: "How the cut went.", shared: true,
				kind: oneOf(func(c *ShownCut) *Result { return &c.Result }, results)},
			{name: "why", says: "Why it went so.", kind: lines(func(c *ShownCut) *string { return &c.Why })},
		},
	}
}

func objectionObject() *object[Objection] {
	return &object[Objection]{
		extra: func(o *Objection) *extras { return &o.extra },
		title: func(*Objection) string { return "objection" },
		fields: []field[Objection]{
			{name: "said", says: "What spoke against it.", kind: lines(func(o *Objection) *string { return &o.Said })},
			{name: "answer", says: "The answer given.", kind: lines(func(o *Objection) *string { return &o.Answer })},
		},
	}
}

func nextObject() *object[Demonstration] {
	return &object[Demonstration]{
		extra: func(s *Demonstration) *extras { return &s.nextExtra },
		title: func(*Demonstration) string { return "next" },
		fields: []field[Demonstration]{
			{name: "step", says: "What is to be done.", kind: lines(func(s *Demonstration) *string { return &s.Next.Step })},
			{name: "owner", says: "By whom.", kind: line(func(s *Demonstration) *string { return &s.Next.Owner })},
			{name: "date", says: "By when.", shared: true, kind: date(func(s *Demonstration) *string { return &s.Next.Date })},
		},
	}
}
