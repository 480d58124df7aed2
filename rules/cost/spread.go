package cost

import (
	"math"
	"sort"

	"cutbrief/rules/price"
)

// model is everything a cost is worked out from.
type model struct {
	in [inputs]Input
}

// likely takes the likely figure of every input.
func (m *model) likely() values {
	var x values
	for i := range m.in {
		x[i] = m.in[i].Spread.Likely
	}
	return x
}

// Mover is an input and how far it alone moves a result.
type Mover struct {
	Input
	Down, Up float64 // the result at its ends, less the likely one; Down ≤ 0 ≤ Up
}

// swing is how far apart its ends lie.
func (m Mover) swing() float64 { return m.Up - m.Down }

// spread works f out at the likely figures and moves one input at a time to
// its ends; the effects on either side are added as the root of the sum of
// their squares. It returns the inputs that move f, the strongest first.
//
// Source: gum 5.1.2, from memory, taken for either side apart.
// Check: f = a − b with a from 8 to 14 likely 10, b from 3 to 7 likely 4:
// 6 − √(2² + 3²) = 2.39 to 6 + √(4² + 1²) = 10.12.
func (m *model) spread(f func(*values) float64) (price.Spread, []Mover) {
	x := m.likely()
	base := f(&x)
	down, up := 0.0, 0.0
	var movers []Mover
	for i := range m.in {
		in := &m.in[i]
		if !in.known || in.Spread.Low == in.Spread.High {
			continue
		}
		mover := m.move(at(i), x, base, f)
		if mover.swing() > 0 {
			down, up = math.Hypot(down, mover.Down), math.Hypot(up, mover.Up)
			movers = append(movers, mover)
		}
	}
	sort.SliceStable(movers, func(a, b int) bool { return movers[a].swing() > movers[b].swing() })
	return price.Spread{Low: base - down, Likely: base, High: base + up}, movers
}

// move takes one input to its ends.
func (m *model) move(i at, x values, base float64, f func(*values) float64) Mover {
	s := m.in[i].Spread
	x[i] = s.Low
	a := f(&x) - base
	x[i] = s.High
	b := f(&x) - base
	return Mover{m.in[i], min(a, b, 0), max(a, b, 0)}
}
