package main

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"cutbrief/assess"
	"cutbrief/report"
	"cutbrief/report/text"
	"cutbrief/rules"
	"cutbrief/rules/system"
)

// imperial is how much of a metric unit the imperial one is. Source: the exact
// definitions in NIST SP 811; a cubic foot of free air counts as such.
var imperial = map[string]struct {
	unit string
	of   float64
}{
	"mm": {"in", 25.4}, "m": {"ft", 0.3048}, "l/min": {"cfm", 28.316846592}, "bar": {"psi", 0.06894757293168361}, "l": {"gal", 3.785411784},
}

// inInches is a visit with every figure told in the other units.
func inInches(t *rapid.T, v *assess.Visit) *assess.Visit {
	twin := *v
	twin.Answers = nil
	for _, a := range v.Answers {
		unit := imperial[a.Unit]
		number, period, _ := strings.Cut(a.Said, " ")
		value, err := strconv.ParseFloat(number, 64)
		if unit.of > 0 && err == nil {
			a.Said, a.Unit = strings.TrimSpace(fmt.Sprintf("%s %s %s", strconv.FormatFloat(value/unit.of, 'f', 12, 64), unit.unit, period)), ""
		}
		twin.Answers = append(twin.Answers, a)
	}
	return &twin
}

// TestUnitsNeverMatter: a visit told in millimetres and the same told in inches
// come to the same, verdict by verdict.
func TestUnitsNeverMatter(t *testing.T) {
	offered := system.Demo()
	converted := 0
	rapid.Check(t, func(t *rapid.T) {
		v := randomVisit(t)
		a, _ := v.Answer(rules.Asked{Fact: assess.FactUnits})
		if a.Chosen = []string{"mm"}; a.Question != "" {
			v.Set(a)
		}
		twin := inInches(t, v)
		job, problems := v.Job()
		other, more := twin.Job()
		if len(problems) != len(more) {
			return // at the very end of what is plausible: 1 l is a hair less in gallons
		}
		for i := range twin.Answers {
			if twin.Answers[i].Said != v.Answers[i].Said {
				converted++
			}
		}
		before, after := rules.Evaluate(job, offered), rules.Evaluate(other, offered)
		if before.Outcome != after.Outcome || before.Firm != after.Firm || !slices.Equal(openOf(before), openOf(after)) {
			t.Fatalf("%s, firm %v, %v; then %s, firm %v, %v", before.Outcome, before.Firm, openOf(before), after.Outcome, after.Firm, openOf(after))
		}
		for i, c := range before.Candidates {
			d := after.Candidates[i]
			if c.System.ID != d.System.ID || c.Status != d.Status {
				t.Fatalf("%s %s, then %s %s", c.System.ID, c.Status, d.System.ID, d.Status)
			}
			if len(c.Checks) != len(d.Checks) {
				t.Fatalf("%s: %d checks, then %d", c.System.ID, len(c.Checks), len(d.Checks))
			}
			for k, check := range c.Checks {
				if check.Rule != d.Checks[k].Rule || check.Verdict != d.Checks[k].Verdict {
					t.Fatalf("%s: %s %s, then %s", c.System.ID, check.Rule, check.Verdict, d.Checks[k].Verdict)
				}
			}
		}
	})
	if t.Logf("%d figures told both ways", converted); converted == 0 {
		t.Error("nothing was told in inches")
	}
}

// openOf names what a result leaves open, and its flags.
func openOf(r rules.Result) (list []string) {
	for _, q := range r.Open {
		list = append(list, fmt.Sprint(q.Asked, q.Strength, q.FlipTo))
	}
	for _, f := range r.Flags {
		list = append(list, f.ID)
	}
	return list
}

// TestOrderOfAnswersNeverMatters: a page is the same to the letter, whatever was
// told first.
func TestOrderOfAnswersNeverMatters(t *testing.T) {
	offered := system.Demo()
	rapid.Check(t, func(t *rapid.T) {
		v := randomVisit(t)
		shuffled := *v
		shuffled.Answers = append([]assess.Answer(nil), v.Answers...)
		mix := rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "order"), 0))
		mix.Shuffle(len(shuffled.Answers), func(a, b int) {
			shuffled.Answers[a], shuffled.Answers[b] = shuffled.Answers[b], shuffled.Answers[a]
		})
		want, got := text.Render(report.Build(v, offered, report.Options{}), 100), text.Render(report.Build(&shuffled, offered, report.Options{}), 100)
		if want != got {
			t.Fatalf("told in one order:\n%s\nin another:\n%s", want, got)
		}
	})
}
