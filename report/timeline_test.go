package report

import (
	"math"
	"strings"
	"testing"

	"cutbrief/assess"
	"cutbrief/rules"
	"cutbrief/rules/demonstration"
	"cutbrief/rules/message"
	"cutbrief/rules/unit"
)

// planned is a builder with a hand-made plan: 3 minutes, a set-up, 5 minutes.
// A set-up takes two minutes (the planner's own, common practice, no source),
// so that it is 10 minutes in all.
func planned(t *testing.T, given unit.Second) *builder {
	offered := steps()
	b := newBuilder(farm(t), &offered, Options{})
	b.plan = []demonstration.Cut{{Name: message.New("First"), Takes: 180}, {Name: message.New("Second"), Takes: 300, SetUp: true}}
	b.showing = demonstration.Programme{Cuts: b.plan, Given: given, Told: true, Takes: 600}
	return b
}

// Against 20 minutes, by hand: 0 to 3, set-up 3 to 5, 5 to 10, and 10 left.
func TestTimelineAgainstTheTimeThereIs(t *testing.T) {
	line := planned(t, 1200).timeline()
	want := []TimelineStep{
		{StepCut, 1, "First", "0 to 3 min", "3 min", 0, 0.15},
		{StepSetUp, 0, "change the plate or the setting", "3 to 5 min", "2 min", 0.15, 0.25},
		{StepCut, 2, "Second", "5 to 10 min", "5 min", 0.25, 0.5},
		{StepLeft, 0, "left for questions", "10 to 20 min", "10 min", 0.5, 1},
	}
	if len(line.Steps) != len(want) || line.GivenAt != 1 || !strings.Contains(line.Says, "10 min of the 20 min given") {
		t.Fatalf("%+v", line)
	}
	for i, got := range line.Steps {
		w := want[i]
		if got.Kind != w.Kind || got.Number != w.Number || got.Name != w.Name || got.When != w.When || got.Takes != w.Takes ||
			math.Abs(got.From-w.From) > 1e-9 || math.Abs(got.To-w.To) > 1e-9 {
			t.Errorf("step %d: %+v, want %+v", i, got, w)
		}
	}
	if n := len(line.Ticks); n != 5 || line.Ticks[1].Label != "5" || line.Ticks[1].At != 0.25 {
		t.Errorf("%+v", line.Ticks)
	}
}

// A plan longer than the time there is goes on beyond it: 8 of 10 minutes.
func TestTimelineBeyondTheTimeThereIs(t *testing.T) {
	line := planned(t, 480).timeline()
	if last := line.Steps[len(line.Steps)-1]; line.GivenAt != 0.8 || last.Kind != StepCut || last.To != 1 {
		t.Errorf("%+v", line)
	}
}

// The stretches of every kind of visit lie end to end from nothing to the end
// of the axis, numbered as the plan is.
func TestTimelineIsThePlan(t *testing.T) {
	for _, use := range []rules.Use{rules.Maintenance, rules.Mixed} {
		v := farm(t)
		choose(t, v, rules.FactUse, string(use))
		b := Build(v, steps(), Options{})
		if b.Timeline == nil {
			t.Fatalf("%s: no timeline", use)
		}
		at, number := 0.0, 0
		for _, s := range b.Timeline.Steps {
			if math.Abs(s.From-at) > 1e-9 || s.To < s.From {
				t.Errorf("%s: %+v does not follow %v", use, s, at)
			}
			if at = s.To; s.Kind == StepCut {
				number++
				if s.Number != number || b.Plan[number-1].Cut != s.Name || b.Plan[number-1].Takes != s.Takes {
					t.Errorf("%s: %+v is not cut %d: %+v", use, s, number, b.Plan[number-1])
				}
			}
		}
		if number != len(b.Plan) || math.Abs(at-1) > 1e-9 {
			t.Errorf("%s: %d of %d cuts, ending at %v", use, number, len(b.Plan), at)
		}
	}
	if b := Build(assess.New("x", farm(t).Created), steps(), Options{}); b.Timeline != nil {
		t.Errorf("%+v", b.Timeline)
	}
}
