// Package showing plans the demonstration: which cuts prove the critical
// requirement, with which settings, and which cautions belong on the page. The
// report imports it. It decides nothing about the system; rules did.
package showing

import (
	"cutbrief/rules"
	"cutbrief/rules/cite"
	"cutbrief/rules/metal"
	"cutbrief/rules/unit"
)

// Cut is one step of the demonstration.
type Cut struct {
	ID        string // stable: "thin-straight", "inside-circle", ...
	Name      string
	Proves    rules.Requirement // "" for a warm-up or general step
	Metal     metal.ID
	Thickness unit.Millimetre
	Setting   Setting
	Props     string // what to bring
	See       string // what the customer should see
	Why       string // why this cut for this customer
	Source    cite.Ref
}

// Setting is how the torch is set and held for one cut.
type Setting struct {
	Output   unit.Ampere
	OnWork   bool                                 // tip on the work; otherwise StandOff holds
	Shielded bool                                 // on the work with a shielded tip made for contact
	StandOff [2]unit.Millimetre                   // from, to
	Lead     [2]unit.Degree                       // lead angle, torch pulled not pushed
	Trailing [2]unit.Degree                       // what the arc should do below
	Speed    unit.Maybe[unit.MillimetrePerMinute] // target, where the speed model gives one
	Source   cite.Ref
}

// Caution is one safety line with what it rests on.
type Caution struct {
	ID     string
	Text   string // one plain sentence or two, defers to manual, code or permit where it matters
	Source cite.Ref
}
