package unit_test

import (
	"math"
	"testing"

	"cutbrief/rules/unit"
)

// By hand: the value, the step of its kind, and the side asked for.
func TestShow(t *testing.T) {
	for _, c := range []struct {
		value float64
		kind  unit.Kind
		style unit.Style
		round unit.Round
		want  string
	}{
		{9.5, unit.Thickness, unit.Metric, unit.Nearest, "9.5 mm"},
		{12, unit.Thickness, unit.Metric, unit.Up, "12 mm"},
		{12.7, unit.Thickness, unit.Metric, unit.Down, "12.7 mm"},
		{9.525, unit.Thickness, unit.Metric, unit.Nearest, "9.5 mm"},
		{9.525, unit.Thickness, unit.Metric, unit.Up, "9.6 mm"},
		{6.35, unit.Thickness, unit.Metric, unit.Nearest, "6.4 mm"},
		{0.607, unit.Thickness, unit.Metric, unit.Nearest, "0.61 mm"}, // 24 ga steel
		{1.898, unit.Thickness, unit.Inch, unit.Nearest, "0.075 in"},  // 14 ga: 0.0747; 5/64 is 4.6 % off
		{1.898, unit.Thickness, unit.Inch, unit.Down, "0.074 in"},
		{1.5875, unit.Thickness, unit.Inch, unit.Nearest, "1/16 in"},
		{6, unit.Thickness, unit.Inch, unit.Nearest, "15/64 in"}, // 0.2362; never 1/4
		{16, unit.Thickness, unit.Inch, unit.Nearest, "5/8 in"},  // 0.6299, 0.8 % off
		{16, unit.Thickness, unit.Inch, unit.Up, "41/64 in"},     // 0.6406, next 1/64 up
		{16, unit.Thickness, unit.Inch, unit.Down, "5/8 in"},
		{25.4, unit.Thickness, unit.Inch, unit.Up, "1 in"},
		{40, unit.Thickness, unit.Inch, unit.Up, "1 37/64 in"}, // 1.5748; 1.5781 is 0.2 % up
		{0, unit.Thickness, unit.Inch, unit.Nearest, "0 in"},
		{-9.525, unit.Thickness, unit.Inch, unit.Up, "-3/8 in"},
		{-16, unit.Thickness, unit.Inch, unit.Down, "-41/64 in"}, // further from zero
		{10, unit.Thickness, unit.Inch, unit.Up, "13/32 in"},     // 0.3937; 26/64 is the next 1/64
		{25.5, unit.Thickness, unit.Inch, unit.Up, "1 1/32 in"},  // 1.0039; 1 1/64 is 1.2 % up
		{-0.2, unit.Temperature, unit.Metric, unit.Nearest, "0 °C"},
		{-1234, unit.Price, unit.Metric, unit.Nearest, "-1,234"},
		{15.24, unit.Length, unit.Inch, unit.Nearest, "50 ft"},
		{0.35, unit.Length, unit.Metric, unit.Nearest, "0.35 m"},
		{15.4, unit.Length, unit.Metric, unit.Up, "16 m"},
		{508, unit.Speed, unit.Inch, unit.Down, "20 in/min"},
		{508, unit.Speed, unit.Metric, unit.Down, "500 mm/min"},
		{508, unit.Speed, unit.Metric, unit.Nearest, "510 mm/min"},
		{1234, unit.Speed, unit.Metric, unit.Down, "1200 mm/min"},
		{45, unit.Current, unit.Metric, unit.Up, "45 A"},
		{193.6, unit.Current, unit.Metric, unit.Down, "193 A"},
		{35, unit.Share, unit.Inch, unit.Nearest, "35 %"},
		{22.5, unit.Angle, unit.Metric, unit.Nearest, "22.5°"},
		{189.7228, unit.Flow, unit.Inch, unit.Up, "6.7 cfm"},
		{189.7228, unit.Flow, unit.Metric, unit.Up, "190 l/min"},
		{6.205281, unit.Pressure, unit.Inch, unit.Up, "90 psi"},
		{6.205281, unit.Pressure, unit.Metric, unit.Up, "6.3 bar"},
		{15, unit.Weight, unit.Inch, unit.Nearest, "33 lb"}, // 33.07
		{8.31, unit.ApparentPower, unit.Metric, unit.Up, "8.4 kVA"},
		{45, unit.Time, unit.Metric, unit.Nearest, "45 s"},
		{150, unit.Time, unit.Metric, unit.Nearest, "2.5 min"},
		{12500, unit.Price, unit.Metric, unit.Nearest, "12,500"},
		{0.356, unit.Price, unit.Metric, unit.Up, "0.36"},
		{12, unit.Count, unit.Metric, unit.Nearest, "12"},
		{-10.4, unit.Temperature, unit.Metric, unit.Nearest, "-10 °C"},
		{4, unit.Section, unit.Metric, unit.Nearest, "4 mm²"},
		{5.261, unit.Section, unit.Inch, unit.Nearest, "AWG 10"}, // NEC Chapter 9 Table 8
		{6, unit.Section, unit.Inch, unit.Up, "AWG 8"},           // 8.37 mm²
		{6, unit.Section, unit.Inch, unit.Down, "AWG 10"},
		{6, unit.Section, unit.Inch, unit.Nearest, "6 mm²"},
		{60, unit.Section, unit.Inch, unit.Down, "AWG 1/0"},  // 53.5 mm²
		{150, unit.Section, unit.Inch, unit.Down, "150 mm²"}, // above AWG 4/0, 107 mm²
		{0.5, unit.Section, unit.Inch, unit.Up, "0.5 mm²"},   // below AWG 18, 0.82 mm²
		{math.NaN(), unit.Current, unit.Metric, unit.Up, "not known"},
		{math.Inf(1), unit.Current, unit.Metric, unit.Up, "not known"},
		{1, unit.Kind(99), unit.Metric, unit.Up, "not known"},
	} {
		if got := unit.Show(unit.Quantity{Value: c.value, Kind: c.kind}, c.style, c.round); got != c.want {
			t.Errorf("Show(%v %d, %s, %d) = %q, want %q", c.value, c.kind, c.style, c.round, got, c.want)
		}
	}
}
