package export

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"cutbrief/assess"
	"cutbrief/assess/review"
)

var today = time.Date(2026, 11, 25, 0, 0, 0, 0, time.UTC)

// By hand: 3 of 8 is 37.5 %, rounded up; 1 of 400 is 0.25 %, 399 of 400 are 99.75 %;
// of five there is no percentage, of six there is.
func TestCount(t *testing.T) {
	for _, c := range []struct {
		n, base int
		want    string
	}{{3, 8, "3 of 8 (38 %)"}, {3, 5, "3 of 5"}, {0, 0, "0 of 0"}, {6, 6, "6 of 6 (100 %)"}, {0, 6, "0 of 6 (0 %)"},
		{1, 400, "1 of 400 (under 1 %)"}, {399, 400, "399 of 400 (over 99 %)"}} {
		if got := share(c.n, c.base).String(); got != c.want {
			t.Errorf("%s, want %s", got, c.want)
		}
	}
}

// folder is an invented one: three visits are judged, one file is torn.
func folder(by string) Summary {
	rows := []*review.Row{
		{Stage: review.Judged, Date: "2026-10-05", Rep: "A. Person", Company: "C. Customer", Verdict: review.Firm, Outcome: "no", Critical: "reach", System: "demo-45", Noted: review.Noted{Against: 1, Poor: true, Slow: 1, Fit: 2}},
		{Stage: review.Judged, Rep: "B. Person", Verdict: review.Open, Outcome: "order", Unanswered: "use", Flags: 1 << review.StillOpen, Noted: review.Noted{Minutes: 12}},
		{Stage: review.Judged, Rep: "A. Person", Verdict: review.NotYet, Unanswered: "use; breaker"},
		{Stage: review.Unread, Flags: 1 << review.Damaged},
	}
	var column *review.Field
	if f, ok := review.FindField(by); ok {
		column = &f
	}
	return Summarize(review.TallyOf(slices.Values(rows), column), review.Totals{Files: 9, Unread: 2}, today, nil)
}

func TestSummary(t *testing.T) {
	s := folder("")
	text := fmt.Sprint(s)
	for _, want := range []string{
		"3 visits counted on 25 November 2026, made on 5 October 2026.", "A filter keeps 4 of 9 files.",
		"1 file cannot be read as a visit", "{firm 1 of 3 0.33", "{not yet 1 of 3", "Firm: no missing answer can change the recommendation. Open: one can.", "{order 1 of 3", "{nothing recorded 1 of 3", "{reach in heavy section 1 0 0 1}", "{not known 2 1 0 0}",
		"{none recommended 2 1 0 0}", "{the price 1 of 1 1}", "A cut went poorly in 1 of 1.", "{damaged file 1 of 4 0.25}", "{open questions 1 of 4", "{use 2 of 3", "{breaker 1 of 3",
		"{over 10 to 20 min 1 of 1 1}", "12 min. Known of 1 of 3.", "{slower 1 of 3", "{as predicted 2 of 3", "{faster 0 of 3 0}", "Nobody is named here.",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in\n%s", want, text)
		}
	}
	if strings.Contains(text, "invented") {
		t.Errorf("a range of their own is called invented:\n%s", text)
	}
	if strings.Contains(text, "Person") || strings.Contains(text, "Customer") {
		t.Errorf("somebody is named:\n%s", text)
	}
}

// Reps are named where they are asked for, customers never.
func TestSummaryByRep(t *testing.T) {
	s := folder("rep")
	if len(s.Groups) != 2 || s.Groups[0].Label != "A. Person" || s.Groups[0].Visits != 2 || s.Groups[0].Left != "breaker, 1 of 2" || s.Groups[1].Middle != "12 min" {
		t.Errorf("%+v", s.Groups)
	}
	if got, want := strings.Join(s.Groups[0].More, "|"), "main reason where the answer was no: the price 1 of 1|timed cuts: slower 1 of 3, as predicted 2 of 3, faster 0 of 3"; got != want {
		t.Errorf("got %s", got)
	}
	if text := fmt.Sprint(s); strings.Contains(text, "Customer") || strings.Contains(text, "Nobody is named") {
		t.Errorf("got\n%s", text)
	}
}

// What there is nothing of is said, not left blank.
func TestSummaryOfNothing(t *testing.T) {
	text := fmt.Sprint(Summarize(review.TallyOf(slices.Values([]*review.Row(nil)), nil), review.Totals{}, today, nil))
	for _, want := range []string{"0 visits counted", "No visit ended with a no.", "No flag is raised.", "Every question has an answer; not known is one.", "Not known of any of these visits", "No cut with a prediction was timed."} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in\n%s", want, text)
		}
	}
}

// Everything that can weigh against it has words.
func TestEveryReasonHasWords(t *testing.T) {
	for _, a := range append(assess.AllAgainst(), "") {
		if againstWords[a] == "" {
			t.Errorf("%q has none", a)
		}
	}
}

// Who judges by the built-in range must not take its gaps for those of a real one.
func TestAnInventedRangeIsSaid(t *testing.T) {
	s := Summarize(review.Tally{}, review.Totals{Invented: true}, today, nil)
	if len(s.Lead) != 2 || !strings.HasPrefix(s.Lead[1], "The range they are judged by is invented") {
		t.Errorf("lead is %q", s.Lead)
	}
}
