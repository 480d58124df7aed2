package size

import (
	"errors"
	"testing"

	"cutbrief/rules/unit"

	"pgregory.net/rapid"
)

// ampacityChecks: NEC Table 310.16, at the sections of its gauges.
func ampacityChecks(t *testing.T) []check {
	var list []check
	for _, row := range open(t, "electrical.csv").Where(t, "topic", "copper ampacity") {
		gauge := int(numbers(row["condition"])[0])
		section, ok := unit.AWG(gauge)
		if !ok {
			t.Fatal(row)
		}
		cautious, most, err := CordAmpacity(section)
		got, name := cautious, "copper ampacity at 60 °C, "
		if row["topic"] == "copper ampacity, 75 C column" {
			got, name = most, "copper ampacity at 75 °C, "
		}
		list = append(list, against(t, row, name+row["condition"], row["value"], float64(got), err, "A"))
	}
	return list
}

// By hand, from the table's rows for gauges 14 (2.081 mm²: 15 and 20 A) and 12
// (3.309 mm²: 20 and 25 A): 2.5 mm² lies 0.341 of the way, so 16.7 and 21.7 A.
// 0.75 mm² is 0.360 of gauge 14: 5.4 and 7.2 A.
func TestCordAmpacityBetweenAndBelowTheTable(t *testing.T) {
	for _, c := range []struct {
		section        unit.SquareMillimetre
		cautious, most unit.Ampere
	}{{2.5, 16.7, 21.7}, {0.75, 5.4, 7.2}, {50, 95, 115}} {
		cautious, most, err := CordAmpacity(c.section)
		if err != nil || !near(float64(cautious), float64(c.cautious), 0.05) || !near(float64(most), float64(c.most), 0.05) {
			t.Errorf("%g mm²: %.2f and %.2f A, %v; want %g and %g A", c.section, cautious, most, err, c.cautious, c.most)
		}
	}
	if _, _, err := CordAmpacity(0.5); !errors.Is(err, ErrRange) {
		t.Errorf("0.5 mm²: %v, want out of range", err)
	}
}

// A thicker cord never carries less.
func TestThickerCordCarriesMore(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := rapid.Float64Range(0.75, 60).Draw(t, "section")
		b := a + rapid.Float64Range(0, 10).Draw(t, "more")
		c1, m1, _ := CordAmpacity(unit.SquareMillimetre(a))
		c2, m2, _ := CordAmpacity(unit.SquareMillimetre(b))
		if c2 < c1 || m2 < m1 || c1 >= m1 {
			t.Fatalf("%g mm²: %g, %g A; %g mm²: %g, %g A", a, c1, m1, b, c2, m2)
		}
	})
}
