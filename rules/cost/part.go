package cost

import (
	"cutbrief/rules/message"
	"cutbrief/rules/unit"
)

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

// tally adds up the parts of one metre; it keeps its first error.
type tally struct {
	cost [parts]float64
	err  error
}

func (t *tally) add(p Part, m unit.Money, err error) {
	if t.err == nil {
		t.err = err
	}
	t.cost[p] += float64(m)
}

// hour keeps the error of a formula and passes its time on.
func (t *tally) hour(h Hour, err error) Hour {
	if t.err == nil {
		t.err = err
	}
	return h
}

func (t *tally) sum() float64 {
	total := 0.0
	for _, c := range t.cost {
		total += c
	}
	return total
}

// moving is what every further metre costs: all but the rental, which a year
// bears whatever is cut.
func (t *tally) moving() float64 { return t.sum() - t.cost[Rental] }
