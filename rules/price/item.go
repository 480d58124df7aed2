package price

import (
	"slices"

	"cutbrief/rules/message"
)

// ID is the stable identifier of a thing that has a price, as in files.
type ID string

// The things with a price, and the few figures a price is of no use without.
const (
	Labour        ID = "labour"
	Electricity   ID = "electricity"
	Oxygen        ID = "oxygen"
	Acetylene     ID = "acetylene"
	Propane       ID = "propane"
	Cylinders     ID = "cylinders"
	AirPower      ID = "air-power"
	Set           ID = "consumable-set"
	SetStarts     ID = "set-starts"
	SetHours      ID = "set-hours"
	Disc          ID = "disc"
	DiscLife      ID = "disc-life"
	Blade         ID = "blade"
	BladeLife     ID = "blade-life"
	Knives        ID = "knives"
	KnivesLife    ID = "knives-life"
	SentOut       ID = "sent-out"
	Transport     ID = "transport"
	TransportLoad ID = "transport-load"
	Interest      ID = "interest"
	Years         ID = "years"
)

// Item is one thing with a price: what it is called, the units it can be given
// in, and the range beyond which a figure has the wrong unit (common practice,
// no source).
type Item struct {
	ID    ID
	Name  message.ID
	Money bool       // a price; else a plain figure
	Means message.ID // for the template
	most  float64
	units []measure
}

// measure is a unit; a figure in it times factor is one in the item's unit.
type measure struct {
	name   string
	factor float64
}

// Exact factors, from nist-sp-811. A kilogram of propane as a gas at 20 °C and
// 1.013 bar is 24.06/44.1 = 0.546 m³ (ideal gas, physics).
const (
	cubicFoot    = 0.028316846592 // m³
	foot         = 0.3048         // m
	propaneGas   = 24.06 / 44.1   // m³/kg
	perHundred   = 0.3531466672   // kW per 100 cfm in kW per m³/min
	monthsAYear  = 12
	plausibleFee = 1e6
)

// Unit is the unit the item's figures are held in.
func (i Item) Unit() string { return i.units[0].name }

// UnitIn is the unit with the currency where there is one: "EUR per h".
func (i Item) UnitIn(currency string) string {
	if i.Money {
		return currency + " per " + i.Unit()
	}
	return i.Unit()
}

// Items returns everything a list may hold, in the order it is written.
func Items() []Item { return slices.Clone(items) }

// FindItem returns the item with this identifier.
func FindItem(id ID) (Item, bool) {
	for _, i := range items {
		if i.ID == id {
			return i, true
		}
	}
	return Item{}, false
}

func one(name string) []measure { return []measure{{name, 1}} }

var gasUnits = []measure{{"m3", 1}, {"ft3", 1 / cubicFoot}}

var items = []Item{
	{Labour, "an hour of work", true, "what an hour of work costs, with everything on top of the wage", 1e4, one("h")},
	{Electricity, "electricity", true, "as on the bill, without taxes that are paid back", 100, one("kWh")},
	{Oxygen, "oxygen", true, "as gas; rental apart", 1e4, gasUnits},
	{Acetylene, "acetylene", true, "as gas; rental apart", 1e4, gasUnits},
	{Propane, "propane", true, "as gas, or by weight in kg", 1e4, append(slices.Clone(gasUnits), measure{"kg", 1 / propaneGas})},
	{Cylinders, "cylinder rental", true, "rental and delivery of all cylinders kept for cutting", plausibleFee, []measure{{"year", 1}, {"month", monthsAYear}}},
	{AirPower, "power for compressed air", false, "what the compressor takes for its delivery", 50, []measure{{"kW per m3/min", 1}, {"kW per 100 cfm", perHundred}}},
	{Set, "a set of consumables", true, "tip and electrode for the torch, as they are changed together", 1e4, one("set")},
	{SetStarts, "starts a set lasts", false, "if it is worn by starting alone", 1e5, one("starts")},
	{SetHours, "arc hours a set lasts", false, "if it is worn by burning alone", 1e3, one("h")},
	{Disc, "an abrasive disc", true, "", 1e3, one("disc")},
	{DiscLife, "what a disc cuts", false, "length times thickness", 1e5, one("cm2")},
	{Blade, "a saw blade", true, "", 1e4, one("blade")},
	{BladeLife, "what a blade cuts", false, "length times thickness", 1e7, one("cm2")},
	{Knives, "shear knives, or punch and die", true, "", 1e5, one("set")},
	{KnivesLife, "what knives cut", false, "length of sheet", 1e6, []measure{{"m", 1}, {"ft", foot}}},
	{SentOut, "cutting sent out", true, "for a metre cut", 1e4, []measure{{"m", 1}, {"ft", 1 / foot}}},
	{Transport, "a trip with the pieces", true, "there and back", 1e5, one("trip")},
	{TransportLoad, "metres cut a trip", false, "metres cut on the pieces of one trip", 1e6, []measure{{"m", 1}, {"ft", foot}}},
	{Interest, "interest", false, "what money costs a year, inflation left out", 50, one("%")},
	{Years, "years of use", false, "over which the system is judged", 30, one("years")},
}

// Units are the names of the units the item can be given in, the one it is held
// in first.
func (i Item) Units() []string {
	var names []string
	for _, m := range i.units {
		names = append(names, m.name)
	}
	return names
}

// Most is what a plausible figure is at most, in the item's unit.
func (i Item) Most() float64 { return i.most }
