package main

import (
	"bytes"
	"slices"
	"strings"
	"testing"

	"cutbrief/report/export"
)

// Where a brief goes, and in which format, where nobody or somebody says.
func TestBriefGoesWhereItBelongs(t *testing.T) {
	for _, test := range []struct {
		name   string
		named  export.Format
		out    string
		file   string
		format export.Format
		path   string
	}{
		{"a page beside us", "", "", "v.json", export.FormatPDF, "v.pdf"},
		{"a page down the pipe", "", "", "-", export.FormatPDF, "-"},
		{"text is printed", "text", "", "v.json", export.FormatText, "-"},
		{"the ending says it", "", "x.md", "v.json", export.FormatMarkdown, "x.md"},
		{"the flag beats the ending", "pdf", "x.md", "v.json", export.FormatPDF, "x.md"},
	} {
		form := export.FormatOf(test.named, test.out)
		paths, err := briefPaths([]string{test.file}, form, test.out)
		if err != nil || form != test.format || !slices.Equal(paths, []string{test.path}) {
			t.Errorf("%s: got %s to %q, %v", test.name, form, paths, err)
		}
	}
}

func TestBriefPaths(t *testing.T) {
	dir := t.TempDir()
	if list, err := briefPaths([]string{"a/one.json", "b/two.json"}, export.FormatPDF, dir); err != nil || len(list) != 2 {
		t.Errorf("a folder: got %q, %v", list, err)
	}
	if list, err := briefPaths([]string{"a/one.json", "b/one.json"}, export.FormatPDF, dir); err == nil {
		t.Errorf("two visits, one name: got %q", list)
	}
	if list, err := briefPaths([]string{"a/one.json", "b/one.json"}, export.FormatPDF, "-"); err == nil {
		t.Errorf("two pages in one PDF: got %q", list)
	}
	if list, err := briefPaths([]string{"a/one.json", "b/one.json"}, export.FormatText, "-"); err != nil || len(list) != 1 {
		t.Errorf("one text: got %q, %v", list, err)
	}
}

// What the command line cannot mean is refused with a hint, before anything is
// read.
func TestWrongUsageHasAHint(t *testing.T) {
	for name, args := range map[string]string{
		"no file": "brief", "stdin twice": "brief - a.json -", "unknown sheet": "brief v.json --paper a5",
		"unknown format": "brief v.json --format docx", "unknown units": "brief v.json --units cm", "unknown extra": "brief v.json --with drawings",
	} {
		var out, errs bytes.Buffer
		w := fixedEnvironment()
		w.args, w.out, w.err = strings.Fields(args), &out, &errs
		status := (&app{environment: w}).execute()
		if status != exitUsage || out.Len() > 0 || !strings.Contains(errs.String(), "\nhint: ") {
			t.Errorf("%s: status %d, %s", name, status, &errs)
		}
	}
}
