package rules

import (
	"testing"

	"pgregory.net/rapid"
)

// Firm is what Evaluate says, and a firm choice has no open question that could
// change the system.
func TestFirmIsWhatEvaluateSays(t *testing.T) {
	offered := mixedLadder()
	rapid.Check(t, func(t *rapid.T) {
		job := drawJob(t)
		r := Evaluate(job, offered)
		if got := Firm(job, offered, Judge(job, offered).Outcome); got != r.Firm {
			t.Fatalf("Firm says %v, Evaluate %v", got, r.Firm)
		}
		if r.Firm && len(r.Open) > 0 && r.Open[0].Strength >= couldSystem {
			t.Fatalf("firm, but %s could change the system", r.Open[0].Asked.Fact)
		}
	})
}
