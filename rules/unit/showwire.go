package unit

import "math"

// soldWires are the American wire gauge sizes cords and cables are sold in,
// thinnest first; 1/0 is 0. Common practice, no source.
var soldWires = [...]int{18, 16, 14, 12, 10, 8, 6, 4, 3, 2, 1, 0, -1, -2, -3}

// showWire writes a conductor for a reader of AWG sizes: the next size up or
// down as sold; told sizes only if they are that size within 1 %. A section no
// size can stand for, or outside those sold, is written in mm².
func showWire(section float64, r Round) string {
	best, found := 0, false
	thin, thick := area(soldWires[0]), area(soldWires[len(soldWires)-1])
	if section < thin*(1-slack) || section > thick*(1+slack) {
		return Show(Quantity{section, Section}, Metric, r)
	}
	for _, n := range soldWires {
		a := area(n)
		on := math.Abs(a-section) <= slack*section
		switch {
		case r == Up && (a >= section || on):
			return wireName(n)
		case r == Down && (a <= section || on), r == Nearest && math.Abs(a-section) <= near*section:
			best, found = n, true
		}
	}
	if found {
		return wireName(best)
	}
	return Show(Quantity{section, Section}, Metric, r)
}

func area(n int) float64 {
	a, _ := AWG(n)
	return float64(a)
}
