package unit_test

import (
	"fmt"
	"math"
	"strings"
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
		{math.Inf(-1), unit.Current, unit.Metric, unit.Up, "not known"},
		{1, unit.Kind(99), unit.Metric, unit.Up, "not known"},
		{1, unit.Count + 1, unit.Metric, unit.Up, "not known"},
		{10.47, unit.Current, unit.Metric, unit.Nearest, "10 A"},
		{-10.47, unit.Temperature, unit.Metric, unit.Nearest, "-10 °C"},
		{-10.5, unit.Temperature, unit.Metric, unit.Nearest, "-11 °C"}, // a half is rounded away from zero
		{0.5, unit.Count, unit.Metric, unit.Nearest, "1"},
		{1234, unit.Count, unit.Metric, unit.Nearest, "1,234"},
		{1234567, unit.Price, unit.Metric, unit.Nearest, "1,234,567"},
		{-123, unit.Price, unit.Metric, unit.Nearest, "-123"},
		{119, unit.Time, unit.Metric, unit.Nearest, "119 s"},
		{120, unit.Time, unit.Metric, unit.Nearest, "2 min"},
		{130, unit.Time, unit.Metric, unit.Up, "2.2 min"},            // 2.1667
		{126, unit.Time, unit.Metric, unit.Up, "2.1 min"},            //
		{6.6, unit.Thickness, unit.Inch, unit.Nearest, "17/64 in"},   // 0.2598; a sheet ends at 0.25
		{3.208, unit.Thickness, unit.Inch, unit.Nearest, "0.126 in"}, // 0.1263; 1/8 is 1.03 % off
		{3.2055, unit.Thickness, unit.Inch, unit.Nearest, "1/8 in"},  // 0.1262, 0.95 % off
		{2557.78, unit.Thickness, unit.Inch, unit.Down, "100 in"},    // 100.7: whole inches are coarser than halves
	} {
		if got := unit.Show(unit.Quantity{Value: c.value, Kind: c.kind}, c.style, c.round); got != c.want {
			t.Errorf("Show(%v %d, %s, %d) = %q, want %q", c.value, c.kind, c.style, c.round, got, c.want)
		}
	}
}

// The steps of the table at Show, at each of its bounds and beside it: up to the next
// step, and nothing where a figure is on one.
func TestShowSteps(t *testing.T) {
	for _, c := range []struct {
		kind unit.Kind
		unit string
		up   map[float64]string
	}{
		{unit.Current, "A", map[float64]string{9.33: "9.4", 9.3: "9.3", 10: "10", 10.000005: "11", 10.4: "11"}},
		{unit.Length, "m", map[float64]string{0.987: "0.99", 0.98: "0.98", 1.04: "1.1", 9.33: "9.4", 9.3: "9.3", 10.4: "11"}},
		{unit.Thickness, "mm", map[float64]string{0.987: "0.99", 1.04: "1.1", 12.34: "12.4"}},
		{unit.Flow, "l/min", map[float64]string{9.33: "9.4", 9.3: "9.3", 10.4: "11", 98.2: "99", 100.5: "105", 101: "105"}},
		{unit.Speed, "mm/min", map[float64]string{9.33: "9.4", 9.3: "9.3", 10.4: "11", 98.2: "99", 100.5: "110", 981: "990", 1000.5: "1050"}},
		{unit.Power, "kW", map[float64]string{0.987: "0.99", 0.98: "0.98", 0.97: "0.97", 1.04: "1.1", 99.33: "99.4", 99.3: "99.3", 100.4: "101", 102.4: "103"}},
		{unit.Price, "", map[float64]string{99.333: "99.34", 99.33: "99.33", 100.4: "101", 102.4: "103"}},
	} {
		for v, want := range c.up {
			want = strings.TrimSpace(want + " " + c.unit)
			if got := unit.Show(unit.Quantity{Value: v, Kind: c.kind}, unit.Metric, unit.Up); got != want {
				t.Errorf("%v of kind %d is shown as %q, want %q", v, c.kind, got, want)
			}
		}
	}
}

// Each size of wire sold is shown by its name, from the section that NEC Chapter 9
// Table 8 prints in mm² (from memory of that table), and from its own to the last
// bit whatever the side. A section 1.2 % away is no size, though it be thin.
func TestShowWires(t *testing.T) {
	show := func(v float64, r unit.Round) string {
		return unit.Show(unit.Quantity{Value: v, Kind: unit.Section}, unit.Inch, r)
	}
	for n, printed := range map[int]float64{18: 0.823, 16: 1.31, 14: 2.08, 12: 3.31, 10: 5.261, 8: 8.367, 6: 13.30,
		4: 21.15, 3: 26.67, 2: 33.62, 1: 42.41, 0: 53.49, -1: 67.43, -2: 85.01, -3: 107.2} {
		want := fmt.Sprint("AWG ", n)
		if n <= 0 {
			want = fmt.Sprintf("AWG %d/0", 1-n)
		}
		if got := show(printed, unit.Nearest); got != want {
			t.Errorf("%v mm² is shown as %q, want %q", printed, got, want)
		}
		area, ok := unit.AWG(n)
		for r, beside := range map[unit.Round]float64{unit.Nearest: 1, unit.Up: 1 + 5e-7, unit.Down: 1 - 5e-7} {
			if got := show(float64(area)*beside, r); !ok || got != want || show(float64(area), r) != want {
				t.Errorf("%v mm² is shown as %q, want %q", area, got, want)
			}
		}
	}
	if got := show(0.833, unit.Nearest); got != "0.83 mm²" {
		t.Errorf("0.833 mm² is shown as %q", got)
	}
}
