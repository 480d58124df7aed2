package review

import (
	"fmt"
	"reflect"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"cutbrief/assess"
	"cutbrief/rules"
)

// five rows of an invented folder; the last cannot be read.
func five() []*Row {
	return []*Row{
		{Rep: "A", Date: "2026-10-05", Stage: Judged, Verdict: Firm, Outcome: "order", Metals: "stainless, aluminium", Critical: rules.Reach, System: "demo-45", Noted: Noted{Minutes: 10, Slow: 1, Fit: 2}},
		{Rep: "A", Date: "2026-11-02", Stage: Judged, Verdict: Open, Outcome: "quote", Flags: 1 << StillOpen, Unanswered: "use; breaker", Metals: "stainless", Critical: rules.Reach, Noted: Noted{Minutes: 21}},
		{Rep: "B", Stage: Judged, Verdict: Firm, Outcome: "no", Unanswered: "use", System: "demo-45", Noted: Noted{Against: 1, Poor: true, Fast: 1}},
		{Rep: "A", Date: "2026-11-01", Stage: Judged, Verdict: NotYet, Flags: 1<<StillOpen | 1<<Unsafe, Unanswered: "use", Outcome: "no"},
		{Stage: Unread, Flags: 1 << Damaged},
	}
}

// by counts rows by a column.
func by(rows []*Row, column string) []Pattern {
	f, _ := FindField(column)
	return TallyOf(slices.Values(rows), &f).Groups
}

// Counted by hand from the five rows; the unread one is in no pattern. The times
// of A are 10 and 21 min: the mean of the two is 15.5, rounded up 16 min.
func TestPatterns(t *testing.T) {
	want := []Pattern{
		{Of: "A", Visits: 3, Firm: 1, Open: 1, NotYet: 1, Flagged: 2, Ordered: 1, Quoted: 1, Lost: 1, Unanswered: []Count{{"use", 2}, {"breaker", 1}},
			Against: []Count{{"", 1}}, Took: Took{Known: 2, Low: 10, Median: 16, High: 21, Within: [4]int{1, 0, 1, 0}}, Cuts: Cuts{Slow: 1, Fit: 2}},
		{Of: "B", Visits: 1, Firm: 1, Lost: 1, Poor: 1, Unanswered: []Count{{"use", 1}}, Against: []Count{{"price", 1}}, Cuts: Cuts{Fast: 1}},
	}
	got := by(five(), "rep")
	for i := range want {
		if !reflect.DeepEqual(got[i], want[i]) {
			t.Errorf("got  %+v\nwant %+v", got[i], want[i])
		}
	}
	for i, want := range []struct {
		of string
		n  int
	}{{"", 2}, {"stainless", 2}, {"aluminium", 1}} {
		if got := by(five(), "metals")[i]; got.Of != want.of || got.Visits != want.n {
			t.Errorf("%d: %s with %d, want %s with %d", i, got.Of, got.Visits, want.of, want.n)
		}
	}
}

// Months stand in their order, however many visits they have.
func TestMonthsInTheirOrder(t *testing.T) {
	var got []string
	for _, p := range by(five(), "month") {
		got = append(got, fmt.Sprintf("%s:%d", p.Of, p.Visits))
	}
	if want := []string{":1", "2026-10:1", "2026-11:2"}; !slices.Equal(got, want) {
		t.Errorf("got %v", got)
	}
}

// The middle of three is the second; 10 min is still within 10, 41 is more than 40.
func TestTook(t *testing.T) {
	want := Took{Known: 3, Low: 10, Median: 20, High: 41, Within: [4]int{1, 1, 0, 1}}
	if got := took([]int{41, 10, 20}); got != want {
		t.Errorf("got %+v", got)
	}
	if got := took(nil); got != (Took{}) {
		t.Errorf("of none: %+v", got)
	}
}

func TestTallyOf(t *testing.T) {
	rep, _ := FindField("rep")
	rows := append(five(), &Row{Stage: Unread, Date: "2020-01-01"})
	got := TallyOf(slices.Values(rows), &rep)
	if got.Files != 6 || got.Unread != 2 || got.All.Visits != 4 || got.First != "2026-10-05" || got.Last != "2026-11-02" {
		t.Errorf("got %+v", got)
	}
	if want := []Count{{"damaged", 1}, {"open", 2}, {"safety", 1}}; !slices.Equal(got.Raised, want) {
		t.Errorf("raised %v", got.Raised)
	}
	if len(got.Requirements) != 2 || got.Requirements[0].Of != "" && got.Requirements[0].Of != string(rules.Reach) || len(got.Systems) != 2 || got.By != "rep" || len(got.Groups) != 2 {
		t.Errorf("got %+v", got)
	}
}

// rowsOf draws any rows a folder can give.
func rowsOf() *rapid.Generator[[]*Row] {
	some := func(t *rapid.T, name string, of ...string) string { return rapid.SampledFrom(of).Draw(t, name) }
	row := rapid.Custom(func(t *rapid.T) *Row {
		r := &Row{Stage: Stage(rapid.IntRange(0, 2).Draw(t, "stage")), Rep: some(t, "rep", "", "A. Person", "B. Person"), Company: "C. Customer",
			Date: some(t, "date", "", "2026-10-01", "2026-11-01"), Flags: FlagSet(rapid.IntRange(0, 1<<flags-1).Draw(t, "flags"))}
		if r.Stage != Judged {
			return r
		}
		r.Verdict = Verdict(some(t, "verdict", string(Firm), string(Open), string(FallsShort), string(NoneFits), string(NotYet)))
		r.Outcome = some(t, "outcome", "", "order", "quote", "second-visit", "no")
		r.Critical, r.System = rules.Requirement(some(t, "critical", "", "reach", "speed")), some(t, "system", "", "demo-30", "demo-45")
		r.Unanswered = some(t, "unanswered", "", "use", "use; breaker")
		r.Noted = Noted{Minutes: rapid.Uint16Range(0, 60).Draw(t, "minutes"), Slow: rapid.Uint8().Draw(t, "slow"), Fit: rapid.Uint8().Draw(t, "fit")}
		if r.Outcome == "no" {
			r.Noted.Against = rapid.Uint8Range(0, uint8(len(assess.AllAgainst()))).Draw(t, "against")
		}
		return r
	})
	return rapid.SliceOfN(row, 0, 40)
}

// Whatever a folder holds, every count adds up to the number of files.
func TestCountsAddUpToTheFiles(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		rows := rowsOf().Draw(rt, "rows")
		column, _ := FindField(rapid.SampledFrom([]string{"rep", "month", "verdict", "system"}).Draw(rt, "by"))
		tally := TallyOf(slices.Values(rows), &column)
		if tally.Files != len(rows) || tally.Unread+tally.All.Visits != len(rows) {
			rt.Fatalf("%d rows: %+v", len(rows), tally)
		}
		for name, list := range map[string][]Pattern{"requirements": tally.Requirements, "systems": tally.Systems, "groups": tally.Groups} {
			if !addsUp(list, tally.All) {
				rt.Fatalf("%s do not add up to all: %+v", name, list)
			}
		}
		for _, p := range append(tally.Groups, tally.All) {
			if !soundly(p) {
				rt.Fatalf("%+v", p)
			}
		}
	})
}

// addsUp reports groups in which each visit is counted once.
func addsUp(list []Pattern, all Pattern) bool {
	var sum Pattern
	for _, p := range list {
		sum.Visits += p.Visits
		sum.Firm, sum.Ordered, sum.Lost = sum.Firm+p.Firm, sum.Ordered+p.Ordered, sum.Lost+p.Lost
		sum.Took.Known += p.Took.Known
		sum.Cuts.Slow += p.Cuts.Slow
	}
	return sum.Visits == all.Visits && sum.Firm == all.Firm && sum.Ordered == all.Ordered && sum.Lost == all.Lost &&
		sum.Took.Known == all.Took.Known && sum.Cuts.Slow == all.Cuts.Slow
}

// soundly reports a pattern whose parts add up to their bases.
func soundly(p Pattern) bool {
	lost := 0
	for _, c := range p.Against {
		lost += c.Visits
	}
	within := 0
	for _, n := range p.Took.Within {
		within += n
	}
	return p.Firm+p.Open+p.FallsShort+p.NoneFits+p.NotYet == p.Visits &&
		p.Ordered+p.Quoted+p.Again+p.Lost+p.NoOutcome == p.Visits && p.Waiting() == p.Quoted+p.Again &&
		lost == p.Lost && within == p.Took.Known && p.Took.Known <= p.Visits && p.Flagged <= p.Visits && p.Poor <= p.Lost
}

// No name is in what is counted unless it is asked for.
func TestCountsNameNobody(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		rows := rowsOf().Draw(rt, "rows")
		if text := fmt.Sprintf("%+v", TallyOf(slices.Values(rows), nil)); strings.Contains(text, "Person") || strings.Contains(text, "Customer") {
			rt.Fatal(text)
		}
	})
}
