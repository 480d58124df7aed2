// Package system is the range of cutting systems a rep can offer: one row a
// system, read from a plain CSV file and checked line by line. Every finding
// names its line and column, says what is wrong and what would be accepted;
// a damaged row is refused alone and never takes its neighbours along.
//
// The built-in range is invented for the demo. The package sizes nothing: rules
// does, and rules/size judges whether a row's cutting figures are physically
// possible; Range.Merge puts such findings from outside in place. rules, assess
// and cmd may import it.
package system

import (
	_ "embed" // the demo range lies beside the code
	"slices"
	"strings"

	"cutbrief/rules/metal"
	"cutbrief/rules/tabular"
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

// IDs are the identifiers of the systems, in the order of the range.
func (r Range) IDs() (ids []string) {
	for i := range r.Systems {
		ids = append(ids, r.Systems[i].ID)
	}
	return ids
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

// Finding is one thing to know about one place in a file; its Row is the ID of
// the system.
type Finding = tabular.Finding

// The severities, as in tabular.
const (
	Error   = tabular.Error
	Warning = tabular.Warning
	Note    = tabular.Note
)

// Merge joins lists of findings about r in the order of its file. A finding
// from outside this package need only name its Row: its line is looked up.
func (r Range) Merge(lists ...[]Finding) []Finding {
	all := slices.Concat(lists...)
	for i := range all {
		if all[i].Line == 0 && all[i].Row != "" {
			all[i].Line = r.LineOf(all[i].Row)
		}
	}
	slices.SortStableFunc(all, func(a, b Finding) int { return a.Line - b.Line })
	return all
}

//go:embed demo.csv
var demo string

// DemoName is what the built-in range is called.
const DemoName = "built-in demo range"

// Demo returns the built-in range. Every system in it, its figures and its
// price are invented for the demo; a test holds it free of errors and warnings.
func Demo() Range {
	r, _ := Read(strings.NewReader(demo), DemoName)
	r.lines = nil // nobody has this file at hand
	return r
}
