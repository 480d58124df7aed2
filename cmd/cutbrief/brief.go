package main

import (
	"fmt"
	"io"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"cutbrief/assess/store/atomicfile"
	"cutbrief/report"
	"cutbrief/rules/unit"
)

// briefOptions are the flags of brief as typed.
type briefOptions struct {
	format, out, paper, units string
	force                     bool
	with                      []string
}

// briefJob is what brief has to do, checked.
type briefJob struct {
	files  []string
	format format
	out    string // a path, or "-" for standard output
	paper  string
	style  unit.Style // "" leaves it to the visit
	force  bool
	with   report.Options // what comes behind the page
}

func (a *app) briefCommand() *cobra.Command {
	var o briefOptions
	c := &cobra.Command{
		Use:   "brief FILE...",
		Short: "Make the page of a saved visit: PDF, text, Markdown or JSON",
		Long: `brief makes the one-page recommendation of each visit named. "-" as FILE reads a visit
from standard input, "--out -" writes to standard output. The same input gives the
same bytes.

A PDF goes to a file in the current folder named after the visit, the other formats go
to standard output, unless --out names a file or a folder. Several visits give one page
each: one file each in a folder, one after the other in text, Markdown and JSON.

--with checklist adds what to check before leaving and at the site, --with working how
each number was reached; in a PDF on sheets behind the page. --with pictures adds a sheet
to a PDF with all pictures, to be looked at together: a full page has no room for them.
The working brings it too; text always has the pictures, and JSON their figures.`,
		Example: `  cutbrief brief visit.json
  cutbrief brief visit.json --paper letter --units in --out page.pdf
  cutbrief brief visit.json --format text
  cutbrief brief visit.json --with checklist
  cutbrief brief visit.json --with pictures
  cutbrief brief visit.json --with checklist,working --format text
  cutbrief brief visit.json another.json --out pages/
  cutbrief brief - --format markdown < visit.json > page.md
  cutbrief brief visit.json --format json --out page.json --force`,
		RunE: func(_ *cobra.Command, files []string) error {
			job, err := o.parse(files)
			if err != nil {
				return err
			}
			return a.brief(job)
		},
	}
	f := c.Flags()
	f.StringVar(&o.format, "format", "", "pdf, text, markdown or json (default: what --out ends in, else pdf)")
	f.StringVar(&o.out, "out", "", "`path` of the file or folder to write to; - is standard output")
	f.StringVar(&o.paper, "paper", "a4", "a4 or letter")
	f.StringVar(&o.units, "units", "", "mm or in (default: the visit's own)")
	f.BoolVar(&o.force, "force", false, "write over a file that exists")
	f.StringSliceVar(&o.with, "with", nil, "checklist, pictures, working: what to add behind the page")
	complete(c, "format", formatNames())
	complete(c, "paper", papers)
	complete(c, "units", []string{"mm", "in"})
	complete(c, "with", extras)
	return c
}

// papers are the sheets a page is made for.
var papers = []string{"a4", "letter"}

// parse checks the flags against each other.
func (o briefOptions) parse(files []string) (briefJob, error) {
	job := briefJob{files: files, out: o.out, force: o.force}
	if len(files) == 0 {
		return job, misuse("brief needs the file of a visit", "such as cutbrief brief visit.json; - reads standard input")
	}
	if i := slices.Index(files, "-"); i >= 0 && slices.Contains(files[i+1:], "-") {
		return job, misuse("standard input can be read only once", "name - once")
	}
	var err error
	if job.paper, err = paperOf(o.paper); err != nil {
		return job, err
	}
	if job.style, err = styleOf(o.units); err != nil {
		return job, err
	}
	if job.with, err = withOf(o.with); err != nil {
		return job, err
	}
	job.with.Style = job.style
	if job.format, err = formatOf(o.format, o.out); err != nil {
		return job, err
	}
	if job.out == "" {
		job.out = defaultOut(files, job.format)
	}
	return job, nil
}

// extras are what can be added behind the page.
var extras = []string{"checklist", "pictures", "working"}

// withOf reads --with.
func withOf(names []string) (report.Options, error) {
	var with report.Options
	for _, name := range names {
		switch strings.ToLower(strings.TrimSpace(name)) {
		case extras[0]:
			with.Checklist = true
		case extras[1]:
			with.Pictures = true
		case extras[2]:
			with.Working = true
		default:
			return with, misuse(fmt.Sprintf("--with %q is nothing we add", name), "one of "+strings.Join(extras, ", "))
		}
	}
	return with, nil
}

// paperOf reads --paper.
func paperOf(name string) (string, error) {
	paper := strings.ToLower(name)
	if !slices.Contains(papers, paper) {
		return "", misuse(fmt.Sprintf("--paper %q is not a sheet we print on", name), "one of "+strings.Join(papers, ", "))
	}
	return paper, nil
}

// styleOf reads --units; "" leaves it to the visit.
func styleOf(units string) (unit.Style, error) {
	if units == "" {
		return "", nil
	}
	style, err := unit.ParseStyle(units)
	if err != nil {
		return "", misuse(fmt.Sprintf("--units %q is neither mm nor in", units), "mm for millimetres, in for inches")
	}
	return style, nil
}

// defaultOut is where a brief goes when nobody says: a page to the current
// folder, anything else to standard output. A page from standard input has no
// name to take, so it goes on down the pipe.
func defaultOut(files []string, f format) string {
	if f != pdfFormat || slices.Equal(files, []string{"-"}) {
		return "-"
	}
	return "."
}

// brief makes the document and puts it where it belongs. Nothing is written
// before everything is made.
func (a *app) brief(job briefJob) error {
	targets, err := job.targets()
	if err != nil {
		return err
	}
	if job.format == pdfFormat && job.out == "-" && isTerminal(a.out) {
		return misuse("a PDF would only garble this terminal", "name a file with --out, or choose --format text")
	}
	briefs, err := a.briefs(job)
	if err != nil {
		return err
	}
	for i := range targets {
		t := &targets[i]
		if t.data, err = render(job.format, briefs[t.from:t.to], job.paper); err != nil {
			return fail(fmt.Errorf("%s: %w", strings.Join(job.files[t.from:t.to], ", "), err), "choose another --format, or shorten the notes")
		}
	}
	return a.deliver(targets, job.force)
}

// briefs builds the brief of every visit named.
func (a *app) briefs(job briefJob) ([]report.Brief, error) {
	offered, err := a.offered()
	if err != nil {
		return nil, err
	}
	if job.with.Prices, err = a.priceList(); err != nil {
		return nil, err
	}
	if job.with.Words, err = a.bookFor(job.format); err != nil {
		return nil, err
	}
	var briefs []report.Brief
	for _, file := range job.files {
		v, err := a.readVisit(file)
		if err != nil {
			return nil, err
		}
		briefs = append(briefs, report.Build(v, offered, job.with))
	}
	return briefs, nil
}

// deliver writes every document to standard output or to its file, whose path
// it then prints. What a program that was killed left in the folder goes first.
func (a *app) deliver(targets []target, force bool) error {
	swept := ""
	for _, t := range targets {
		if t.path == "-" {
			return put(a.out, t.data)
		}
		if dir := filepath.Dir(t.path); dir != swept {
			atomicfile.Sweep(dir)
			swept = dir
		}
		if err := writeFile(t.path, t.data, force); err != nil {
			return err
		}
		if err := put(a.out, []byte(tidy(t.path)+"\n")); err != nil {
			return err
		}
	}
	return nil
}

// put writes everything or says why not.
func put(w io.Writer, data []byte) error {
	if _, err := w.Write(data); err != nil {
		return fail(fmt.Errorf("write standard output: %w", err), "the reading end may have closed early")
	}
	return nil
}
