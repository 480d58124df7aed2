package report

import (
	"strings"
	"testing"

	"cutbrief/rules"
	"cutbrief/rules/metal"
	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// A need that is met never shows as more than what is given: 50.2 % of 50.9 %
// would be 51 and 50 when each goes to its safe side. What is not met keeps
// both safe sides, and two numbers a whole step apart do too.
func TestWhatIsMetNeverReadsAsShort(t *testing.T) {
	b := &builder{style: unit.Metric, offered: &[]system.Range{steps()}[0]}
	share := func(v float64) unit.Quantity { return unit.Quantity{Value: v, Kind: unit.Share} }
	for _, c := range []struct {
		need, have float64
		verdict    rules.Verdict
		want       string
	}{
		{50.2, 50.9, rules.Met, "takes 50 %, allows 51 %"},
		{71.428571428, 71.428571427999, rules.Met, "takes 71 %, allows 71 %"},
		{50.2, 51.9, rules.Met, "takes 51 %, allows 51 %"},
		{50.9, 50.2, rules.Borderline, "takes 51 %, allows 50 %"},
	} {
		got := b.detail(&rules.Check{Rule: rules.RuleDuty, Verdict: c.verdict, Need: share(c.need), Have: share(c.have)}).String()
		if got != c.want {
			t.Errorf("%g of %g: %q, want %q", c.need, c.have, got, c.want)
		}
	}
}

// The same thickness is the same fraction on both sides of the sentence: 12 mm
// is 15.1/32 in, so 15/32 to the nearest.
func TestRatedAndNeededAgreeInInches(t *testing.T) {
	v := farm(t)
	say(t, v, rules.FactThickest, metal.MildSteel, "12 mm")
	offered := steps()
	offered.Systems[1].Rated = 12
	text := strings.Join(Build(v, offered, Options{Style: unit.Inch}).Because, " ")
	if !strings.Contains(text, "Rated for 15/32 in by hand in mild steel; the work needs 15/32 in") {
		t.Error(text)
	}
}

// A 120 V shop with a range for 200 to 240 V: the work is not at fault, and no
// other process is called for.
func TestSupplyAloneIsNamed(t *testing.T) {
	v := farm(t)
	say(t, v, rules.FactVolts, "", "120 V")
	b := Build(v, steps(), Options{})
	because := strings.Join(b.Because, " ")
	if !strings.Contains(b.Headline, "supply") || !strings.Contains(because, "licensed electrician") || strings.Contains(because, "oxy-fuel") {
		t.Errorf("%q because %q", b.Headline, because)
	}
}

// Nominal sizes are a matter of thickness: a generator has none.
func TestBorderlineSpeaksOfSizesForThicknessOnly(t *testing.T) {
	b := &builder{style: unit.Metric, offered: &[]system.Range{steps()}[0]}
	for rule, kind := range map[rules.RuleID]unit.Kind{rules.RuleClean: unit.Thickness, rules.RuleGenerator: unit.ApparentPower} {
		r, _ := rule.Find()
		text := b.borderline(&rules.Check{Rule: rule, Verdict: rules.Borderline, Need: unit.Quantity{Value: 7.3, Kind: kind}, Have: unit.Quantity{Value: 7, Kind: kind}}, r).String()
		if strings.Contains(text, "nominal") != (rule == rules.RuleClean) {
			t.Errorf("%s: %q", rule, text)
		}
	}
}

// A page that is full drops the last reasons, and what the site has to change
// is what the headline turns on.
func TestWhatTheSiteHasToChangeComesFirst(t *testing.T) {
	v := farm(t)
	say(t, v, rules.FactBreaker, "", "6 A")
	b := Build(v, steps(), Options{})
	if !strings.Contains(b.Headline, "once the site is changed") || !strings.HasPrefix(b.Because[0], "The site has to change first: breaker") {
		t.Errorf("%q because %q", b.Headline, b.Because)
	}
}
