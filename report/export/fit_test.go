package export

import (
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"cutbrief/assess/review"
)

// wideRow says a lot in every column.
var wideRow = &review.Row{Path: "2026/11/south/visit-000123.json", Date: "2026-11-01", Company: "Hollow Lane Gates and Railings", Rep: "Invented Person", Metals: "mild-steel, stainless, aluminium", Thickest: 12.7,
	Critical: "across-gaps", System: "demo-45", Verdict: review.FallsShort, Outcome: "second-visit", Due: "2026-12-01", Flags: 1<<review.Smaller | 1<<review.Unsafe}

func textAt(t testing.TB, width int, chosen bool, rows ...*review.Row) string {
	s := sheet(rows...)
	s.Width, s.Chosen = width, chosen
	return write(t, asText, s)
}

// By hand, at 80 cells: date 10, company 12, system 7, verdict 11, flags 8, file 12 and
// five gaps of 2 are 70. The thickest, 8 and a gap, would make it 80, and stays;
// metals, critical, due, outcome and rep go.
func TestATableFitsTheScreen(t *testing.T) {
	want := `DATE        COMPANY       THICKEST  SYSTEM   VERDICT      FLAGS     FILE
2026-11-01  Hollow Lane…  12.7 mm   demo-45  falls short  smaller…  …000123.json
–           –             –         –        –            damaged   …s-torn.json

2 files
No room for metals, critical, due, outcome, rep: --fields names columns, and a
pipe or a file gets all.
`
	torn := &review.Row{Path: "south/a-file-that-is-torn.json", Flags: 1 << review.Damaged}
	if got := textAt(t, 80, false, wideRow, torn); got != want {
		t.Errorf("got\n%s", got)
	}
}

// In a pipe nothing is left out or shortened; what is narrow enough stays whole.
func TestATableInAPipeIsWhole(t *testing.T) {
	got := textAt(t, 0, false, wideRow)
	for _, f := range review.UsualFields() {
		if !strings.Contains(got, f.Cell(nil, wideRow)) {
			t.Errorf("no %s in\n%s", f.ID, got)
		}
	}
	if narrow := textAt(t, 300, false, wideRow); narrow != got {
		t.Errorf("room enough, and got\n%s", narrow)
	}
}

// Columns asked for by name are never left out.
func TestChosenColumnsStay(t *testing.T) {
	head, _, _ := strings.Cut(textAt(t, 100, true, wideRow), "\n")
	if got := len(strings.Fields(head)); got != len(review.UsualFields()) {
		t.Errorf("%d columns: %s", got, head)
	}
}

// Whatever the rows say, no line of the table is wider than the screen from 60 cells
// on, and the customer, the verdict, the flags and the file are there.
func TestAnyTableFits(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		text := rapid.StringMatching(`[a-zé日 \-]{0,40}`)
		row := *wideRow
		row.Company, row.Path, row.Metals = text.Draw(rt, "company"), text.Draw(rt, "path"), text.Draw(rt, "metals")
		width := rapid.IntRange(60, 160).Draw(rt, "width")
		out := textAt(t, width, width > 100 && rapid.Bool().Draw(rt, "chosen"), &row)
		lines := strings.Split(out, "\n")
		for _, l := range lines[:2] {
			if cells.StringWidth(l) > width {
				rt.Fatalf("%d cells at %d:\n%s", cells.StringWidth(l), width, out)
			}
		}
		head := strings.Fields(lines[0])
		for _, name := range []string{"COMPANY", "VERDICT", "FLAGS", "FILE"} {
			if !slices.ContainsFunc(head, func(h string) bool { return strings.HasPrefix(name, strings.TrimSuffix(h, "…")) }) {
				rt.Fatalf("no %s in %s", name, lines[0])
			}
		}
	})
}
