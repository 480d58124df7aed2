package pdf

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"cutbrief/report"

	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"pgregory.net/rapid"
)

var papers = []Paper{A4, Letter}

// laid is the brief laid out as Render does it.
func laid(b report.Brief, p Paper) (*leaf, error) {
	f, err := newFaces()
	if err != nil {
		return nil, err
	}
	c := cleaner{faces: f}
	clean := cleaned(&c, b)
	pg, err := fit(f, &clean, p, c.said())
	for i := 0; err == nil && i < len(pg.marks); i++ {
		if m := &pg.marks[i]; m.kind == textMark {
			m.w = f.width(m.text, m.style)
		}
	}
	return pg, err
}

// faults lists what is wrong on a page: things outside the margins, lines of
// text over one another, runes without a glyph.
func faults(pg *leaf, p Paper) []string {
	var list []string
	width, height, _ := p.size()
	const slack = 0.05 // mm, what rounding in the file may move
	for _, m := range pg.marks {
		upper, lower := min(m.y, m.y+m.h), max(m.y, m.y+m.h) // a piece of a curve may rise
		if !(m.x >= sideMargin-slack && m.x+m.w <= width-sideMargin+slack && upper >= topMargin-slack && lower <= height-bottomMargin+slack) {
			list = append(list, fmt.Sprintf("outside the margins: %q at %.1f,%.1f to %.1f,%.1f", m.text, m.x, m.y, m.x+m.w, m.y+m.h))
		}
	}
	list = append(list, overlaps(pg)...)
	return append(list, glyphless(pg)...)
}

// overlaps compares every two lines of text. Lines may share their leading,
// which is a sixth of their height, but no more.
func overlaps(pg *leaf) []string {
	var list []string
	for i, a := range pg.marks {
		for _, b := range pg.marks[:i] {
			if a.kind != textMark || b.kind != textMark {
				continue
			}
			across := min(a.x+a.w, b.x+b.w) - max(a.x, b.x)
			down := min(a.y+a.h, b.y+b.h) - max(a.y, b.y)
			if across > 0.1 && down > 0.2*min(a.h, b.h) {
				list = append(list, fmt.Sprintf("%q lies over %q", a.text, b.text))
			}
		}
	}
	return list
}

// glyphless asks the font itself, apart from the code that measures.
func glyphless(pg *leaf) []string {
	var list []string
	var buf sfnt.Buffer
	regular, _ := sfnt.Parse(goregular.TTF)
	bold, _ := sfnt.Parse(gobold.TTF)
	for _, m := range pg.marks {
		f := regular
		if m.style.bold {
			f = bold
		}
		for _, r := range m.text {
			if i, err := f.GlyphIndex(&buf, r); err != nil || i == 0 {
				list = append(list, fmt.Sprintf("no glyph for %U in %q", r, m.text))
			}
		}
	}
	return list
}

func TestOrdinaryPage(t *testing.T) {
	for _, p := range papers {
		pg, err := laid(sample(), p)
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range faults(pg, p) {
			t.Errorf("%s: %s", p, f)
		}
		if pg.loss >= lossLines {
			t.Errorf("%s: something decisive is missing from an ordinary page: %v", p, pg.gone)
		}
	}
}

// A long note gives way before anything else does.
func TestNotesGiveWayFirst(t *testing.T) {
	b := sample()
	b.Excluded, b.Flags = nil, nil
	for i := range 40 {
		b.Notes = append(b.Notes, fmt.Sprintf("Line %d of a long note about the yard, the gate and the dog.", i))
	}
	pg, err := laid(b, A4)
	if err != nil {
		t.Fatal(err)
	}
	if len(pg.gone) != 1 || pg.gone[0].what != "notes" {
		t.Errorf("left out: %v, want the notes alone", pg.gone)
	}
	if !onPage(pg, "On the sheet “Notes for the representative”: notes.") {
		t.Error("the page does not say where the notes are")
	}
}

func onPage(pg *leaf, text string) bool {
	for _, m := range pg.marks {
		if strings.Contains(m.text, text) {
			return true
		}
	}
	return false
}

// What is left out is said, whatever it is.
func TestEveryCutIsSaid(t *testing.T) {
	b := sample()
	for range 6 {
		b.Cautions = append(b.Cautions, cautions()...)
		b.Confirm = append(b.Confirm, b.Confirm...)
	}
	pg, err := laid(b, Letter)
	if err != nil {
		t.Fatal(err)
	}
	if !onPage(pg, "cautions (") || !onPage(pg, "to confirm (") {
		t.Errorf("cuts not said: %v", pg.gone)
	}
	for _, f := range faults(pg, Letter) {
		t.Error(f)
	}
}

func TestReplacedCharactersAreSaid(t *testing.T) {
	b := sample()
	b.Who[0].Value = "株式会社 Łódź ☃"
	pg, err := laid(b, A4)
	if err != nil {
		t.Fatal(err)
	}
	if !onPage(pg, "????") || !onPage(pg, "Łódź") || !onPage(pg, "5 characters") || !onPage(pg, "who and when") {
		t.Error("replaced characters are not said")
	}
}

// hostile are texts that break careless layout: long words, other scripts,
// marks that turn the line, control characters, broken bytes.
var hostile = []string{
	"", " ", "x", strings.Repeat("W", 400), strings.Repeat("a very long answer ", 60), "Łódź, Žďár, Ærø, İzmir", "Слесарная мастерская «Север»",
	"株式会社切断機械製作所", "😀🔥👩‍🏭", "\u202egnp.exe\u202c", "\x00\x1b[31mred\x1b[0m", "bad \xff\xfe bytes \xe2\x82", "e\u0301 a\u0308", "tab\tline\nline\r\n",
	"((((\\\\))))", "12 mm × 1.5", "\u00a0\u00a0", "ﬁ ﬂ ½ ⅔ ≥ ≤ Ω",
}

func briefs() *rapid.Generator[report.Brief] {
	return rapid.Custom(func(t *rapid.T) report.Brief {
		text := rapid.OneOf(rapid.SampledFrom(hostile), rapid.String())
		texts := rapid.SliceOfN(text, 0, 30)
		line := rapid.Custom(func(t *rapid.T) report.Line {
			return report.Line{Label: text.Draw(t, "label"), Value: text.Draw(t, "value"), Why: text.Draw(t, "why"), Source: text.Draw(t, "source")}
		})
		lines := rapid.SliceOfN(line, 0, 30)
		bar := rapid.Custom(func(t *rapid.T) report.Bar {
			return report.Bar{Label: text.Draw(t, "label"), Need: text.Draw(t, "need"), Have: text.Draw(t, "have"), Verdict: text.Draw(t, "verdict"),
				NeedShare: rapid.Float64().Draw(t, "share"), HaveShare: rapid.Float64Range(0, 1).Draw(t, "share")}
		})
		row := rapid.Custom(func(t *rapid.T) report.Row {
			return report.Row{Cut: text.Draw(t, "cut"), Piece: text.Draw(t, "piece"), Setting: text.Draw(t, "setting"), See: text.Draw(t, "see")}
		})
		return report.Brief{
			Title: text.Draw(t, "title"), Outcome: text.Draw(t, "outcome"), Demo: text.Draw(t, "demo"), Date: time.Unix(rapid.Int64Range(-1, 4e9).Draw(t, "date"), 0),
			Who: lines.Draw(t, "who"), Need: text.Draw(t, "need"), Headline: text.Draw(t, "headline"), Because: texts.Draw(t, "because"),
			Bars: rapid.SliceOfN(bar, 0, 20).Draw(t, "bars"), Cost: drawnCost(t, text), Speeds: drawnSpeeds(t, text), Timeline: drawnTimeline(t, text), Second: text.Draw(t, "second"), Critical: text.Draw(t, "critical"), Evidence: lines.Draw(t, "evidence"),
			ShownBy: text.Draw(t, "shown by"), Plan: rapid.SliceOfN(row, 0, 12).Draw(t, "plan"), PlanNote: texts.Draw(t, "plan note"), Bring: text.Draw(t, "bring"), Confirm: lines.Draw(t, "confirm"),
			Flags: texts.Draw(t, "flags"), Excluded: lines.Draw(t, "excluded"), Cautions: rapid.SliceOfN(line, 0, 40).Draw(t, "cautions"),
			Notes: texts.Draw(t, "notes"), Footing: texts.Draw(t, "footing"), Dropped: texts.Draw(t, "dropped"),
		}
	})
}

// Whatever a brief holds, it becomes one page on which nothing runs out,
// overlaps or lacks a glyph.
func TestAnyBriefFitsOnePage(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b, p := briefs().Draw(t, "brief"), rapid.SampledFrom(papers).Draw(t, "paper")
		pg, err := laid(b, p)
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range faults(pg, p) {
			t.Error(f)
		}
	})
}

// The longest content there is: every part far over its room.
func TestLongestContentFits(t *testing.T) {
	long := strings.Repeat("Sehr lange Wörter wie Plasmaschneidanlagenvorführung ", 12)
	line := report.Line{Label: long, Value: long, Why: long, Source: long}
	b := report.Brief{Title: long, Outcome: "recommended", Demo: long, Need: long, Headline: long, Second: long, Critical: long, ShownBy: long, Bring: long}
	for range 60 {
		b.Who, b.Evidence, b.Confirm = append(b.Who, line), append(b.Evidence, line), append(b.Confirm, line)
		b.Excluded, b.Cautions = append(b.Excluded, line), append(b.Cautions, line)
		b.Because, b.PlanNote, b.Flags = append(b.Because, long), append(b.PlanNote, long), append(b.Flags, long)
		b.Notes, b.Footing, b.Dropped = append(b.Notes, long), append(b.Footing, long), append(b.Dropped, long)
		b.Cost = &report.Cost{Lines: []string{long, long, long}, Assumed: true, Curves: longCurves(long), Bars: []report.CostBar{{Label: long, Brief: long, Share: 1}, {Label: long, Brief: long, Share: 2}}}
		b.Bars = append(b.Bars, report.Bar{Label: long, Need: long, Have: long, Verdict: long, NeedShare: 1, HaveShare: 1})
		b.Plan = append(b.Plan, report.Row{Cut: long, Piece: long, Setting: long, See: long})
	}
	b.Speeds, b.Timeline = longPictures(long)
	for _, p := range papers {
		pg, err := laid(b, p)
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range faults(pg, p) {
			t.Errorf("%s: %s", p, f)
		}
	}
}

// Body text is at least 8.5 pt and nothing is under 7.5 pt.
func TestTypeIsLegible(t *testing.T) {
	for _, s := range []style{titleStyle, headlineStyle, headStyle, bodyStyle, strongStyle} {
		if s.size < 8.5 {
			t.Errorf("%v pt", s.size)
		}
	}
	for _, s := range []style{hugeStyle, bigStyle, bigBold} { // what we recommend, and why
		if s.size < 11 {
			t.Errorf("%v pt", s.size)
		}
	}
	if sideMargin < 12 || topMargin < 12 || bottomMargin < 12 {
		t.Error("margins under 12 mm")
	}
	if smallStyle.size < 7.5 || smallBold.size < 7.5 {
		t.Error("small type under 7.5 pt")
	}
}

// drawnCost is a part about cost of any texts, or none.
func drawnCost(t *rapid.T, text *rapid.Generator[string]) *report.Cost {
	if rapid.Bool().Draw(t, "no cost") {
		return nil
	}
	share := rapid.Float64Range(-1, 2)
	bar := rapid.Custom(func(t *rapid.T) report.CostBar {
		return report.CostBar{Label: text.Draw(t, "label"), Brief: text.Draw(t, "figure"), Share: share.Draw(t, "share")}
	})
	return &report.Cost{Lines: rapid.SliceOfN(text, 0, 3).Draw(t, "cost"), Bars: rapid.SliceOfN(bar, 0, 2).Draw(t, "cost bars"), Assumed: rapid.Bool().Draw(t, "assumed"),
		Curves: drawnCurves(t, text)}
}
