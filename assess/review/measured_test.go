package review

import (
	"context"
	"os"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"cutbrief/assess"
	"cutbrief/rules/metal"
	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// timed is an invented visit with cuts of 300 mm in 6 mm mild steel. The built-in
// 45 A system, rated 12 mm, is to take 18 s for each.
func timed(t *testing.T, with string, took ...unit.Second) *assess.Visit {
	t.Helper()
	v := visit(t)
	s := v.DemonstrationOn("2026-11-20")
	s.System = with
	for i, seconds := range took {
		s.Keep(assess.ShownCut{Cut: string(rune('a' + i)), Metal: metal.MildSteel, Thickness: unit.Known(unit.Millimetre(6)), Output: unit.Known(unit.Ampere(45)),
			Length: unit.Known(unit.Millimetre(300)), Took: unit.Known(seconds), Predicted: unit.Known(unit.Second(18))})
	}
	s.Keep(assess.ShownCut{Cut: "z", Name: "not timed"})
	return v
}

// By hand: 24 s for 18 s is 25 % slower. Five such cuts, in two visits, fit a
// rated thickness of 6 · 750 / 500 = 9 mm: above half of the clean maximum, 17.
func TestMeasured(t *testing.T) {
	dir := t.TempDir()
	odd := timed(t, "sold-no-more", 18)
	odd.Latest().Keep(assess.ShownCut{Cut: "y", Took: unit.Known(unit.Second(9))})
	for name, v := range map[string]*assess.Visit{"a.json": timed(t, "demo-45", 24, 24, 24), "b.json": timed(t, "demo-45", 24, 24), "c.json": odd, "d.json": visit(t)} {
		data, err := v.Encode()
		if err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join(dir, name), data, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	if err := os.WriteFile(filepath.Join(dir, "torn.json"), []byte("{"), 0o600); err != nil {
		t.Fatal(err)
	}
	var rows []*Row
	o := Options{Criteria: NewCriteria(system.Demo(), today), Now: func() time.Time { return time.Now().Add(time.Hour) }, Index: filepath.Join(dir, "an.index")}
	if _, err := Read(context.Background(), dir, o, func([]*Row) {}); err != nil { // the index keeps cuts too
		t.Fatal(err)
	}
	o.Timings = &Timings{}
	totals, err := Read(context.Background(), dir, o, func(batch []*Row) { rows = append(rows, batch...) })
	if err != nil || totals.Files != 5 || totals.Unread != 1 || totals.Known != 5 {
		t.Fatalf("%+v, %v", totals, err)
	}
	list := o.Timings.Measured(slices.Values(rows), system.Demo())
	if len(list) != 2 || list[0].System != "demo-45" || list[1].System != "sold-no-more" {
		t.Fatalf("%+v", list)
	}
	if e := list[0].Track.Row; e.Cuts != 5 || e.Visits != 2 || e.Median < -0.2501 || e.Median > -0.2499 {
		t.Errorf("%+v", list[0])
	}
	if got := list[0].Track.Rated.Or(0); got < 8.999 || got > 9.001 {
		t.Errorf("rated %v mm, want 9", got)
	}
	if m := list[1]; m.Track.All.Cuts != 1 || m.Unpredicted != 1 || m.Track.Row.Cuts != 0 {
		t.Errorf("%+v", m)
	}
	if got := o.Timings.Measured(slices.Values([]*Row(nil)), system.Demo()); len(got) != 0 {
		t.Errorf("no row is kept, and yet %+v", got)
	}
}
