package export

import (
	"bytes"
	"encoding/json"
	"fmt"

	"cutbrief/report"
)

// Briefs writes one brief as an object, several as a list of them. Lists that are
// always there are written as [] when empty.
func Briefs(list []report.Brief) ([]byte, error) {
	for i := range list {
		fill(&list[i])
	}
	if len(list) == 1 {
		return JSON(list[0])
	}
	return JSON(list)
}

// List writes a list as JSON, [] when it is empty.
func List[T any](list []T) ([]byte, error) { return JSON(append([]T{}, list...)) }

// JSON writes a value indented, in the order of its fields, ending in a line break.
func JSON(v any) ([]byte, error) {
	var buf bytes.Buffer
	e := json.NewEncoder(&buf)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	if err := e.Encode(v); err != nil {
		return nil, fmt.Errorf("write JSON: %w", err)
	}
	return buf.Bytes(), nil
}

// fill puts empty lists where there are none.
func fill(b *report.Brief) {
	for _, list := range []*[]report.Line{&b.Who, &b.Evidence, &b.Confirm, &b.Excluded, &b.Cautions} {
		if *list == nil {
			*list = []report.Line{}
		}
	}
	for _, list := range []*[]string{&b.Because, &b.Footing} {
		if *list == nil {
			*list = []string{}
		}
	}
	if b.Bars == nil {
		b.Bars = []report.Bar{}
	}
	if b.Plan == nil {
		b.Plan = []report.Row{}
	}
}
