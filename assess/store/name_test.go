package store

import (
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"cutbrief/assess"
)

func TestNewPath(t *testing.T) {
	for company, want := range map[string]string{
		"Hillside Farm":         "2026-11-25-hillside-farm.json",
		"  Ødegård & Sønn A/S ": "2026-11-25-odegard-sonn-a-s.json",
		"Łąka Straße":           "2026-11-25-laka-strasse.json",
		"Joe’s Gates":           "2026-11-25-joes-gates.json",
		"../../etc/passwd":      "2026-11-25-etc-passwd.json",
		"CON":                   "2026-11-25-con.json",
		"A ь 4":                 "2026-11-25-a-4.json", // a sign without a sound
		"Завод Щит":             "2026-11-25-zavod-shchit.json",
		"Μηχανές Ψαρά":          "2026-11-25-michanes-psara.json",
		"Ｈｉｌｌｓｉｄｅ ﬁｅｌｄｓ": "2026-11-25-hillside-fields.json",
		"...":                      "2026-11-25-visit.json",
		strings.Repeat("ab ", 100): "2026-11-25-" + strings.TrimSuffix(strings.Repeat("ab-", 20), "-") + ".json",
	} {
		path, err := Folder{t.TempDir()}.NewPath(visit(t, company))
		if got := filepath.Base(path); err != nil || got != want {
			t.Errorf("%q: %s %v, want %s", company, got, err, want)
		}
	}
}

func TestNewPathWithoutDateOrCompany(t *testing.T) {
	path, err := Folder{t.TempDir()}.NewPath(assess.New("x", now.AddDate(0, 0, 1)))
	if got := filepath.Base(path); err != nil || got != "2026-11-26-visit.json" {
		t.Errorf("%s %v", got, err)
	}
	if path, _ := (Folder{t.TempDir()}).NewPath(&assess.Visit{}); filepath.Base(path) != "undated-visit.json" {
		t.Errorf("got %s", path)
	}
}

// Two visits on one day get two names, also in a folder that is not there yet.
func TestNewPathIsFree(t *testing.T) {
	f := Folder{filepath.Join(t.TempDir(), "visits", "north")}
	for _, want := range []string{"2026-11-25-a.json", "2026-11-25-a-2.json", "2026-11-25-a-3.json"} {
		v := visit(t, "A")
		path, err := f.NewPath(v)
		if err != nil || filepath.Base(path) != want {
			t.Errorf("%s %v, want %s", path, err, want)
		}
		save(t, path, v)
	}
}

// number is what goes behind a name that cannot be spelled out, or that mixes
// alphabets.
const number = `-[0-9a-f]{8}$`

// What only looks like another name gets a name that does not. The first of each
// row is in Latin letters, the others hold letters of other alphabets, or such
// as have no plain form.
func TestLookAlikes(t *testing.T) {
	for _, row := range [][]string{
		{"Cocoa", "С\u043ecoa", "Coc\u03bfa", "Coco\u0251"},             // Cyrillic es and o, Greek omicron, Latin alpha
		{"Apex", "\u0410pex", "\u0391pex", "Ape\u0445"},                 // Cyrillic a, Greek alpha, Cyrillic ha
		{"Bosk Ltd", "\u0412osk Ltd", "Bosk L\u0442d", "Bos\u03ba Ltd"}, // Cyrillic ve and te, Greek kappa
	} {
		seen := map[string]bool{}
		for i, company := range row {
			s := slug(company)
			if seen[s] {
				t.Errorf("%q (%+q) is called %s, like another", company, company, s)
			}
			if odd, _ := regexp.MatchString(number, s); odd != (i > 0) {
				t.Errorf("%+q is called %s", company, s)
			}
			seen[s] = true
		}
	}
}

// Companies whose names come out the same, or nearly, do not get into one
// another's files.
func TestLookAlikesKeepTheirFiles(t *testing.T) {
	f := Folder{t.TempDir()}
	companies := []string{"Apex", "APEX", "Ａpex", "\u0410pex", "A-pex", "a pex", "Âpex", "\u0391\u03c1\u03b5\u03c7", "株式", "会社", "...", "///", "CON", "con.", " con "}
	paths := map[string]string{}
	for _, company := range companies {
		v := visit(t, company)
		path, err := f.NewPath(v)
		if err != nil {
			t.Fatal(err)
		}
		save(t, path, v)
		paths[path] = company
	}
	if len(paths) != len(companies) {
		t.Errorf("%d files of %d companies", len(paths), len(companies))
	}
	for path, company := range paths {
		if got := said(load(t, path), assess.FactCompany); got != strings.TrimSpace(company) {
			t.Errorf("%s holds %q, want %q", path, got, company)
		}
	}
}

// reserved are names that Windows keeps for devices, with any ending. Source:
// "Naming Files, Paths, and Namespaces" of its documentation, from memory.
var reserved = regexp.MustCompile(`(?i)^(con|prn|aux|nul|conin\$|conout\$|com[0-9¹²³]|lpt[0-9¹²³])(\.|$)`)

// Any company gives a name of plain letters, digits and single dashes, with no
// dash at an end, that every system takes.
func TestNamesAreSafe(t *testing.T) {
	hard := rapid.SampledFrom([]string{"CON", "nul.txt", "LPT1", "COM¹", "..", "a/b", `c:\d`, "~", "*?<>|\"", "\x00\n", "é", "щ", "\u202e", "株", " . ", "-", strings.Repeat("Ω", 90)})
	company := rapid.OneOf(rapid.String(), rapid.Map(rapid.SliceOfN(hard, 0, 5), func(s []string) string { return strings.Join(s, "") }))
	rapid.Check(t, func(rt *rapid.T) {
		v := assess.New("x", now)
		v.Set(assess.Answer{Question: assess.FactCompany, Said: company.Draw(rt, "company"), State: assess.Told})
		v.Set(assess.Answer{Question: assess.FactDate, Said: rapid.SampledFrom([]string{"2026-11-25", "../x", "", "25.11."}).Draw(rt, "date"), State: assess.Told})
		dir := t.TempDir()
		path, err := Folder{dir}.NewPath(v)
		if err != nil {
			rt.Fatal(err)
		}
		name := filepath.Base(path)
		s := strings.TrimSuffix(name, ".json")
		if filepath.Dir(path) != dir || len(name) > 80 || reserved.MatchString(name) || strings.Contains(s, "--") || strings.Trim(s, "-") != s {
			rt.Fatalf("%q", path)
		}
		for _, r := range s {
			if !strings.ContainsRune("abcdefghijklmnopqrstuvwxyz0123456789-", r) {
				rt.Fatalf("%q", s)
			}
		}
	})
}
