package export

import (
	"encoding/csv"
	"encoding/json"
	"strconv"
	"strings"
	"testing"

	"cutbrief/report"
)

// costAccount is an account with texts that a spreadsheet would take for formulas.
func costAccount() report.CostSheet {
	a := &report.Amount{Low: -1.5, Likely: 2, High: 3.25}
	way := report.CostWay{Name: "=1+1", Cut: "@cut", PerMetre: a, Lines: []report.CostLine{{ID: "x", Name: "-part", Cost: *a}}}
	return report.CostSheet{
		Currency: "EUR", Prices: []report.Line{{Label: "+label", Value: "\tvalue"}}, Today: []report.CostWay{way},
		Systems: []report.CostOffer{{CostWay: way, Saving: a, Verdict: "\rsaves", Payback: "=never"}},
		Inputs:  []report.CostInput{{Name: "an hour, of \"work\"", Unit: "EUR per h", Low: -1, Likely: 0.19, High: 2, Basis: "own", Note: "=note"}},
	}
}

// No text cell can be taken for a formula; the cells of numbers are numbers.
func TestCostCSVOpensSafely(t *testing.T) {
	out, err := CostCSV(costAccount())
	if err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(strings.NewReader(string(out))).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	numbers := 0
	for _, row := range rows[1:] {
		for i, cell := range row {
			if _, err := strconv.ParseFloat(cell, 64); err == nil {
				numbers++
				continue
			}
			if cell != "" && strings.ContainsRune("=+-@\t\r", rune(cell[0])) {
				t.Errorf("column %d of %q: %q", i, row, cell)
			}
		}
	}
	if want := 3 * 6; numbers != want { // two lines of either way, a saving, an input
		t.Errorf("%d numbers, want %d", numbers, want)
	}
}

func TestCostJSON(t *testing.T) {
	out, err := CostSheet(report.CostSheet{})
	var back map[string]any
	if err != nil || json.Unmarshal(out, &back) != nil {
		t.Fatal(err)
	}
	for _, list := range []string{"today", "systems", "inputs"} {
		if items, ok := back[list].([]any); !ok || len(items) != 0 {
			t.Errorf("%s is %v", list, back[list])
		}
	}
}

// In a file the texts say what they are for: they may be for a foot where the
// figures are for a metre.
func TestTextsSayWhatTheyAreFor(t *testing.T) {
	data, err := CostSheet(report.CostSheet{Today: []report.CostWay{{Name: "sent out", Each: "a foot"}}})
	if err != nil || !strings.Contains(string(data), `"texts_for": "a foot"`) {
		t.Errorf("%s %v", data, err)
	}
}
