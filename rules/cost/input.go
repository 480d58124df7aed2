package cost

import (
	"cutbrief/rules"
	"cutbrief/rules/cite"
	"cutbrief/rules/message"
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

// values is one figure for every input.
type values [inputs]float64

// localNames are the name and unit of a method's own inputs.
var localNames = [locals][2]message.ID{
	{"speed", "mm/min"}, {"set-up", "s a cut"}, {"preheat or pierce", "s a cut"}, {"cleaning the edge", "min/m"}, {"straightening", "min/m"},
	{"time somebody stands by", "of the cut"}, {"power while cutting", "kW"}, {"power between cuts", "kW"},
	{"air flow", "l/min"}, {"air after the cut", "s a cut"}, {"cutting oxygen", "l/min"}, {"fuel gas", "l/min"}, {"oxygen in the flame", "times the fuel"},
}

// figure is an input that is no price.
func figure(name message.Message, unit message.ID, s Estimate, trust cite.Trust, fact rules.Fact) Input {
	return Input{Name: name, Unit: unit, Estimate: s, Basis: string(trust), Fact: fact, known: true}
}

// own is an input of one method, called after it: "speed (abrasive disc)".
func own(l local, of any, s Estimate, trust cite.Trust) Input {
	return figure(message.New("{1} ({2})", localNames[l][0], of), localNames[l][1], s, trust, "")
}

// priced is an input out of the list.
func priced(l *PriceList, id ItemID) (Input, bool) {
	p, ok := l.Get(id)
	item, _ := FindItem(id)
	return Input{Name: item.Name.Message(), Unit: message.ID(item.Unit()), Money: item.Money, Estimate: p.Estimate, Basis: string(p.Basis), Note: p.Note, known: ok}, ok
}
