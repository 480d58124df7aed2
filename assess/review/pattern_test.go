package review

import (
	"reflect"
	"testing"
)

// Counted by hand from five rows; the unread one is in no pattern.
func TestPatterns(t *testing.T) {
	rows := []*Row{
		{Rep: "A", Stage: Judged, Verdict: Firm, Outcome: "order", Metals: "stainless, aluminium"},
		{Rep: "A", Stage: Judged, Verdict: Open, Outcome: "quote", Flags: 1 << StillOpen, Unanswered: "use; breaker", Metals: "stainless"},
		{Rep: "B", Stage: Judged, Verdict: Firm, Outcome: "no", Unanswered: "use"},
		{Rep: "A", Stage: Judged, Verdict: NotYet, Flags: 1<<StillOpen | 1<<Unsafe, Unanswered: "use"},
		{Stage: Unread, Flags: 1 << Damaged},
	}
	rep, _ := FindField("rep")
	want := []Pattern{
		{Of: "A", Visits: 3, Firm: 1, Flagged: 2, Ordered: 1, Waiting: 1, Unanswered: []Count{{"use", 2}, {"breaker", 1}}},
		{Of: "B", Visits: 1, Firm: 1, Lost: 1, Unanswered: []Count{{"use", 1}}},
	}
	if got := Patterns(rows, rep); !reflect.DeepEqual(got, want) {
		t.Errorf("got %+v", got)
	}
	metals, _ := FindField("metals")
	for i, want := range []struct {
		of string
		n  int
	}{{"", 2}, {"stainless", 2}, {"aluminium", 1}} {
		if got := Patterns(rows, metals)[i]; got.Of != want.of || got.Visits != want.n {
			t.Errorf("%d: %s with %d, want %s with %d", i, got.Of, got.Visits, want.of, want.n)
		}
	}
}
