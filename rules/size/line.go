package size

import (
	"math"

	"cutbrief/rules/unit"
)

// ByLine returns the power in kW that a moving line of heat must put into a
// plate to bring a band as wide as the kerf to melting, through t mm at v
// mm/min, by the exact solution for a wide plate:
//
//	T − T0 = q/(2π·k·t)·exp(−v·x/2α)·K0(v·r/2α),
//
// with x along the cut, ahead of the line, and r the distance from it; the
// power is the one whose hottest point, half a kerf beside the cut, just melts.
// It holds for metals that carry heat away fast, where Absorbed does not; the
// latent heat is left out of both.
//
// Valid for 0.01 ≤ v·w/4α ≤ 5, t > 0. Source: rosenthal, from memory; the tests
// solve it a second way. Check: mild steel, 11 mm, 1.5 mm kerf, 500 mm/min →
// 3.09 kW, Absorbed there 2.92 kW.
func (p Properties) ByLine(t, kerf unit.Millimetre, v unit.MillimetrePerMinute) (unit.Kilowatt, error) {
	if !(t > 0 && kerf > 0 && v > 0) {
		return 0, ErrRange
	}
	side := p.Carried(v, kerf) // half a kerf in units of 2α/v
	if err := within("v·w/4α", side, 0.01, 5, ""); err != nil {
		return 0, err
	}
	watts := 2 * math.Pi * p.Conductivity * float64(t) / 1e3 * (float64(p.Melting) - room) / hottest(side)
	return unit.Kilowatt(watts / 1e3), nil
}

// hottest is the largest value of exp(−x)·K0(√(x² + y²)) along x, which lies
// behind the line; found by golden section.
func hottest(y float64) float64 {
	const golden = 0.6180339887498949
	back, front := -10*(y+y*y), 0.0
	a, b := front-golden*(front-back), back+golden*(front-back)
	atA, atB := warmth(a, y), warmth(b, y)
	for range 40 {
		if atA > atB {
			front, b, atB = b, a, atA
			a = front - golden*(front-back)
			atA = warmth(a, y)
		} else {
			back, a, atA = a, b, atB
			b = back + golden*(front-back)
			atB = warmth(b, y)
		}
	}
	return max(atA, atB)
}

// warmth is exp(−x)·K0(r), r = √(x² + y²), with K0(r) = ∫exp(−r·cosh u)du from 0
// on, by Simpson's rule up to where nothing is left.
func warmth(x, y float64) float64 {
	const pieces = 128
	r := math.Hypot(x, y)
	end := math.Acosh(1 + 40/r)
	at := func(i int) float64 { return math.Exp(-x - r*math.Cosh(end*float64(i)/pieces)) }
	sum := at(0) + at(pieces)
	for i := 1; i < pieces; i += 2 {
		sum += 4 * at(i)
	}
	for i := 2; i < pieces; i += 2 {
		sum += 2 * at(i)
	}
	return sum * end / pieces / 3
}
