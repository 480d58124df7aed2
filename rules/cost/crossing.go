package cost

import (
	"cutbrief/rules"
	"cutbrief/rules/metal"
	"cutbrief/rules/price"
	"cutbrief/rules/size"
	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// Point is one thickness of the comparison with oxy-fuel.
type Point struct {
	T             unit.Millimetre
	Plasma, Flame price.Spread // money a metre
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
	Why          string // why it is not worked out, "" if it is
}

// charted are the thicknesses compared, in mm.
var charted = []unit.Millimetre{4, 6, 8, 10, 12, 16, 20, 25, 32, 40, 50}

// Cross compares a system with oxy-fuel on mild steel by thickness, with all a
// metre costs, at the prices and habits of the job. The customer's yearly gas
// bill is left out: it says nothing about other thicknesses.
func Cross(job rules.Job, prices price.List, sys *system.System) Crossing {
	job.Prices.GasYear = unit.Maybe[unit.Money]{}
	c := Crossing{System: sys, Fuel: flameOf(&job)}
	s := newSetting(&job, &prices)
	var held []unit.Millimetre
	for _, t := range charted {
		if t <= sys.Severance {
			held = append(held, t)
		}
	}
	if len(held) < 2 {
		c.Why = "This system severs too little to compare."
		return c
	}
	for _, t := range held {
		p, why := s.compare(sys, c.Fuel, t)
		if why != "" {
			c.Why = why
			return c
		}
		c.Points = append(c.Points, p)
	}
	c.Likely = s.crossing(sys, c.Fuel, held, func(d price.Spread) float64 { return d.Likely })
	c.From = s.crossing(sys, c.Fuel, held, func(d price.Spread) float64 { return d.Low })
	c.Surely = s.crossing(sys, c.Fuel, held, func(d price.Spread) float64 { return d.High })
	return c
}

// compare works both out at one thickness.
func (s *setting) compare(sys *system.System, fuel Process, t unit.Millimetre) (p Point, why string) {
	mine, flame, w, why := s.both(sys, fuel, t)
	if why != "" {
		return p, why
	}
	p.T = t
	p.Flame, _ = mine.spread(func(x *values) float64 { t := flame.metre(x); return t.moving() })
	p.Plasma, _ = mine.spread(func(x *values) float64 { t := w.metre(x); return t.moving() })
	return p, ""
}

// both fills in both ways for a cut in mild steel.
func (s *setting) both(sys *system.System, fuel Process, t unit.Millimetre) (mine *setting, flame, w *way, why string) {
	mine = s.clone()
	c := cut{metal.MildSteel, t}
	flame = mine.way(fuel, c)
	w, why = mine.system(sys, c)
	return mine, flame, w, why
}

// difference is oxy-fuel less plasma at one thickness; zero where a system
// cannot be worked out.
func (s *setting) difference(sys *system.System, fuel Process, t unit.Millimetre) price.Spread {
	mine, flame, w, why := s.both(sys, fuel, t)
	if why != "" {
		return price.Spread{}
	}
	diff, _ := mine.spread(func(x *values) float64 {
		a, b := flame.metre(x), w.metre(x)
		return a.moving() - b.moving()
	})
	return diff
}

// crossing finds where one side of the difference first falls below zero, to a
// tenth of a millimetre, by halving between two of the thicknesses compared.
func (s *setting) crossing(sys *system.System, fuel Process, held []unit.Millimetre, side func(price.Spread) float64) unit.Maybe[unit.Millimetre] {
	below := func(t unit.Millimetre) bool { return side(s.difference(sys, fuel, t)) < 0 }
	if below(held[0]) {
		return unit.Known(held[0])
	}
	list := append(held[:len(held):len(held)], sys.Severance)
	for i := 1; i < len(list); i++ {
		if list[i] <= list[i-1] || !below(list[i]) {
			continue
		}
		low, high := list[i-1], list[i]
		for high-low > 0.1 {
			if mid := (low + high) / 2; below(mid) {
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
