package assess_test

import (
	"math"
	"testing"
	"time"

	"cutbrief/assess"
	"cutbrief/rules"
	"cutbrief/rules/metal"
)

// TestDoubts: of a range its two ends; of an assumed figure a fifth either way,
// common practice, no source; of an assumed voltage a tenth, IEC 60038 Table 1,
// note; of an assumed choice any option. Nothing else is in doubt.
func TestDoubts(t *testing.T) {
	v := assess.New("doubts", time.Date(2026, 11, 28, 9, 0, 0, 0, time.UTC))
	choose := func(f rules.Fact, state assess.State, options ...string) {
		v.Set(assess.Answer{Question: f, Chosen: options, State: state})
	}
	say := func(f rules.Fact, id metal.ID, said string, state assess.State) {
		q, _ := assess.Find(f)
		a, _, err := v.Read(assess.Step{Question: q, Metal: id}, said)
		if err != nil {
			t.Fatal(err)
		}
		if state != "" {
			a.State = state
		}
		v.Set(a)
	}
	choose(rules.FactMetals, assess.Assumed, "mild-steel")
	choose(rules.FactUse, assess.Assumed, "mixed")
	choose(rules.FactStart, assess.Told, "edge")
	choose(rules.FactPhases, assess.Told, "single")
	say(rules.FactEveryday, metal.MildSteel, "about 6 mm", "")
	say(rules.FactThickest, metal.MildSteel, "8 to 12 mm", "")
	say(rules.FactRarest, metal.MildSteel, "none", assess.Assumed)
	say(rules.FactBreaker, "", "32 A", "")
	say(rules.FactVolts, "", "230 V", assess.Assumed)
	say(rules.FactCutLength, "", "10 m a day", assess.Assumed)
	job, _ := v.Job()
	want := map[rules.Fact][2]float64{rules.FactEveryday: {4.8, 7.2}, rules.FactThickest: {8, 12}, rules.FactVolts: {207, 253}, rules.FactUse: {}}
	if len(job.Doubts) != len(want) {
		t.Fatalf("doubts %v, want those of %v", job.Doubts, want)
	}
	for _, d := range job.Doubts {
		ends, doubted := want[d.Asked.Fact]
		switch {
		case !doubted:
			t.Errorf("%s is in doubt", d.Asked.Fact)
		case d.Asked.Fact == rules.FactUse:
			if len(d.Options) != 3 {
				t.Errorf("use may be one of %v, want three", d.Options)
			}
		case math.Abs(d.Low-ends[0]) > 1e-9 || math.Abs(d.High-ends[1]) > 1e-9:
			t.Errorf("%s lies from %v to %v, want %v", d.Asked.Fact, d.Low, d.High, ends)
		}
	}
}
