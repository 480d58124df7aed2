package report

import (
	"math"
	"strings"
	"testing"

	"cutbrief/assess"
	"cutbrief/rules"
	"cutbrief/rules/cost"
	"cutbrief/rules/metal"
)

// gas adds what an account against a gas flame needs.
func gas() *cost.PriceList {
	p := all()
	p[cost.ItemOxygen], p[cost.ItemAcetylene] = 6, 22
	return list(p)
}

// The lines by thickness are there where mild steel is cut with a flame today,
// and sums are shown at all; nowhere else.
func TestCurvesOnlyAgainstAFlameInMildSteel(t *testing.T) {
	flame := Build(farm(t), steps(), Options{Prices: gas()}).Cost
	if flame == nil || flame.Curves == nil {
		t.Fatalf("no lines against a gas flame: %+v", flame)
	}
	if out := Build(cutOutside(t), steps(), Options{Prices: gas()}).Cost; out == nil || out.Curves != nil {
		t.Errorf("lines against sending out: %+v", out)
	}
	if invented := Build(farm(t), steps(), Options{}).Cost; invented == nil || invented.Curves != nil {
		t.Errorf("lines from prices nobody stands behind: %+v", invented)
	}
	v := farm(t)
	choose(t, v, rules.FactMetals, string(metal.Stainless))
	say(t, v, rules.FactEveryday, metal.Stainless, "6 mm")
	say(t, v, rules.FactThickest, metal.Stainless, "8 mm")
	if c := Build(v, steps(), Options{Prices: gas()}).Cost; c != nil && c.Curves != nil {
		t.Errorf("lines for stainless: %+v", c.Curves)
	}
}

// What is drawn lies on its axes and rises in thickness; left of where
// the lines meet the system is the cheaper one, right of it oxy-fuel, and
// where they meet both cost the same, as closely as a place that is known to a
// quarter of a millimetre allows: three hundredths of the axis.
func TestCurvesCrossWhereTheySay(t *testing.T) {
	for _, units := range []string{"mm", "in"} {
		v := farm(t)
		choose(t, v, assess.FactUnits, units)
		c := Build(v, steps(), Options{Prices: gas()}).Cost.Curves
		if c.Crossing.From == nil || c.Crossing.Likely == nil || *c.Crossing.From > *c.Crossing.Likely {
			t.Fatalf("%s: %+v", units, c.Crossing)
		}
		before := 0.0
		for _, p := range c.Points {
			if p.At <= before || p.At > 1 || p.PlasmaShare < 0 || p.PlasmaShare > 1 || p.FlameShare < 0 || p.FlameShare > 1 {
				t.Errorf("%s: off the axes: %+v", units, p)
			}
			before = p.At
			dearer := p.PlasmaShare - p.FlameShare
			switch gap := p.At - *c.Crossing.Likely; {
			case math.Abs(gap) < 1e-9 && math.Abs(dearer) > 0.03:
				t.Errorf("%s: they do not meet: %+v", units, p)
			case gap < -1e-9 && dearer > 0, gap > 1e-9 && dearer < 0:
				t.Errorf("%s: on the wrong side: %+v", units, p)
			}
		}
	}
}

// The axes are in the visit's own units, and what they cut most days is marked:
// 10 mm, which is 13/32 in to the nearest 32nd (10/25.4 × 32 = 12.6). A foot is
// 0.3048 m (NIST SP 811, appendix B), so its money is that share of a metre's.
func TestCurvesSpeakTheVisitsUnits(t *testing.T) {
	v := farm(t)
	o := Options{Prices: gas()}
	metric := Build(v, steps(), o).Cost.Curves
	if metric.Up != "EUR a metre" || metric.Across != "mm thick" || metric.Everyday == nil || metric.Everyday.Label != "yours, 10 mm" || metric.Ticks[1].Label != "5" {
		t.Errorf("%+v %+v", metric, metric.Everyday)
	}
	choose(t, v, assess.FactUnits, "in")
	inch := Build(v, steps(), o).Cost.Curves
	if inch.Up != "EUR a foot" || inch.Across != "in thick" || inch.Everyday.Label != "yours, 13/32 in" || inch.Ticks[1].Label != "1/4" {
		t.Errorf("%+v %+v", inch, inch.Everyday)
	}
	if strings.Contains(inch.Crossing.Label, "mm") || math.Abs(inch.Everyday.At-metric.Everyday.At) > 1e-9 {
		t.Errorf("%+v", inch)
	}
	for i, p := range metric.Points {
		q := inch.Points[i]
		if p.Plasma.Likely != q.Plasma.Likely || p.Thickness == q.Thickness {
			t.Errorf("%+v %+v", p, q)
		}
	}
}

// Ticks at 1, 2 or 5 of a power of ten, worked by hand: half of the longest is
// the largest step, so that there are three ticks at least.
func TestEvenSteps(t *testing.T) {
	for most, want := range map[float64]float64{7.38: 2, 2.25: 1, 10: 5, 9.9: 2, 0.5: 0.2, 43: 20, 0: 1} {
		if got := evenStep(most); math.Abs(got-want) > 1e-12 {
			t.Errorf("%v: %v, want %v", most, got, want)
		}
	}
	if got := evenStep(math.NaN()); got != 1 {
		t.Errorf("%v", got)
	}
}
