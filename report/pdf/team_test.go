package pdf

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"cutbrief/assess/review"
	"cutbrief/report/export"
)

var teamDay = time.Date(2026, 11, 25, 0, 0, 0, 0, time.UTC)

// teamSample is an invented team's tally, worded.
func teamSample(groups int) export.Summary {
	p := review.Pattern{Visits: 212, Flagged: 40, Firm: 120, Open: 60, FallsShort: 4, NoneFits: 8, NotYet: 20, Ordered: 30, Quoted: 41, Again: 9, Lost: 22, NoOutcome: 110,
		Against: []review.Count{{What: "price", Visits: 9}, {What: "habit", Visits: 6}, {What: "", Visits: 4}, {What: "site", Visits: 3}}, Poor: 2,
		Unanswered: []review.Count{{What: "compressor delivery", Visits: 80}, {What: "thickest clean cut, mild steel", Visits: 31}, {What: "breaker", Visits: 12}},
		Took:       review.Took{Known: 88, Low: 4, Median: 17, High: 71, Within: [4]int{20, 40, 20, 8}}, Cuts: review.Cuts{Slow: 11, Fit: 40, Fast: 2}}
	t := review.Tally{Files: 216, Unread: 4, First: "2026-01-05", Last: "2026-11-20", All: p, Raised: []review.Count{{What: "damaged", Visits: 3}, {What: "foreign", Visits: 1}, {What: "differs", Visits: 12}, {What: "open", Visits: 60}, {What: "overdue", Visits: 14}}}
	for i, of := range []string{"reach", "speed", "running-cost", "low-distortion", "edge-quality", ""} {
		t.Requirements = append(t.Requirements, review.Pattern{Of: of, Visits: 80 - 12*i, Ordered: 12 - 2*i, Quoted: 20 - 3*i, Lost: 9 - i})
	}
	for i := range 9 {
		t.Systems = append(t.Systems, review.Pattern{Of: fmt.Sprintf("demo-%d", 30+10*i), Visits: 60 - 6*i, Ordered: 10 - i, Again: 9 - i, Lost: 4})
	}
	for i := range groups {
		g := p
		g.Of = fmt.Sprintf("Invented Person %d", i+1)
		t.By, t.Groups = "rep", append(t.Groups, g)
	}
	return export.Summarize(t, review.Totals{Files: 300, Unread: 4}, teamDay, nil)
}

// laidTeam is the summary laid out as Team does it.
func laidTeam(s export.Summary, p Paper) (*leaf, error) {
	f, err := newFaces()
	if err != nil {
		return nil, err
	}
	pg, err := fitTeam(f, s, p)
	for i := 0; err == nil && i < len(pg.marks); i++ {
		if m := &pg.marks[i]; m.kind == textMark {
			m.w = f.width(m.text, m.style)
		}
	}
	return pg, err
}

func TestTeamPage(t *testing.T) {
	for _, p := range papers {
		for _, groups := range []int{0, 8, 200} {
			pg, err := laidTeam(teamSample(groups), p)
			if err != nil {
				t.Fatal(err)
			}
			for _, f := range faults(pg, p) {
				t.Errorf("%s, %d groups: %s", p, groups, f)
			}
			if cut := len(pg.cuts) > 0; cut != (groups == 200) || cut && !onPage(pg, "left out") {
				t.Errorf("%s, %d groups: shortened %v", p, groups, pg.cuts)
			}
			for _, want := range []string{"120 of 212 (57", "9 of 22 (41", "running cost", "compressor delivery", "3 of 216"} {
				if !onPage(pg, want) {
					t.Errorf("%s, %d groups: no %q", p, groups, want)
				}
			}
			if onPage(pg, "Person") != (groups > 0) || onPage(pg, "Nobody is named") != (groups == 0) {
				t.Errorf("%s, %d groups: names", p, groups)
			}
		}
	}
}

// The same summary gives the same bytes: one page, by an independent reader.
func TestTeamIsOnePage(t *testing.T) {
	one, err := Team(teamSample(40), Letter)
	if err != nil {
		t.Fatal(err)
	}
	again, err := Team(teamSample(40), Letter)
	if err != nil || !bytes.Equal(one, again) {
		t.Errorf("%v: the bytes differ", err)
	}
	if _, err := exec.LookPath("pdfinfo"); err != nil {
		t.Skip("pdfinfo is not installed")
	}
	name := filepath.Join(t.TempDir(), "team.pdf")
	if err := os.WriteFile(name, one, 0o600); err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command("pdfinfo", name).Output()
	if err != nil || !strings.Contains(strings.Join(strings.Fields(string(out)), " "), "Pages: 1 ") {
		t.Errorf("%v\n%s", err, out)
	}
}

// titles are those of the parts, the longest there are.
var titles = []string{"How they stand by today's rules and range", "How they ended, by what decides", "What weighed most where the answer was no"}

// Whatever a summary holds, it becomes one page on which nothing runs out,
// overlaps or lacks a glyph.
func TestAnyTeamFitsOnePage(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.OneOf(rapid.SampledFrom(hostile), rapid.String())
		n := rapid.IntRange(-5, 1e6)
		bar := rapid.Custom(func(t *rapid.T) export.Bar {
			return export.Bar{Label: text.Draw(t, "label"), Count: text.Draw(t, "count"), Share: rapid.Float64Range(-1, 2).Draw(t, "share")}
		})
		ending := rapid.Custom(func(t *rapid.T) export.Ending {
			return export.Ending{Label: text.Draw(t, "label"), Visits: n.Draw(t, "visits"), Ordered: n.Draw(t, "ordered"), Waiting: n.Draw(t, "waiting"), Lost: n.Draw(t, "lost")}
		})
		part := rapid.Custom(func(t *rapid.T) export.Part {
			return export.Part{Title: rapid.SampledFrom(titles).Draw(t, "title"), Note: text.Draw(t, "note"), Bars: rapid.SliceOfN(bar, 0, 20).Draw(t, "bars"), Table: rapid.SliceOfN(ending, 0, 30).Draw(t, "table")}
		})
		group := rapid.Custom(func(t *rapid.T) export.Group {
			return export.Group{Ending: ending.Draw(t, "ending"), Firm: text.Draw(t, "firm"), Middle: text.Draw(t, "time"), Left: text.Draw(t, "left")}
		})
		s := export.Summary{Title: text.Draw(t, "title"), Lead: rapid.SliceOfN(text, 0, 4).Draw(t, "lead"), Parts: rapid.SliceOfN(part, 0, 9).Draw(t, "parts"),
			By: rapid.SampledFrom([]string{"", "rep", "critical"}).Draw(t, "by"), Groups: rapid.SliceOfN(group, 0, 80).Draw(t, "groups"), Notes: rapid.SliceOfN(text, 0, 3).Draw(t, "notes")}
		p := rapid.SampledFrom(papers).Draw(t, "paper")
		pg, err := laidTeam(s, p)
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range faults(pg, p) {
			t.Error(f)
		}
	})
}
