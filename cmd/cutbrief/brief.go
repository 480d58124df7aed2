package main

import (
	"os"
	"path/filepath"
	"slices"
	"strings"

	"cutbrief/assess/store"
	"cutbrief/report"
	"cutbrief/report/export"
	"cutbrief/report/html"
	"cutbrief/report/pdf"
	"cutbrief/report/text"
	"cutbrief/rules/message"
)

// brief makes the documents and puts them where they belong. Nothing is written
// before everything is made.
func brief(c *call) error {
	if i := slices.Index(c.args, "-"); i >= 0 && slices.Contains(c.args[i+1:], "-") {
		return misuse(message.ID("name - once").Message(), "standard input can only be read once")
	}
	form := export.FormatOf(c.form(), c.text("out"))
	if len(c.args) == 1 && c.args[0] != "-" && store.IsFolder(c.args[0]) {
		return c.briefFolder(c.args[0], form)
	}
	paths, err := briefPaths(c.args, form, c.text("out"))
	if err != nil {
		return err
	}
	if form == export.FormatPDF {
		if err := c.noTerminal(paths[0], "name a file with --out, or choose --format text"); err != nil {
			return err
		}
	}
	s, err := c.subject(form)
	if err != nil {
		return err
	}
	var briefs []report.Brief
	for _, file := range c.args {
		v, err := c.readVisit(file)
		if err != nil {
			return err
		}
		b, err := report.BuildFor(c.sheet(form), v, s.offered, s.options)
		if err != nil {
			return err
		}
		briefs = append(briefs, b)
	}
	var list []output
	for i, path := range paths {
		part, files := briefs, c.args
		if len(paths) > 1 {
			part, files = briefs[i:i+1], c.args[i:i+1]
		}
		made, err := render(form, part, c.choice("paper"))
		if err != nil {
			return message.WithHint(message.Errorf("{1}: {2}", message.Name(strings.Join(files, ", ")), err), "choose another --format, or shorten the notes")
		}
		list = append(list, output{path, made})
	}
	return c.deliver(list...)
}

// sheet is the paper that a format is printed on, "" if on none.
func (c *call) sheet(f export.Format) string {
	if f == export.FormatPDF {
		return c.choice("paper")
	}
	return ""
}

func verify(c *call) error {
	file := c.args[0]
	page, err := readPage(file)
	if err != nil {
		return message.WithHint(message.Errorf("read {1}: {2}", message.Name(file), store.Cause(err)), "name the file of a page: PDF, text, Markdown or JSON")
	}
	printed, coded := report.CheckCodeOn(page)
	if !coded {
		return message.WithHint(message.Errorf("{1} carries no check code", message.Name(file)), "one that does is made by: cutbrief brief FILE --with check-code")
	}
	s, err := c.subject(export.FormatText)
	if err != nil {
		return err
	}
	v, err := c.readVisit(c.args[1])
	if err != nil {
		return err
	}
	today, err := report.CheckCodeOf(v, s.offered, s.options, printed.Paper)
	if err != nil {
		return err
	}
	differ := printed.Differ(today)
	if len(differ) == 0 {
		return c.put(s.options.Words.Print(message.ID("This page is of this visit, and of the lists and rules in use today.").Message()) + "\n")
	}
	return message.WithHint(message.Errorf("the page is not what would come out today; what differs: {1}", message.Join("; ", differ...)), "to make it anew: cutbrief brief {1} --with check-code", shellName(c.args[1]))
}

// largestPage is far above any page, in bytes.
const largestPage = 16 << 20

// readPage reads a page as a file: a pipe or a device is none.
func readPage(file string) ([]byte, error) {
	info, err := os.Stat(file)
	switch {
	case err != nil:
		return nil, err
	case !info.Mode().IsRegular() || info.Size() > largestPage:
		return nil, message.Errorf("it is not a page")
	}
	return os.ReadFile(file)
}

// briefPaths says where the documents of some visits go: one file for each in a
// folder, else all of them in one, and a PDF holds one page. Where nobody says, a
// page goes to the current folder and anything else to standard output; a page
// from standard input has no name to take, and goes on down the pipe.
func briefPaths(files []string, f export.Format, out string) ([]string, error) {
	switch {
	case out == "" && (f != export.FormatPDF || slices.Equal(files, []string{"-"})):
		out = "-"
	case out == "":
		out = "."
	}
	if out == "-" || !store.IsFolder(out) {
		if len(files) > 1 && f == export.FormatPDF {
			return nil, misuse(message.ID("name a folder in --out to get one file for each").Message(), "a PDF holds the page of one visit")
		}
		if len(files) > 1 && f == export.FormatHTML {
			return nil, misuse(message.ID("name a folder in --out to get one file for each").Message(), "a web page holds one visit")
		}
		return []string{out}, nil
	}
	var paths []string
	taken := map[string]string{}
	for _, file := range files {
		path := filepath.Join(out, export.NameAfter(file, f))
		alike := store.Alike(path)
		if other, ok := taken[alike]; ok {
			return nil, misuse(message.ID("name them one at a time with --out").Message(), "{1} and {2} would both be written to {3}", message.Name(other), message.Name(file), message.Name(path))
		}
		taken[alike] = file
		paths = append(paths, path)
	}
	return paths, nil
}

// render writes briefs in one document. A PDF and a web page take exactly one.
func render(f export.Format, briefs []report.Brief, paper string) ([]byte, error) {
	switch f {
	case export.FormatPDF:
		return pdf.Render(briefs[0], pdf.Paper(paper))
	case export.FormatHTML:
		return html.Render(briefs[0])
	case export.FormatJSON:
		return export.Briefs(briefs)
	}
	var parts []string
	for _, b := range briefs {
		parts = append(parts, text.Render(b, f.Width()))
	}
	return []byte(strings.Join(parts, text.Break)), nil
}
