package demonstration

import (
	"testing"

	"cutbrief/rules"
	"cutbrief/rules/metal"
	"cutbrief/rules/system"
	"cutbrief/rules/unit"

	"pgregory.net/rapid"
)

// shop is a hand-built job and result: mild steel on an invented system.
func shop(critical rules.Requirement, everyday unit.Millimetre) (rules.Job, rules.Result) {
	s := &system.System{ID: "test", Name: "Test 60", Rated: 16, CleanMax: 20, Severance: 25, OutputMin: 20, OutputMax: 60}
	job := rules.Job{Pieces: []rules.Piece{{Metal: metal.MildSteel, Everyday: unit.Known(everyday), Thickest: unit.Known(everyday + 2)}}}
	result := rules.Result{
		Outcome:  rules.Recommended,
		First:    &rules.Candidate{System: s},
		Need:     unit.Known(rules.Need{Metal: metal.MildSteel, Thickness: everyday + 2}),
		Critical: rules.Critical{Requirement: critical},
	}
	return job, result
}

func ids(plan []Cut) []string {
	var list []string
	for _, c := range plan {
		list = append(list, c.ID)
	}
	return list
}

func has(plan []Cut, id string) bool {
	for _, c := range plan {
		if c.ID == id {
			return true
		}
	}
	return false
}

// The requirement that decides is shown by the first cut, for every
// requirement the catalogue can prove on this job. Common practice, no source.
func TestCriticalRequirementIsShownFirst(t *testing.T) {
	for _, r := range []rules.Requirement{rules.Speed, rules.Distortion, rules.EdgeQuality, rules.Ease, rules.RunningCost, rules.Portability, rules.Reach, rules.AcrossGaps} {
		job, result := shop(r, 6)
		result.First.System.HoldsGaps = true
		plan := Plan(job, result)
		if len(plan) == 0 || plan[0].Proves != r {
			t.Errorf("%s: plan %v", r, ids(plan))
		}
	}
}

func TestNoSystemNoPlan(t *testing.T) {
	job, result := shop(rules.Speed, 6)
	result.First = nil
	if plan := Plan(job, result); plan != nil {
		t.Errorf("plan %v without a system", ids(plan))
	}
}

func TestLeavesOutWhatTheSystemDoesBadly(t *testing.T) {
	job, result := shop(rules.AcrossGaps, 6)
	job.Features = unit.Known([]rules.Feature{rules.Gaps, rules.Bevels})
	job.Pieces[0].Rarest = unit.Known(unit.Millimetre(30)) // over the severance of 25 and its 6 %
	if plan := Plan(job, result); has(plan, "gaps") || has(plan, "sever") {
		t.Errorf("plan %v shows what the system cannot do", ids(plan))
	}
	result.First.System.CleanMax = 7 // a 6 mm bevel at 45° is 8.5 mm of metal, 21 % over
	if plan := Plan(job, result); has(plan, "bevel") {
		t.Errorf("plan %v shows a bevel through 8.5 mm on 7 mm", ids(plan))
	}
}

// Settings: up to 40 A an open tip rests on the work; above, 3 to 10 mm of
// stand-off, or a shielded tip made for contact. Common practice, no source.
func TestSettings(t *testing.T) {
	s := &system.System{OutputMin: 20, OutputMax: 60}
	if set := settingFor(s, piece{metal.MildSteel, 2}); set.Output != 40 || !set.OnWork || set.Shielded {
		t.Errorf("thin sheet: %+v, want 40 A with the open tip on the work", set)
	}
	if set := settingFor(s, piece{metal.MildSteel, 10}); set.Output != 60 || set.OnWork || set.StandOff != [2]unit.Millimetre{3, 6} {
		t.Errorf("10 mm: %+v, want 60 A at 3 to 6 mm", set)
	}
	s.ContactTip = true
	if set := settingFor(s, piece{metal.MildSteel, 10}); !set.OnWork || !set.Shielded {
		t.Errorf("contact tip: %+v", set)
	}
	big := &system.System{OutputMin: 45, OutputMax: 125}
	if set := settingFor(big, piece{metal.MildSteel, 25}); set.StandOff != [2]unit.Millimetre{5, 10} || set.Lead != [2]unit.Degree{5, 10} {
		t.Errorf("125 A: %+v", set)
	}
	if big.OutputMin <= contactMost {
		t.Error("45 A is not low enough for an open tip on the work")
	}
}

// Whatever the job, the plan is short, each cut appears once, stays within the
// severance of the system, and within its output range.
func TestPlanProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		critical := rapid.SampledFrom([]rules.Requirement{"", rules.Speed, rules.EdgeQuality, rules.Reach, rules.Ease}).Draw(t, "critical")
		job, result := shop(critical, unit.Millimetre(rapid.Float64Range(0.5, 40).Draw(t, "everyday")))
		job.Features = unit.Known(rapid.SliceOfDistinct(rapid.SampledFrom([]rules.Feature{rules.Bevels, rules.Gaps, rules.Circles, rules.Holes}), func(f rules.Feature) rules.Feature { return f }).Draw(t, "features"))
		job.Pieces[0].Rarest = unit.Known(unit.Millimetre(rapid.Float64Range(0, 60).Draw(t, "rarest")))
		result.First.System.OutputMin = unit.Ampere(rapid.Float64Range(10, 60).Draw(t, "least output"))
		plan := Plan(job, result)
		seen := map[string]bool{}
		for _, c := range plan {
			if seen[c.ID] || c.Thickness <= 0 || c.Thickness > 25*1.06+1e-9 || c.Setting.Output < result.First.System.OutputMin || c.Setting.Output > 60 {
				t.Errorf("%s: %+v", c.ID, c)
			}
			seen[c.ID] = true
		}
		if len(plan) > len(catalogue) {
			t.Errorf("%d cuts", len(plan))
		}
	})
}

// Oxy-fuel does not cut stainless: it is no yardstick there, and is one in mild
// steel. Common practice, no source.
func TestSideBySideOnlyWhereTodaysWayCuts(t *testing.T) {
	for id, want := range map[metal.ID]bool{metal.MildSteel: true, metal.Stainless: false} {
		job, result := shop(rules.Speed, 6)
		job.Pieces[0].Metal = id
		job.Today = unit.Known([]rules.Process{rules.OxyFuel})
		need, _ := result.Need.Get()
		need.Metal = id
		result.Need = unit.Known(need)
		if plan := Plan(job, result); has(plan, "side-by-side") != want {
			t.Errorf("%s: plan %v, side by side wanted: %v", id, ids(plan), want)
		}
	}
}

// A bench shear ends at 10 gauge mild steel, about 3.4 mm (FAA-H-8083-31, from
// memory), and a nibbler at about that: asked to part 10 mm they show nothing.
// In 2 mm a shear is a fair yardstick; a saw beside it parts the plate.
func TestSideBySideOnlyWithinWhatTodaysToolParts(t *testing.T) {
	for _, c := range []struct {
		thick unit.Millimetre
		today []rules.Process
		want  bool
	}{
		{10, []rules.Process{rules.Shear}, false}, {10, []rules.Process{rules.Nibbler}, false},
		{2, []rules.Process{rules.Shear}, true}, {10, []rules.Process{rules.Shear, rules.BandSaw}, true},
	} {
		job, result := shop(rules.Speed, c.thick)
		job.Today = unit.Known(c.today)
		if plan := Plan(job, result); has(plan, "side-by-side") != c.want {
			t.Errorf("%v in %v mm: plan %v, side by side wanted: %v", c.today, c.thick, ids(plan), c.want)
		}
	}
}

// Plan chooses the cuts for the recommended system, in the order shown. It
// returns nothing if there is no recommended system.
func Plan(job rules.Job, result rules.Result) []Cut { return Choose(job, result).Cuts }
