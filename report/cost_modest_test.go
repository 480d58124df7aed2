package report

import (
	"math"
	"strings"
	"testing"

	"cutbrief/assess"
	"cutbrief/rules"
	"cutbrief/rules/cost"
)

// cutOutside is a visit that sends 60 m a week out.
func cutOutside(t *testing.T) *assess.Visit {
	t.Helper()
	v := farm(t)
	choose(t, v, rules.FactToday, string(rules.SentOut))
	say(t, v, rules.FactCutLength, "", "60 m a week")
	return v
}

// A list of one's own in which one price is invented is not the built-in list:
// nobody says that no price was told, and the mark says some.
func TestOneInventedPriceInAListOfOnesOwn(t *testing.T) {
	l := list(all()).With(cost.ItemCylinders, cost.Price{Estimate: cost.Exact(300), Basis: cost.BasisInvented})
	l.Invented = true
	c := Build(cutOutside(t), steps(), Options{Prices: &l}).Cost
	if c == nil || len(c.Lines) != 3 || strings.Contains(strings.Join(c.Lines, " "), "invented") {
		t.Errorf("it is not even used here: %+v", c)
	}
	l = l.With(cost.ItemSentOut, cost.Price{Estimate: cost.Exact(20), Basis: cost.BasisInvented})
	c = Build(cutOutside(t), steps(), Options{Prices: &l}).Cost
	if len(c.Lines) != 3 || !strings.Contains(c.Lines[2], "Some prices are assumed: invented, or common practice, no source.") {
		t.Errorf("%+v", c)
	}
	// Nobody's hour carries no sum, also in a file.
	l = l.With(cost.ItemLabour, cost.Price{Estimate: cost.Exact(38), Basis: cost.BasisInvented})
	c = Build(cutOutside(t), steps(), Options{Prices: &l}).Cost
	if len(c.Lines) != 1 || !strings.Contains(c.Lines[0], "the price of an hour of work in the list is invented") {
		t.Errorf("%+v", c)
	}
}

// Where the range of the saving includes zero, no time to pay back is promised:
// neither on the page nor in the comparison.
func TestNoClearSavingPromisesNoPayback(t *testing.T) {
	prices := all()
	prices[cost.ItemSentOut], prices[cost.ItemTransport] = 4.4, 1
	v := cutOutside(t)
	c := Build(v, steps(), Options{Prices: list(prices)}).Cost
	if c.Verdict != "no clear saving" || !strings.HasPrefix(c.Lines[1], "May pay for itself after ") || !strings.Contains(c.Lines[1], "perhaps never") {
		t.Errorf("%s %q", c.Verdict, c.Lines)
	}
	table, err := Compare(v, steps(), Options{Prices: list(prices)}, nil)
	if err != nil {
		t.Fatal(err)
	}
	last := table.Rows[len(table.Rows)-1]
	for i, verdict := range table.Rows[len(table.Rows)-2].Cells {
		if verdict == "no clear saving" && last.Cells[i] != "not clear" {
			t.Errorf("%s: pays after %q", table.Columns[i], last.Cells[i])
		}
	}
}

// Two habits nobody has a source for move this saving most: the page says so,
// also where every price is the customer's own.
func TestHabitsWithoutASourceAreSaid(t *testing.T) {
	prices := all()
	prices[cost.ItemOxygen], prices[cost.ItemAcetylene] = 7, 25
	v := farm(t)
	say(t, v, rules.FactCutLength, "", "60 m a week")
	c := Build(v, steps(), Options{Prices: list(prices)}).Cost
	if len(c.Lines) != 3 || !strings.Contains(c.Lines[2], "common practice, no source") {
		t.Errorf("%q", c.Lines)
	}
}

// For a customer who thinks in inches lengths are in feet, so money is for a
// foot: 21.67 a metre (20, and 50 for a trip with 30 m) times 0.3048 is 6.60.
// The figures in files stay those of a metre.
func TestMoneyForAFootWhereLengthsAreInFeet(t *testing.T) {
	v := cutOutside(t)
	choose(t, v, assess.FactUnits, "in")
	o := Options{Prices: list(all())}
	c := Build(v, steps(), o).Cost
	if c.Bars[0].Brief != "EUR 6.60 a foot" || !strings.Contains(c.Lines[0], " a foot, ") || strings.Contains(strings.Join(c.Lines, " "), "metre") {
		t.Errorf("%+v", c)
	}
	today := Costs(v, steps(), o).Today[0]
	if today.Each != "a foot" || today.PerMetre.Shown[1] != "6.60" || math.Abs(today.PerMetre.Likely-21.67) > 0.001 {
		t.Errorf("%+v %+v", today, today.PerMetre)
	}
	table, err := Compare(v, steps(), o, nil)
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range table.Rows {
		if r.Label == "cost a metre" {
			t.Errorf("%+v", r)
		}
	}
}

// A list without interest says nothing of what the years are worth: not known
// is not zero, neither as a sum nor as a rate.
func TestNoInterestNoWorth(t *testing.T) {
	prices := all()
	delete(prices, cost.ItemInterest)
	o := Options{Prices: list(prices)}
	c := Build(cutOutside(t), steps(), o).Cost
	if !strings.HasPrefix(c.Lines[1], "Pays for itself after ") || strings.Contains(c.Lines[1], "worth") {
		t.Errorf("%q", c.Lines)
	}
	for _, s := range Costs(cutOutside(t), steps(), o).Systems {
		if s.Worth != nil || s.Over != "" {
			t.Errorf("%+v over %q", s.Worth, s.Over)
		}
	}
}
