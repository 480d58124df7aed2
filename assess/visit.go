// Package assess holds the record of a visit, the catalogue of questions, the
// order they are asked in, and the way from answers to a rules.Job. It has no
// screen and touches no file; assess/store and the screens do.
package assess

import (
	"time"

	"cutbrief/rules"
	"cutbrief/rules/message"
	"cutbrief/rules/metal"
	"cutbrief/rules/unit"
)

// State says how an answer is known.
type State string

// The states, as saved. An absent answer has no state: it was not asked yet.
const (
	Told     State = "told"
	Measured State = "measured"
	Assumed  State = "assumed"
	Unknown  State = "not-known" // asked, and the customer does not know
)

// Answer is what was said to one question.
type Answer struct {
	Question rules.Fact // or one of the visit's own questions, such as "company"
	Metal    metal.ID   // for questions asked per metal
	Said     string     // as said: "3/8 in"; empty for choices and when not known
	Unit     string     // unit taken for a bare number, so that "12" never changes meaning
	Chosen   []string   // option identifiers, in order of choosing
	State    State
	Note     string

	extra extras // unknown fields, kept
}

// Visit is the record of one visit: who, when, what was said, and the rep's
// own decisions. It saves as JSON, format "cutbrief-visit", version 2;
// version 1 is read too.
type Visit struct {
	ID       string // stable, made when the visit starts
	Created  time.Time
	Updated  time.Time
	Revision int  // counts saves, so that two writers notice each other
	Demo     bool // invented, marked as such on every page
	Skipped  []Group
	Answers  []Answer // catalogue order on saving
	Overrule *rules.Overrule

	Recommended    *Recommendation // as last saved; nil if it was not saved
	InterviewTime  *InterviewTime  // how long the interview took; nil if it was not saved
	Demonstrations []Demonstration // demonstrations held, in order

	extra         extras // unknown fields, kept
	overruleExtra extras
}

// Group is a part of the interview that can be skipped whole.
type Group string

// The groups, in the order they are asked.
const (
	GroupVisit    Group = "visit"
	GroupWork     Group = "work"
	GroupHow      Group = "how"
	GroupSite     Group = "site"
	GroupToday    Group = "today"
	GroupDecision Group = "decision"
)

// Form says how a question is answered.
type Form string

// The forms.
const (
	FormText     Form = "text"     // a line as it is
	FormLong     Form = "long"     // several lines
	FormDate     Form = "date"     // 2026-11-25
	FormQuantity Form = "quantity" // a number with a unit
	FormOne      Form = "one"      // one option
	FormSeveral  Form = "several"  // any number of options
)

// Option is one choice of a question.
type Option struct {
	ID   string
	Text message.ID // what the rep reads and can say aloud
}

// Question is one row of the catalogue.
type Question struct {
	ID       rules.Fact
	Name     message.ID // what it is called in lists and messages: "thickest clean cut"
	Group    Group
	Form     Form
	PerMetal bool
	Kind     unit.Kind  // for quantities
	Ask      message.ID // the question, to be said aloud; {1} is the metal
	Why      message.ID // one line: why it matters
	Help     message.ID // a plain explanation at hand, may be long; "" if none is needed
	Example  message.ID // an example of an answer
	Options  []Option
	Optional bool // text nobody needs: not counted as open

	limit   limit
	none    bool                      // "none" and "0" are answers: a known zero
	applies func(*circumstances) bool // nil if always
}

// Step is one question to one customer, with its metal where asked per metal.
type Step struct {
	Question *Question
	Metal    metal.ID
}
