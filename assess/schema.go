package assess

import (
	"encoding/json"
	"strings"
)

// Schema returns the JSON Schema (2020-12) of the saved format, made from the rows
// of its fields and the catalogue, so that it cannot fall behind them. Fields it
// does not name are allowed: a program keeps what it does not know. Questions it
// does not name are not: a file that holds one was written by a later program.
func Schema() []byte {
	root := visitObject().describe()
	root["$schema"] = "https://json-schema.org/draft/2020-12/schema"
	root["$id"] = "urn:cutbrief:visit:2"
	root["title"] = "Record of one visit, format cutbrief-visit, version 2"
	root["description"] = "What a customer said about cutting metal by hand, as said, and how it is known."
	out, err := json.MarshalIndent(root, "", "  ")
	if err != nil {
		return nil // only texts and numbers in there: cannot fail
	}
	return append(out, '\n')
}

// answerSchema says of an answer that something must be said, and what an answer
// to each question looks like.
func answerSchema(n node) {
	n["properties"].(node)["state"].(node)["default"] = Told
	var each []node
	for _, q := range catalogue {
		each = append(each, node{
			"if":   node{"properties": node{"question": node{"const": string(q.ID)}}, "required": []string{"question"}},
			"then": q.schema(),
		})
	}
	n["allOf"] = each
	n["anyOf"] = []node{
		{"required": []string{"said"}, "properties": node{"said": node{"minLength": 1}}},
		{"required": []string{"chosen"}, "properties": node{"chosen": node{"minItems": 1}}},
		{"required": []string{"state"}, "properties": node{"state": node{"const": string(Unknown)}}},
	}
}

// schema says what an answer to this question looks like.
func (q *Question) schema() node {
	n := node{"description": strings.ReplaceAll(string(q.Ask+" "+q.Why), "{1}", "{metal}"), "examples": []string{string(q.Example)}}
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
