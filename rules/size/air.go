package size

import (
	"math"

	"cutbrief/rules/unit"
)

// Kilopascal is an absolute pressure.
type Kilopascal float64

// SeaLevel is the standard pressure at sea level. Source: iso-2533.
const SeaLevel Kilopascal = 101.325

// Atmosphere returns the air pressure in kPa at an altitude h in m above sea
// level: H = r·h/(r + h), p = 101.325·(1 − 0.0065·H/288.15)^5.25588, with r the
// earth's radius, 6356766 m.
//
// Valid for −100 to 5000 m. Source: iso-2533, from memory.
// Check: 1500 m → 84.560 kPa.
func Atmosphere(altitude unit.Metre) (Kilopascal, error) {
	ratio, err := temperatureRatio(altitude)
	return SeaLevel * Kilopascal(math.Pow(ratio, airExponent)), err
}

// airExponent is g/(R·lapse) = 9.80665/(287.05287·0.0065).
const airExponent = 9.80665 / (287.05287 * 0.0065)

// temperatureRatio is the standard temperature at an altitude over 288.15 K, from
// −100 to 5000 m, where the standard atmosphere is used here; 0 elsewhere.
func temperatureRatio(altitude unit.Metre) (float64, error) {
	if err := within("altitude", float64(altitude), -100, 5000, "m"); err != nil {
		return 0, err
	}
	const radius = 6356766
	h := radius * float64(altitude) / (radius + float64(altitude))
	return 1 - 0.0065*h/288.15, nil
}

// DensityRatio returns the air density at an altitude over that at sea level in
// the standard atmosphere: (1 − 0.0065·H/288.15)^4.25588.
//
// Valid for −100 to 5000 m. Source: iso-2533, from memory.
// Check: 2000 m → 0.8217.
func DensityRatio(altitude unit.Metre) (float64, error) {
	ratio, err := temperatureRatio(altitude)
	return math.Pow(ratio, airExponent-1), err
}

// Reference is the state at which a volume of free air is counted.
type Reference struct {
	Pressure    Kilopascal
	Temperature unit.Celsius
}

// ANR returns the reference atmosphere of ISO 8778, 100 kPa and 20 °C (its 65 %
// humidity is left out): what LitrePerMinute means unless said otherwise.
// Source: iso-8778, from memory.
func ANR() Reference { return Reference{100, 20} }

// kelvin is 0 °C.
const kelvin = 273.15

// Restate returns a flow of dry air counted at one state as counted at another:
// q·(p1/p2)·(T2/T1), pressures absolute, temperatures absolute.
//
// Valid for q ≥ 0, 50 to 110 kPa and −30 to 60 °C. Source: physics.
// Check: 1 ft³/min at 14.696 psi and 60 °F = 29.1337 l/min at 100 kPa, 20 °C.
func Restate(q unit.LitrePerMinute, from, to Reference) (unit.LitrePerMinute, error) {
	for _, r := range [...]Reference{from, to} {
		if err := within("air pressure", float64(r.Pressure), 50, 110, "kPa"); err != nil {
			return 0, err
		}
		if err := within("air temperature", float64(r.Temperature), -30, 60, "°C"); err != nil {
			return 0, err
		}
	}
	if !(q >= 0) {
		return 0, ErrRange
	}
	ratio := float64(from.Pressure/to.Pressure) * (float64(to.Temperature) + kelvin) / (float64(from.Temperature) + kelvin)
	return q * unit.LitrePerMinute(ratio), nil
}

// DeliveredAt returns the free air in l/min, at the reference of ISO 8778, that
// a compressor delivers at an altitude in m with an inlet at 20 °C. A
// compressor moves about the same volume anywhere, so what arrives shrinks with
// the air pressure; it is never more than the delivery on its plate.
//
// Valid for delivery ≥ 0 and −100 to 5000 m. Source: physics, and iso-2533 for
// the pressure. Check: 200 l/min at 1500 m → 200·84.560/100 = 169.1 l/min.
func DeliveredAt(delivery unit.LitrePerMinute, altitude unit.Metre) (unit.LitrePerMinute, error) {
	p, err := Atmosphere(altitude)
	if err != nil {
		return 0, err
	}
	q, err := Restate(delivery, Reference{p, 20}, ANR())
	return min(q, delivery), err
}

// HoseLoss returns the pressure lost in bar along a smooth air hose, without
// its couplings, for a flow of free air in l/min (ISO 8778), a bore in mm, a
// length in m, an inlet pressure in bar gauge and the local air pressure in kPa:
//
//	p1² − p2² = f·(L/D)·G²·R·T,  G = ṁ/A,
//	f = 0.25/lg²(ε/(3.7·D) + 5.74/Re^0.9),  Re = G·D/μ
//
// with T = 293.15 K, R = 287.05 J/kg·K, ε = 0.0015 mm, μ = 1.82·10⁻⁵ Pa·s.
// Couplings and hose tails lose about as much again in small bores: see
// WithCouplings.
//
// Valid for turbulent flow, Re from 5000 to 10⁸ (a slower flow, in a wide bore,
// is ErrRange and loses next to nothing), and a loss of no more than half of the
// absolute inlet pressure, else ErrChokes. Source: hose-darcy, from memory, and pipe-texts
// as the independent check.
// Check: 1/4 in, 25 ft, 80 psi, 8 ft³/min → 5.03 psi.
func HoseLoss(flow unit.LitrePerMinute, bore unit.Millimetre, length unit.Metre, inlet unit.Bar, local Kilopascal) (unit.Bar, error) {
	if !(flow > 0 && length >= 0 && inlet > 0 && local > 0) {
		return 0, ErrRange
	}
	const gas, t, rough, viscosity = 287.05, 293.15, 1.5e-6, 1.82e-5
	d := float64(bore) / 1000
	mass := float64(flow) / 60000 * 100000 / (gas * t) // kg/s
	g := mass / (math.Pi * d * d / 4)
	re := g * d / viscosity
	if err := within("Reynolds number", re, 5000, 1e8, ""); err != nil {
		return 0, err
	}
	lg := math.Log10(rough/(3.7*d) + 5.74/math.Pow(re, 0.9))
	p1 := float64(inlet)*1e5 + float64(local)*1e3
	rest := p1*p1 - 0.25/(lg*lg)*float64(length)/d*g*g*gas*t
	if rest < p1*p1/4 {
		return 0, ErrChokes
	}
	return unit.Bar((p1 - math.Sqrt(rest)) / 1e5), nil
}

// WithCouplings is what a bare hose's loss is multiplied with for its couplings
// and tails in bores up to 10 mm. Common practice, no source.
const WithCouplings = 2

// RunTime returns how long in s a receiver makes up for a compressor that
// delivers less than a torch takes, while it falls from one gauge pressure to
// another: t = V·(p1 − p2)/((need − delivery)·pa), V in l, flows in l/min of
// free air at the local air pressure pa in kPa.
//
// Valid for V ≥ 0 and p1 ≥ p2 ≥ 0; ErrKeepsUp if the delivery is enough.
// Source: receiver-ornl. Check: 270 l, 10 to 6.5 bar, 200 l/min short at
// 101.325 kPa → 4.6632 min = 279.8 s.
func RunTime(receiver unit.Litre, high, low unit.Bar, need, delivery unit.LitrePerMinute, local Kilopascal) (unit.Second, error) {
	if !(receiver >= 0 && low >= 0 && high >= low && delivery >= 0 && need > 0 && local > 0) {
		return 0, ErrRange
	}
	if delivery >= need {
		return 0, ErrKeepsUp
	}
	air := float64(receiver) * float64(high-low) * 100 / float64(local) // l of free air
	return unit.Second(air / float64(need-delivery) * 60), nil
}

// ReceiverNeed returns the receiver in l that makes up for a short delivery for
// a time in s while it falls from one gauge pressure to another: RunTime solved
// for V.
//
// Valid for p1 > p2 ≥ 0, need > delivery ≥ 0, t ≥ 0. Source: receiver-ornl.
// Check: 350 out, 250 in, 5 min, 100 to 60 psi, 14.7 psi → 183.75 ft³.
func ReceiverNeed(t unit.Second, high, low unit.Bar, need, delivery unit.LitrePerMinute, local Kilopascal) (unit.Litre, error) {
	if !(t >= 0 && low >= 0 && high > low && delivery >= 0 && need > delivery && local > 0) {
		return 0, ErrRange
	}
	return unit.Litre(float64(t) / 60 * float64(need-delivery) * float64(local) / 100 / float64(high-low)), nil
}

// waterClasses lists the highest pressure dew point in °C of water classes 1 to
// 6. Source: iso-8573-1, purity classes for humidity.
var waterClasses = [...]unit.Celsius{-70, -40, -20, 3, 7, 10}

// WaterClass returns the water class 1 to 6 of compressed air with a dew point
// in °C at line pressure: the driest class whose limit it does not exceed.
//
// Valid for dew points up to 10 °C; wetter air has classes counted in liquid
// water. Source: iso-8573-1. Check: 3 °C → class 4; −40 °C → class 2.
func WaterClass(dew unit.Celsius) (int, error) {
	for i, most := range waterClasses {
		if dew <= most {
			return i + 1, nil
		}
	}
	return 0, &RangeError{"pressure dew point", float64(dew), -273, 10, "°C"}
}

// The pressure dew points in °C that driers usually reach. Source: iso-8573-1
// typical use for the refrigerated drier; the desiccant drier is practice.
const (
	RefrigerantDew unit.Celsius = 3
	DesiccantDew   unit.Celsius = -40
)

// Saturation returns the pressure in kPa of saturated water vapour at t °C:
// e = 0.6112·exp(17.62·t/(243.12 + t)).
//
// Valid for 0 to 60 °C, over water. Source: wmo-8, from memory; within 0.4 % of
// iapws-if97. Check: 20 °C → 2.3326 kPa.
func Saturation(t unit.Celsius) (Kilopascal, error) {
	if err := within("air temperature", float64(t), 0, 60, "°C"); err != nil {
		return 0, err
	}
	return saturation(float64(t)), nil
}

func saturation(t float64) Kilopascal { return Kilopascal(0.6112 * math.Exp(17.62*t/(243.12+t))) }

// PressureDewPoint returns the dew point in °C in an air line without a drier:
// room air at t °C and a humidity in %, pressed from the local air pressure in
// kPa to a line pressure in bar gauge, and cooled to the line's temperature in
// °C. Vapour pressure rises as the total does; what is more than the line
// can hold condenses, so the dew point is at most the line's temperature.
//
// Valid for 0 to 60 °C, a humidity above 0 up to 100 %, and a dew point from 0 °C
// up. Source: physics (Dalton) with wmo-8.
// Check: 20 °C, 65 %, 8 bar absolute at 101.325 kPa, before cooling → 49.4 °C.
func PressureDewPoint(t unit.Celsius, humidity unit.Percent, line unit.Bar, local Kilopascal, cooled unit.Celsius) (unit.Celsius, error) {
	room, err := Saturation(t)
	if err != nil {
		return 0, err
	}
	if err := within("line temperature", float64(cooled), 0, 60, "°C"); err != nil {
		return 0, err
	}
	if !(humidity <= 100 && line >= 0 && local > 0) {
		return 0, ErrRange
	}
	e := float64(room) * float64(humidity) / 100 * (float64(line)*100 + float64(local)) / float64(local)
	if e >= float64(saturation(float64(cooled))) {
		return cooled, nil
	}
	ln := math.Log(e / 0.6112)
	if !(ln >= 0) {
		return 0, ErrRange
	}
	return unit.Celsius(243.12 * ln / (17.62 - ln)), nil
}
