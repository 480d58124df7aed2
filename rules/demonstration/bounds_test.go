package demonstration

import (
	"slices"
	"strings"
	"testing"

	"cutbrief/rules"
	"cutbrief/rules/metal"
	"cutbrief/rules/unit"
)

// situationOf is a shop's situation with changes.
func situationOf(everyday unit.Millimetre, change func(*rules.Job, *rules.Result)) *situation {
	job, result := shop(rules.Speed, everyday)
	if change != nil {
		change(&job, &result)
	}
	s := newSituation(&job, &result)
	return &s
}

// pieces replaces those of a shop.
func pieces(list ...rules.Piece) func(*rules.Job, *rules.Result) {
	return func(j *rules.Job, _ *rules.Result) { j.Pieces = list }
}

// noneDecides leaves it open which metal decides.
func noneDecides(_ *rules.Job, r *rules.Result) { r.Need = unit.Maybe[rules.Need]{} }

func everydayOf(id metal.ID, t unit.Millimetre) rules.Piece {
	return rules.Piece{Metal: id, Everyday: unit.Known(t)}
}

// The rows of the catalogue: minutes, the length in mm, whether the time is taken and
// whether the speed model holds; common practice, no source. A circle of 400 mm is
// π·400 = 1257 mm long, one of 80 mm 251.
func TestCatalogueRows(t *testing.T) {
	type row struct {
		minutes        float64
		length         unit.Millimetre
		timed, noSpeed bool
	}
	want := map[string]row{
		"thin-straight": {3, 300, true, false}, "large-circle": {5, 1257, false, false}, "everyday-straight": {3, 300, true, false},
		"inside-circle": {4, 251, false, false}, "own-hand": {5, 300, true, false}, "bevel": {4, 200, true, false}, "gaps": {3, 300, false, true},
		"coated": {3, 300, true, false}, "hard-metal": {3, 300, true, false}, "at-the-work": {10, 300, false, false}, "gouge": {4, 0, false, true},
		"sever": {4, 100, true, false}, "side-by-side": {8, 300, true, false}, "own-piece": {5, 0, false, false},
	}
	for _, r := range Cuts() {
		if got := (row{r.Minutes, r.length, r.timed, r.noSpeed}); got != want[r.ID] {
			t.Errorf("%s: %v, want %v", r.ID, got, want[r.ID])
		}
		if r.last != (r.ID == "own-piece") || r.always != (r.ID == "everyday-straight") {
			t.Errorf("%s: last %t, always %t", r.ID, r.last, r.always)
		}
	}
	if len(want) != len(Cuts()) {
		t.Errorf("%d rows", len(Cuts()))
	}
}

// Beside what decides a cut is worth 20 if it is wanted, 30 as the everyday cut, 30 as
// the customer's own piece; common practice, no source.
func TestWorthOfACut(t *testing.T) {
	s := situationOf(6, func(j *rules.Job, r *rules.Result) {
		r.Critical.Requirement = ""
		j.Features = unit.Known([]rules.Feature{rules.Bevels})
		j.Pieces = append(j.Pieces, everydayOf(metal.Stainless, 6))
	})
	for id, want := range map[string]int{"everyday-straight": 30, "own-piece": 50, "bevel": 20, "hard-metal": 20, "inside-circle": 0} {
		if c := rowOf(t, id).candidate(s, piece{metal.MildSteel, 6}); c.worth != want {
			t.Errorf("%s is worth %d, want %d", id, c.worth, want)
		}
	}
}

// Which rows are shown at the bounds of what they need.
func TestNeedsAtTheirBounds(t *testing.T) {
	feature := func(f ...rules.Feature) func(*rules.Job, *rules.Result) {
		return func(j *rules.Job, _ *rules.Result) { j.Features = unit.Known(f) }
	}
	today := func(p ...rules.Process) func(*rules.Job, *rules.Result) {
		return func(j *rules.Job, _ *rules.Result) { j.Today = unit.Known(p) }
	}
	lowest := func(a unit.Ampere) func(*rules.Job, *rules.Result) {
		return func(_ *rules.Job, r *rules.Result) { r.First.System.OutputMin = a }
	}
	gouging := func(h rules.HotWork) func(*rules.Job, *rules.Result) {
		return func(j *rules.Job, r *rules.Result) {
			r.First.System.Gouges, j.HotWork, j.Features = true, unit.Known(h), unit.Known([]rules.Feature{rules.Gouging})
		}
	}
	for _, c := range []struct {
		id       string
		everyday unit.Millimetre
		change   func(*rules.Job, *rules.Result)
		shown    bool
	}{
		{"thin-straight", 6, lowest(40), true}, {"thin-straight", 6, lowest(41), false},
		{"inside-circle", 6, feature(rules.Holes), true},
		{"large-circle", 6, feature(rules.Circles), true}, {"large-circle", 2, nil, true}, {"large-circle", 6, nil, false},
		{"gouge", 6, gouging(rules.HotWorkFree), true}, {"gouge", 6, gouging(rules.HotWorkSensitive), false},
		{"side-by-side", 6, today(rules.SentOut), false}, {"side-by-side", 6, today(rules.OtherWay), false}, {"side-by-side", 6, today(rules.BandSaw), true},
		{"everyday-straight", 0.8, nil, true}, {"everyday-straight", 0, nil, false}, {"everyday-straight", 6, noneDecides, false},
	} {
		if _, lacks, ok := rowOf(t, c.id).lacks(situationOf(c.everyday, c.change)); ok != c.shown {
			t.Errorf("%s in %v mm: %t (%s)", c.id, c.everyday, ok, lacks)
		}
	}
}

// Nothing to cut is said as such, and not as a need.
func TestNothingToCut(t *testing.T) {
	if _, lacks, ok := rowOf(t, "everyday-straight").lacks(situationOf(0, nil)); ok || lacks != "" {
		t.Errorf("nothing is cut every day: %t, it needs %q", ok, lacks)
	}
}

// What the customer's work holds. Sheet ends at 3 mm; common practice, no source.
func TestWhatTheWorkHolds(t *testing.T) {
	place := func(p rules.Place) func(*rules.Job, *rules.Result) {
		return func(j *rules.Job, _ *rules.Result) { j.Places = unit.Known([]rules.Place{p}) }
	}
	start := func(at rules.Start) func(*rules.Job, *rules.Result) {
		return func(j *rules.Job, _ *rules.Result) { j.Start = unit.Known(at) }
	}
	for _, c := range []struct {
		name   string
		asks   func(*situation) bool
		change func(*rules.Job, *rules.Result)
		want   bool
	}{
		{"sheet of 3 mm", cutsSheet, pieces(everydayOf(metal.MildSteel, 3)), true},
		{"sheet of 0.8 mm", cutsSheet, pieces(everydayOf(metal.MildSteel, 0.8)), true},
		{"sheet of 3.1 mm", cutsSheet, pieces(everydayOf(metal.MildSteel, 3.1)), false},
		{"sheet of nothing", cutsSheet, pieces(everydayOf(metal.MildSteel, 0)), false},
		{"sheet untold", cutsSheet, pieces(rules.Piece{Metal: metal.MildSteel}), false},
		{"start in the plate", startsInside, start(rules.InPlate), true},
		{"start anywhere", startsInside, start(rules.Anywhere), true},
		{"start at an edge", startsInside, start(rules.AtEdge), false},
		{"holes", startsInside, func(j *rules.Job, _ *rules.Result) { j.Features = unit.Known([]rules.Feature{rules.Holes}) }, true},
		{"start untold", startsInside, nil, false},
		{"in place", goesToTheWork, place(rules.InPlace), true},
		{"up high", goesToTheWork, place(rules.UpHigh), true},
		{"in the field", goesToTheWork, place(rules.Field), true},
		{"at the bench", goesToTheWork, place(rules.Bench), false},
		{"coated steel", cutsCoated, pieces(everydayOf(metal.Galvanised, 3)), true},
		{"weathered steel", cutsCoated, place(rules.Field), true},
		{"neither", cutsCoated, place(rules.Bench), false},
		{"fume of mild steel", func(*situation) bool { return smokes(metal.MildSteel) }, nil, false},
		{"fume of cast iron", func(*situation) bool { return smokes(metal.CastIron) }, nil, false},
		{"fume of copper", func(*situation) bool { return smokes(metal.Copper) }, nil, true},
		{"generator", fromGenerator, func(j *rules.Job, _ *rules.Result) { j.Power.Source = unit.Known(rules.GenSet) }, true},
		{"mains and generator", fromGenerator, func(j *rules.Job, _ *rules.Result) { j.Power.Source = unit.Known(rules.MainsGen) }, true},
		{"mains", fromGenerator, func(j *rules.Job, _ *rules.Result) { j.Power.Source = unit.Known(rules.Mains) }, false},
	} {
		if got := c.asks(situationOf(6, c.change)); got != c.want {
			t.Errorf("%s: %t", c.name, got)
		}
	}
}

// Which piece each cut is shown on: the shop cuts 6 mm mild steel every day.
func TestPiecesOfCuts(t *testing.T) {
	rare := func(id metal.ID, mm unit.Millimetre) rules.Piece {
		return rules.Piece{Metal: id, Rarest: unit.Known(mm)}
	}
	told := func(mm unit.Millimetre) func(*rules.Job, *rules.Result) {
		return func(j *rules.Job, _ *rules.Result) { j.Pieces[0].Pierced = unit.Known(mm) }
	}
	decides := func(id metal.ID, list ...rules.Piece) func(*rules.Job, *rules.Result) {
		return func(j *rules.Job, r *rules.Result) {
			j.Pieces, r.Need = list, unit.Known(rules.Need{Metal: id, Thickness: 6})
		}
	}
	mild, coatedSteel, stainless, aluminium := everydayOf(metal.MildSteel, 6), everydayOf(metal.Galvanised, 4), everydayOf(metal.Stainless, 5), everydayOf(metal.Aluminium, 3)
	none := piece{}
	for _, c := range []struct {
		name   string
		asks   func(*situation) (piece, bool)
		change func(*rules.Job, *rules.Result)
		want   piece
	}{
		{"everyday", (*situation).everyday, nil, piece{metal.MildSteel, 6}},
		{"everyday of two", (*situation).everyday, decides(metal.MildSteel, mild, stainless), piece{metal.MildSteel, 6}},
		{"everyday, open", (*situation).everyday, noneDecides, none},
		{"thickest", (*situation).thickest, nil, piece{metal.MildSteel, 8}},
		{"thickest, open", (*situation).thickest, noneDecides, none},
		{"pierced as cut", pierced, nil, piece{metal.MildSteel, 6}},
		{"pierced thinner", pierced, told(4), piece{metal.MildSteel, 4}},
		{"pierced in sheet", pierced, told(0.8), piece{metal.MildSteel, 0.8}},
		{"pierced thicker", pierced, told(10), piece{metal.MildSteel, 6}},
		{"pierced nowhere", pierced, told(0), piece{metal.MildSteel, 6}},
		{"too thick to pierce", pierced, pieces(everydayOf(metal.MildSteel, 30)), piece{metal.MildSteel, 2}},
		{"pierced, open", pierced, noneDecides, none},
		{"mesh", mesh, nil, piece{metal.MildSteel, 3}},
		{"plate to bevel", bevelPlate, nil, piece{metal.MildSteel, 6}},
		{"coated beside", coated, decides(metal.MildSteel, mild, coatedSteel), piece{metal.Galvanised, 4}},
		{"coated decides", coated, decides(metal.Galvanised, coatedSteel, mild), piece{metal.MildSteel, 6}},
		{"coated alone", coated, decides(metal.Galvanised, coatedSteel), none},
		{"coated, open", coated, func(j *rules.Job, r *rules.Result) { j.Pieces = []rules.Piece{coatedSteel}; noneDecides(j, r) }, piece{metal.Galvanised, 4}},
		{"hard beside", hardMetal, decides(metal.MildSteel, mild, stainless), piece{metal.Stainless, 5}},
		{"hard decides", hardMetal, decides(metal.Stainless, stainless, mild), none},
		{"the other hard", hardMetal, decides(metal.Stainless, stainless, aluminium), piece{metal.Aluminium, 3}},
		{"hard, open", hardMetal, func(j *rules.Job, r *rules.Result) { j.Pieces = []rules.Piece{stainless}; noneDecides(j, r) }, none},
		{"daily of nothing", func(s *situation) (piece, bool) { return s.daily(metal.MildSteel) },
			pieces(rules.Piece{Metal: metal.MildSteel, Everyday: unit.Known(unit.Millimetre(0)), Thickest: unit.Known(unit.Millimetre(8))}), piece{metal.MildSteel, 8}},
		{"daily sheet", func(s *situation) (piece, bool) { return s.daily(metal.MildSteel) }, pieces(everydayOf(metal.MildSteel, 0.8)), piece{metal.MildSteel, 0.8}},
		{"sheet brought", (*situation).sheet, nil, piece{metal.MildSteel, 2}},
		{"own sheet", (*situation).sheet, pieces(everydayOf(metal.MildSteel, 3)), piece{metal.MildSteel, 3}},
		{"no sheet any more", (*situation).sheet, pieces(everydayOf(metal.MildSteel, 3.1)), piece{metal.MildSteel, 2}},
		{"thinnest sheet", (*situation).sheet, pieces(everydayOf(metal.MildSteel, 2.5), everydayOf(metal.Stainless, 1.5), everydayOf(metal.MildSteel, 2.8), everydayOf(metal.Aluminium, 1.5)), piece{metal.Stainless, 1.5}},
		{"sheet of 0.8 mm", (*situation).sheet, pieces(everydayOf(metal.MildSteel, 0.8), rules.Piece{Metal: metal.Stainless}), piece{metal.MildSteel, 0.8}},
		{"rarest as steel, 11·1.15 = 12.65", (*situation).rarest, pieces(rare(metal.MildSteel, 12), rare(metal.Stainless, 11)), piece{metal.Stainless, 11}},
		{"rarest with figures", (*situation).rarest, pieces(rare(metal.MildSteel, 12), rare(metal.Other, 20)), piece{metal.MildSteel, 12}},
		{"rarest of two alike", (*situation).rarest, pieces(rare(metal.MildSteel, 12), rare(metal.Galvanised, 12)), piece{metal.MildSteel, 12}},
		{"rarest sheet", (*situation).rarest, pieces(rare(metal.MildSteel, 0.8)), piece{metal.MildSteel, 0.8}},
		{"nothing rare", (*situation).rarest, nil, none},
	} {
		got, ok := c.asks(situationOf(6, c.change))
		if ok != (c.want != none) || ok && got != c.want {
			t.Errorf("%s: %v %t, want %v", c.name, got, ok, c.want)
		}
	}
}

// The test system is rated 16, severs 25 mm: with a nominal step of 6 % it cuts
// 16/0.94 = 17.02 mm; stainless counts 1.15, so 14 mm are 16.1 and 15 mm 17.25. What
// is parted has no such step.
func TestWithinAndParts(t *testing.T) {
	s := situationOf(6, nil)
	for p, want := range map[piece]bool{
		{metal.MildSteel, 0.8}: true, {metal.MildSteel, 16}: true, {metal.MildSteel, 17}: true, {metal.MildSteel, 17.1}: false,
		{metal.Stainless, 14}: true, {metal.Stainless, 15}: false, {metal.MildSteel, 0}: false, {metal.Other, 6}: false,
	} {
		if s.within(p, s.system.Rated) != want {
			t.Errorf("%v within %v mm is not %t", p, s.system.Rated, want)
		}
	}
	for p, want := range map[piece]bool{
		{metal.MildSteel, 0.8}: true, {metal.MildSteel, 25}: true, {metal.MildSteel, 25.1}: false, {metal.MildSteel, 0}: false, {metal.Other, 6}: false,
	} {
		if s.parts(p) != want {
			t.Errorf("%v is parted: not %t", p, want)
		}
	}
}

// The angle of a bevel is the customer's up to 45°, and 45° where none is told.
func TestBevelAngle(t *testing.T) {
	if got := situationOf(6, nil).angle(); got != 45 {
		t.Errorf("untold: %v", got)
	}
	for told, want := range map[unit.Degree]unit.Degree{0: 45, 0.5: 0.5, 30: 30, 45: 45, 60: 45} {
		s := situationOf(6, func(j *rules.Job, _ *rules.Result) { j.BevelAngle = unit.Known(told) })
		if got := s.angle(); got != want {
			t.Errorf("told %v: %v, want %v", told, got, want)
		}
	}
}

// Thin sheet ends at 3 mm, small stand-off at 80 A; the arc trails 5 to 10°. Common
// practice, no source. By hand, 0.5 mm at 1000 mm/min take 0.03 s.
func TestSettingsAtTheirBounds(t *testing.T) {
	s := situationOf(6, nil)
	for thick, want := range map[unit.Millimetre]unit.Ampere{3: 40, 3.1: 60} {
		if got := settingFor(s.system, piece{metal.MildSteel, thick}); got.Output != want || got.Trailing != [2]unit.Degree{5, 10} {
			t.Errorf("%v mm: %+v", thick, got)
		}
	}
	for amps, want := range map[unit.Ampere][2]unit.Millimetre{80: {3, 6}, 80.5: {5, 10}} {
		s.system.OutputMax = amps
		if got := settingFor(s.system, piece{metal.MildSteel, 10}); got.StandOff != want {
			t.Errorf("%v A: %+v", amps, got)
		}
	}
	s.system.OutputMax = 60
	if got := s.paced(OperatingPoint{Output: 60, Length: 0.5}, piece{metal.MildSteel, 8}).Seconds.Or(0); got < 0.02999 || got > 0.03001 {
		t.Errorf("half a millimetre takes %v s", got)
	}
}

// Why a cut is in the plan. The first and the last of those that show what decides say
// so; what is as important comes next, then what the cut is.
func TestWhyACutIsChosen(t *testing.T) {
	job, result := shop(rules.Speed, 6)
	job.Features = unit.Known([]rules.Feature{rules.Bevels, rules.Holes})
	job.Today = unit.Known([]rules.Process{rules.OxyFuel})
	said := map[string]string{}
	for _, c := range Choose(job, result).Cuts {
		said[c.ID] = string(c.Chosen)
	}
	for id, want := range map[string]string{"everyday-straight": "comes first", "side-by-side": "It shows what decides.", "inside-circle": "part of the work", "own-piece": "comes last"} {
		if !strings.Contains(said[id], want) {
			t.Errorf("%s: %q, want %q", id, said[id], want)
		}
	}
	job, result = shop(rules.AcrossGaps, 6) // which nothing shows on this system
	result.Critical.Tie = []rules.Requirement{rules.Ease}
	tied := 0
	for _, c := range Choose(job, result).Cuts {
		want, proves := map[string]string{"everyday-straight": "made most days", "own-piece": "will remember"}[c.ID], rules.Requirement("")
		if slices.Contains(rowOf(t, c.ID).Proves, rules.Ease) {
			want, proves = "as important", rules.Ease
			tied++
		}
		if want != "" && (!strings.Contains(string(c.Chosen), want) || c.Proves != proves) {
			t.Errorf("%s: %q, proves %q", c.ID, c.Chosen, c.Proves)
		}
	}
	if tied == 0 {
		t.Error("what is as important is not shown")
	}
	// Mild steel asks for no extraction to be brought.
	if s := situationOf(6, nil); slices.Contains((&candidate{row: rowOf(t, "everyday-straight"), piece: piece{metal.MildSteel, 6}}).bring(s), fumeExtraction) {
		t.Error("mild steel asks for extraction")
	}
}

// The cuts that prove what decides, as the plan has them; none without a system.
func TestProofs(t *testing.T) {
	job, result := shop(rules.Speed, 6)
	got, first := Proofs(&job, &result)
	var want []string
	for _, c := range Choose(job, result).Cuts {
		if c.Proves == rules.Speed {
			want = append(want, c.ID)
		}
	}
	if len(want) < 2 || !slices.Equal(got, want) || first.String() != "Straight cut, timed" {
		t.Errorf("%v, first %q; want %v", got, first, want)
	}
	result.First = nil
	if got, first := Proofs(&job, &result); got != nil || !first.IsEmpty() {
		t.Errorf("without a system: %v %q", got, first)
	}
}

// What is given for questions: of 30 min 5, so that cuts have 25, unless what decides
// can then not be shown, or nothing can.
func TestRoomForQuestions(t *testing.T) {
	cut := func(id string, minutes float64, shows bool, worth int) candidate {
		return candidate{row: &CatalogueCut{ID: id, Minutes: minutes}, shows: shows, worth: worth}
	}
	for name, c := range map[string]struct {
		able []candidate
		want string
	}{
		"25 min":                     {[]candidate{cut("a", 5, true, 0), cut("b", 20, false, 20)}, "a b"},
		"25.5 min":                   {[]candidate{cut("a", 5, true, 0), cut("b", 20.5, false, 20)}, "a"},
		"only 28 min show it":        {[]candidate{cut("a", 28, true, 0), cut("b", 10, false, 20)}, "a"},
		"nothing shows it":           {[]candidate{cut("a", 20, false, 30), cut("b", 8, false, 20)}, "a"},
		"nothing shows it in 25 min": {[]candidate{cut("a", 28, false, 20)}, "a"},
	} {
		var got []string
		for _, c := range within(c.able, 1800).order {
			got = append(got, c.row.ID)
		}
		if strings.Join(got, " ") != c.want {
			t.Errorf("%s: %v, want %s", name, got, c.want)
		}
	}
}

// Orders by hand. The customer's own piece closes where it may, though another order
// takes a set-up less; and the set-up of the closing cut is kept to the end.
func TestArrangeByHand(t *testing.T) {
	cut := func(id string, amps unit.Ampere, shows, own bool) *candidate {
		return &candidate{row: &CatalogueCut{ID: id, last: own}, setUp: setUp{output: amps}, shows: shows}
	}
	for _, c := range []struct {
		chosen []*candidate
		want   string
	}{
		{[]*candidate{cut("a", 1, true, false), cut("own", 1, false, true), cut("b", 2, false, false)}, "a b own"},
		{[]*candidate{cut("a", 1, true, false), cut("b", 2, false, false), cut("c", 3, false, false), cut("d", 2, true, false)}, "a c b d"},
	} {
		var got []string
		for _, c := range arrange(c.chosen) {
			got = append(got, c.row.ID)
		}
		if strings.Join(got, " ") != c.want {
			t.Errorf("%v, want %s", got, c.want)
		}
	}
}
