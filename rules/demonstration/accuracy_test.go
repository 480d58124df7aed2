package demonstration

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"cutbrief/rules/metal"
	"cutbrief/rules/size"
	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

func near(a, b float64) bool { return math.Abs(a-b) < 1e-6 }

// trackRow is invented: 6 mm is cut at 500 · 12 / 6 = 1000 mm/min, 300 mm of it
// in 18 s.
var trackRow = system.System{ID: "x", Rated: 12, CleanMax: 16, Severance: 20, OutputMin: 20, OutputMax: 45}

// sixAt is 300 mm of 6 mm mild steel cut at a speed in mm/min.
func sixAt(visit string, v float64) Timed {
	return Timed{Visit: visit, Metal: metal.MildSteel, Thickness: unit.Known(unit.Millimetre(6)), Output: unit.Known(unit.Ampere(45)),
		Length: unit.Known(unit.Millimetre(300)), Took: unit.Second(300 / v * 60), Predicted: 18}
}

// By hand: 780 is the middle of five speeds, 22 % below 1000; the second and
// fourth are the quartiles, 25 % and 20 % below. 6 mm · 780 / 500 = 9.36 mm.
func TestFollowByHand(t *testing.T) {
	cuts := []Timed{sixAt("a", 800), sixAt("a", 700), sixAt("b", 1000), sixAt("c", 780), sixAt("c", 750)}
	got := AccuracyOf(cuts, &trackRow)
	if e := got.Row; e != got.All || e.Cuts != 5 || e.Visits != 3 || !near(e.Median, -0.22) || !near(e.Low, -0.25) || !near(e.High, -0.20) {
		t.Errorf("%+v", got)
	}
	if got.Off != Slow || !near(float64(got.Rated.Or(0)), 9.36) {
		t.Errorf("%s, rated %v", got.Off, got.Rated)
	}
	// Of four there is the full range and no conclusion: the median is between 750
	// and 780.
	got = AccuracyOf(append(cuts[1:2:2], cuts[0], cuts[3], cuts[4]), &trackRow)
	if e := got.All; e.Cuts != 4 || !near(e.Median, -0.235) || !near(e.Low, -0.30) || !near(e.High, -0.20) || got.Off != "" || got.Rated.IsKnown() {
		t.Errorf("%+v", got)
	}
	if got := AccuracyOf(cuts, nil); got.All.Cuts != 5 || got.Row.Cuts != 0 || got.Off != "" {
		t.Errorf("without a row: %+v", got)
	}
}

// By hand: 1/1.15 of the speed is 870 mm/min, 13 % slower: 871 is within the
// band, 869 is not. 1.15 times is 1150. At 2000 mm/min in 6 mm a rated thickness
// of 24 mm would be needed, and the row's clean maximum is 16.
func TestFollowKeepsToTheBand(t *testing.T) {
	for v, want := range map[float64]Pace{871: OnTheMark, 869: Slow, 1149: OnTheMark, 1151: Fast, 2000: Fast, 300: Slow} {
		var cuts []Timed
		for range FewestCuts {
			cuts = append(cuts, sixAt("a", v))
		}
		got := AccuracyOf(cuts, &trackRow)
		fits := want != OnTheMark && v != 2000 && v != 300 // at 300 less than half of 12 mm
		if got.Off != want || got.Rated.IsKnown() != fits {
			t.Errorf("%v mm/min: %q, want %q; rated %v", v, got.Off, want, got.Rated)
		}
	}
}

// Cuts that cannot speak of the row are counted, and propose nothing.
func TestFollowAsksOnlyWhatSpeaksOfTheRow(t *testing.T) {
	for name, change := range map[string]func(*Timed){
		"another metal":    func(c *Timed) { c.Metal = metal.Stainless },
		"no thickness":     func(c *Timed) { c.Thickness = unit.Maybe[unit.Millimetre]{} },
		"no output":        func(c *Timed) { c.Output = unit.Maybe[unit.Ampere]{} },
		"no length":        func(c *Timed) { c.Length = unit.Maybe[unit.Millimetre]{} },
		"another forecast": func(c *Timed) { c.Predicted = 19 },
		"the hand limits":  func(c *Timed) { c.Thickness, c.Predicted = unit.Known(unit.Millimetre(2)), 300.0/2500*60 },
	} {
		var cuts []Timed
		for range FewestCuts {
			c := sixAt("a", 500)
			change(&c)
			cuts = append(cuts, c)
		}
		if got := AccuracyOf(cuts, &trackRow); got.All.Cuts != FewestCuts || got.Row.Cuts != 0 || got.Rated.IsKnown() {
			t.Errorf("%s: %+v", name, got)
		}
	}
	if got := AccuracyOf([]Timed{{}, {Took: 1}, {Took: -1, Predicted: 1}, {Took: 1e-300, Predicted: 1e300}, {Took: 1e300, Predicted: 1e-300}, {Took: 1, Predicted: -1}}, &trackRow); got != (Accuracy{}) {
		t.Errorf("no times: %+v", got)
	}
}

// A recorded prediction up to 1 % from today's is the same: 18.17 s for 18 s, and not
// 18.19. A cut of less than a second counts as any other.
func TestFollowBounds(t *testing.T) {
	for predicted, counted := range map[unit.Second]int{18.17: 1, 18.19: 0} {
		c := sixAt("a", 1000)
		c.Predicted = predicted
		if got := AccuracyOf([]Timed{c}, &trackRow); got.Row.Cuts != counted {
			t.Errorf("predicted %v s: %d cuts counted", predicted, got.Row.Cuts)
		}
	}
	if got := AccuracyOf([]Timed{{Took: 0.9, Predicted: 0.9}}, nil); got.All.Cuts != 1 || got.All.Median != 0 {
		t.Errorf("%+v", got)
	}
	// Half of the cuts at 50 mm/min, which no rated thickness fits, and half at 1010, which
	// 12.12 mm would: there is no middle of the two.
	var halves []Timed
	for range 3 {
		halves = append(halves, sixAt("a", 50), sixAt("b", 1010))
	}
	if got := AccuracyOf(halves, &trackRow); got.Off != Slow || got.Rated.IsKnown() {
		t.Errorf("%+v", got)
	}
	// A rated thickness from half to twice the row's 12 mm: at 490 mm/min less than 6 mm
	// would fit 6 mm; at 1990 mm/min 23.88 mm, at 2010 mm/min 24.12. Clean up to 40 mm,
	// the row itself says 500·2^(ln 2/ln(40/12)) = 745.2 mm/min, 24.155 s.
	wide := trackRow
	wide.CleanMax, wide.Severance = 40, 50
	for v, fits := range map[float64]bool{510: true, 490: false, 1990: true, 2010: false} {
		var cuts []Timed
		for range FewestCuts {
			c := sixAt("a", v)
			c.Predicted = 24.155
			cuts = append(cuts, c)
		}
		if got := AccuracyOf(cuts, &wide); got.Rated.IsKnown() != fits {
			t.Errorf("%v mm/min: rated %v", v, got.Rated)
		}
	}
}

// The median lies between the quartiles and these within all there is; the order
// does not matter; and a row with the thickness proposed has half of the cuts
// slower and half faster.
func TestFollowFits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		speeds := rapid.SliceOfN(rapid.Float64Range(300, 2000), 1, 20).Draw(t, "speeds")
		var cuts, back []Timed
		for i, v := range speeds {
			cuts = append(cuts, sixAt(fmt.Sprint(i), v))
		}
		for i := range cuts {
			back = append(back, cuts[len(cuts)-1-i])
		}
		got := AccuracyOf(cuts, &trackRow)
		if e := got.All; !(e.Low <= e.Median && e.Median <= e.High) || e.Cuts != len(speeds) || e.Visits != len(speeds) || got != AccuracyOf(back, &trackRow) {
			t.Fatalf("%+v", got)
		}
		rated, ok := got.Rated.Get()
		if !ok {
			return
		}
		fitted := trackRow
		fitted.Rated = rated
		v, err := size.Speed(&fitted, 45, 6, size.AlongEdge)
		slower, faster := 0, 0
		for _, s := range speeds {
			switch {
			case s < float64(v)*(1-1e-9):
				slower++
			case s > float64(v)*(1+1e-9):
				faster++
			}
		}
		if half := len(speeds) / 2; err != nil || slower > half || faster > half {
			t.Fatalf("rated %v mm: %d slower, %d faster of %d", rated, slower, faster, len(speeds))
		}
	})
}
