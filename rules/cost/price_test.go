package cost

import (
	"math"
	"strings"
	"testing"

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
	l, _ := ReadPrices(strings.NewReader(priceHead+"oxygen,per ft³,0.05,0.20,0.35,,\npropane,kg,2,2,2,,\nair-power,kW per 100 cfm,22,22,24,,\ncylinders,month,25,25,25,,\n"), "x")
	for id, want := range map[ItemID]float64{ItemOxygen: 7.063, ItemPropane: 3.666, ItemAirPower: 7.77, ItemCylinders: 300} {
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

// 2028 is a leap year.
func TestTheTwentyNinthOfFebruary(t *testing.T) {
	if l, _ := ReadPrices(strings.NewReader("item,likely\ndate,2028-02-29\ncurrency,EUR\n"), "x"); l.Date != "2028-02-29" {
		t.Errorf("%q", l.Date)
	}
}
