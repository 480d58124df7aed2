package assess_test

import (
	"encoding/json"
	"reflect"
	"slices"
	"strings"
	"testing"

	"cutbrief/assess"
	"cutbrief/assess/casebook"
	"cutbrief/rules"
	"cutbrief/rules/system"
)

// secret marks what must not be in a redacted copy.
const secret = "Hjalmar"

// whispered are the fields of a saved visit that hold somebody's words.
var whispered = []string{"note", "reason", "words", "because", "step", "owner", "why", "name", "answer"}

// inWords are the questions answered in words of one's own.
var inWords = []string{"company", "contact", "place", "rep", "decides", "when", "operator", "words", "notes"}

// whisper puts a name into every field for words, and into fields and answers
// that nobody knows.
func whisper(value any) {
	switch value := value.(type) {
	case []any:
		for _, v := range value {
			whisper(v)
		}
	case map[string]any:
		for name, v := range value {
			if text, is := v.(string); is && slices.Contains(whispered, name) {
				value[name] = text + " " + secret
			}
			whisper(v)
		}
		question, _ := value["question"].(string)
		if said, is := value["said"].(string); is && (question == "" || slices.Contains(inWords, question)) {
			value["said"] = said + " " + secret
		}
		value["mood-"+secret] = secret
	}
}

// whispering is an invented visit with a name in every place for one.
func whispering(t *testing.T, name string) *assess.Visit {
	t.Helper()
	v, _ := casebook.DemoVisit(name)
	v.Overrule = &rules.Overrule{Requirement: rules.Speed, Reason: "heard it"}
	data, err := v.Encode()
	if err != nil {
		t.Fatal(err)
	}
	var fields map[string]any
	if err := json.Unmarshal(data, &fields); err != nil {
		t.Fatal(err)
	}
	for i, a := range fields["answers"].([]any) {
		if i%3 == 0 {
			a.(map[string]any)["note"] = "says"
		}
	}
	fields["answers"] = append(fields["answers"].([]any), map[string]any{"question": "godfather", "said": secret, "state": "told"})
	whisper(fields)
	fields["id"] = secret
	if data, err = json.Marshal(fields); err != nil {
		t.Fatal(err)
	}
	told, _, err := assess.Decode(data)
	if err != nil {
		t.Fatal(err)
	}
	return told
}

// TestRedact: no name is left, the copy reads back, and the rules conclude the
// same from it as from the visit.
func TestRedact(t *testing.T) {
	for _, name := range casebook.DemoVisits() {
		v := whispering(t, name)
		data, err := assess.Redact(v, "case-1").Encode()
		if err != nil {
			t.Fatal(err)
		}
		if strings.Contains(string(data), secret) {
			t.Errorf("%s: a name is left:\n%s", name, data)
		}
		c, unknown, err := assess.Decode(data)
		if err != nil || len(unknown) > 0 {
			t.Fatal(err, unknown)
		}
		if c.ID != "case-1" || c.Open() != v.Open() || len(c.Demonstrations) != len(v.Demonstrations) {
			t.Errorf("%s: %s with %d open and %d shown, want %d and %d", name, c.ID, c.Open(), len(c.Demonstrations), v.Open(), len(v.Demonstrations))
		}
		if !reflect.DeepEqual(sized(t, c), sized(t, v)) {
			t.Errorf("%s: sized in another way", name)
		}
	}
}

// sized is what the rules conclude, but for the words of the overrule.
func sized(t *testing.T, v *assess.Visit) rules.Result {
	t.Helper()
	job, _ := v.Job()
	if job.Overrule == nil {
		t.Fatal("the overrule is gone")
	}
	r := rules.Evaluate(job, system.Demo())
	r.Critical.Reason = ""
	return r
}

// What was not understood is not sized, and may hold a name.
func TestRedactLeavesOutWhatIsNotUnderstood(t *testing.T) {
	v, _ := casebook.DemoVisit(casebook.DemoVisits()[0])
	v.Set(assess.Answer{Question: rules.FactBudget, Said: "ask " + secret, State: assess.Told})
	v.Set(assess.Answer{Question: rules.FactEyes, Chosen: []string{secret}, State: assess.Told})
	v.Set(assess.Answer{Question: rules.FactThickest, Metal: secret, Said: "3 mm", State: assess.Told})
	data, err := assess.Redact(v, "x").Encode()
	if err != nil || strings.Contains(string(data), secret) {
		t.Errorf("%v\n%s", err, data)
	}
}

// The visit itself stays as it was.
func TestRedactIsACopy(t *testing.T) {
	v, _ := casebook.DemoVisit("trailer-builder")
	before, _ := v.Encode()
	c := assess.Redact(v, "x")
	c.Answers[0].Said, c.Demonstrations[0].Cuts[0].Name = "changed", "changed"
	if after, _ := v.Encode(); string(after) != string(before) {
		t.Error("the visit changed with its copy")
	}
}
