package export

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"testing"

	"cutbrief/assess/review"
	"cutbrief/report"
	"cutbrief/rules/demonstration"
	"cutbrief/rules/unit"
)

var followed = Measured{Visits: 12, Totals: review.Totals{Files: 14, Unread: 1}, Enough: 5, List: []Followed{
	{Name: "Demo 45", Row: "cuts ran slow", Lines: []report.Line{{Label: "timed cuts", Value: "9 cuts"}, {Label: "speed", Value: "slower"}},
		Measured: review.Measured{System: "demo-45", Unpredicted: 2, Track: demonstration.Accuracy{
			All: demonstration.Errors{Cuts: 9, Visits: 5, Median: -0.2, Low: -0.25, High: 0.034},
			Row: demonstration.Errors{Cuts: 7, Visits: 4, Median: -0.22}, Off: demonstration.Slow, Rated: unit.Known(unit.Millimetre(9.76))}}},
	{Measured: review.Measured{System: "=1+1", Track: demonstration.Accuracy{All: demonstration.Errors{Cuts: 1, Visits: 1, Median: -0.00001}}}},
	{Measured: review.Measured{Unpredicted: 1}},
}}

func TestMeasuredAsText(t *testing.T) {
	var out bytes.Buffer
	if err := followed.Text(&out); err != nil {
		t.Fatal(err)
	}
	want := `system: Demo 45 (demo-45)
  timed cuts  9 cuts
  speed       slower
  left out    2 more timed, without a prediction

system: =1+1

system: not noted
  left out    1 more timed, without a prediction

The band is the one at the bench: common practice, no source. No row is changed: that is for whoever answers for the range.

12 visits looked at, of 14 files; 1 of all not read as a visit, and so not counted
`
	if got := out.String(); got != want {
		t.Errorf("got\n%s", got)
	}
}

func TestMeasuredAsCSV(t *testing.T) {
	var out bytes.Buffer
	if err := followed.CSV(&out); err != nil {
		t.Fatal(err)
	}
	records, err := csv.NewReader(&out).ReadAll()
	if err != nil || len(records) != 4 {
		t.Fatalf("%v %v", err, records)
	}
	for i, want := range []map[string]string{
		{"system": "demo-45", "timed_cuts": "9", "median_error_percent": "-20.0", "spread": "quartiles", "verdict": "too slow", "fitting_rated_mm": "9.8"},
		{"system": "'=1+1", "timed_cuts": "1", "median_error_percent": "0.0", "spread": "full range", "verdict": "", "fitting_rated_mm": ""},
		{"system": "", "timed_cuts": "0", "unpredicted_cuts": "1", "median_error_percent": "", "spread": ""},
	} {
		for c, name := range records[0] {
			if value, asked := want[name]; asked && records[i+1][c] != value {
				t.Errorf("line %d, %s: %q, want %q", i+1, name, records[i+1][c], value)
			}
		}
	}
}

func TestMeasuredAsJSON(t *testing.T) {
	var out bytes.Buffer
	var doc struct {
		Files, Unread, Visits int
		Systems               []map[string]any
	}
	if err := followed.JSON(&out); err != nil || json.Unmarshal(out.Bytes(), &doc) != nil {
		t.Fatalf("%v %s", err, out.String())
	}
	if doc.Files != 14 || doc.Unread != 1 || doc.Visits != 12 || len(doc.Systems) != 3 {
		t.Fatalf("%+v", doc)
	}
	if s := doc.Systems[0]; s["median_error_percent"] != -20.0 || s["fitting_rated_mm"] != 9.8 || s["cuts_of_the_row"] != 7.0 {
		t.Errorf("%v", s)
	}
	if s := doc.Systems[2]; s["system"] != nil || s["median_error_percent"] != nil {
		t.Errorf("%v", s)
	}
}
