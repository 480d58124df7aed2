package size

import "cutbrief/rules/unit"

// OhmPerKilometre is the resistance of one conductor of a cord.
type OhmPerKilometre float64

// CordTemperature is the conductor temperature a cord is judged at, the limit
// of common PVC sheathing. Common practice, no source.
const CordTemperature unit.Celsius = 70

// The recommended voltage drops in % of the supply voltage: on a branch circuit
// and on feeder and branch circuit together. Source: nec-210-19.
const (
	DropBranch unit.Percent = 3
	DropWhole  unit.Percent = 5
)

// flexible lists nominal sections in mm² and the largest resistance in Ω/km of
// plain copper, class 5, at 20 °C. Source: iec-60228 for 1.5 to 25 mm²; the
// thinner and thicker ones are iec-60228-unread, from memory.
var flexible = [...]struct{ section, ohm float64 }{
	{0.75, 26.0}, {1, 19.5},
	{1.5, 13.3}, {2.5, 7.98}, {4, 4.95}, {6, 3.30}, {10, 1.91}, {16, 1.21}, {25, 0.780},
	{35, 0.554}, {50, 0.386},
}

// CordResistance returns the resistance in Ω/km of one copper conductor of a
// flexible cord with a section in mm² at a conductor temperature in °C. A
// section between two of the table takes the product of resistance and section
// between theirs. Correction: R = R20·(1 + 0.00393·(T − 20)).
//
// Valid for 0.75 to 50 mm² and 0 to 90 °C. Source: iec-60228 class 5 for R20
// (beyond 1.5 to 25 mm² from memory), iec-60287 for the correction. Check: 2.5 mm² at 20 °C → 7.98; at 70 °C →
// 7.98·1.1965 = 9.548 Ω/km.
func CordResistance(section unit.SquareMillimetre, at unit.Celsius) (OhmPerKilometre, error) {
	a := float64(section)
	last := len(flexible) - 1
	if err := within("section", a, flexible[0].section, flexible[last].section, "mm²"); err != nil {
		return 0, err
	}
	if err := within("conductor temperature", float64(at), 0, 90, "°C"); err != nil {
		return 0, err
	}
	i := 1
	for a > flexible[i].section {
		i++
	}
	low, high := flexible[i-1], flexible[i]
	share := (a - low.section) / (high.section - low.section)
	product := low.ohm*low.section*(1-share) + high.ohm*high.section*share
	return OhmPerKilometre(product / a * (1 + 0.00393*(float64(at)-20))), nil
}

// americanStranded lists the resistance in Ω per 1000 ft of stranded uncoated
// copper at 75 °C. Source: nec-9-8.
var americanStranded = [...]struct {
	gauge string
	ohm   float64
}{
	{"14", 3.14}, {"12", 1.98}, {"10", 1.24}, {"8", 0.778}, {"6", 0.491}, {"4", 0.308}, {"2", 0.194}, {"1/0", 0.122},
}

// kilofeet is how many thousand feet go into a kilometre: 1 ft = 0.3048 m.
const kilofeet = 1 / 0.3048

// AmericanResistance returns the resistance in Ω/km of one stranded uncoated
// copper conductor of an American wire gauge at a conductor temperature in °C:
// R = R75·(1 + 0.00323·(T − 75)), printed per 1000 ft, here per km.
//
// Valid for gauges 14, 12, 10, 8, 6, 4, 2 and 1/0 and 0 to 90 °C. Source:
// nec-9-8 with its note 2. Check: gauge 10 at 75 °C → 1.24/0.3048 = 4.068 Ω/km.
func AmericanResistance(gauge string, at unit.Celsius) (OhmPerKilometre, error) {
	if err := within("conductor temperature", float64(at), 0, 90, "°C"); err != nil {
		return 0, err
	}
	for _, row := range americanStranded {
		if row.gauge == gauge {
			return OhmPerKilometre(row.ohm * kilofeet * (1 + 0.00323*(float64(at)-75))), nil
		}
	}
	return 0, ErrRange
}

// VoltageDrop returns the voltage lost in V along a cord of a length in m, one
// way, that carries i amperes: 2·I·R·L single-phase, √3·I·R·L line to line
// three-phase. Take the current while cutting: the arc sees the drop then.
//
// Valid for phases 1 or 3 and figures from 0 up; the reactance of a cord is
// left out, small up to 25 mm². Source: physics.
// Check: 20 A, 9.548 Ω/km, 25 m, single-phase → 9.55 V.
func VoltageDrop(phases int, i unit.Ampere, r OhmPerKilometre, length unit.Metre) (unit.Volt, error) {
	factor, err := phaseFactor(phases)
	if err != nil || !(i >= 0 && r >= 0 && length >= 0) {
		return 0, ErrRange
	}
	if phases == 1 {
		factor = 2
	}
	return unit.Volt(factor * float64(i) * float64(r) * float64(length) / 1000), nil
}

// DropShare returns a voltage drop as a share in % of the supply voltage.
// Valid for 0 ≤ drop ≤ v, v > 0. Source: physics. Check: 9.55 V of 230 V → 4.15 %.
func DropShare(drop, v unit.Volt) (unit.Percent, error) {
	if !(v > 0 && drop >= 0 && drop <= v) {
		return 0, ErrRange
	}
	return unit.Percent(100 * drop / v), nil
}
