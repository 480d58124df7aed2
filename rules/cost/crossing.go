package cost

import (
	"slices"

	"cutbrief/rules"
	"cutbrief/rules/message"
	"cutbrief/rules/metal"
	"cutbrief/rules/size"
	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// Point is one thickness of the comparison with oxy-fuel.
type Point struct {
	T             unit.Millimetre
	Plasma, Flame Estimate // money a metre
}

// Crossing is the comparison of a system with oxy-fuel on mild steel by
// thickness. Trade practice puts the crossing at about 16 mm for a small system
// (common practice, no source).
type Crossing struct {
	System *system.System
	Fuel   Process
	Points []Point
	// Likely is the thickness above which oxy-fuel is cheaper; not known if it
	// is not within what the system severs.
	Likely unit.Maybe[unit.Millimetre]
	// From is where oxy-fuel may become cheaper, Surely where it is cheaper
	// whatever the inputs; not known as for Likely.
	From, Surely unit.Maybe[unit.Millimetre]
	// Meets is what both cost at Likely: the same, as closely as that is found.
	Meets unit.Maybe[Point]
	Why   message.Message // why it is not worked out, "" if it is
}

// charted are the thicknesses compared, in mm.
var charted = []unit.Millimetre{4, 6, 8, 10, 12, 16, 20, 25, 32, 40, 50}

// Cross compares a system with oxy-fuel on mild steel by thickness, with all a
// metre costs, at the prices and habits of the job. The customer's yearly gas
// bill is left out: it says nothing about other thicknesses.
func Cross(job rules.Job, prices PriceList, sys *system.System) Crossing {
	job.Prices.GasYear = unit.Maybe[unit.Money]{}
	c := Crossing{System: sys, Fuel: flameOf(&job)}
	s := newScenario(&job, &prices)
	held := slices.DeleteFunc(slices.Clone(charted), func(t unit.Millimetre) bool { return t >= sys.Severance })
	if len(held) < 2 {
		c.Why = message.New("This system severs too little to compare.")
		return c
	}
	held = append(held, sys.Severance)
	diffs := make([]Estimate, len(held))
	for i, t := range held {
		p, diff, why := s.compare(sys, c.Fuel, t)
		if !why.IsEmpty() {
			c.Why = why
			return c
		}
		diffs[i] = diff
		if i < len(held)-1 {
			c.Points = append(c.Points, p)
		}
	}
	c.Likely = s.crossing(sys, c.Fuel, held, diffs, func(d Estimate) float64 { return d.Likely })
	c.From = s.crossing(sys, c.Fuel, held, diffs, func(d Estimate) float64 { return d.Low })
	c.Surely = s.crossing(sys, c.Fuel, held, diffs, func(d Estimate) float64 { return d.High })
	if t, ok := c.Likely.Get(); ok {
		p, _, _ := s.compare(sys, c.Fuel, t)
		c.Meets = unit.Known(p)
	}
	return c
}

// compare works both out at one thickness; diff is oxy-fuel less plasma.
func (s *scenario) compare(sys *system.System, fuel Process, t unit.Millimetre) (p Point, diff Estimate, why message.Message) {
	mine, mild := s.clone(), cut{metal.MildSteel, t}
	flame := mine.method(fuel, mild)
	w, why := mine.system(sys, mild)
	if !why.IsEmpty() {
		return p, diff, why
	}
	list, _ := mine.spreads(3, func(x *values, out []float64) {
		a, b := flame.metre(x), w.metre(x)
		out[0], out[1], out[2] = a.moving(), b.moving(), a.moving()-b.moving()
	})
	return Point{T: t, Flame: list[0], Plasma: list[1]}, list[2], message.Message{}
}

// sharp is how closely a crossing is found, in mm: nobody can tell a quarter of
// a millimetre.
const sharp = 0.25

// crossing finds where one side of the difference first falls below zero, by
// halving between two of the thicknesses compared.
func (s *scenario) crossing(sys *system.System, fuel Process, held []unit.Millimetre, diffs []Estimate, side func(Estimate) float64) unit.Maybe[unit.Millimetre] {
	for i := range held {
		if side(diffs[i]) >= 0 {
			continue
		}
		if i == 0 {
			return unit.Known(held[0])
		}
		low, high := held[i-1], held[i]
		for high-low > sharp {
			mid := (low + high) / 2
			if _, d, _ := s.compare(sys, fuel, mid); side(d) < 0 {
				high = mid
			} else {
				low = mid
			}
		}
		return unit.Known(high)
	}
	return unit.Maybe[unit.Millimetre]{}
}

// Comparable reports whether the comparison with oxy-fuel means anything for a
// job: mild steel is cut, and the system is known to cut it.
func Comparable(job *rules.Job, sys *system.System) bool {
	for i := range job.Pieces {
		if id := job.Pieces[i].Metal; id == metal.MildSteel || id == metal.Galvanised {
			_, err := size.Speed(sys, sys.OutputMax, charted[0], rules.LedAt(job))
			return err == nil
		}
	}
	return false
}
