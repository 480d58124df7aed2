package assess

import (
	"encoding/json"
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

	extra, nextExtra map[string]json.RawMessage // unknown fields, kept
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

	extra map[string]json.RawMessage
}

// Objection is what spoke against it, with the answer given.
type Objection struct {
	Said, Answer string

	extra map[string]json.RawMessage
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

var (
	results = []string{string(Good), string(Fair), string(Poor)}
	endings = []string{string(Ordered), string(Quote), string(SecondVisit), string(No)}
	weights = texts(AllAgainst())
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
