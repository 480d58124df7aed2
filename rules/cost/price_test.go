package cost

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"cutbrief/rules/cite"
	"cutbrief/rules/tabular"
)

const priceHead = "item,unit,low,likely,high,basis,note\ncurrency,,,EUR,,,\ndate,,,2026-02-28,,,\nplace,,,Velmoor,,,\n"

func TestDemoPricesAreCleanAndMarked(t *testing.T) {
	l, findings := ReadPrices(strings.NewReader(demo), "demo")
	if len(findings) > 0 {
		t.Error(findings)
	}
	if !l.Invented || l.Currency != "EUR" || l.Date == "" || !strings.Contains(l.Place, "made-up") {
		t.Errorf("%+v", l)
	}
	for _, id := range l.IDs() {
		p, _ := l.Get(id)
		if !p.Basis.Assumed() && !(p.Basis == BasisPublic && p.Note != "") {
			t.Errorf("%s: %s with note %q", id, p.Basis, p.Note)
		}
	}
	if len(l.IDs()) != len(Items()) {
		t.Errorf("%d of %d items", len(l.IDs()), len(Items()))
	}
}

// The statistics as in testdata/reference/economics.csv: EU average 0.1902,
// Finland 0.089, Cyprus 0.276 EUR/kWh.
func TestDemoElectricityIsTheStatistic(t *testing.T) {
	p, _ := DemoPrices().Get(ItemElectricity)
	if p.Basis != BasisPublic || p.Low != 0.089 || math.Abs(p.Likely-0.1902) > 0.0005 || p.High != 0.276 {
		t.Errorf("%+v", p)
	}
}

func TestPricesTemplateIsRead(t *testing.T) {
	l, findings := ReadPrices(strings.NewReader(PricesTemplate()), "template")
	if len(findings) > 0 || len(l.IDs()) != len(Items()) {
		t.Errorf("%v, %d items", findings, len(l.IDs()))
	}
	for i, r := range PricesTemplate() {
		if r > 126 {
			t.Fatalf("%q at %d is not plain", r, i)
		}
	}
}

// Worked by hand: 0.20 a cubic foot is 0.20/0.0283168 = 7.063 a cubic metre;
// 2 a kilogram of propane is 2·44.1/24.06 = 3.666 a cubic metre; 22 kW per 100
// cfm is 7.77 kW per m³/min (air.csv); 25 a month is 300 a year.
func TestPriceUnits(t *testing.T) {
	l, _ := ReadPrices(strings.NewReader(priceHead+"oxygen,per ft³,0.05,0.20,0.35,,\npropane,kg,2,2,2,,\nair-power,kW per 100 cfm,22,22,24,,\ncylinders,month,25,25,25,,\nknives-life,ft,1000,1000,1000,,\ntransport-load,ft,100,100,100,,\nsent-out,ft,2,2,2,,\n"), "x")
	for id, want := range map[ItemID]float64{ItemOxygen: 7.063, ItemPropane: 3.666, ItemAirPower: 7.77, ItemCylinders: 300,
		ItemKnivesLife: 304.8, ItemTransportLoad: 30.48, ItemSentOut: 6.562} { // 0.3048 m to the foot; 2/0.3048
		if p, ok := l.Get(id); !ok || math.Abs(p.Likely-want) > 0.001 {
			t.Errorf("%s: %v %v, want %v", id, p.Likely, ok, want)
		}
	}
}

// What is wrong with a line is said of that line, and the line is left out.
func TestPriceFindings(t *testing.T) {
	for line, want := range map[string]string{
		"oxygen,m3,4,0,9,,":         "is zero, and not known is not zero",
		"oxygen,m3,4,,9,,":          "is blank",
		"oxygen,m3,9,7,9,,":         "does not lie between",
		`oxygen,m3,4,"7,50",9,,`:    "is not a plain number",
		"oxygen,bottle,4,7,9,,":     "is not a unit of oxygen",
		"oxygen,m3,4,7,1000000,,":   "beyond belief",
		"oxygen,m3,4,7,9,guess,":    "is not a basis",
		"hydrogen,m3,4,7,9,,":       "is not an item",
		"oxygen,m3,4,7,9,,,extra":   "has 8 cells",
		`oxygen,m3,"4,7,9,,`:        "opens a quote",
		"oxygen,m3,4,7,9,,a\x1b[0m": "invisible character",
		"oxygen,m3,4,NaN,9,,":       "is not a plain number",
		"currency,,,EUR,,,":         "is in line 2 too",
	} {
		l, findings := ReadPrices(strings.NewReader(priceHead+line+"\n"), "x")
		var found bool
		for _, f := range findings {
			found = found || f.Severity == tabular.Error && f.Line == 5 && strings.Contains(f.String(), want)
		}
		if _, kept := l.Get(ItemOxygen); !found || kept {
			t.Errorf("%q: kept %v, findings %v", line, kept, findings)
		}
	}
}

func TestAListSaysWhatItIs(t *testing.T) {
	for text, want := range map[string]string{
		"":                          "has no header row",
		"item,unit\n":               "column likely: error: is missing, so no row can be used",
		"item,likely\noxygen,7\n":   "names no currency",
		"item,likely\ndate,today\n": "is not a date",
		"item,likely\ndate,2026-13-01\ncurrency,EUR\n": "is not a date",
		"item,likely\ndate,2100-02-29\ncurrency,EUR\n": "is not a date", // 2100 is no leap year
		"item,likely\ndate,2026-02-31\ncurrency,EUR\n": "is not a date", // February has 28 days in 2026
		"item,likely\ndate,2026-01-311\n":              "is not a date",
		"item,likely\ndate,2026/01-31\n":               "is not a date",
		"item,likely\ndate,2026-01/31\n":               "is not a date",
		"item,likely\ndate,year-01-31\n":               "is not a date",
		"item,likely\ndate,2026-xx-31\n":               "is not a date",
		"item,likely\ndate,2026-01-xx\n":               "is not a date",
		"item,likely\ndate,2026-01-00\n":               "is not a date",
		"item,likely\ndate,2026-00-01\n":               "is not a date",
		"item,likely\ncurrency,euro\n":                 "is not a currency code",
	} {
		_, findings := ReadPrices(strings.NewReader(text), "x")
		var all []string
		for _, f := range findings {
			if f.Severity == tabular.Error {
				all = append(all, f.String())
			}
		}
		if !strings.Contains(strings.Join(all, "\n"), want) {
			t.Errorf("%q: %v", text, all)
		}
	}
}

// A price that is not in the list is not known.
func TestMissingIsNotZero(t *testing.T) {
	l, findings := ReadPrices(strings.NewReader(priceHead+"labour,,30,40,50,customer,\n"), "x")
	if _, ok := l.Get(ItemOxygen); ok || tabular.Count(findings, tabular.Error) > 0 {
		t.Error(findings)
	}
	if p, ok := l.Get(ItemLabour); !ok || p.Basis != BasisCustomer || l.Invented {
		t.Errorf("%+v %v", p, l.Invented)
	}
}

func FuzzReadPrices(f *testing.F) {
	f.Add(demo)
	f.Add(priceHead + "oxygen,m3,4,7,9,,\n")
	f.Fuzz(func(t *testing.T, text string) {
		l, _ := ReadPrices(strings.NewReader(text), "fuzz")
		for _, id := range l.IDs() {
			if p, _ := l.Get(id); !(p.Low >= 0 && p.Low <= p.Likely && p.Likely <= p.High) || math.IsInf(p.High, 0) {
				t.Errorf("%s: %+v", id, p)
			}
		}
	})
}

// The last day of every month is one and the day behind it is none; 2028 and 2000
// are leap years, 2026 and 2100 are not.
func TestDaysOfTheMonths(t *testing.T) {
	is := func(year, month, day int) bool {
		date := fmt.Sprintf("%d-%02d-%02d", year, month, day)
		l, _ := ReadPrices(strings.NewReader("item,likely\ndate,"+date+"\ncurrency,EUR\n"), "x")
		return l.Date == date
	}
	if !is(2026, 1, 1) {
		t.Error("no first of January")
	}
	for year, february := range map[int]int{2026: 28, 2028: 29, 2000: 29, 2100: 28} {
		for i, last := range []int{31, february, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31} {
			if !is(year, i+1, last) || is(year, i+1, last+1) {
				t.Errorf("month %d of %d does not end at %d", i+1, year, last)
			}
		}
	}
}

// Every item with its unit, what is money, and the figure beyond which it has the
// wrong unit (common practice, no source): that figure is read, one above is not.
func TestItemsAndTheirBounds(t *testing.T) {
	for id, want := range map[ItemID]struct {
		unit string
		most float64
	}{
		ItemLabour: {"EUR per h", 1e4}, ItemElectricity: {"EUR per kWh", 100}, ItemOxygen: {"EUR per m3", 1e4}, ItemAcetylene: {"EUR per m3", 1e4},
		ItemPropane: {"EUR per m3", 1e4}, ItemCylinders: {"EUR per year", 1e6}, ItemAirPower: {"kW per m3/min", 50}, ItemSet: {"EUR per set", 1e4},
		ItemSetStarts: {"starts", 1e5}, ItemSetHours: {"h", 1e3}, ItemDisc: {"EUR per disc", 1e3}, ItemDiscLife: {"cm2", 1e5},
		ItemBlade: {"EUR per blade", 1e4}, ItemBladeLife: {"cm2", 1e7}, ItemKnives: {"EUR per set", 1e5}, ItemKnivesLife: {"m", 1e6},
		ItemSentOut: {"EUR per m", 1e4}, ItemTransport: {"EUR per trip", 1e5}, ItemTransportLoad: {"m", 1e6}, ItemInterest: {"%", 50}, ItemYears: {"years", 30},
	} {
		item, ok := FindItem(id)
		if !ok || item.UnitIn("EUR").String() != want.unit {
			t.Errorf("%s is in %q, want %q", id, item.UnitIn("EUR"), want.unit)
		}
		for v, kept := range map[float64]bool{want.most: true, want.most * 1.005: false} {
			l, findings := ReadPrices(strings.NewReader(priceHead+fmt.Sprintf("%s,,,%f,,,\n", id, v)), "x")
			if p, ok := l.Get(id); ok != kept || kept && p.Likely != v {
				t.Errorf("%s of %v: kept %t, %v", id, v, ok, findings)
			}
		}
	}
}

// A note and a place take 120 characters, a list 200 lines; a line may leave its
// last cells away.
func TestBoundsOfAPriceList(t *testing.T) {
	long := func(n int) string { return strings.Repeat("é", n) }
	for text, sound := range map[string]bool{
		priceHead + "oxygen,m3,4,7,9,," + long(120) + "\n": true, priceHead + "oxygen,m3,4,7,9,," + long(121) + "\n": false,
		"item,likely\ncurrency,EUR\nplace," + long(120) + "\n": true, "item,likely\ncurrency,EUR\nplace," + long(121) + "\n": false,
		"item,likely,note\ncurrency,EUR\noxygen,7\n": true, "item,likely\ncurrency,EUR\nplace,\n": false,
	} {
		if _, findings := ReadPrices(strings.NewReader(text), "x"); (tabular.Count(findings, tabular.Error) == 0) != sound {
			t.Errorf("%q: %v", text, findings)
		}
	}
	for lines, whole := range map[int]bool{200: true, 201: false} {
		_, findings := ReadPrices(strings.NewReader("item,likely\n"+strings.Repeat("labour,40\n", lines)), "x")
		said := slices.ContainsFunc(findings, func(f tabular.Finding) bool { return strings.Contains(f.String(), "more than 200 rows") })
		if said == whole {
			t.Errorf("%d lines: cut short %t", lines, said)
		}
	}
}

// What a list lacks: a currency is an error, a date and a place are warnings, a price
// is said to be unknown.
func TestWhatAListLacks(t *testing.T) {
	_, findings := ReadPrices(strings.NewReader("item,likely\nlabour,40\n"), "x")
	var said strings.Builder
	for _, f := range findings {
		fmt.Fprintln(&said, f.String())
	}
	for want, n := range map[string]int{
		"error: names no currency": 1, "warning: gives no date, and prices depend on it": 1, "warning: gives no place": 1, "has no line for labour": 0, "has no line for oxygen": 1,
	} {
		if strings.Count(said.String(), want) != n {
			t.Errorf("%q is said other than %d times in\n%s", want, n, said.String())
		}
	}
	for _, want := range []string{"labour          an hour of work, for each h: what an hour of work costs", "disc            an abrasive disc, for each disc\n"} {
		if !strings.Contains(PricesTemplate(), want) {
			t.Errorf("the template does not say %q", want)
		}
	}
}

// A list is owned by one price of the customer's or the rep's own.
func TestOwned(t *testing.T) {
	for basis, want := range map[Basis]bool{BasisCustomer: true, BasisOwn: true, BasisPublic: false, BasisPractice: false, BasisInvented: false} {
		l := DemoPrices().With(ItemLabour, Price{Exact(40), basis, ""})
		if l.Owned() != want || DemoPrices().Owned() {
			t.Errorf("a price that is %s: owned %t", basis, l.Owned())
		}
	}
	none, own := (*PriceList)(nil), PriceList{Name: "own"}
	if none.OrDemo().Name != DemoPricesName || own.OrDemo().Name != "own" {
		t.Error("the built-in list stands for none, and for none other")
	}
	for basis, want := range map[string]bool{string(BasisOwn): false, string(BasisInvented): true, string(cite.Practice): true, string(cite.Memory): true, string(cite.Given): false} {
		if (Input{Basis: basis}).Assumed() != want {
			t.Errorf("what rests on %q: assumed %t", basis, !want)
		}
	}
	if n := len(PricesFingerprint(DemoPrices())); n != 12 {
		t.Errorf("a fingerprint of %d digits", n)
	}
}
