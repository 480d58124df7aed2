package size

import (
	"math"

	"cutbrief/rules/unit"
)

// steepest is the largest bevel in degrees from square that a torch is held
// at. Common practice, no source: weld preparations run to 45°, rarely to 60°.
const steepest = 60

// TrueThickness returns the metal in mm along a cut tilted by angle degrees
// from square through a plate t mm thick: t / cos(angle).
//
// Valid for t > 0 and 0° ≤ angle ≤ 60°. Source: geometry.
// Check: 6 mm at 45° → 8.485 mm.
func TrueThickness(t unit.Millimetre, angle unit.Degree) (unit.Millimetre, error) {
	if !(t > 0) {
		return 0, ErrRange
	}
	if err := within("bevel", float64(angle), 0, steepest, "°"); err != nil {
		return 0, err
	}
	return t / unit.Millimetre(math.Cos(float64(angle)*math.Pi/180)), nil
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
