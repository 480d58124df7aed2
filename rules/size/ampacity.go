package size

import "cutbrief/rules/unit"

// ampacities lists copper conductors by section in mm² (American wire gauges 14
// to 2, by astm-b258) with the current in A they carry without passing 60 °C
// and 75 °C. Source: nec-310-16, for 30 °C around them and up to three that
// carry current.
var ampacities = [...]struct{ section, at60, at75 float64 }{
	{2.081, 15, 20}, {3.309, 20, 25}, {5.261, 30, 35}, {8.367, 40, 50}, {13.30, 55, 65}, {21.15, 70, 85}, {26.67, 85, 100}, {33.63, 95, 115},
}

// CordAmpacity returns the current in A that the copper conductors of a cord
// with a section in mm² carry all the time: cautious without passing 60 °C, most
// without passing 75 °C. A section between two of the table lies straight
// between theirs; below the first it takes that one's in proportion, which is
// common practice, no source; above the last it counts as the last. Cords have a
// table of their own in the same book, 400.5, that no one here read: a licensed
// electrician does.
//
// Valid for 0.75 mm² and above. Source: nec-310-16.
// Check: gauge 10, 5.261 mm² → 30 and 35 A; 2.5 mm² → 15 + 5·0.419/1.228 = 16.7
// and 21.7 A.
func CordAmpacity(section unit.SquareMillimetre) (cautious, most unit.Ampere, err error) {
	a := float64(section)
	first, last := ampacities[0], ampacities[len(ampacities)-1]
	switch {
	case !(a >= flexible[0].section):
		return 0, 0, ErrRange
	case a <= first.section:
		share := a / first.section
		return unit.Ampere(first.at60 * share), unit.Ampere(first.at75 * share), nil
	case a >= last.section:
		return unit.Ampere(last.at60), unit.Ampere(last.at75), nil
	}
	i := 1
	for a > ampacities[i].section {
		i++
	}
	low, high := ampacities[i-1], ampacities[i]
	share := (a - low.section) / (high.section - low.section)
	return unit.Ampere(blend(low.at60, high.at60, share)), unit.Ampere(blend(low.at75, high.at75, share)), nil
}

// blend is the point between low and high at a share of the way.
func blend(low, high, share float64) float64 { return low + (high-low)*share }
