package export

import (
	"encoding/json"

	"cutbrief/assess/review"
)

// Schema returns the JSON Schema (2020-12) of one row of a review as NDJSON and
// JSON write it, made from the columns, so that it cannot fall behind them. A row
// holds the columns that were asked for; what is not known is null.
func Schema() []byte {
	properties := map[string]any{}
	for _, f := range review.Fields() {
		name, node := f.ID, map[string]any{"type": []string{"string", "null"}}
		words := f.Vocabulary()
		switch {
		case f.Shape == review.List:
			items := map[string]any{"type": "string"}
			if words != nil {
				items = map[string]any{"enum": words}
			}
			node = map[string]any{"type": "array", "items": items}
		case f.Unit() != "":
			name += "_" + f.Unit()
			node = map[string]any{"type": []string{"number", "null"}, "exclusiveMinimum": 0}
		case f.Shape == review.Date:
			node["format"] = "date"
		case words != nil:
			list := []any{nil}
			for _, w := range words {
				list = append(list, w)
			}
			node = map[string]any{"enum": list}
		}
		node["description"] = f.Says
		properties[name] = node
	}
	out, err := json.MarshalIndent(map[string]any{
		"$schema": "https://json-schema.org/draft/2020-12/schema", "$id": "urn:cutbrief:review-row:1",
		"title": "One visit in a review, as cutbrief review --format ndjson writes it", "type": "object",
		"properties": properties, "additionalProperties": false,
	}, "", "  ")
	if err != nil {
		return nil // only texts in there: cannot fail
	}
	return append(out, '\n')
}
