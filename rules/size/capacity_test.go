package size

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"

	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// A tilted cut never has less metal than a square one, and at 60° twice it.
func TestTrueThickness(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := unit.Degree(rapid.Float64Range(0, 60).Draw(t, "angle"))
		got, err := TrueThickness(10, a)
		lean, err2 := Run(10, a)
		if err != nil || err2 != nil || got < 10 || got > 20+1e-9 || !near(math.Hypot(10, float64(lean)), float64(got), 1e-9) {
			t.Fatal(got, lean, err, err2)
		}
	})
}

func TestCompare(t *testing.T) {
	// By hand: 12.7·0.94 = 11.938.
	for _, c := range []struct {
		have float64
		want Standing
	}{{12.7, Enough}, {12.699, StepShort}, {12, StepShort}, {11.938, StepShort}, {11.937, TooSmall}} {
		if got := Compare(12.7, c.have); got != c.want {
			t.Errorf("%v: %v", c.have, got)
		}
	}
}

func TestPierce(t *testing.T) {
	s := &system.System{CleanMax: 20, Severance: 25, Pierce: unit.Known(unit.Millimetre(12))}
	if got, err := Pierce(s); err != nil || got != 12 {
		t.Errorf("%v, %v", got, err)
	}
	s.Pierce = unit.Known(unit.Millimetre(26))
	if _, err := Pierce(s); !errors.Is(err, ErrRange) {
		t.Errorf("deeper than it severs: %v", err)
	}
	if _, err := Pierce(&system.System{}); !errors.Is(err, ErrRow) {
		t.Errorf("%v", err)
	}
}
