package rules

import (
	"math"
	"slices"
	"testing"

	"cutbrief/rules/metal"
	"cutbrief/rules/unit"
)

// How far each thickness may move, in light production on s12, whichever way the range
// is listed. By hand: rated 12 mm serve 12/1.5 = 8 mm, and 12/1.5/1.15 = 6.957 mm of
// stainless; s8 takes over at 8/1.5 = 5.333 and 4.638 mm. 20 mm are severed and 8 mm
// pierced, by s12.7 as well, so s16 is next. None of a metal has no margin, nor has a
// metal without figures.
func TestMarginsByHand(t *testing.T) {
	mm := func(t unit.Millimetre) unit.Maybe[unit.Millimetre] { return unit.Known(t) }
	type margin struct {
		holds float64
		then  string
		down  float64
		to    string
	}
	for name, c := range map[string]struct {
		piece Piece
		want  map[Fact]margin
	}{
		"mild steel": {Piece{metal.MildSteel, mm(8), mm(8), mm(10), mm(5), mm(0)}, map[Fact]margin{
			FactThickest: {8, "s12.7", 8 / 1.5, "s8"}, FactRarest: {20, "s16", 0, ""}, FactPierced: {8, "s16", 0, ""}}},
		"stainless": {Piece{metal.Stainless, mm(6), mm(6), mm(0), mm(0), mm(0)}, map[Fact]margin{FactThickest: {12 / 1.5 / 1.15, "s12.7", 8 / 1.5 / 1.15, "s8"}}},
	} {
		for _, backwards := range []bool{false, true} {
			offered := ladder()
			if backwards {
				slices.Reverse(offered.Systems)
			}
			j := Job{Use: unit.Known(Mixed), Start: unit.Known(InPlate), Pieces: []Piece{c.piece}}
			r := Evaluate(j, offered)
			if r.First == nil || r.First.System.ID != "s12" || len(r.Margins) != len(c.want) {
				t.Fatalf("%s: %+v, %+v", name, r.First, r.Margins)
			}
			j.Pieces = append(j.Pieces, Piece{Metal: metal.Other, Thickest: mm(3)})
			if more := Evaluate(j, offered).Margins; len(more) != len(c.want) {
				t.Errorf("%s: %d margins beside a metal without figures", name, len(more))
			}
			for _, m := range r.Margins {
				w := c.want[m.Asked.Fact]
				down, known := m.DownTo.Get()
				if math.Abs(m.HoldsTo.Value-w.holds) > 1e-5 || m.Then == nil || m.Then.ID != w.then || m.ThenStatus != Fits || known != (w.to != "") || math.Abs(down.Value-w.down) > 1e-9 || known && m.Smaller.ID != w.to {
					t.Errorf("%s, %s: %+v, then %s, smaller %v, want %+v", name, m.Asked.Fact, m, m.Then.ID, m.Smaller, w)
				}
			}
		}
	}
}

// Where the need is only known to lie between two figures, only a shortfall of the least
// is sure, and what holds for both ends once all is told.
func TestBetween(t *testing.T) {
	for _, c := range []struct {
		least, most, have float64
		sure              bool
		want              Verdict
	}{
		{8, 12, 12, true, Met}, {8, 12, 12, false, NotKnown}, {8, 12, 10, true, NotKnown}, {8, 12, 10, false, NotKnown},
		{8, 12, 6, true, Short}, {8, 12, 6, false, Short}, {8, 8, 7.9, true, Borderline}, {8, 8, 7.9, false, NotKnown},
	} {
		if got := between(c.least, c.most, c.have, c.sure).verdict; got != c.want {
			t.Errorf("%+v: %s", c, got)
		}
	}
}

// A bevel at an angle that is not told takes at least its plate; none in one metal says
// nothing of another.
func TestBevelsHalfTold(t *testing.T) {
	bevels := func(pieces ...Piece) Job {
		return Job{Use: unit.Known(Maintenance), Features: unit.Known([]Feature{Bevels}), Pieces: pieces}
	}
	of := func(id metal.ID, t unit.Millimetre) Piece {
		return Piece{Metal: id, Thickest: unit.Known(unit.Millimetre(8)), Bevelled: unit.Known(t)}
	}
	for name, c := range map[string]struct {
		job  Job
		want Verdict
	}{
		"no angle":      {bevels(of(metal.MildSteel, 6)), NotKnown},
		"far too thick": {bevels(of(metal.MildSteel, 40)), Short},
		"none":          {bevels(of(metal.MildSteel, 0)), ""},
		"one of two":    {bevels(of(metal.MildSteel, 0), Piece{Metal: metal.Stainless, Thickest: unit.Known(unit.Millimetre(3))}), NotKnown},
	} {
		if got := verdict(candidate(t, Evaluate(c.job, ladder()), "s12"), RuleBevel); got != c.want {
			t.Errorf("%s: %q, want %q", name, got, c.want)
		}
	}
}

// What may yet decide is what the rep chose, or what was said; before anybody is asked
// it may be speed, gaps or anything else.
func TestWhatMayDecide(t *testing.T) {
	for name, c := range map[string]struct {
		change func(*Job)
		want   []Requirement
	}{
		"chosen":   {func(j *Job) { j.Overrule = &Overrule{Requirement: Ease} }, []Requirement{Ease}},
		"said":     {func(j *Job) { j.Annoys = []Annoyance{TooSlow} }, []Requirement{Speed}},
		"no words": {func(j *Job) { j.Overrule = &Overrule{} }, []Requirement{Distortion}},
		"nobody":   {func(j *Job) { j.Annoys = nil }, []Requirement{undecided, Speed, AcrossGaps}},
		"nothing":  {func(j *Job) { j.Annoys = []Annoyance{Nothing} }, []Requirement{undecided}},
		"gaps":     {func(j *Job) { j.Annoys, j.Features = []Annoyance{Nothing}, unit.Known([]Feature{Gaps}) }, []Requirement{AcrossGaps}},
		"a disc and much": {func(j *Job) {
			j.Annoys, j.Today, j.CutPerWeek = []Annoyance{Nothing}, unit.Known([]Process{Abrasive}), unit.Known(unit.Metre(200))
		}, []Requirement{Speed}},
		"an edge that is seen": {func(j *Job) { j.Annoys, j.EdgeNext = []Annoyance{Nothing}, unit.Known([]EdgeUse{Seen}) }, []Requirement{undecided}},
	} {
		j := answered(mildSteel(10, Maintenance))
		c.change(&j)
		if got := mayDecide(&j); !slices.Equal(got, c.want) {
			t.Errorf("%s: %v, want %v", name, got, c.want)
		}
	}
}
