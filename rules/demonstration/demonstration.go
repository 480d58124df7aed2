// Package demonstration plans the demonstration: which cuts prove the critical
// requirement, with which settings, what to check before and at the bench, and
// which cautions belong on the page. The report and the screens import it. It
// decides nothing about the system; rules did.
//
// The plan is a small optimisation, solved exactly by looking at every set of
// cuts there is (at most 2 to the number of rows of the catalogue). A set is
// allowed if every precondition of each of its cuts holds and it fits the time
// given, set-ups included, with a sixth of it left for questions unless what
// decides could not be shown then. Among the allowed sets the planner takes the
// one that
//
//  1. opens and closes with a cut that proves the critical requirement; if only
//     one cut can prove it, opens with that one;
//  2. then is worth most: another requirement as strong as the critical one 50,
//     counted once; the everyday cut 30; the customer's own piece 30; a cut of a
//     kind they make 20; each further proof of the critical requirement 8;
//  3. then takes the least time, with cuts of one set-up put together;
//  4. then comes first in the order of the catalogue, from thin to heavy.
//
// The weights are common practice, no source.
package demonstration

import (
	"cutbrief/rules"
	"cutbrief/rules/cite"
	"cutbrief/rules/message"
	"cutbrief/rules/metal"
	"cutbrief/rules/unit"
)

// Programme is the demonstration as planned, with what was left out and why.
type Programme struct {
	Cuts    []Cut       // in the order shown
	LeftOut []LeftOut   // every other row of the catalogue, in its order
	Given   unit.Second // the time there is
	Told    bool        // the customer gave it; otherwise it is the usual
	Takes   unit.Second // all cuts and set-ups between them
}

// LeftOut is a cut that is not shown, and why.
type LeftOut struct {
	ID     string
	Name   message.Message
	Reason message.Message // one plain sentence
}

// Cut is one step of the demonstration.
type Cut struct {
	ID        string // stable: "thin-straight", "inside-circle", ...
	Name      message.Message
	Proves    rules.Requirement // "" for a warm-up or general step
	Chosen    message.ID        // why it is in the plan, one plain sentence
	Metal     metal.ID
	Thickness unit.Millimetre
	Setting   OperatingPoint
	Takes     unit.Second  // with talking and looking, without the set-up before
	SetUp     bool         // needs another plate or setting than the cut before
	Timed     bool         // a straight cut whose time is taken
	Props     []message.ID // what to bring
	See       message.ID   // what the customer should see
	Why       message.ID   // why this cut says something
	Fails     message.ID   // how it can fail
	Avoid     message.ID   // how to avoid that
	Source    cite.Ref
}

// OperatingPoint is how the torch is set and held for one cut.
type OperatingPoint struct {
	Output   unit.Ampere
	OnWork   bool                                 // tip on the work; otherwise StandOff holds
	Shielded bool                                 // on the work with a shielded tip made for contact
	StandOff [2]unit.Millimetre                   // from, to
	Lead     [2]unit.Degree                       // lead angle, torch pulled not pushed
	Trailing [2]unit.Degree                       // what the arc should do below
	Pressure unit.Bar                             // air at the inlet while it flows, from the system's row; 0 if it gives none
	Through  unit.Millimetre                      // metal along the cut: more than the plate where the torch is tilted
	Speed    unit.Maybe[unit.MillimetrePerMinute] // target, where the speed model gives one
	Length   unit.Millimetre                      // of the cut; 0 where it depends on the piece
	Seconds  unit.Maybe[unit.Second]              // Length at Speed
	Source   cite.Ref
}

// What shows the speed at the bench. Common practice, no source.
const (
	TooSlow message.ID = "sparks fall straight down or run ahead, the kerf is wide and heavy dross hangs below"
	TooFast message.ID = "sparks spray back over the plate, the arc trails far behind, or the cut does not come through"
)

// Caution is one safety line with what it rests on. One without applies is
// general: it is printed also when nothing is known.
type Caution struct {
	ID      string
	Text    message.ID // one plain sentence or two, defers to manual, code or permit where it matters
	Source  cite.Ref
	Hazard  Hazard
	When    message.ID // what applies says, in words, such as "copper or brass is cut"; "" for always
	applies func(*situation) bool
}

// Raised reports whether an answer of the job raised it; false for what is said to
// everybody.
func (c Caution) Raised() bool { return c.applies != nil }

// Hazard is what a caution is about.
type Hazard string

// The hazards.
const (
	Arc           Hazard = "arc" // its light
	Fire          Hazard = "fire"
	Explosion     Hazard = "explosion"
	Fume          Hazard = "fume"
	ClosedSpace   Hazard = "closed space"
	Height        Hazard = "height"
	HotMetal      Hazard = "hot metal"
	Shock         Hazard = "shock"
	Noise         Hazard = "noise"
	MagneticField Hazard = "magnetic field"
	AnyHazard     Hazard = "any" // about all of them, or about who comes first
)
