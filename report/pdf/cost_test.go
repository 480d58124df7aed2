package pdf

import (
	"strings"
	"testing"

	"cutbrief/report"
)

// withCost is an ordinary page with the part about cost.
func withCost() report.Brief {
	b := sample()
	b.Cost = &report.Cost{
		Verdict: "saves", Assumed: true,
		Lines: []string{"Likely saves EUR 2.92 (1.53 to 4.98) a metre.", "Pays for itself after 5 months (3 to 10 months).", "Moved most by an hour of work. Prices are assumed."},
		Bars:  []report.CostBar{{Label: "Today", Brief: "EUR 4.98 a metre", Share: 1}, {Label: "Demo 70", Brief: "EUR 2.05 a metre", Share: 0.41}},
	}
	return b
}

// Three lines and a pair of bars stand on an ordinary page, which stays one.
func TestCostIsOnThePage(t *testing.T) {
	for _, p := range papers {
		pg, err := laid(withCost(), p)
		if err != nil {
			t.Fatal(err)
		}
		for _, want := range []string{"What it costs (prices assumed)", "Likely saves EUR 2.92", "Pays for itself after 5 months", "Moved most by", "EUR 4.98 a metre", "EUR 2.05 a metre"} {
			if !onPage(pg, want) {
				t.Errorf("%s: %q is not on the page; shortened: %v", p, want, pg.cuts)
			}
		}
		for _, f := range faults(pg, p) {
			t.Errorf("%s: %s", p, f)
		}
	}
}

// However full the page is, the verdict and the mark that prices are assumed
// stay as long as there is any room.
func TestTheMarkOfAssumedPricesStays(t *testing.T) {
	b := withCost()
	for range 40 {
		b.Notes = append(b.Notes, "a line of notes")
		b.Confirm = append(b.Confirm, report.Line{Label: "one more thing", Why: "to confirm"})
		b.Because = append(b.Because, strings.Repeat("one more reason ", 20))
	}
	pg, err := laid(b, Letter)
	if err != nil {
		t.Fatal(err)
	}
	if !onPage(pg, "(prices assumed)") || !onPage(pg, "Likely saves") {
		t.Errorf("shortened: %v", pg.cuts)
	}
}
