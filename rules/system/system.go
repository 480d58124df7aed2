package system

import (
	"cutbrief/rules/metal"
	"cutbrief/rules/unit"
)

// Range is a list of systems and where it came from.
type Range struct {
	Name     string // shown on the page: "built-in demo range", or the file's base name
	Invented bool   // true for the built-in demo range, marked so on every page
	Currency string // currency of the prices, such as "EUR"; "" if none is given
	Systems  []System

	lines map[string]int // line of each system in its file, by ID; nil if not from a file
}

// Find returns the system with this ID.
func (r Range) Find(id string) (System, bool) {
	for _, s := range r.Systems {
		if s.ID == id {
			return s, true
		}
	}
	return System{}, false
}

// LineOf returns the line of the file that describes the system with this ID,
// counted from 1, or 0 if it was not read from a file.
func (r Range) LineOf(id string) int { return r.lines[id] }

// System is one row: what its rating plate and data sheet say. Thicknesses are
// mild steel, cut by hand.
type System struct {
	ID   string // stable, lower case, such as "demo-45"
	Name string

	Rated     unit.Millimetre              // clean cut at about 500 mm/min
	CleanMax  unit.Millimetre              // clean cut at about 250 mm/min
	Severance unit.Millimetre              // comes apart at about 125 mm/min
	Pierce    unit.Maybe[unit.Millimetre]  // not known: half of CleanMax is taken
	PerMetal  map[metal.ID]unit.Millimetre // rated thickness in another metal, where given

	OutputMin, OutputMax unit.Ampere
	Duty                 []DutyPoint         // sorted by falling current; at 40 °C, ten-minute period
	Supplies             []Supply            // each supply it can be connected to
	AirFlow              unit.LitrePerMinute // free air needed at full output
	AirPressure          unit.Bar            // needed at the inlet while flowing
	Weight               unit.Kilogram       // without leads
	Price                unit.Maybe[unit.Money]

	HoldsGaps  bool // holds or relights its arc across gaps: expanded metal, grating
	Gouges     bool // has a gouging process in its manual
	ContactTip bool // has a shielded tip made to rest on the work at full output
	Mechanised bool // has a torch for guided or mechanised travel
}

// DutyPoint is one pair from the rating plate.
type DutyPoint struct {
	Output unit.Ampere
	Duty   unit.Percent
}

// Supply is one way to feed the system.
type Supply struct {
	Phases           int // 1 or 3
	VoltMin, VoltMax unit.Volt
	// Input is the largest supply current at the lowest voltage of the range
	// and full output (I1max); Effective is I1eff, for conductors.
	Input, Effective unit.Ampere
}
