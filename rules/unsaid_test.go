package rules

import (
	"testing"

	"pgregory.net/rapid"

	"cutbrief/rules/metal"
	"cutbrief/rules/unit"
)

// busy adds a busiest ten minutes to a job.
func busy(j Job, cuts float64, each unit.Metre) Job {
	j.BusyCuts, j.BusyLength = unit.Known(cuts), unit.Known(each)
	return j
}

// One metal's everyday cut says nothing of a metal whose everyday cut is not
// told: 2 cuts of 0.1 m fit any plate, yet the verdict waits.
func TestDutyWaitsForEveryMetal(t *testing.T) {
	j := busy(mildSteel(6, Maintenance), 2, 0.1)
	j.Pieces = append(j.Pieces, Piece{Metal: metal.Stainless, Thickest: unit.Known(unit.Millimetre(6))})
	s12 := candidate(t, Judge(j, ladder()), "s12")
	if got := verdict(s12, RuleDuty); got != NotKnown {
		t.Errorf("duty %q, want not known", got)
	}
	j.Pieces[1].Everyday = unit.Known(unit.Millimetre(3))
	if got := verdict(candidate(t, Judge(j, ladder()), "s12"), RuleDuty); got != Met {
		t.Errorf("duty %q once told, want met", got)
	}
}

// No cuts in the busiest ten minutes ask nothing of the duty cycle, and how
// long each of none is need not be told.
func TestNoBusyCutsAskNoDuty(t *testing.T) {
	j := mildSteel(6, Maintenance)
	j.BusyCuts = unit.Known(0.0)
	if got := verdict(candidate(t, Judge(j, ladder()), "s12"), RuleDuty); got != "" {
		t.Errorf("duty %q, want no verdict", got)
	}
}

// Where cutting across gaps decides the sale, a system that loses its arc there
// is no answer, whether or not grating was named among what is cut.
func TestGapsCountWhereTheyDecide(t *testing.T) {
	j := mildSteel(10, Maintenance)
	j.Features = unit.Known([]Feature{Straight})
	j.Annoys = []Annoyance{LosesArc}
	offered := ladder()
	offered.Systems[3].HoldsGaps = true // s16
	r := Judge(j, offered)
	if r.First == nil || r.First.System.ID != "s16" {
		t.Fatalf("first %v, want s16, the only one that holds its arc", r.First)
	}
	if got := verdict(candidate(t, r, "s12"), RuleGaps); got != Short {
		t.Errorf("s12 across gaps %q, want falls short", got)
	}
}

// The usual bands are for mild steel: there is no band of today to measure plasma
// against in a metal that gas does not cut.
func TestGasIsNoYardstickWhereItDoesNotCut(t *testing.T) {
	j := mildSteel(6, Maintenance)
	j.Today = unit.Known([]Process{OxyFuel})
	if got := verdict(candidate(t, Judge(j, ladder()), "s12"), RuleHeat); got != Met {
		t.Errorf("heat in mild steel %q, want met", got)
	}
	j.Pieces[0].Metal = metal.Stainless
	if got := verdict(candidate(t, Judge(j, ladder()), "s12"), RuleHeat); got != "" {
		t.Errorf("heat in stainless %q, want no verdict", got)
	}
}

// What no figures are held for cannot be called firm, however much is told, and
// asking its thickness again would not help.
func TestNoFiguresAreNeverFirm(t *testing.T) {
	j := mildSteel(6, Maintenance)
	j.Pieces = append(j.Pieces, Piece{Metal: metal.Other, Everyday: unit.Known(unit.Millimetre(3)), Thickest: unit.Known(unit.Millimetre(3))})
	r := Evaluate(answered(j), ladder())
	if r.Outcome != Recommended || r.Firm || !listed(r.Open, Asked{Fact: FactMetals}) {
		t.Errorf("outcome %s, firm %v, open %v; want it recommended, not firm, the metals open", r.Outcome, r.Firm, r.Open)
	}
	j.Pieces = j.Pieces[1:]
	if r = Evaluate(j, ladder()); r.Outcome != NotYet || len(r.Missing) != 1 || r.Missing[0] != (Asked{Fact: FactMetals}) {
		t.Errorf("%s, missing %v; want not yet, the metals missing", r.Outcome, r.Missing)
	}
}

// A customer with nothing to complain of leaves what decides to the other
// answers: with discs today and 200 m a week speed decides on two hints, and 7.5
// mm ask for 1.5 x 7.5 = 11.25 mm instead of 7.5. While the length cut is not
// told, 8 mm rated is not firm.
func TestWhatMayStillDecideIsOpen(t *testing.T) {
	j := answered(mildSteel(7.5, Maintenance))
	j.Annoys, j.Today, j.CutPerWeek = []Annoyance{Nothing}, unit.Known([]Process{Abrasive}), unit.Maybe[unit.Metre]{}
	r := Evaluate(j, ladder())
	if r.First == nil || r.First.System.ID != "s8" || r.Firm || !listed(r.Open, Asked{Fact: FactCutLength}) {
		t.Fatalf("first %v, firm %v, open %v; want s8, not firm, the length open", r.First, r.Firm, r.Open)
	}
	j.CutPerWeek = unit.Known(unit.Metre(10))
	if r = Evaluate(j, ladder()); !r.Firm || r.First.System.ID != "s8" {
		t.Errorf("%s, not firm once all is told: %v", r.First.System.ID, r.Open)
	}
	j.CutPerWeek = unit.Known(unit.Metre(200))
	if r = Evaluate(j, ladder()); r.First.System.ID != "s12" {
		t.Errorf("%s with 200 m a week, want s12", r.First.System.ID)
	}
}

// answered tells everything about a job in repair work that no rule objects to.
func answered(j Job) Job {
	j = busy(j, 1, 0.1)
	for i := range j.Pieces {
		p := &j.Pieces[i]
		p.Rarest, p.Pierced, p.Bevelled = unit.Known(unit.Millimetre(0)), unit.Known(unit.Millimetre(0)), unit.Known(unit.Millimetre(0))
	}
	j.CutPerWeek, j.DaysAWeek = unit.Known(unit.Metre(10)), unit.Known(2.0)
	j.Start, j.Features, j.EdgeNext = unit.Known(AtEdge), unit.Known([]Feature{Straight}), unit.Known([]EdgeUse{Scrap})
	j.Guidance, j.Places = unit.Known(FreeHand), unit.Known([]Place{Bench})
	j.Power = SitePower{Source: unit.Known(Mains), Phases: unit.Known(SinglePhase), Volts: unit.Known(unit.Volt(230)), Breaker: unit.Known(unit.Ampere(32)), Cord: unit.Known(unit.Metre(0))}
	j.Air = SiteAir{Delivery: unit.Known(unit.LitrePerMinute(400)), Pressure: unit.Known(unit.Bar(8)), HoseBore: unit.Known(unit.Millimetre(10)), HoseLength: unit.Known(unit.Metre(10)), Drier: unit.Known(Refrigerant)}
	j.Altitude, j.HotWork = unit.Known(unit.Metre(0)), unit.Known(HotWorkFree)
	j.Today, j.Annoys, j.Experience = unit.Known([]Process{Shear}), []Annoyance{Warps}, unit.Known(Experienced)
	return j
}

// A system far larger than the work draws little while turned down: 6 mm on s16,
// taken for its gouging, asks for 24 A of its 64 A. A 16 A breaker carries that,
// but the plate's 20 A effective, by which the conductors are laid, it does not.
func TestBreakerBelowThePlateIsBorderline(t *testing.T) {
	j := answered(mildSteel(6, Maintenance))
	j.Features = unit.Known([]Feature{Gouging})
	offered := ladder()
	offered.Systems[3].Gouges = true
	for breaker, want := range map[unit.Ampere]Verdict{16: Borderline, 20: Met} {
		j.Power.Breaker = unit.Known(breaker)
		r := Judge(j, offered)
		if r.First == nil || r.First.System.ID != "s16" {
			t.Fatalf("first %v, want s16", r.First)
		}
		if got := verdict(candidate(t, r, "s16"), RuleBreaker); got != want {
			t.Errorf("%g A breaker: %s, want %s", breaker, got, want)
		}
	}
}

// The margin stops where any rule gives way. 10 mm in maintenance on s12 draws
// 30 x P(40)/P(48) x 200/230 A: P(40) = 96 x 40 = 3840 W, P(48) = 99.2 x 48 =
// 4762 W, so 21.0 A; its duty of 60 x (48/40)^2 = 86.4 % makes 19.6 A effective.
// A 20 A breaker gives way before 12 mm, where 26.1 x 0.775 = 20.2 A are drawn.
func TestMarginStopsWhereTheSiteGivesWay(t *testing.T) {
	j := answered(mildSteel(10, Maintenance))
	j.Power.Breaker = unit.Known(unit.Ampere(20))
	r := Evaluate(j, ladder())
	if r.First == nil || r.First.System.ID != "s12" || r.First.Status != Fits {
		t.Fatalf("first %v, want s12, fits", r.First)
	}
	m := r.Margins[0]
	if m.HoldsTo.Value <= 10 || m.HoldsTo.Value >= 12 {
		t.Errorf("holds to %g mm, want more than 10 and less than 12", m.HoldsTo.Value)
	}
	if m.Then == nil || m.ThenStatus == FallsShort {
		t.Errorf("then %v %s, want a system named", m.Then, m.ThenStatus)
	}
}

// Up to where a margin holds, the same system leads and stands the same.
func TestMarginsHold(t *testing.T) {
	offered := mixedLadder()
	rapid.Check(t, func(t *rapid.T) {
		job := drawJob(t)
		r := Judge(job, offered)
		for _, m := range r.Margins {
			if m.HoldsTo.Value <= m.Now.Value {
				continue
			}
			moved := job.clone()
			share := rapid.Float64Range(0, 1).Draw(t, "share")
			eachPiece(&moved, func(p *Piece) {
				if p.Metal == m.Asked.Metal {
					*thicknessOf(p, m.Asked.Fact) = unit.Known(unit.Millimetre(blend(m.Now.Value, m.HoldsTo.Value, share)))
				}
			})
			got := Judge(moved, offered)
			if got.First == nil || got.First.System != r.First.System || got.First.Status != r.First.Status {
				t.Fatalf("%v of %g mm holds to %g mm, but %g of the way %v leads", m.Asked, m.Now.Value, m.HoldsTo.Value, share, got.First)
			}
		}
	})
}

// No torch is held at 70 degrees from square: every system falls short without
// a number, and the one that comes nearest in the rest stays the nearest.
func TestBevelSteeperThanATorchIsHeld(t *testing.T) {
	j := mildSteel(6, Maintenance)
	j.Features, j.BevelAngle = unit.Known([]Feature{Bevels}), unit.Known(unit.Degree(70))
	j.Pieces[0].Bevelled = unit.Known(unit.Millimetre(6))
	for _, c := range Judge(j, ladder()).Candidates {
		for _, check := range c.Checks {
			if check.Rule == RuleBevel && (check.Verdict != Short || check.Need.Value != 0 || check.Margin.IsKnown()) {
				t.Errorf("%s: %s, needs %g, margin %v; want falls short and no number", c.System.ID, check.Verdict, check.Need.Value, check.Margin)
			}
		}
	}
}

// A pierce of 20 mm in a shop that cuts 10 mm at most is a slip of one of the two.
func TestPierceThickerThanAnyCutIsFlagged(t *testing.T) {
	j := mildSteel(10, Maintenance)
	j.Pieces[0].Pierced = unit.Known(unit.Millimetre(20))
	flagged := func() bool {
		for _, f := range Judge(j, ladder()).Flags {
			if f.ID == "pierced-over-cut" {
				return true
			}
		}
		return false
	}
	if !flagged() {
		t.Error("20 mm pierced of 10 mm cut is not flagged")
	}
	j.Pieces[0].Rarest = unit.Known(unit.Millimetre(20))
	if flagged() {
		t.Error("flagged although 20 mm is severed now and then")
	}
}

// A carriage moves up to 7620 mm/min, so 20 cuts of 1 m take 2.6 min; by hand at
// 1500 mm/min they take 13.3 of the ten minutes. How the torch is guided is not
// told, so nothing is firm though every system has a torch for a carriage.
func TestGuidanceNotToldLeavesTheDutyOpen(t *testing.T) {
	offered := ladder()
	for i := range offered.Systems {
		offered.Systems[i].Mechanised = true
	}
	j := busy(answered(mildSteel(1, Maintenance)), 20, 1)
	j.Guidance = unit.Known(Mechanised)
	if r := Evaluate(j, offered); !r.Firm {
		t.Fatalf("not firm on a carriage: %v", r.Open)
	}
	j.Guidance = unit.Maybe[Guidance]{}
	if r := Evaluate(j, offered); r.Firm {
		t.Errorf("firm, outcome %s", r.Outcome)
	}
}

// A budget told in another currency than the prices is never held against
// them: nothing here converts money.
func TestBudgetInAnotherCurrencyIsNotJudged(t *testing.T) {
	offered := ladder()
	offered.Currency = "EUR"
	for i := range offered.Systems {
		offered.Systems[i].Price = unit.Known(unit.Money(1900))
	}
	j := answered(mildSteel(6, Maintenance))
	j.Budget = unit.Known(unit.Money(1800))
	for in, want := range map[string]Verdict{"": Short, "EUR": Short, "USD": ""} {
		j.BudgetIn = in
		if got := verdict(candidate(t, Judge(j, offered), "s8"), RuleBudget); got != want {
			t.Errorf("told in %q: %q, want %q", in, got, want)
		}
	}
}

// Which of the three ways a breaker can be borderline is said, not all three.
// By hand, s8 at 230 V: 30 x 200/230 = 26.1 A while cutting 8 mm, 26.1 x root of
// 60 % = 20.2 A effective; in 6 mm it works at 24 A and draws 26.1 x (24 x 89.6)
// / (32 x 92.8) = 18.9 A all the time, under the plate's 20 A effective. 100 A is
// above 200 % of the plate's 30 A.
func TestABorderlineBreakerSaysWhich(t *testing.T) {
	for _, c := range []struct {
		thickness unit.Millimetre
		breaker   unit.Ampere
		want      string
	}{
		{8, 21, "it may trip in a long cut"},
		{6, 19.5, "it holds the system only turned down"},
		{6, 100, "it is too large to protect the system"},
	} {
		j := answered(mildSteel(c.thickness, Maintenance))
		j.Power.Breaker = unit.Known(c.breaker)
		for _, check := range candidate(t, Judge(j, ladder()), "s8").Checks {
			if check.Rule == RuleBreaker && (check.Verdict != Borderline || string(check.Almost) != c.want) {
				t.Errorf("%v A: %s, %q; want %q", c.breaker, check.Verdict, check.Almost, c.want)
			}
		}
	}
}
