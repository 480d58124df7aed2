package review

import (
	"errors"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"cutbrief/rules"
)

// rows to filter: 9.525 mm is 3/8 in, 12.7 mm is 1/2 in.
var some = []Row{
	{Path: "1", Date: "2026-10-02", Company: "Hill Farm", Rep: "Runa Feltham", Metals: "mild-steel, stainless", Thickest: 12.7, Critical: rules.Speed, System: "demo-45", Verdict: Open, Flags: 1<<Smaller | 1<<Unsafe},
	{Path: "2", Date: "2026-11-25", Company: "Say \"Ah\" and Co", Rep: "Osric Dale", Metals: "aluminium", Thickest: 9.525, Critical: rules.EdgeQuality, System: "demo-30", Verdict: FallsShort, Outcome: "order"},
	{Path: "3", Company: "Ödegård", Verdict: NotYet, Due: "2026-11-24"},
}

func kept(t *testing.T, text string) string {
	t.Helper()
	keep, err := ParseWhere(text, today)
	if err != nil {
		t.Fatalf("%s: %v", text, err)
	}
	paths := ""
	for i := range some {
		if keep(&some[i]) {
			paths += some[i].Path
		}
	}
	return paths
}

// Expected by reading the three rows.
func TestWhere(t *testing.T) {
	for text, want := range map[string]string{
		``: "123", `   `: "123",
		`verdict = open and rep = "Runa Feltham" and thickest > 10 mm`: "1",
		`verdict = OPEN`: "1", `verdict = falls short`: "2", `verdict != open`: "23", `rep = Runa Feltham`: "1",
		`thickest = 1/2 in`: "1", `thickest = 9.5 mm`: "", `thickest >= 3/8 in`: "12", `thickest < 10`: "2", `thickest != 1/2 in`: "23",
		`thickest = ?`: "3", `thickest != ?`: "12", `company != ?`: "123", `thickest > 0.5 mm`: "12",
		`metals = stainless`: "1", `metals ~ steel`: "1", `metals != aluminium`: "13", `flags = smaller`: "1", `flags = ?`: "23", `flags != ?`: "1",
		`date >= 2026-10-02 and date < today`: "1", `date = today`: "2", `due < today`: "3", `date != today`: "13", `date ~ 2026-11`: "2", `month = 2026-10`: "1",
		`company = "Say ""Ah"" and Co"`: "2", `company ~ ödeg`: "3", `company = "?"`: "",
		`not verdict = open`: "23", `not (verdict = open or verdict = not yet)`: "2", `verdict=open or thickest<10 and outcome=order`: "12",
		`(verdict = open or thickest < 10) and outcome = order`: "2", `critical = edge-quality`: "2", "verdict = open\n or file = 3": "13",
	} {
		if got := kept(t, text); got != want {
			t.Errorf("%s: kept %s, want %s", text, got, want)
		}
	}
}

func TestWhereErrorsSayWhere(t *testing.T) {
	for text, want := range map[string]string{
		`colour = red`:                    `line 1, column 1: found "colour"; a field is expected here`,
		`verdict open`:                    `column 9: found "open"; a comparison`,
		`verdict ! open`:                  `column 9: found "!"; a comparison`,
		`verdict =`:                       `column 10: the filter ends too early; a value`,
		`verdict = and`:                   `column 11: found "and"; a value`,
		"verdict = open and\n  thick > 1": `line 2, column 3: found "thick"`,
		`verdict = open rep`:              `"open rep" cannot be compared; it is one of`,
		`company = open rep`:              `x`,
		`(verdict = open`:                 `column 16: the filter ends too early; a closing )`,
		`verdict = open)`:                 `column 15: found ")"; and, or`,
		`company = "ö" )`:                 `column 15: found ")"`,
		`rep = "Runa`:                     `column 7: a quote has no end`,
		`thickest > 3/8"`:                 `a quote has no end`,
		`thickest > 10 kg`:                `column 12: thickest > "10 kg" cannot be compared; give a thickness`,
		`verdict > open`:                  `=, != or ~`,
		`date > yesterday`:                `2026-11-25`,
		`thickest > ?`:                    `not known is compared with = or !=`,
		`verdict = firmm`:                 `verdict = "firmm" cannot be compared; it is one of firm, open, falls short, none fits, not yet, or ?`,
		`outcome != orders`:               `it is one of order, quote, second-visit, no, or ?`,
		`metals = steel`:                  `metals = "steel" cannot be compared; it is one of mild-steel`,
		`critical = speed`:                `cutting-speed`,
		`flags = late`:                    `overdue`,
		`against = "the price"`:           `it is one of price, habit`,
		strings.Repeat("(", 50):           `at most 20`,
		strings.Repeat("not ", 50):        `at most 20`,
		strings.Repeat("x", 3000):         `at most 2000`,
	} {
		_, err := ParseWhere(text, today)
		if want == "x" { // "open rep" is one value
			if err != nil {
				t.Errorf("%s: %v", text, err)
			}
			continue
		}
		var where *WhereError
		if !errors.As(err, &where) || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v\nwant %s", text, err, want)
		}
	}
}

// A filter and its opposite part the rows between them.
func TestNotIsTheOpposite(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		field := rapid.SampledFrom(listed()).Draw(rt, "field").ID
		op := rapid.SampledFrom([]string{"=", "!=", "~", "<", ">="}).Draw(rt, "op")
		value := rapid.SampledFrom([]string{"open", "10 mm", "2026-11-01", "?", `"Runa Feltham"`}).Draw(rt, "value")
		text := field + " " + op + " " + value
		keep, err := ParseWhere(text, today)
		drop, err2 := ParseWhere("not ("+text+")", today)
		if (err == nil) != (err2 == nil) {
			rt.Fatalf("%s: %v, %v", text, err, err2)
		}
		for i := range some {
			if err == nil && keep(&some[i]) == drop(&some[i]) {
				rt.Fatalf("%s: row %d is on both sides", text, i)
			}
		}
	})
}

func FuzzWhere(f *testing.F) {
	for _, text := range []string{`verdict = open and (rep ~ "a""b" or not thickest >= 3/8 in)`, `date<today`, `"`, `((`, `a!b`, "verdict = \xff"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		keep, err := ParseWhere(text, today)
		if err != nil {
			var where *WhereError
			if !errors.As(err, &where) || where.Line < 1 || where.Column < 1 || where.Accepted.IsEmpty() {
				t.Fatalf("%q: %v", text, err)
			}
			return
		}
		for i := range some {
			keep(&some[i])
		}
	})
}

func TestOrder(t *testing.T) {
	for text, want := range map[string]string{
		"date": "123", "-date": "213", "thickest": "213", "-thickest": "123", "company": "123", "verdict,company": "231", "-company": "321", "FILE": "123",
	} {
		order, err := ParseOrder(text)
		if err != nil {
			t.Fatal(err)
		}
		var rows Rows
		rows.Add(&some[2], &some[0], &some[1])
		got := ""
		for r := range rows.Pick(Arrange(&rows, Find("", today), order, nil).Lines) {
			got += r.Path
		}
		if got != want {
			t.Errorf("%s: %s, want %s", text, got, want)
		}
	}
	if _, err := ParseOrder("size"); err == nil || !strings.Contains(err.Error(), "company") {
		t.Errorf("got %v", err)
	}
	if _, err := ParseFields("date,-rep"); err == nil {
		t.Error("a minus is taken")
	}
	if list, err := ParseFields("rep, file"); err != nil || len(list) != 2 || list[1].ID != "file" {
		t.Errorf("%v %v", list, err)
	}
}
