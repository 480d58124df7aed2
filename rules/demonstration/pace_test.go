package demonstration

import (
	"testing"

	"cutbrief/rules/unit"
)

// By hand: 18 · 1.15 = 20.7, and 18 / 1.15 = 15.65.
func TestCompare(t *testing.T) {
	for took, want := range map[unit.Second]Pace{
		18: OnTheMark, 20.7: OnTheMark, 20.8: Slow, 15.7: OnTheMark, 15.6: Fast, 40: Slow, 1: Fast,
	} {
		if got, ok := Compare(took, 18); !ok || got != want {
			t.Errorf("%v s for 18 s: %q, want %q", took, got, want)
		}
	}
	if got, ok := Compare(18/1.15, 18); !ok || got != OnTheMark {
		t.Errorf("exactly at the band: %q", got)
	}
	for _, bad := range [][2]unit.Second{{0, 18}, {18, 0}, {-1, 18}} {
		if got, ok := Compare(bad[0], bad[1]); ok {
			t.Errorf("%v: %q", bad, got)
		}
	}
}

// By hand: 300 mm in 18 s is 300 / 18 · 60 = 1000 mm a minute.
func TestReached(t *testing.T) {
	if got := Reached(300, 18).Or(0); got < 999.999 || got > 1000.001 {
		t.Errorf("got %v mm/min, want 1000", got)
	}
	if got := Reached(0.5, 0.5).Or(0); got != 60 { // 0.5 / 0.5 · 60
		t.Errorf("got %v mm/min, want 60", got)
	}
	if Reached(0, 18).IsKnown() || Reached(300, 0).IsKnown() {
		t.Error("no length or no time gives a speed")
	}
}

func TestEveryPaceSaysWhatToChange(t *testing.T) {
	for _, p := range []Pace{OnTheMark, Slow, Fast} {
		if p.Change().IsEmpty() {
			t.Errorf("%s: nothing", p)
		}
	}
}
