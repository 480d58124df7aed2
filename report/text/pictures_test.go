package text

import (
	"strings"
	"testing"

	"cutbrief/report"

	"pgregory.net/rapid"
)

// speeds are those of an invented system: 1000 mm/min is the whole axis.
func speeds() *report.Speeds {
	mark := func(at, share float64, t, v, says string, yours bool) report.SpeedMark {
		return report.SpeedMark{SpeedPoint: report.SpeedPoint{At: at, Share: share}, Thickness: t, Speed: v, Says: says, Yours: yours}
	}
	return &report.Speeds{
		Title: "How fast Demo 45 cuts mild steel", CleanAt: 0.75, Clean: "clean up to 15 mm", Severed: "apart up to 20 mm", Rests: "Common practice, no source.",
		Marks: []report.SpeedMark{
			mark(0.25, 1, "5 mm", "1000 mm/min", "most days", true), mark(0.5, 0.5, "10 mm", "500 mm/min", "", false),
			mark(0.75, 0.25, "15 mm", "250 mm/min", "clean up to here", false), mark(1, 0.125, "20 mm", "125 mm/min", "severs up to here", false),
		},
	}
}

// timeline takes 3, 2 and 5 of 20 minutes.
func timeline() *report.Timeline {
	return &report.Timeline{Title: "The demonstration in minutes", Says: "Takes about 10 min.", Rests: "Common practice.", Steps: []report.TimelineStep{
		{Kind: report.StepCut, Number: 1, Name: "First cut", When: "0 to 3 min", From: 0, To: 0.15},
		{Kind: report.StepSetUp, Name: "change the plate", When: "3 to 5 min", From: 0.15, To: 0.25},
		{Kind: report.StepCut, Number: 2, Name: "Second cut", When: "5 to 10 min", From: 0.25, To: 0.5},
		{Kind: report.StepLeft, Name: "left for questions", When: "10 to 20 min", From: 0.5, To: 1},
	}}
}

// curves cross at 16 mm.
func curves() *report.Curves {
	likely := 0.8
	c := &report.Curves{Title: "What cutting costs", Up: "EUR a metre", Plasma: "Demo 45", Flame: "oxy-acetylene", Everyday: &report.CurveTick{At: 0.3, Label: "yours, 6 mm"},
		Crossing: report.CurveRange{Label: "crossing at about 16 mm", Here: "crossing", Likely: &likely}}
	for _, p := range []struct {
		at, plasma, flame float64
		t                 string
	}{{0.3, 0.25, 0.5, "6 mm"}, {0.8, 0.6, 0.6, "16 mm"}, {1, 1, 0.7, "20 mm"}} {
		point := report.CostPoint{Thickness: p.t, PlasmaShare: p.plasma, FlameShare: p.flame}
		point.Plasma.Shown[1], point.Flame.Shown[1] = "1.00", "2.00"
		c.Points = append(c.Points, report.CurvePoint{At: p.at, CostPoint: point})
	}
	return c
}

// drawing is a brief of pictures alone.
func drawing() report.Brief {
	return report.Brief{Title: "x", Plan: []report.Row{{Cut: "First cut"}, {Cut: "Second cut"}}, Speeds: speeds(), Timeline: timeline(), Cost: &report.Cost{Lines: []string{"It saves."}, Curves: curves()}}
}

// row is the line of a text that holds all of some words.
func row(t *testing.T, out string, words ...string) string {
	t.Helper()
	for l := range strings.Lines(out) {
		found := true
		for _, w := range words {
			found = found && strings.Contains(l, w)
		}
		if found {
			return l
		}
	}
	t.Fatalf("no line with %q in\n%s", words, out)
	return ""
}

// At half the speed a bar is half as long; beyond the clean edge it is light.
// The customer's own thickness is pointed at.
func TestSpeedsAreToScale(t *testing.T) {
	for _, width := range []int{60, 80, 120} {
		out := Render(drawing(), width)
		full := strings.Count(row(t, out, "5 mm", "1000 mm/min", "<- most days"), "█")
		if half := strings.Count(row(t, out, "10 mm", "500 mm/min"), "█"); full < 12 || half*2 < full-1 || half*2 > full+1 {
			t.Errorf("width %d: %d blocks and %d for half of it", width, full, half)
		}
		if l := row(t, out, "20 mm", "125 mm/min"); strings.Contains(l, "█") || !strings.Contains(l, "░") {
			t.Errorf("width %d: %q", width, l)
		}
		row(t, out, "█ clean up to 15 mm; ░ apart up to 20 mm.")
	}
}

// Each stretch begins where the one before it ends, and they are as long as
// they take: 3, 2, 5 and 10 of 20 minutes, in a room of 20 or 40 blocks
// worked by hand: 6, 4, 10 and 20 of 40.
func TestTimelineIsToScale(t *testing.T) {
	out := Render(drawing(), 120)
	end := -1
	for _, s := range []struct {
		words  []string
		block  rune
		blocks int
	}{{[]string{"0 to 3 min", "1. First cut"}, '█', 6}, {[]string{"3 to 5 min", "change the plate"}, '░', 4}, {[]string{"5 to 10 min", "2. Second cut"}, '█', 10}, {[]string{"10 to 20 min", "left for"}, '·', 20}} {
		l := []rune(row(t, out, s.words...))
		start, n := strings.IndexRune(string(l), s.block), strings.Count(string(l), string(s.block))
		start = len([]rune(string(l)[:start]))
		if n != s.blocks || end >= 0 && start != end {
			t.Errorf("%q: %d blocks from %d, want %d from %d", string(l), n, start, s.blocks, end)
		}
		end = start + n
	}
}

// Both ways of cutting have their bar at every thickness; what they cut and
// where the lines cross is said.
func TestCostsByThicknessAreDrawn(t *testing.T) {
	out := Render(drawing(), 80)
	plasma, flame := strings.Count(row(t, out, "6 mm", "<- yours, 6 mm"), "█"), 0
	lines := strings.Split(out, "\n")
	for i, l := range lines {
		if strings.Contains(l, "<- yours") {
			flame = strings.Count(lines[i+1], "░")
		}
	}
	if plasma*2 != flame || plasma == 0 {
		t.Errorf("%d blocks against %d", plasma, flame)
	}
	row(t, out, "16 mm", "<- crossing")
	row(t, out, "What cutting costs, EUR a metre:")
	row(t, out, "█ Demo 45; ░ oxy-acetylene; crossing at about 16 mm.")
}

// In Markdown the pictures are tables.
func TestPicturesAsTables(t *testing.T) {
	out := Render(drawing(), Markdown)
	for _, want := range []string{"| 5 mm | 1000 mm/min | most days |", "| 5 to 10 min | 2 | Second cut |", `| 16 mm | 1\.00 | 2\.00 | crossing |`, "Common practice, no source."} {
		if !strings.Contains(out, want) {
			t.Errorf("no %q in\n%s", want, out)
		}
	}
	if strings.ContainsAny(out, "█░·") {
		t.Error("blocks in Markdown")
	}
}

// Whatever the pictures hold, no line is wider than asked.

func TestPicturesFitTheirWidth(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.OneOf(rapid.SampledFrom([]string{"6 mm", "most days", strings.Repeat("W", 120), strings.Repeat("a long name ", 9), "株式会社切断機械製作所株式会社", "\x1b[31mred", ""}), rapid.String())
		share := rapid.OneOf(rapid.Float64(), rapid.Float64Range(-1, 2))
		b := drawing()
		for i := range b.Speeds.Marks {
			m := &b.Speeds.Marks[i]
			m.Thickness, m.Speed, m.Says, m.Share = text.Draw(t, "thickness"), text.Draw(t, "speed"), text.Draw(t, "says"), share.Draw(t, "share")
		}
		for i := range b.Timeline.Steps {
			s := &b.Timeline.Steps[i]
			s.Name, s.When, s.From, s.To = text.Draw(t, "name"), text.Draw(t, "when"), share.Draw(t, "from"), share.Draw(t, "to")
		}
		for i := range b.Cost.Curves.Points {
			p := &b.Cost.Curves.Points[i]
			p.Thickness, p.PlasmaShare, p.FlameShare = text.Draw(t, "thickness"), share.Draw(t, "plasma"), share.Draw(t, "flame")
		}
		width := rapid.IntRange(30, 120).Draw(t, "width")
		for l := range strings.Lines(Render(b, width)) {
			l = strings.TrimSuffix(l, "\n")
			if w := cells.StringWidth(l); w > width {
				t.Errorf("%d cells wide, %d asked: %q", w, width, l)
			}
			harmless(t, l)
		}
	})
}
