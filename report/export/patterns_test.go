package export

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"

	"cutbrief/assess/review"
)

// two groups of an invented folder.
func two() Patterns {
	return Patterns{Totals: review.Totals{Files: 14, Unread: 1}, Tally: review.Tally{Files: 14, Unread: 1, By: "rep", Groups: []review.Pattern{
		{Of: "A", Visits: 8, Firm: 3, Flagged: 1, Unanswered: []review.Count{{What: "use", Visits: 2}}, Took: review.Took{Known: 2, Low: 9, Median: 12, High: 14}},
		{Visits: 5, Firm: 5, Ordered: 2},
	}}}
}

// 3 of 8 is 37.5 %, which rounds up; of five visits there is no percentage. Labels
// take 7 cells, at least 8 are kept; the counts take 13; so a bar has 40 − 2 − 8 − 2 −
// 13 = 15 cells: 3/8 of it are 5.6, 1/8 and 2/8 are 1.9 and 3.75, 2/5 are 6.
func TestPatternsHaveTheirBase(t *testing.T) {
	var out bytes.Buffer
	p := two()
	p.Width = 40
	if err := p.Text(&out); err != nil {
		t.Fatal(err)
	}
	want := `rep: A
  firm     ██████········· 3 of 8 (38 %)
  flagged  ██············· 1 of 8 (13 %)
  ordered  ··············· 0 of 8 (0 %)
  waiting  ··············· 0 of 8 (0 %)
  lost     ··············· 0 of 8 (0 %)
  time: from 9 to 14 min
  most often not answered:
  use      ████··········· 2 of 8 (25 %)

rep: not known
  firm     ███████████████ 5 of 5
  flagged  ··············· 0 of 5
  ordered  ██████········· 2 of 5
  waiting  ··············· 0 of 5
  lost     ··············· 0 of 5

14 files; 1 of all not read as a visit,
and so not counted
`
	if got := out.String(); got != want {
		t.Errorf("got\n%s", got)
	}
	out.Reset()
	var doc struct{ Groups []map[string]any }
	if err := p.JSON(&out); err != nil || json.Unmarshal(out.Bytes(), &doc) != nil || len(doc.Groups) != 2 || doc.Groups[0]["firm"] != 3.0 {
		t.Errorf("%v %s", err, out.String())
	}
	if doc.Groups[1]["interview_minutes"] != nil {
		t.Errorf("not known is not null: %v", doc.Groups[1])
	}
}

// Behind a filter the files it keeps are counted, so that the visits of all groups
// and the file that is none add up to them: 8, 5 and 1 are 14.
func TestPatternsBehindAFilter(t *testing.T) {
	p := two()
	p.Totals, p.Tally.Files, p.Tally.Unread = review.Totals{Files: 30, Unread: 2}, 14, 1
	var out bytes.Buffer
	if err := p.Text(&out); err != nil || !strings.Contains(out.String(), "14 kept of 30 files; 2 of all not read") {
		t.Errorf("%v\n%s", err, out.String())
	}
	out.Reset()
	var doc struct {
		Kept   int
		Unread int `json:"kept_unread"`
	}
	if err := p.JSON(&out); err != nil || json.Unmarshal(out.Bytes(), &doc) != nil || doc.Kept != 14 || doc.Unread != 1 {
		t.Errorf("%v %s", err, out.String())
	}
}

// No line is wider than the screen, at any width from the least.
func TestPatternsFitTheScreen(t *testing.T) {
	p := two()
	p.Whole = true
	long := strings.Repeat("a question with a long name ", 4)
	all := review.Pattern{Visits: 123456, Firm: 123455, Open: 1, Lost: 7, Ordered: 1000, Quoted: 20, Against: []review.Count{{What: "habit", Visits: 5}, {Visits: 2}}, Poor: 3,
		Unanswered: []review.Count{{What: long, Visits: 9999}, {What: strings.Repeat("x", 90), Visits: 1}}, Cuts: review.Cuts{Slow: 4, Fit: 30},
		Took: review.Took{Known: 9, Low: 1, Median: 12, High: 80, Within: [4]int{4, 3, 1, 1}}}
	p.Tally.All, p.Tally.Raised = all, []review.Count{{What: "damaged", Visits: 1}}
	all.Of = "reach"
	p.Tally.Requirements = []review.Pattern{all, {Visits: 3, Quoted: 3}}
	for _, width := range []int{40, 60, 80, 120} {
		p.Width = width
		var out bytes.Buffer
		if err := p.Text(&out); err != nil {
			t.Fatal(err)
		}
		for line := range strings.Lines(out.String()) {
			if n := cells.StringWidth(strings.TrimRight(line, "\n")); n > width {
				t.Errorf("%d cells at %d: %s", n, width, line)
			}
		}
		for _, want := range []string{"123455 of 123456 (over 99 %)", "1 of 123456 (under 1 %)", "they keep today's way"} {
			if width > 40 && !strings.Contains(strings.Join(strings.Fields(out.String()), " "), want) {
				t.Errorf("at %d: no %q in\n%s", width, want, out.String())
			}
		}
	}
}

func TestWrapped(t *testing.T) {
	for _, c := range []struct {
		text  string
		width int
		want  string
	}{{"", 5, ""}, {"one two", 7, "one two"}, {"one two", 6, "one|two"}, {"abcdefgh ij", 3, "abc|def|gh|ij"}, {"日本語", 4, "日本|語"}, {"日本", 1, "日|本"}} {
		if got := strings.Join(lines(c.text, c.width), "|"); got != c.want {
			t.Errorf("%q at %d: %q, want %q", c.text, c.width, got, c.want)
		}
	}
}
