package handbook

import (
	"encoding/json"
	"fmt"
	"maps"
	"slices"

	"cutbrief/rules/message"
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

// sections are a table for the whole and one for each object inside it, each before
// those inside it.
func (w writer) sections(n node, title message.Message) []Section {
	var inner []Section
	s := table(w, "{1}", nil, []message.ID{"Field", "Means", "Holds", "Must be there"}, slices.Sorted(maps.Keys(n.Properties)), func(name string) []any {
		p := n.Properties[name]
		switch {
		case len(p.Properties) > 0:
			inner = append(inner, w.sections(p, message.New("Fields of {1}", message.Name(name)))...)
		case p.Items != nil && len(p.Items.Properties) > 0:
			inner = append(inner, w.sections(*p.Items, message.New("Fields of each of {1}", message.Name(name)))...)
		}
		return []any{message.Name(name), p.Description, p.holds(), yes(slices.Contains(n.Required, name))}
	})
	s.Title = w.words.Print(title)
	if n.Description != "" {
		s.Says = []string{w.cell(n.Description)}
	}
	return append([]Section{s}, inner...)
}

// yes marks a cell, or leaves it empty.
func yes(is bool) message.ID {
	if is {
		return "yes"
	}
	return ""
}

// holds says what a field can be: its kind, its limit, its choices.
func (n node) holds() message.Message {
	m := message.New
	switch {
	case n.Const != nil:
		return message.Text(fmt.Sprint(n.Const))
	case len(n.Enum) > 0:
		return m("one of {1}", listed(n.Enum))
	case n.Items != nil && len(n.Items.Enum) > 0:
		return m("up to {1} of {2}", message.Count(n.MaxItems), listed(n.Items.Enum))
	case n.Type == "array":
		return m("a list of at most {1}", message.Count(n.MaxItems))
	case n.Type == "string" && n.MaxLength > 0:
		return m("text of at most {1} characters", message.Count(n.MaxLength))
	case n.Format == "date-time":
		return m("a moment, such as 2026-03-12T14:30:00Z")
	case n.Format == "date":
		return m("a day, such as 2026-03-12")
	case n.Type == "string":
		return m("text")
	case n.Type == "integer":
		return m("a whole number")
	case n.Type == "number" && n.Minimum != nil && n.Maximum != nil:
		return m("a number from {1} to {2}", figure(*n.Minimum), figure(*n.Maximum))
	case n.Type == "number" && n.Maximum != nil:
		return m("a number above 0 and at most {1}", figure(*n.Maximum))
	case n.Type == "boolean":
		return m("true or false")
	case n.Type == "object":
		return m("fields, see below")
	}
	return message.Text(n.Type)
}

func listed(choices []any) message.Name {
	return message.Name(message.Join(", ", message.Each(choices, func(c any) message.Message { return message.Text(fmt.Sprint(c)) })...).String())
}
