package size

import (
	"math"

	"cutbrief/rules/unit"
)

// Formulas that nothing in the program calls: results are held against them.

// dropBranch is the recommended voltage drop in % on a branch circuit alone.
// Source: nec-210-19.
const dropBranch unit.Percent = 3

// NormalState returns the physical normal state, 101.325 kPa and 0 °C.
// Source: physics.
func NormalState() Reference { return Reference{101.325, 0} }

// StandardCubicFoot returns the states that a "standard cubic foot" of air is
// counted at in different trades. They differ by up to 2.9 %, so a data sheet
// has to be asked which it means. Source: practice.
func StandardCubicFoot() []Reference {
	const psi = 6.894757293168361
	fahrenheit := func(t float64) unit.Celsius { return unit.Celsius((t - 32) / 1.8) }
	return []Reference{
		{14.5 * psi, fahrenheit(68)}, {100, 20}, {SeaLevel, fahrenheit(60)}, {14.7 * psi, fahrenheit(60)},
		{SeaLevel, fahrenheit(68)}, {SeaLevel, fahrenheit(70)},
	}
}

// HoseLossSimple returns the pressure lost in bar along a pipe or hose by the
// rule of compressed-air texts: Δp = 450·q^1.85·L/(d⁵·p), q in l/s free air, L
// in m, d in mm, p in bar absolute at the inlet.
//
// Valid for small drops, up to 1 bar and a tenth of p. Source: pipe-texts.
// Check: 200 l/min, 20 m, 16.1 mm, 8 bar absolute → 0.009646 bar.
func HoseLossSimple(flow unit.LitrePerMinute, bore unit.Millimetre, length unit.Metre, inlet unit.Bar, local Kilopascal) (unit.Bar, error) {
	if !(flow > 0 && bore > 0 && length >= 0 && inlet > 0 && local > 0) {
		return 0, ErrRange
	}
	p := float64(inlet) + float64(local)/100
	drop := 450 * math.Pow(float64(flow)/60, 1.85) * float64(length) / (math.Pow(float64(bore), 5) * p)
	if drop > 1 || drop > p/10 {
		return 0, ErrRange
	}
	return unit.Bar(drop), nil
}

// Run returns how far the edge of a plate t mm thick leans, in mm, when the
// torch is tilted by angle degrees from square: t·tan(angle).
//
// Valid for t > 0 and 0° ≤ angle ≤ 60°. Source: geometry.
// Check: 12 mm at 1° → 0.209 mm.
func Run(t unit.Millimetre, angle unit.Degree) (unit.Millimetre, error) {
	if !(t > 0) {
		return 0, ErrRange
	}
	if err := within("tilt", float64(angle), 0, steepest, "°"); err != nil {
		return 0, err
	}
	return t * unit.Millimetre(math.Tan(float64(angle)*math.Pi/180)), nil
}

// americanStranded lists the resistance in Ω per 1000 ft of stranded uncoated
// copper at 75 °C. Source: nec-9-8.
var americanStranded = [...]struct {
	gauge string
	ohm   float64
}{
	{"14", 3.14}, {"12", 1.98}, {"10", 1.24}, {"8", 0.778}, {"6", 0.491}, {"4", 0.308}, {"2", 0.194}, {"1/0", 0.122},
}

// kilofeet is how many thousand feet go into a kilometre: 1 ft = 0.3048 m.
const kilofeet = 1 / 0.3048

// AmericanResistance returns the resistance in Ω/km of one stranded uncoated
// copper conductor of an American wire gauge at a conductor temperature in °C:
// R = R75·(1 + 0.00323·(T − 75)), printed per 1000 ft, here per km.
//
// Valid for gauges 14, 12, 10, 8, 6, 4, 2 and 1/0 and 0 to 90 °C. Source:
// nec-9-8 with its note 2. Check: gauge 10 at 75 °C → 1.24/0.3048 = 4.068 Ω/km.
func AmericanResistance(gauge string, at unit.Celsius) (OhmPerKilometre, error) {
	if err := within("conductor temperature", float64(at), 0, 90, "°C"); err != nil {
		return 0, err
	}
	for _, row := range americanStranded {
		if row.gauge == gauge {
			return OhmPerKilometre(row.ohm * kilofeet * (1 + 0.00323*(float64(at)-75))), nil
		}
	}
	return 0, ErrRange
}

// Micrometre is a height of roughness.
type Micrometre float64

// roughness holds base and slope of each range of Rz5, in µm over thickness in mm.
// Source: iso-9013.
var roughness = [...][2]float64{{10, 0.6}, {40, 0.8}, {70, 1.2}, {110, 1.8}}

// Roughness returns the largest mean height of profile Rz5 in µm of range 1 to 4
// at a plate thickness in mm: base + slope·t.
//
// Valid for ranges 1 to 4 and 0.5 to 150 mm. Source: iso-9013.
// Check: range 3 at 12 mm → 70 + 1.2·12 = 84.4 µm.
func Roughness(class int, t unit.Millimetre) (Micrometre, error) {
	rz, err := classed(roughness[:], class, t)
	return Micrometre(rz), err
}

// SquarenessClass returns the best range 1 to 5 that an edge leaning u mm on a
// plate t mm thick still meets.
//
// Valid for u ≥ 0 and 0.5 to 150 mm; a larger lean than range 5 is ErrRange.
// Source: iso-9013. Check: 0.5 mm at 12 mm → range 3 (0.52 mm).
func SquarenessClass(u, t unit.Millimetre) (int, error) {
	for class := range squareness {
		most, err := Squareness(class+1, t)
		if err != nil {
			return 0, err
		}
		if u >= 0 && u <= most*(1+tiny) {
			return class + 1, nil
		}
	}
	return 0, ErrRange
}

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

// Need returns the rated thickness in mm that a regular clean cut of t mm, in
// mild-steel equivalents, asks for: at least t·Floor, comfortably t·Comfort.
// Valid for t > 0. Source: practice.
// Check: 6.35 mm in production → 12.7 mm, comfortably 19.05 mm.
func (m Multiple) Need(t unit.Millimetre) (least, comfort unit.Millimetre, err error) {
	if !(t > 0) {
		return 0, 0, ErrRange
	}
	return t * unit.Millimetre(m.Floor), t * unit.Millimetre(m.Comfort), nil
}
