package assess

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"cutbrief/assess/sanitize"
	"cutbrief/rules"
	"cutbrief/rules/metal"
)

// file wraps answers in a whole visit.
func file(answers string) string {
	return `{"format":"cutbrief-visit","version":1,"answers":[` + answers + `]}`
}

// The saved form, written out by hand: two spaces, stable order, empty fields
// left out, answers in catalogue order.
func TestSavedForm(t *testing.T) {
	v := New("v1", noon)
	tell(t, v, rules.FactThickest, metal.Stainless, "3/8 in")
	tell(t, v, rules.FactThickest, metal.MildSteel, "12")
	tell(t, v, rules.FactMetals, "", "stainless", "mild-steel")
	tell(t, v, FactCompany, "", `Field & "Sons" <Ltd>`)
	v.Demo = true
	got, err := v.Encode()
	if err != nil {
		t.Fatal(err)
	}
	want := `{
  "format": "cutbrief-visit",
  "version": 2,
  "id": "v1",
  "created": "2026-11-25T12:00:00Z",
  "updated": "2026-11-25T12:00:00Z",
  "demo": true,
  "answers": [
    {
      "question": "company",
      "said": "Field & \"Sons\" <Ltd>",
      "state": "told"
    },
    {
      "question": "metals",
      "chosen": [
        "stainless",
        "mild-steel"
      ],
      "state": "told"
    },
    {
      "question": "thickest-clean",
      "metal": "stainless",
      "said": "3/8 in",
      "state": "told"
    },
    {
      "question": "thickest-clean",
      "metal": "mild-steel",
      "said": "12",
      "unit": "mm",
      "state": "told"
    }
  ]
}
`
	if string(got) != want {
		t.Errorf("got\n%s", got)
	}
}

func TestUnknownFieldsAreKeptAndListed(t *testing.T) {
	in := `{"format":"cutbrief-visit","version":1,"later":{"a":[1.50,"x"]},
		"overrule":{"requirement":"reach","reason":"heavy","by":"me"},
		"answers":[{"question":"company","said":"A","state":"told","heard":true},{"question":"weather","said":"rain","state":"told"}]}`
	v, unknown, err := Decode([]byte(in))
	if err != nil {
		t.Fatal(err)
	}
	want := `field "later"|overrule: field "by"|question "company": field "heard"|question "weather"`
	if got := strings.Join(unknown, "|"); got != want {
		t.Errorf("listed %s\nwant   %s", got, want)
	}
	tell(t, v, FactCompany, "", "B") // an edit keeps what else stood beside the answer
	out, err := v.Encode()
	if err != nil {
		t.Fatal(err)
	}
	squeezed := strings.Join(strings.Fields(string(out)), "")
	for _, kept := range []string{`"later":{"a":[1.50,"x"]}`, `"by":"me"`, `"said":"B","state":"told","heard":true`, `"question":"weather","said":"rain"`} {
		if !strings.Contains(squeezed, kept) {
			t.Errorf("lost %s in\n%s", kept, out)
		}
	}
}

func TestDecodeRefuses(t *testing.T) {
	for name, c := range map[string]struct {
		in   string
		says []string
	}{
		"empty":            {``, []string{"empty"}},
		"no object":        {`[]`, []string{"object"}},
		"cut short":        {`{"format":"cutbrief-visit","version":1,"ans`, []string{"too early"}},
		"trailing":         {file(``) + `x`, []string{"more after the end"}},
		"foreign":          {`{"format":"other","version":1}`, []string{"not a visit", "other", "cutbrief-visit"}},
		"no format":        {`{"version":1}`, []string{"not a visit"}},
		"newer":            {`{"format":"cutbrief-visit","version":3}`, []string{"this file is format version 3; this program reads version 1 to 2"}},
		"no version":       {`{"format":"cutbrief-visit","answers":[]}`, []string{"version"}},
		"version zero":     {`{"format":"cutbrief-visit","version":0}`, []string{"has no format version"}},
		"version negative": {`{"format":"cutbrief-visit","version":-1}`, []string{"version is", "-1", "whole number"}},
		"version text":     {`{"format":"cutbrief-visit","version":"1"}`, []string{"version", "whole number"}},
		"no answers":       {`{"format":"cutbrief-visit","version":1}`, []string{"no answers"}},
		"field twice":      {`{"format":"cutbrief-visit","version":1,"answers":[],"answers":[]}`, []string{"answers", "twice"}},
		"answer twice":     {file(`{"question":"rep","said":"A"},{"question":"rep","said":"B"}`), []string{"answer 2", "rep", "twice"}},
		"said is a number": {file(`{"question":"everyday-thickness","metal":"stainless","said":12}`), []string{"everyday-thickness", "said", "12", "text"}},
		"said is null":     {file(`{"question":"rep","said":null}`), []string{"rep", "null"}},
		"chosen is text":   {file(`{"question":"use","chosen":"mixed"}`), []string{"use", "chosen", "mixed", "list"}},
		"state":            {file(`{"question":"rep","said":"A","state":"guessed"}`), []string{"rep", "guessed", "told, measured, assumed, not-known"}},
		"metal missing":    {file(`{"question":"thickest-clean","said":"12 mm"}`), []string{"thickest-clean", "metal", "mild-steel"}},
		"metal unknown":    {file(`{"question":"thickest-clean","metal":"moonstone","said":"12 mm"}`), []string{"moonstone", "mild-steel"}},
		"metal too many":   {file(`{"question":"rep","metal":"stainless","said":"A"}`), []string{"rep", "metal"}},
		"nothing said":     {file(`{"question":"rep","state":"told"}`), []string{"rep", "nothing"}},
		"nameless":         {file(`{"said":"A"}`), []string{"no question"}},
		"group":            {`{"format":"cutbrief-visit","version":1,"skipped":["lunch"],"answers":[]}`, []string{"skipped", "lunch", "site"}},
		"time":             {`{"format":"cutbrief-visit","version":1,"created":"yesterday","answers":[]}`, []string{"created", "yesterday", "2026"}},
		"overrule":         {`{"format":"cutbrief-visit","version":1,"overrule":{"requirement":"colour"},"answers":[]}`, []string{"overrule", "colour", "reach"}},
		"demo":             {`{"format":"cutbrief-visit","version":1,"demo":"yes","answers":[]}`, []string{"demo", "yes", "true or false"}},
		"deep":             {`{"format":"cutbrief-visit","version":1,"x":` + strings.Repeat("[", 100) + strings.Repeat("]", 100) + `,"answers":[]}`, []string{"deep"}},
		"long":             {file(`{"question":"rep","said":"` + strings.Repeat("a", 201) + `"}`), []string{"rep", "200 characters"}},
		"lines":            {file(`{"question":"notes","said":"` + strings.Repeat(`a\n`, 40) + `b"}`), []string{"notes", "40 lines"}},
		"many":             {file(strings.TrimSuffix(strings.Repeat(`{"question":"x"},`, 1001), ",")), []string{"1000"}},
		"huge":             {file(``) + strings.Repeat(" ", MaxSize), []string{"too large"}},
		"no UTF-8":         {file("{\"question\":\"rep\",\"said\":\"\xff\"}"), []string{"UTF-8"}},
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
	}
}

// What is just within a limit of the format is read, and what is just beyond is not:
// as much as is kept, 1 MiB of 200 characters a line, 40 lines of 500, 1000 answers,
// 50 options, 1000 fields that nobody knows, 50 of each in 50 demonstrations.
func TestDecodeAtItsLimits(t *testing.T) {
	times := func(n int, one string) string { return strings.TrimSuffix(strings.Repeat(one+",", n), ",") }
	numbered := func(n int, one string) string {
		list := make([]string, n)
		for i := range list {
			list[i] = fmt.Sprintf(one, i)
		}
		return strings.Join(list, ",")
	}
	note := func(s string) string { return file(`{"question":"rep","said":"A","note":"` + s + `"}`) }
	for name, c := range map[string][2]string{
		"size":             {file(``) + strings.Repeat(" ", MaxSize-len(file(``))), file(``) + strings.Repeat(" ", MaxSize-len(file(``))+1)},
		"line":             {file(`{"question":"rep","said":"` + strings.Repeat("a", 200) + `"}`), file(`{"question":"rep","said":"` + strings.Repeat("a", 201) + `"}`)},
		"letters":          {file(`{"question":"rep","said":"` + strings.Repeat("é", 200) + `"}`), file(`{"question":"rep","said":"` + strings.Repeat("é", 201) + `"}`)},
		"identifier":       {`{"format":"cutbrief-visit","version":1,"id":"` + strings.Repeat("a", 200) + `","answers":[]}`, `{"format":"cutbrief-visit","version":1,"id":"` + strings.Repeat("a", 201) + `","answers":[]}`},
		"note":             {note(strings.Repeat("a", 500)), note(strings.Repeat("a", 501))},
		"letters of notes": {note(strings.Repeat("é", 500)), note(strings.Repeat("é", 501))},
		"lines":            {note(strings.Repeat(`a\n`, 39) + "a"), note(strings.Repeat(`a\n`, 40) + "a")},
		"answers":          {file(numbered(1000, `{"question":"x%d","said":"A"}`)), file(numbered(1001, `{"question":"x%d","said":"A"}`))},
		"options":          {file(`{"question":"use","chosen":[` + times(50, `"mixed"`) + `]}`), file(`{"question":"use","chosen":[` + times(51, `"mixed"`) + `]}`)},
		"fields":           {`{"format":"cutbrief-visit","version":1,"answers":[],` + numbered(1000, `"x%d":0`) + `}`, `{"format":"cutbrief-visit","version":1,"answers":[],` + numbered(1001, `"x%d":0`) + `}`},
		"field twice":      {`{"format":"cutbrief-visit","version":1,"answers":[],"x":0,"y":0}`, `{"format":"cutbrief-visit","version":1,"answers":[],"x":0,"x":0}`},
		"revision":         {`{"format":"cutbrief-visit","version":1,"revision":0,"answers":[]}`, `{"format":"cutbrief-visit","version":1,"revision":-1,"answers":[]}`},
		"version":          {`{"format":"cutbrief-visit","version":2,"answers":[]}`, `{"format":"cutbrief-visit","version":3,"answers":[]}`},
		"no version":       {`{"format":"cutbrief-visit","version":1,"answers":[]}`, `{"format":"cutbrief-visit","version":0,"answers":[]}`},
		"demonstrations":   {shownFile(times(50, `{}`)), shownFile(times(51, `{}`))},
		"cuts":             {shownFile(`{"cuts":[` + times(50, `{"cut":"a"}`) + `]}`), shownFile(`{"cuts":[` + times(51, `{"cut":"a"}`) + `]}`)},
		"objections":       {shownFile(`{"objections":[` + times(50, `{}`) + `]}`), shownFile(`{"objections":[` + times(51, `{}`) + `]}`)},
		"figure":           {shownFile(`{"cuts":[{"cut":"a","took_s":1000000}]}`), shownFile(`{"cuts":[{"cut":"a","took_s":1000000.1}]}`)},
		"above zero":       {shownFile(`{"cuts":[{"cut":"a","took_s":0.001}]}`), shownFile(`{"cuts":[{"cut":"a","took_s":0}]}`)},
		"empty at the end": {`{"format":"cutbrief-visit","version":1,"answers":[],"id":""}`, `{"format":"cutbrief-visit","version":1,"answers":[],"id":"}`},
		"depth":            {`{"format":"cutbrief-visit","version":1,"answers":[],"x":` + strings.Repeat("[", 31) + strings.Repeat("]", 31) + `}`, `{"format":"cutbrief-visit","version":1,"answers":[],"x":` + strings.Repeat("[", 32) + strings.Repeat("]", 32) + `}`},
	} {
		if _, _, err := Decode([]byte(c[0])); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		if _, _, err := Decode([]byte(c[1])); err == nil {
			t.Errorf("%s: taken beyond its limit", name)
		}
	}
}

func TestDecodeErrorsCanBeToldApart(t *testing.T) {
	for in, want := range map[string]error{
		`{"format":"cutbrief-visit","version":9}`: ErrNewerFormat,
		`{"format":"other"}`:                      ErrForeign,
		strings.Repeat(" ", MaxSize+1):            ErrTooLarge,
	} {
		if _, _, err := Decode([]byte(in)); !errors.Is(err, want) {
			t.Errorf("got %v, want %v", err, want)
		}
	}
}

// Some editors put a byte order mark at the start of a file.
func TestByteOrderMarkIsTaken(t *testing.T) {
	if _, _, err := Decode([]byte("\uFEFF" + file(``))); err != nil {
		t.Error(err)
	}
}

// What a file holds cannot reach the terminal as an escape.
func TestDecodeCleansTexts(t *testing.T) {
	v, _, err := Decode([]byte(file(`{"question":"company","said":"A\u001b[31mB\u202e","note":"x\u0007"}`)))
	if err != nil {
		t.Fatal(err)
	}
	if a := v.Answers[0]; strings.ContainsAny(a.Said+a.Note, "\x1b\u202e\a") {
		t.Errorf("not clean: %q %q", a.Said, a.Note)
	}
}

// The short way round sanitize lets through only what sanitize leaves alone.
func TestPlainTextsStay(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		s := rapid.OneOf(rapid.String(), rapid.StringMatching(`[ -~À-ÿ́]{0,210}`)).Draw(rt, "text")
		if isPlain(s, false) && sanitize.Line(s) != s || isPlain(s, true) && sanitize.Lines(s) != s {
			rt.Fatalf("%q", s)
		}
	})
}

// What Encode writes, Decode reads; a visit too large for that is refused.
func TestEncodeRefusesWhatDecodeWould(t *testing.T) {
	v := New("x", noon)
	for i := range 200 {
		v.Set(Answer{Question: rules.Fact(strings.Repeat("q", i+1)), Said: "x", Note: strings.Repeat("n", 8000), State: Told})
	}
	if _, err := v.Encode(); !errors.Is(err, ErrTooLarge) {
		t.Errorf("got %v", err)
	}
}

func FuzzDecode(f *testing.F) {
	for _, seed := range []string{
		file(``), file(`{"question":"company","said":"A","x":1}`), `{"format":"cutbrief-visit","version":2}`,
		shownFile(`{"date":"2026-12-01","cuts":[{"cut":"a","took_s":1e3,"x":1}],"objections":[{"said":"b"}],"next":{"date":"2026-12-08"},"y":[]}`),
		file(`{"question":"metals","chosen":["stainless","mild-steel"],"state":"told"},{"question":"thickest-clean","metal":"stainless","said":"14 ga","state":"measured"}`),
		`{"format":"cutbrief-visit","version":1,"id":"a","created":"2026-11-25T09:30:00.5+01:00","revision":3,"skipped":["site","site"],"overrule":{"requirement":"reach"},"later":[1e9,"é"],"answers":[]}`,
	} {
		f.Add([]byte(seed))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		v, _, err := Decode(data)
		if err != nil {
			return
		}
		v.Job()
		v.Steps()
		once, err := v.Encode()
		if err != nil {
			if errors.Is(err, ErrTooLarge) {
				return // indenting can push a packed file over the limit
			}
			t.Fatal(err)
		}
		again, _, err := Decode(once)
		if err != nil {
			t.Fatalf("cannot read what was written: %v\n%s", err, once)
		}
		if twice, _ := again.Encode(); !bytes.Equal(once, twice) {
			t.Fatalf("not stable:\n%s\n%s", once, twice)
		}
	})
}

// Words written in escapes mean the same.
func TestEscapedNamesAreRead(t *testing.T) {
	for _, data := range []string{file(`{"qu\u0065stion":"rep","said":"R"}`), file(`{"question":"r\u0065p","said":"R"}`),
		`{"form\u0061t":"cutbrief-visit","version":1,"answers":[{"question":"rep","said":"R"}]}`} {
		if v, _, err := Decode([]byte(data)); err != nil || v.Said(FactRep) != "R" {
			t.Errorf("%s: %+v %v", data, v, err)
		}
	}
}

// Every escape of a text means what it means to the standard library.
func TestEscapesAreRead(t *testing.T) {
	d := decoder{}
	for _, raw := range []string{`""`, `"a"`, `"\"\\\/\b\f\n\r\t"`, `"a\u00e9\n\ud83d\ude00"`, `"\\u0041"`} {
		var want string
		if err := json.Unmarshal([]byte(raw), &want); err != nil {
			t.Fatal(err)
		}
		if got := d.unquoted([]byte(raw)); got != want {
			t.Errorf("%s: %q, want %q", raw, got, want)
		}
	}
}

// Format and version may stand behind what they say how to read.
func TestVersionAtTheEnd(t *testing.T) {
	const showings = `"showings":[{"outcome":"no","next":{"date":"2026-01-01"}}]`
	v, _, err := Decode([]byte(`{` + showings + `,"answers":[],"version":1,"format":"cutbrief-visit"}`))
	if err != nil || v.Latest() != nil || v.extra["showings-in-version-1"] == nil {
		t.Errorf("version 1: %+v %v", v, err)
	}
	if v, _, err = Decode([]byte(`{` + showings + `,"answers":[],"version":2,"format":"cutbrief-visit"}`)); err != nil || v.Latest().Next.Date != "2026-01-01" {
		t.Errorf("version 2: %+v %v", v, err)
	}
	if _, _, err = Decode([]byte(`{"answers":7,"version":1,"format":"other"}`)); !errors.Is(err, ErrForeign) {
		t.Error(err)
	}
}

// Nothing that is not well-formed is taken, whatever byte is damaged and wherever
// the file ends.
func TestDecodeSeesDamage(t *testing.T) {
	whole, err := os.ReadFile("casebook/visit/shipyard-crew.json")
	if err != nil {
		t.Fatal(err)
	}
	rapid.Check(t, func(rt *rapid.T) {
		data := append([]byte(nil), whole...)
		data[rapid.IntRange(0, len(data)-1).Draw(rt, "at")] = rapid.Byte().Draw(rt, "byte")
		if cut := rapid.IntRange(0, 2*len(data)).Draw(rt, "cut"); cut < len(data) {
			data = data[:cut]
		}
		if _, _, err := Decode(data); err == nil && !json.Valid(data) {
			rt.Fatal("damage was not seen")
		}
	})
}

// By hand: 3/8 in is 9.525 mm, more than the 2 mm told later; "thick" is none.
func TestThickest(t *testing.T) {
	v, _, err := Decode([]byte(file(`{"question":"thickest-clean","metal":"stainless","said":"thick"},
		{"question":"thickest-clean","metal":"mild-steel","said":"3/8 in"},
		{"question":"thickest-clean","metal":"aluminium","said":"2","unit":"mm"}`)))
	if err != nil || v.Thickest().Or(0) != 9.525 {
		t.Errorf("got %v, %v", v, err)
	}
	if v.Clear(rules.Asked{Fact: rules.FactThickest, Metal: metal.MildSteel}); v.Thickest().Or(0) != 2 {
		t.Errorf("got %v", v.Thickest())
	}
}

func BenchmarkDecode(b *testing.B) {
	data, err := os.ReadFile("casebook/visit/shipyard-crew.json")
	if err != nil {
		b.Fatal(err)
	}
	b.SetBytes(int64(len(data)))
	b.ReportAllocs()
	for b.Loop() {
		if _, _, err := Decode(data); err != nil {
			b.Fatal(err)
		}
	}
}
