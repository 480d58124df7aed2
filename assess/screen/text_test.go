package screen

import (
	"slices"
	"strings"
	"testing"
)

func TestRowsSayThatThereIsMore(t *testing.T) {
	lines := strings.Fields("a b c d e f g h")
	for _, test := range []struct {
		at, height int
		want       string
	}{
		{0, 8, "a b c d e f g h"}, {0, 5, "a b c d +"}, {3, 5, "+ c d e +"}, {4, 4, "+ d e +"}, {7, 5, "+ e f g h"}, {6, 4, "+ f g h"},
		{4, 3, "d e f"}, {0, 0, ""}, // no room for marks
	} {
		got := NewWindow(nil, nil).Rows(lines, test.at, test.height)
		if shown := strings.NewReplacer(MoreAbove, "+", MoreBelow, "+").Replace(strings.Join(got, " ")); shown != test.want {
			t.Errorf("rows around %d in %d lines: %q, want %q", test.at, test.height, shown, test.want)
		}
		if test.height > 0 && !slices.Contains(got, lines[test.at]) {
			t.Errorf("rows around %d in %d lines: the focus is not there", test.at, test.height)
		}
	}
}

func TestFitSaysThatThereIsMore(t *testing.T) {
	for height, want := range map[int]string{4: "a b c", 3: "a b c", 2: "a …", 1: "…", 0: "", -1: ""} {
		if got := strings.Join(Fit([]string{"a", "b", "c"}, height), " "); got != want {
			t.Errorf("in %d lines: %q, want %q", height, got, want)
		}
	}
}
