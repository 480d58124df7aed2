package report

import (
	"math"
	"strings"
	"testing"

	"cutbrief/assess"
	"cutbrief/rules"
	"cutbrief/rules/metal"
	"cutbrief/rules/unit"

	"pgregory.net/rapid"
)

// marked is the mark that says a text, and whether there is one.
func marked(s *Speeds, says string) (SpeedMark, bool) {
	for _, m := range s.Marks {
		if strings.Contains(m.Says, says) {
			return m, true
		}
	}
	return SpeedMark{}, false
}

// The farm cuts 10 mm most days and 12 mm at most with the system rated for
// 12.7, clean to 18 and severing 24 mm. By hand, from the speeds at which a
// row's thicknesses are given (500, 250 and 125 mm/min) and the rule that below
// its rating a system melts no more metal a minute (v ∝ 1/t, which is flatter
// than the line from 12.7 to 18 mm: ln 2 / ln(18/12.7) = 1.99):
//
//	10 mm: 500 × 12.7/10 = 635, shown as 630 (down, in steps of 10)
//	12 mm: 500 × 12.7/12 = 529, shown as 520
//	18 mm: 250
//	24 mm: 125, shown as 120
//
// A free hand ends at 1500 mm/min, so the axis does too: 635/1500 = 0.4233.
func TestSpeedsOfTheFarm(t *testing.T) {
	s := Build(farm(t), steps(), Options{}).Speeds
	if s == nil || s.Title != "How fast Test 12.7 cuts mild steel" || s.Up != "mm/min" || s.Across != "mm thick" {
		t.Fatalf("%+v", s)
	}
	for _, c := range []struct {
		says, thickness, speed string
		at, share              float64
		yours                  bool
	}{
		{"most days", "10 mm", "630 mm/min", 10.0 / 24, 635.0 / 1500, true},
		{"thickest clean cut", "12 mm", "520 mm/min", 0.5, 500 * 12.7 / 12 / 1500, true},
		{"clean up to here", "18 mm", "250 mm/min", 0.75, 250.0 / 1500, false},
		{"severs up to here", "24 mm", "120 mm/min", 1, 125.0 / 1500, false},
	} {
		m, ok := marked(s, c.says)
		if !ok || m.Thickness != c.thickness || m.Speed != c.speed || m.Yours != c.yours || math.Abs(m.At-c.at) > 1e-9 || math.Abs(m.Share-c.share) > 1e-9 {
			t.Errorf("%s: %+v", c.says, m)
		}
	}
	if m, _ := marked(s, "most days"); m.Label != "most days, 10 mm: 630 mm/min" {
		t.Errorf("label %q", m.Label)
	}
	if s.CleanAt != 0.75 || s.Clean != "clean up to 18 mm" || s.Severed != "severs up to 24 mm" {
		t.Errorf("%v %q %q", s.CleanAt, s.Clean, s.Severed)
	}
	if last := s.UpTicks[len(s.UpTicks)-1]; last.Label != "1500" || last.At != 1 {
		t.Errorf("%+v", s.UpTicks)
	}
	for _, want := range []string{"full output, 50 A", "guided free hand, 1500 mm/min at most", "common practice, no source"} {
		if !strings.Contains(s.Rests, want) {
			t.Errorf("%q is not in %q", want, s.Rests)
		}
	}
}

// In inches 635 mm/min are 25 in/min (one inch is 25.4 mm exactly, NIST SP 811).
func TestSpeedsInInches(t *testing.T) {
	s := Build(farm(t), steps(), Options{Style: unit.Inch}).Speeds
	m, ok := marked(s, "most days")
	if !ok || m.Speed != "25 in/min" || s.Up != "in/min" || s.Across != "in thick" || strings.Contains(s.Rests, "mm/min") {
		t.Errorf("%+v %q", m, s.Rests)
	}
}

// One mark says both where they cut one thickness only.
func TestOneThicknessIsMarkedOnce(t *testing.T) {
	v := farm(t)
	say(t, v, rules.FactThickest, metal.MildSteel, "10 mm")
	s := Build(v, steps(), Options{}).Speeds
	if m, ok := marked(s, "most days, thickest clean cut"); !ok || !m.Yours {
		t.Errorf("%+v", s.Marks)
	}
}

// Nothing is drawn where no system is recommended, or nothing is known.
func TestNoSpeedsWithoutASystem(t *testing.T) {
	v := farm(t)
	say(t, v, rules.FactThickest, metal.MildSteel, "60 mm")
	if s := Build(v, steps(), Options{}).Speeds; s != nil {
		t.Errorf("%+v", s)
	}
	if b := Build(assess.New("x", v.Created), steps(), Options{}); b.Speeds != nil || b.Timeline != nil {
		t.Errorf("%+v %+v", b.Speeds, b.Timeline)
	}
}

// Whatever they cut, the line falls from left to right within its axes, the
// marks lie on it, in order and each at its own place.

func TestSpeedsLieOnTheirLine(t *testing.T) {
	offered := steps()
	rapid.Check(t, func(r *rapid.T) {
		v := farm(t)
		everyday := rapid.Float64Range(0.5, 20).Draw(r, "everyday")
		say(t, v, rules.FactEveryday, metal.MildSteel, unit.Show(millimetres(unit.Millimetre(everyday)), unit.Metric, unit.Nearest))
		say(t, v, rules.FactThickest, metal.MildSteel, unit.Show(millimetres(unit.Millimetre(everyday*rapid.Float64Range(1, 1.3).Draw(r, "more"))), unit.Metric, unit.Nearest))
		choose(t, v, assess.FactUnits, rapid.SampledFrom([]string{"mm", "in"}).Draw(r, "units"))
		s := Build(v, offered, Options{}).Speeds
		if s == nil {
			return
		}
		for i, p := range s.Line {
			if p.At < 0 || p.At > 1+1e-9 || p.Share < 0 || p.Share > 1+1e-9 || i > 0 && (p.At <= s.Line[i-1].At || p.Share > s.Line[i-1].Share+1e-9) {
				r.Fatalf("point %d of the line: %+v", i, p)
			}
		}
		for i, m := range s.Marks {
			if i > 0 && m.At-s.Marks[i-1].At < 1e-7 {
				r.Errorf("two marks at one place: %+v", s.Marks)
			}
			if onLine := between(s.Line, m.At); math.Abs(onLine-m.Share) > 0.02 {
				r.Errorf("%+v lies off the line, which is at %v", m, onLine)
			}
		}
	})
}

// between reads a line at a place.
func between(line []SpeedPoint, at float64) float64 {
	for i := 1; i < len(line); i++ {
		if a, b := line[i-1], line[i]; at <= b.At {
			return a.Share + (b.Share-a.Share)*(at-a.At)/(b.At-a.At)
		}
	}
	return line[len(line)-1].Share
}
