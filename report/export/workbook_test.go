package export

import (
	"fmt"
	"strings"
	"testing"

	"cutbrief/assess/casebook"
	"cutbrief/report"
	"cutbrief/rules/message"
	"cutbrief/rules/message/catalog"
	"cutbrief/rules/system"
)

// Every figure of the account is on a sheet whose headings name its unit, as the
// number it is; German sheets have the same numbers.
func TestCostTables(t *testing.T) {
	v, _ := casebook.DemoVisit("farm-repair")
	for _, words := range []*message.Catalog{nil, catalog.For("de")} {
		s := report.Costs(v, system.Demo(), report.Options{Words: words})
		figures := 0
		for _, table := range CostTables(s) {
			for _, row := range table.Rows {
				for i, cell := range row {
					if _, is := cell.(float64); !is {
						continue
					}
					if figures++; !strings.Contains(table.Columns[i], "EUR") && row[4] == "" {
						t.Errorf("%s: a figure without a unit below %q", table.Name, table.Columns[i])
					}
				}
			}
		}
		want := 0
		for _, r := range costRows(s) {
			for _, cell := range r {
				if _, is := cell.(float64); is {
					want++
				}
			}
		}
		if figures != want || want == 0 {
			t.Errorf("%s: %d figures, the account has %d", words.Tag(), figures, want)
		}
	}
}

// What is compared in numbers is numbers; their unit is in the heading, in either
// language.
func TestComparisonTables(t *testing.T) {
	v, _ := casebook.DemoVisit("farm-repair")
	plain, err := report.Compare(v, system.Demo(), report.Options{}, nil)
	if err != nil {
		t.Fatal(err)
	}
	german, _ := report.Compare(v, system.Demo(), report.Options{Words: catalog.For("de")}, nil)
	for want, c := range map[string]report.Comparison{"pays after (months)": plain, "bezahlt nach (Monaten)": german} {
		table := ComparisonTables(plain, c)[0]
		at := -1
		for i, h := range table.Columns {
			if h == want {
				at = i
			}
			if strings.HasPrefix(h, "price") && table.Rows[0][i] != 1950.0 {
				t.Errorf("the price is %v", table.Rows[0][i])
			}
		}
		if at < 0 || fmt.Sprint(table.Rows[0][at]) != "10" {
			t.Errorf("no %q in %q", want, table.Columns)
		}
	}
}
