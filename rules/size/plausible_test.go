package size

import (
	"errors"
	"testing"

	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

func TestPlausible(t *testing.T) {
	row := func(output unit.Ampere, rated unit.Millimetre) *system.System {
		return &system.System{OutputMax: output, Rated: rated}
	}
	// By hand at 40 A: 1.5·t·8.333·10.15 W a mm of thickness = 126.9 W, of 3840 W:
	// 11 mm 36 %, 18 mm 59.5 %, 19 mm 62.8 %, 30 mm 99.2 %, 31 mm 102.5 %,
	// 5 mm 16.5 %, 4 mm 13.2 %.
	for _, c := range []struct {
		rated unit.Millimetre
		want  Plausibility
	}{{11, Normal}, {18, Normal}, {19, Suspicious}, {30, Suspicious}, {31, Impossible}, {5, Normal}, {4, Suspicious}} {
		got, words, err := Plausible(row(40, c.rated))
		if err != nil || got != c.want || words == "" {
			t.Errorf("%v mm: %v %q, %v", c.rated, got, words, err)
		}
	}
	if share, err := MeltShare(40, 11, 500); err != nil || !near(float64(share), 36.35, 0.05) {
		t.Errorf("%v, %v", share, err)
	}
	for _, bad := range []*system.System{row(10, 5), row(300, 5), row(40, 0)} {
		if _, _, err := Plausible(bad); !errors.Is(err, ErrRange) {
			t.Errorf("%+v: %v", bad, err)
		}
	}
	if k, err := Kerf(70); err != nil || k != 2 {
		t.Errorf("%v, %v", k, err)
	}
}

// The kerf stays inside the usual widths: 1.2–1.8 mm at 40 A, 1.5–2.5 at 60 to
// 80 A, 2–3 at 100 A.
func TestKerfIsUsual(t *testing.T) {
	for _, c := range []struct {
		i         unit.Ampere
		low, high unit.Millimetre
	}{{40, 1.2, 1.8}, {60, 1.5, 2.5}, {80, 1.5, 2.5}, {100, 2, 3}} {
		if k, err := Kerf(c.i); err != nil || k < c.low || k > c.high {
			t.Errorf("%v A: %v, %v", c.i, k, err)
		}
	}
}
