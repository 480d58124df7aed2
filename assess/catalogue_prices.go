package assess

import (
	"cutbrief/rules"
	"cutbrief/rules/unit"
)

// priceQuestions are the few prices that can move this customer's answer: each
// is asked only where it does. All other prices come from the price list.
var priceQuestions = []*Question{
	{ID: rules.FactLabour, Name: "an hour of work", Group: GroupToday, Form: FormQuantity, Kind: unit.Price, limit: limit{0.5, 1000000}, Optional: true, applies: costed,
		Ask: "What does an hour of work cost you, everything included?", Why: "Time is most of what a cut costs.",
		Help:    "In the currency of the price list. Use the hourly figure you quote with, or the wage with insurance, holidays and tax on top.",
		Example: "45"},
	{ID: rules.FactGasYear, Name: "gas a year", Group: GroupToday, Form: FormQuantity, Kind: unit.Price, limit: limit{1, 100000000}, Optional: true, applies: gasBilled,
		Ask: "What do you pay a year for cutting gas, with cylinder rental?", Why: "The bill is surer than any table of gas flows.",
		Help:    "In the currency of the price list. Count oxygen and fuel gas; leave out gas for welding or heating.",
		Example: "2400"},
	{ID: rules.FactFuel, Name: "fuel gas", Group: GroupToday, Form: FormOne, Optional: true, applies: fuelled,
		Ask: "What gas does the torch burn?", Why: "Propane is cheaper than acetylene, but its flame takes three times the oxygen.",
		Example: "acetylene",
		Options: []Option{
			{string(rules.Acetylene), "acetylene"},
			{string(rules.Propane), "propane"}}},
	{ID: rules.FactSentYear, Name: "sent out a year", Group: GroupToday, Form: FormQuantity, Kind: unit.Price, limit: limit{1, 100000000}, Optional: true, applies: sentBilled,
		Ask: "What do you pay a year for cutting you send out, transport included?", Why: "That is what a system of your own has to beat.",
		Help:    "In the currency of the price list.",
		Example: "6000"},
}

// costed reports whether some way of today can be worked out.
func costed(v *Visit) bool {
	for _, p := range []rules.Process{rules.OxyFuel, rules.Abrasive, rules.BandSaw, rules.Shear, rules.Nibbler, rules.SentOut, rules.OtherPlasma} {
		if v.chose(rules.FactToday, string(p)) {
			return true
		}
	}
	return false
}

// flamed reports whether oxy-fuel is used today on a metal it can cut.
func flamed(v *Visit) bool {
	return v.chose(rules.FactToday, string(rules.OxyFuel)) &&
		(v.chose(rules.FactMetals, "mild-steel") || v.chose(rules.FactMetals, "galvanised-steel"))
}

// lengthTold reports whether a yearly bill can be laid on metres.
func lengthTold(v *Visit) bool { return v.told(rules.FactCutLength) }

func gasBilled(v *Visit) bool { return flamed(v) && lengthTold(v) }
func sentBilled(v *Visit) bool {
	return v.chose(rules.FactToday, string(rules.SentOut)) && lengthTold(v)
}

// fuelled: with the bill at hand, the kind of gas moves nothing.
func fuelled(v *Visit) bool { return flamed(v) && !(lengthTold(v) && v.told(rules.FactGasYear)) }

// told reports whether a question was answered with something known.
func (v *Visit) told(f rules.Fact) bool {
	a, ok := v.Answer(rules.Asked{Fact: f})
	return ok && a.State != Unknown
}
