package size

import (
	"math"

	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// The speeds at which a row's three thicknesses are given, for mild steel cut
// by hand. Common practice, no source.
const (
	RatedSpeed     unit.MillimetrePerMinute = 500
	CleanSpeed     unit.MillimetrePerMinute = 250
	SeveranceSpeed unit.MillimetrePerMinute = 125
)

// The fastest a torch is led, whatever the arc could do.
//
// FreeHand is common practice, no source; a heat balance on a 40 A class puts
// the thickness below which the hand and not the heat limits at about 5 mm,
// where it gives 1449 mm/min. AlongEdge is common practice, no source: the
// hand slides on a straight edge or template. OnCarriage is the fastest row of
// the plasma cutting conditions in the AWS Welding Handbook (aws-pac).
const (
	FreeHand   unit.MillimetrePerMinute = 1500
	AlongEdge  unit.MillimetrePerMinute = 2500
	OnCarriage unit.MillimetrePerMinute = 7620
)

// tiny keeps rounding in the last bit from turning a limit into a refusal.
const tiny = 1e-9

// curve is speed against thickness at one output: three points in mm, and the
// exponents of the power laws below, between and beyond them.
type curve struct {
	rated, clean, sever       float64
	below, toClean, toSevered float64
}

// curveAt scales the row's three thicknesses with the output current.
func curveAt(s *system.System, output unit.Ampere) (curve, error) {
	if !(s.Rated > 0 && s.CleanMax >= s.Rated && s.Severance >= s.CleanMax && s.OutputMax > 0 && s.OutputMin <= s.OutputMax) {
		return curve{}, ErrRow
	}
	if !(output >= s.OutputMin*(1-tiny) && output > 0 && output <= s.OutputMax*(1+tiny)) {
		return curve{}, &RangeError{"output", float64(output), float64(s.OutputMin), float64(s.OutputMax), "A"}
	}
	k := float64(output / s.OutputMax)
	c := curve{rated: float64(s.Rated) * k, clean: float64(s.CleanMax) * k, sever: float64(s.Severance) * k}
	c.toClean = math.Ln2 / math.Log(c.clean/c.rated)
	c.toSevered = math.Ln2 / math.Log(c.sever/c.clean)
	c.below = min(1, c.toClean)
	return c, nil
}

// speed is the curve's speed in mm/min at t mm, which is above 0. A segment ends
// at its own lower speed, also where two thicknesses of the row are equal.
func (c *curve) speed(t float64) (float64, error) {
	switch {
	case t <= c.rated:
		return float64(RatedSpeed) * math.Pow(c.rated/t, c.below), nil
	case t <= c.clean:
		return max(float64(CleanSpeed), float64(RatedSpeed)*math.Pow(c.rated/t, c.toClean)), nil
	case t <= c.sever*(1+tiny):
		return max(float64(SeveranceSpeed), float64(CleanSpeed)*math.Pow(c.clean/t, c.toSevered)), nil
	}
	return 0, ErrTooThick
}

// thickness is the inverse of speed, for v of at least SeveranceSpeed.
func (c *curve) thickness(v float64) float64 {
	switch {
	case v >= float64(RatedSpeed):
		return c.rated * math.Pow(float64(RatedSpeed)/v, 1/c.below)
	case v >= float64(CleanSpeed):
		return c.rated * math.Pow(float64(RatedSpeed)/v, 1/c.toClean)
	}
	return c.clean * math.Pow(float64(CleanSpeed)/v, 1/c.toSevered)
}

// Speed returns how fast a system cuts t millimetres of mild steel, or of
// another metal's equivalent in mild steel, at an output in amperes.
//
// Between the row's points (rated, 500), (clean maximum, 250) and (severance,
// 125) ln v runs straight in ln t. Below the rated thickness the first of
// these lines goes on, but never steeper than v ∝ 1/t: the arc melts no more
// metal a minute than at its rating (energy balance). No speed is above limit,
// the fastest the torch is led: FreeHand, AlongEdge or OnCarriage.
//
// With less output than the largest, the three thicknesses shrink in
// proportion to the current. Common practice, no source.
//
// Valid for 0 < t up to the severance thickness at this output (beyond it
// ErrTooThick), output from OutputMin to OutputMax. Source: rating-plate for
// the points, practice for the speeds; the shape between them was checked
// against the heat balance of wells-1952.
// Check: rated 12, clean 16, severed 20 mm: 16 mm → 250 mm/min; 6 mm → 1000;
// 6 mm at half output → 500.
func Speed(s *system.System, output unit.Ampere, t unit.Millimetre, limit unit.MillimetrePerMinute) (unit.MillimetrePerMinute, error) {
	c, err := curveAt(s, output)
	if err != nil {
		return 0, err
	}
	if !(t > 0 && limit > 0) {
		return 0, ErrRange
	}
	v, err := c.speed(float64(t))
	return min(unit.MillimetrePerMinute(v), limit), err
}

// Reach returns the largest thickness in mm, in mild-steel equivalents, that a
// system cuts at speed v or faster: the inverse of Speed. At SeveranceSpeed and
// slower that is the severance thickness at this output, never more.
//
// Valid for 0 < v ≤ limit (above it ErrTooFast), output as for Speed. Source
// as for Speed. Check: rated 12, clean 16, severed 20 mm: 250 mm/min → 16 mm;
// 1000 mm/min → 6 mm; 100 mm/min → 20 mm.
func Reach(s *system.System, output unit.Ampere, v, limit unit.MillimetrePerMinute) (unit.Millimetre, error) {
	c, err := curveAt(s, output)
	switch {
	case err != nil:
		return 0, err
	case !(v > 0):
		return 0, ErrRange
	case v > limit:
		return 0, ErrTooFast
	case v <= SeveranceSpeed:
		return unit.Millimetre(c.sever), nil
	}
	return unit.Millimetre(c.thickness(float64(v))), nil
}
