package handbook_test

import (
	"strings"
	"testing"

	"cutbrief/report/handbook"
	"cutbrief/rules/cite"
)

// What is only remembered is on its page with what it is used for, source by
// source; what every other page says of a kind of trust is found here again.
func TestTrustedNamesEverySource(t *testing.T) {
	p := handbook.Trusted("memory", nil)
	uses := map[string]bool{"a verdict": true, "a cost": true, "a hint": true, "a text": true, "reading an answer": true}
	var rests strings.Builder
	costed := false
	for _, row := range p.Sections[0].Rows {
		if !uses[row[1]] {
			t.Errorf("%s is used for %q", row[0], row[1])
		}
		rests.WriteString(row[2] + "\n")
		costed = costed || row[1] == "a cost"
		if !strings.Contains(row[2], string(cite.Memory)) {
			t.Errorf("%s: %q is not marked", row[0], row[2])
		}
	}
	for _, s := range cite.All() {
		if s.Trust == cite.Memory && !strings.Contains(rests.String(), s.Title) {
			t.Errorf("nothing is said to rest on %s, %s", s.ID, s.Title)
		}
	}
	if !costed {
		t.Error("no cost rests on memory: the flames do")
	}
	for _, name := range handbook.Trusts() {
		if p := handbook.Trusted(name, nil); len(p.Sections[0].Rows) == 0 {
			t.Errorf("no page about %s", name)
		}
	}
	if p := handbook.Trusted("hearsay", nil); p.Title != "" {
		t.Error("a page about hearsay")
	}
}
