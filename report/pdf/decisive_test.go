package pdf

import (
	"strings"
	"testing"

	"cutbrief/assess"
	"cutbrief/assess/casebook"
	"cutbrief/report"
	"cutbrief/rules"
	"cutbrief/rules/message"
	"cutbrief/rules/message/catalog"
	"cutbrief/rules/system"
)

// languages are those a page is printed in.
func languages() []*message.Catalog { return []*message.Catalog{nil, catalog.For("de")} }

// customers are the samples, all practice customers, and some made from a number.
func customers() map[string]*assess.Visit {
	list := map[string]*assess.Visit{}
	for _, name := range casebook.DemoVisits() {
		list[name], _ = casebook.DemoVisit(name)
	}
	for _, c := range casebook.Cases() {
		list["practice, "+c.Name] = c.Facts
	}
	for seed := range uint64(20) {
		if c, ok := casebook.Make(seed, 1+int(seed%5), system.Demo()); ok {
			list["made, "+c.Company()] = c.Facts
		}
	}
	return list
}

// decisive is what no page may lack: what is recommended and why, what is not
// met or borderline, what decides and the evidence, what is to be shown, brought
// and confirmed, and every caution.
func decisive(b *report.Brief) []string {
	list := append([]string{b.Headline, b.Need, b.Second, b.Critical, b.Bring}, b.Because...)
	for _, x := range b.Bars {
		if x.Verdict != b.Words.Print(message.ID(rules.Met).Message()) {
			list = append(list, x.Label, x.Need, x.Have, x.Verdict)
		}
	}
	for _, l := range b.Evidence {
		list = append(list, l.Value)
	}
	for _, l := range b.Confirm {
		list = append(list, joined(": ", l.Label, l.Value))
	}
	for _, r := range b.Plan {
		list = append(list, r.Cut, r.Piece)
	}
	if b.Cost != nil && len(b.Cost.Lines) > 0 {
		list = append(list, b.Cost.Lines[0])
	}
	for _, c := range b.Cautions {
		list = append(list, c.Value)
	}
	return append(list, b.Flags...)
}

// Nothing decisive is left out for any sample or practice customer, on either
// paper, in either language; no text ends in an ellipsis; and what is elsewhere
// takes one line.
func TestNothingDecisiveIsLeftOut(t *testing.T) {
	for name, v := range customers() {
		for _, words := range languages() {
			b := report.Build(v, system.Demo(), report.Options{Words: words})
			for _, p := range papers {
				pg, err := laid(b, p)
				if err != nil {
					t.Fatal(err)
				}
				text := textOf(pg)
				for _, want := range decisive(&b) {
					if !strings.Contains(text, joinedText(want)) {
						t.Errorf("%s, %s, %s: no %q", name, words.Tag(), p, want)
					}
				}
				if strings.Contains(text, ellipsis) || pg.loss >= lossLines {
					t.Errorf("%s, %s, %s: something is cut; left out: %v", name, words.Tag(), p, pg.gone)
				}
				for _, f := range faults(pg, p) {
					t.Errorf("%s, %s, %s: %s", name, words.Tag(), p, f)
				}
				onTheGrid(t, pg)
			}
		}
	}
}

// onTheGrid fails for a line of text whose baseline is not on the grid, half
// steps included; labels of pictures are where their points are.
func onTheGrid(t *testing.T, pg *leaf) {
	t.Helper()
	for _, m := range pg.marks {
		if rows := (m.y + m.h - topMargin) / pg.step * 2; m.kind == textMark && !near(rows, 0.05) && kinds(pg, lineMark) == 0 {
			t.Errorf("%q is off the grid, at row %.2f", m.text, rows/2)
		}
	}
}

// near reports whether a number is near to a whole one.
func near(v, by float64) bool {
	v -= float64(int(v))
	return v < by || v > 1-by
}

// What a page leaves out stands on the representative's sheets, which say that
// they are for nobody else.
func TestTheRepresentativeHasTheRest(t *testing.T) {
	for _, name := range casebook.DemoVisits() {
		v, _ := casebook.DemoVisit(name)
		for _, words := range languages() {
			b := report.Build(v, system.Demo(), report.Options{Words: words, Notes: true})
			pages, err := laidMore(b, A4)
			if err != nil {
				t.Fatal(err)
			}
			text := ""
			for _, pg := range pages {
				measure(pg)
				for _, f := range faults(pg, A4) {
					t.Errorf("%s, %s: %s", name, words.Tag(), f)
				}
				text += textOf(pg)
			}
			wants := append(append(append(decisiveButCautions(&b), b.Notes...), b.PlanNote...), b.ShownBy)
			for _, l := range append(append(append([]report.Line{}, b.Excluded...), b.LeftOut...), b.Objections...) {
				wants = append(wants, l.Label, l.Value, l.Why)
			}
			for _, r := range b.Plan {
				wants = append(wants, r.Setting, r.See, r.Because, r.Beware)
			}
			for _, x := range b.Bars {
				wants = append(wants, x.Label, x.Need, x.Have)
			}
			for _, want := range wants {
				if !strings.Contains(text, joinedText(want)) && want != string(rules.FallsShort) {
					t.Errorf("%s, %s: no %q", name, words.Tag(), want)
				}
			}
			private := joinedText(words.Print(message.New("For the representative only. Not to be handed to the customer.")))
			if !strings.Contains(textOf(pages[0]), private) || !strings.Contains(textOf(pages[len(pages)-1]), private) {
				t.Errorf("%s, %s: the sheet does not say whom it is for", name, words.Tag())
			}
			if pg, _ := laid(b, A4); strings.Contains(textOf(pg), private) {
				t.Errorf("%s, %s: the page itself says it is private", name, words.Tag())
			}
		}
	}
}

// decisiveButCautions leaves out what is printed on the page alone.
func decisiveButCautions(b *report.Brief) []string {
	bare := *b
	bare.Cautions, bare.Headline, bare.Need, bare.Second, bare.Because = nil, "", "", "", nil
	return decisive(&bare)
}
