package size

import (
	"math"

	"cutbrief/rules/metal"
	"cutbrief/rules/unit"
)

// JoulePerMillimetre is heat per length of cut or weld.
type JoulePerMillimetre float64

// HeatInput returns the heat of an arc per mm of travel: η·U·I/v, with U in V, I
// in A, v in mm/min and η the share that counts, 1 for the whole arc.
//
// Valid for U, I, v > 0 and 0 < η ≤ 1. Source: aws-wh-1, from memory.
// Check: 20 V, 200 A, 300 mm/min, η 0.9 → 720 J/mm.
func HeatInput(u unit.Volt, i unit.Ampere, v unit.MillimetrePerMinute, efficiency float64) (JoulePerMillimetre, error) {
	if !(u > 0 && i > 0 && v > 0 && efficiency > 0 && efficiency <= 1) {
		return 0, ErrRange
	}
	return JoulePerMillimetre(efficiency * float64(u) * float64(i) * 60 / float64(v)), nil
}

// The temperatures and the heat capacity of steel in the published example.
// Source: aws-wh-1, from memory.
const (
	steelMelting    = 1510   // °C
	steelHeat       = 0.0044 // J/mm³·K
	exampleStart    = 25     // °C
	changesAt       = 730    // °C, above which the structure of steel changes
	thinPlateFactor = 4.13   // √(2·π·e)
)

// HeatedZone returns how far beside the molten edge, in mm, steel reaches
// 730 °C and changes its structure: Y from
// 1/(Tp − T0) = 4.13·ρC·t·Y/H + 1/(Tm − T0), with Tp 730, Tm 1510, T0 25 °C and
// ρC 0.0044 J/mm³·K; heat in J/mm, t in mm.
//
// Valid for a plate heated through its whole thickness, as by a cut, and
// heat, t > 0. Source: aws-wh-1, from memory. Check: 720 J/mm in 5 mm → 5.9 mm.
func HeatedZone(heat JoulePerMillimetre, t unit.Millimetre) (unit.Millimetre, error) {
	if !(heat > 0 && t > 0) {
		return 0, ErrRange
	}
	span := 1.0/(changesAt-exampleStart) - 1.0/(steelMelting-exampleStart)
	return unit.Millimetre(span * float64(heat) / (thinPlateFactor * steelHeat * float64(t))), nil
}

// LeftInPlate returns the heat in J/mm that a cut leaves in mild steel t mm
// thick: what the line-source balance says is absorbed, less the melt that is
// blown out, for a kerf in mm at v mm/min. It counts heat only, not whether a
// flame or an arc gives it.
//
// Valid where Absorbed is. Source: wells-1952 and property-tables, from memory.
// Check: 11 mm, 1.5 mm kerf, 500 mm/min: 351 − 168 = 183 J/mm.
func LeftInPlate(t, kerf unit.Millimetre, v unit.MillimetrePerMinute) (JoulePerMillimetre, error) {
	steel := properties[metal.MildSteel][0]
	q, err := steel.Absorbed(t, kerf, v)
	if err != nil {
		return 0, err
	}
	absorbed := float64(q) * 1000 * 60 / float64(v)
	return JoulePerMillimetre(max(0, absorbed-float64(kerf)*float64(t)*steel.MeltEnergy())), nil
}

// OxyFuelSpeed returns the usual speed in mm/min of cutting mild steel t mm thick
// with oxygen and fuel gas, straight in logarithms between printed points.
//
// Valid for 6 to 100 mm. Source: carvill, which does not say whether by hand.
// Check: 13 mm → 360 mm/min.
func OxyFuelSpeed(t unit.Millimetre) (unit.MillimetrePerMinute, error) {
	points := [...][2]float64{{6, 430}, {13, 360}, {25, 280}, {50, 200}, {75, 200}, {100, 150}}
	if err := within("thickness", float64(t), 6, 100, "mm"); err != nil {
		return 0, err
	}
	i := 1
	for float64(t) > points[i][0] {
		i++
	}
	a, b := points[i-1], points[i]
	slope := math.Log(b[1]/a[1]) / math.Log(b[0]/a[0])
	return unit.MillimetrePerMinute(a[1] * math.Pow(float64(t)/a[0], slope)), nil
}

// Band is a usual range in mm.
type Band struct{ Low, High unit.Millimetre }

// PlasmaBand is the usual heated band of hand plasma on mild steel.
// Source: practice; the plasma figures agree with HeatedZone of LeftInPlate.
func PlasmaBand() Band { return Band{0.5, 2} }

// OxyFuelBand is the usual heated band of oxy-fuel on 12 to 25 mm mild steel.
// Source: practice.
func OxyFuelBand() Band { return Band{1.5, 4} }

// ColdBand is the heated band of shear, nibbler, band saw and hand saw: none.
// Source: practice.
func ColdBand() Band { return Band{0, 0} }
