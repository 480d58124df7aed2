package cost

import (
	"crypto/sha256"
	_ "embed" // the demo list lies beside the code
	"encoding/hex"
	"fmt"
	"maps"
	"slices"
	"strings"
	"sync"

	"cutbrief/rules/message"
)

// Estimate is what a number may be: at least, most likely, at most.
type Estimate struct{ Low, Likely, High float64 }

// Exact is an estimate of one value.
func Exact(v float64) Estimate { return Estimate{v, v, v} }

// Times multiplies all three by a factor above zero.
func (s Estimate) Times(f float64) Estimate { return Estimate{s.Low * f, s.Likely * f, s.High * f} }

// Basis says where a price comes from, worded as in a file.
type Basis string

// The bases of a price. The last two are assumptions.
const (
	BasisCustomer Basis = "customer" // the customer's own figure
	BasisOwn      Basis = "own"      // the rep's own figure
	BasisPublic   Basis = "public"   // public statistics; the note says which and of when
	BasisPractice Basis = "practice" // common practice, no source
	BasisInvented Basis = "invented" // for the demo
)

// bases in the order they are offered.
var bases = []Basis{BasisCustomer, BasisOwn, BasisPublic, BasisPractice, BasisInvented}

// Assumed reports whether nobody stands behind the figure.
func (b Basis) Assumed() bool { return b == BasisPractice || b == BasisInvented }

// Price is one line of a list, in the unit of its item.
type Price struct {
	Estimate
	Basis Basis
	Note  string
}

// PriceList is a price list and where it came from.
type PriceList struct {
	Name     string // "built-in price list", or the file's base name
	Currency string // such as "EUR"; "" if none is given
	Date     string // as 2026-01-31; "" if none is given
	Place    string
	Invented bool // some price in it is invented

	prices map[ItemID]Price
}

// Get returns a price, and whether the list has it.
func (l PriceList) Get(id ItemID) (Price, bool) {
	p, ok := l.prices[id]
	return p, ok
}

// Owned reports whether some price in the list is the customer's or the rep's
// own.
func (l PriceList) Owned() bool {
	for _, p := range l.prices {
		if p.Basis == BasisCustomer || p.Basis == BasisOwn {
			return true
		}
	}
	return false
}

// With returns the list with one price changed, such as one the customer told.
func (l PriceList) With(id ItemID, p Price) PriceList {
	changed := map[ItemID]Price{}
	maps.Copy(changed, l.prices)
	changed[id], l.prices = p, changed
	return l
}

// IDs returns the items the list has, in the order of Items.
func (l PriceList) IDs() []ItemID {
	var ids []ItemID
	for _, i := range Items() {
		if _, ok := l.prices[i.ID]; ok {
			ids = append(ids, i.ID)
		}
	}
	return ids
}

//go:embed demo.csv
var demo string

// DemoPricesName is what the built-in list is called.
const DemoPricesName = "built-in price list"

// DemoPrices returns the built-in list. Its prices are invented for the demo, but
// for electricity and compressed air; a test holds it free of errors and warnings.
func DemoPrices() PriceList { return demoPrices() }

// demoPrices is read once, when it is first asked for; no list is ever changed.
var demoPrices = sync.OnceValue(func() PriceList {
	l, _ := ReadPrices(strings.NewReader(demo), DemoPricesName)
	return l
})

// OrDemo returns the list, or the built-in one for none.
func (l *PriceList) OrDemo() PriceList {
	if l == nil {
		return DemoPrices()
	}
	return *l
}

// ItemID is the stable identifier of a thing that has a price, as in files.
type ItemID string

// The things with a price, and the few figures a price is of no use without.
const (
	ItemLabour        ItemID = "labour"
	ItemElectricity   ItemID = "electricity"
	ItemOxygen        ItemID = "oxygen"
	ItemAcetylene     ItemID = "acetylene"
	ItemPropane       ItemID = "propane"
	ItemCylinders     ItemID = "cylinders"
	ItemAirPower      ItemID = "air-power"
	ItemSet           ItemID = "consumable-set"
	ItemSetStarts     ItemID = "set-starts"
	ItemSetHours      ItemID = "set-hours"
	ItemDisc          ItemID = "disc"
	ItemDiscLife      ItemID = "disc-life"
	ItemBlade         ItemID = "blade"
	ItemBladeLife     ItemID = "blade-life"
	ItemKnives        ItemID = "knives"
	ItemKnivesLife    ItemID = "knives-life"
	ItemSentOut       ItemID = "sent-out"
	ItemTransport     ItemID = "transport"
	ItemTransportLoad ItemID = "transport-load"
	ItemInterest      ItemID = "interest"
	ItemYears         ItemID = "years"
)

// Item is one thing with a price: what it is called, the units it can be given
// in, and the range beyond which a figure has the wrong unit (common practice,
// no source).
type Item struct {
	ID    ItemID
	Name  message.ID
	Money bool       // a price; else a plain figure
	Means message.ID // for the template
	most  float64
	units []measure
}

// measure is a unit; a figure in it times factor is one in the item's unit.
type measure struct {
	name   message.ID
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
func (i Item) Unit() string { return string(i.units[0].name) }

// UnitIn is the unit with the currency where there is one: "EUR per h".
func (i Item) UnitIn(currency string) message.Message {
	if i.Money {
		return message.New("{1} per {2}", message.Name(currency), i.units[0].name)
	}
	return i.units[0].name.Message()
}

// Items returns everything a list may hold, in the order it is written.
func Items() []Item { return slices.Clone(items) }

// FindItem returns the item with this identifier.
func FindItem(id ItemID) (Item, bool) {
	i := slices.IndexFunc(items, func(i Item) bool { return i.ID == id })
	if i < 0 {
		return Item{}, false
	}
	return items[i], true
}

func one(name message.ID) []measure { return []measure{{name, 1}} }

var gasUnits = []measure{{"m3", 1}, {"ft3", 1 / cubicFoot}}

var items = []Item{
	{ItemLabour, "an hour of work", true, "what an hour of work costs, with everything on top of the wage", 1e4, one("h")},
	{ItemElectricity, "electricity", true, "as on the bill, without taxes that are paid back", 100, one("kWh")},
	{ItemOxygen, "oxygen", true, "as gas; rental apart", 1e4, gasUnits},
	{ItemAcetylene, "acetylene", true, "as gas; rental apart", 1e4, gasUnits},
	{ItemPropane, "propane", true, "as gas, or by weight in kg", 1e4, append(slices.Clone(gasUnits), measure{"kg", 1 / propaneGas})},
	{ItemCylinders, "cylinder rental", true, "rental and delivery of all cylinders kept for cutting", plausibleFee, []measure{{"year", 1}, {"month", monthsAYear}}},
	{ItemAirPower, "power for compressed air", false, "what the compressor takes for its delivery", 50, []measure{{"kW per m3/min", 1}, {"kW per 100 cfm", perHundred}}},
	{ItemSet, "a set of consumables", true, "tip and electrode for the torch, as they are changed together", 1e4, one("set")},
	{ItemSetStarts, "starts a set lasts", false, "if it is worn by starting alone", 1e5, one("starts")},
	{ItemSetHours, "arc hours a set lasts", false, "if it is worn by burning alone", 1e3, one("h")},
	{ItemDisc, "an abrasive disc", true, "", 1e3, one("disc")},
	{ItemDiscLife, "what a disc cuts", false, "length times thickness", 1e5, one("cm2")},
	{ItemBlade, "a saw blade", true, "", 1e4, one("blade")},
	{ItemBladeLife, "what a blade cuts", false, "length times thickness", 1e7, one("cm2")},
	{ItemKnives, "shear knives, or punch and die", true, "", 1e5, one("set")},
	{ItemKnivesLife, "what knives cut", false, "length of sheet", 1e6, []measure{{"m", 1}, {"ft", foot}}},
	{ItemSentOut, "cutting sent out", true, "for a metre cut", 1e4, []measure{{"m", 1}, {"ft", 1 / foot}}},
	{ItemTransport, "a trip with the pieces", true, "there and back", 1e5, one("trip")},
	{ItemTransportLoad, "metres cut a trip", false, "metres cut on the pieces of one trip", 1e6, []measure{{"m", 1}, {"ft", foot}}},
	{ItemInterest, "interest", false, "what money costs a year, inflation left out", 50, one("%")},
	{ItemYears, "years of use", false, "over which the system is judged", 30, one("years")},
}

// Units are the names of the units the item can be given in, the one it is held
// in first.
func (i Item) Units() []string {
	var names []string
	for _, m := range i.units {
		names = append(names, string(m.name))
	}
	return names
}

// Most is what a plausible figure is at most, in the item's unit.
func (i Item) Most() float64 { return i.most }

// PricesFingerprint returns 12 hexadecimal digits that stand for what l holds:
// currency, date, place and every price with its basis and note. The list's name
// and how its file was laid out do not count. It tells lists apart; it does not
// prove who wrote them.
func PricesFingerprint(l PriceList) string {
	h := sha256.New()
	fmt.Fprintf(h, "prices 1 %q %q %q\n", l.Currency, l.Date, l.Place)
	for _, id := range l.IDs() {
		p, _ := l.Get(id)
		fmt.Fprintf(h, "%s %v %q %q\n", id, p.Estimate, p.Basis, p.Note)
	}
	return hex.EncodeToString(h.Sum(nil)[:6])
}
