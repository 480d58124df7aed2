package rules

import (
	"testing"

	"cutbrief/rules/metal"
	"cutbrief/rules/unit"
)

// What each answer weighs, at and beside its limit: as printed in the table of
// evidence, where what is said most weighs 10 and what is said next 6. Common
// practice, no source.
func TestEvidenceWeighs(t *testing.T) {
	week := func(m unit.Metre) Job { return Job{CutPerWeek: unit.Known(m)} }
	today := func(list ...Process) Job { return Job{Today: unit.Known(list)} }
	next := func(list ...EdgeUse) Job { return Job{EdgeNext: unit.Known(list)} }
	cut := func(list ...Feature) Job { return Job{Features: unit.Known(list)} }
	where := func(list ...Place) Job { return Job{Places: unit.Known(list)} }
	sheet := func(t unit.Millimetre, j Job) Job {
		j.Pieces = []Piece{{Metal: metal.MildSteel, Everyday: unit.Known(t)}}
		return j
	}
	plate := func(thickest, rarest unit.Millimetre) Job {
		return Job{Pieces: []Piece{{Metal: metal.MildSteel, Thickest: unit.Known(thickest), Rarest: unit.Known(rarest)}}}
	}
	for _, c := range []struct {
		job            Job
		of             Requirement
		said, inferred int
	}{
		{Job{Use: unit.Known(Production)}, Speed, 0, 3}, {Job{Use: unit.Known(Mixed)}, Speed, 0, 0},
		{week(100), Speed, 0, 0}, {week(100.01), Speed, 0, 2},
		{today(Abrasive), Speed, 0, 1}, {today(BandSaw), Speed, 0, 1}, {today(BandSaw, Abrasive), Speed, 0, 1}, {today(Nibbler), Speed, 0, 0},
		{sheet(3, next(Seen)), Distortion, 0, 2}, {sheet(3.01, next(Seen)), Distortion, 0, 0}, {sheet(3, next(Welded)), Distortion, 0, 0},
		{sheet(6, today(OxyFuel)), Distortion, 0, 2}, {sheet(6.01, today(OxyFuel)), Distortion, 0, 0}, {sheet(6, today(Shear)), Distortion, 0, 0},
		{next(Seen), EdgeQuality, 0, 3}, {next(Welded), EdgeQuality, 0, 1}, {next(Welded, Seen), EdgeQuality, 0, 4}, {next(Machined), EdgeQuality, 0, 0},
		{cut(Holes), EdgeQuality, 0, 1}, {cut(Shapes), EdgeQuality, 0, 1}, {cut(Holes, Shapes), EdgeQuality, 0, 1}, {cut(Straight), EdgeQuality, 0, 0},
		{Job{Experience: unit.Known(Novice)}, Ease, 0, 3}, {Job{Experience: unit.Known(SomePlasma)}, Ease, 0, 0},
		{today(SentOut), RunningCost, 0, 3}, {today(OxyFuel), RunningCost, 0, 1}, {today(OxyFuel, SentOut), RunningCost, 0, 4},
		{where(UpHigh), Portability, 0, 3}, {where(Field), Portability, 0, 3}, {where(InPlace), Portability, 0, 1}, {where(Bench), Portability, 0, 0},
		{plate(25, 0), Reach, 0, 3}, {plate(5, 25), Reach, 0, 3}, {plate(24.99, 24.99), Reach, 0, 0},
		{cut(Gaps), AcrossGaps, 0, 4},
		{Job{Annoys: []Annoyance{TooSlow}}, Speed, 10, 0}, {Job{Annoys: []Annoyance{Warps, TooSlow}}, Speed, 6, 0}, {Job{Annoys: []Annoyance{Warps, Nothing, TooSlow}}, Speed, 0, 0},
		{Job{Annoys: []Annoyance{Warps}}, Distortion, 10, 0}, {Job{Annoys: []Annoyance{RoughEdge}}, EdgeQuality, 10, 0}, {Job{Annoys: []Annoyance{HardToUse}}, Ease, 10, 0},
		{Job{Annoys: []Annoyance{CostsTooMuch}}, RunningCost, 10, 0}, {Job{Annoys: []Annoyance{TooHeavy}}, Portability, 10, 0},
		{Job{Annoys: []Annoyance{TooThick}}, Reach, 10, 0}, {Job{Annoys: []Annoyance{LosesArc}}, AcrossGaps, 10, 0},
	} {
		if got, want := scores(&c.job)[place(c.of)], (score{c.said, c.inferred}); got != want {
			t.Errorf("%s of %+v: %+v, want %+v", c.of, c.job, got, want)
		}
		for _, e := range PossibleEvidence() {
			if e.Said && (e.Weight != 10 || e.From != Asked{Fact: FactAnnoysMost}) {
				t.Errorf("what annoys most: %+v", e)
			}
		}
		total := 0
		for _, e := range evidenceOf(&c.job, "") {
			if e.Said != (e.Weight >= 6) {
				t.Errorf("said %v of what weighs %d", e.Said, e.Weight)
			}
			if e.Requirement == c.of {
				total += e.Weight
			}
		}
		if total != c.said+c.inferred {
			t.Errorf("the evidence for %s of %+v weighs %d, want %d", c.of, c.job, total, c.said+c.inferred)
		}
	}
}

// What was said stands before what is inferred, by weight among themselves, and
// what speaks for what decides before all of it.
func TestEvidenceInOrder(t *testing.T) {
	j := Job{Annoys: []Annoyance{TooHeavy, Warps}, Use: unit.Known(Production), Features: unit.Known([]Feature{Gaps, Holes}), Places: unit.Known([]Place{InPlace})}
	type said struct {
		of     Requirement
		weight int
	}
	for stands, want := range map[Requirement][]said{
		"":          {{Portability, 10}, {Distortion, 6}, {AcrossGaps, 4}, {Speed, 3}, {EdgeQuality, 1}, {Portability, 1}},
		Portability: {{Portability, 10}, {Portability, 1}, {Distortion, 6}, {AcrossGaps, 4}, {Speed, 3}, {EdgeQuality, 1}},
		EdgeQuality: {{EdgeQuality, 1}, {Portability, 10}, {Distortion, 6}, {AcrossGaps, 4}, {Speed, 3}, {Portability, 1}},
	} {
		list := evidenceOf(&j, stands)
		for i := range want {
			if i >= len(list) || (said{list[i].Requirement, list[i].Weight}) != want[i] {
				t.Errorf("%q stands: %+v, want %v", stands, list, want)
				break
			}
		}
	}
}

// Inferred evidence ties within one, said evidence only with its like; a requirement
// that nothing speaks for ties with none.
func TestNearTies(t *testing.T) {
	for _, c := range []struct {
		s, t score
		near bool
	}{
		{score{0, 3}, score{0, 3}, true}, {score{0, 3}, score{0, 2}, true}, {score{0, 3}, score{0, 1}, false},
		{score{10, 0}, score{0, 9}, false}, {score{10, 2}, score{10, 1}, true}, {score{0, 1}, score{}, false},
	} {
		if got := c.s.near(c.t); got != c.near {
			t.Errorf("%+v near %+v: %v", c.s, c.t, got)
		}
	}
	for i, c := range []struct {
		s, t score
		over bool
	}{{score{6, 0}, score{0, 9}, true}, {score{0, 9}, score{6, 0}, false}, {score{6, 2}, score{6, 1}, true}, {score{6, 1}, score{6, 1}, false}} {
		if c.s.over(c.t) != c.over {
			t.Errorf("%d: %+v over %+v: %v", i, c.s, c.t, !c.over)
		}
	}
}
