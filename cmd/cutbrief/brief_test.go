package main

import (
	"errors"
	"testing"

	"cutbrief/rules/unit"
)

func TestBriefParse(t *testing.T) {
	for _, test := range []struct {
		name   string
		o      briefOptions
		files  []string
		format format
		out    string
		style  unit.Style
	}{
		{"a page beside us", briefOptions{paper: "a4"}, []string{"v.json"}, pdfFormat, ".", ""},
		{"a page down the pipe", briefOptions{paper: "a4"}, []string{"-"}, pdfFormat, "-", ""},
		{"text is printed", briefOptions{paper: "a4", format: "text"}, []string{"v.json"}, textFormat, "-", ""},
		{"the ending says it", briefOptions{paper: "A4", out: "x.md"}, []string{"v.json"}, markdownFormat, "x.md", ""},
		{"the flag beats the ending", briefOptions{paper: "a4", out: "x.md", format: "PDF"}, []string{"v.json"}, pdfFormat, "x.md", ""},
		{"units", briefOptions{paper: "letter", units: "in"}, []string{"v.json"}, pdfFormat, ".", unit.Inch},
	} {
		job, err := test.o.parse(test.files)
		if err != nil || job.format != test.format || job.out != test.out || job.style != test.style {
			t.Errorf("%s: got %+v, %v", test.name, job, err)
		}
	}
}

func TestBriefParseRefuses(t *testing.T) {
	for name, test := range map[string]struct {
		o     briefOptions
		files []string
	}{
		"no file":        {briefOptions{paper: "a4"}, nil},
		"stdin twice":    {briefOptions{paper: "a4"}, []string{"-", "a.json", "-"}},
		"unknown sheet":  {briefOptions{paper: "a5"}, []string{"v.json"}},
		"unknown format": {briefOptions{paper: "a4", format: "html"}, []string{"v.json"}},
		"unknown units":  {briefOptions{paper: "a4", units: "cm"}, []string{"v.json"}},
	} {
		_, err := test.o.parse(test.files)
		var p *problem
		if !errors.As(err, &p) || p.status != wrongUsage || p.hint == "" {
			t.Errorf("%s: got %v, want wrong usage with a hint", name, err)
		}
	}
}

func TestTargets(t *testing.T) {
	dir := t.TempDir()
	job := briefJob{files: []string{"a/one.json", "b/two.json"}, format: pdfFormat, out: dir}
	list, err := job.targets()
	if err != nil || len(list) != 2 || list[1].from != 1 || list[1].to != 2 {
		t.Errorf("a folder: got %+v, %v", list, err)
	}
	job.files = []string{"a/one.json", "b/one.json"}
	if list, err = job.targets(); err == nil {
		t.Errorf("two visits, one name: got %+v", list)
	}
	job.out = "-"
	if list, err = job.targets(); err == nil {
		t.Errorf("two pages in one PDF: got %+v", list)
	}
	job.format = textFormat
	if list, err = job.targets(); err != nil || len(list) != 1 || list[0].to != 2 {
		t.Errorf("one text: got %+v, %v", list, err)
	}
}
