package store

import (
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf8"

	"pgregory.net/rapid"

	"cutbrief/assess"
)

func TestNewPath(t *testing.T) {
	for company, want := range map[string]string{
		"Hillside Farm":            "2026-11-25-hillside-farm.json",
		"  Ødegård & Sønn A/S ":    "2026-11-25-odegard-sonn-a-s.json",
		"Łąka Straße":              "2026-11-25-laka-strasse.json",
		"Joe’s Gates":              "2026-11-25-joes-gates.json",
		"../../etc/passwd":         "2026-11-25-etc-passwd.json",
		"CON":                      "2026-11-25-con.json",
		"株式会社":                     "2026-11-25-visit.json",
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

// Any company gives a name of plain letters, digits and single dashes, with no
// dash at an end, that every system takes.
func TestSlugIsSafe(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := slug(rapid.String().Draw(t, "company"))
		if s == "" || len(s) > longestName || strings.Contains(s, "--") || strings.Trim(s, "-") != s {
			t.Fatalf("%q", s)
		}
		for _, r := range s {
			if r >= utf8.RuneSelf || !strings.ContainsRune("abcdefghijklmnopqrstuvwxyz0123456789-", r) {
				t.Fatalf("%q", s)
			}
		}
	})
}
