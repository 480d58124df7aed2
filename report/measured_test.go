package report

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"cutbrief/assess"
	"cutbrief/rules"
	"cutbrief/rules/metal"
	"cutbrief/rules/unit"
)

// By hand: 300 mm in 20 s is 900 mm/min; 18 s were predicted, and 20 is within
// 15 % of that. 21 s are not.
func TestMeasuredAgainstThePrediction(t *testing.T) {
	cut := assess.ShownCut{Cut: "everyday-straight", Length: unit.Known(unit.Millimetre(300)), Predicted: unit.Known(unit.Second(18))}
	if got := Measured(cut, unit.Metric).String(); got != "" {
		t.Errorf("no time was taken: %q", got)
	}
	cut.Took = unit.Known(unit.Second(20))
	if got, want := Measured(cut, unit.Metric).String(), "took 20 s for 300 mm (900 mm/min), 18 s predicted: on the mark"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	cut.Took = unit.Known(unit.Second(21))
	if got := Measured(cut, unit.Metric).String(); !strings.HasSuffix(got, "too slow") {
		t.Errorf("%q", got)
	}
	cut.Predicted, cut.Length = unit.Maybe[unit.Second]{}, unit.Maybe[unit.Millimetre]{}
	if got := Measured(cut, unit.Metric).String(); got != "took 21 s" {
		t.Errorf("%q: nothing is known to compare with", got)
	}
}

// shownFarm is the farm after an invented demonstration.
func shownFarm(t *testing.T) *assess.Visit {
	t.Helper()
	v := farm(t)
	s := v.DemonstrationOn("2026-12-01")
	s.System = "mid"
	s.Keep(assess.ShownCut{Cut: "everyday-straight", Name: "Straight cut, timed", Metal: metal.MildSteel, Thickness: unit.Known(unit.Millimetre(10)),
		Length: unit.Known(unit.Millimetre(300)), Took: unit.Known(unit.Second(20)), Predicted: unit.Known(unit.Second(18)), Result: assess.Good})
	s.Keep(assess.ShownCut{Cut: "bevel", Result: assess.Poor, Why: "the angle drifted"})
	s.Words, s.Outcome, s.Because = "It stays flat.", assess.Quote, "the owner decides"
	s.Objections = []assess.Objection{{Said: "Dear", Answer: "see what gas costs"}}
	s.Next = assess.Next{Step: "Send the quote.", Owner: "J. Weaver", Date: "2026-12-08"}
	return v
}

func TestShownIsOnTheBrief(t *testing.T) {
	if b := Build(farm(t), steps(), Options{}); len(b.Shown) != 0 {
		t.Errorf("nothing was shown: %+v", b.Shown)
	}
	b := Build(shownFarm(t), steps(), Options{})
	for _, want := range []Line{
		{Label: "Straight cut, timed, 10 mm mild steel", Value: "went well and took 20 s for 300 mm (900 mm/min), 18 s predicted: on the mark", Source: "common practice, no source"},
		{Label: "bevel", Value: "went poorly", Why: "the angle drifted"},
		{Label: "Customer said", Value: "It stays flat."},
		{Label: "Objection", Value: "Dear", Why: "Answer: see what gas costs"},
		{Label: "Outcome", Value: "a quote is wanted", Why: "the owner decides"},
		{Label: "Next", Value: "Send the quote; J. Weaver; by 8 December 2026"},
	} {
		if !slices.Contains(b.Shown, want) {
			t.Errorf("%+v is not in %+v", want, b.Shown)
		}
	}
}

func TestFollowNeedsADemonstration(t *testing.T) {
	if _, err := Follow(farm(t), steps(), Options{}); !errors.Is(err, ErrNotShown) {
		t.Errorf("%v", err)
	}
	f, err := Follow(shownFarm(t), steps(), Options{})
	if err != nil || f.ID != "farm" || f.Owner != "J. Weaver" || f.Due.Format("2006-01-02") != "2026-12-08" || f.Outcome != assess.Quote || len(f.Cuts) != 2 {
		t.Errorf("%+v, %v", f, err)
	}
}

// What a record holds cannot steer a terminal or turn a line round.
func TestShownIsCleaned(t *testing.T) {
	v := shownFarm(t)
	s := v.Latest()
	s.Words, s.Next.Owner, s.Cuts[0].Name, s.Cuts[1].Why = "\x1b[31mred", "a\u202eb", "x\r\ny", "z\x07"
	b := Build(v, steps(), Options{})
	f, _ := Follow(v, steps(), Options{})
	text := f.Words + f.Owner
	for _, l := range b.Shown {
		text += l.Label + l.Value + l.Why
	}
	if strings.ContainsAny(text, "\x1b\u202e\r\n\x07") {
		t.Errorf("%q", text)
	}
}

// The bench has the plan's cuts in its order, each with its prediction.
func TestBenchIsThePlan(t *testing.T) {
	v := farm(t)
	bench, brief := AtBench(v, steps(), Options{}), Build(v, steps(), Options{Checklist: true})
	if len(bench.Steps) == 0 || len(bench.Steps) != len(brief.Plan) || !slices.Equal(bench.Leaving, brief.Leaving) || !slices.Equal(bench.OnSite, brief.OnSite) {
		t.Fatalf("%d steps, %d in the plan", len(bench.Steps), len(brief.Plan))
	}
	timed := 0
	for i, s := range bench.Steps {
		if s.Row != brief.Plan[i] || len(s.Torch) == 0 || s.Avoid == "" {
			t.Errorf("step %d: %+v", i, s)
		}
		if s.Timed && s.Predicted.IsKnown() && s.Length > 0 {
			timed++
		}
	}
	if timed == 0 {
		t.Error("no step is timed")
	}
}

// The plan keeps to the time told, and says so.
func TestPlanKeepsToTheTimeTold(t *testing.T) {
	v := farm(t)
	say(t, v, rules.FactShowing, "", "12 min")
	b := Build(v, steps(), Options{})
	if len(b.Plan) == 0 || !strings.HasSuffix(b.PlanNote[0], " of the 12 min given.") {
		t.Errorf("%d cuts, %v", len(b.Plan), b.PlanNote)
	}
	if b := Build(farm(t), steps(), Options{}); !strings.HasSuffix(b.PlanNote[0], " of the usual 30 min.") {
		t.Errorf("%v", b.PlanNote)
	}
}
