package rules

import (
	"math"
	"reflect"
	"slices"
	"testing"

	"cutbrief/rules/metal"
	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// What is plausible where nobody said, easiest first, and half-way by hand. Sizes
// and ratings are those a shop can buy: breakers from 15 A (NEC 240.6(A)) to 63 A
// (IEC 60898-1), conductors of 2.5 and 10 mm² (IEC 60228), pipe for air from 6 to
// 13 mm; the rest is common practice, no source. A thickness that is not told is
// taken from the regular cut, here 12 mm, where that is told.
func TestWhatIsPlausible(t *testing.T) {
	repair, plain, regular := mildSteel(12, Maintenance), mildSteel(12, Mixed), mildSteel(12, Mixed)
	repair.Pieces[0], plain.Pieces[0] = Piece{Metal: metal.MildSteel}, Piece{Metal: metal.MildSteel}
	for _, c := range []struct {
		fact                      Fact
		told                      Job
		kind                      unit.Kind
		easiest, halfway, hardest float64
	}{
		{FactThickest, plain, unit.Thickness, 1, 13, 25},
		{FactThickest, regular, unit.Thickness, 12, 18, 24}, // the regular cut to twice as thick
		{FactRarest, plain, unit.Thickness, 0, 25, 50},
		{FactRarest, regular, unit.Thickness, 0, 12, 24}, // none to twice as thick
		{FactPierced, plain, unit.Thickness, 0, 12.5, 25},
		{FactPierced, regular, unit.Thickness, 0, 6, 12}, // none to all that is cut
		{FactBevelled, plain, unit.Thickness, 0, 12.5, 25},
		{FactBevelled, regular, unit.Thickness, 0, 6, 12},
		{FactEveryday, plain, unit.Thickness, 1, 13, 25},
		{FactEveryday, regular, unit.Thickness, 4, 8, 12}, // a third of the thickest to all of it
		{FactBevelAngle, plain, unit.Angle, 15, 30, 45},
		{FactBusyCuts, plain, unit.Count, 1, 10.5, 20},
		{FactBusyCuts, repair, unit.Count, 1, 3, 5},
		{FactBusyLength, plain, unit.Length, 0.1, 0.3, 0.5},
		{FactBusyLength, repair, unit.Length, 0.1, 0.2, 0.3},
		{FactBreaker, plain, unit.Current, 63, 39, 15},
		{FactGenerator, plain, unit.ApparentPower, 40, 22.5, 5},
		{FactCord, plain, unit.Length, 0, 15, 30},
		{FactCordSection, plain, unit.Section, 10, 6.25, 2.5},
		{FactAirDelivery, plain, unit.Flow, 500, 300, 100},
		{FactAirPressure, plain, unit.Pressure, 10, 7, 4},
		{FactHoseBore, plain, unit.Thickness, 13, 9.5, 6},
		{FactHoseLength, plain, unit.Length, 5, 17.5, 30},
		{FactAltitude, plain, unit.Length, 0, 750, 1500},
	} {
		a := Asked{Fact: c.fact}
		if answerOf(c.fact).perMetal {
			a.Metal = metal.MildSteel
		}
		for i, want := range []float64{c.easiest, c.halfway, c.hardest} {
			j := c.told.clone()
			*thicknessOf(&j.Pieces[0], c.fact) = unit.Maybe[unit.Millimetre]{}
			answerOf(c.fact).put(&j, j.pieceOf(a), float64(i)/2)
			got, _ := j.Figure(a).Get()
			if got.Kind != c.kind || math.Abs(got.Value-want) > 1e-9 {
				t.Errorf("%s in %s, %d of 2 to the hardest: %g of kind %v, want %g of %v", c.fact, c.told.Use.Or(""), i, got.Value, got.Kind, want, c.kind)
			}
		}
	}
}

// The answers of a list, from the easiest for a system to the hardest. Ordered by
// what they ask: the factor 1, 1.5, 2; no pierce, a pierce; the hand, a torch for a
// carriage; a breaker, a generator too; drier air than needed, to none at all.
func TestOptionsGetHarder(t *testing.T) {
	for fact, c := range map[Fact]struct {
		want []any
		of   func(*Job) any
	}{
		FactUse:      {[]any{Maintenance, Mixed, Production}, func(j *Job) any { return j.Use.Or("") }},
		FactStart:    {[]any{AtEdge, InPlate, Anywhere}, func(j *Job) any { return j.Start.Or("") }},
		FactGuidance: {[]any{FreeHand, Mechanised}, func(j *Job) any { return j.Guidance.Or("") }},
		FactSource:   {[]any{Mains, MainsGen}, func(j *Job) any { return j.Power.Source.Or("") }},
		FactDrier:    {[]any{Desiccant, Refrigerant, Separator, NoDrier, NoAir}, func(j *Job) any { return j.Air.Drier.Or("") }},
	} {
		a := answerOf(fact)
		if a.steps != len(c.want) {
			t.Errorf("%s: %d tried of %d", fact, a.steps, len(c.want))
		}
		for i, want := range c.want {
			var j Job
			if a.put(&j, nil, float64(i)/float64(len(c.want)-1)); c.of(&j) != want {
				t.Errorf("%s: %v is option %d, want %v", fact, c.of(&j), i, want)
			}
		}
	}
}

// What cannot matter is not weighed: a pierce of cuts that start at the edge, an
// angle without a bevel, a breaker on a generator alone, conductors without a cord,
// air without a compressor. Nor is what is told, or is weighed elsewhere.
func TestWhatIsOpen(t *testing.T) {
	set := func(change func(*Job)) Job {
		j := Job{Pieces: []Piece{{Metal: metal.MildSteel}}}
		change(&j)
		return j
	}
	nothing := set(func(*Job) {})
	for _, c := range []struct {
		fact Fact
		job  Job
		open bool
	}{
		{FactPierced, nothing, false}, // the question where cuts start comes first
		{FactPierced, set(func(j *Job) { j.Start = unit.Known(AtEdge) }), false},
		{FactPierced, set(func(j *Job) { j.Start = unit.Known(InPlate) }), true},
		{FactPierced, set(func(j *Job) { j.Start, j.Pieces[0].Pierced = unit.Known(InPlate), unit.Known(unit.Millimetre(0)) }), false},
		{FactBevelled, nothing, false},
		{FactBevelAngle, set(func(j *Job) { j.Features = unit.Known([]Feature{Holes}) }), false},
		{FactBevelAngle, set(func(j *Job) { j.Features = unit.Known([]Feature{Holes, Bevels}) }), true},
		{FactBreaker, nothing, true},
		{FactBreaker, set(func(j *Job) { j.Power.Source = unit.Known(GenSet) }), false},
		{FactBreaker, set(func(j *Job) { j.Power.Source = unit.Known(MainsGen) }), true},
		{FactGenerator, nothing, false},
		{FactGenerator, set(func(j *Job) { j.Power.Source = unit.Known(GenSet) }), true},
		{FactGenerator, set(func(j *Job) { j.Power.Source = unit.Known(MainsGen) }), true},
		{FactCordSection, nothing, false},
		{FactCordSection, set(func(j *Job) { j.Power.Cord = unit.Known(unit.Metre(0)) }), false},
		{FactCordSection, set(func(j *Job) { j.Power.Cord = unit.Known(unit.Metre(0.5)) }), true},
		{FactAirDelivery, nothing, true},
		{FactAirPressure, set(func(j *Job) { j.Air.Drier = unit.Known(NoAir) }), false},
		{FactHoseBore, set(func(j *Job) { j.Air.Drier = unit.Known(NoDrier) }), true},
		{FactVolts, nothing, false}, // with the phases, as a supply
		{FactPhases, nothing, false},
		{FactCutLength, nothing, false}, // it only hints at what decides
		{FactMetals, Job{}, false},
	} {
		if got := answerOf(c.fact).open(&c.job, c.job.at(len(c.job.Pieces)-1)); got != c.open {
			t.Errorf("%s of %+v: open %v", c.fact, c.job, got)
		}
	}
}

// The mains of a shop where nothing is told: the voltages of IEC 60038 Table 1 for
// 50 Hz, 230 and 400 V, and for 60 Hz, 120, 208, 240 and 480 V, as they are had
// between a line and neutral or two lines, and of three.
func TestSuppliesTried(t *testing.T) {
	all := map[Phases][]unit.Volt{SinglePhase: {120, 208, 230, 240}, ThreePhase: {208, 240, 400, 480}}
	for _, c := range []struct {
		told SitePower
		want map[Phases][]unit.Volt
	}{
		{SitePower{}, all},
		{SitePower{Phases: unit.Known(SinglePhase)}, map[Phases][]unit.Volt{SinglePhase: all[SinglePhase]}},
		{SitePower{Phases: unit.Known(ThreePhase)}, map[Phases][]unit.Volt{ThreePhase: all[ThreePhase]}},
		{SitePower{Phases: unit.Known(BothPhases)}, map[Phases][]unit.Volt{BothPhases: {120, 208, 230, 240, 208, 240, 400, 480}}},
		{SitePower{Volts: unit.Known(unit.Volt(240))}, map[Phases][]unit.Volt{SinglePhase: {240}, ThreePhase: {240}}},
		{SitePower{Volts: unit.Known(unit.Volt(400))}, map[Phases][]unit.Volt{ThreePhase: {400}}},
		{SitePower{Volts: unit.Known(unit.Volt(415))}, map[Phases][]unit.Volt{SinglePhase: {415}, ThreePhase: {415}}},               // in no row
		{SitePower{Phases: unit.Known(SinglePhase), Volts: unit.Known(unit.Volt(400))}, map[Phases][]unit.Volt{SinglePhase: {400}}}, // as told
	} {
		got := map[Phases][]unit.Volt{}
		for _, m := range mainsFor(&Job{Power: c.told}) {
			p := m.phases.Or("")
			got[p] = append(got[p], m.volts.Or(0))
		}
		if !reflect.DeepEqual(got, c.want) {
			t.Errorf("%+v: %v, want %v", c.told, got, c.want)
		}
	}
}

// Each thickness that is not told is tried at the ends of what is plausible and at
// the quarters, an angle at the ends and half-way. By hand: 10.5 mm may be a quarter
// more, 13.1 mm, which takes s16; a fifth more would do with s12.7. 10 mm tilted by 30
// degrees are 11.5 mm of metal, by 15 to 10.4 and by 45 to 14.1.
func TestHowFinelyIsTried(t *testing.T) {
	thick := mildSteel(10.5, Maintenance)
	thick.Pieces[0].Thickest = unit.Maybe[unit.Millimetre]{}
	tilted := mildSteel(10, Maintenance)
	tilted.Features, tilted.Pieces[0].Bevelled = unit.Known([]Feature{Bevels}), unit.Known(unit.Millimetre(10))
	bevels := mildSteel(11.5, Maintenance) // at 45 degrees 16.3 mm, more than s12 cuts clean
	for _, c := range []struct {
		fact  Fact
		job   Job
		among system.Range
		want  string
	}{
		{FactThickest, thick, ladder(), "s16"},
		{FactBevelAngle, tilted, system.Range{Systems: []system.System{sys("11.2", 10, 11.2, 40), sys("11.8", 10.1, 11.8, 40), sys("13", 10.2, 13, 40), sys("15", 10.3, 15, 40)}}, "11.8"},
		{FactFeatures, bevels, ladder(), "s16"},
	} {
		flip := "not asked"
		for _, q := range Evaluate(c.job, c.among).Open {
			if q.Asked.Fact == c.fact {
				flip = q.FlipTo
			}
		}
		if flip != c.want {
			t.Errorf("%s could change the system to %s, want %s", c.fact, flip, c.want)
		}
	}
}

// A told figure is never moved by another, but that the everyday cut is no thicker
// than a thickest that is tried.
func TestPutLeavesTheRest(t *testing.T) {
	told := func(everyday, thickest unit.Millimetre) *Piece {
		return &Piece{Metal: metal.MildSteel, Everyday: unit.Known(everyday), Thickest: unit.Known(thickest)}
	}
	for _, c := range []struct {
		p    *Piece
		f    Fact
		t    unit.Millimetre
		want unit.Millimetre // everyday
	}{
		{told(10, 8), FactRarest, 20, 10}, {told(10, 8), FactEveryday, 9, 9}, {told(6, 8), FactThickest, 7, 6}, {told(6, 8), FactThickest, 5, 5},
	} {
		if c.p.put(c.f, c.t); *thicknessOf(c.p, c.f) != unit.Known(c.t) || c.p.Everyday.Or(0) != c.want {
			t.Errorf("%s %g mm: %+v, want %g mm every day", c.f, c.t, c.p, c.want)
		}
	}
}

// What is missing is asked for: the metals where there are none, a thickness for each
// metal that has none. What is told has the unit of its question.
func TestMissingAndTold(t *testing.T) {
	metals, thickest, use := Asked{Fact: FactMetals}, Asked{FactThickest, metal.MildSteel}, Asked{Fact: FactUse}
	told := Piece{Metal: metal.Stainless, Thickest: unit.Known(unit.Millimetre(6))}
	for _, c := range []struct {
		job  Job
		want []Asked
	}{
		{Job{}, []Asked{metals, use}},
		{Job{Pieces: []Piece{told}}, []Asked{use}},
		{Job{Pieces: []Piece{told, {Metal: metal.MildSteel}}, Use: unit.Known(Mixed)}, []Asked{thickest}},
	} {
		if got := c.job.missing(FactMetals, FactThickest, FactUse); !slices.Equal(got, c.want) {
			t.Errorf("%+v misses %v, want %v", c.job, got, c.want)
		}
	}
	j := Job{CutPerWeek: unit.Known(unit.Metre(10)), Power: SitePower{Volts: unit.Known(unit.Volt(230))}}
	for f, want := range map[Fact]unit.Quantity{FactCutLength: {Value: 10, Kind: unit.Length}, FactVolts: {Value: 230, Kind: unit.Voltage}} {
		if got, known := j.Figure(Asked{Fact: f}).Get(); !known || got != want {
			t.Errorf("%s: %v, want %v", f, got, want)
		}
	}
}
