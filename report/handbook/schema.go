package handbook

import (
	"encoding/json"
	"fmt"
	"maps"
	"slices"
	"strings"
)

// node is a part of a JSON Schema as far as a reader needs it.
type node struct {
	Type        string          `json:"type"`
	Format      string          `json:"format"`
	Description string          `json:"description"`
	Properties  map[string]node `json:"properties"`
	Items       *node           `json:"items"`
	Required    []string        `json:"required"`
	Enum        []any           `json:"enum"`
	Const       any             `json:"const"`
	MaxLength   int             `json:"maxLength"`
	MaxItems    int             `json:"maxItems"`
	Minimum     *float64        `json:"minimum"`
	Maximum     *float64        `json:"maximum"`
}

// UnmarshalJSON takes true and false, which are schemas too, for one that says
// nothing.
func (n *node) UnmarshalJSON(data []byte) error {
	if data[0] != '{' {
		return nil
	}
	type plain node
	return json.Unmarshal(data, (*plain)(n))
}

// schemaSections are a table for the whole and one for each object inside it,
// each before those inside it.
func schemaSections(schema []byte) []Section {
	var root node
	if err := json.Unmarshal(schema, &root); err != nil {
		return nil // it is the program's own; a test reads it
	}
	return root.sections("The file")
}

func (n node) sections(title string) []Section {
	s := Section{Title: title, Head: []string{"Field", "Means", "Holds", "Must be there"}}
	if n.Description != "" {
		s.Says = []string{n.Description}
	}
	var inner []Section
	for _, name := range slices.Sorted(maps.Keys(n.Properties)) {
		p := n.Properties[name]
		must := ""
		if slices.Contains(n.Required, name) {
			must = "yes"
		}
		s.Rows = append(s.Rows, []string{name, p.Description, p.holds(), must})
		switch {
		case len(p.Properties) > 0:
			inner = append(inner, p.sections("In "+name)...)
		case p.Items != nil && len(p.Items.Properties) > 0:
			inner = append(inner, p.Items.sections("In each of "+name)...)
		}
	}
	return append([]Section{s}, inner...)
}

// holds says what a field can be: its kind, its limit, its choices.
func (n node) holds() string {
	switch {
	case n.Const != nil:
		return fmt.Sprint(n.Const)
	case len(n.Enum) > 0:
		return "one of " + listed(n.Enum)
	case n.Items != nil && len(n.Items.Enum) > 0:
		return fmt.Sprintf("up to %d of %s", n.MaxItems, listed(n.Items.Enum))
	case n.Type == "array":
		return fmt.Sprintf("a list of at most %d", n.MaxItems)
	case n.Type == "string" && n.MaxLength > 0:
		return fmt.Sprintf("text of at most %d characters", n.MaxLength)
	case n.Format == "date-time":
		return "a moment, such as 2026-03-12T14:30:00Z"
	case n.Format == "date":
		return "a day, such as 2026-03-12"
	case n.Type == "string":
		return "text"
	case n.Type == "integer":
		return "a whole number"
	case n.Type == "number" && n.Minimum != nil && n.Maximum != nil:
		return fmt.Sprintf("a number from %s to %s", number(*n.Minimum), number(*n.Maximum))
	case n.Type == "number" && n.Maximum != nil:
		return fmt.Sprintf("a number above 0 and at most %s", number(*n.Maximum))
	case n.Type == "boolean":
		return "true or false"
	case n.Type == "object":
		return "fields, see below"
	}
	return n.Type
}

func listed(choices []any) string {
	var list []string
	for _, c := range choices {
		list = append(list, fmt.Sprint(c))
	}
	return strings.Join(list, ", ")
}
