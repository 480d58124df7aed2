package main

import (
	"bytes"
	"slices"
	"strings"
	"testing"
)

// Where a brief goes, and in which format, where nobody or somebody says.
func TestBriefGoesWhereItBelongs(t *testing.T) {
	for _, test := range []struct {
		name   string
		named  format
		out    string
		file   string
		format format
		path   string
	}{
		{"a page beside us", "", "", "v.json", pdfFormat, "v.pdf"},
		{"a page down the pipe", "", "", "-", pdfFormat, "-"},
		{"text is printed", "text", "", "v.json", textFormat, "-"},
		{"the ending says it", "", "x.md", "v.json", markdownFormat, "x.md"},
		{"the flag beats the ending", "pdf", "x.md", "v.json", pdfFormat, "x.md"},
	} {
		form := formatOf(test.named, test.out)
		paths, err := briefPaths([]string{test.file}, form, test.out)
		if err != nil || form != test.format || !slices.Equal(paths, []string{test.path}) {
			t.Errorf("%s: got %s to %q, %v", test.name, form, paths, err)
		}
	}
}

func TestBriefPaths(t *testing.T) {
	dir := t.TempDir()
	if list, err := briefPaths([]string{"a/one.json", "b/two.json"}, pdfFormat, dir); err != nil || len(list) != 2 {
		t.Errorf("a folder: got %q, %v", list, err)
	}
	if list, err := briefPaths([]string{"a/one.json", "b/one.json"}, pdfFormat, dir); err == nil {
		t.Errorf("two visits, one name: got %q", list)
	}
	if list, err := briefPaths([]string{"a/one.json", "b/one.json"}, pdfFormat, "-"); err == nil {
		t.Errorf("two pages in one PDF: got %q", list)
	}
	if list, err := briefPaths([]string{"a/one.json", "b/one.json"}, textFormat, "-"); err != nil || len(list) != 1 {
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
