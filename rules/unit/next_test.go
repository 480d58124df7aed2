package unit_test

import (
	"math"
	"testing"

	"cutbrief/rules/unit"
)

// TestNext: by hand. A sixteenth of 10 mm is 0.625, and 0.5 is the roundest below;
// of 32 A it is 2; of 3/8 in in inches the next is 7/16 in, 11.1125 mm.
func TestNext(t *testing.T) {
	for _, c := range []struct {
		kind  unit.Kind
		style unit.Style
		from  float64
		up    bool
		want  float64
	}{
		{unit.Thickness, unit.Metric, 10, true, 10.5},
		{unit.Thickness, unit.Metric, 10, false, 9.5},
		{unit.Thickness, unit.Metric, 9.53, true, 10},
		{unit.Thickness, unit.Inch, 9.525, true, 11.1125},
		{unit.Thickness, unit.Inch, 12.7, false, 11.1125},
		{unit.Current, unit.Metric, 32, true, 34},
		{unit.Current, unit.Metric, 32, false, 30},
		{unit.Length, unit.Metric, 0.3, true, 0.31},
		{unit.Length, unit.Metric, 12, false, 11}, // shown to 1 m
		{unit.Count, unit.Metric, 5, true, 6},
		{unit.Flow, unit.Metric, 240, true, 250},
		{unit.Count, unit.Metric, 16, true, 17},
		{unit.Length, unit.Metric, 10 * (1 - 1e-9), true, 11}, // shown as 10 m, whatever its last bits
	} {
		got := unit.Next(unit.Quantity{Value: c.from, Kind: c.kind}, c.style, c.up)
		if math.Abs(got.Value-c.want) > 1e-9 {
			t.Errorf("%v of kind %v, up %v: %v, want %v", c.from, c.kind, c.up, got.Value, c.want)
		}
	}
}
