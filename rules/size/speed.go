package size

import (
	"math"

	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

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
	case reaches(have, need):
		return Enough
	case reaches(have, need*(1-NominalStep)):
		return StepShort
	}
	return TooSmall
}

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

// curve is speed against thickness at one output: three points in mm, and the
// exponents of the power laws below, between and beyond them.
type curve struct {
	rated, clean, sever       float64
	below, toClean, toSevered float64
}

// curveAt scales the row's three thicknesses with the output current.
func curveAt(s *system.System, output unit.Ampere) (curve, error) {
	if !(s.Rated > 0 && s.CleanMax >= s.Rated && s.Severance >= s.CleanMax && s.OutputMin <= s.OutputMax) {
		return curve{}, ErrRow
	}
	if err := usable(s, output); err != nil {
		return curve{}, err
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
	case reaches(c.sever, t):
		return max(float64(SeveranceSpeed), float64(CleanSpeed)*math.Pow(c.clean/t, c.toSevered)), nil
	}
	return 0, ErrTooThick
}

// thickness is the inverse of speed; below SeveranceSpeed it goes on beyond what is
// severed.
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
	}
	return unit.Millimetre(min(c.sever, c.thickness(float64(v)))), nil
}

// FitRated returns the rated thickness in mm with which Speed would give the
// speed v in mm/min at t millimetres of mild steel and this output, all else in
// the row as it is: the inverse of Speed in the rated thickness.
//
// With R the rated and C the clean maximum thickness, τ what t would be at full
// output, and y = log2(v/500), Speed is v = 500·(R/τ)^a with a = ln 2/ln(C/R),
// so ln R = (y·ln C + ln τ)/(1 + y); below the rated thickness a is never more
// than 1, so there R is the larger of that and τ·v/500.
//
// Valid for 0 < t below the clean maximum at this output (ErrTooThick: further on
// the rated thickness decides nothing), 250 mm/min < v < limit (ErrRange,
// ErrTooFast), output as for Speed. A fit above the clean maximum, which no row
// may hold, is ErrNoRated. Source: as for Speed.
// Check: clean maximum 16 mm: 780 mm/min in 6 mm → rated 9.36 mm; 353.6 mm/min
// in 12 mm → 9 mm.
func FitRated(s *system.System, output unit.Ampere, t unit.Millimetre, v, limit unit.MillimetrePerMinute) (unit.Millimetre, error) {
	if _, err := curveAt(s, output); err != nil {
		return 0, err
	}
	whole, clean := float64(t)*float64(s.OutputMax/output), float64(s.CleanMax)
	switch {
	case !(t > 0 && v > CleanSpeed):
		return 0, ErrRange
	case whole >= clean:
		return 0, ErrTooThick
	case v >= limit:
		return 0, ErrTooFast
	}
	rated := ratedFor(whole, clean, float64(v))
	if !reaches(clean, rated) {
		return 0, ErrNoRated
	}
	return unit.Millimetre(min(rated, clean)), nil
}

// ratedFor is the rated thickness in mm for a speed in mm/min at t mm, with a
// clean maximum in mm.
func ratedFor(t, clean, v float64) float64 {
	y := math.Log2(v / float64(RatedSpeed))
	rated := math.Exp((y*math.Log(clean) + math.Log(t)) / (1 + y))
	if v > float64(RatedSpeed) {
		return max(rated, t*v/float64(RatedSpeed))
	}
	return rated
}

// pierceShare is the part of the clean maximum that a system pierces where its
// row does not say. Common practice, no source.
const pierceShare = 0.5

// Pierce returns the thickest mild steel in mm a system starts in away from an
// edge: the row's own figure, or half of the clean maximum.
//
// Valid for a row with a clean maximum above 0. Source: rating-plate where
// given, else practice. Check: clean maximum 20 mm, nothing given → 10 mm.
func Pierce(s *system.System) (unit.Millimetre, error) {
	if t, ok := s.Pierce.Get(); ok {
		return t, within("pierce thickness", float64(t), 0, float64(s.Severance), "mm")
	}
	if !(s.CleanMax > 0) {
		return 0, ErrRow
	}
	return s.CleanMax * pierceShare, nil
}

// steepest is the largest bevel in degrees from square that a torch is held
// at. Common practice, no source: weld preparations run to 45°, rarely to 60°.
const steepest = 60

// TrueThickness returns the metal in mm along a cut tilted by angle degrees
// from square through a plate t mm thick: t / cos(angle).
//
// Valid for t > 0 and 0° ≤ angle ≤ 60°. Source: geometry.
// Check: 6 mm at 45° → 8.485 mm.
func TrueThickness(t unit.Millimetre, angle unit.Degree) (unit.Millimetre, error) {
	if !(t > 0) {
		return 0, ErrRange
	}
	if err := within("bevel", float64(angle), 0, steepest, "°"); err != nil {
		return 0, err
	}
	return t / unit.Millimetre(math.Cos(float64(angle)*math.Pi/180)), nil
}
