package assess

import (
	"math"
	"strings"
	"testing"

	"cutbrief/rules"
	"cutbrief/rules/metal"
	"cutbrief/rules/unit"
)

// stepOf is a step of the catalogue.
func stepOf(f rules.Fact, m metal.ID) Step {
	q, _ := Find(f)
	return Step{Question: q, Metal: m}
}

// What is said with doubt, as a range or in words. Millimetres worked by hand
// from 25.4 mm to the inch.
func TestReadAsSpoken(t *testing.T) {
	for _, c := range []struct {
		f     rules.Fact
		said  string
		mm    float64
		state State
		echo  string // a part of it
	}{
		{rules.FactEveryday, "about 6", 6, Assumed, "about 6 → 6 mm, kept as assumed"},
		{rules.FactEveryday, "ca. 6 mm", 6, Assumed, "ca. 6 mm → 6 mm, kept as assumed"},
		{rules.FactEveryday, "ca 6", 6, Assumed, "kept as assumed"},
		{rules.FactEveryday, "~6", 6, Assumed, "kept as assumed"},
		{rules.FactEveryday, "6?", 6, Assumed, "6? → 6 mm, kept as assumed"},
		{rules.FactEveryday, "6ish", 6, Assumed, "kept as assumed"},
		{rules.FactEveryday, "Roughly half an inch or so", 12.7, Assumed, "12.7 mm, kept as assumed"},
		{rules.FactEveryday, "half inch", 12.7, Told, "half inch = 12.7 mm"},
		{rules.FactEveryday, "three eighths", 9.525, Told, "9.5 mm"},
		{rules.FactEveryday, "an inch and a quarter", 31.75, Told, "31.8 mm"},
		{rules.FactEveryday, "12,5", 12.5, Told, ""},
		{rules.FactThickest, "6 to 10", 10, Told, "6 to 10 → 10 mm, the larger"},
		{rules.FactThickest, "6-10 mm", 10, Told, "the larger"},
		{rules.FactThickest, "6 – 10 mm", 10, Told, "the larger"},
		{rules.FactThickest, "10 to 6 mm", 10, Told, "the larger"},
		{rules.FactThickest, "6 mm to 10", 10, Told, "the larger"},
		{rules.FactThickest, "between 6 and 10 mm", 10, Told, "the larger"},
		{rules.FactThickest, "1/4 to 3/8 in", 9.525, Told, "the larger"},
		{rules.FactThickest, "quarter to half an inch", 12.7, Told, "the larger"},
		{rules.FactThickest, "16 to 14 ga", 1.8979, Told, "the larger"}, // msg, 14: 3.125/41.82 × 25.4
		{rules.FactThickest, "about 6 to 10", 10, Assumed, "the larger, kept as assumed"},
		{rules.FactThickest, "up to 10 mm", 10, Told, "the larger"},
		{rules.FactThickest, "1-1/4 in", 31.75, Told, ""}, // one figure, no range
		{rules.FactRarest, "20 or 25", 25, Told, "the larger"},
	} {
		v := said(t, map[rules.Fact]string{rules.FactMetals: "mild-steel"})
		s := stepOf(c.f, metal.MildSteel)
		a, echo, err := v.Read(s, c.said)
		if err != nil || a.State != c.state || a.Said != c.said || !strings.Contains(echo.String(), c.echo) {
			t.Errorf("%s %q: %+v, %q, %v; want state %s, echo %q", c.f, c.said, a, echo, err, c.state, c.echo)
			continue
		}
		if m, err := understand(s, a, unit.Inch); err != nil || math.Abs(m.reading.Quantity.Value-c.mm) > 5e-4 {
			t.Errorf("%s %q, kept as %+v, reads %v again, %v; want %v mm", c.f, c.said, a, m.reading, err, c.mm)
		}
	}
}

// A range for what is asked in one figure asks which, and what is no figure says
// what would be.
func TestReadAsSpokenAsksBack(t *testing.T) {
	for _, c := range []struct {
		f          rules.Fact
		said, want string
	}{
		{rules.FactEveryday, "6 to 10", `"6 to 10" is two figures; give the one of most days, 6 mm or 10 mm`},
		{rules.FactEveryday, "6-10 mm", "give the one of most days, 6 mm or 10 mm"},
		{rules.FactBreaker, "16 or 20 A", "give the one to count on, 16 A or 20 A"},
		{rules.FactThickest, "half a thumb", `"half a thumb" is not a thickness; give 12 mm or 1/2 in`},
		{rules.FactThickest, "6 to 3/8", "is not a thickness"}, // 6 of what?
		{rules.FactThickest, "6 mm to 1/2", "is not"},          // half of what? By itself it is 12.7 mm
		{rules.FactThickest, "1 cm to half", "is not"},
		{rules.FactThickest, "about", "is not a thickness"},
		{rules.FactThickest, "up to", "is not a thickness"},
		{rules.FactThickest, "about half a thumb", "is not a thickness"},
	} {
		v := said(t, map[rules.Fact]string{rules.FactMetals: "mild-steel"})
		m := metal.MildSteel
		if c.f == rules.FactBreaker {
			m = ""
		}
		if a, _, err := v.Read(stepOf(c.f, m), c.said); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s %q: %+v, %v; want %q", c.f, c.said, a, err, c.want)
		}
	}
}

// Whatever is typed, an answer that is taken means the same when it is read again
// from the file, in a visit in either unit.
func FuzzSpoken(f *testing.F) {
	for _, text := range []string{"about 6", "6-10 mm", "half inch", "1/4 to 3/8", "6?", "up to 14 ga", "between 1 and 2 in", "12,5", "~ .5", "6 to 3/8"} {
		f.Add(text, true)
	}
	f.Fuzz(func(t *testing.T, text string, thickest bool) {
		s := stepOf(rules.FactEveryday, metal.MildSteel)
		if thickest {
			s = stepOf(rules.FactThickest, metal.MildSteel)
		}
		a, echo, err := (&Visit{}).Read(s, text)
		if err != nil {
			return
		}
		if a.State == Unknown {
			return
		}
		first, err1 := understand(s, a, unit.Metric)
		again, err2 := understand(s, a, unit.Inch)
		if err1 != nil || err2 != nil || first.reading.Quantity != again.reading.Quantity {
			t.Fatalf("%q, kept as %+v, reads %v and %v (%v, %v)", text, a, first.reading, again.reading, err1, err2)
		}
		if first.larger && echo.IsEmpty() || (a.State == Assumed) != first.guess {
			t.Fatalf("%q is %+v, echo %q", text, a, echo)
		}
	})
}
