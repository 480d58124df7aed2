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
func costed(c *circumstances) bool {
	for _, p := range [...]rules.Process{rules.OxyFuel, rules.Abrasive, rules.BandSaw, rules.Shear, rules.Nibbler, rules.SentOut, rules.OtherPlasma} {
		if c.today.chose(string(p)) {
			return true
		}
	}
	return false
}

// flamed reports whether oxy-fuel is used today on a metal it can cut.
func flamed(c *circumstances) bool {
	return c.today.chose(string(rules.OxyFuel)) && (c.metals.chose("mild-steel") || c.metals.chose("galvanised-steel"))
}

// A yearly bill is laid on the metres of the cut length.

func gasBilled(c *circumstances) bool { return flamed(c) && c.length.isTold() }

func sentBilled(c *circumstances) bool {
	return c.today.chose(string(rules.SentOut)) && c.length.isTold()
}

// fuelled: with the bill at hand, the kind of gas moves nothing.
func fuelled(c *circumstances) bool { return flamed(c) && !(c.length.isTold() && c.gas.isTold()) }
