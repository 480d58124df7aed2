package cost

import (
	"cmp"
	"fmt"
	"slices"

	"cutbrief/rules"
	"cutbrief/rules/cite"
	"cutbrief/rules/message"
	"cutbrief/rules/metal"
	"cutbrief/rules/unit"
)

// Figure is an assumption a cost rests on, as it stands in the tables.
type Figure struct {
	Name message.Message
	Unit message.ID
	Estimate
	Trust cite.Trust
}

// practised is a figure of common practice, without a source.
func practised(name message.Message, unit message.ID, low, likely, high float64) Figure {
	return Figure{name, unit, Estimate{low, likely, high}, cite.Practice}
}

// Figures both ways share.
var (
	// pauses within a cut only: set-up, starting and cleaning are counted apart.
	operatingFactor = practised(message.New("share of the cutting time that really cuts"), "of the time", 0.5, 0.7, 0.9)
	usualCut        = practised(message.New("length of a cut"), "m", 0.3, 0.5, 1.5)
	weeks           = practised(message.New("weeks worked in a year"), "weeks", 44, 46, 48)
	roughly         = practised(message.New("how well a length is known"), "times", 0.8, 1, 1.2)
	closely         = practised(message.New("how well a sum is known"), "times", 0.9, 1, 1.1)
	handSpeed       = practised(message.New("speed of a hand against the row of the system"), "times", 0.75, 1, 1.15)
	airAfterCut     = practised(message.New("air after a cut"), "s", 5, 12, 25)
	idlePower       = practised(message.New("power between cuts"), "kW", 0.03, 0.1, 0.3)
	efficiency      = practised(message.New("arc's power over what the source takes"), "times", 0.75, 0.85, 0.9)
)

// The other plasma system: nobody knows its plate, so it is taken to work
// between its rated and its clean maximum thickness, whose speeds are 500 and
// 250 mm/min, at about 0.25 mm for an ampere. Common practice, no source.
var (
	otherSpeed   = practised(of(OtherPlasma.Name(), localNames[speed].name), "mm/min", 250, 350, 500)
	otherFlow    = practised(of(OtherPlasma.Name(), localNames[airFlow].name), "l/min", 100, 150, 220)
	perAmpere    = 0.25
	otherCurrent = [2]unit.Ampere{20, 125}
)

// Speeds of shears and nibblers.
var (
	shearSpeed   = practised(of(Shear.Name(), localNames[speed].name), "mm/min", 2000, 4000, 6000)
	nibblerSpeed = practised(of(Nibbler.Name(), localNames[speed].name), "mm/min", 1000, 1500, 2000)
)

// toolMetals are those figures of discs and saws are held for.
var toolMetals = []metal.ID{metal.MildSteel, metal.Galvanised, metal.Stainless, metal.Aluminium}

// Figures returns what is assumed of each method of cutting and of all, where the
// customer told nothing better. Prices are apart.
func Figures() []Figure {
	list := []Figure{operatingFactor, usualCut, weeks, roughly, closely, handSpeed, airAfterCut, idlePower, efficiency}
	add := func(trust cite.Trust, name message.Message, unit message.ID, s Estimate) {
		if s != (Estimate{}) {
			list = append(list, Figure{name, unit, s, trust})
		}
	}
	habit := func(way any, l local, s Estimate) {
		add(cite.Practice, of(way, localNames[l].name), localNames[l].unit, s)
	}
	for _, p := range []Process{OxyAcetylene, OxyPropane, Disc, BandSaw, Shear, Nibbler, Plasma} {
		h := habitsOf[p]
		for _, l := range []local{setup, starting, grinding, tended, power} {
			habit(p.Name(), l, h[l])
		}
	}
	habit(message.ID("flame, below 6 mm"), straighten, straightening(OxyAcetylene, 3))
	habit(message.ID("flame, from 6 mm"), straighten, straightening(OxyAcetylene, 6))
	habit(message.ID("plasma, below 3 mm"), straighten, straightening(Plasma, 2))
	habit(message.ID("plasma, from 3 mm"), straighten, straightening(Plasma, 3))
	list = append(list, otherSpeed, otherFlow, shearSpeed, nibblerSpeed)
	for _, id := range toolMetals {
		m, _ := metal.Find(id)
		for _, row := range discs {
			v, _ := DiscSpeed(unit.Millimetre(row.t), id) // the table itself
			add(cite.Practice, of(Disc.Name(), message.New("speed in {1} {2}", millimetres(row.t), m.Name)), "mm/min", v)
		}
		add(cite.Practice, of(BandSaw.Name(), message.New("rate in {1}", m.Name)), "mm²/min", sawRate[id])
	}
	for _, fuel := range []rules.Fuel{rules.Acetylene, rules.Propane} {
		add(cite.Memory, of(message.ID(fuel), localNames[flameRatio].name), "times the fuel", flameOxygen[fuel])
	}
	for _, row := range flames {
		at := func(what message.ID) message.Message {
			return message.New("oxy-fuel, {1}: {2}", millimetres(row.t), what)
		}
		add(cite.Memory, at("speed"), "mm/min", row.speed.estimate())
		add(cite.Memory, at("cutting oxygen"), "ft³/h", row.oxygen.estimate())
		add(cite.Memory, at("acetylene"), "ft³/h", row.acetylene.estimate())
		add(cite.Memory, at("propane"), "ft³/h", row.propane.estimate())
	}
	return list
}

// of is a figure of one way of cutting.
func of(way, figure any) message.Message { return message.New("{1}: {2}", way, figure) }

func millimetres(t float64) message.Figure { return message.Figure(fmt.Sprintf("%g mm", t)) }

// End is the thickest metal a method is taken to cut day by day, in mm.
type End struct {
	Method Process
	Metal  metal.ID
	Most   unit.Millimetre
}

// Ends returns where ways of cutting end, as far as figures are held; one nominal
// step beyond is the same size.
func Ends() []End {
	var list []End
	for _, id := range toolMetals {
		for _, p := range []Process{Shear, Nibbler} {
			if t, held := rules.ToolLimit(rules.Process(p), id); held {
				list = append(list, End{p, id, t})
			}
		}
		list = append(list, End{Disc, id, discEnds})
	}
	slices.SortFunc(list, func(a, b End) int { return cmp.Or(cmp.Compare(a.Method, b.Method), cmp.Compare(a.Metal, b.Metal)) })
	return list
}
