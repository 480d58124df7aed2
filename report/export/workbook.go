package export

import (
	"encoding/json"
	"iter"
	"strings"
	"time"

	"cutbrief/assess/review"
	"cutbrief/rules/message"
	"cutbrief/rules/tabular"
)

// dayZero is the day that workbooks count from.
var dayZero = time.Date(1899, 12, 30, 0, 0, 0, 0, time.UTC)

// Workbook is the list as the sheet of a workbook: lengths and times are numbers,
// with their unit in the heading, days are days, and texts are texts.
func (s Sheet) Workbook() tabular.Table {
	t := asTable(s.Words.Print(message.ID("visits").Message()), s.record(&review.Row{}), s.records())
	for i, f := range s.Fields {
		t.Columns[i] = s.heading(f)
		if f.Unit() != "" {
			t.Columns[i] += " (" + f.Unit() + ")"
		}
		for _, row := range t.Rows {
			if text, is := row[i].(string); is && f.Shape == review.Date {
				if day, err := time.Parse(time.DateOnly, text); err == nil {
					row[i] = tabular.Day(day.Sub(dayZero) / (24 * time.Hour))
				}
			}
		}
	}
	return t
}

// Workbook is what was measured as the sheet of a workbook, under the names of its
// CSV, which have the units.
func (m Measured) Workbook() tabular.Table {
	return asTable("measured", Followed{}.record(m.Enough), m.records())
}

// asTable are records below the names of one.
func asTable(name string, names []value, records iter.Seq[[]value]) tabular.Table {
	t := tabular.Table{Name: name}
	for _, v := range names {
		t.Columns = append(t.Columns, v.name)
	}
	for r := range records {
		row := make([]any, len(r))
		for i, v := range r {
			switch is := v.is.(type) {
			case json.Number:
				row[i], _ = is.Float64() // it was written as one
			case []string:
				row[i] = strings.Join(is, "; ")
			default:
				row[i] = is
			}
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}
