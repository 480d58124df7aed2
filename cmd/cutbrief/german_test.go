package main

import (
	"bytes"
	"fmt"
	"os/exec"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"cutbrief/assess"
	"cutbrief/assess/casebook"
	"cutbrief/report"
	"cutbrief/report/pdf"
	"cutbrief/report/text"
	"cutbrief/rules/message/catalog"
	"cutbrief/rules/system"
)

// onePage is a page of a PDF, not the tree of pages.
var onePage = []byte("/Type /Page\n")

// germanPages fails unless the German page of a visit is one page on either
// paper; it returns the brief and the A4 page.
func germanPages(t rapid.TB, v *assess.Visit) (report.Brief, []byte) {
	brief := report.Build(v, system.Demo(), report.Options{Words: catalog.For("de")})
	var a4 []byte
	for _, paper := range []pdf.Paper{pdf.Letter, pdf.A4} {
		page, err := pdf.Render(brief, paper)
		if err != nil {
			t.Fatalf("%s: %v", paper, err)
		}
		if n := bytes.Count(page, onePage); n != 1 {
			t.Fatalf("%s: %d pages", paper, n)
		}
		a4 = page
	}
	return brief, a4
}

// The German page, longer than the English one, still is one page, and says every
// caution to its end.
func TestTheGermanPageIsOnePageWithEveryCaution(t *testing.T) {
	for _, name := range casebook.DemoVisits() {
		v, _ := casebook.DemoVisit(name)
		brief, page := germanPages(t, v)
		saysEveryCaution(t, brief, page)
	}
	rapid.Check(t, func(t *rapid.T) {
		brief, page := germanPages(t, randomVisit(t))
		if rapid.IntRange(0, 4).Draw(t, "read back") == 0 { // it takes longer
			saysEveryCaution(t, brief, page)
		}
	})
}

func saysEveryCaution(t rapid.TB, brief report.Brief, page []byte) {
	reader, err := exec.LookPath("pdftotext")
	if err != nil {
		return
	}
	cmd := exec.Command(reader, "-raw", "-", "-")
	cmd.Stdin = bytes.NewReader(page)
	out, err := cmd.Output()
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range brief.Cautions {
		if !strings.Contains(joined(string(out)), joined(strings.TrimSuffix(c.Value, "."))) {
			t.Errorf("the page does not say %q", c.Value)
		}
	}
}

// A hostile name changes no word around it, in whatever language: it comes out as
// it went in, and the rest of the page is that of an honest name.
func TestNamesChangeNothingInGerman(t *testing.T) {
	pieces := []string{"mild steel", "; needs 10.5 mm", ". The manual decides. ", " and ", "{1}", `"`, "(", "]", ", most days", "Ö", "1,950", "not known", "none", "today: "}
	page := func(t rapid.TB, company string) string {
		v, _ := casebook.DemoVisit(casebook.DemoVisits()[0])
		q, _ := assess.Find(assess.FactCompany)
		a, _, err := v.Read(assess.Step{Question: q}, company)
		if err != nil {
			t.Fatal(err)
		}
		a.Note = company
		v.Set(a)
		brief := report.Build(v, system.Demo(), report.Options{Words: catalog.For("de")})
		return strings.ReplaceAll(fmt.Sprintf("%+v", brief.Who)+fmt.Sprintf("%+v", brief.Notes)+text.Render(brief, 1000), company, "NAME")
	}
	honest := page(t, "Xylograph")
	rapid.Check(t, func(t *rapid.T) {
		name := "x" + strings.Join(rapid.SliceOfN(rapid.SampledFrom(pieces), 1, 5).Draw(t, "name"), "")
		if hostile := page(t, strings.Join(strings.Fields(name), " ")); hostile != honest {
			t.Fatalf("%q changes the page", name)
		}
	})
}
