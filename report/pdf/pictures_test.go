package pdf

import (
	"math"
	"slices"
	"strings"
	"testing"

	"cutbrief/report"
	"cutbrief/rules/message"

	"pgregory.net/rapid"
)

// speeds are those of an invented system: clean to three quarters of the axis.
func speeds() *report.Speeds {
	s := &report.Speeds{
		Title: "How fast Demo 70 cuts mild steel", Up: "mm/min", Across: "mm thick",
		Ticks:   []report.CurveTick{{At: 0, Label: "0"}, {At: 0.5, Label: "10"}, {At: 1, Label: "20"}},
		UpTicks: []report.CurveTick{{At: 0, Label: "0"}, {At: 0.5, Label: "500"}, {At: 1, Label: "1000"}},
		CleanAt: 0.75, Clean: "clean up to 15 mm", Severed: "apart up to 20 mm", Rests: "At full output, 70 A.",
	}
	for _, p := range [][2]float64{{0.1, 1}, {0.3, 0.8}, {0.5, 0.5}, {0.75, 0.25}, {1, 0.12}} {
		s.Line = append(s.Line, report.SpeedPoint{At: p[0], Share: p[1]})
	}
	s.Marks = []report.SpeedMark{
		{SpeedPoint: s.Line[1], Thickness: "6 mm", Speed: "800 mm/min", Says: "most days", Yours: true, Label: "most days, 6 mm: 800 mm/min"},
		{SpeedPoint: s.Line[2], Thickness: "10 mm", Speed: "500 mm/min", Says: "thickest clean cut", Yours: true, Label: "thickest clean cut, 10 mm: 500 mm/min"},
		{SpeedPoint: s.Line[3], Thickness: "15 mm", Speed: "250 mm/min", Says: "clean up to here"},
	}
	return s
}

// timeline is a demonstration of two cuts with a set-up between; it takes 10
// of 20 minutes.
func timeline() *report.Timeline {
	return &report.Timeline{
		Title: "The demonstration in minutes", Across: "minutes", GivenAt: 1, Says: "Takes about 10 min.", Rests: "Common practice.",
		Ticks: []report.CurveTick{{At: 0, Label: "0"}, {At: 0.5, Label: "10"}, {At: 1, Label: "20"}},
		Steps: []report.TimelineStep{
			{Kind: report.StepCut, Number: 1, Name: "First cut", When: "0 to 3 min", Takes: "3 min", From: 0, To: 0.15},
			{Kind: report.StepSetUp, Name: "change the plate", When: "3 to 5 min", Takes: "2 min", From: 0.15, To: 0.25},
			{Kind: report.StepCut, Number: 2, Name: "Second cut", When: "5 to 10 min", Takes: "5 min", From: 0.25, To: 0.5},
			{Kind: report.StepLeft, Name: "left for questions", When: "10 to 20 min", Takes: "10 min", From: 0.5, To: 1},
		},
	}
}

// longPictures have every text far over its room.
func longPictures(long string) (*report.Speeds, *report.Timeline) {
	s, t := speeds(), timeline()
	s.Title, s.Up, s.Across, s.Clean, s.Severed, s.Rests = long, long, long, long, long, long
	for i := range s.Marks {
		s.Marks[i].Label = long
	}
	for i := range s.Ticks {
		s.Ticks[i].Label, s.UpTicks[i].Label, t.Ticks[i].Label = long, long, long
	}
	t.Title, t.Across, t.Says, t.Rests = long, long, long, long
	for i := range t.Steps {
		t.Steps[i].Name, t.Steps[i].When, t.Steps[i].Takes = long, long, long
	}
	return s, t
}

// anyShare is a place on an axis or beside it, or no number.
var anyShare = rapid.OneOf(rapid.Float64Range(-1, 2), rapid.SampledFrom([]float64{0, 1, math.NaN(), math.Inf(1), math.Inf(-1)}))

func drawnTicks(t *rapid.T, text *rapid.Generator[string], name string) []report.CurveTick {
	return rapid.SliceOfN(rapid.Custom(func(t *rapid.T) report.CurveTick {
		return report.CurveTick{At: anyShare.Draw(t, "at"), Label: text.Draw(t, "label")}
	}), 0, 6).Draw(t, name)
}

// drawnSpeeds are a line through any places with any texts, or none.
func drawnSpeeds(t *rapid.T, text *rapid.Generator[string]) *report.Speeds {
	if rapid.Bool().Draw(t, "no speeds") {
		return nil
	}
	point := rapid.Custom(func(t *rapid.T) report.SpeedPoint {
		return report.SpeedPoint{At: anyShare.Draw(t, "at"), Share: anyShare.Draw(t, "share")}
	})
	mark := rapid.Custom(func(t *rapid.T) report.SpeedMark {
		return report.SpeedMark{SpeedPoint: point.Draw(t, "point"), Label: text.Draw(t, "label"), Yours: rapid.Bool().Draw(t, "yours")}
	})
	return &report.Speeds{
		Title: text.Draw(t, "title"), Up: text.Draw(t, "up"), Across: text.Draw(t, "across"), Clean: text.Draw(t, "clean"), Severed: text.Draw(t, "severed"),
		Rests: text.Draw(t, "rests"), CleanAt: anyShare.Draw(t, "clean at"), Line: rapid.SliceOfN(point, 0, 6).Draw(t, "line"),
		Marks: rapid.SliceOfN(mark, 0, 9).Draw(t, "marks"), Ticks: drawnTicks(t, text, "ticks"), UpTicks: drawnTicks(t, text, "up ticks"),
	}
}

// drawnTimeline is any demonstration in minutes, or none.
func drawnTimeline(t *rapid.T, text *rapid.Generator[string]) *report.Timeline {
	if rapid.Bool().Draw(t, "no timeline") {
		return nil
	}
	step := rapid.Custom(func(t *rapid.T) report.TimelineStep {
		return report.TimelineStep{
			Kind: rapid.SampledFrom([]report.StepKind{report.StepCut, report.StepSetUp, report.StepLeft, "other"}).Draw(t, "kind"), Number: rapid.IntRange(-1, 15).Draw(t, "number"),
			Name: text.Draw(t, "name"), When: text.Draw(t, "when"), Takes: text.Draw(t, "takes"),
		}
	})
	line := &report.Timeline{Title: text.Draw(t, "title"), Across: text.Draw(t, "across"), Says: text.Draw(t, "says"), Rests: text.Draw(t, "rests"),
		Ticks: drawnTicks(t, text, "ticks"), GivenAt: anyShare.Draw(t, "given"), Steps: rapid.SliceOfN(step, 0, 12).Draw(t, "steps")}
	at := 0.0 // stretches follow one another, as those of a plan do
	for i := range line.Steps {
		line.Steps[i].From = at
		at += rapid.Float64Range(0, 0.3).Draw(t, "takes")
		line.Steps[i].To = at
	}
	return line
}

// withPictures is a page with room for all pictures.
func withPictures() report.Brief {
	b := shortWithCurves()
	b.Speeds, b.Timeline, b.Cautions, b.Flags = speeds(), timeline(), b.Cautions[:6], nil
	b.Evidence, b.Because = b.Evidence[:1], b.Because[:1]
	return b
}

// Where there is room one picture stands in the proof, what cutting costs by
// thickness before how fast the system cuts, with the customer's own points; and
// the demonstration in minutes below its table.
func TestPicturesWhereThereIsRoom(t *testing.T) {
	for _, p := range papers {
		b := withPictures()
		onOnePage(t, b, p, "crossing at about", "EUR a metre", "1: 3\u00a0min", "2: 5\u00a0min", "left for questions, 10\u00a0min", "minutes")
		b.Cost = nil
		onOnePage(t, b, p, "How fast Demo 70 cuts mild steel", "mm/min", "most days, 6\u00a0mm: 800\u00a0mm/min", "thickest clean cut, 10\u00a0mm: 500\u00a0mm/min",
			"clean up to 15\u00a0mm", "apart up to 20\u00a0mm", "At full output, 70\u00a0A.")
	}
}

// The line of speeds is solid as long as the edge is clean, three pieces of it
// here, and in dashes beyond, one piece; each has one more in its name. A
// customer's own points are two filled squares.
func TestSpeedsAreToldApartWithoutColour(t *testing.T) {
	b := withPictures()
	b.Cost = nil
	pg, err := laid(b, A4)
	if err != nil {
		t.Fatal(err)
	}
	if solid, dashed := kinds(pg, lineMark), kinds(pg, dashMark); solid != 4 || dashed != 2 {
		t.Errorf("%d solid and %d dashed pieces, want 4 and 2", solid, dashed)
	}
	squares := 0
	for _, m := range pg.marks {
		if m.kind == fillMark && m.w == markSize && m.h == markSize {
			squares++
		}
	}
	if squares != 2 {
		t.Errorf("%d squares", squares)
	}
}

// Two points at one height do not put their labels over one another, and none
// is lost.
func TestLabelsOfNearPointsAreApart(t *testing.T) {
	b := withPictures()
	b.Cost = nil
	b.Speeds.Marks[1].SpeedPoint = report.SpeedPoint{At: 0.31, Share: 0.79}
	onOnePage(t, b, A4, "most days, 6\u00a0mm", "thickest clean cut, 10\u00a0mm")
}

// A label too long for the right of its point goes to the left, above the line,
// which is higher there than at the point itself.
func TestLongLabelsLieAboveTheLine(t *testing.T) {
	b := withPictures()
	b.Cost = nil
	b.Speeds.Marks[1].Label = "the thickest cut that has to come out clean, 10 mm: 500 mm/min"
	pg, err := laid(b, A4)
	if err != nil {
		t.Fatal(err)
	}
	var label mark
	squares := []mark{}
	for _, m := range pg.marks {
		if strings.HasPrefix(m.text, "the thickest cut") {
			label = m
		}
		if m.kind == fillMark && m.w == markSize && m.h == markSize {
			squares = append(squares, m)
		}
	}
	if len(squares) != 2 || label.text == "" {
		t.Fatalf("%d squares, label %q", len(squares), label.text)
	}
	point := squares[0] // the lower one is put first
	if label.x >= point.x || label.y+label.h > point.y+markSize/2-0.5 {
		t.Errorf("label at %.1f,%.1f to %.1f, point at %.1f,%.1f", label.x, label.y, label.y+label.h, point.x, point.y)
	}
}

// As the page fills both pictures go before anything decisive does, and the page
// says so.
func TestPicturesGoBeforeWords(t *testing.T) {
	b := withPictures()
	seen := map[int]bool{}
	for range 60 {
		b.Confirm = append(b.Confirm, report.Line{Label: "One more", Why: "to be confirmed."})
		b.Cautions = append(b.Cautions, report.Line{Value: "One more line of caution that takes a line of its own."})
		pg, err := laid(b, A4)
		if err != nil {
			t.Fatal(err)
		}
		on := 0
		for what, says := range map[message.ID]string{"the demonstration in minutes": "left for questions", "picture": "oxy-acetylene"} {
			if onPage(pg, says) {
				on++
			} else if !slices.Contains(pg.gone, gone{what: what}) {
				t.Fatalf("no %s, and nothing says so: %v", what, pg.gone)
			}
		}
		if pg.loss >= lossLines && on > 0 {
			t.Fatalf("%d pictures on the page, though it lacks %v", on, pg.gone)
		}
		seen[on] = true
	}
	if !seen[0] || !seen[2] {
		t.Errorf("numbers of pictures seen: %v", seen)
	}
}

// On demand all pictures stand on one sheet behind the page, with all their
// texts, and with the working they do too.
func TestPicturesOnASheet(t *testing.T) {
	b := sample()
	b.Speeds, b.Timeline, b.Cost, b.Pictures = speeds(), timeline(), &report.Cost{Lines: []string{"x"}, Curves: curves()}, true
	for _, p := range papers {
		pages, err := laidMore(b, p)
		if err != nil || len(pages) != 1 {
			t.Fatalf("%d sheets, %v", len(pages), err)
		}
		for _, want := range []string{"In pictures", "needs 12\u00a0mm", "most days, 6\u00a0mm: 800\u00a0mm/min", "crossing at about", "5 to 10\u00a0min: Second cut", "3 to 5\u00a0min: change the plate", "Common practice."} {
			if !onPage(pages[0], want) {
				t.Errorf("%s: no %q", p, want)
			}
		}
		measure(pages[0])
		for _, f := range faults(pages[0], p) {
			t.Errorf("%s: %s", p, f)
		}
	}
	b.Pictures = false
	if pages, _ := laidMore(b, A4); len(pages) != 0 {
		t.Errorf("%d sheets unasked", len(pages))
	}
}
