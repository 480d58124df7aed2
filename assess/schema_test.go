package assess

import (
	"bytes"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"

	"cutbrief/rules"
	"cutbrief/rules/metal"
)

// compiled is the published schema as an independent library reads it.
func compiled(t *testing.T) *jsonschema.Schema {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(Schema()))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	c.AssertFormat()
	if err := c.AddResource("visit.json", doc); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile("visit.json")
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func validate(t *testing.T, s *jsonschema.Schema, data string) error {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(strings.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	return s.Validate(doc)
}

func TestSchemaTakesWhatIsSaved(t *testing.T) {
	s := compiled(t)
	v := New("x", noon)
	v.Revision, v.Demo, v.Skipped = 2, true, []Group{GroupSite}
	v.Overrule = &rules.Overrule{Requirement: rules.Reach, Reason: "they showed the heavy pieces"}
	tell(t, v, rules.FactMetals, "", "stainless", "other")
	tell(t, v, rules.FactThickest, metal.Stainless, "14 ga")
	tell(t, v, rules.FactThickest, metal.Other, "?")
	tell(t, v, rules.FactUse, "", "mixed")
	tell(t, v, FactDate, "", "2026-11-25")
	data, err := v.Encode()
	if err != nil {
		t.Fatal(err)
	}
	if err := validate(t, s, string(data)); err != nil {
		t.Error(err)
	}
	if err := validate(t, s, `{"format":"cutbrief-visit","version":1,"later":1,"answers":[{"question":"rep","said":"A","heard":true}]}`); err != nil {
		t.Errorf("unknown fields are refused: %v", err)
	}
}

func TestSchemaRefusesDamage(t *testing.T) {
	s := compiled(t)
	for name, data := range map[string]string{
		"foreign":       `{"format":"other","version":1,"answers":[]}`,
		"newer":         `{"format":"cutbrief-visit","version":3,"answers":[]}`,
		"no answers":    `{"format":"cutbrief-visit","version":1}`,
		"time":          `{"format":"cutbrief-visit","version":1,"created":"yesterday","answers":[]}`,
		"group":         `{"format":"cutbrief-visit","version":1,"skipped":["lunch"],"answers":[]}`,
		"overrule":      `{"format":"cutbrief-visit","version":1,"overrule":{"requirement":"colour"},"answers":[]}`,
		"number":        file(`{"question":"rep","said":12}`),
		"question":      file(`{"question":"weather","said":"rain"}`),
		"state":         file(`{"question":"rep","said":"A","state":"guessed"}`),
		"option":        file(`{"question":"use","chosen":["often"]}`),
		"two options":   file(`{"question":"use","chosen":["mixed","production"]}`),
		"no metal":      file(`{"question":"thickest-clean","said":"12 mm"}`),
		"metal":         file(`{"question":"thickest-clean","metal":"moonstone","said":"12 mm"}`),
		"metal on rep":  file(`{"question":"rep","metal":"stainless","said":"A"}`),
		"date":          file(`{"question":"date","said":"25.11.2026"}`),
		"nothing said":  file(`{"question":"rep","state":"told"}`),
		"empty text":    file(`{"question":"rep","said":""}`),
		"chosen number": file(`{"question":"thickest-clean","metal":"stainless","chosen":["12"]}`),
	} {
		if validate(t, s, data) == nil {
			t.Errorf("%s: taken", name)
		}
	}
}
