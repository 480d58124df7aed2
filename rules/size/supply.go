package size

import (
	"math"

	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// LoadVoltage returns the conventional load voltage in V of a plasma cutting
// source at an output I in A: U = 80 + 0.4·I up to 165 A, U = 130 + 0.1·I above.
//
// Valid for 0 < I ≤ 500 A. Source: iec-60974-1 clause 11.2, older editions,
// from memory: it scales a rating-plate figure and is never the only thing a
// verdict rests on. Check: 40 A → 96 V; 100 A → 120 V.
func LoadVoltage(output unit.Ampere) (unit.Volt, error) {
	if !(output > 0 && output <= 500) {
		return 0, &RangeError{"output", float64(output), 0, 500, "A"}
	}
	if output <= 165 {
		return unit.Volt(80 + 0.4*output), nil
	}
	return unit.Volt(130 + 0.1*output), nil
}

// ArcPower returns the power in kW that leaves the source at the conventional
// load voltage: P = U·I/1000.
//
// Valid as for LoadVoltage. Source: physics. Check: 40 A → 96·40 = 3.84 kW.
func ArcPower(output unit.Ampere) (unit.Kilowatt, error) {
	u, err := LoadVoltage(output)
	return unit.Kilowatt(float64(u) * float64(output) / 1000), err
}

// VoltTolerance is how far a supply may stray from its rated voltage, as a
// share. Source: iec-60038, ± 10 % in 230/400 V countries; iec-60974-1 asks
// the same of the machine, from memory.
const VoltTolerance = 0.10

// InputCurrent returns the current in A that a system draws from one of its
// supplies at an output in A and a supply voltage in V, scaled from the rating
// plate by the power balance: I1 = I1max · (P/Pmax) · (Vmin/V). Efficiency and
// power factor are taken as at full output.
//
// Valid for OutputMin ≤ output ≤ OutputMax and for a voltage within the
// supply's range and 10 % beyond it, else ErrVolts. Source: rating-plate for
// I1max, physics for the balance.
// Check: I1max 20 A at 230 V and 40 A output; at 20 A output, 230 V:
// P = 20·88/(40·96) = 0.4583 → 9.17 A; at 40 A and 240 V → 19.17 A.
func InputCurrent(s *system.System, from system.Supply, output unit.Ampere, v unit.Volt) (unit.Ampere, error) {
	if !(from.Input > 0 && from.VoltMin > 0 && from.VoltMax >= from.VoltMin) {
		return 0, ErrRow
	}
	if err := usable(s, output); err != nil {
		return 0, err
	}
	if !(reaches(v, from.VoltMin*(1-VoltTolerance)) && reaches(from.VoltMax*(1+VoltTolerance), v)) {
		return 0, ErrVolts
	}
	full, err := ArcPower(s.OutputMax)
	if err != nil {
		return 0, err
	}
	now, err := ArcPower(output)
	return from.Input * unit.Ampere(now/full) * unit.Ampere(from.VoltMin/v), err
}

// EffectiveCurrent returns the effective supply current in A, the steady
// current that heats a conductor as much: I1eff = √(I1²·X + I0²·(1−X)), with
// I1 the current under load, I0 the current at no load, both in A, and X the
// duty cycle.
//
// Valid for I1 ≥ I0 ≥ 0 and 0 ≤ X ≤ 100 %. Source: iec-60974-1, from memory;
// NEC 630.12 (nec-630-12) names the same three inputs.
// Check: 40 A, 0 A, 60 % → 30.98 A.
func EffectiveCurrent(load, idle unit.Ampere, duty unit.Percent) (unit.Ampere, error) {
	if !(idle >= 0 && load >= idle) {
		return 0, ErrRange
	}
	if err := within("duty cycle", float64(duty), 0, 100, "%"); err != nil {
		return 0, err
	}
	x := float64(duty) / 100
	return unit.Ampere(math.Sqrt(float64(load*load)*x + float64(idle*idle)*(1-x))), nil
}

// DutyMultiplier returns what the supply current is multiplied with to give the
// least conductor ampacity: √X, and 0.45 for a duty cycle of 20 % or less. The
// root is rounded to three places and then to two, which gives every figure of
// the table, 0.78 at 60 % among them.
//
// Valid for 0 < X ≤ 100 %, a source without a motor generator. Source:
// nec-630-11 (A). Check: 60 % → 0.78; 40 % → 0.63; 10 % → 0.45.
func DutyMultiplier(duty unit.Percent) (float64, error) {
	if !(duty > 0 && duty <= 100) {
		return 0, &RangeError{"duty cycle", float64(duty), 0, 100, "%"}
	}
	thousandths := math.Round(1000 * math.Sqrt(float64(duty)/100))
	return max(0.45, math.Round(thousandths/10)/100), nil
}

// Ampacity returns the least current in A that the supply conductors must be
// made to carry: the plate's effective current I1eff where it is given, else
// the plate's I1max times DutyMultiplier at the plate's duty cycle.
//
// Valid for a supply with a current; duty as for DutyMultiplier. Source:
// nec-630-11 (A), which puts I1eff first.
// Check: I1eff 22 A → 22 A; none, I1max 40 A at 60 % → 31.2 A.
func Ampacity(from system.Supply, duty unit.Percent) (unit.Ampere, error) {
	if from.Effective > 0 {
		return from.Effective, nil
	}
	if !(from.Input > 0) {
		return 0, ErrRow
	}
	m, err := DutyMultiplier(duty)
	return from.Input * unit.Ampere(m), err
}

// BreakerLimit returns the largest overcurrent protection in A allowed for a
// system: 200 % of I1max. It is an upper limit, not a recommended size.
//
// Valid for I1max > 0. Source: nec-630-12 (A). Check: 25 A → 50 A.
func BreakerLimit(largest unit.Ampere) (unit.Ampere, error) {
	if !(largest > 0) {
		return 0, ErrRange
	}
	return 2 * largest, nil
}

// standardBreakers in A. Source: nec-240-6.
var standardBreakers = [...]unit.Ampere{15, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100}

// StandardBreaker returns the smallest standard rating in A not below i.
// Valid for 0 < i ≤ 100 A. Source: nec-240-6. Check: 31 A → 35 A.
func StandardBreaker(i unit.Ampere) (unit.Ampere, error) {
	for _, size := range standardBreakers {
		if i > 0 && i <= size {
			return size, nil
		}
	}
	return 0, &RangeError{"breaker", float64(i), 0, 100, "A"}
}

// Breaker is how a breaker stands against what a system draws.
type Breaker int

// The standings of a breaker, best first.
const (
	BreakerHolds    Breaker = iota // carries the largest current all the time
	BreakerMayTrip                 // carries the effective current, not the largest: may trip in a long cut
	BreakerTooSmall                // does not carry the effective current
	BreakerTooLarge                // above 200 % of the largest current: does not protect
)

// JudgeBreaker compares a breaker in A with the current drawn while cutting and
// the effective current, both in A at the working output, and with the plate's
// largest current I1max, by which the upper limit goes.
//
// Valid for load ≥ effective > 0 and largest > 0. Source: nec-630-12 (A) for
// the upper limit; the lower two are practice. To be confirmed by a licensed
// electrician.
// Check: 32 A draw and I1max, 20 A effective: 40 A holds, 25 A may trip, 16 A
// is too small, 80 A too large (64 A, next standard size 70 A).
func JudgeBreaker(breaker, load, effective, largest unit.Ampere) (Breaker, error) {
	if !(effective > 0 && reaches(load, effective) && breaker > 0 && largest > 0) {
		return 0, ErrRange
	}
	switch {
	case !reaches(breaker, effective):
		return BreakerTooSmall, nil
	case !reaches(breaker, load):
		return BreakerMayTrip, nil
	case breaker > nextAbove(2*largest):
		return BreakerTooLarge, nil
	}
	return BreakerHolds, nil
}

// nextAbove rounds a limit up to the next standard rating, as 630.12 allows;
// beyond the list it stays as it is.
func nextAbove(limit unit.Ampere) unit.Ampere {
	if size, err := StandardBreaker(limit); err == nil {
		return size
	}
	return limit
}

// ApparentPower returns what a supply has to deliver in kVA: S = V·I/1000
// single-phase, √3·V·I/1000 three-phase with V line to line.
//
// Valid for phases 1 or 3, v > 0, i ≥ 0. Source: physics.
// Check: 230 V, 20 A: 4.6 kVA; 400 V, 32 A, three-phase: 22.17 kVA.
func ApparentPower(phases int, v unit.Volt, i unit.Ampere) (unit.KilovoltAmpere, error) {
	root, err := phaseFactor(phases)
	if err != nil || !(v > 0 && i >= 0) {
		return 0, ErrRange
	}
	return unit.KilovoltAmpere(root * float64(v) * float64(i) / 1000), nil
}

func phaseFactor(phases int) (float64, error) {
	switch phases {
	case 1:
		return 1, nil
	case 3:
		return math.Sqrt(3), nil
	}
	return 0, ErrRange
}

// GeneratorFloor and GeneratorComfort are the margins on the apparent power
// drawn at full output that a generator's continuous rating should have, for
// the peaky current of a rectifier input. Common practice, no source: no
// published factor was found, so ask the generator's maker too.
const (
	GeneratorFloor   = 1.25
	GeneratorComfort = 1.5
)

// GeneratorNeed returns the continuous rating in kVA that a generator needs at
// the site: least 1.25 times, comfortably 1.5 times the apparent power drawn.
//
// Valid for drawn > 0. Source: practice. Check: 4.6 kVA → 5.75 and 6.9 kVA.
func GeneratorNeed(drawn unit.KilovoltAmpere) (least, comfort unit.KilovoltAmpere, err error) {
	if !(drawn > 0) {
		return 0, 0, ErrRange
	}
	return drawn * GeneratorFloor, drawn * GeneratorComfort, nil
}

// GeneratorAt returns what is left of a generator's continuous rating in kVA at
// an altitude in m: the rating times the air density ratio above 1000 m. A
// rough ceiling for an engine without a turbocharger; the set's own manual
// decides.
//
// Valid for −100 to 5000 m, rating > 0. Source: iso-2533 for the density, from
// memory, and practice for the rule. Check: 10 kVA at 2000 m → 8.2 kVA.
func GeneratorAt(rating unit.KilovoltAmpere, altitude unit.Metre) (unit.KilovoltAmpere, error) {
	if !(rating > 0) {
		return 0, ErrRange
	}
	ratio, err := DensityRatio(altitude)
	if altitude <= 1000 && err == nil {
		ratio = 1
	}
	return rating * unit.KilovoltAmpere(ratio), err
}

// OhmPerKilometre is the resistance of one conductor of a cord.
type OhmPerKilometre float64

// CordTemperature is the conductor temperature a cord is judged at, the limit
// of common PVC sheathing. Common practice, no source.
const CordTemperature unit.Celsius = 70

// DropWhole is the recommended voltage drop in % of the supply voltage on feeder
// and branch circuit together. Source: nec-210-19.
const DropWhole unit.Percent = 5

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

// ampacities lists copper conductors by section in mm² (American wire gauges 14
// to 2, by astm-b258, and none) with the current in A they carry without passing
// 60 °C and 75 °C. Source: nec-310-16, for 30 °C around them and up to three that
// carry current.
var ampacities = [...]struct{ section, at60, at75 float64 }{
	{0, 0, 0},
	{2.081, 15, 20}, {3.309, 20, 25}, {5.261, 30, 35}, {8.367, 40, 50}, {13.30, 55, 65}, {21.15, 70, 85}, {26.67, 85, 100}, {33.63, 95, 115},
}

// CordAmpacity returns the current in A that the copper conductors of a cord
// with a section in mm² carry all the time: cautious without passing 60 °C, most
// without passing 75 °C. A section between two of the table lies straight
// between theirs; below the first it takes that one's in proportion, which is
// common practice, no source; above the last it counts as the last. Cords have a
// table of their own in the same book, 400.5, that no one here read: a licensed
// electrician does.
//
// Valid for 0.75 mm² and above. Source: nec-310-16.
// Check: gauge 10, 5.261 mm² → 30 and 35 A; 2.5 mm² → 15 + 5·0.419/1.228 = 16.7
// and 21.7 A.
func CordAmpacity(section unit.SquareMillimetre) (cautious, most unit.Ampere, err error) {
	a := float64(section)
	if !(a >= flexible[0].section) {
		return 0, 0, ErrRange
	}
	a = min(a, ampacities[len(ampacities)-1].section)
	i := 1
	for a > ampacities[i].section {
		i++
	}
	low, high := ampacities[i-1], ampacities[i]
	share := (a - low.section) / (high.section - low.section)
	return unit.Ampere(blend(low.at60, high.at60, share)), unit.Ampere(blend(low.at75, high.at75, share)), nil
}

// blend is the point between low and high at a share of the way.
func blend(low, high, share float64) float64 { return low + (high-low)*share }
