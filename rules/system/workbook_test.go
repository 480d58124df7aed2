package system

import (
	"bytes"
	"encoding/csv"
	"reflect"
	"strings"
	"testing"

	"cutbrief/rules/tabular"
)

// asBook is a file of cells as a workbook.
func asBook(t *testing.T, text string) *bytes.Buffer {
	t.Helper()
	var lines []string
	for line := range strings.SplitSeq(text, "\n") {
		if !strings.HasPrefix(line, "#") {
			lines = append(lines, line)
		}
	}
	records, err := csv.NewReader(strings.NewReader(strings.Join(lines, "\n"))).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	table := tabular.Table{Columns: records[0]}
	for _, r := range records[1:] {
		row := make([]any, len(r))
		for i, cell := range r {
			row[i] = cell
		}
		table.Rows = append(table.Rows, row)
	}
	var out bytes.Buffer
	if err := tabular.WriteWorkbook(&out, table); err != nil {
		t.Fatal(err)
	}
	return &out
}

// A workbook gives the same range, to the last figure, as the CSV file of the same
// cells.
func TestWorkbookIsReadAsCSV(t *testing.T) {
	one, _ := Read(strings.NewReader(Template()), "x")
	two, found := Read(asBook(t, Template()), "x")
	if len(two.Systems) == 0 || !reflect.DeepEqual(one.Systems, two.Systems) || one.Currency != two.Currency || tabular.Count(found, Error) > 0 {
		t.Errorf("%d systems, want %d; %v", len(two.Systems), len(one.Systems), found)
	}
}

// What is wrong is named by its cell.
func TestFindingsNameTheCell(t *testing.T) {
	table := tabular.Table{Columns: []string{"id", "name", "rated_mm"}, Rows: [][]any{{"a-1", "A", "far"}}}
	var out bytes.Buffer
	if err := tabular.WriteWorkbook(&out, table); err != nil {
		t.Fatal(err)
	}
	_, found := Read(&out, "x")
	for _, f := range found {
		if f.Column == "rated_mm" && strings.HasPrefix(f.String(), "cell C2, column rated_mm: error:") {
			return
		}
	}
	t.Error(found)
}

// add writes a system down, each answer until it is taken.
func add(t *testing.T, e *Entry, answers map[string][]string) (errors int) {
	t.Helper()
	for _, f := range e.Fields() {
		for _, said := range append(answers[f.Name], "") {
			found := e.Set(f.Name, said)
			errors += tabular.Count(found, Error)
			if tabular.Count(found, Error) == 0 {
				break
			}
		}
	}
	return errors
}

// A system is added to a file as it is, in any unit; what contradicts what was
// written down before is refused at once. Figures by hand: 1/2 in is 12.7 mm.
func TestEntry(t *testing.T) {
	file := "# our range\nname,id,rated_mm,clean_max_mm,severance_mm,output_min_a,output_max_a,duty,supplies,air_flow_l_min,air_pressure_bar,weight_kg,price_usd\n" +
		"Shop 30,shop-30,8,10,15,20,30,30 A at 50 %,1 phase 200-240 V max 20 A eff 14 A,120,5,9,\n"
	e, err := NewEntry([]byte(file))
	if err != nil {
		t.Fatal(err)
	}
	errors := add(t, e, map[string][]string{
		"id": {"shop-30", "shop-45"}, "name": {"Shop 45"}, "rated_mm": {"1/2 in"}, "clean_max_mm": {"10 mm", "17"}, "severance_mm": {"22 mm"},
		"output_min_a": {"20"}, "output_max_a": {"45 A"}, "duty": {"45 A at 50 %"}, "supplies": {"1 phase 200-240 V max 33 A eff 24 A"},
		"air_flow_l_min": {"5 cfm"}, "air_pressure_bar": {"75 psi"}, "weight_kg": {"31 lb"}, "price_usd": {"1950"},
	})
	if errors != 2 { // an id that is taken, and less clean than rated
		t.Errorf("%d errors", errors)
	}
	if !strings.HasPrefix(e.File(), file) {
		t.Errorf("the file is another:\n%s", e.File())
	}
	r, found := e.Range("x")
	s, known := r.Find("shop-45")
	if !known || s.Rated != 12.7 || s.CleanMax != 17 || r.Currency != "USD" || tabular.Count(found, Error) > 0 {
		t.Errorf("%+v %v", s, found)
	}
	if _, err := NewEntry([]byte("PK\x03\x04")); err == nil {
		t.Error("a workbook is added to")
	}
}
