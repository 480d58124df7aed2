package assess

import (
	"strings"
	"testing"

	"cutbrief/rules"
)

// Each price is asked only where it moves this customer's answer: by hand from
// what a bill can be laid on and which ways burn gas or are paid for.
func TestPricesAreAskedWhereTheyMatter(t *testing.T) {
	all := []rules.Fact{rules.FactLabour, rules.FactGasYear, rules.FactFuel, rules.FactSentYear}
	for _, c := range []struct{ metals, today, length, gas, want string }{
		{"mild-steel", "", "40 m", "", ""},
		{"mild-steel", "other", "40 m", "", ""},
		{"mild-steel", "abrasive-disc", "40 m", "", "labour-cost"},
		{"mild-steel", "oxy-fuel", "40 m", "", "labour-cost gas-a-year fuel-gas"},
		{"mild-steel", "oxy-fuel", "40 m", "2400", "labour-cost gas-a-year"},
		{"mild-steel", "oxy-fuel", "", "", "labour-cost fuel-gas"},
		{"stainless", "oxy-fuel", "40 m", "", "labour-cost"},
		{"stainless", "sent-out", "40 m", "", "labour-cost sent-out-a-year"},
		{"stainless", "sent-out", "", "", "labour-cost"},
	} {
		v := New("x", noon)
		for f, said := range map[rules.Fact]string{rules.FactMetals: c.metals, rules.FactToday: c.today, rules.FactCutLength: c.length, rules.FactGasYear: c.gas} {
			if said != "" {
				tell(t, v, f, "", said)
			}
		}
		var asked []string
		for _, f := range all {
			if asks(v, f, "") {
				asked = append(asked, string(f))
			}
		}
		if got := strings.Join(asked, " "); got != c.want {
			t.Errorf("%+v: asked %q", c, got)
		}
	}
}

// They are never counted as open, so that a visit without them is whole.
func TestPricesAreOptional(t *testing.T) {
	for _, q := range priceQuestions {
		if !q.Optional {
			t.Errorf("%s is not optional", q.ID)
		}
	}
}

func TestPricesReachTheJob(t *testing.T) {
	v := New("x", noon)
	for f, said := range map[rules.Fact]string{rules.FactMetals: "mild-steel", rules.FactToday: "oxy-fuel", rules.FactCutLength: "200 m a week",
		rules.FactLabour: "42.50", rules.FactGasYear: "2,400"} {
		tell(t, v, f, "", said)
	}
	j, problems := v.Job()
	labour, _ := j.Prices.Labour.Get()
	gas, _ := j.Prices.GasYear.Get()
	if len(problems) > 0 || labour != 42.5 || gas != 2400 || j.Prices.Fuel.IsKnown() {
		t.Errorf("%+v, %v", j.Prices, problems)
	}
}
