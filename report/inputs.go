package report

import (
	"cutbrief/rules/cost"
	"cutbrief/rules/message"
	"cutbrief/rules/unit"
)

// inchUnit is a unit of an input as a reader in inches has it, and how many of
// it are one of ours.
type inchUnit struct {
	name string
	per  float64
}

const cubicFoot = foot * foot * foot // m³

// Units of inputs for a reader in inches, exact (nist-sp-811): an inch is
// 25.4 mm, a foot 0.3048 m.
var (
	figuresIn = map[string]inchUnit{
		"mm/min": {"in/min", 1 / 25.4}, "m": {"ft", 1 / foot}, "min/m": {"min/ft", foot},
		"l/min": {"cfm", 1 / (1000 * cubicFoot)}, "kW per m3/min": {"kW per 100 cfm", 100 * cubicFoot},
	}
	moneyIn = map[string]inchUnit{"m": {"ft", foot}, "m3": {"ft3", cubicFoot}}
)

// inUnits is an input in the units of the visit; what has no unit of length in it
// stays as it is.
func (b *builder) inUnits(in cost.Input) cost.Input {
	units := figuresIn
	if in.Money {
		units = moneyIn
	}
	if other, ok := units[string(in.Unit)]; ok && b.style == unit.Inch {
		in.Unit, in.Estimate = message.ID(other.name), in.Estimate.Times(other.per)
	}
	return in
}
