package export_test

import (
	"bytes"
	"encoding/json"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"

	"cutbrief/assess/review"
	"cutbrief/report/export"
)

// Every row that is written is one by the schema, and a row with a word of our own
// making is not.
func TestSchemaHoldsForRows(t *testing.T) {
	document, err := jsonschema.UnmarshalJSON(bytes.NewReader(export.Schema()))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource("row.json", document); err != nil {
		t.Fatal(err)
	}
	schema, err := c.Compile("row.json")
	if err != nil {
		t.Fatal(err)
	}
	rows := []*review.Row{
		{},
		{Path: "a.json", Date: "2026-03-12", Company: "Ansel", Metals: "mild-steel, stainless", Thickest: 9.525, Verdict: review.FallsShort, Outcome: "order",
			Due: "2026-04-01", Flags: review.FlagSet(0).With(review.Smaller), Why: "too small", Unanswered: "breaker; altitude", Noted: review.Noted{Minutes: 20}, Stage: review.Judged},
	}
	var out bytes.Buffer
	sheet := export.Sheet{Rows: func(yield func(*review.Row) bool) {
		for _, r := range rows {
			if !yield(r) {
				return
			}
		}
	}, Fields: review.Fields()}
	if err := sheet.NDJSON(&out); err != nil {
		t.Fatal(err)
	}
	for line := range bytes.Lines(out.Bytes()) {
		var row map[string]any
		if err := json.Unmarshal(line, &row); err != nil {
			t.Fatal(err)
		}
		if err := schema.Validate(row); err != nil {
			t.Errorf("%s: %v", line, err)
		}
		row["verdict"] = "splendid"
		if schema.Validate(row) == nil {
			t.Errorf("a verdict that is none is taken: %v", row)
		}
	}
}
