package rules

import (
	"testing"

	"cutbrief/rules/metal"
	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// What one answer that is missing could change, and how much that matters: 4 nothing
// can be recommended without it, 3 the system, 2 what decides or a borderline system,
// 1 the site; else it is not asked for. All else is told, of 10 mm in repair work. By
// hand: 120 V run no system of the ladder; s12 draws 19.6 A all the time, more than 15 A
// carry; of 19 mm cut clean half is pierced, 9.5 mm, short of 10 by 5 %.
func TestWhatOneAnswerCouldChange(t *testing.T) {
	alone := func(rated, clean unit.Millimetre) system.Range {
		s := sys("alone", rated, clean, 25)
		s.HoldsGaps = true
		return system.Range{Systems: []system.System{s}}
	}
	for name, c := range map[string]struct {
		among    system.Range
		change   func(*Job)
		asked    Fact
		strength int
		could    string
	}{
		"use":            {ladder(), func(j *Job) { j.Use = unit.Maybe[Use]{} }, FactUse, 4, "nothing can be recommended without this answer"},
		"no metal":       {ladder(), func(j *Job) { j.Pieces = nil }, FactMetals, 4, "nothing can be recommended without this answer"},
		"no figures":     {ladder(), func(j *Job) { j.Pieces[0].Metal = metal.Other }, FactMetals, 4, string(onlyATrial)},
		"other figures":  {ladder(), func(j *Job) { j.Pieces = append(j.Pieces, Piece{Metal: metal.Other}) }, FactMetals, 3, string(onlyATrial)},
		"all figures":    {ladder(), func(*Job) {}, FactMetals, 0, ""},
		"volts":          {ladder(), func(j *Job) { j.Power.Volts = unit.Maybe[unit.Volt]{} }, FactVolts, 3, "could mean that no system of the range fits"},
		"volts alone":    {ladder(), func(j *Job) { j.Power.Volts = unit.Maybe[unit.Volt]{} }, FactPhases, 0, ""},
		"phases":         {ladder(), func(j *Job) { j.Power.Phases, j.Power.Volts = unit.Maybe[Phases]{}, unit.Known(unit.Volt(230)) }, FactPhases, 0, ""},
		"both":           {ladder(), func(j *Job) { j.Power = SitePower{} }, FactPhases, 3, "could mean that no system of the range fits"},
		"supply told":    {ladder(), func(j *Job) { j.Power.Volts = unit.Known(unit.Volt(120)) }, FactVolts, 0, ""},
		"breaker":        {alone(12, 16), func(j *Job) { j.Power.Breaker = unit.Maybe[unit.Ampere]{} }, FactBreaker, 1, "could mean that the site has to change first"},
		"pierce":         {ladder(), func(j *Job) { j.Start, j.Pieces[0].Pierced = unit.Known(InPlate), unit.Maybe[unit.Millimetre]{} }, FactPierced, 3, "could change the system to s16"},
		"nearly":         {alone(12, 19), func(j *Job) { j.Start, j.Pieces[0].Pierced = unit.Known(InPlate), unit.Maybe[unit.Millimetre]{} }, FactPierced, 2, "could make the system borderline"},
		"annoys":         {alone(16, 20), func(j *Job) { j.Annoys = nil }, FactAnnoysMost, 2, "could change what decides the sale"},
		"annoys, ladder": {ladder(), func(j *Job) { j.Annoys = nil }, FactAnnoysMost, 3, "could change the system to s16"},
		"overruled":      {ladder(), func(j *Job) { j.Annoys, j.Overrule = nil, &Overrule{Requirement: Ease} }, FactAnnoysMost, 0, ""},
		"said":           {ladder(), func(*Job) {}, FactAnnoysMost, 0, ""},
		"drier":          {ladder(), func(j *Job) { j.Air.Drier = unit.Maybe[Drier]{} }, FactDrier, 1, "could mean that the site has to change first"},
		"altitude":       {ladder(), func(j *Job) { j.Altitude = unit.Maybe[unit.Metre]{} }, FactAltitude, 0, ""},
	} {
		j := answered(mildSteel(10, Maintenance))
		c.change(&j)
		r := Evaluate(j, c.among)
		got := OpenQuestion{}
		for i, q := range r.Open {
			if q.Asked.Fact == c.asked {
				got = q
			}
			if i > 0 && q.Strength > r.Open[i-1].Strength {
				t.Errorf("%s: %+v is weaker than what follows", name, r.Open[i-1])
			}
		}
		if got.Strength != c.strength || got.Could.String() != c.could {
			t.Errorf("%s: %s %d, %q; want %d, %q", name, c.asked, got.Strength, got.Could, c.strength, c.could)
		}
		if could := c.could != "" && c.strength == 3; could && r.Firm {
			t.Errorf("%s: firm", name)
		}
	}
}

// What decides may still be open where the system is not: 200 m a week make speed
// decide, and an edge that is seen its quality.
func TestHintsThatCouldDecide(t *testing.T) {
	for fact, forget := range map[Fact]func(*Job){
		FactCutLength:  func(j *Job) { j.CutPerWeek = unit.Maybe[unit.Metre]{} },
		FactEdgeNext:   func(j *Job) { j.EdgeNext = unit.Maybe[[]EdgeUse]{} },
		FactToday:      func(j *Job) { j.Today = unit.Maybe[[]Process]{} },
		FactPlaces:     func(j *Job) { j.Places = unit.Maybe[[]Place]{} },
		FactExperience: func(j *Job) { j.Experience = unit.Maybe[Experience]{} },
	} {
		for _, c := range []struct {
			annoys []Annoyance
			among  system.Range
			want   int
		}{
			{[]Annoyance{Nothing}, system.Range{Systems: ladder().Systems[4:]}, couldDecide},
			{nil, system.Range{Systems: ladder().Systems[4:]}, couldNothing}, // the complaint comes first
			{[]Annoyance{Warps}, system.Range{Systems: ladder().Systems[4:]}, couldNothing},
		} {
			j := answered(mildSteel(4, Maintenance))
			j.Annoys = c.annoys
			forget(&j)
			strength := couldNothing
			for _, q := range Evaluate(j, c.among).Open {
				if q.Asked.Fact == fact {
					strength = q.Strength
				}
			}
			if strength != c.want {
				t.Errorf("%s, annoyed by %v: %d, want %d", fact, c.annoys, strength, c.want)
			}
		}
	}
}

// A system is open while a rule that could exclude it, or change the site, is not
// known; the edge and the heat are not such rules. A cold cut leaves no heat, so plasma
// comes near it at best; of a disc no band is held. Half of the busiest ten minutes
// is no answer.
func TestWhatLeavesASystemOpen(t *testing.T) {
	for name, c := range map[string]struct {
		change  func(*Job)
		open    bool
		rule    RuleID
		verdict Verdict
	}{
		"all told":   {func(*Job) {}, false, RuleHeat, Borderline},
		"breaker":    {func(j *Job) { j.Power.Breaker = unit.Maybe[unit.Ampere]{} }, true, RuleBreaker, NotKnown},
		"bevels":     {func(j *Job) { j.Features = unit.Maybe[[]Feature]{} }, true, RuleBevel, NotKnown},
		"edge":       {func(j *Job) { j.EdgeNext = unit.Maybe[[]EdgeUse]{} }, false, RuleEdge, NotKnown},
		"heat":       {func(j *Job) { j.Today = unit.Maybe[[]Process]{} }, false, RuleHeat, NotKnown},
		"gas":        {func(j *Job) { j.Today = unit.Known([]Process{OxyFuel, Abrasive}) }, false, RuleHeat, Met},
		"disc":       {func(j *Job) { j.Today = unit.Known([]Process{Abrasive}) }, false, RuleHeat, ""},
		"cuts alone": {func(j *Job) { j.BusyLength = unit.Maybe[unit.Metre]{} }, true, RuleDuty, NotKnown},
		"length":     {func(j *Job) { j.BusyCuts = unit.Maybe[float64]{} }, true, RuleDuty, NotKnown},
	} {
		j := answered(mildSteel(10, Maintenance))
		c.change(&j)
		s12 := candidate(t, Judge(j, ladder()), "s12")
		if got := verdict(s12, c.rule); s12.Open != c.open || got != c.verdict {
			t.Errorf("%s: open %v, %s %q; want %v, %q", name, s12.Open, c.rule, got, c.open, c.verdict)
		}
	}
}
