package pdf

import (
	"bytes"
	"os/exec"
	"strconv"
	"strings"
	"testing"

	"cutbrief/assess/casebook"
	"cutbrief/report"
	"cutbrief/rules/system"

	"pgregory.net/rapid"
)

// extra is a brief with both lists and a derivation of n topics.
func extra(n int, text string) report.Brief {
	b := sample()
	line := report.Line{Value: text, Source: "29 CFR 1910.252(a)(2)", Trust: "published source"}
	for range n {
		b.Leaving, b.OnSite = append(b.Leaving, line), append(b.OnSite, line)
		b.Working = append(b.Working, report.Reason{Title: text, Value: text, Formula: text, Numbers: text, Source: text,
			Parts: []report.Reason{{Title: text, Value: text, Numbers: text, Trust: "as given"}}})
	}
	return b
}

// laidMore is what stands behind the page.
func laidMore(b report.Brief, p Paper) ([]*leaf, error) {
	f, err := newFaces()
	if err != nil {
		return nil, err
	}
	c := cleaner{faces: f}
	clean := cleaned(&c, b)
	return behind(f, &clean, p)
}

// By default the page is all there is.
func TestNothingBehindThePageByDefault(t *testing.T) {
	pages, err := laidMore(sample(), A4)
	if err != nil || len(pages) != 0 {
		t.Errorf("%d sheets behind an ordinary page, %v", len(pages), err)
	}
}

// Two lists of twenty lines stand on one sheet, the derivation on the next.
func TestListsTakeOneSheet(t *testing.T) {
	b := extra(20, "Extinguisher of a suitable kind, ready for use.")
	b.Working = nil
	for _, p := range papers {
		if pages, err := laidMore(b, p); err != nil || len(pages) != 1 {
			t.Errorf("%s: %d sheets, %v", p, len(pages), err)
		}
	}
}

// The lists of every demo visit stand on one sheet, on A4 and on Letter.
func TestListsOfDemoVisitsTakeOneSheet(t *testing.T) {
	for _, name := range casebook.DemoVisits() {
		v, _ := casebook.DemoVisit(name)
		b := report.Build(v, system.Demo(), report.Options{Checklist: true})
		for _, p := range papers {
			pages, err := laidMore(b, p)
			if err != nil || len(pages) != 1 {
				t.Fatalf("%s on %s: %d sheets, %v", name, p, len(pages), err)
			}
			for _, f := range faults(pages[0], p) {
				t.Errorf("%s on %s: %s", name, p, f)
			}
		}
	}
}

// Whatever is said, nothing runs out of the sheet, lies over another line or
// lacks a glyph, and no line is lost.
func TestMoreIsWithinTheSheet(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.OneOf(rapid.SampledFrom(hostile), rapid.String()).Draw(t, "text")
		n := rapid.IntRange(0, 12).Draw(t, "lines")
		p := rapid.SampledFrom(papers).Draw(t, "paper")
		b := extra(n, text)
		pages, err := laidMore(b, p)
		if err != nil {
			t.Fatal(err)
		}
		boxes := 0
		for _, pg := range pages {
			for _, f := range faults(pg, p) {
				t.Error(f)
			}
			for _, m := range pg.marks {
				if m.kind == boxMark {
					boxes++
				}
			}
		}
		if shown := strings.TrimSpace(text) != ""; shown && boxes != 2*n {
			f, _ := newFaces()
			c := cleaner{faces: f}
			if strings.TrimSpace(c.text(text)) != "" {
				t.Errorf("%d boxes for %d lines", boxes, 2*n)
			}
		}
	})
}

func TestPagesAsAReaderCountsThem(t *testing.T) {
	if _, err := exec.LookPath("pdfinfo"); err != nil {
		t.Skip("no pdfinfo here")
	}
	for n, want := range map[int]int{0: 1, 3: 3} {
		data, err := Render(extra(n, "Torch assembled, and tried once."), A4)
		if err != nil {
			t.Fatal(err)
		}
		cmd := exec.Command("pdfinfo", "-")
		cmd.Stdin = bytes.NewReader(data)
		out, err := cmd.Output()
		if err != nil || !strings.Contains(strings.Join(strings.Fields(string(out)), " "), "Pages: "+strconv.Itoa(want)) {
			t.Errorf("%d lines: want %d pages: %v\n%s", n, want, err, out)
		}
	}
}

// What the rep packs by is on the page of every demo visit that has a plan,
// whole.
func TestWhatToBringIsOnEveryPage(t *testing.T) {
	for _, name := range casebook.DemoVisits() {
		v, _ := casebook.DemoVisit(name)
		b := report.Build(v, system.Demo(), report.Options{})
		for _, p := range papers {
			pg, err := laid(b, p)
			if err != nil {
				t.Fatal(err)
			}
			if b.Bring != "" && !strings.Contains(textOf(pg), joinedText(b.Bring)) {
				t.Errorf("%s on %s: left out %v", name, p, pg.gone)
			}
		}
	}
}

// textOf is all text of a page without spaces, in the order it is written, and
// joinedText any other text like that.
func textOf(pg *leaf) string {
	var b strings.Builder
	for _, m := range pg.marks {
		b.WriteString(m.text)
	}
	return joinedText(b.String())
}

func joinedText(s string) string { return strings.Join(strings.Fields(s), "") }
