package export

import (
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"

	"cutbrief/report"
	"cutbrief/rules/message"
	"cutbrief/rules/tabular"
)

// CostTables are the account as the sheets of a workbook: one for each unit of
// money, which its headings name, one for the figures it rests on, and one for
// what is said in words.
func CostTables(s report.CostSheet) []tabular.Table {
	var tables []tabular.Table
	inputs := wordedTable("input", costHeads[:], s.Words)
	notes := wordedTable("note", []string{"part", "way", "cut", "item", "note"}, s.Words)
	at := map[string]int{}
	for _, r := range costRows(s) {
		unit, _ := r[unitColumn].(string)
		input := r[0] == "input"
		for i, cell := range r[:unitColumn] {
			r[i] = said(cell, s.Words)
		}
		switch _, counted := r[lowColumn].(float64); {
		case input:
			inputs.Rows = append(inputs.Rows, r)
		case !counted:
			note := r[len(r)-1]
			if said, is := r[lowColumn+1].(string); is {
				note = said
			}
			notes.Rows = append(notes.Rows, append(slices.Clone(r[:unitColumn]), note))
		default:
			i, known := at[unit]
			if !known {
				heads := slices.Delete(slices.Clone(costHeads), unitColumn, unitColumn+1)
				i, at[unit] = len(tables), len(tables)
				tables = append(tables, wordedTable(unit, heads, s.Words))
				shown := unit
				if money, yearly := strings.CutSuffix(unit, "/year"); yearly {
					shown = money + "/" + s.Words.Print(message.ID("year").Message())
				}
				tables[i].Name = shown
				for k := unitColumn; k < highColumn; k++ {
					tables[i].Columns[k] += " (" + shown + ")"
				}
			}
			tables[i].Rows = append(tables[i].Rows, slices.Delete(slices.Clone(r), unitColumn, unitColumn+1))
		}
	}
	for _, n := range s.Notes {
		notes.Rows = append(notes.Rows, []any{nil, nil, nil, nil, n})
	}
	return append(tables, inputs, notes)
}

// wordedTable is an empty sheet with its name and headings in the words of a catalog.
func wordedTable(name string, heads []string, words *message.Catalog) tabular.Table {
	t := tabular.Table{Name: said(name, words).(string)}
	for _, h := range heads {
		t.Columns = append(t.Columns, said(h, words).(string))
	}
	return t
}

// costNames are the names that the account has for programs, as people read them.
var costNames = map[string]message.ID{
	"part": "Part", "way": "Way of cutting", "cut": "Cut", "item": "Item", "unit": "Unit", "low": "low", "likely": "likely", "high": "high", "note": "Notes",
	"input": "Figures used", "system": "system", "comparison": "Systems side by side", "prices": "prices", "today": "today", "saving": "saved against today",
	"crossing": "crossing", "mark": "mark", "together": "together", "a metre": "a metre", "net present value": "net present value", "payback": "payback",
	"not worked out": "not worked out", "plasma": "plasma", "oxy-fuel": "oxy-fuel",
}

// said is a cell in the words of a catalog, if it is one of those names.
func said(cell any, words *message.Catalog) any {
	name, is := cell.(string)
	if id, known := costNames[name]; is && known {
		return words.Print(id.Message())
	}
	return cell
}

// quantity is a number with its unit, or a currency with its number, as our own
// words write it: "12.7 mm", "EUR 1,950".
var quantity = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`^(?:([A-Z]{3}) )?(-?[0-9][0-9,]*(?:\.[0-9]+)?)(?: ([^0-9]+))?$`)
})

// ComparisonTables are systems side by side as the sheets of a workbook: one
// system a line, and what is said below. What is a number with a unit in our own
// words, which plain is in, is a number below a heading with the unit; anything
// else is a text as worded has it.
func ComparisonTables(plain, worded report.Comparison) []tabular.Table {
	t := wordedTable("comparison", []string{"system"}, worded.Words)
	for _, name := range worded.Columns {
		t.Rows = append(t.Rows, []any{name})
	}
	for i, row := range worded.Rows {
		label := row.Label
		if i > 0 && repeated(worded.Rows, label) {
			label = worded.Rows[i-1].Label + ", " + label
		}
		numbers, counted := counted(plain.Rows[i].Cells)
		if unit := unitOf(row.Cells); counted && unit != "" {
			label += " (" + unit + ")"
		}
		t.Columns = append(t.Columns, label)
		for k, cell := range row.Cells {
			if counted {
				t.Rows[k] = append(t.Rows[k], numbers[k])
			} else {
				t.Rows[k] = append(t.Rows[k], cell)
			}
		}
	}
	notes := wordedTable("note", []string{"note"}, worded.Words)
	for _, n := range append([]string{worded.Demo}, worded.Notes...) {
		if n != "" {
			notes.Rows = append(notes.Rows, []any{n})
		}
	}
	return []tabular.Table{t, notes}
}

// repeated reports whether more than one row has the label.
func repeated(rows []report.ComparisonRow, label string) bool {
	n := 0
	for _, r := range rows {
		if r.Label == label {
			n++
		}
	}
	return n > 1
}

// counted reads the cells of a row as numbers of one unit; false if they are not.
// A cell that says nothing applies is nil.
func counted(cells []string) (numbers []any, ok bool) {
	unit := ""
	for _, c := range cells {
		if c == "–" {
			numbers = append(numbers, nil)
			continue
		}
		m := quantity().FindStringSubmatch(c)
		if m == nil || ok && m[1]+m[3] != unit {
			return nil, false
		}
		v, err := strconv.ParseFloat(strings.ReplaceAll(m[2], ",", ""), 64)
		if err != nil {
			return nil, false
		}
		unit, ok = m[1]+m[3], true
		numbers = append(numbers, v)
	}
	return numbers, ok
}

// unitOf is what stands beside the number of the first cell that has one, in
// whatever language.
func unitOf(cells []string) string {
	for _, c := range cells {
		if c != "–" {
			return strings.TrimSpace(strings.Trim(c, "-0123456789.,\u00a0\u202f "))
		}
	}
	return ""
}
