package size

import (
	"errors"
	"math"
	"testing"

	"cutbrief/rules/unit"
)

// Nothing is worked out from nothing: a figure of zero where only more makes sense
// is refused, one figure at a time.
func TestZeroIsRefused(t *testing.T) {
	for name, ask := range map[string]func() error{
		"no plate, bevelled":  func() error { _, err := TrueThickness(0, 30); return err },
		"no plate, leaning":   func() error { _, err := Run(0, 30); return err },
		"no voltage":          func() error { _, err := ApparentPower(1, 0, 20); return err },
		"two phases":          func() error { _, err := ApparentPower(2, 230, 20); return err },
		"no breaker":          func() error { _, err := JudgeBreaker(0, 32, 20, 32); return err },
		"no effective draw":   func() error { _, err := JudgeBreaker(32, 32, 0, 32); return err },
		"no plate current":    func() error { _, err := JudgeBreaker(32, 32, 20, 0); return err },
		"no arc voltage":      func() error { _, err := HeatInput(0, 200, 300, 0.9); return err },
		"no arc current":      func() error { _, err := HeatInput(20, 0, 300, 0.9); return err },
		"no travel":           func() error { _, err := HeatInput(20, 200, 0, 0.9); return err },
		"no share that heats": func() error { _, err := HeatInput(20, 200, 300, 0); return err },
		"no flow":             func() error { _, err := HoseLoss(0, 8, 10, 6, SeaLevel); return err },
		"no bore":             func() error { _, err := HoseLoss(200, 0, 10, 6, SeaLevel); return err },
		"no pressure":         func() error { _, err := HoseLoss(200, 8, 10, 0, SeaLevel); return err },
		"no air outside":      func() error { _, err := HoseLoss(200, 8, 10, 6, 0); return err },
		"nothing to bridge":   func() error { _, err := RunTime(100, 8, 6, 0, 0, SeaLevel); return err },
		"no line of heat":     func() error { _, err := PropertiesOf("mild-steel")[0].ByLine(0, 1.5, 500); return err },
	} {
		if err := ask(); !errors.Is(err, ErrRange) {
			t.Errorf("%s: %v, want a refusal", name, err)
		}
	}
	if drop, err := HoseLoss(200, 8, 0, 6, SeaLevel); err != nil || drop != 0 {
		t.Errorf("a hose of no length loses %g bar, %v", drop, err)
	}
}

// The ends of tables, as their sources print them: IEC 60228 class 5 beyond the rows
// that were read (from memory), the classes of water in ISO 8573-1, oxy-fuel speeds of
// Carvill, the thinnest plate and what an edge that is seen needs in ISO 9013.
func TestEndsOfTables(t *testing.T) {
	for section, ohm := range map[unit.SquareMillimetre]OhmPerKilometre{0.75: 26.0, 1: 19.5, 35: 0.554, 50: 0.386} {
		if got, err := CordResistance(section, 20); err != nil || math.Abs(float64(got-ohm)) > 1e-9 {
			t.Errorf("%g mm²: %g Ω/km, %v, want %g", section, got, err, ohm)
		}
	}
	for dew, class := range map[unit.Celsius]int{7: 5, 7.5: 6, 10: 6, 3.5: 5, -19: 4} {
		if got, err := WaterClass(dew); err != nil || got != class {
			t.Errorf("%g °C: class %d, %v, want %d", dew, got, err, class)
		}
	}
	// By hand between 75 mm at 200 and 100 mm at 150: 200·0.75^(ln(80/75)/ln(100/75)) = 187.5.
	for thick, speed := range map[unit.Millimetre]float64{75: 200, 80: 187.5, 100: 150} {
		if got, err := OxyFuelSpeed(thick); err != nil || math.Abs(float64(got)-speed) > 0.05 {
			t.Errorf("%g mm: %g mm/min, %v, want %g", thick, got, err, speed)
		}
	}
	if u, err := Squareness(1, 0.5); err != nil || math.Abs(float64(u)-0.0515) > 1e-9 {
		t.Errorf("0.5 mm: %g, %v, want 0.05 + 0.003·0.5", u, err)
	}
	if _, err := Squareness(1, 0.49); !errors.Is(err, ErrRange) {
		t.Error("0.49 mm has a range")
	}
	if need, err := EdgeNeeded(ToShow, 6); err != nil || need.Squareness != 3 || need.Roughness != 3 {
		t.Errorf("to be seen: %+v, %v, want ranges 3 and 3", need, err)
	}
}
