package cost

import (
	"cmp"
	"math"
	"slices"

	"cutbrief/rules"
	"cutbrief/rules/cite"
	"cutbrief/rules/message"
	"cutbrief/rules/unit"
)

// local names an uncertain input of one method of cutting.
type local int

// The inputs every method has of its own.
const (
	speed      local = iota // mm/min
	setup                   // s a cut
	starting                // s a cut
	grinding                // min a metre
	straighten              // min a metre
	tended                  // share of the cutting time somebody stands by
	power                   // kW while cutting
	idle                    // kW between cuts
	airFlow                 // l/min
	airAfter                // s of air after a cut
	oxygenFlow              // cutting oxygen, l/min
	fuelFlow                // l/min
	flameRatio              // volumes of oxygen for one of fuel
	locals
)

// localNames are the name and unit of a method's own inputs.
var localNames = [locals]struct{ name, unit message.ID }{
	{"speed", "mm/min"}, {"set-up", "s a cut"}, {"preheat or pierce", "s a cut"}, {"cleaning the edge", "min/m"}, {"straightening", "min/m"},
	{"time somebody stands by", "of the cut"}, {"power while cutting", "kW"}, {"power between cuts", "kW"},
	{"air flow", "l/min"}, {"air after the cut", "s a cut"}, {"cutting oxygen", "l/min"}, {"fuel gas", "l/min"}, {"oxygen in the flame", "times the fuel"},
}

// at names any input: those of today's method come first, then those of the
// system, then what both share.
type at int

const (
	today   at = 0
	offered    = at(locals)
	shared     = 2 * at(locals)
)

// The inputs both ways share.
const (
	wage = shared + iota
	electricity
	oxygenPrice
	fuelPrice
	rental
	airPower
	setPrice
	setStarts
	setHours
	bladePrice
	bladeLife
	sentPrice
	tripPrice
	tripLoad
	gasBill
	sentBill
	operating
	cutLength
	metresAYear
	inputs
)

// Input is one uncertain figure a cost rests on.
type Input struct {
	Name     message.Message // "an hour of work"
	Unit     message.ID      // "h" for money an hour; "min/m" and the like for a plain figure
	Money    bool
	Estimate Estimate
	Basis    string     // worded: the basis of a price, or the trust of a figure
	Note     string     // of the price list
	Fact     rules.Fact // the question that settles it; "" if none is asked
	known    bool
}

// Assumed reports whether nobody stands behind the figure.
func (i Input) Assumed() bool {
	return Basis(i.Basis).Assumed() || i.Basis == string(cite.Practice) || i.Basis == string(cite.Memory)
}

// figure is an input that is no price.
func figure(name message.Message, unit message.ID, s Estimate, trust cite.Trust, fact rules.Fact) Input {
	return Input{Name: name, Unit: unit, Estimate: s, Basis: string(trust), Fact: fact, known: true}
}

// priced is an input out of the list.
func priced(l *PriceList, id ItemID) Input {
	p, ok := l.Get(id)
	item, _ := FindItem(id)
	return Input{Name: item.Name.Message(), Unit: message.ID(item.Unit()), Money: item.Money, Estimate: p.Estimate, Basis: string(p.Basis), Note: p.Note, known: ok}
}

// billed is a yearly sum the customer told.
func billed(name message.ID, sum unit.Money, f rules.Fact) Input {
	return Input{Name: name.Message(), Unit: "year", Money: true, Estimate: closely.Times(float64(sum)), Basis: string(BasisCustomer), Fact: f, known: true}
}

// values is one figure for every input.
type values [inputs]float64

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
	slices.SortStableFunc(movers, func(a, b Mover) int { return cmp.Compare(b.Up-b.Down, a.Up-a.Down) })
	return list, movers
}

// Part is one kind of cost in the account of a metre.
type Part int

// The parts, in the order they are shown.
const (
	Cutting       Part = iota // labour while it cuts, pauses within the cut included
	Setup                     // labour for what is done once a cut
	Starting                  // labour while it preheats or pierces
	Grinding                  // labour for cleaning the edge up
	Straightening             // labour for taking distortion out
	Oxygen                    // cutting oxygen
	Flame                     // fuel gas, and the oxygen the flame takes
	Gas                       // all gas, where the customer's bill is known
	Rental                    // of cylinders
	Power                     // electricity while cutting and idling
	Air                       // electricity for compressed air
	Consumables               // tip and electrode
	Blades                    // discs, blades, knives
	Bought                    // cutting sent out
	Trips                     // transport of what is sent out
	parts                     // how many there are
)

// partNames are the identifiers and names of the parts.
var partNames = [parts]struct {
	id   string
	name message.ID
}{
	{"cutting", "work while cutting"}, {"set-up", "work to set up"}, {"starting", "work to preheat or pierce"},
	{"grinding", "work to clean the edge"}, {"straightening", "work to straighten"},
	{"oxygen", "cutting oxygen"}, {"flame", "gas for the flame"}, {"gas", "gas and cylinders, as billed"}, {"rental", "cylinder rental"},
	{"electricity", "electricity"}, {"air", "compressed air"}, {"consumables", "consumables"}, {"blades", "discs, blades or knives"},
	{"sent-out", "cutting sent out"}, {"transport", "transport"},
}

// ID is the stable identifier of a part, as in files.
func (p Part) ID() string { return partNames[p].id }

// Name is what a part is called.
func (p Part) Name() message.ID { return partNames[p].name }

// Line is one part of the cost of a metre.
type Line struct {
	Part Part
	Cost Estimate // money a metre
}
