package unit_test

import (
	"math"
	"os/exec"
	"strings"
	"testing"

	"cutbrief/rules/cite/reference"
	"cutbrief/rules/unit"
)

// An independent program for conversions, where it is installed.
func TestAgainstUnitsProgram(t *testing.T) {
	program, err := exec.LookPath("units")
	if err != nil {
		t.Skip("the units program is not installed: apt install units")
	}
	for _, c := range []struct {
		ours, theirs, held string
		kind               unit.Kind
	}{
		{"1 in", "1 in", "mm", unit.Thickness}, {"1 thou", "0.001 in", "mm", unit.Thickness},
		{"1 cm", "1 cm", "mm", unit.Thickness}, {"1 ft", "1 ft", "m", unit.Length},
		{"1 yd", "1 yd", "m", unit.Length}, {"1 km", "1 km", "m", unit.Length},
		{"1 in/min", "1 in/min", "mm/min", unit.Speed}, {"1 mm/s", "1 mm/s", "mm/min", unit.Speed},
		{"1 hp", "1 hp", "kW", unit.Power}, {"1 PS", "1 metrichorsepower", "kW", unit.Power},
		{"1 cfm", "1 ft^3/min", "l/min", unit.Flow}, {"1 m³/h", "1 m^3/hour", "l/min", unit.Flow},
		{"1 l/s", "1 l/s", "l/min", unit.Flow}, {"1 psi", "1 psi", "bar", unit.Pressure},
		{"1 kPa", "1 kPa", "bar", unit.Pressure}, {"1 MPa", "1 MPa", "bar", unit.Pressure},
		{"1 gal", "1 usgallon", "l", unit.Volume}, {"1 lb", "1 lb", "kg", unit.Weight},
		{"1 h", "1 hour", "s", unit.Time},
	} {
		out, err := exec.Command(program, "-t", "-d", "15", c.theirs, c.held).Output()
		if err != nil {
			t.Fatalf("units %s %s: %v", c.theirs, c.held, err)
		}
		want := reference.Number(t, strings.TrimSpace(string(out)))
		if got := read(t, c.ours, c.kind, ""); math.Abs(got/want-1) > 1e-13 {
			t.Errorf("%s = %.15g %s, units says %.15g", c.ours, got, c.held, want)
		}
	}
}
