package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"cutbrief/assess/casebook"
	"cutbrief/report/export"
)

// folderOf writes n invented visits into folders of 500, and one file that is none.
func folderOf(t testing.TB, n int) string {
	t.Helper()
	dir := t.TempDir()
	for i := range n {
		names := casebook.DemoVisits()
		v, _ := casebook.DemoVisit(names[i%len(names)])
		data, err := v.Encode()
		if err != nil {
			t.Fatal(err)
		}
		below := filepath.Join(dir, fmt.Sprintf("month-%d", i/500))
		os.MkdirAll(below, 0o700)
		if err := os.WriteFile(filepath.Join(below, fmt.Sprintf("visit-%d.json", i)), data, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	os.WriteFile(filepath.Join(dir, "broken.json"), []byte("{"), 0o600)
	return dir
}

// pagesOf runs brief over a folder and returns what it printed.
func pagesOf(t testing.TB, dir string, args ...string) (out, errs string, failed bool) {
	t.Helper()
	var stdout, stderr bytes.Buffer
	e := fixedEnvironment()
	e.args, e.in, e.out, e.err = append([]string{"brief", dir}, args...), nil, &stdout, &stderr
	e.getenv = func(string) string { return "" }
	failed = run(e) != exitDone
	return stdout.String(), stderr.String(), failed
}

// A folder gives one page a visit, whatever the depth; what is no visit is named,
// and the rest is made.
func TestAFolderGivesAPageEach(t *testing.T) {
	dir, pages := folderOf(t, 12), t.TempDir()
	out, errs, failed := pagesOf(t, dir, "--out", pages)
	made, _ := filepath.Glob(filepath.Join(pages, "*.pdf"))
	if !failed || len(made) != 12 || !strings.Contains(out, "12 of 13") || !strings.Contains(errs, "broken.json") {
		t.Errorf("%d pages, failed %v:\n%s%s", len(made), failed, out, errs)
	}
	if _, errs, failed := pagesOf(t, dir, "--out", pages); !failed || strings.Count(errs, "the file exists already") != 12 {
		t.Errorf("a second time: %v\n%s", failed, errs)
	}
	if _, errs, failed := pagesOf(t, dir); !failed || !strings.Contains(errs, "--out DIR") {
		t.Errorf("without --out: %v\n%s", failed, errs)
	}
}

// Two files whose ways have the same name get a page each.
func TestPagesBelowAreApart(t *testing.T) {
	got := export.PagesBelow("d", "out", []string{"d/a-b.json", "d/a/b.json"}, export.FormatPDF)
	if got["d/a-b.json"] != filepath.Join("out", "a-b.pdf") || got["d/a/b.json"] != filepath.Join("out", "a-b (2).pdf") {
		t.Error(got)
	}
}

// The aim is 2,000 pages a minute on two processors, 30 ms each.
func BenchmarkFolder(b *testing.B) {
	dir := folderOf(b, 1000)
	for b.Loop() {
		pagesOf(b, dir, "--out", b.TempDir(), "--force")
	}
	b.ReportMetric(1000*float64(b.N)/b.Elapsed().Minutes(), "pages/min")
}
