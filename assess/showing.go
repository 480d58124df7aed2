package assess

import (
	"slices"

	"cutbrief/rules/metal"
	"cutbrief/rules/unit"
)

// Showing is the record of one demonstration: what was shown, how it went, what
// was said, and what comes next. Empty fields were not noted.
type Showing struct {
	Date       string // 2026-11-25
	System     string // identifier of the system shown
	Cuts       []Shown
	Words      string // the customer's own words
	Objections []Objection
	Outcome    Outcome
	Because    string  // why that outcome
	Against    Against // where it is no: what weighed most
	Next       Next

	extra, nextExtra extras // unknown fields, kept
}

// Shown is one cut as it was shown, with what was measured. Quantities are
// above 0 where they are known.
type Shown struct {
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

// ShowingOn returns the record of the demonstration on a day, begun if there is
// none yet; they stand in the order of their days. The pointer holds until
// another one is begun or dropped.
func (v *Visit) ShowingOn(date string) *Showing {
	for i := range v.Showings {
		if v.Showings[i].Date == date {
			return &v.Showings[i]
		}
	}
	at := len(v.Showings)
	for at > 0 && v.Showings[at-1].Date > date {
		at--
	}
	v.Showings = slices.Insert(v.Showings, at, Showing{Date: date})
	return &v.Showings[at]
}

// DropShowing takes the record of the demonstration on a day out.
func (v *Visit) DropShowing(date string) {
	v.Showings = slices.DeleteFunc(v.Showings, func(s Showing) bool { return s.Date == date })
}

// Latest returns the demonstration of the last day, nil if there is none.
func (v *Visit) Latest() *Showing {
	if len(v.Showings) == 0 {
		return nil
	}
	return &v.Showings[len(v.Showings)-1]
}

// Keep stores a cut in place of an earlier record of the same cut.
func (s *Showing) Keep(c Shown) {
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
func (s *Showing) Drop(cut string) {
	s.Cuts = slices.DeleteFunc(s.Cuts, func(c Shown) bool { return c.Cut == cut })
}

// Find returns the record of a cut.
func (s *Showing) Find(cut string) (Shown, bool) {
	for _, c := range s.Cuts {
		if c.Cut == cut {
			return c, true
		}
	}
	return Shown{}, false
}

func showingObject() *object[Showing] {
	return &object[Showing]{
		says:  "One demonstration: what was shown, how it went, what was said, what comes next.",
		extra: func(s *Showing) *extras { return &s.extra },
		title: func(*Showing) string { return "showing" },
		fields: []field[Showing]{
			{name: "date", says: "The day it was held.", shared: true,
				kind: date(func(s *Showing) *string { return &s.Date })},
			{name: "system", says: "Identifier of the system shown.", shared: true,
				kind: line(func(s *Showing) *string { return &s.System })},
			{name: "cuts", says: "The cuts that were shown, in order.", shared: true,
				kind: list[Showing, Shown]{of: shownObject(), at: func(s *Showing) *[]Shown { return &s.Cuts }, most: maxShown}},
			{name: "words", says: "The customer's own words.",
				kind: lines(func(s *Showing) *string { return &s.Words })},
			{name: "objections", says: "What spoke against it, and the answers.",
				kind: list[Showing, Objection]{of: objectionObject(), at: func(s *Showing) *[]Objection { return &s.Objections }, most: maxShown}},
			{name: "outcome", says: "How it ended.", shared: true,
				kind: oneOf(func(s *Showing) *Outcome { return &s.Outcome }, endings)},
			{name: "because", says: "Why that outcome.",
				kind: lines(func(s *Showing) *string { return &s.Because })},
			{name: "against", says: "What weighed most, where the outcome is no.", shared: true,
				kind: oneOf(func(s *Showing) *Against { return &s.Against }, AllAgainst())},
			{name: "next", says: "What was agreed to do next.", shared: true,
				kind: part[Showing, Showing]{nextObject(), func(s *Showing, begin bool) *Showing {
					if begin || s.Next != (Next{}) || len(s.nextExtra) > 0 {
						return s
					}
					return nil
				}}},
		},
	}
}

func shownObject() *object[Shown] {
	return &object[Shown]{
		extra: func(c *Shown) *extras { return &c.extra },
		title: func(c *Shown) string { return "cut " + quote(c.Cut) },
		fields: []field[Shown]{
			{name: "cut", says: "Identifier of the cut.", required: "cut is missing; the identifier of a cut is accepted", shared: true,
				kind: line(func(c *Shown) *string { return &c.Cut })},
			{name: "name", says: "What it was called.", kind: line(func(c *Shown) *string { return &c.Name })},
			{name: "metal", says: "Metal that was cut.", shared: true,
				kind: oneOf(func(c *Shown) *metal.ID { return &c.Metal }, metalIDs())},
			{name: "thickness_mm", says: "Thickness, mm.", shared: true,
				kind: positive(func(c *Shown) *unit.Maybe[unit.Millimetre] { return &c.Thickness })},
			{name: "output_a", says: "Output of the system, A.", shared: true,
				kind: positive(func(c *Shown) *unit.Maybe[unit.Ampere] { return &c.Output })},
			{name: "length_mm", says: "Length of the cut, mm.", shared: true,
				kind: positive(func(c *Shown) *unit.Maybe[unit.Millimetre] { return &c.Length })},
			{name: "took_s", says: "Time measured, s.", shared: true,
				kind: positive(func(c *Shown) *unit.Maybe[unit.Second] { return &c.Took })},
			{name: "predicted_s", says: "Time predicted on the day for that length, s.", shared: true,
				kind: positive(func(c *Shown) *unit.Maybe[unit.Second] { return &c.Predicted })},
			{name: "result", says: "How the cut went.", shared: true,
				kind: oneOf(func(c *Shown) *Result { return &c.Result }, results)},
			{name: "why", says: "Why it went so.", kind: lines(func(c *Shown) *string { return &c.Why })},
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

func nextObject() *object[Showing] {
	return &object[Showing]{
		extra: func(s *Showing) *extras { return &s.nextExtra },
		title: func(*Showing) string { return "next" },
		fields: []field[Showing]{
			{name: "step", says: "What is to be done.", kind: lines(func(s *Showing) *string { return &s.Next.Step })},
			{name: "owner", says: "By whom.", kind: line(func(s *Showing) *string { return &s.Next.Owner })},
			{name: "date", says: "By when.", shared: true, kind: date(func(s *Showing) *string { return &s.Next.Date })},
		},
	}
}
