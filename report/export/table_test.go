package export

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"pgregory.net/rapid"

	"cutbrief/assess/review"
)

func sheet(rows ...*review.Row) Sheet {
	return Sheet{Fields: review.UsualFields(), Rows: slices.Values(rows), Totals: review.Totals{Files: len(rows)}}
}

var one = &review.Row{Path: "in/a.json", Date: "2026-11-01", Company: "Ödegård | Co", Rep: "R", Metals: "mild-steel, stainless", Thickest: 9.525,
	Critical: "reach", System: "demo-45", Verdict: review.Open, Why: "a\nb", Flags: 1<<review.Smaller | 1<<review.Unsafe}

func write(t testing.TB, w func(s Sheet, out *bytes.Buffer) error, s Sheet) string {
	t.Helper()
	var out bytes.Buffer
	if err := w(s, &out); err != nil {
		t.Fatal(err)
	}
	return out.String()
}

func asText(s Sheet, out *bytes.Buffer) error     { return s.Text(out) }
func asCSV(s Sheet, out *bytes.Buffer) error      { return s.CSV(out) }
func asJSON(s Sheet, out *bytes.Buffer) error     { return s.JSON(out) }
func asNDJSON(s Sheet, out *bytes.Buffer) error   { return s.NDJSON(out) }
func asMarkdown(s Sheet, out *bytes.Buffer) error { return s.Markdown(out) }

// 9.525 mm to two decimals, half up, is 9.53 mm.
func TestText(t *testing.T) {
	s := sheet(one, &review.Row{Path: "b.json"})
	s.Fields = s.Fields[:6]
	s.Totals = review.Totals{Files: 5, Unread: 1}
	want := `DATE        COMPANY       REP  METALS                 THICKEST  CRITICAL
2026-11-01  Ödegård | Co  R    mild-steel, stainless  9.53 mm   reach
–           –             –    –                      –         –

2 of 5 files; 1 of all cannot be read as a visit
`
	if got := write(t, asText, s); got != want {
		t.Errorf("got\n%s", got)
	}
}

func TestMarkdown(t *testing.T) {
	s := sheet(one)
	s.Fields = s.Fields[:3]
	want := "| date | company | rep |\n| --- | --- | --- |\n| 2026-11-01 | Ödegård \\| Co | R |\n\n1 file\n"
	if got := write(t, asMarkdown, s); got != want {
		t.Errorf("got\n%s", got)
	}
}

func TestJSON(t *testing.T) {
	s := sheet(one, &review.Row{Path: "b.json"})
	var doc struct {
		Files, Unread int
		Rows          []map[string]any
	}
	if err := json.Unmarshal([]byte(write(t, asJSON, s)), &doc); err != nil {
		t.Fatal(err)
	}
	first, second := doc.Rows[0], doc.Rows[1]
	if doc.Files != 2 || first["thickest_mm"] != 9.53 || first["company"] != "Ödegård | Co" || len(first["metals"].([]any)) != 2 || len(first["flags"].([]any)) != 2 {
		t.Errorf("got %v", doc)
	}
	if second["thickest_mm"] != nil || second["company"] != nil || len(second["flags"].([]any)) != 0 {
		t.Errorf("not known is not null: %v", second)
	}
	lines := strings.Split(strings.TrimSpace(write(t, asNDJSON, s)), "\n")
	if len(lines) != 2 || !json.Valid([]byte(lines[0])) || !json.Valid([]byte(lines[1])) {
		t.Errorf("got %q", lines)
	}
}

// Cells that begin a formula or a command are neutralised (RFC 4180 says nothing
// of it; common practice, no source), and so is what would begin a cell where
// semicolons part them. A number below zero that is ours stands as it is.
func TestCSVIsHarmless(t *testing.T) {
	for _, name := range []string{"=1+1", "+44 20", "-5", "@sum", "\tx", "\rx", "'quoted"} {
		if got := harmless(name); got != "'"+name {
			t.Errorf("%q: %q", name, got)
		}
	}
	for in, want := range map[string]string{"A;=1+1": "A;'=1+1", ";@x": ";'@x", "=a;-b;c": "'=a;'-b;c", "a; b": "a; b", "a=b": "a=b", "": "", "a;": "a;", "ü;'x": "ü;''x"} {
		if got := harmless(in); got != want {
			t.Errorf("%q: %q, want %q", in, got, want)
		}
	}
	if got := (value{"error", tenths(-22.04)}).cell(); got != "-22.0" {
		t.Errorf("a number became %q", got)
	}
	if got := write(t, asCSV, sheet(one)); !strings.HasPrefix(got, "date,company,rep,metals,thickest_mm,") || !strings.Contains(got, "\r\n") || strings.Contains(got, "'") {
		t.Errorf("got %q", got)
	}
}

// An independent reader gets back what was written, once the apostrophe is taken
// away.
func TestCSVRoundTrip(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		text := rapid.OneOf(rapid.String(), rapid.StringMatching(`['=+@",;\-][ a"',\t;=]*`))
		name := strings.NewReplacer("\n", " ", "\r", " ").Replace(text.Draw(rt, "company"))
		if !utf8.ValidString(name) {
			return
		}
		row := *one
		row.Company, row.Rep = name, name
		records, err := csv.NewReader(strings.NewReader(write(t, asCSV, sheet(&row)))).ReadAll()
		if err != nil || len(records) != 2 || len(records[1]) != len(records[0]) {
			rt.Fatalf("%v %v", records, err)
		}
		for _, got := range records[1][1:3] {
			var back []string
			for _, part := range strings.Split(got, ";") {
				if part != "" && strings.Contains("=+-@\t\r", part[:1]) {
					rt.Fatalf("%q can be a formula", got)
				}
				back = append(back, strings.TrimPrefix(part, "'"))
			}
			if got := strings.Join(back, ";"); got != name {
				rt.Fatalf("%q became %q", name, got)
			}
		}
	})
}

// A time has its unit in the name of its column, and none in its cells.
func TestTheTimeOfAnInterview(t *testing.T) {
	s := sheet(&review.Row{Path: "a.json", Noted: review.Noted{Minutes: 14, Against: 1}}, &review.Row{Path: "b.json"})
	s.Fields, _ = review.ParseFields("file,interview,against")
	if got, want := write(t, asNDJSON, s), "{\"file\": \"a.json\", \"interview_min\": 14, \"against\": \"price\"}\n{\"file\": \"b.json\", \"interview_min\": null, \"against\": null}\n"; got != want {
		t.Errorf("got %s", got)
	}
	if got, want := write(t, asCSV, s), "file,interview_min,against\r\na.json,14,price\r\nb.json,,\r\n"; got != want {
		t.Errorf("got %q", got)
	}
}
