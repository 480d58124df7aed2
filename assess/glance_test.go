package assess

import (
	"encoding/json"
	"errors"
	"os"
	"path/filepath"
	"reflect"
	"testing"

	"pgregory.net/rapid"

	"cutbrief/rules"
	"cutbrief/rules/metal"
)

func glance(t *testing.T, data string) Glance {
	t.Helper()
	var g Glance
	if err := g.Look([]byte(data)); err != nil {
		t.Fatal(err)
	}
	g.kept = nil
	return g
}

// By hand: 3/8 in is 9.525 mm, more than the 2 mm told later; "thick" is none.
func TestGlance(t *testing.T) {
	g := glance(t, file(`{"question":"company","said":"A \u00e9"},{"question":"rep","said":"R"},{"question":"date","said":"2026-11-25"},
		{"question":"metals","chosen":["stainless","moonstone","mild-steel"]},
		{"question":"thickest-clean","metal":"stainless","said":"thick"},
		{"question":"thickest-clean","metal":"mild-steel","said":"3/8 in"},
		{"question":"thickest-clean","metal":"aluminium","said":"2","unit":"mm"},
		{"question":"notes","said":"the company is a rep"}`))
	if g.Company != "A é" || g.Rep != "R" || g.Date != "2026-11-25" || g.Answers != 8 || g.Thickest.Or(0) != 9.525 {
		t.Errorf("got %+v", g)
	}
	if !reflect.DeepEqual(g.Metals, []metal.ID{metal.Stainless, metal.MildSteel}) {
		t.Errorf("metals %v", g.Metals)
	}
	if g = glance(t, recommended); g.Recommended.System != "demo-45" || !g.Recommended.Firm || g.Recommended.Critical != rules.Reach {
		t.Errorf("got %+v", g.Recommended)
	}
}

// A glance shows what reading the whole visit shows.
func TestGlanceAgreesWithDecode(t *testing.T) {
	files, err := filepath.Glob("sample/visit/*.json")
	if err != nil || len(files) == 0 {
		t.Fatal(files, err)
	}
	for _, name := range append(files, "../testdata/format/visit-1.json", "../testdata/format/visit-2.json") {
		data, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		v, _, err := Decode(data)
		if err != nil {
			t.Fatal(err)
		}
		if got, want := glance(t, string(data)), v.Glance(); !reflect.DeepEqual(got, want) {
			t.Errorf("%s:\n%+v\n%+v", name, got, want)
		}
	}
}

// The latest demonstration counts; version 1 knew of none, whatever is so named.
func TestGlanceSeesTheLatestShowing(t *testing.T) {
	const showings = `"showings":[{"outcome":"no","next":{"date":"2026-01-01"}},{"date":"2026-11-20","outcome":"quote","next":{"step":"send it","date":"2026-11-25"}}]`
	if g := glance(t, `{"format":"cutbrief-visit","version":2,"answers":[],`+showings+`}`); g.Outcome != Quote || g.Due != "2026-11-25" {
		t.Errorf("got %+v", g)
	}
	if g := glance(t, `{"format":"cutbrief-visit",`+showings+`,"version":1,"answers":[]}`); g.Outcome != "" || g.Due != "" {
		t.Errorf("got %+v", g)
	}
}

// Words written in escapes mean the same.
func TestGlanceReadsEscapedNames(t *testing.T) {
	for _, data := range []string{file(`{"qu\u0065stion":"rep","said":"R"}`), file(`{"question":"r\u0065p","said":"R"}`),
		`{"form\u0061t":"cutbrief-visit","version":1,"answers":[{"question":"rep","said":"R"}]}`} {
		if g := glance(t, data); g.Rep != "R" {
			t.Errorf("%s: %+v", data, g)
		}
	}
}

func TestGlanceTellsErrorsApart(t *testing.T) {
	var g Glance
	if err := g.Look([]byte(`{"format":"cutbrief-visit","version":9}`)); !errors.Is(err, ErrNewerFormat) {
		t.Error(err)
	}
	if err := g.Look([]byte(`{"format":"other"}`)); !errors.Is(err, ErrForeign) {
		t.Error(err)
	}
	for _, data := range []string{``, `[]`, file(``) + `x`, `{"format":"cutbrief-visit","version":1}`, `{"format":"cutbrief-visit","version":1,"answers":{}}`,
		file("{\"question\":\"rep\",\"said\":\"\xff\"}"), file(`{"question":"rep"`)} {
		if g.Look([]byte(data)) == nil {
			t.Errorf("%q: taken", data)
		}
	}
}

// A glance never takes what is not well-formed, whatever byte is damaged and
// wherever the file ends.
func TestGlanceSeesDamage(t *testing.T) {
	whole, err := os.ReadFile("sample/visit/shipyard-crew.json")
	if err != nil {
		t.Fatal(err)
	}
	rapid.Check(t, func(rt *rapid.T) {
		data := append([]byte(nil), whole...)
		data[rapid.IntRange(0, len(data)-1).Draw(rt, "at")] = rapid.Byte().Draw(rt, "byte")
		if cut := rapid.IntRange(0, 2*len(data)).Draw(rt, "cut"); cut < len(data) {
			data = data[:cut]
		}
		var g Glance
		if g.Look(data) == nil && !json.Valid(data) {
			rt.Fatal("damage was not seen")
		}
	})
}

func BenchmarkGlance(b *testing.B) {
	data, err := os.ReadFile("sample/visit/shipyard-crew.json")
	if err != nil {
		b.Fatal(err)
	}
	b.SetBytes(int64(len(data)))
	b.ReportAllocs()
	var g Glance
	for b.Loop() {
		if err := g.Look(data); err != nil {
			b.Fatal(err)
		}
	}
}
