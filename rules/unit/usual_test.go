package unit

import (
	"math"
	"strings"
	"testing"
)

// What is read at little cost is read as with care: a second space between figures
// and unit takes the long way.
func TestUsualReadsAsWithCare(t *testing.T) {
	taken := 0
	for i := range kinds {
		kind := Kind(i)
		for _, m := range kinds[i].measures {
			names := append([]string{m.name}, m.spelled...)
			for _, name := range names {
				for _, number := range []string{"0", "7", "007", "12", "12.5", ".5", "5.", "0.25", "3.175", "12.000", "1.2.3", "100000000000", "99999999999999999999", "0.0001"} {
					for _, style := range []Style{Metric, Inch} {
						r := reader{kind: kind, row: kind.row(), style: style}
						if _, ok := r.usual(number + " " + name); ok {
							taken++
						}
						got, err1 := Read(number+" "+name, kind, style, NoGauge)
						want, err2 := Read(number+"  "+name, kind, style, NoGauge)
						if got != want || (err1 == nil) != (err2 == nil) {
							t.Errorf("%s %s: got %v, %v; with care %v, %v", number, name, got, err1, want, err2)
						}
					}
				}
			}
		}
	}
	if taken == 0 {
		t.Error("nothing is read at little cost")
	}
}

// A figure told in any unit and shown in it again is the same.
func TestHeldAndShownAreInverse(t *testing.T) {
	for i := range kinds {
		for _, m := range kinds[i].measures {
			for _, x := range []float64{-40, 0, 0.25, 12, 98765} {
				if got := m.shown(m.held(x)); math.Abs(got-x) > 1e-9*(1+math.Abs(x)) {
					t.Errorf("%v %s comes back as %v", x, m.name, got)
				}
			}
		}
	}
}

// Plain characters and single spaces, up to 64 of them, are tidy; all else is looked
// at with care.
func TestIsTidy(t *testing.T) {
	for text, want := range map[string]bool{
		"12 mm": true, "1-1/4 in": true, "~": true, strings.Repeat("1", 64): true, strings.Repeat("1", 65): false,
		"": false, " 12": false, "12 ": false, "12  mm": false, "1- 1/4": false, "50'": false, "½": false, "12\tmm": false,
	} {
		if isTidy(text) != want {
			t.Errorf("%q: tidy is %t", text, !want)
		}
	}
}
