package report

import (
	"math"
	"testing"

	"cutbrief/rules/unit"

	"pgregory.net/rapid"
)

// By hand, an inch being 25.4 mm exactly (NIST SP 811): 16 mm are 10.08
// sixteenths, 12 mm are 15.1 thirty-seconds, 10 mm are 12.6 of them, 20.6375 mm
// are 52/64.
func TestThicknessesAsARepSaysThem(t *testing.T) {
	b := &builder{style: unit.Inch}
	for _, c := range []struct {
		mm              unit.Millimetre
		up, down, about string
	}{
		{16, "11/16 in", "5/8 in", "5/8 in"},
		{12, "1/2 in", "15/32 in", "15/32 in"},
		{10, "13/32 in", "3/8 in", "13/32 in"},
		{12.7, "1/2 in", "1/2 in", "1/2 in"},
		{9.525, "3/8 in", "3/8 in", "3/8 in"},
		{33, "1 5/16 in", "1 1/4 in", "1 5/16 in"},
		{25.4 * 45 / 64, "3/4 in", "11/16 in", "45/64 in"},
		{1.5, "0.060 in", "0.059 in", "0.059 in"},
	} {
		if got := [3]string{b.print(b.needed(millimetres(c.mm))), b.print(b.given(millimetres(c.mm))), b.print(b.told(millimetres(c.mm)))}; got != [3]string{c.up, c.down, c.about} {
			t.Errorf("%v mm: %q, want %q %q %q", c.mm, got, c.up, c.down, c.about)
		}
	}
}

// A need is never shown smaller nor a capability larger than it is, no further
// off than one step, and thicker is never shown thinner.
func TestSixteenthsAreOnTheSafeSide(t *testing.T) {
	mm := func(v float64, r unit.Round) float64 {
		q, _ := inchFraction(millimetres(unit.Millimetre(v)), r)
		return q.Value
	}
	rapid.Check(t, func(t *rapid.T) {
		v, w := rapid.Float64Range(6.35, 150).Draw(t, "a"), rapid.Float64Range(6.35, 150).Draw(t, "b")
		const step, slack = 25.4 / 16, 1e-4
		if up, down := mm(v, unit.Up), mm(v, unit.Down); up < v-slack || down > v+slack || up > v+step || down < v-step || math.Abs(mm(v, unit.Nearest)-v) > step/2+slack {
			t.Errorf("%v mm: %v and %v", v, up, down)
		}
		for _, r := range []unit.Round{unit.Up, unit.Down, unit.Nearest} {
			if r != unit.Nearest && (v-w)*(mm(v, r)-mm(w, r)) < -slack {
				t.Errorf("%v: %v shown as %v, %v as %v", r, v, mm(v, r), w, mm(w, r))
			}
		}
	})
}
