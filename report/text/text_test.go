package text

import (
	"strings"
	"testing"
	"unicode"

	"cutbrief/report"

	"pgregory.net/rapid"
)

// small is a brief with something in every part. All of it is invented.
func small() report.Brief {
	line := report.Line{Label: "Breaker", Value: "assumed 20 A", Why: "It limits what the system may draw.", Source: "29 CFR 1910.252(a)(3)", Trust: "published source"}
	return report.Brief{
		Title: "Cutting recommendation", Outcome: "recommended", Demo: "Invented data.",
		Who:  []report.Line{{Label: "Customer", Value: "Brook Farm"}, {Label: "Representative", Value: "T. Weaver"}},
		Need: "You cut mild steel.", Headline: "Demo 45", Because: []string{"Rated for 12 mm by hand."}, Second: "Second choice: Demo 50.",
		Bars:     []report.Bar{{Label: "Clean cut", Need: "needs 6 mm", Have: "gives 12 mm", Verdict: "met", NeedShare: 0.5, HaveShare: 1, Why: "rated ≥ needed", Source: "common practice, no source", Trust: "common practice, no source"}},
		Critical: "Low distortion", Evidence: []report.Line{{Label: "said", Value: "They say the pieces warp.", Why: "speaks for low distortion"}}, ShownBy: "Shown first.",
		Plan:    []report.Row{{Cut: "Straight cut", Piece: "2 mm stainless", Setting: "40 A, tip on the work", See: "a flat sheet", Because: "It shows what decides.", Beware: "A worn tip.", Takes: "3 min", Source: "common practice, no source"}},
		LeftOut: []report.Line{{Label: "Gouge out a weld", Why: "It needs gouging."}}, Shown: []report.Line{{Label: "Straight cut, shown", Value: "went well", Why: "new tip"}},
		Leaving: []report.Line{{Value: "Spare set packed."}}, OnSite: []report.Line{{Value: "Bench steady."}}, Working: []report.Reason{{Topic: "need", Title: "Thickness needed", Value: "rated 12 mm"}},
		PlanNote: []string{"One test cut."}, Bring: "Bring: clamps.", Confirm: []report.Line{line}, Flags: []string{"Bring lenses."}, Excluded: []report.Line{{Label: "Demo 25", Why: "too small."}},
		Cautions: []report.Line{{Value: "Fire watch at least 30 min.", Source: "29 CFR 1910.252(a)(2)(iii)(B)", Trust: "published source"}},
		Notes:    []string{"Mind the dog."}, Footing: []string{"Range: test."}, Dropped: []string{"Nothing else."},
	}
}

// want are texts of every part.
var want = []string{
	"Cutting recommendation", "Brook Farm", "Invented data.", "You cut mild steel.", "Demo 45", "Rated for 12 mm by hand.", "Second choice: Demo 50.",
	"needs 6 mm", "gives 12 mm", "rated ≥ needed", "Low distortion", "They say the pieces warp.", "Shown first.", "assumed 20 A", "It limits what", "Bring lenses.",
	"Straight cut", "2 mm stainless", "40 A, tip on the work", "a flat sheet", "It shows what decides.", "A worn tip.", "3 min", "Gouge out a weld: It needs gouging.", "Straight cut, shown: went well", "new tip",
	"Spare set packed.", "Bench steady.", "Thickness needed", "rated 12 mm", "One test cut.", "Bring: clamps.", "Demo 25", "too small.", "Fire watch", "Mind the dog.", "Range: test.", "Nothing else.",
}

func TestNothingIsLeftOut(t *testing.T) {
	plain, marked := Render(small(), 0), Render(small(), Markdown)
	for _, text := range want {
		if !strings.Contains(plain, text) {
			t.Errorf("%q is not in the text\n%s", text, plain)
		}
		if !strings.Contains(marked, text) {
			t.Errorf("%q is not in the Markdown\n%s", text, marked)
		}
	}
	if !strings.Contains(strings.Join(strings.Fields(plain), " "), "[29 CFR 1910.252(a)(2)(iii)(B); published source]") {
		t.Errorf("a caution without its source:\n%s", plain)
	}
}

// The bar for 6 mm is half as long as the bar for 12 mm.
func TestBarsAreToScale(t *testing.T) {
	out := Render(small(), 80)
	if need, have := strings.Count(out, "░"), strings.Count(out, "█"); need*2 != have || have == 0 {
		t.Errorf("%d blocks needed, %d given", need, have)
	}
}

func TestPartsThatAreEmptyAreLeftOut(t *testing.T) {
	out := Render(report.Brief{Title: "x", Outcome: "not-yet"}, 80)
	for _, head := range []string{"DEMONSTRATION", "NOTES", "REQUIREMENTS", "DECIDING", "TO CONFIRM", "STILL OPEN"} {
		if strings.Contains(out, head) {
			t.Errorf("%q stands over nothing:\n%s", head, out)
		}
	}
	if !strings.Contains(out, "NO RECOMMENDATION YET") {
		t.Errorf("does not say what it is:\n%s", out)
	}
}

// Whatever the texts hold, no line is wider than asked, and nothing a
// terminal could act on comes out.
func TestLinesFitAndAreHarmless(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.OneOf(rapid.String(), rapid.SampledFrom([]string{strings.Repeat("W", 300), "株式会社切断機械製作所株式会社切断機械製作所株式会社切断機械製作所", "\x1b[31mred\x1b[0m", "\u202eleft", "bad \xff", "a\tb\r\nc"}))
		b := small()
		b.Title, b.Headline, b.Need, b.Who[0].Value, b.Who[0].Label = text.Draw(t, "title"), text.Draw(t, "headline"), text.Draw(t, "need"), text.Draw(t, "who"), text.Draw(t, "label")
		b.Bars[0].Label, b.Bars[0].Need, b.Cautions[0].Value, b.Plan[0].See = text.Draw(t, "bar"), text.Draw(t, "figure"), text.Draw(t, "caution"), text.Draw(t, "see")
		width := rapid.IntRange(30, 120).Draw(t, "width")
		for l := range strings.Lines(Render(b, width)) {
			l = strings.TrimSuffix(l, "\n")
			if w := cells.StringWidth(l); w > width {
				t.Errorf("%d cells wide, %d asked: %q", w, width, l)
			}
			harmless(t, l)
		}
		for l := range strings.Lines(Render(b, Markdown)) {
			harmless(t, strings.TrimSuffix(l, "\n"))
		}
	})
}

func harmless(t *rapid.T, l string) {
	for _, r := range l {
		if unicode.IsControl(r) || unicode.Is(unicode.Cf, r) {
			t.Errorf("%U in %q", r, l)
		}
	}
}

// What was said reads in Markdown as it was said.
func TestMarkdownIsEscaped(t *testing.T) {
	for said, want := range map[string]string{
		"a *b* _c_ `d`": `a \*b\* \_c\_ ` + "\\`d\\`", "<b>x</b> & y": `&lt;b&gt;x&lt;/b&gt; &amp; y`, "# head": `\# head`, "1. first": `1\. first`,
		"- item": `\- item`, "a | b": `a \| b`, "[x](http://y)": `\[x\](http://y)`, "12 mm": "12 mm",
	} {
		if got := escaped(said); got != want {
			t.Errorf("%q: %q, want %q", said, got, want)
		}
	}
}
