package size

import (
	"math"

	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

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
	case !(t > 0 && v > CleanSpeed && limit > 0):
		return 0, ErrRange
	case whole >= clean:
		return 0, ErrTooThick
	case v >= limit:
		return 0, ErrTooFast
	}
	rated := ratedFor(whole, clean, float64(v))
	if rated > clean*(1+tiny) {
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
