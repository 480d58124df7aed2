package report

import (
	"math"
	"strings"
	"testing"
	"time"

	"cutbrief/assess"
	"cutbrief/rules"
	"cutbrief/rules/cost"
	"cutbrief/rules/metal"
	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// list is a price list of sure prices in euro, the customer's own.
func list(prices map[cost.ItemID]float64) *cost.PriceList {
	l := cost.PriceList{Name: "by hand", Currency: "EUR", Date: "2026-02-01", Place: "Velmoor"}
	for id, v := range prices {
		l = l.With(id, cost.Price{Estimate: cost.Exact(v), Basis: cost.BasisCustomer})
	}
	return &l
}

// all is every price an account against sending out needs.
func all() map[cost.ItemID]float64 {
	return map[cost.ItemID]float64{
		cost.ItemLabour: 60, cost.ItemElectricity: 0.20, cost.ItemAirPower: 8, cost.ItemSet: 12, cost.ItemSetStarts: 300, cost.ItemSetHours: 2,
		cost.ItemSentOut: 20, cost.ItemTransport: 50, cost.ItemTransportLoad: 30, cost.ItemInterest: 3, cost.ItemYears: 5,
	}
}

// The page has three lines and a pair of bars, today's first.
func TestCostOnThePage(t *testing.T) {
	v := farm(t)
	choose(t, v, rules.FactToday, string(rules.SentOut))
	say(t, v, rules.FactCutLength, "", "60 m a week")
	c := Build(v, steps(), Options{Prices: list(all())}).Cost
	if c == nil || len(c.Lines) != 3 || len(c.Bars) != 2 || c.Bars[0].Label != "Today" {
		t.Fatalf("%+v", c)
	}
	if c.Assumed || strings.Contains(strings.Join(c.Lines, " "), "assumed") {
		t.Errorf("the customer's own prices are called assumed: %v", c.Lines)
	}
	// 20 a metre and 50 for a trip with 30 m: 21.67.
	if c.Bars[0].Brief != "EUR 21.67 a metre" || c.Bars[0].Share != 1 || c.Verdict != "saves" {
		t.Errorf("%+v %s", c.Bars[0], c.Verdict)
	}
	for _, want := range []string{"Likely saves EUR ", " a year, against sent out in 10 mm mild steel.", "Pays for itself after ", "It depends most on ", "2026-02-01, Velmoor."} {
		if !strings.Contains(strings.Join(c.Lines, "\n"), want) {
			t.Errorf("no %q in %q", want, c.Lines)
		}
	}
}

// Without a list of one's own everything says so: page, account, derivation.
func TestAssumedPricesAreSaid(t *testing.T) {
	v := farm(t)
	v.Demo = true
	say(t, v, rules.FactCutLength, "", "60 m a week")
	c := Build(v, steps(), Options{}).Cost
	if !c.Assumed || !strings.Contains(c.Lines[2], "Prices are assumed") || !strings.Contains(c.Lines[2], "invented") {
		t.Errorf("%v %q", c.Assumed, c.Lines)
	}
	sheet := Costs(v, steps(), Options{})
	if last := sheet.Prices[len(sheet.Prices)-1]; !strings.Contains(last.Value, "invented") {
		t.Errorf("%+v", sheet.Prices)
	}
	for _, r := range Why(v, steps(), Options{}) {
		if r.Topic == "cost" && !strings.Contains(r.Parts[len(r.Parts)-1].Value, "invented") {
			t.Errorf("%+v", r.Parts)
		}
	}
}

// A real customer who told no price is shown no sum that rests on invented
// ones; one told price is enough to show the account, marked.
func TestNoSumsFromNobodysPrices(t *testing.T) {
	v := farm(t)
	say(t, v, rules.FactCutLength, "", "60 m a week")
	c := Build(v, steps(), Options{}).Cost
	if len(c.Lines) != 1 || !strings.Contains(c.Lines[0], "you gave no price of your own") || c.Verdict != "" || c.Bars != nil {
		t.Errorf("%+v", c)
	}
	say(t, v, rules.FactLabour, "", "60")
	if c = Build(v, steps(), Options{}).Cost; len(c.Lines) != 3 || !c.Assumed {
		t.Errorf("%+v", c)
	}
}

// Sending out at 3 a metre is cheaper than any system: it is said, also when
// that hurts the sale, and no payback is claimed.
func TestDearerIsSaid(t *testing.T) {
	v := farm(t)
	choose(t, v, rules.FactToday, string(rules.SentOut))
	say(t, v, rules.FactCutLength, "", "60 m a week")
	prices := all()
	prices[cost.ItemSentOut], prices[cost.ItemTransport] = 1, 1
	c := Build(v, steps(), Options{Prices: list(prices)}).Cost
	if c.Verdict != "costs more" || !strings.HasPrefix(c.Lines[0], "Costs more: EUR ") || !strings.HasPrefix(c.Lines[1], "Does not pay for itself by cheaper cutting") {
		t.Errorf("%s %q", c.Verdict, c.Lines)
	}
	// About what a metre costs with a system: the range includes zero.
	prices[cost.ItemSentOut] = 4.4
	c = Build(v, steps(), Options{Prices: list(prices)}).Cost
	if c.Verdict != "no clear saving" || !strings.HasPrefix(c.Lines[0], "No clear saving against sent out") || !strings.Contains(c.Lines[0], "includes zero") {
		t.Errorf("%s %q", c.Verdict, c.Lines)
	}
}

// Oxy-fuel on stainless is no alternative: said on the page, with no bars.
func TestNoAlternativeOnThePage(t *testing.T) {
	v := farm(t)
	choose(t, v, rules.FactMetals, string(metal.Stainless))
	say(t, v, rules.FactEveryday, metal.Stainless, "6 mm")
	say(t, v, rules.FactThickest, metal.Stainless, "8 mm")
	c := Build(v, steps(), Options{}).Cost
	if c == nil || len(c.Bars) > 0 || c.Lines[0] != "Oxy-fuel does not cut stainless, so it is not an option there." {
		t.Errorf("%+v", c)
	}
}

// What is not told is said to be open, not guessed.
func TestUnknownMetres(t *testing.T) {
	v := farm(t)
	v.Demo = true
	c := Build(v, steps(), Options{}).Cost
	if !strings.Contains(c.Lines[1], "how much is cut a year is not known") || strings.Contains(c.Lines[0], "a year") {
		t.Errorf("%q", c.Lines)
	}
	v.Clear(rules.Asked{Fact: rules.FactToday})
	if c := Build(v, steps(), Options{}).Cost; c != nil {
		t.Errorf("nothing is told of today, yet: %+v", c)
	}
}

// A range in euro and prices in dollars give no payback.
func TestCurrenciesAreNotMixed(t *testing.T) {
	v := farm(t)
	choose(t, v, rules.FactToday, string(rules.SentOut))
	say(t, v, rules.FactCutLength, "", "60 m a week")
	l := list(all())
	l.Currency = "USD"
	c := Build(v, steps(), Options{Prices: l}).Cost
	if !strings.Contains(c.Lines[1], "different currencies") {
		t.Errorf("%q", c.Lines)
	}
}

// Rounding by hand: 4.981 from 3.462 to 7.421 is 4.98 from 3.46 to 7.43; 13732
// from 8498 to 21294 is 13,700 from 8,490 to 21,300; −611 is −612 at the low end.
func TestAmountsWidenWhenRounded(t *testing.T) {
	b := &builder{prices: (&cost.PriceList{Currency: "EUR"}).OrDemo}
	if a := b.perMetre(cost.Estimate{Low: 3.462, Likely: 4.981, High: 7.421}); a.Text != "EUR 4.98 (3.46 to 7.43)" {
		t.Error(a)
	}
	if a := b.perYear(cost.Estimate{Low: 8498, Likely: 13732, High: 21294}); a.Text != "EUR 13,700 (8,490 to 21,300)" {
		t.Error(a)
	}
	if a := b.perYear(cost.Estimate{Low: -611.4, Likely: 0.2, High: 10}); a.Text != "EUR 0 (−612 to 10)" || math.Signbit(a.Likely) {
		t.Error(a)
	}
	if a := b.perMetre(cost.Exact(2)); a.Text != "EUR 2.00" {
		t.Error(a)
	}
}

func TestPaybackIsReadable(t *testing.T) {
	for years, want := range map[float64]string{0.01: "1 month", 0.5: "6 months", 0.51: "7 months", 2.01: "2.1 years", 60: "more than 50 years"} {
		if got := waitFor(unit.Known(years)).message().String(); got != want {
			t.Errorf("%v: %q, want %q", years, got, want)
		}
	}
	if got := waitFor(unit.Maybe[float64]{}).message().String(); got != "never" {
		t.Error(got)
	}
}

// A comparison has a cell for every column, and refuses systems it does not
// know by name.
func TestCompare(t *testing.T) {
	v := farm(t)
	c, err := Compare(v, steps(), Options{}, nil)
	if err != nil || len(c.Columns) < 2 || c.Columns[len(c.Columns)-1] != "today: oxy-acetylene" {
		t.Fatalf("%v %v", c.Columns, err)
	}
	for _, r := range c.Rows {
		if len(r.Cells) != len(c.Columns) {
			t.Errorf("%s: %d cells", r.Label, len(r.Cells))
		}
	}
	if _, err := Compare(v, steps(), Options{}, []string{"20", "99"}); err == nil || !strings.Contains(err.Error(), "99") {
		t.Error(err)
	}
	c, err = Compare(v, steps(), Options{}, []string{"8"})
	if err != nil || c.Columns[0] != "Test 8" || c.Rows[0].Cells[0] != "falls short" {
		t.Errorf("%v %v", c, err)
	}
}

// With nothing told there is nothing to work out, and that is said once.
func TestNothingTold(t *testing.T) {
	v := assess.New("x", time.Date(2026, 11, 25, 9, 0, 0, 0, time.UTC))
	if s := Costs(v, steps(), Options{}); s.Cut != "What is cut, and how thick, is not known yet." || len(s.Systems)+len(s.Today) > 0 || s.Crossing != nil {
		t.Errorf("%+v", s)
	}
	c, err := Compare(v, steps(), Options{}, nil)
	if err != nil || len(c.Columns) == 0 || len(c.Rows) == 0 {
		t.Errorf("%+v %v", c, err)
	}
	if empty, err := Compare(v, system.Range{}, Options{}, nil); err != nil || len(empty.Columns) != 0 {
		t.Errorf("%+v %v", empty, err)
	}
	for _, r := range Why(v, steps(), Options{}) {
		if r.Topic == "cost" && r.Value != "not calculated" {
			t.Errorf("%+v", r)
		}
	}
}

// The price that moves the saving is asked next, once it is not told.
func TestNextAsksForThePriceThatMoves(t *testing.T) {
	v := farm(t)
	asks := func() bool {
		for _, l := range Next(nil, v, steps()) {
			if l.Label == "An hour of work" {
				return true
			}
		}
		return false
	}
	if !asks() {
		t.Error("the price of an hour is not asked")
	}
	say(t, v, rules.FactLabour, "", "45")
	if asks() {
		t.Error("the price of an hour is asked again")
	}
}
