package rules

import (
	"math/rand/v2"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"cutbrief/rules/unit"
)

// worse orders verdicts; one that is not known says nothing.
var worse = []Verdict{Met, Borderline, Short}

// eased is a rule that a second result judges more kindly than a first, or asks
// less of; false if there is none.
func eased(before, after *Result) (string, bool) {
	for i := range before.Candidates {
		c := &before.Candidates[i]
		other := candidateOf(after, c.System.ID)
		for _, check := range c.Checks {
			now := checkOf(other, check.Rule)
			if now == nil || check.Verdict == NotKnown || now.Verdict == NotKnown {
				continue
			}
			if slices.Index(worse, now.Verdict) < slices.Index(worse, check.Verdict) || now.Need.Value < check.Need.Value*(1-1e-9) {
				return c.System.ID + ": " + string(check.Rule), true
			}
		}
	}
	return "", false
}

func candidateOf(r *Result, id string) *Candidate {
	for i := range r.Candidates {
		if r.Candidates[i].System.ID == id {
			return &r.Candidates[i]
		}
	}
	return nil
}

func checkOf(c *Candidate, id RuleID) *Check {
	for i := range c.Checks {
		if c.Checks[i].Rule == id {
			return &c.Checks[i]
		}
	}
	return nil
}

// Thicker never needs less, of any system, by any rule about what is cut: not of
// capacity, nor of the duty cycle, the supply or the cord. Pieces of 25 mm begin
// to count as heavy section, and sheet up to 3 and 6 mm as thin.
func TestThickerAsksNoLessOfAnySystem(t *testing.T) {
	offered := mixedLadder()
	asks := []RuleID{RuleClean, RuleSever, RulePierce, RuleBevel, RuleBreaker, RuleCord, RuleCordLoad, RuleGenerator}
	rapid.Check(t, func(t *rapid.T) {
		job := drawJob(t)
		thicker := job.clone()
		p := &thicker.Pieces[rapid.IntRange(0, len(job.Pieces)-1).Draw(t, "piece")]
		field := thicknessOf(p, rapid.SampledFrom([]Fact{FactEveryday, FactThickest, FactRarest, FactPierced, FactBevelled}).Draw(t, "which"))
		now, known := field.Get()
		if !known {
			return
		}
		*field = unit.Known(now * unit.Millimetre(rapid.SampledFrom([]float64{1.0001, 1.1, 1.5, 3}).Draw(t, "times")))
		before, after := Evaluate(job, offered), Evaluate(thicker, offered)
		keep := func(r *Result) {
			for i := range r.Candidates {
				r.Candidates[i].Checks = slices.DeleteFunc(r.Candidates[i].Checks, func(c Check) bool { return !slices.Contains(asks, c.Rule) })
			}
		}
		keep(&before)
		keep(&after)
		if what, easier := eased(&before, &after); easier {
			t.Fatalf("%s asks less of %v than of %v", what, *field, now)
		}
	})
}

// A heavy section never takes away what speed asks: 24.9 mm at 200 m a week in
// maintenance asks 1.5 times as much, and so does 25 mm, though reach decides.
func TestHeavySectionKeepsWhatSpeedAsks(t *testing.T) {
	for thickest, want := range map[unit.Millimetre]unit.Millimetre{16: 24, 24: 36, 25: 37.5} {
		job := mildSteel(thickest, Maintenance)
		job.CutPerWeek = unit.Known(unit.Metre(200))
		r := Evaluate(job, ladder())
		if need, _ := r.Need.Get(); need.Rated != want {
			t.Errorf("%g mm needs %g mm, want %g", thickest, need.Rated, want)
		}
		if reach := r.Critical.Requirement == Reach; reach != (thickest >= 25) {
			t.Errorf("%g mm: %s decides", thickest, r.Critical.Requirement)
		}
	}
}

// A larger breaker never harms, until it is above 200 % of what the plate names,
// and then the check says so; nor does a longer hose ever help, nor less air.
func TestMoreFromTheSiteNeverHarms(t *testing.T) {
	offered := mixedLadder()
	rapid.Check(t, func(t *rapid.T) {
		job := drawJob(t)
		more := job.clone()
		times := rapid.Float64Range(1, 3).Draw(t, "times")
		which := rapid.SampledFrom([]string{"breaker", "generator", "delivery", "pressure", "section", "shorter cord", "shorter hose", "lower"}).Draw(t, "which")
		grow := map[string]func(){
			"breaker":      func() { scale(&more.Power.Breaker, times) },
			"generator":    func() { scale(&more.Power.Generator, times) },
			"delivery":     func() { scale(&more.Air.Delivery, times) },
			"pressure":     func() { scale(&more.Air.Pressure, times) },
			"section":      func() { scale(&more.Power.CordSection, times) },
			"shorter cord": func() { scale(&more.Power.Cord, 1/times) },
			"shorter hose": func() { scale(&more.Air.HoseLength, 1/times) },
			"lower":        func() { scale(&more.Altitude, 1/times) },
		}
		grow[which]()
		before, after := Evaluate(job, offered), Evaluate(more, offered)
		for i := range after.Candidates {
			checks := &after.Candidates[i].Checks
			*checks = slices.DeleteFunc(*checks, func(c Check) bool {
				return c.Rule == RuleBreaker && c.Almost == "it is too large to protect the system"
			})
		}
		if what, easier := easedVerdict(&after, &before); easier {
			t.Fatalf("%s %g times as much: %s is worse for it", which, times, what)
		}
	})
}

// easedVerdict is eased by verdicts alone: a hose at more pressure loses less.
func easedVerdict(before, after *Result) (string, bool) {
	for i := range before.Candidates {
		for k := range before.Candidates[i].Checks {
			before.Candidates[i].Checks[k].Need.Value = 0
		}
	}
	return eased(before, after)
}

func scale[T ~float64](m *unit.Maybe[T], times float64) {
	if v, ok := m.Get(); ok {
		*m = unit.Known(v * T(times))
	}
}

// In which order metals, kinds of cut, places and ways were told, and in which
// order a range lists its systems, changes nothing that is concluded.
func TestOrderNeverMatters(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		offered := mixedLadder()
		job := drawJob(t)
		shuffled := job.clone()
		mix := rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "order"), 0))
		shuffle(mix, shuffled.Pieces)
		shuffleIn(mix, &shuffled.Features)
		shuffleIn(mix, &shuffled.Places)
		shuffleIn(mix, &shuffled.EdgeNext)
		shuffleIn(mix, &shuffled.Today)
		before := Evaluate(job, offered)
		other := mixedLadder()
		shuffle(mix, other.Systems)
		after := Evaluate(shuffled, other)
		if before.Outcome != after.Outcome || before.Firm != after.Firm || before.Critical.Requirement != after.Critical.Requirement {
			t.Fatalf("%s, %s, firm %v; then %s, %s, firm %v", before.Outcome, before.Critical.Requirement, before.Firm, after.Outcome, after.Critical.Requirement, after.Firm)
		}
		for i := range before.Candidates {
			a, b := &before.Candidates[i], &after.Candidates[i]
			if a.System.ID != b.System.ID || a.Status != b.Status || len(a.Checks) != len(b.Checks) {
				t.Fatalf("%s %s, then %s %s", a.System.ID, a.Status, b.System.ID, b.Status)
			}
			for k := range a.Checks {
				if x, y := a.Checks[k], b.Checks[k]; x.Rule != y.Rule || x.Verdict != y.Verdict || x.Need != y.Need || x.Have != y.Have {
					t.Fatalf("%s %s: %s, %g of %g, then %s, %g of %g", a.System.ID, x.Rule, x.Verdict, x.Have.Value, x.Need.Value, y.Verdict, y.Have.Value, y.Need.Value)
				}
			}
		}
	})
}

func shuffle[T any](mix *rand.Rand, list []T) {
	mix.Shuffle(len(list), func(a, b int) { list[a], list[b] = list[b], list[a] })
}

func shuffleIn[T any](mix *rand.Rand, m *unit.Maybe[[]T]) {
	if list, ok := m.Get(); ok {
		list = slices.Clone(list)
		shuffle(mix, list)
		*m = unit.Known(list)
	}
}
