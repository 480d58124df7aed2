package rules

import (
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// What a list is told of a visit is what Evaluate says, and a firm choice has no
// open question that could change the system.
func TestASummaryIsWhatEvaluateSays(t *testing.T) {
	offered := mixedLadder()
	rapid.Check(t, func(t *rapid.T) {
		job := drawJob(t)
		r, s := Evaluate(job, offered), Summarise(job, offered)
		if s.Firm != r.Firm || s.Outcome != r.Outcome || s.Critical.Requirement != r.Critical.Requirement || len(s.Critical.Tie) != len(r.Critical.Tie) || len(s.Missing) != len(r.Missing) {
			t.Fatalf("%v, firm %v, %v; Evaluate %v, firm %v, %v", s.Outcome, s.Firm, s.Critical, r.Outcome, r.Firm, r.Critical)
		}
		for i := range r.Candidates {
			full, short := &r.Candidates[i], &s.Candidates[i]
			if full.System != short.System || full.Status != short.Status || full.Excess != short.Excess {
				t.Fatalf("%s %s; Evaluate %s %s", short.System.ID, short.Status, full.System.ID, full.Status)
			}
			if excluded := firstExcluding(full); (full.Status == FallsShort) != (len(short.Checks) == 1) || excluded != nil && excluded.Rule != short.Checks[0].Rule {
				t.Fatalf("%s: %v", short.System.ID, short.Checks)
			}
		}
		if len(s.Critical.Evidence) > 0 || (r.Critical.Requirement != "") != (len(r.Critical.Evidence) > 0) && !r.Critical.Overruled {
			t.Fatalf("%d reasons of a summary, %d of Evaluate", len(s.Critical.Evidence), len(r.Critical.Evidence))
		}
		var decisive []Asked
		for _, q := range r.Open {
			if r.Outcome == Recommended && !r.Firm && q.Strength == couldSystem {
				decisive = append(decisive, q.Asked)
			}
		}
		if got := s.Decisive(); !slices.Equal(got, decisive) {
			t.Fatalf("decisive %v; Evaluate %v", got, decisive)
		}
		if r.Firm && len(r.Open) > 0 && r.Open[0].Strength >= couldSystem {
			t.Fatalf("firm, but %s could change the system", r.Open[0].Asked.Fact)
		}
	})
}

// firstExcluding is the first check that excludes a system.
func firstExcluding(c *Candidate) *Check {
	for i := range c.Checks {
		if rule, _ := c.Checks[i].Rule.Find(); rule.Hard && c.Checks[i].Verdict == Short {
			return &c.Checks[i]
		}
	}
	return nil
}
