package rules

import (
	"testing"

	"pgregory.net/rapid"

	"cutbrief/rules/metal"
	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// mostly reports, nine times in ten, that something is told.
func mostly(t *rapid.T, name string) bool {
	return rapid.IntRange(0, 9).Draw(t, name+" told") > 0
}

// drawJob makes a job in which any answer may be missing.
func drawJob(t *rapid.T) Job {
	var j Job
	maybe := func(name string) bool { return mostly(t, name) }
	thickness := func(name string) unit.Maybe[unit.Millimetre] {
		if !maybe(name) {
			return unit.Maybe[unit.Millimetre]{}
		}
		return unit.Known(unit.Millimetre(rapid.Float64Range(0.5, 30).Draw(t, name)))
	}
	metals := []metal.ID{metal.MildSteel, metal.Stainless, metal.Aluminium, metal.Other}
	for _, m := range metals[:rapid.IntRange(1, len(metals)-1).Draw(t, "metals")] {
		j.Pieces = append(j.Pieces, Piece{m, thickness("everyday"), thickness("thickest"), thickness("rarest"), thickness("pierced"), thickness("bevelled")})
	}
	if maybe("use") {
		j.Use = unit.Known(rapid.SampledFrom([]Use{Maintenance, Mixed, Production}).Draw(t, "use"))
	}
	if maybe("start") {
		j.Start = unit.Known(rapid.SampledFrom([]Start{AtEdge, InPlate, Anywhere}).Draw(t, "start"))
	}
	if maybe("features") {
		j.Features = unit.Known(rapid.SliceOf(rapid.SampledFrom([]Feature{Straight, Bevels, Gouging, Gaps})).Draw(t, "features"))
	}
	if maybe("angle") {
		j.BevelAngle = unit.Known(unit.Degree(rapid.Float64Range(0, 45).Draw(t, "angle")))
	}
	if maybe("guidance") {
		j.Guidance = unit.Known(rapid.SampledFrom([]Guidance{FreeHand, Guided, Mechanised}).Draw(t, "guidance"))
	}
	if maybe("annoys") {
		j.Annoys = rapid.SliceOfN(rapid.SampledFrom([]Annoyance{TooSlow, Warps, TooHeavy, LosesArc, Nothing}), 1, 2).Draw(t, "annoys")
	}
	for _, h := range hints {
		if maybe(string(h.fact)) {
			rapid.SampledFrom(h.answers).Draw(t, string(h.fact))(&j)
		}
	}
	drawSite(t, &j)
	return j
}

// drawSite adds what is known of supply, air and duty.
func drawSite(t *rapid.T, j *Job) {
	number := func(name string, low, high float64) (float64, bool) {
		if !mostly(t, name) {
			return 0, false
		}
		return rapid.Float64Range(low, high).Draw(t, name), true
	}
	if mostly(t, "phases") {
		j.Power.Phases = unit.Known(rapid.SampledFrom([]Phases{SinglePhase, ThreePhase, BothPhases}).Draw(t, "phases"))
	}
	if mostly(t, "volts") {
		j.Power.Volts = unit.Known(rapid.SampledFrom([]unit.Volt{120, 208, 230, 240, 400, 480}).Draw(t, "volts"))
	}
	if mostly(t, "source") {
		j.Power.Source = unit.Known(rapid.SampledFrom([]PowerSource{Mains, GenSet, MainsGen}).Draw(t, "source"))
	}
	if v, ok := number("breaker", 10, 80); ok {
		j.Power.Breaker = unit.Known(unit.Ampere(v))
	}
	if v, ok := number("generator", 4, 60); ok {
		j.Power.Generator = unit.Known(unit.KilovoltAmpere(v))
	}
	if v, ok := number("delivery", 60, 500); ok {
		j.Air.Delivery = unit.Known(unit.LitrePerMinute(v))
	}
	if v, ok := number("pressure", 3, 10); ok {
		j.Air.Pressure = unit.Known(unit.Bar(v))
	}
	if v, ok := number("cord", 0, 60); ok {
		j.Power.Cord = unit.Known(unit.Metre(v))
	}
	if v, ok := number("section", 1.5, 16); ok {
		j.Power.CordSection = unit.Known(unit.SquareMillimetre(v))
	}
	if v, ok := number("bore", 5, 20); ok {
		j.Air.HoseBore = unit.Known(unit.Millimetre(v))
	}
	if v, ok := number("hose", 1, 60); ok {
		j.Air.HoseLength = unit.Known(unit.Metre(v))
	}
	if v, ok := number("altitude", 0, 3000); ok {
		j.Altitude = unit.Known(unit.Metre(v))
	}
	if mostly(t, "drier") {
		j.Air.Drier = unit.Known(rapid.SampledFrom([]Drier{NoDrier, Separator, Refrigerant, Desiccant, NoAir}).Draw(t, "drier"))
	}
	if v, ok := number("cuts", 1, 60); ok {
		j.BusyCuts = unit.Known(v)
	}
	if v, ok := number("length", 0.05, 2); ok {
		j.BusyLength = unit.Known(unit.Metre(v))
	}
}

// mixedLadder has systems that differ in everything the rules look at.
func mixedLadder() system.Range {
	r := ladder()
	r.Systems[1].HoldsGaps, r.Systems[3].HoldsGaps, r.Systems[4].HoldsGaps = true, true, true
	r.Systems[3].Gouges, r.Systems[4].Gouges, r.Systems[4].Mechanised = true, true, true
	r.Systems[0].Supplies[0].VoltMin = 110
	r.Systems[4].Supplies = []system.Supply{{Phases: 3, VoltMin: 380, VoltMax: 480, Input: 25, Effective: 20}}
	r.Systems[3].AirFlow, r.Systems[3].Supplies[0].Input = 120, 24
	return r
}

// answerAtRandom puts a plausible answer to every open question.
func answerAtRandom(t *rapid.T, j Job) Job {
	wish := j.clone()
	rapid.SampledFrom(mainsFor(&j)).Draw(t, "supply").put(&wish)
	if len(wish.Annoys) == 0 {
		wish.Annoys = []Annoyance{rapid.SampledFrom([]Annoyance{TooSlow, Warps, RoughEdge, HardToUse, CostsTooMuch, TooHeavy, TooThick, LosesArc, Nothing}).Draw(t, "wish")}
	}
	for _, h := range hints {
		if h.open(&wish) {
			rapid.SampledFrom(h.answers).Draw(t, string(h.fact))(&wish)
		}
	}
	answered := wish.clone()
	eachUnknown(&wish, func(q unknown) {
		q.put(&answered, rapid.Float64Range(0, 1).Draw(t, string(q.answer.fact)))
	})
	return answered
}

// A verdict called firm survives every plausible set of answers.
func TestFirmIsFirm(t *testing.T) {
	offered := mixedLadder()
	firm, recommended := 0, 0
	defer func() {
		t.Logf("%d of %d recommendations were firm", firm, recommended)
		if firm == 0 {
			t.Error("nothing was ever firm: the test has shown nothing")
		}
	}()
	rapid.Check(t, func(t *rapid.T) {
		job := drawJob(t)
		r := Evaluate(job, offered)
		if r.Outcome == Recommended {
			recommended++
		}
		if !r.Firm {
			return
		}
		firm++
		for range 5 {
			answered := answerAtRandom(t, job)
			if got := Evaluate(answered, offered); got.First == nil || got.First.System != r.First.System {
				t.Fatalf("firm on %s, but %+v gives %+v", r.First.System.ID, answered, got.First)
			}
		}
	})
}

// Thicker never needs less: growing any thickness never lowers the rated
// thickness of the first choice, as the order of systems does not depend on
// the job.
func TestThickerNeverNeedsLess(t *testing.T) {
	offered := mixedLadder()
	rapid.Check(t, func(t *rapid.T) {
		job := drawJob(t)
		if len(job.Pieces) == 0 {
			return
		}
		before := Evaluate(job, offered)
		thicker := job.clone()
		p := &thicker.Pieces[rapid.IntRange(0, len(job.Pieces)-1).Draw(t, "piece")]
		field := thicknessOf(p, rapid.SampledFrom([]Fact{FactThickest, FactRarest, FactPierced}).Draw(t, "which"))
		now, known := field.Get()
		if !known {
			return
		}
		*field = unit.Known(now * 1.5)
		after := Evaluate(thicker, offered)
		if before.Outcome == NoneFits && after.Outcome == Recommended {
			t.Fatalf("thicker fits where thinner did not")
		}
		if before.First != nil && after.First != nil && before.First.Status == after.First.Status &&
			after.First.System.Rated < before.First.System.Rated {
			t.Fatalf("thicker gives %s after %s", after.First.System.ID, before.First.System.ID)
		}
	})
}

// Nothing that falls short on a hard rule is ever recommended, and every
// question called missing is among the open ones.
func TestNeverRecommendsWhatFallsShort(t *testing.T) {
	offered := mixedLadder()
	rapid.Check(t, func(t *rapid.T) {
		r := Evaluate(drawJob(t), offered)
		if r.First == nil {
			return
		}
		for _, c := range r.First.Checks {
			rule, _ := c.Rule.Find()
			if rule.Hard && c.Verdict == Short {
				t.Fatalf("%s recommended although %s falls short", r.First.System.ID, c.Rule)
			}
		}
	})
}

func BenchmarkJudge(b *testing.B) {
	job, offered := mildSteel(8, Production), mixedLadder()
	b.ReportAllocs()
	for b.Loop() {
		Judge(job, offered)
	}
}

func BenchmarkEvaluate(b *testing.B) {
	job, offered := mildSteel(8, Production), mixedLadder()
	b.ReportAllocs()
	for b.Loop() {
		Evaluate(job, offered)
	}
}
