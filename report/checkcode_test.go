package report_test

import (
	"strings"
	"testing"

	"cutbrief/assess/casebook"
	"cutbrief/report"
	"cutbrief/rules/cost"
	"cutbrief/rules/system"
)

// The code is read back from what a page holds, whole or as printed, and any part
// of it that is changed is told.
func TestCheckCodeThereAndBack(t *testing.T) {
	v, _ := casebook.DemoVisit(casebook.DemoVisits()[0])
	code, err := report.CheckCodeOf(v, system.Demo(), report.Options{}, "a4")
	if err != nil {
		t.Fatal(err)
	}
	brief, err := report.BuildFor("a4", v, system.Demo(), report.Options{Coded: true})
	if err != nil {
		t.Fatal(err)
	}
	foot := brief.Footing[len(brief.Footing)-1]
	wrapped := strings.ReplaceAll(foot, " ", "\n     ")
	for _, page := range []string{brief.Check, foot, wrapped, "\x00\xff<dc:identifier>" + brief.Check + "</dc:identifier>"} {
		read, ok := report.CheckCodeOn([]byte(page))
		if !ok || len(read.Differ(code)) > 0 {
			t.Errorf("%q: %v, %v", page, ok, read.Differ(code))
		}
	}
	for old, changed := range map[string]string{
		"systems=" + system.Fingerprint(system.Demo()): "systems=0123456789ab", "prices=" + cost.PricesFingerprint(cost.DemoPrices()): "prices=0123456789ab",
		"units=mm": "units=in", "paper=a4": "paper=letter", "code=" + code.Code[:4]: "code=0000", "visit=" + code.Visit[:12]: "visit=000000000000",
	} {
		page := strings.Replace(foot, old, changed, 1)
		read, ok := report.CheckCodeOn([]byte(page))
		if page == foot || !ok || len(read.Differ(code)) != 1 {
			t.Errorf("%s for %s: %v, %v", changed, old, ok, read.Differ(code))
		}
	}
	if _, ok := report.CheckCodeOn([]byte("a page without one, code=abcd")); ok {
		t.Error("a code was found where there is none")
	}
	if plain := report.Build(v, system.Demo(), report.Options{}); plain.Check != "" || len(plain.Footing) != len(brief.Footing)-1 {
		t.Error("a page nobody asked it of carries a code")
	}
}

// What a list is called does not count; a price, its basis and its date do.
func TestFingerprintOfPrices(t *testing.T) {
	demo := cost.DemoPrices()
	other := demo
	other.Name = "another.csv"
	if cost.PricesFingerprint(other) != cost.PricesFingerprint(demo) {
		t.Error("the name of a list counts")
	}
	other.Date = "2026-01-16"
	labour, _ := demo.Get(cost.ItemLabour)
	labour.Basis = cost.BasisOwn
	for _, changed := range []cost.PriceList{other, demo.With(cost.ItemLabour, labour)} {
		if cost.PricesFingerprint(changed) == cost.PricesFingerprint(demo) {
			t.Error("a change does not count")
		}
	}
}
