package system

import (
	"bytes"
	"encoding/csv"
	"io"
	"math"
	"reflect"
	"strings"
	"testing"
	"unicode/utf8"

	"cutbrief/rules/metal"
	"cutbrief/rules/tabular"
	"cutbrief/rules/unit"
	"pgregory.net/rapid"
)

// anyRange draws ranges whose numbers are sound for Read, not credible ones
// only: round trips must not depend on what is usual.
func anyRange(t *rapid.T) Range {
	r := Range{
		Invented: rapid.Bool().Draw(t, "invented"),
		Currency: rapid.SampledFrom([]string{"", "EUR", "USD"}).Draw(t, "currency"),
	}
	for _, id := range rapid.SliceOfNDistinct(rapid.StringMatching(`[a-z0-9]([a-z0-9-]{0,8}[a-z0-9])?`), 1, 5, rapid.ID).Draw(t, "ids") {
		r.Systems = append(r.Systems, anySystem(t, id))
	}
	return r
}

func anySystem(t *rapid.T, id string) System {
	number := func(low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, "number") }
	rated, output := number(1, 50), number(10, 200)
	s := System{
		ID: id, Name: "N" + rapid.StringMatching(`[A-Za-zÀ-ž0-9 ,"#;=']{0,20}[a-z]`).Draw(t, "name"),
		Rated: unit.Millimetre(rated), CleanMax: unit.Millimetre(rated * 1.5), Severance: unit.Millimetre(rated * 2),
		OutputMin: unit.Ampere(output / 4), OutputMax: unit.Ampere(output),
		Duty:     []DutyPoint{{unit.Ampere(output), unit.Percent(number(1, 50))}, {unit.Ampere(output / 2), unit.Percent(number(50, 100))}},
		Supplies: []Supply{{1, 200, 240, unit.Ampere(number(20, 60)), unit.Ampere(number(1, 20))}, {3, 400, 400, 20, unit.Ampere(number(1, 20))}},
		AirFlow:  unit.LitrePerMinute(number(1, 400)), AirPressure: unit.Bar(number(1, 16)), Weight: unit.Kilogram(number(1, 100)),
		HoldsGaps: rapid.Bool().Draw(t, "gaps"), Gouges: rapid.Bool().Draw(t, "gouges"),
		ContactTip: rapid.Bool().Draw(t, "tip"), Mechanised: rapid.Bool().Draw(t, "mechanised"),
	}
	if rapid.Bool().Draw(t, "pierces") {
		s.Pierce = unit.Known(unit.Millimetre(number(0.5, rated)))
	}
	if rapid.Bool().Draw(t, "priced") {
		s.Price = unit.Known(unit.Money(math.Round(number(1, 1e6)*100) / 100))
	}
	if rapid.Bool().Draw(t, "metals") {
		s.PerMetal = map[metal.ID]unit.Millimetre{metal.Stainless: unit.Millimetre(rated / 1.2), metal.Copper: unit.Millimetre(rated / 3)}
	}
	return s
}

// What Write writes, Read reads back to the last digit.
func TestRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := anyRange(t)
		var b bytes.Buffer
		if err := Write(&b, r); err != nil {
			t.Fatal(err)
		}
		got, findings := Read(&b, "")
		if tabular.Count(findings, Error) > 0 {
			t.Fatalf("findings %v", findings)
		}
		if !reflect.DeepEqual(got.Systems, r.Systems) || got.Currency != r.Currency || got.Invented != r.Invented {
			t.Fatalf("got  %+v\nwant %+v", got, r)
		}
		if Fingerprint(got) != Fingerprint(r) {
			t.Fatal("the fingerprint changed on the way")
		}
	})
}

func TestWriteRefusesWhatReadWould(t *testing.T) {
	for name, r := range map[string]Range{
		"id":       {Systems: []System{{ID: "Shop 45", Name: "Shop 45"}}},
		"name":     {Systems: []System{{ID: "shop-45", Name: "\x1b[31m"}}},
		"formula":  {Systems: []System{{ID: "shop-45", Name: "=HYPERLINK()"}}},
		"currency": {Currency: "€"},
	} {
		if err := Write(io.Discard, r); err == nil {
			t.Errorf("%s: no error", name)
		}
	}
}

func TestTemplateReadsBack(t *testing.T) {
	r, findings := read(Template())
	if n := tabular.Count(findings, Error) + tabular.Count(findings, Warning); n > 0 {
		t.Errorf("%d errors or warnings: %v", n, findings)
	}
	if !r.Invented || r.Currency != "EUR" || len(r.Systems) < 6 {
		t.Errorf("invented %v, currency %q, %d systems", r.Invented, r.Currency, len(r.Systems))
	}
}

// Some spreadsheets take a file without a byte order mark for another encoding.
func TestTemplateExplainsEveryColumnInASCII(t *testing.T) {
	text := Template()
	if strings.IndexFunc(text, func(r rune) bool { return r >= utf8.RuneSelf }) >= 0 {
		t.Error("a character outside ASCII")
	}
	for _, c := range columns() {
		if !strings.Contains(text, "\n#   "+title(&c, "EUR")+" ") {
			t.Errorf("column %s is not explained", c.Name)
		}
	}
}

// Renaming, reordering columns and other units change nothing; a figure does.
func TestFingerprint(t *testing.T) {
	print := func(text string) string {
		r, findings := read(text)
		if tabular.Count(findings, Error) > 0 {
			t.Fatal(findings)
		}
		return Fingerprint(r)
	}
	one := print(fileOf(good("rated_mm", "12.7")))
	if len(one) != 12 {
		t.Errorf("%q is not 12 digits", one)
	}
	if two := print(fileOf(good("rated_mm", "1/2 in"))); two != one {
		t.Error("the unit changed it")
	}
	cells := good("rated_mm", "12.7")
	swapped := fileOf(append([]string{cells[1], cells[0]}, cells[2:]...))
	if two := print(strings.Replace(swapped, "id,name", "name,id", 1)); two != one {
		t.Error("the order of columns changed it")
	}
	for _, c := range [][2]string{{"rated_mm", "12.6"}, {"id", "x"}, {"pierce_mm", ""}, {"price_eur", ""}, {"gouges", "yes"}, {"duty", "45 A at 50 %"}, {"rated_other_metals", ""}} {
		if print(fileOf(good("rated_mm", "12.7", c[0], c[1]))) == one {
			t.Errorf("%s does not count", c[0])
		}
	}
}

// split agrees with the standard library's reader on every single line.
func FuzzSplit(f *testing.F) {
	for _, s := range []string{`a,b`, `"a,b",c`, `"a""b"`, `a"b`, `"a`, `"a"b,c`, `,,`, ` "a"`} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, line string) {
		if line == "" || strings.ContainsAny(line, "\r\n") {
			return
		}
		cells, _, problem := tabular.Split(line)
		want, err := csv.NewReader(strings.NewReader(line)).Read()
		if (problem == "") != (err == nil) || err == nil && !reflect.DeepEqual(cells, want) {
			t.Errorf("%q: %q %q, want %q %v", line, cells, problem, want, err)
		}
	})
}

// Whatever the bytes: no panic, and what is kept can be written and read back.
func FuzzRead(f *testing.F) {
	f.Add(Template())
	f.Add(fileOf(good("rated_mm", "1/2 in"), good("duty", "45 A at 50"), good("supplies", "3 phase 380 V max 1 A eff 2 A")))
	f.Add("id\n\"\n#\n,\n")
	f.Fuzz(func(t *testing.T, text string) {
		r, findings := read(text)
		if len(r.Systems) == 0 {
			if tabular.Count(findings, Error) == 0 {
				t.Fatal("no systems and no error")
			}
			return
		}
		for _, f := range findings {
			if !tabular.Flaw(f.Column).IsEmpty() || strings.ContainsAny(f.Problem.String(), "\x1b\n\x00") {
				t.Errorf("finding not fit for a terminal: %q", f)
			}
		}
		var b bytes.Buffer
		if err := Write(&b, r); err != nil {
			t.Fatal(err)
		}
		if again, _ := Read(&b, r.Name); Fingerprint(again) != Fingerprint(r) {
			t.Errorf("%q is not read back the same", text)
		}
	})
}
