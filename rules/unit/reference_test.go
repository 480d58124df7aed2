package unit_test

import (
	"math"
	"os"
	"strings"
	"testing"

	"cutbrief/rules/cite/reference"
	"cutbrief/rules/unit"
)

// table reads a table of outside values; every row says where it is from.
func table(t *testing.T, name string) reference.Table {
	t.Helper()
	return reference.Read(t, os.DirFS("../../testdata/reference"), name)
}

func read(t *testing.T, text string, k unit.Kind, sheet unit.Sheet) float64 {
	t.Helper()
	r, err := unit.Read(text, k, unit.Metric, sheet)
	if err != nil {
		t.Fatalf("Read(%q): %v", text, err)
	}
	return r.Quantity.Value
}

// Each listed gauge agrees with its defining rule to the last digit the table
// prints: four decimals of an inch at least, and in mm as printed.
func TestGaugeTables(t *testing.T) {
	sheets := map[string]unit.Sheet{
		"MSG carbon steel sheet":                                unit.SteelGauge,
		"galvanised sheet gauge":                                unit.GalvanGauge,
		"US Standard Gauge (stainless sheet by trade use)":      unit.StainGauge,
		"AWG / Brown & Sharpe (aluminium, brass, copper sheet)": unit.AluminumGauge,
	}
	checked := 0
	for _, row := range table(t, "sheet_gauge.csv") {
		sheet, ok := sheets[row["system"]]
		if !ok || row["note"] == "not a listed size; rule extended" {
			continue
		}
		got := read(t, row["gauge"]+" ga", unit.Thickness, sheet)
		// 0.6 of the last digit: the copies round a printed 5 either way.
		if want := reference.Number(t, row["thickness_in"]); math.Abs(got/25.4-want) > 0.6e-4 {
			t.Errorf("%s %s ga = %.5f in, want %v", sheet, row["gauge"], got/25.4, want)
		}
		if want := reference.Number(t, row["thickness_mm"]); math.Abs(got-want) > 0.6e-3 {
			t.Errorf("%s %s ga = %.5f mm, want %v", sheet, row["gauge"], got, want)
		}
		checked++
	}
	if checked < 80 {
		t.Errorf("only %d gauges checked", checked)
	}
}

// The thick end of the manufacturers' standard gauge in inches, which the table does
// not hold (from memory of public tables).
func TestThickSteelGauges(t *testing.T) {
	for text, want := range map[string]float64{"3 ga": 0.2391, "4 ga": 0.2242, "5 ga": 0.2092, "6 ga": 0.1943} {
		if got := read(t, text, unit.Thickness, unit.SteelGauge) / 25.4; math.Abs(got-want) > 0.6e-4 {
			t.Errorf("%s = %.5f in, want %v", text, got, want)
		}
	}
}

// The table of conversions holds a few gauges too, printed from inches to four
// decimals: 0.00005 in is 0.0013 mm.
func TestSteelGaugeInConversions(t *testing.T) {
	for _, row := range table(t, "units.csv") {
		if row["quantity"] != "gauge sheet steel (MSG)" {
			continue
		}
		text, _, _ := strings.Cut(row["from"], " carbon")
		got := read(t, text, unit.Thickness, unit.SteelGauge)
		if want := reference.Number(t, row["factor"]); math.Abs(got-want) > 0.0013 {
			t.Errorf("%s = %.4f mm, want %v", text, got, want)
		}
	}
}

// Outside its table a gauge is refused, not extended.
func TestGaugeOutsideTable(t *testing.T) {
	for _, c := range []struct {
		text  string
		sheet unit.Sheet
	}{
		{"2 ga", unit.SteelGauge}, {"29 ga", unit.SteelGauge}, {"7 ga", unit.GalvanGauge},
		{"29 ga", unit.GalvanGauge}, {"6 ga", unit.StainGauge}, {"29 ga", unit.StainGauge},
		{"6 ga", unit.AluminumGauge}, {"29 ga", unit.AluminumGauge}, {"0 ga", unit.SteelGauge},
		{"999999 ga", unit.SteelGauge}, {"14.5 ga", unit.SteelGauge}, {"14 ga", unit.NoGauge}, {"14 ga", "tin"},
	} {
		if r, err := unit.Read(c.text, unit.Thickness, unit.Metric, c.sheet); err == nil {
			t.Errorf("%s in %q = %v, want an error", c.text, c.sheet, r)
		}
	}
}

// spelling maps what a table calls a unit to what is typed.
func spelling(name string) string {
	name, _, _ = strings.Cut(name, " (")
	switch name {
	case "metric hp":
		return "PS"
	case "mil":
		return "thou"
	}
	return name
}

// Every conversion agrees with the table to the digits it prints: the ratio of
// one of each unit, both read.
func TestConversions(t *testing.T) {
	kinds := map[string]unit.Kind{
		"volume": unit.Volume, "flow": unit.Flow, "speed": unit.Speed,
		"mass": unit.Weight, "pressure": unit.Pressure, "power": unit.Power,
	}
	for _, row := range table(t, "units.csv") {
		k, ok := kinds[row["quantity"]]
		if row["quantity"] == "length" {
			k, ok = unit.Thickness, true
			if row["from"] == "ft" {
				k = unit.Length
			}
		}
		if !ok {
			continue
		}
		got := read(t, "1 "+spelling(row["from"]), k, "") / read(t, "1 "+spelling(row["to"]), k, "")
		want := reference.Number(t, row["factor"])
		if math.Abs(got/want-1) > 1e-11 {
			t.Errorf("1 %s = %.15g %s, want %v", row["from"], got, row["to"], want)
		}
	}
}

// Inch fractions are exact: the very number the table prints.
func TestInchFractions(t *testing.T) {
	for _, row := range table(t, "units.csv") {
		if row["quantity"] != "inch fraction" {
			continue
		}
		want := reference.Number(t, row["factor"])
		if got := read(t, row["from"], unit.Thickness, ""); got != want {
			t.Errorf("%s = %.17g mm, want %v", row["from"], got, want)
		}
		for _, r := range []unit.Round{unit.Nearest, unit.Up, unit.Down} {
			if got := unit.Show(unit.Quantity{Value: want, Kind: unit.Thickness}, unit.Inch, r); got != row["from"] {
				t.Errorf("%v mm shown as %q, want %q", want, got, row["from"])
			}
		}
	}
}

// Sections of NEC Chapter 9 Table 8, mm² column, to the digits printed (from
// memory of that table).
func TestWireSections(t *testing.T) {
	for text, want := range map[string]float64{
		"AWG 18": 0.823, "#14": 2.08, "awg12": 3.31, "10 AWG": 5.261, "AWG 8": 8.367, "AWG 6": 13.30,
		"AWG 4": 21.15, "2 awg": 33.62, "1/0 AWG": 53.49, "AWG 4/0": 107.2, "2/0": 67.43, "AWG 30": 0.05093, // π/4 · 0.25465²
	} {
		if got := read(t, text, unit.Section, ""); math.Abs(got/want-1) > 0.001 {
			t.Errorf("%s = %.4f mm², want %v", text, got, want)
		}
	}
	for _, n := range []int{-4, 31} {
		if got, ok := unit.AWG(n); ok || got != 0 {
			t.Errorf("a wire of number %d has %v mm²", n, got)
		}
	}
}

// Fixed points of the two temperature scales: ice, boiling water, and where
// they cross. Textbook.
func TestTemperature(t *testing.T) {
	for text, want := range map[string]float64{"32 °F": 0, "212 F": 100, "-40 °F": -40, "20 °C": 20, "-10": -10, "-273.15 °C": -273.15} {
		if got := read(t, text, unit.Temperature, ""); math.Abs(got-want) > 1e-9 {
			t.Errorf("%s = %v °C, want %v", text, got, want)
		}
	}
}
