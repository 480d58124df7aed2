package size

import "cutbrief/rules/unit"

// Multiple is how many times the thickest regular cut a rated thickness has to
// be: at least Floor, comfortably Comfort.
type Multiple struct{ Floor, Comfort float64 }

// ForMaintenance, ForMixed, ForProduction and ForSpeed are the multiples by use:
// maintenance may run close to capacity; mixed or light production 1.5 to 2;
// production 2 to 3; and 1.5 to 1.6 where speed decides. Source: practice.
func ForMaintenance() Multiple { return Multiple{1, 1} }

// ForMixed is the multiple for mixed work or light production.
func ForMixed() Multiple { return Multiple{1.5, 2} }

// ForProduction is the multiple for production.
func ForProduction() Multiple { return Multiple{2, 3} }

// ForSpeed is the least multiple where cutting speed decides.
func ForSpeed() Multiple { return Multiple{1.5, 1.6} }

// Need returns the rated thickness in mm that a regular clean cut of t mm, in
// mild-steel equivalents, asks for: at least t·Floor, comfortably t·Comfort.
// Valid for t > 0. Source: practice.
// Check: 6.35 mm in production → 12.7 mm, comfortably 19.05 mm.
func (m Multiple) Need(t unit.Millimetre) (least, comfort unit.Millimetre, err error) {
	if !(t > 0) {
		return 0, 0, ErrRange
	}
	return t * unit.Millimetre(m.Floor), t * unit.Millimetre(m.Comfort), nil
}

// NominalStep is one step between nominal sizes: 12 mm and 1/2 in (12.7 mm)
// are one size in the trade. Source: practice.
const NominalStep = 0.06

// Standing is how a capacity compares with a need.
type Standing int

// The standings, best first.
const (
	Enough    Standing = iota
	StepShort          // short by no more than one nominal step: said, never passed silently
	TooSmall
)

// Compare returns Enough if have ≥ need, StepShort if have ≥ need·(1 − 0.06),
// else TooSmall; both in the same unit. Valid for any figures. Source: practice.
// Check: need 12.7 mm, have 12 mm → StepShort (12.7·0.94 = 11.938).
func Compare(need, have float64) Standing {
	switch {
	case have >= need*(1-tiny):
		return Enough
	case have >= need*(1-NominalStep)*(1-tiny):
		return StepShort
	}
	return TooSmall
}
