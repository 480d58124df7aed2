package main

import (
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"cutbrief/report"
	"cutbrief/report/text"
	"cutbrief/rules/cite"
	"cutbrief/rules/system"
)

// remembered are the titles of sources no one read, that begin no title of one that
// was read as well.
func remembered() (titles []string) {
	for _, s := range cite.All() {
		read := slices.ContainsFunc(cite.All(), func(o cite.Source) bool {
			return o.Trust != cite.Memory && strings.HasPrefix(o.Title, s.Title)
		})
		if s.Trust == cite.Memory && !read {
			titles = append(titles, s.Title)
		}
	}
	return titles
}

// TestMemoryIsMarked: where a page names a source that no one read, it says so
// before the bracket closes, and the foot of every page names memory among what it
// rests on: the cautions and, where something is costed, its figures lean on it.
func TestMemoryIsMarked(t *testing.T) {
	offered := system.Demo()
	named := 0
	rapid.Check(t, func(t *rapid.T) {
		v := randomVisit(t)
		brief := report.Build(v, offered, report.Options{})
		if foot := strings.Join(brief.Footing, " "); !strings.Contains(foot, string(cite.Memory)) {
			t.Errorf("the foot does not name memory: %s", foot)
		}
		for _, page := range []string{text.Render(brief, 100), unescaped(text.Render(brief, text.Markdown))} {
			page = joined(page)
			for _, title := range remembered() {
				rest, title := page, joined(title)
				for strings.Contains(rest, title) {
					_, rest, _ = strings.Cut(rest, title)
					named++
					if mark, _, _ := strings.Cut(rest, "]"); !strings.Contains(mark, "frommemory") {
						t.Fatalf("%s is named without its mark: %.80s", title, rest)
					}
				}
			}
		}
	})
	if t.Logf("%d times a source was named that no one read", named); named == 0 {
		t.Error("no such source was ever named")
	}
}
