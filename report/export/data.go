package export

import (
	"bytes"
	"encoding/json"
	"fmt"

	"cutbrief/report"
)

// JSON writes the brief indented, in the order of its fields, ending in a line
// break. Lists that are always there are written as [] when empty.
func JSON(b report.Brief) ([]byte, error) {
	fill(&b)
	return encode(b, "the brief")
}

// Briefs writes one brief as an object, several as a list of them.
func Briefs(list []report.Brief) ([]byte, error) {
	if len(list) == 1 {
		return JSON(list[0])
	}
	for i := range list {
		fill(&list[i])
	}
	return encode(list, "the briefs")
}

// Reasons writes a derivation as JSON, a list of trees.
func Reasons(list []report.Reason) ([]byte, error) {
	if list == nil {
		list = []report.Reason{}
	}
	return encode(list, "the derivation")
}

// Lines writes labelled facts as JSON, a list.
func Lines(list []report.Line) ([]byte, error) {
	if list == nil {
		list = []report.Line{}
	}
	return encode(list, "the list")
}

// encode writes a value indented, ending in a line break.
func encode(v any, what string) ([]byte, error) {
	var buf bytes.Buffer
	e := json.NewEncoder(&buf)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	if err := e.Encode(v); err != nil {
		return nil, fmt.Errorf("write %s as JSON: %w", what, err)
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
