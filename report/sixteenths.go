package report

import (
	"math"

	"cutbrief/rules/unit"
)

// Bounds in inches of how finely a thickness is said aloud. Common practice, no
// source: sheet goes by gauge or thousandths, thin plate by thirty-seconds, and
// plate by sixteenths.
const (
	plateFrom = 0.25
	heavyFrom = 0.5
)

// inSixteenths rounds a thickness as a rep says it in inches: to 1/32 from 1/4
// in on and to 1/16 from 1/2 in on, up for a need and down for a capability. The
// direction it returns is what is left to do. Sheet, and what was told as a
// 64th, stay as they are.
// Check: 16 mm needed is 11/16 in, given is 5/8 in; 10 mm told is 13/32 in.
func inSixteenths(q unit.Quantity, r unit.Round) (unit.Quantity, unit.Round) {
	const inch, finest, lastDigit = 25.4, 64, 1e-6
	onStep := func(n float64) bool { return math.Abs(n-math.Round(n)) < lastDigit }
	v, steps := q.Value/inch, 32.0
	if v >= heavyFrom {
		steps = 16
	}
	if !(v >= plateFrom) || onStep(v*steps) || r == unit.Nearest && onStep(v*finest) {
		return q, r
	}
	n := math.Round(v * steps)
	switch r {
	case unit.Up:
		n = math.Ceil(v * steps)
	case unit.Down:
		n = math.Floor(v * steps)
	}
	return millimetres(unit.Millimetre(n / steps * inch)), unit.Nearest
}
