package assess

import (
	"bytes"
	"errors"
	"os"
	"strings"
	"testing"
	"time"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"pgregory.net/rapid"

	"cutbrief/rules/metal"
	"cutbrief/rules/unit"
)

// A file of format version 2, never edited again, is read for ever and written
// back as it was, with what nobody here knows at every level.
func TestFrozenFormat2(t *testing.T) {
	data, err := os.ReadFile("../testdata/format/visit-2.json")
	if err != nil {
		t.Fatal(err)
	}
	v, unknown, err := Decode(data)
	if err != nil {
		t.Fatal(err)
	}
	const want = `field "added-later"|showing: field "weather"|showing, cut "everyday-straight": field "lamp"|showing, objection: field "later"|showing, next: field "by"`
	if got := strings.Join(unknown, "|"); got != want {
		t.Errorf("unknown: %s\nwant     %s", got, want)
	}
	if again, err := v.Encode(); err != nil || string(again) != string(data) {
		t.Errorf("written back as %s (%v)", again, err)
	}
	s := v.Demonstrations[0]
	if len(v.Demonstrations) != 2 || s.System != "demo-45" || s.Cuts[0].Took.Or(0) != 19.5 || s.Cuts[1].Took.IsKnown() || s.Cuts[1].Result != Poor {
		t.Errorf("read as %+v", v.Demonstrations)
	}
	if s.Outcome != Quote || s.Next != (Next{"send the quote", "J. Weaver", "2026-12-08"}) || v.Latest().Outcome != Ordered {
		t.Errorf("read as %+v", v.Demonstrations)
	}
	if j, problems := v.Job(); len(problems) > 0 || j.Showing.Or(0) != 2400 {
		t.Errorf("40 min became %v (%v)", j.Showing, problems)
	}
	if err := validate(t, compiled(t), string(data)); err != nil {
		t.Errorf("the schema refuses it: %v", err)
	}
}

// In version 1 the field "showings" meant nothing: whatever it holds is kept
// beside the records of today, and reported.
func TestMigrationKeepsAnUnknownFieldOfThatName(t *testing.T) {
	v, unknown, err := Decode([]byte(`{"format":"cutbrief-visit","version":1,"showings":"two, in May","answers":[]}`))
	if err != nil || strings.Join(unknown, "|") != `field "showings-in-version-1"` || len(v.Demonstrations) != 0 {
		t.Fatalf("%v, unknown %v, %+v", err, unknown, v)
	}
	v.DemonstrationOn("2026-12-01").Outcome = Quote
	data, err := v.Encode()
	if err != nil {
		t.Fatal(err)
	}
	again, unknown, err := Decode(data)
	if err != nil || len(again.Demonstrations) != 1 || len(unknown) != 1 || !bytes.Contains(data, []byte(`"showings-in-version-1": "two, in May"`)) {
		t.Errorf("%v, unknown %v\n%s", err, unknown, data)
	}
}

// shown wraps one demonstration in a whole visit.
func shownFile(showing string) string {
	return `{"format":"cutbrief-visit","version":2,"answers":[],"showings":[` + showing + `]}`
}

func TestDecodeRefusesDamagedShowings(t *testing.T) {
	schema := compiled(t)
	for name, c := range map[string]struct {
		in   string
		says []string
	}{
		"no list":     {`{"format":"cutbrief-visit","version":2,"answers":[],"showings":{}}`, []string{"showings", "list"}},
		"no object":   {shownFile(`1`), []string{"showings, item 1", "object"}},
		"date":        {shownFile(`{"date":"1 May"}`), []string{"date", "1 May", "2026-11-25"}},
		"outcome":     {shownFile(`{"outcome":"maybe"}`), []string{"outcome", "maybe", "second-visit"}},
		"no cut":      {shownFile(`{"cuts":[{"result":"good"}]}`), []string{"cuts, item 1", "cut is missing"}},
		"against":     {shownFile(`{"outcome":"no","against":"weather"}`), []string{"against", "weather", "habit"}},
		"result":      {shownFile(`{"cuts":[{"cut":"a"},{"cut":"b","result":"great"}]}`), []string{"cuts, item 2", "great", "fair"}},
		"zero":        {shownFile(`{"cuts":[{"cut":"a","took_s":0}]}`), []string{"took_s", "above 0"}},
		"text figure": {shownFile(`{"cuts":[{"cut":"a","length_mm":"300"}]}`), []string{"length_mm", "300", "number"}},
		"null figure": {shownFile(`{"cuts":[{"cut":"a","length_mm":null}]}`), []string{"length_mm", "null"}},
		"metal":       {shownFile(`{"cuts":[{"cut":"a","metal":"moonstone"}]}`), []string{"moonstone", "mild-steel"}},
		"next":        {shownFile(`{"next":[]}`), []string{"next", "object"}},
		"next date":   {shownFile(`{"next":{"date":"soon"}}`), []string{"next", "soon", "date"}},
	} {
		_, _, err := Decode([]byte(c.in))
		if err == nil {
			t.Errorf("%s: taken", name)
			continue
		}
		for _, says := range c.says {
			if !strings.Contains(err.Error(), says) {
				t.Errorf("%s: %q does not say %q", name, err, says)
			}
		}
		if validate(t, schema, c.in) == nil {
			t.Errorf("%s: the schema takes it", name)
		}
	}
	if _, _, err := Decode([]byte(shownFile(strings.TrimSuffix(strings.Repeat(`{},`, 51), ",")))); err == nil || !strings.Contains(err.Error(), "at most 50") {
		t.Errorf("51 demonstrations: %v", err)
	}
}

// What is recorded comes back as it was, and the schema takes it.
func TestShowingsComeBack(t *testing.T) {
	schema := compiled(t)
	rapid.Check(t, func(t *rapid.T) {
		figure := func(name string) float64 { return rapid.Float64Range(0.001, 1e6).Draw(t, name) }
		v := New("x", noon)
		s := v.DemonstrationOn("2026-12-01")
		s.Against = rapid.SampledFrom(append(AllAgainst(), "")).Draw(t, "against")
		s.Words = strings.TrimSpace(rapid.StringMatching(`[A-Za-z é]{0,20}`).Draw(t, "words"))
		for _, id := range rapid.SliceOfNDistinct(rapid.SampledFrom([]string{"a", "b", "c"}), 0, 3, func(s string) string { return s }).Draw(t, "cuts") {
			c := ShownCut{Cut: id, Metal: metal.Stainless, Result: Result(rapid.SampledFrom(append(results, "")).Draw(t, "result"))}
			if rapid.Bool().Draw(t, "timed") {
				c.Took, c.Length = unit.Known(unit.Second(figure("took"))), unit.Known(unit.Millimetre(figure("length")))
			}
			s.Keep(c)
		}
		data, err := v.Encode()
		if err != nil {
			t.Fatal(err)
		}
		again, unknown, err := Decode(data)
		if err != nil || len(unknown) > 0 {
			t.Fatal(err, unknown)
		}
		if twice, _ := again.Encode(); !bytes.Equal(data, twice) {
			t.Fatalf("%s\nbecame\n%s", data, twice)
		}
		if err := valid(schema, data); err != nil {
			t.Fatal(err)
		}
	})
}

func valid(s *jsonschema.Schema, data []byte) error {
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(data))
	if err != nil {
		return err
	}
	return s.Validate(doc)
}

func TestKeepReplacesTheSameCut(t *testing.T) {
	v := New("x", noon)
	s := v.DemonstrationOn("2026-12-01")
	s.Keep(ShownCut{Cut: "bevel", Result: Poor})
	s.Keep(ShownCut{Cut: "sever", Result: Good})
	s.Keep(ShownCut{Cut: "bevel", Result: Fair})
	if c, ok := s.Find("bevel"); len(s.Cuts) != 2 || !ok || c.Result != Fair {
		t.Errorf("%+v", s.Cuts)
	}
	if v.DemonstrationOn("2026-12-01") != s || v.DemonstrationOn("2026-12-02") == s || len(v.Demonstrations) != 2 {
		t.Error("one record a day is kept")
	}
}

// What could not be read again is not written: the file on disk stays whole.
func TestNoMoreIsWrittenThanIsRead(t *testing.T) {
	v := New("x", time.Date(2026, 12, 1, 9, 0, 0, 0, time.UTC))
	for day := range 50 {
		v.DemonstrationOn(time.Date(2026, 12, 1+day, 0, 0, 0, 0, time.UTC).Format(time.DateOnly))
	}
	data, err := v.Encode()
	if err != nil {
		t.Fatal(err)
	}
	if back, _, err := Decode(data); err != nil || len(back.Demonstrations) != 50 {
		t.Errorf("%v", err)
	}
	v.DemonstrationOn("2028-01-01")
	if _, err := v.Encode(); !errors.Is(err, ErrTooMany) {
		t.Errorf("51 demonstrations are written, and could never be read: %v", err)
	}
}
