package text

import (
	"strings"
	"testing"

	"cutbrief/report"
)

// accountOf is an account with long names and figures.
func accountOf() report.CostSheet {
	a := report.Amount{Low: -12345.67, Likely: 0, High: 1234567, Text: "EUR 0 (−12,345.67 to 1,234,567)", Shown: [3]string{"−12,345.67", "0.00", "1,234,567.00"}}
	way := report.CostWay{Name: strings.Repeat("a long name ", 6), Cut: "10 mm mild steel", PerMetre: &a, PerYear: &a, Lines: []report.CostLine{{Name: "work to preheat or pierce", Cost: a}}}
	return report.CostSheet{
		Title: "What cutting costs", Prices: []report.Line{{Label: "Price list", Value: strings.Repeat("long ", 40)}}, Cut: "For 10 mm mild steel.",
		Today:    []report.CostWay{way, {Name: "shear", Cut: "10 mm mild steel", Why: "Hand-held shears end at 3.4 mm."}},
		Systems:  []report.CostOffer{{CostWay: way, Against: "shear", Verdict: "no clear saving", Saving: &a, SavingAll: &a, Payback: "never", Movers: []string{"one", "two"}}},
		Crossing: &report.CostChart{Title: "by thickness", Says: "crosses", Rows: []report.CostPoint{{Thickness: "15/16 in", Plasma: a, Flame: a, PlasmaShare: 1, FlameShare: 0.5}}},
		Inputs:   []report.CostInput{{Name: "an hour of work", Unit: "EUR per h", Low: 28, Likely: 38, High: 52, Basis: "invented"}},
		Notes:    []string{"read it so"},
	}
}

// However narrow, no line is wider than asked for, and every figure is there.
func TestAccountFitsItsWidth(t *testing.T) {
	for _, width := range []int{40, 60, 80, 120} {
		out := CostSheet(accountOf(), width)
		for l := range strings.Lines(out) {
			if cells.StringWidth(strings.TrimRight(l, "\n")) > width {
				t.Errorf("width %d: %q", width, l)
			}
		}
	}
	out := CostSheet(accountOf(), 0)
	for _, want := range []string{"−12,345.67", "1,234,567.00", "Hand-held shears end at 3.4 mm.", "no clear saving", "Payback: never", "one; two", "38 (28 to 52) EUR per h", "invented", "░", "█"} {
		if !strings.Contains(out, want) {
			t.Errorf("no %q", want)
		}
	}
}

// Seven columns become three blocks; Markdown lines stay within 80 columns even
// where every character has to be escaped.
func TestComparisonFits(t *testing.T) {
	c := report.Comparison{Title: "Side by side"}
	for range 7 {
		c.Columns = append(c.Columns, strings.Repeat("*_|", 20))
	}
	c.Rows = []report.ComparisonRow{{Label: "cost a metre", Cells: c.Columns}}
	for l := range strings.Lines(Comparison(c, 80)) {
		if cells.StringWidth(strings.TrimRight(l, "\n")) > 80 {
			t.Errorf("%q", l)
		}
	}
	out := Comparison(c, Markdown)
	for l := range strings.Lines(out) {
		if cells.StringWidth(strings.TrimRight(l, "\n")) > 80 {
			t.Errorf("%q", l)
		}
	}
	if n := strings.Count(out, "| cost a metre |"); n != 3 {
		t.Errorf("%d blocks", n)
	}
}
