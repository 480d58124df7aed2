package cost

import (
	"cmp"
	"fmt"
	"slices"

	"cutbrief/rules"
	"cutbrief/rules/cite"
	"cutbrief/rules/metal"
	"cutbrief/rules/unit"
)

// Figure is an assumption a cost rests on, as it stands in the tables.
type Figure struct {
	Name     string
	Unit     string
	Estimate Estimate
	Trust    cite.Trust
}

// Figures returns what is assumed of each method of cutting and of all, where the
// customer told nothing better. Prices are apart.
func Figures() []Figure {
	var list []Figure
	add := func(trust cite.Trust, name, unit string, s Estimate) {
		if s != (Estimate{}) {
			list = append(list, Figure{name, unit, s, trust})
		}
	}
	practised := func(name, unit string, s Estimate) { add(cite.Practice, name, unit, s) }
	practised("share of the cutting time that really cuts", "of the time", operatingFactor)
	practised("length of a cut", "m", usualCut)
	practised("weeks worked in a year", "weeks", weeks)
	practised("how well a length is told", "times", roughly)
	practised("how well a sum is told", "times", closely)
	practised("speed of a hand against the row of the system", "times", handSpeed)
	practised("air after a cut", "s", airAfterCut)
	practised("power between cuts", "kW", idlePower)
	practised("arc's power over what the source takes", "times", efficiency)
	for _, p := range []Process{OxyAcetylene, OxyPropane, Disc, BandSaw, Shear, Nibbler, Plasma} {
		h := habitsOf[p]
		practised(nameOfLocal(string(p.Name()), setup), unitOfLocal(setup), h.setup)
		practised(nameOfLocal(string(p.Name()), starting), unitOfLocal(starting), startingOf(p, h))
		practised(nameOfLocal(string(p.Name()), grinding), unitOfLocal(grinding), h.cleaning)
		practised(nameOfLocal(string(p.Name()), tended), unitOfLocal(tended), h.tended)
		practised(nameOfLocal(string(p.Name()), power), unitOfLocal(power), h.power)
	}
	practised(nameOfLocal("flame, below 6 mm", straighten), unitOfLocal(straighten), straightening(OxyAcetylene, 3))
	practised(nameOfLocal("flame, from 6 mm", straighten), unitOfLocal(straighten), straightening(OxyAcetylene, 6))
	practised(nameOfLocal("plasma, below 3 mm", straighten), unitOfLocal(straighten), straightening(Plasma, 2))
	practised(nameOfLocal("plasma, from 3 mm", straighten), unitOfLocal(straighten), straightening(Plasma, 3))
	practised("another plasma system: speed", "mm/min", otherSpeed)
	practised("another plasma system: air flow", "l/min", otherFlow)
	practised("shear: speed", "mm/min", shearSpeed)
	practised("nibbler: speed", "mm/min", nibblerSpeed)
	for _, id := range []metal.ID{metal.MildSteel, metal.Galvanised, metal.Stainless, metal.Aluminium} {
		for _, row := range discs {
			v, _ := DiscSpeed(unit.Millimetre(row.t), id) // the table itself
			practised(fmt.Sprintf("abrasive disc: speed in %g mm %s", row.t, nameOf(id)), "mm/min", v)
		}
		practised("band saw: rate in "+nameOf(id), "mm²/min", sawRate[id])
	}
	for _, fuel := range []rules.Fuel{rules.Acetylene, rules.Propane} {
		add(cite.Memory, string(fuel)+": oxygen in the flame", "times the fuel", flameOxygen[fuel])
	}
	for _, row := range flames {
		at := fmt.Sprintf("oxy-fuel, %g mm: ", row.t)
		add(cite.Memory, at+"speed", "mm/min", between(row.slow, row.fast))
		add(cite.Memory, at+"cutting oxygen", "ft³/h", between(row.oxygen0, row.oxygen1))
		add(cite.Memory, at+"acetylene", "ft³/h", between(row.acetylene0, row.acety1))
		add(cite.Memory, at+"propane", "ft³/h", between(row.propane0, row.propane1))
	}
	return list
}

// startingOf is what a method takes before it cuts: a flame preheats by its gas.
func startingOf(p Process, h habits) Estimate {
	switch p {
	case OxyAcetylene:
		return preheating[rules.Acetylene]
	case OxyPropane:
		return preheating[rules.Propane]
	}
	return h.starting
}

func nameOf(id metal.ID) string {
	m, _ := metal.Find(id)
	return string(m.Name)
}

func nameOfLocal(of string, l local) string { return of + ": " + string(localNames[l][0]) }

func unitOfLocal(l local) string { return string(localNames[l][1]) }

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
	for _, id := range []metal.ID{metal.MildSteel, metal.Galvanised, metal.Stainless, metal.Aluminium} {
		for method, process := range map[Process]rules.Process{Shear: rules.Shear, Nibbler: rules.Nibbler} {
			if t, held := rules.ToolLimit(process, id); held {
				list = append(list, End{method, id, t})
			}
		}
		list = append(list, End{Disc, id, discEnds})
	}
	slices.SortFunc(list, func(a, b End) int { return cmp.Or(cmp.Compare(a.Method, b.Method), cmp.Compare(a.Metal, b.Metal)) })
	return list
}
