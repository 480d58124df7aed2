package rules

import (
	"slices"
	"strings"
	"testing"

	"cutbrief/rules/unit"
)

// What has to be told to judge each rule, where nothing but the cut and its use is: a
// pierce is asked for where cuts start away from the edge, a bevel where there is one.
// A shortfall excludes a system that cannot do the work; the site can be changed, and
// edge, heat and budget decide nothing.
func TestRulesAskForWhatTheyNeed(t *testing.T) {
	asks := map[RuleID]string{
		RuleSever: "hard: rare-thickest", RulePierce: "hard: start", RuleBevel: "hard: features", RuleGaps: "hard: features", RuleGouging: "hard: features",
		RuleMechanised: "hard: guidance", RuleSupply: "hard: supply-phase supply-voltage", RuleDuty: "hard: busy-cuts busy-length",
		RuleBreaker: "site: supply-phase supply-voltage breaker", RuleCord: "site: supply-phase supply-voltage cord-length cord-section",
		RuleGenerator: "site: supply-phase supply-voltage generator-rating altitude", RuleAirFlow: "site: air-delivery altitude",
		RuleAirPress: "site: air-pressure hose-bore hose-length", RuleAirDry: "site: air-drier", RuleEdge: ": edge-next", RuleHeat: ": today",
		RuleClean: "hard:", RuleCordLoad: "site:", RuleBudget: ":",
		RuleMaintenance: ":", RuleMixed: ":", RuleProduction: ":", RuleSpeed: ":",
	}
	j := mildSteel(10, Maintenance)
	j.Power.Source = unit.Known(MainsGen)
	missing := map[RuleID]string{}
	for _, check := range candidate(t, Evaluate(j, ladder()), "s12").Checks {
		var facts []string
		for _, a := range check.Missing {
			facts = append(facts, string(a.Fact))
		}
		if missing[check.Rule] = strings.Join(facts, " "); check.Verdict == NotKnown && check.Margin.IsKnown() {
			t.Errorf("%s is not known, and has a margin", check.Rule)
		}
	}
	for _, r := range Table() {
		got := ": "
		switch {
		case r.Hard && r.Site:
			got = "both: "
		case r.Hard:
			got = "hard: "
		case r.Site:
			got = "site: "
		}
		if got = strings.TrimSpace(got + missing[r.ID]); got != asks[r.ID] {
			t.Errorf("%s: %q, want %q", r.ID, got, asks[r.ID])
		}
		if found, known := r.ID.Find(); !known || found != r {
			t.Errorf("%s is found as %v, %v", r.ID, found, known)
		}
		delete(asks, r.ID)
	}
	if _, known := RuleID("weather").Find(); known || len(asks) > 0 {
		t.Errorf("the table lacks %v, or knows the weather", asks)
	}
}

// Where the first answer is told, the rest is asked for.
func TestRulesAskForTheRest(t *testing.T) {
	j := mildSteel(10, Maintenance)
	j.Start, j.Features = unit.Known(InPlate), unit.Known([]Feature{Bevels})
	for _, c := range []struct {
		rule RuleID
		want []Fact
	}{{RulePierce, []Fact{FactPierced}}, {RuleBevel, []Fact{FactBevelled, FactBevelAngle}}} {
		var got []Fact
		for _, a := range checkOf(candidateOf(ptr(Evaluate(j, ladder())), "s12"), c.rule).Missing {
			got = append(got, a.Fact)
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%s asks for %v, want %v", c.rule, got, c.want)
		}
	}
}
