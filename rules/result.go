// Package rules sizes a cutting system to a customer's work: a Job goes in, a
// Result comes out, and every conclusion in it carries its rule, its inputs,
// its margin and its source. It knows no terminal, no file and no clock, and
// it refuses to take an unknown for a zero. The record of a visit and the
// report import it.
package rules

import (
	"cutbrief/rules/cite"
	"cutbrief/rules/message"
	"cutbrief/rules/metal"
	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// Edition counts the rules. It is raised with every change to a rule, a factor
// or a formula that can change a result, so that a record can say which rules it
// was sized with.
const Edition = 3

// Outcome is the one thing a page must say first.
type Outcome string

// The outcomes.
const (
	Recommended Outcome = "recommended"
	NotYet      Outcome = "not-yet" // too much is unknown to recommend anything
	NoneFits    Outcome = "none-fits"
)

// Verdict on one check of one system.
type Verdict string

// The verdicts. NotKnown is never met: it is a question to ask.
const (
	Met        Verdict = "met"
	Borderline Verdict = "borderline" // short by up to one nominal step, 6 %
	Short      Verdict = "falls short"
	NotKnown   Verdict = "not known"
)

// Status of one system for this job.
type Status string

// The statuses, best first.
const (
	Fits          Status = "fits"
	FitsAfterSite Status = "fits once the site is changed" // circuit or air to be changed first
	FitsNearly    Status = "borderline"
	FallsShort    Status = "falls short"
)

// Input is one number or word a conclusion used, and where it came from.
type Input struct {
	Name  message.Message // "thickest clean cut, stainless"
	Value unit.Quantity
	Word  message.ID // for answers that are not numbers; then Value.Kind is None
	From  Asked      // zero if it is not the customer's: a system's row or a rule
	Op    string     // how it enters the formula: "" for the first, "×", "÷ cos"
}

// Check is one conclusion about one system: rule, inputs, need against
// capability, verdict, margin and source.
type Check struct {
	Rule    RuleID
	Inputs  []Input
	Need    unit.Quantity // what the job asks; Kind None if it is yes or no
	Have    unit.Quantity // what the system or site gives
	Verdict Verdict
	Margin  unit.Maybe[float64] // Have/Need − 1, where both are numbers
	Almost  message.ID          // what borderline means in this very case; "" leaves it to the rule
	Missing []Asked             // what would have to be told to judge it
	Source  cite.Ref
}

// RuleID names a rule in the table, stable in files and on pages.
type RuleID string

// Rule is one row of the table of rules.
type Rule struct {
	ID     RuleID
	Title  message.ID // for a reader: "clean cut"
	Words  message.ID // the formula in words
	Hard   bool       // a shortfall excludes the system
	Site   bool       // about the site, which can be changed
	Cure   message.ID // what would turn a shortfall round
	Almost message.ID // what borderline means here; "" for within one nominal step, 6 %
	Asks   message.ID // how the need is said: "takes {1}"; "" for "needs {1}"
	Gives  message.ID // how the capability is said; "" for "gives {1}"
	Source cite.Ref
}

// Candidate is one system judged.
type Candidate struct {
	System *system.System
	Status Status
	Checks []Check
	Excess float64 // rated thickness over thickness needed; 1 is an exact fit
	Open   bool    // some check that could exclude it is not known
}

// Need is what the work asks of any system.
type Need struct {
	Metal     metal.ID        // the metal that decides
	Thickness unit.Millimetre // of that metal, as told
	Rated     unit.Millimetre // mild-steel rated thickness needed: the floor
	Comfort   unit.Millimetre // the comfortable rated thickness; equals Rated where the rule has one figure
	Factor    float64         // what the thickness was multiplied by for use or speed
	Rule      RuleID          // the rule that gave Factor
	Inputs    []Input
	Severed   unit.Maybe[unit.Millimetre] // mild-steel equivalent to sever
	Pierced   unit.Maybe[unit.Millimetre] // mild-steel equivalent to pierce
	Source    cite.Ref
}

// Requirement is what can decide the sale.
type Requirement string

// The requirements. Identifiers are kept in files.
const (
	Speed       Requirement = "cutting-speed"
	Distortion  Requirement = "low-distortion"
	EdgeQuality Requirement = "edge-quality"
	Ease        Requirement = "ease-of-use"
	RunningCost Requirement = "running-cost"
	Portability Requirement = "portability"
	Reach       Requirement = "reach" // heavy section
	AcrossGaps  Requirement = "across-gaps"
)

// Evidence is one reason to think a requirement decides.
type Evidence struct {
	Requirement Requirement
	Said        bool // the customer said so; outranks anything inferred
	Weight      int
	Sentence    message.ID
	From        Asked
	Source      cite.Ref
}

// Critical is the requirement that decides the sale, and why.
type Critical struct {
	Requirement Requirement   // "" if nothing points anywhere
	Tie         []Requirement // others as strong; empty if it stands alone
	Evidence    []Evidence    // all of it, strongest first
	Overruled   bool          // the rep's own choice
	Reason      string        // the rep's reason
	Instead     Requirement   // what the evidence says, when overruled
}

// OpenQuestion is an unanswered question that matters.
type OpenQuestion struct {
	Asked    Asked
	Could    message.Message // what it could change, one plain sentence
	Strength int             // 3 the system, 2 the critical requirement, 1 a site verdict
	FlipTo   string          // System.ID it would change to; "" if to none or not the system
}

// Margin says how far one answer may move before another system is right.
type Margin struct {
	Asked      Asked
	Now        unit.Quantity
	HoldsTo    unit.Quantity             // the first choice holds, and stands as it does, up to here
	Then       *system.System            // what is right beyond it; nil if nothing is
	ThenStatus Status                    // how it stands there
	DownTo     unit.Maybe[unit.Quantity] // below here Smaller would be right
	Smaller    *system.System
}

// Flag is a contradiction or a gentle warning about the answers.
type Flag struct {
	ID       string
	Sentence message.ID
	From     []Asked
	Source   cite.Ref
	applies  func(*Job) bool // of a row; nil in a result
}

// Result is everything concluded from a job and a range.
type Result struct {
	Outcome    Outcome
	Missing    []Asked // for NotYet: what must be told first
	Need       unit.Maybe[Need]
	Critical   Critical
	Candidates []Candidate // best first; those that fall short after those that fit
	First      *Candidate  // the recommended system, or nil
	Second     *Candidate  // the second choice, or nil
	Margins    []Margin    // how far answers may move before another system is right
	Firm       bool        // no plausible answer to an open question changes First
	Open       []OpenQuestion
	Flags      []Flag
}
