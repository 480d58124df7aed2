package cost

import (
	"math"
	"sort"
)

// model is everything a cost is worked out from.
type model struct {
	in [inputs]Input
}

// likely takes the likely figure of every input.
func (m *model) likely() values {
	var x values
	for i := range m.in {
		x[i] = m.in[i].Estimate.Likely
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
func (m *model) spread(f func(*values) float64) (Estimate, []Mover) {
	list, movers := m.spreads(1, func(x *values, out []float64) { out[0] = f(x) })
	return list[0], movers
}

// spreads does so for n results that are worked out together; the inputs
// returned are those that move the first.
func (m *model) spreads(n int, f func(x *values, out []float64)) ([]Estimate, []Mover) {
	x := m.likely()
	base, low, high := make([]float64, n), make([]float64, n), make([]float64, n)
	down, up := make([]float64, n), make([]float64, n)
	f(&x, base)
	var movers []Mover
	for i := range m.in {
		in := &m.in[i]
		if !in.known || in.Estimate.Low == in.Estimate.High {
			continue
		}
		x[i] = in.Estimate.Low
		f(&x, low)
		x[i] = in.Estimate.High
		f(&x, high)
		x[i] = in.Estimate.Likely
		for k := range n {
			less, more := min(low[k]-base[k], high[k]-base[k], 0), max(low[k]-base[k], high[k]-base[k], 0)
			down[k], up[k] = math.Hypot(down[k], less), math.Hypot(up[k], more)
			if k == 0 && more > less {
				movers = append(movers, Mover{*in, less, more})
			}
		}
	}
	list := make([]Estimate, n)
	for k := range list {
		list[k] = Estimate{Low: base[k] - down[k], Likely: base[k], High: base[k] + up[k]}
	}
	sort.SliceStable(movers, func(a, b int) bool { return movers[a].swing() > movers[b].swing() })
	return list, movers
}
