package cost

import (
	"math"

	"cutbrief/rules/metal"
	"cutbrief/rules/unit"
)

// Speeds of shears and nibblers in mm/min. Source: practice.
var (
	shearSpeed   = Estimate{Low: 2000, Likely: 4000, High: 6000}
	nibblerSpeed = Estimate{Low: 1000, Likely: 1500, High: 2000}
)

// discEnds is the thickest plate a hand-held disc is used for in regular work,
// in mm. Source: practice.
const discEnds unit.Millimetre = 12

// discs are the speeds of a hand-held disc in mild steel, slow and fast.
// Source: practice.
var discs = []struct{ t, slow, fast float64 }{{3, 300, 600}, {6, 150, 300}, {11, 70, 150}}

// discFactor is the speed of a disc against mild steel. Source: practice.
var discFactor = map[metal.ID]Estimate{
	metal.MildSteel: Exact(1), metal.Galvanised: Exact(1), metal.Aluminium: Exact(1),
	metal.Stainless: {Low: 0.7, Likely: 0.75, High: 0.8},
}

// DiscSpeed returns how fast a hand-held abrasive disc cuts t mm of a metal in
// mm/min, straight in logarithms between the figures held; thinner than 3 mm it
// is no faster than there, thicker than 11 mm the last line goes on.
//
// Valid for 0 < t ≤ 12 mm of mild and galvanised steel, stainless and aluminium,
// else ErrRange. Source: practice.
// Check: 6 mm mild steel → 150 to 300, likely √(150·300) = 212 mm/min.
func DiscSpeed(t unit.Millimetre, id metal.ID) (Estimate, error) {
	f, held := discFactor[id]
	if !held || !(t > 0 && t <= discEnds*(1+nominal)) {
		return Estimate{}, ErrRange
	}
	at := max(float64(t), discs[0].t)
	i := 1
	for i < len(discs)-1 && at > discs[i].t {
		i++
	}
	a, b := discs[i-1], discs[i]
	w := math.Log(at/a.t) / math.Log(b.t/a.t)
	on := func(x, y float64) float64 { return x * math.Pow(y/x, w) }
	slow, fast := on(a.slow, b.slow), on(a.fast, b.fast)
	return Estimate{Low: slow * f.Low, Likely: math.Sqrt(slow*fast) * f.Likely, High: fast * f.High}, nil
}

// sawRate is the area a band saw cuts in mm²/min: high is a stationary saw with
// coolant, low a quarter of such a saw's slow end, which is a portable one; we
// do not know which they have. Source: practice.
var sawRate = map[metal.ID]Estimate{
	metal.MildSteel:  {Low: 800, Likely: 3200, High: 7700},
	metal.Galvanised: {Low: 800, Likely: 3200, High: 7700},
	metal.Stainless:  {Low: 325, Likely: 1300, High: 2600},
	metal.Aluminium:  {Low: 2425, Likely: 9700, High: 26000},
}

// SawSpeed returns how fast a band saw cuts t mm of a metal in mm/min: the area
// it cuts a minute over the thickness.
//
// Valid for t > 0 and the metals of DiscSpeed, else ErrRange. Source: practice.
// Check: 10 mm mild steel → 80 to 770, likely 320 mm/min.
func SawSpeed(t unit.Millimetre, id metal.ID) (Estimate, error) {
	rate, held := sawRate[id]
	if !held || !(t > 0) {
		return Estimate{}, ErrRange
	}
	return rate.Times(1 / float64(t)), nil
}
