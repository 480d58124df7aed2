package assess

import (
	"encoding/json"

	"cutbrief/rules/metal"
)

// node is one part of a JSON Schema.
type node = map[string]any

// Schema returns the JSON Schema (2020-12) of the saved format, made from the
// catalogue, so that it cannot fall behind it. Fields it does not name are
// allowed: a program keeps what it does not know. Questions it does not name
// are not: a file that holds one was written by a later program.
func Schema() []byte {
	root := node{
		"$schema":     "https://json-schema.org/draft/2020-12/schema",
		"$id":         "urn:cutbrief:visit:2",
		"title":       "Record of one visit, format cutbrief-visit, version 2",
		"description": "What a customer said about cutting metal by hand, as said, and how it is known.",
		"type":        "object",
		"required":    []string{"format", "version", "answers"},
		"properties": node{
			"format":      node{"const": formatName, "description": "What kind of file this is."},
			"version":     node{"enum": []int{1, formatVersion}, "description": "Of the format."},
			"id":          text(maxLine, "Stable identifier, made when the visit starts."),
			"created":     node{"type": "string", "format": "date-time", "description": "When the visit was begun."},
			"updated":     node{"type": "string", "format": "date-time", "description": "When it was last saved."},
			"revision":    node{"type": "integer", "minimum": 0, "description": "Counts saves."},
			"demo":        node{"type": "boolean", "description": "True if the visit is invented."},
			"skipped":     node{"type": "array", "items": node{"enum": groupNames()}, "maxItems": maxChosen, "description": "Groups of questions left out of this visit."},
			"overrule":    overruleSchema(),
			"recommended": recommendationSchema(),
			"spent":       spentSchema(),
			"answers":     node{"type": "array", "items": answerSchema(), "maxItems": maxAnswers, "description": "What was said, question by question."},
			"showings":    node{"type": "array", "items": showingSchema(), "maxItems": maxShowings, "description": "The demonstrations that were held."},
		},
	}
	out, err := json.MarshalIndent(root, "", "  ")
	if err != nil {
		return nil // only texts and numbers in there: cannot fail
	}
	return append(out, '\n')
}

func text(most int, description string) node {
	return node{"type": "string", "maxLength": most, "description": description}
}

func overruleSchema() node {
	return node{
		"type":        "object",
		"description": "The rep's own choice of what decides, and why.",
		"required":    []string{"requirement"},
		"properties":  node{"requirement": node{"enum": requirements, "description": "What decides, as the rep sees it."}, "reason": text(maxLong, "Why.")},
	}
}

func answerSchema() node {
	var ids []string
	var each []node
	for _, q := range catalogue {
		ids = append(ids, string(q.ID))
		each = append(each, node{
			"if":   node{"properties": node{"question": node{"const": string(q.ID)}}, "required": []string{"question"}},
			"then": q.schema(),
		})
	}
	return node{
		"type":     "object",
		"required": []string{"question"},
		"properties": node{
			"question": node{"enum": ids, "description": "Which question it answers."},
			"metal":    node{"enum": metalNames(), "description": "For questions asked for each metal."},
			"said":     text(maxLong, "As said."),
			"unit":     text(maxLine, "Unit taken for a bare number."),
			"chosen":   node{"type": "array", "items": text(maxLine, "An option."), "maxItems": maxChosen, "description": "What was chosen, where a question offers choices."},
			"state":    node{"enum": states, "default": string(Told), "description": "How the answer is known."},
			"note":     text(maxLong, "The rep's note."),
		},
		"anyOf": []node{
			{"required": []string{"said"}, "properties": node{"said": node{"minLength": 1}}},
			{"required": []string{"chosen"}, "properties": node{"chosen": node{"minItems": 1}}},
			{"required": []string{"state"}, "properties": node{"state": node{"const": string(Unknown)}}},
		},
		"allOf": each,
	}
}

func metalNames() []string {
	var names []string
	for _, m := range metal.List() {
		names = append(names, string(m.ID))
	}
	return names
}

// schema says what an answer to this question looks like.
func (q *Question) schema() node {
	n := node{"description": q.Ask + " " + q.Why, "examples": []string{q.Example}}
	properties := node{}
	if q.PerMetal {
		n["required"] = []string{"metal"}
	} else {
		properties["metal"] = false
	}
	switch q.Form {
	case FormOne, FormSeveral:
		chosen := node{"items": node{"enum": optionNames(q.Options)}, "uniqueItems": true}
		if q.Form == FormOne {
			chosen["maxItems"] = 1
		}
		properties["chosen"], properties["unit"] = chosen, false
	case FormDate:
		properties["said"] = node{"pattern": `^[0-9]{4}-[0-9]{2}-[0-9]{2}$`}
		properties["chosen"], properties["unit"] = false, false
	case FormText, FormLong:
		properties["chosen"], properties["unit"] = false, false
	case FormQuantity:
		properties["chosen"] = false
	}
	n["properties"] = properties
	return n
}

func optionNames(options []Option) []string {
	var ids []string
	for _, o := range options {
		ids = append(ids, o.ID)
	}
	return ids
}
