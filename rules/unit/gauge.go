package unit

import (
	"math"
	"strconv"
	"strings"

	"cutbrief/rules/message"
)

// standardOunces is the weight of a square foot of sheet in ounces by gauge
// number, from number 3. Source: usc-15-206, table (numbers 3 to 6 and 23 to 28
// from memory of the same table).
var standardOunces = [...]float64{
	160, 150, 140, 130, 120, 110, 100, 90, 80, 70, // 3 to 12
	60, 50, 45, 40, 36, 32, 28, 24, 22, 20, // 13 to 22
	18, 16, 14, 12, 11, 10, // 23 to 28
}

const (
	firstOunce = 3 // gauge number of standardOunces[0]
	// msgWeight is the weight of a square foot of sheet steel one inch thick, in
	// pounds, that the manufacturers' standard gauge is defined by. Source: msg.
	msgWeight = 41.82
	// wroughtWeight is the same for the wrought iron of the law. Source: usc-15-206.
	wroughtWeight = 40
	// zincOunces is the coating counted in galvanised gauge: 0.15625 lb/ft².
	// Source: smacna-1995, Appendix A.
	zincOunces = 2.5
)

// gaugeTable says how a sheet's gauge is defined and between which numbers.
type gaugeTable struct {
	first, last int
	inch        func(n int) float64
}

// The tables end where the sheet is listed; outside them nothing is guessed.
// Galvanised sheet is not listed at 7. Stainless sheet by the law's gauge is
// trade use.
var gaugeTables = map[Sheet]gaugeTable{
	SteelGauge:    {3, 28, func(n int) float64 { return ounces(n) / 16 / msgWeight }},
	GalvanGauge:   {8, 28, func(n int) float64 { return (ounces(n) + zincOunces) / 16 / msgWeight }},
	StainGauge:    {7, 28, func(n int) float64 { return ounces(n) / 16 / wroughtWeight }},
	AluminumGauge: {7, 28, func(n int) float64 { return wireDiameter(n) * inchOver / inch }},
}

func ounces(n int) float64 { return standardOunces[n-firstOunce] }

// Gauge returns the nominal thickness of sheet by its gauge number. A number
// outside the sheet's table, or a metal not sold by gauge, is an error.
// Sources: msg, smacna-1995, usc-15-206, astm-b258. Check: 14 ga is 1.898 mm in
// steel, 1.993 mm galvanised, 1.984 mm stainless, 1.628 mm aluminium.
func Gauge(n int, s Sheet) (Millimetre, error) {
	t, ok := gaugeTables[s]
	if !ok {
		return 0, message.Errorf("this metal is not sold by gauge")
	}
	if n < t.first || n > t.last {
		return 0, message.Errorf("{1} sheet is listed from {2} to {3} gauge only", message.ID(s), message.Count(t.first), message.Count(t.last))
	}
	return Millimetre(t.inch(n) * inch / inchOver), nil
}

// wireDiameter is the diameter of American wire gauge n in mm:
// d = 0.127·92^((36−n)/39); 1/0 is n = 0, 4/0 is n = −3. Source: astm-b258.
// Check: AWG 10 is 2.588 mm.
func wireDiameter(n int) float64 {
	return 0.127 * math.Pow(92, float64(36-n)/39)
}

// The American wire gauge numbers read as conductor sizes: 4/0 to 30.
const (
	thickestWire = -3
	thinnestWire = 30
)

// AWG returns the copper section of a conductor of American wire gauge n:
// A = π/4·d² with d from astm-b258. 1/0 is n = 0, 4/0 is n = −3. Sizes outside
// 4/0 to 30 are not known. Check: AWG 10 is 5.26 mm².
func AWG(n int) (SquareMillimetre, bool) {
	if n < thickestWire || n > thinnestWire {
		return 0, false
	}
	d := wireDiameter(n)
	return SquareMillimetre(math.Pi / 4 * d * d), true
}

// wireNumber reads "10", "1/0" and "4/0".
func wireNumber(s string) (int, bool) {
	if zeros, ok := strings.CutSuffix(s, "/0"); ok {
		n, ok := natural(zeros)
		return 1 - n, ok && n >= 1 && n <= 4
	}
	return natural(s)
}

// wireName writes a gauge number as the trade does.
func wireName(n int) string {
	if n <= 0 {
		return "AWG " + strconv.Itoa(1-n) + "/0"
	}
	return "AWG " + strconv.Itoa(n)
}
