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

// With the customer's own prices three lines and a pair of bars stand on an
// ordinary page, which stays one. With assumed prices they give way to the
// reasons, and the mark stays.
func TestCostIsOnThePage(t *testing.T) {
	for _, p := range papers {
		own := withCost()
		own.Cost.Assumed = false
		own.Cost.Lines[2] = "Moved most by an hour of work."
		onOnePage(t, own, p, "What it costs", "Likely saves EUR 2.92", "Pays for itself after 5 months", "Moved most by", "EUR 4.98 a metre", "EUR 2.05 a metre")
		assumed := withCost()
		onOnePage(t, assumed, p, "What it costs (prices assumed)", "Likely saves EUR 2.92", "It is rated for")
	}
}

func onOnePage(t *testing.T, b report.Brief, p Paper, texts ...string) {
	t.Helper()
	pg, err := laid(b, p)
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range texts {
		if !onPage(pg, want) {
			t.Errorf("%s: %q is not on the page; left out: %v", p, want, pg.gone)
		}
	}
	for _, f := range faults(pg, p) {
		t.Errorf("%s: %s", p, f)
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
		t.Errorf("left out: %v", pg.gone)
	}
}
