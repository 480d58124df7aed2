package size

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"

	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// By hand, with a clean maximum of 16 mm at 45 A:
//
//	780 mm/min in 6 mm: 6 · 780 / 500 = 9.36; above half of 16, so v ∝ 1/t holds.
//	500/√2 = 353.553 mm/min is half-way, on a logarithmic scale, from 500 to 250,
//	so 12 mm is half-way from R to 16: R = 12² / 16 = 9.
//	2000 mm/min in 1 mm: 1 · 2000 / 500 = 4, but y = log2 4 = 2, so
//	R = (16² · 1)^(1/3) = 6.3496, with a = ln 2 / ln(16/6.3496) = 0.75.
//	780 mm/min in 3 mm at half the output is 6 mm at all of it.
func TestFitRatedByHand(t *testing.T) {
	s := &system.System{Rated: 12, CleanMax: 16, Severance: 20, OutputMin: 20, OutputMax: 45}
	for _, c := range []struct {
		output unit.Ampere
		t      unit.Millimetre
		v      unit.MillimetrePerMinute
		want   float64
	}{{45, 6, 780, 9.36}, {45, 12, 353.553391, 9}, {45, 1, 2000, 6.349604}, {22.5, 3, 780, 9.36}} {
		if got, err := FitRated(s, c.output, c.t, c.v, AlongEdge); err != nil || math.Abs(float64(got)-c.want) > 1e-5 {
			t.Errorf("%v mm at %v mm/min: %v, %v, want %v", c.t, c.v, got, err, c.want)
		}
	}
}

func TestFitRatedRefuses(t *testing.T) {
	s := &system.System{Rated: 12, CleanMax: 16, Severance: 20, OutputMin: 20, OutputMax: 45}
	for _, c := range []struct {
		t    unit.Millimetre
		v    unit.MillimetrePerMinute
		want error
	}{{0, 780, ErrRange}, {6, 250, ErrRange}, {16, 300, ErrTooThick}, {6, 2500, ErrTooFast}, {12, 1000, ErrNoRated}} {
		if got, err := FitRated(s, 45, c.t, c.v, AlongEdge); !errors.Is(err, c.want) {
			t.Errorf("%v mm at %v mm/min: %v, %v, want %v", c.t, c.v, got, err, c.want)
		}
	}
	if _, err := FitRated(&system.System{}, 45, 6, 780, AlongEdge); !errors.Is(err, ErrRow) {
		t.Errorf("a row without figures: %v", err)
	}
}

// A row with the rated thickness that was found cuts at the speed it was found
// for.
func TestFitRatedInvertsSpeed(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anySystem(t)
		output := anyOutput(t, s, "output")
		thick := unit.Millimetre(rapid.Float64Range(0.1, 80).Draw(t, "thickness"))
		v := unit.MillimetrePerMinute(rapid.Float64Range(260, 2400).Draw(t, "speed"))
		rated, err := FitRated(s, output, thick, v, AlongEdge)
		if err != nil {
			return
		}
		fitted := *s
		fitted.Rated = rated
		if got, err := Speed(&fitted, output, thick, AlongEdge); err != nil || math.Abs(float64(got/v)-1) > 1e-6 {
			t.Fatalf("rated %v mm gives %v mm/min, %v, want %v", rated, got, err, v)
		}
	})
}
