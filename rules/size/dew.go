package size

import (
	"math"

	"cutbrief/rules/unit"
)

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
	if !(humidity > 0 && humidity <= 100 && line >= 0 && local > 0) {
		return 0, ErrRange
	}
	e := float64(room) * float64(humidity) / 100 * (float64(line)*100 + float64(local)) / float64(local)
	if e >= float64(saturation(float64(cooled))) {
		return cooled, nil
	}
	ln := math.Log(e / 0.6112)
	if ln < 0 {
		return 0, ErrRange
	}
	return unit.Celsius(243.12 * ln / (17.62 - ln)), nil
}
