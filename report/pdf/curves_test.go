package pdf

import (
	"math"
	"strings"
	"testing"

	"cutbrief/report"

	"pgregory.net/rapid"
)

// curves are lines by thickness that cross; all of it is invented.
func curves() *report.Curves {
	from, likely, to := 0.5, 0.7, 0.9
	c := &report.Curves{
		Title: "What cutting mild steel costs", Up: "EUR a metre", Across: "mm thick", Plasma: "Demo 70", Flame: "oxy-acetylene",
		Ticks:    []report.CurveTick{{At: 0, Label: "0"}, {At: 0.5, Label: "10"}, {At: 1, Label: "20"}},
		UpTicks:  []report.CurveTick{{At: 0, Label: "0"}, {At: 0.25, Label: "2"}, {At: 0.5, Label: "4"}, {At: 0.75, Label: "6"}, {At: 1, Label: "8"}},
		Everyday: &report.CurveTick{At: 0.3, Label: "yours, 6 mm"},
		Crossing: report.CurveRange{Label: "crossing at about 14 mm (10 to 18 mm)", From: &from, Likely: &likely, To: &to},
	}
	for _, p := range [][3]float64{{0.2, 0.2, 0.7}, {0.5, 0.4, 0.65}, {0.7, 0.68, 0.68}, {1, 1, 0.75}} {
		c.Points = append(c.Points, report.CurvePoint{At: p[0], CostPoint: report.CostPoint{PlasmaShare: p[1], FlameShare: p[2]}})
	}
	return c
}

// longCurves have every text far over its room.
func longCurves(long string) *report.Curves {
	c := curves()
	c.Title, c.Up, c.Across, c.Plasma, c.Flame, c.Crossing.Label, c.Everyday.Label = long, long, long, long, long, long, long
	for i := range c.Ticks {
		c.Ticks[i].Label = long
	}
	for i := range c.UpTicks {
		c.UpTicks[i].Label = long
	}
	return c
}

// drawnCurves are lines through any places with any texts, or none.
func drawnCurves(t *rapid.T, text *rapid.Generator[string]) *report.Curves {
	if rapid.Bool().Draw(t, "no curves") {
		return nil
	}
	share := rapid.OneOf(rapid.Float64Range(-1, 2), rapid.SampledFrom([]float64{0, 1, math.NaN(), math.Inf(1), math.Inf(-1)}))
	maybe := rapid.Ptr(share, true)
	tick := rapid.Custom(func(t *rapid.T) report.CurveTick {
		return report.CurveTick{At: share.Draw(t, "at"), Label: text.Draw(t, "label")}
	})
	point := rapid.Custom(func(t *rapid.T) report.CurvePoint {
		return report.CurvePoint{At: share.Draw(t, "at"), CostPoint: report.CostPoint{PlasmaShare: share.Draw(t, "plasma"), FlameShare: share.Draw(t, "flame")}}
	})
	return &report.Curves{
		Title: text.Draw(t, "title"), Up: text.Draw(t, "up"), Across: text.Draw(t, "across"), Plasma: text.Draw(t, "plasma"), Flame: text.Draw(t, "flame"),
		Points: rapid.SliceOfN(point, 0, 6).Draw(t, "points"), Ticks: rapid.SliceOfN(tick, 0, 6).Draw(t, "ticks"),
		UpTicks: rapid.SliceOfN(tick, 0, 6).Draw(t, "up ticks"), Everyday: rapid.Ptr(tick, true).Draw(t, "everyday"),
		Crossing: report.CurveRange{Label: text.Draw(t, "crossing"), From: maybe.Draw(t, "from"), Likely: maybe.Draw(t, "likely"), To: maybe.Draw(t, "to")},
	}
}

// shortWithCurves leaves room on the page.
func shortWithCurves() report.Brief {
	b := withCost()
	b.Cost.Assumed, b.Cost.Curves = false, curves()
	b.Notes, b.Excluded, b.Plan, b.PlanNote = nil, nil, b.Plan[:2], nil
	b.Bars, b.Confirm = b.Bars[:3], b.Confirm[:1]
	return b
}

// kinds counts the marks of one kind, each piece of a line for itself.
func kinds(pg *leaf, k markKind) int {
	n := 0
	for _, m := range pg.marks {
		if m.kind == k {
			n += max(len(m.points)-1, 1)
		}
	}
	return n
}

// Where there is room both lines stand on the page, told apart without colour:
// one is solid and one in dashes, each three pieces and one in its name. The
// axes say what they count.
func TestCurvesWhereThereIsRoom(t *testing.T) {
	for _, p := range papers {
		b := shortWithCurves()
		onOnePage(t, b, p, "EUR a metre", "mm thick", "Demo 70", "oxy-acetylene", "yours, 6\u00a0mm", "crossing at about 14\u00a0mm (10 to 18\u00a0mm)")
		pg, err := laid(b, p)
		if err != nil {
			t.Fatal(err)
		}
		if solid, dashed := kinds(pg, lineMark), kinds(pg, dashMark); solid != 4 || dashed != 4 {
			t.Errorf("%s: %d solid and %d dashed pieces, want 4 of each", p, solid, dashed)
		}
	}
}

// The notes give way before the one picture of the proof does, and the page says
// where they are.
func TestNotesGiveWayBeforeThePicture(t *testing.T) {
	b := shortWithCurves()
	for n := range 60 {
		b.Notes = append(b.Notes, "A line of notes about the yard.")
		pg, err := laid(b, A4)
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range faults(pg, A4) {
			t.Error(f)
		}
		if len(pg.gone) == 0 {
			continue
		}
		if pg.gone[0].what != "notes" || kinds(pg, lineMark) == 0 || !onPage(pg, "On the sheet “Notes for the representative”: notes.") {
			t.Errorf("with %d notes: left out %v", n, pg.gone)
		}
		return
	}
	t.Error("nothing was ever left out")
}

// Behind the page there is always room, before the derivation.
func TestCurvesBehindThePage(t *testing.T) {
	b := extra(3, "Torch assembled, and tried once.")
	b.Cost, b.Pictures = &report.Cost{Lines: []string{"No clear saving."}, Curves: curves()}, true
	for _, p := range papers {
		pages, err := laidMore(b, p)
		if err != nil {
			t.Fatal(err)
		}
		last := pages[1] // after the checklists
		if kinds(last, lineMark) != 4 || kinds(last, dashMark) != 4 || !onPage(last, "What cutting mild steel costs") {
			t.Errorf("%s: no lines", p)
		}
		measure(last)
		for _, f := range faults(last, p) {
			t.Errorf("%s: %s", p, f)
		}
	}
}

// measure notes how wide each line of text is.
func measure(pg *leaf) {
	f, _ := newFaces()
	for i := range pg.marks {
		if m := &pg.marks[i]; m.kind == textMark {
			m.w = f.width(m.text, m.style)
		}
	}
}

// Whatever the pictures hold, they stay on a sheet behind the page too.
func TestAnyPicturesBehindThePage(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b, p := extra(1, "x"), rapid.SampledFrom(papers).Draw(t, "paper")
		text := rapid.OneOf(rapid.SampledFrom(hostile), rapid.String())
		b.Cost, b.Speeds, b.Timeline, b.Pictures = drawnCost(t, text), drawnSpeeds(t, text), drawnTimeline(t, text), true
		pages, err := laidMore(b, p)
		if err != nil {
			t.Fatal(err)
		}
		for _, pg := range pages {
			measure(pg)
			for _, f := range faults(pg, p) {
				t.Error(f)
			}
		}
	})
}

// In the file the one line has a dash pattern and the other has none.
func TestDashesAreInTheFile(t *testing.T) {
	out, err := render(shortWithCurves(), A4, false)
	if err != nil {
		t.Fatal(err)
	}
	// ISO 32000-1, 8.4.3.6: the operator d sets the dash pattern; 1.5 mm are
	// 4.25 pt and 1 mm is 2.83 pt.
	if text := string(out); !strings.Contains(text, "[4.25 2.83] 0.00 d") || !strings.Contains(text, "[] 0.00 d") {
		t.Error("no dash pattern, or none that ends")
	}
}
