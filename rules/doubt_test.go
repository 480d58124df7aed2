package rules

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"cutbrief/rules/metal"
	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

var (
	thickestClean = Asked{FactThickest, metal.MildSteel}
	rarestCut     = Asked{FactRarest, metal.MildSteel}
)

// TestHold: the shares are worked out by hand. In repair work the factor is 1, so
// s16 is the smallest that is rated for a clean cut above 12.7 mm, and of those
// that sever more than 20 mm and up to 25 mm; each case is as likely as any other. Limits are compared with a little slack, so
// an exact share is right to a millionth.
func TestHold(t *testing.T) {
	told := mildSteel(16, Maintenance)
	told.Pieces[0].Rarest = unit.Known(unit.Millimetre(18))
	thick, rare := Doubt{thickestClean, 8, 16, nil}, Doubt{rarestCut, 13, 33, nil}
	use := Doubt{Asked: Asked{Fact: FactUse}, Options: []string{"maintenance", "mixed", "production"}}
	for name, c := range map[string]struct {
		doubts []Doubt
		share  float64
		tried  int
		first  Asked
	}{
		"one figure":           {[]Doubt{thick}, (16 - 12.7) / 8, 0, thickestClean},
		"a figure all through": {[]Doubt{{thickestClean, 13, 16, nil}}, 1, 0, Asked{}},
		"a figure at its end":  {[]Doubt{{thickestClean, 8, 16.02, nil}}, (16 - 12.7) / 8.02, 0, thickestClean}, // from 16 mm on s25
		"one choice":           {[]Doubt{use}, 1.0 / 3, 0, Asked{Fact: FactUse}},                                // mixed work asks for 24 mm, production for 32
		"two figures":          {[]Doubt{thick, rare}, 0.6 - (12.7-8)/8*0.35, cases, rarestCut},
		"two that agree":       {[]Doubt{{thickestClean, 13, 16, nil}, {rarestCut, 13, 25, nil}}, 1, cases, Asked{}},
	} {
		t.Run(name, func(t *testing.T) {
			job := told
			job.Doubts = c.doubts
			h, known := Hold(job, ladder()).Get()
			if !known || h.Tried != c.tried || h.First != c.first || h.All() != (c.share == 1) {
				t.Fatalf("got %+v, %v; want %d tried and %v measured first", h, known, c.tried, c.first)
			}
			if off := math.Abs(h.Share - c.share); off > max(h.Error, 1e-6) {
				t.Errorf("it holds in %.4f, want %.4f within %.3f", h.Share, c.share, h.Error)
			}
		})
	}
}

// TestHoldNeedsADoubt: without one there is nothing to say, nor where nothing is
// recommended.
func TestHoldNeedsADoubt(t *testing.T) {
	job := mildSteel(16, Maintenance)
	if _, known := Hold(job, ladder()).Get(); known {
		t.Error("a job without a doubt was doubted")
	}
	job.Doubts = []Doubt{{thickestClean, 6, 7, nil}}
	job.Pieces[0].put(FactThickest, 7)
	if h, known := Hold(job, ladder()).Get(); !known || !h.All() {
		t.Errorf("the first of a range holds in %v", h)
	}
	job.Use = unit.Maybe[Use]{}
	if _, known := Hold(job, ladder()).Get(); known {
		t.Error("nothing can be recommended yet, and it holds")
	}
	job.Use = unit.Known(Maintenance)
	job.Doubts = []Doubt{{thickestClean, 50, 60, nil}}
	job.Pieces[0].put(FactThickest, 60)
	if _, known := Hold(job, ladder()).Get(); known {
		t.Error("a job that no system fits has a recommendation that holds")
	}
}

// A recommendation is firm where it stands at both ends of what is in doubt, and at
// each option: all else told, s16 stands in repair work above 12.7 mm and up to 16.
func TestFirmAtBothEnds(t *testing.T) {
	for name, c := range map[string]struct {
		doubts []Doubt
		firm   bool
	}{
		"none":              {nil, true},
		"within":            {[]Doubt{{thickestClean, 12.8, 16, nil}}, true},
		"below":             {[]Doubt{{thickestClean, 12.6, 16, nil}}, false},
		"above":             {[]Doubt{{thickestClean, 12.8, 16.1, nil}}, false},
		"easier downwards":  {[]Doubt{{Asked{Fact: FactBreaker}, 33, 63, nil}}, true},
		"a use that suits":  {[]Doubt{{Asked: Asked{Fact: FactUse}, Options: []string{"maintenance"}}}, true},
		"a use that grows":  {[]Doubt{{Asked: Asked{Fact: FactUse}, Options: []string{"maintenance", "mixed"}}}, false},
		"a voltage":         {[]Doubt{{Asked{Fact: FactVolts}, 207, 240, nil}}, true},
		"a voltage too low": {[]Doubt{{Asked{Fact: FactVolts}, 170, 240, nil}}, false},
		"several":           {[]Doubt{{thickestClean, 12.8, 16, nil}, {Asked{Fact: FactVolts}, 207, 240, nil}, {Asked: Asked{Fact: FactUse}, Options: []string{"maintenance"}}}, true},
		"one of several":    {[]Doubt{{thickestClean, 12.8, 16, nil}, {Asked{Fact: FactVolts}, 170, 240, nil}}, false},
	} {
		j := answered(mildSteel(16, Maintenance))
		j.Power.Breaker, j.Doubts = unit.Known(unit.Ampere(40)), c.doubts
		if r := Evaluate(j, ladder()); r.First == nil || r.First.System.ID != "s16" || r.Firm != c.firm {
			t.Errorf("%s: firm %v, want %v", name, r.Firm, c.firm)
		}
	}
}

// Both the doubts and what is open are taken at their hardest: all of 12 mm tilted by 45
// degrees are 17.0 mm, more than s12 cuts clean, of 10 mm only 14.1.
func TestFirmAtTheHardest(t *testing.T) {
	offered := ladder()
	for i := range offered.Systems {
		offered.Systems[i].Gouges, offered.Systems[i].HoldsGaps = true, true
	}
	for most, firm := range map[float64]bool{12: false, 11: true} {
		j := answered(mildSteel(10.5, Maintenance))
		j.Features, j.Pieces[0].Bevelled = unit.Maybe[[]Feature]{}, unit.Maybe[unit.Millimetre]{}
		j.Pieces[0].Everyday = unit.Known(unit.Millimetre(5))
		j.Doubts = []Doubt{{thickestClean, 10, most, nil}}
		if r := Evaluate(j, offered); r.First == nil || r.First.System.ID != "s12" || r.Firm != firm {
			t.Errorf("up to %g mm: firm %v, want %v", most, r.Firm, firm)
		}
	}
}

// Of options in doubt as many come together as can be tried, 256; with more, nothing
// is firm.
func TestOptionsInDoubtAreTried(t *testing.T) {
	driers, hands := slices.Repeat([]string{"refrigerant"}, 257), slices.Repeat([]string{"experienced"}, 16)
	for _, c := range []struct {
		doubts []Doubt
		firm   bool
	}{
		{[]Doubt{{Asked: Asked{Fact: FactDrier}, Options: driers[:256]}}, true},
		{[]Doubt{{Asked: Asked{Fact: FactDrier}, Options: driers}}, false},
		{[]Doubt{{Asked: Asked{Fact: FactDrier}, Options: driers[:16]}, {Asked: Asked{Fact: FactExperience}, Options: hands}}, true},
		{[]Doubt{{Asked: Asked{Fact: FactDrier}, Options: driers[:17]}, {Asked: Asked{Fact: FactExperience}, Options: hands}}, false},
	} {
		j := answered(mildSteel(16, Maintenance))
		j.Power.Breaker, j.Doubts = unit.Known(unit.Ampere(40)), c.doubts
		if r := Evaluate(j, ladder()); r.Firm != c.firm {
			t.Errorf("%d options of the first: firm %v", len(c.doubts[0].Options), r.Firm)
		}
	}
}

// What can be doubted is one option that a system is judged by, a figure that gets
// harder or easier with its size, and a voltage.
func TestCanBeDoubted(t *testing.T) {
	for f, want := range map[Fact]bool{
		FactUse: true, FactStart: true, FactDrier: true, FactThickest: true, FactBreaker: true, FactCord: true, FactVolts: true,
		FactFeatures: false, FactToday: false, FactCutLength: false, FactMetals: false, FactBudget: false,
	} {
		if CanBeDoubted(f) != want {
			t.Errorf("%s: %v", f, !want)
		}
	}
}

// Of a doubtful voltage the ends are tried, where systems of 200 to 240 V begin and
// cease to run, and the middle between each two of these: by hand.
func TestVoltagesTried(t *testing.T) {
	for _, c := range []struct {
		low, high float64
		want      []unit.Volt
	}{
		{190, 250, []unit.Volt{190, 200, 240, 250, 195, 220, 245}},
		{207, 240, []unit.Volt{207, 240, 223.5}},
		{100, 120, []unit.Volt{100, 120, 110}},
	} {
		d := Doubt{Asked: Asked{Fact: FactVolts}, Low: c.low, High: c.high}
		if got := d.voltages(ladder().Systems); !slices.Equal(got, c.want) {
			t.Errorf("%g to %g V: %v, want %v", c.low, c.high, got, c.want)
		}
	}
}

// TestErrorOver: 1.96·√(0.25/256) = 1.96·0.03125 = 0.06125, by hand.
func TestErrorOver(t *testing.T) {
	if got := errorOver(256); math.Abs(got-0.06125) > 1e-12 {
		t.Errorf("got %v", got)
	}
}

// TestEvenSteps: one side is the golden ratio's 1/φ = 0.6180339887; of two sides
// x³ = x+1, the plastic number 1.3247179572, whose inverse is 0.7548776662. Both
// constants from memory of their expansions.
func TestEvenSteps(t *testing.T) {
	if got := evenSteps(1)[0]; math.Abs(got-0.6180339887) > 1e-10 {
		t.Errorf("one side: %v", got)
	}
	if got := evenSteps(2); math.Abs(got[0]-0.7548776662) > 1e-10 || math.Abs(got[1]-0.5698402910) > 1e-10 {
		t.Errorf("two sides: %v", got)
	}
}

// drawDoubts puts some of what a job tells in doubt, by a fifth or any option.
func drawDoubts(t *rapid.T, j *Job) {
	for i := range answers {
		row := &answers[i]
		if !CanBeDoubted(row.fact) || row.perMetal || !row.known(j, nil) || rapid.IntRange(0, 3).Draw(t, string(row.fact)+" doubted") > 0 {
			continue
		}
		d := Doubt{Asked: Asked{Fact: row.fact}}
		if v, figure := j.Figure(d.Asked).Get(); figure {
			d.Low, d.High = v.Value*0.8, v.Value*1.2
		} else if row.fact == FactUse {
			d.Options = []string{string(Maintenance), string(Mixed), string(Production)}
		} else {
			continue
		}
		j.Doubts = append(j.Doubts, d)
	}
	for _, p := range j.Pieces {
		for _, f := range []Fact{FactEveryday, FactThickest, FactRarest, FactPierced} {
			if v, known := thicknessOf(&p, f).Get(); known && v > 0 && rapid.Bool().Draw(t, string(f)+" of "+string(p.Metal)+" doubted") {
				j.Doubts = append(j.Doubts, Doubt{Asked{f, p.Metal}, float64(v) * 0.8, float64(v) * 1.2, nil})
			}
		}
	}
}

// TestFirmHoldsInAllCases: a recommendation that is called firm stands in every
// case that the doubts allow.
func TestFirmHoldsInAllCases(t *testing.T) {
	offered, firm := system.Demo(), 0
	rapid.Check(t, func(t *rapid.T) {
		j := drawJob(t)
		drawDoubts(t, &j)
		r := Summarise(j, offered)
		h, doubted := Hold(j, offered).Get()
		if !r.Firm || !doubted {
			return
		}
		firm++
		if !h.All() {
			t.Fatalf("called firm, and it holds in %.3f of %d cases", h.Share, h.Tried)
		}
	})
	t.Logf("%d of them firm with doubts", firm)
}

// TestScale: by hand, as in TestHold. In repair work s8 leads to 8 mm, s12 to
// 12 mm and so on, each system to what it is rated for; the largest is then
// borderline to 6 % more, and from there on none fits.
func TestScale(t *testing.T) {
	job := mildSteel(16, Maintenance)
	want := []struct {
		to float64
		id string
	}{{8, "s8"}, {12, "s12"}, {12.7, "s12.7"}, {16, "s16"}, {25, "s25"}, {25 * 1.06, "s25"}, {48, ""}}
	got := Scale(job, thickestClean, 16, ladder())
	if len(got) != len(want) {
		t.Fatalf("%d stretches, want %d: %v", len(got), len(want), got)
	}
	for i, s := range got {
		id := ""
		if s.System != nil && s.Status != FallsShort {
			id = s.System.ID
		}
		if id != want[i].id || math.Abs(s.To.Value-want[i].to) > 0.2 {
			t.Errorf("stretch %d: %q up to %.3f mm, want %q up to %.3f", i, id, s.To.Value, want[i].id, want[i].to)
		}
	}
	if last := len(got) - 1; math.Abs(got[0].From.Value-16.0/3) > 1e-9 || got[0].From.Kind != unit.Thickness || got[last].To.Value != 48 {
		t.Errorf("the scale runs from %v to %v, want a third of 16 mm to three times as much", got[0].From, got[last].To)
	}
	cord := job
	cord.Power.Cord = unit.Known(unit.Metre(0))
	if got := Scale(cord, Asked{Fact: FactCord}, 0, ladder()); len(got) != 1 || got[0].To.Value != 30 || got[0].From.Value != 0 {
		t.Errorf("about no cord: %v, want as far as is plausible, 30 m", got)
	}
	if Scale(job, Asked{Fact: FactBreaker}, 16, ladder()) != nil || Scale(job, Asked{Fact: FactUse}, 16, ladder()) != nil {
		t.Error("an answer that is not told, or no figure, has a scale")
	}
}

func BenchmarkHoldTwoDoubts(b *testing.B) {
	job, offered := fullyTold(), system.Demo()
	job.Doubts = []Doubt{{thickestClean, 8, 12, nil}, {Asked{Fact: FactBreaker}, 20, 40, nil}}
	b.ReportAllocs()
	for b.Loop() {
		Hold(job, offered)
	}
}

func BenchmarkScale(b *testing.B) {
	job, offered := fullyTold(), system.Demo()
	b.ReportAllocs()
	for b.Loop() {
		Scale(job, thickestClean, 16, offered)
	}
}
