package cite_test

import (
	"strings"
	"testing"

	"cutbrief/rules/cite"
)

func TestSourcesAreWhole(t *testing.T) {
	trusts := map[cite.Trust]bool{cite.Published: true, cite.Practice: true, cite.Memory: true, cite.Invented: true, cite.Given: true}
	seen := map[string]bool{}
	for _, s := range cite.All() {
		if s.ID == "" || s.Title == "" || !trusts[s.Trust] {
			t.Errorf("source %+v is not whole", s)
		}
		if seen[s.ID] {
			t.Errorf("source %q is registered twice", s.ID)
		}
		seen[s.ID] = true
		if found, ok := (cite.Ref{Source: s.ID}).Find(); !ok || found != s {
			t.Errorf("source %q does not resolve to itself", s.ID)
		}
	}
}

// What a reader sees names the document, or says how else the value is known.
func TestRefSaysItsTrust(t *testing.T) {
	for _, s := range cite.All() {
		text := cite.Ref{Source: s.ID, Clause: "table 1"}.Message().String()
		if s.Trust == cite.Published || s.Trust == cite.Given {
			if !strings.Contains(text, s.Title) || !strings.Contains(text, "table 1") {
				t.Errorf("%q is shown as %q", s.ID, text)
			}
		} else if !strings.Contains(text, string(s.Trust)) {
			t.Errorf("%q is shown as %q, without %q", s.ID, text, s.Trust)
		}
	}
	if text := (cite.Ref{Source: "no such"}).Message().String(); !strings.Contains(text, "unregistered") {
		t.Errorf("an unknown source is shown as %q", text)
	}
}
