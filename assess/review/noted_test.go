package review

import (
	"path/filepath"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"cutbrief/assess"
	"cutbrief/rules/unit"
)

func spent(v *assess.Visit, seconds float64) {
	v.InterviewTime = &assess.InterviewTime{Sessions: 1, Seconds: unit.Known(unit.Second(seconds))}
}

// 18 s predicted: 20 s is on the mark, 21 s too slow (1.15 times is 20.7 s), 15 s too
// fast (18 / 1.15 is 15.65 s). A cut without a prediction is in none of them.
func TestWhatIsNotedOfAVisit(t *testing.T) {
	cut := func(took, predicted float64, result assess.Result) assess.ShownCut {
		c := assess.ShownCut{Cut: "c", Took: unit.Known(unit.Second(took)), Result: result}
		if predicted > 0 {
			c.Predicted = unit.Known(unit.Second(predicted))
		}
		return c
	}
	v := visit(t)
	spent(v, 14*60+29)
	v.Demonstrations = []assess.Demonstration{
		{Date: "2026-11-02", Outcome: assess.Quote, Against: assess.AgainstPrice, Cuts: []assess.ShownCut{cut(20, 18, assess.Poor), cut(21, 18, "")}},
		{Date: "2026-11-09", Outcome: assess.No, Against: assess.AgainstHabit, Cuts: []assess.ShownCut{cut(15, 18, assess.Good), cut(9, 0, "")}},
	}
	want := Noted{Minutes: 14, Against: 2, Slow: 1, Fit: 1, Fast: 1}
	if got := judge(t, v).Noted; got != want || got.Because() != assess.AgainstHabit {
		t.Errorf("got %+v", got)
	}
	v.Demonstrations[1].Cuts[0].Result = assess.Poor
	if !judge(t, v).Noted.Poor {
		t.Error("a poor cut is not seen")
	}
	v.Demonstrations = nil
	if got := judge(t, v).Noted; got != (Noted{Minutes: 14}) || got.Because() != "" {
		t.Errorf("got %+v", got)
	}
}

// 30 s and more are rounded up, under a second is no time, and what is not known
// is 0, not a minute.
func TestMinutes(t *testing.T) {
	for seconds, want := range map[float64]uint16{0: 0, 0.9: 0, 1: 1, 89: 1, 90: 2, 1e6: 16667} {
		v := assess.New("x", today)
		if spent(v, seconds); minutes(v.InterviewTime) != want {
			t.Errorf("%v s: %d min, want %d", seconds, minutes(v.InterviewTime), want)
		}
	}
	if minutes(nil) != 0 || minutes(&assess.InterviewTime{Sessions: 1}) != 0 {
		t.Error("not known is a time")
	}
}

// The index hands over what reading the file gives.
func TestNotedInTheIndex(t *testing.T) {
	v := visit(t)
	spent(v, 600)
	v.Demonstrations = []assess.Demonstration{{Date: "2026-11-09", Outcome: assess.No, Against: assess.AgainstSite, Cuts: []assess.ShownCut{
		{Cut: "c", Result: assess.Poor, Took: unit.Known(unit.Second(18)), Predicted: unit.Known(unit.Second(18))}}}}
	dir := folder(t, map[string]string{"a.json": encoded(t, v)})
	o := Options{Index: filepath.Join(t.TempDir(), "x.index")}
	for i := range 2 {
		if got := known(t, dir, o); got != i {
			t.Errorf("run %d: %d known", i, got)
		}
	}
	rows, _ := read(t, dir, o)
	if got, want := rows["a.json"].Noted, (Noted{Minutes: 10, Against: 4, Poor: true, Fit: 1}); got != want {
		t.Errorf("got %+v, want %+v", got, want)
	}
}

func TestNotedAsOneNumber(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		n := Noted{Minutes: rapid.Uint16().Draw(rt, "minutes"), Against: rapid.Uint8().Draw(rt, "against"), Poor: rapid.Bool().Draw(rt, "poor"),
			Slow: rapid.Uint8().Draw(rt, "slow"), Fit: rapid.Uint8().Draw(rt, "fit"), Fast: rapid.Uint8().Draw(rt, "fast")}
		if got := unpacked(n.packed()); got != n {
			rt.Fatalf("%+v became %+v", n, got)
		}
	})
}

// A time is compared as a number; what is not known is never less or more.
func TestFilterAndSortByWhatIsNoted(t *testing.T) {
	list := []Row{{Path: "1", Noted: Noted{Minutes: 9}}, {Path: "2"}, {Path: "3", Noted: Noted{Minutes: 20, Against: 1}}}
	for text, want := range map[string]string{"interview > 10": "3", "interview <= 20 min": "13", "interview = ?": "2", "interview != 9 min": "23", "interview ~ 20": "3",
		"against = price": "3", "against = ?": "12"} {
		keep, err := ParseWhere(text, today)
		if err != nil {
			t.Fatal(text, err)
		}
		got := ""
		for i := range list {
			if keep(&list[i]) {
				got += list[i].Path
			}
		}
		if got != want {
			t.Errorf("%s: %s, want %s", text, got, want)
		}
	}
	for _, bad := range []string{"interview > soon", "interview > -1", "interview > 70000", "interview > NaN"} {
		if _, err := ParseWhere(bad, today); err == nil || !strings.Contains(err.Error(), "such as 20 min") {
			t.Errorf("%s: %v", bad, err)
		}
	}
	order, _ := ParseOrder("-interview")
	var rows Rows
	rows.Add(&list[0], &list[1], &list[2])
	got := ""
	for r := range rows.Pick(Arrange(&rows, Find("", today), order, nil).Lines) {
		got += r.Path
	}
	if got != "312" {
		t.Errorf("sorted %s", got)
	}
}
