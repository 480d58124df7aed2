package size

import (
	"math"
	"slices"

	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// Period is the time over which a duty cycle is counted: ten minutes.
// Source: aws-glossary; iec-60974-1 clause 3.
const Period unit.Second = 600

// ArcOn returns the share of ten minutes in % that the arc burns for a number
// of cuts, each of a length in m, at a speed v in mm/min:
// X = 100·cuts·(1000·each/v)/10. Above 100 % the cuts take longer than the ten
// minutes they were told for.
//
// Valid for cuts ≥ 0, each ≥ 0, v > 0. Source: aws-glossary (definition).
// Check: 12 cuts of 0.25 m at 500 mm/min = 6 min → 60 %.
func ArcOn(cuts float64, each unit.Metre, v unit.MillimetrePerMinute) (unit.Percent, error) {
	if !(cuts >= 0 && each >= 0 && v > 0) {
		return 0, ErrRange
	}
	return unit.Percent(100 * cuts * float64(each) * 1000 / float64(v) * 60 / float64(Period)), nil
}

// AllowedDuty returns the duty cycle in % that a system's rating plate allows
// at an output in A, at 40 °C. Between two points of the plate ln X runs
// straight in ln I; beyond them I²·X is constant (equal mean heat), and never
// above 100 %.
//
// Valid for OutputMin ≤ output ≤ OutputMax; without a point ErrNoDuty, with
// points out of order ErrRow. An estimate off the points: switching losses and
// hot spots do not follow I². Source: rating-plate for the points, physics for
// the rule; 40 °C: osha-254 (b)(2)(i).
// Check: 40 A at 35 % → 28 A: 35·(40/28)² = 71.4 %; 20 A: 100 %.
func AllowedDuty(s *system.System, output unit.Ampere) (unit.Percent, error) {
	if len(s.Duty) == 0 {
		return 0, ErrNoDuty
	}
	if err := usable(s, output); err != nil {
		return 0, err
	}
	if !dutyInOrder(s.Duty) {
		return 0, ErrRow
	}
	return allowed(s.Duty, output), nil
}

// dutyInOrder reports whether current falls and duty does not.
func dutyInOrder(p []system.DutyPoint) bool {
	for i := range p {
		if !(p[i].Output > 0 && p[i].Duty > 0 && p[i].Duty <= 100) {
			return false
		}
		if i > 0 && (p[i].Output >= p[i-1].Output || p[i].Duty < p[i-1].Duty) {
			return false
		}
	}
	return true
}

// allowed is AllowedDuty for points known to be in order.
func allowed(p []system.DutyPoint, output unit.Ampere) unit.Percent {
	i := 0
	for i < len(p) && output < p[i].Output {
		i++
	}
	switch i {
	case 0:
		return equalHeat(p[0], output)
	case len(p):
		return equalHeat(p[i-1], output)
	}
	a, b := p[i-1], p[i]
	slope := math.Log(float64(b.Duty/a.Duty)) / math.Log(float64(b.Output/a.Output))
	return a.Duty * unit.Percent(math.Pow(float64(output/a.Output), slope))
}

// equalHeat keeps I²·X of one point, at most 100 %.
func equalHeat(p system.DutyPoint, output unit.Ampere) unit.Percent {
	ratio := float64(p.Output / output)
	return min(100, p.Duty*unit.Percent(ratio*ratio))
}

// Working is one way to run the busiest ten minutes.
type Working struct {
	Output          unit.Ampere
	Speed           unit.MillimetrePerMinute
	Demand, Allowed unit.Percent // arc-on share the work takes, and the plate allows
}

// WorkingAt returns what the busiest ten minutes take at one output: a number
// of cuts of a length in m through t mm (mild-steel equivalent), led no faster
// than limit. Valid, and errors, as for Speed, ArcOn and AllowedDuty.
// Source: rating-plate and practice. Check: rated 12 mm at 40 A with 35 %,
// 12 cuts of 0.25 m in 12 mm → 500 mm/min, 60 % taken, 35 % allowed.
func WorkingAt(s *system.System, output unit.Ampere, t unit.Millimetre, limit unit.MillimetrePerMinute, cuts float64, each unit.Metre) (Working, error) {
	v, err := Speed(s, output, t, limit)
	if err != nil {
		return Working{}, err
	}
	takes, err := ArcOn(cuts, each, v)
	if err != nil {
		return Working{}, err
	}
	may, err := AllowedDuty(s, output)
	return Working{output, v, takes, may}, err
}

// Fit returns the largest output at which the busiest ten minutes fit the duty
// cycle, and what speed is left there. Below the rated thickness the time taken
// grows as 1/I while the allowance grows as 1/I², so turning down helps until
// the plate becomes too thick for the current; both are straight lines in
// logarithms between known corners, so the answer is exact.
//
// Valid as for WorkingAt; ErrNoFit if no output from OutputMin
// to OutputMax does. Source: rating-plate and practice.
// Check: rated 12 mm at 40 A with 35 %, work of 50 % at 40 A in 6 mm:
// I = 40·35/50 = 28 A, where 71.4 % is both taken and allowed.
func Fit(s *system.System, t unit.Millimetre, limit unit.MillimetrePerMinute, cuts float64, each unit.Metre) (Working, error) {
	at, err := WorkingAt(s, s.OutputMax, t, limit, cuts, each)
	if err != nil || reaches(at.Allowed, at.Demand) {
		return at, err
	}
	var room [maxCorners]unit.Ampere
	for _, output := range slices.Backward(corners(s, t, limit, room[:0])) {
		next, err := WorkingAt(s, output, t, limit, cuts, each)
		if err != nil {
			return Working{}, err
		}
		if reaches(next.Allowed, next.Demand) {
			return WorkingAt(s, crossing(next, at), t, limit, cuts, each)
		}
		at = next
	}
	return Working{}, ErrNoFit
}

// crossing is the output at which demand meets allowance between one working
// point that fits and one that does not.
func crossing(fits, short Working) unit.Ampere {
	spare := math.Log(float64(fits.Allowed / fits.Demand))
	lack := math.Log(float64(short.Demand / short.Allowed))
	share := spare / (spare + lack)
	return fits.Output * unit.Ampere(math.Pow(float64(short.Output/fits.Output), share))
}

// maxCorners is room for the corners of the speed curve, the lower end, and two
// for each duty point of any rating plate met with.
const maxCorners = 24

// corners lists, rising, the least usable output and those up to the largest where
// demand or allowance change their slope in logarithms.
func corners(s *system.System, t unit.Millimetre, limit unit.MillimetrePerMinute, list []unit.Ampere) []unit.Ampere {
	least := max(s.OutputMin, s.OutputMax*unit.Ampere(t/s.Severance))
	add := func(output unit.Ampere) { list = append(list, max(least, min(output, s.OutputMax))) }
	add(least)
	if c, err := curveAt(s, s.OutputMax); err == nil {
		for _, thickness := range [...]float64{c.rated, c.clean} {
			// both sides, for a row with two equal thicknesses leaps there
			add(s.OutputMax * unit.Ampere(float64(t)/thickness*(1+tiny)))
			add(s.OutputMax * unit.Ampere(float64(t)/thickness*(1-tiny)))
		}
		add(s.OutputMax * unit.Ampere(float64(t)/c.thickness(float64(limit))))
	}
	for _, p := range s.Duty {
		add(p.Output)
		add(p.Output * unit.Ampere(math.Sqrt(float64(p.Duty)/100)))
	}
	slices.Sort(list)
	return slices.Compact(list)
}
