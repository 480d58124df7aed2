package cost

import (
	"cutbrief/rules/cite"
	"cutbrief/rules/price"
)

// Figure is an assumption a cost rests on, as it stands in the tables.
type Figure struct {
	Name   string
	Unit   string
	Spread price.Spread
	Trust  cite.Trust
}

// Figures returns what is assumed of each way of cutting and of all, where the
// customer told nothing better. Prices are apart.
func Figures() []Figure {
	practised := func(name, unit string, s price.Spread) Figure { return Figure{name, unit, s, cite.Practice} }
	list := []Figure{
		practised("share of the cutting time that really cuts", "of the time", operatingFactor),
		practised("length of a cut", "m", usualCut),
		practised("weeks worked in a year", "weeks", weeks),
		practised("speed of a hand against the row of the system", "times", handSpeed),
		practised("air after a cut", "s", airAfterCut),
		practised("power between cuts", "kW", idlePower),
	}
	for _, p := range []Process{OxyAcetylene, OxyPropane, Disc, BandSaw, Shear, Nibbler, Plasma} {
		h := habitsOf[p]
		for _, f := range []struct {
			of     local
			spread price.Spread
		}{{setup, h.setup}, {starting, h.starting}, {grinding, h.cleaning}, {tended, h.tended}, {power, h.power}} {
			if f.spread != (price.Spread{}) {
				list = append(list, practised(p.Name()+": "+localNames[f.of][0], localNames[f.of][1], f.spread))
			}
		}
	}
	return list
}
