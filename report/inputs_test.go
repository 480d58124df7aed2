package report

import (
	"math"
	"testing"

	"cutbrief/rules/cost"
	"cutbrief/rules/message"
	"cutbrief/rules/unit"
)

// By hand, with 25.4 mm to an inch and 0.3048 m to a foot (NIST SP 811): 508
// mm/min are 20 in/min; 2 min for a metre are 0.6096 min for a foot; 30.48 m are
// 100 ft; 28.316846592 l/min are 1 cfm; 8 kW for 1 m³/min are 22.65 kW for 100
// cfm, which are 2.8317 m³/min; EUR 10 for a metre are EUR 3.048 for a foot, and
// EUR 35.3147 for a cubic metre EUR 1 for a cubic foot. Hours stay hours.
func TestInputsInTheUnitsOfTheVisit(t *testing.T) {
	in := func(unit string, money bool, v float64) cost.Input {
		return cost.Input{Unit: message.ID(unit), Money: money, Estimate: cost.Estimate{Low: v, Likely: v, High: v}}
	}
	for _, c := range []struct {
		in   cost.Input
		unit string
		want float64
	}{
		{in("mm/min", false, 508), "in/min", 20}, {in("min/m", false, 2), "min/ft", 0.6096}, {in("m", false, 30.48), "ft", 100},
		{in("l/min", false, 28.316846592), "cfm", 1}, {in("kW per m3/min", false, 8), "kW per 100 cfm", 22.6535},
		{in("m", true, 10), "ft", 3.048}, {in("m3", true, 35.3147), "ft3", 1}, {in("h", true, 38), "h", 38}, {in("kWh", true, 0.2), "kWh", 0.2},
	} {
		got := (&builder{style: unit.Inch}).inUnits(c.in)
		if string(got.Unit) != c.unit || math.Abs(got.Estimate.Likely-c.want) > 1e-4 || got.Estimate.Low != got.Estimate.High {
			t.Errorf("%+v: %+v", c.in, got)
		}
		if same := (&builder{style: unit.Metric}).inUnits(c.in); same.Unit != c.in.Unit || same.Estimate != c.in.Estimate {
			t.Errorf("%+v in metric: %+v", c.in, same)
		}
	}
}

// No unit of length of the metric kind is left in an account in inches.
func TestAccountInInchesHasNoMetricInput(t *testing.T) {
	s := Costs(farm(t), steps(), Options{Style: unit.Inch, Prices: gas()})
	if len(s.Inputs) == 0 {
		t.Fatal("no inputs")
	}
	for _, in := range s.Inputs {
		for _, u := range inInches {
			if !u.money && string(u.ours) == in.Unit || u.money && "EUR per "+string(u.ours) == in.Unit {
				t.Errorf("%+v", in)
			}
		}
	}
}
