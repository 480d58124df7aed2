package rules

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"cutbrief/rules/metal"
	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// said is an input as a reader is shown it, with the fact it is from.
func said(in Input) string {
	parts := []string{in.Name.String() + ":", in.Op, string(in.Word)}
	switch {
	case in.Value.Kind == unit.Price:
		parts = append(parts, "a sum of")
		fallthrough
	case in.Value.Kind != unit.None:
		parts = append(parts, unit.Show(in.Value, unit.Metric, unit.Nearest))
	case in.Word == "":
		parts = append(parts, fmt.Sprint(in.Value.Value))
	}
	if in.From.Fact != "" {
		parts = append(parts, "("+string(in.From.Fact)+")")
	}
	if in.From.Metal != "" {
		parts = append(parts, "of", string(in.From.Metal))
	}
	return strings.Join(slices.DeleteFunc(parts, func(s string) bool { return s == "" }), " ")
}

// richlyTold is a visit to s12 in which every rule has inputs to name.
func richlyTold() Job {
	mm := func(t unit.Millimetre) unit.Maybe[unit.Millimetre] { return unit.Known(t) }
	j := busy(answered(mildSteel(10, Maintenance)), 4, 0.3)
	j.Pieces = append(j.Pieces, Piece{metal.Stainless, mm(5), mm(9), mm(12), mm(6), mm(8)})
	j.Start, j.EdgeNext, j.Today = unit.Known(InPlate), unit.Known([]EdgeUse{Machined, Welded}), unit.Known([]Process{OxyFuel})
	j.Features, j.BevelAngle = unit.Known([]Feature{Bevels, Gaps, Gouging}), unit.Known(unit.Degree(30))
	j.Power = SitePower{Source: unit.Known(MainsGen), Phases: unit.Known(ThreePhase), Volts: unit.Known(unit.Volt(400)), Breaker: unit.Known(unit.Ampere(25)),
		Cord: unit.Known(unit.Metre(20)), CordSection: unit.Known(unit.SquareMillimetre(4)), Generator: unit.Known(unit.KilovoltAmpere(10))}
	j.Air.Drier, j.Air.Delivery, j.Air.Receiver = unit.Known(Separator), unit.Known(unit.LitrePerMinute(120)), unit.Known(unit.Litre(100))
	return j
}

// kinds are what a need is counted in; a yes or no in nothing.
var kinds = map[RuleID]unit.Kind{
	RuleClean: unit.Thickness, RuleSever: unit.Thickness, RulePierce: unit.Thickness, RuleBevel: unit.Thickness, RuleDuty: unit.Share, RuleBreaker: unit.Current,
	RuleCord: unit.Share, RuleCordLoad: unit.Current, RuleGenerator: unit.ApparentPower, RuleAirFlow: unit.Flow, RuleAirPress: unit.Pressure, RuleBudget: unit.Price,
}

// What each check names, worked by hand. Stainless counts 1.15 times: 10.35, 13.8, 6.9
// and 8/cos 30° · 1.15 = 10.62 mm; so 10.35/12 of 48 A are worked at, 41.4 A. 400 V give
// 230.9 V of one phase, on which 30 A · (96.56 · 41.4)/(99.2 · 48) · 200/230.9 = 21.81 A
// are drawn; at 60 % · (48/41.4)² = 80.7 % that is 19.59 A all the time. A cut of 0.3 m
// in 10 mm at 500 · 12/10 = 600 mm/min takes 30 s, so four take 20 %. 30 l/min are
// short: 100 l from 8 to 5 bar last 300 · 100/101.325/30 min = 592 s, and 15 l for one
// cut need 5.07 l. The cord has 5.923 Ω/km at 70 °C: 2 · 21.81 · 5.923 · 0.02 = 5.17 V,
// 2.24 %, and carries 20 + 10 · 0.691/1.952 = 23.54 A. 1.25 · 230.9 V · 21.81 A are 6.30
// kVA. The cut leaves 317.0 − 165.8 = 151 J/mm, which change 0.62 mm of steel.
func TestInputsByHand(t *testing.T) {
	supply := []string{"supply: three-phase (supply-phase)", "voltage: 400 V (supply-voltage)", "one phase of it, to neutral: 231 V"}
	draw := append(supply[:3:3], "working output: 41 A", "drawn while cutting: 22 A", "effective over ten minutes: 20 A")
	cord := append(draw[:6:6], "cord, one way: 20 m (cord-length)", "conductor size: 4 mm² (cord-section)")
	of := func(name, figure, fact string) []string {
		return []string{name + ", stainless: " + figure + " (" + fact + ") of stainless", "factor for stainless: × 1.15"}
	}
	want := map[RuleID]struct {
		verdict    Verdict
		need, have float64
		inputs     []string
	}{
		RuleClean:     {Met, 10.35, 12, []string{"thickest regular clean cut, stainless: 9 mm (thickest-clean) of stainless", "factor for repair work: × 1 (use)", "factor for stainless: × 1.15"}},
		RuleSever:     {Met, 13.8, 20, of("rare thickest", "12 mm", "rare-thickest")},
		RulePierce:    {Met, 6.9, 8, of("thickest pierced", "6 mm", "thickest-pierced")},
		RuleBevel:     {Met, 10.623, 16, append(of("thickest bevelled", "8 mm", "bevelled-thickness"), "angle from square: ÷ cos 30° (bevel-angle)")},
		RuleGaps:      {Short, 0, 0, []string{"kinds of cut: gaps (features)"}},
		RuleGouging:   {Short, 0, 0, []string{"kinds of cut: gouging (features)"}},
		RuleSupply:    {Met, 0, 0, supply},
		RuleDuty:      {Met, 20, 60, []string{"cuts in the busiest ten minutes: 4 (busy-cuts)", "length of each: 0.3 m (busy-length)", "speed in the everyday thickness: 600 mm/min", "output: 48 A"}},
		RuleBreaker:   {Met, 19.589, 25, append(draw[:6:6], "conductors carry at least (NEC 630.11): 20 A", "breaker at most, by the plate (NEC 630.12): 60 A")},
		RuleCord:      {Met, 2.2376, 5, cord},
		RuleCordLoad:  {Met, 19.589, 23.54, cord},
		RuleGenerator: {Met, 6.2966, 10, draw},
		RuleAirFlow:   {Short, 150, 120, []string{"air delivery: 120 l/min (air-delivery)", "altitude: 0 m (altitude)", "receiver bridges: 9.9 min (air-receiver)", "receiver that would bridge one busy cut: 5.1 l"}},
		RuleAirPress:  {Met, 5.0347, 8, []string{"inlet pressure of the system: 5 bar", "lost in hose and couplings: + 0.03 bar"}},
		RuleAirDry:    {Borderline, 0, 0, []string{"how the air is dried: separator (air-drier)", "usual dew point at line pressure: 20 °C"}},
		RuleEdge:      {Met, 0, 0, []string{"what happens next: machined (edge-next)", "how the torch is guided: by-hand (guidance)", "what it needs: leave metal on: the machine takes the hardened edge off", "metal to leave on: 2 mm"}},
		RuleHeat:      {Met, 0, 0, []string{"today's way: oxy-fuel (today)", "its heated band, at most: 4 mm", "hand plasma's, at most: 2 mm", "worked out for the everyday cut in mild steel: 0.62 mm"}},
	}
	r := Evaluate(richlyTold(), ladder())
	for _, check := range candidate(t, r, "s12").Checks {
		w, listed := want[check.Rule]
		if !listed {
			continue
		}
		var inputs []string
		for _, in := range check.Inputs {
			inputs = append(inputs, said(in))
		}
		if got := strings.Join(inputs, "\n"); got != strings.Join(w.inputs, "\n") {
			t.Errorf("%s names\n%s\nwant\n%s", check.Rule, got, strings.Join(w.inputs, "\n"))
		}
		near := func(a, b float64) bool { return math.Abs(a-b) <= 1e-4*math.Abs(b) }
		if check.Need.Kind != kinds[check.Rule] || check.Have.Kind != kinds[check.Rule] {
			t.Errorf("%s is of kind %v", check.Rule, check.Need.Kind)
		}
		if check.Verdict != w.verdict || !near(check.Need.Value, w.need) || !near(check.Have.Value, w.have) {
			t.Errorf("%s: %s, %g of %g; want %s, %g of %g", check.Rule, check.Verdict, check.Have.Value, check.Need.Value, w.verdict, w.have, w.need)
		}
		if margin, known := check.Margin.Get(); known != (w.need > 0) || known && !near(1+margin, w.have/w.need) {
			t.Errorf("%s: a margin of %v, want %g − 1", check.Rule, check.Margin, w.have/w.need)
		}
		delete(want, check.Rule)
	}
	for id := range want {
		t.Errorf("%s was not judged", id)
	}
	if c := candidate(t, r, "s12"); math.Abs(c.Excess-12/10.35) > 1e-9 {
		t.Errorf("an excess of %g, want 12/10.35", c.Excess)
	}
}

// Other ways to say it: a drier's own dew point and its class of ISO 8573-1, an edge
// that is welded by its range of ISO 9013 at 10 mm, 0.8 + 0.02 · 10 = 1 mm, the everyday
// cut where the thickest is not told, a supply that fits as it is, no mild steel.
func TestInputsOtherwise(t *testing.T) {
	everyday := mildSteel(10, Mixed)
	everyday.Pieces[0].Thickest = unit.Maybe[unit.Millimetre]{}
	thinner := mildSteel(10, Mixed)
	thinner.Pieces[0].Thickest = unit.Known(unit.Millimetre(8))
	site := answered(mildSteel(10, Maintenance))
	site.EdgeNext, site.Air.Drier, site.Annoys = unit.Known([]EdgeUse{Welded}), unit.Known(Refrigerant), []Annoyance{TooSlow}
	damp, tilted := mildSteel(10, Mixed), mildSteel(10, Mixed)
	damp.Air.Drier = unit.Known(Separator)
	tilted.Features, tilted.Pieces[0].Bevelled = unit.Known([]Feature{Bevels}), unit.Known(unit.Millimetre(6))
	desiccant := site
	desiccant.Air.Drier = unit.Known(Desiccant)
	for _, c := range []struct {
		job  Job
		rule RuleID
		want string
	}{
		{everyday, RuleClean, "everyday thickness, mild steel: 10 mm (everyday-thickness) of mild-steel; factor for light production: × 1.5 (use)"},
		{thinner, RuleClean, "everyday thickness, mild steel: 10 mm (everyday-thickness) of mild-steel; factor for light production: × 1.5 (use)"},
		{mildSteel(10, Production), RuleClean, "thickest regular clean cut, mild steel: 10 mm (thickest-clean) of mild-steel; factor for production: × 2 (use)"},
		{site, RuleClean, "thickest regular clean cut, mild steel: 10 mm (thickest-clean) of mild-steel; factor where cutting speed decides: × 1.5"},
		{site, RuleSupply, "supply: single-phase (supply-phase); voltage: 230 V (supply-voltage)"},
		{site, RuleEdge, "what happens next: welded (edge-next); how the torch is guided: by-hand (guidance); what it needs: welding needs a clean edge with an even gap; slag removed, and ground where the drawing says so; squareness range of ISO 9013 it needs: 4; the edge may lean by: 1 mm"},
		{site, RuleAirDry, "how the air is dried: refrigerant (air-drier); usual dew point at line pressure: 3 °C; water class of ISO 8573-1: 4"},
		{desiccant, RuleAirDry, "how the air is dried: desiccant (air-drier); usual dew point at line pressure: -40 °C; water class of ISO 8573-1: 2"},
		{damp, RuleAirDry, "how the air is dried: separator (air-drier)"}, // at a pressure that is not told
		{tilted, RuleBevel, "thickest bevelled, mild steel: 6 mm (bevelled-thickness) of mild-steel"},
		{mildSteel(10, Mixed), RuleAirPress, "inlet pressure of the system: 5 bar"},
		{mildSteel(10, Mixed), RuleDuty, ""}, {mildSteel(10, Mixed), RuleBreaker, ""}, {mildSteel(10, Mixed), RuleAirFlow, ""},
		{mildSteel(10, Mixed), RuleEdge, ""}, {mildSteel(10, Mixed), RuleHeat, ""}, {mildSteel(10, Mixed), RuleBevel, ""}, {mildSteel(10, Mixed), RuleSever, ""},
	} {
		var inputs []string
		for _, in := range checkOf(candidateOf(ptr(Evaluate(c.job, ladder())), "s12"), c.rule).Inputs {
			inputs = append(inputs, said(in))
		}
		if got := strings.Join(inputs, "; "); got != c.want {
			t.Errorf("%s names\n%s\nwant\n%s", c.rule, got, c.want)
		}
	}
}

func ptr[T any](v T) *T { return &v }

// A need names what it is for: the piece, the factor and its comfort, and what is to
// be severed and pierced, all in mild steel. By hand as above; of two pieces that count
// alike the first told decides, and where light production is as much as speed asks
// the use is named.
func TestNeedByHand(t *testing.T) {
	n, _ := Evaluate(richlyTold(), ladder()).Need.Get()
	if n.Metal != metal.Stainless || n.Thickness != 9 || math.Abs(float64(n.Severed.Or(0))-13.8) > 1e-9 || math.Abs(float64(n.Pierced.Or(0))-6.9) > 1e-9 || len(n.Inputs) != 3 {
		t.Errorf("%+v", n)
	}
	twice := mildSteel(8, Mixed)
	twice.Annoys = []Annoyance{TooSlow}
	twice.Pieces = append(twice.Pieces, Piece{Metal: metal.Galvanised, Thickest: unit.Known(unit.Millimetre(8))})
	if n, _ := Evaluate(twice, ladder()).Need.Get(); n.Metal != metal.MildSteel || n.Rule != RuleMixed || n.Rated != 12 || n.Comfort != 16 || n.Factor != 1.5 {
		t.Errorf("%+v", n)
	}
	if c := candidate(t, Evaluate(twice, ladder()), "s16"); math.Abs(c.Excess-16.0/12) > 1e-9 {
		t.Errorf("an excess of %g, want 16/12", c.Excess)
	}
	both := system.Range{Systems: ladder().Systems[3:]}
	if r := Evaluate(twice, both); r.First == nil || r.Second == nil || r.Second.System.ID != "s25" {
		t.Errorf("a range of two: %+v, %+v", r.First, r.Second)
	}
	if r := Evaluate(mildSteel(20, Maintenance), both); r.First == nil || r.First.System.ID != "s25" || r.Second != nil {
		t.Errorf("a range of two, one too small: %+v, %+v", r.First, r.Second)
	}
	alone := system.Range{Systems: ladder().Systems[3:4]}
	if r := Evaluate(twice, alone); r.First == nil || r.Second != nil {
		t.Errorf("a range of one: %+v", r)
	}
	if r := Evaluate(twice, system.Range{}); r.Outcome != NoneFits || len(r.Candidates) != 0 {
		t.Errorf("a range of none: %s", r.Outcome)
	}
}

// What was said stands: who complains of heavy pieces is sized by them, whatever the
// length cut would say of speed. None in this metal asks for no check. More pieces
// than there are metals are judged like one that is as thick as the thickest.
func TestNeedOtherwise(t *testing.T) {
	reach := mildSteel(25, Maintenance)
	reach.CutPerWeek, reach.Today = unit.Known(unit.Metre(200)), unit.Known([]Process{Abrasive})
	for said, want := range map[Annoyance]unit.Millimetre{TooThick: 25, TooSlow: 37.5, Warps: 25, Nothing: 37.5} {
		reach.Annoys = []Annoyance{said}
		if n, _ := Evaluate(reach, ladder()).Need.Get(); n.Rated != want {
			t.Errorf("%s: %g mm, want %g", said, n.Rated, want)
		}
	}
	none := answered(mildSteel(10, Maintenance))
	none.Start, none.Features = unit.Known(InPlate), unit.Known([]Feature{Bevels})
	for _, c := range Evaluate(none, ladder()).Candidates {
		for _, check := range c.Checks {
			if check.Rule == RuleSever || check.Rule == RulePierce || check.Rule == RuleBevel {
				t.Errorf("%s of none: %s", check.Rule, check.Verdict)
			}
		}
	}
	many := mildSteel(10, Maintenance)
	for i := range 9 {
		many.Pieces = append(many.Pieces, Piece{Metal: metal.MildSteel, Thickest: unit.Known(unit.Millimetre(11 + i))})
	}
	if n, _ := Evaluate(many, ladder()).Need.Get(); n.Rated != 19 {
		t.Errorf("of 10 to 19 mm: %g mm, want 19", n.Rated)
	}
}
