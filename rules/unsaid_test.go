package rules

import (
	"testing"

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

// Oxy-fuel leaves no heat in a metal it does not cut: there is no band of today
// to measure plasma against.
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
