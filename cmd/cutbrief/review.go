package main

import (
	"bytes"
	"cmp"
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"text/tabwriter"
	"time"

	"github.com/spf13/cobra"

	"cutbrief/assess/review"
	"cutbrief/report/table"
	"cutbrief/rules/system"
)

// The formats a review alone can take.
const (
	tableFormat  format = "table"
	ndjsonFormat format = "ndjson"
)

// reviewFormats are the forms a review can take.
var reviewFormats = []format{tableFormat, csvFormat, jsonFormat, ndjsonFormat, markdownFormat, pdfFormat}

// reviewOptions are the flags of review as typed.
type reviewOptions struct {
	format, where, sort, fields, by string
	out, paper                      string
	measured, tally, quote, force   bool
}

// reviewJob is what review has to do, checked.
type reviewJob struct {
	dir    string
	format format
	where  review.Where
	order  review.Order
	fields []review.Field
	chosen bool          // the fields were named
	by     *review.Field // count by this, in place of listing
	tally  bool          // count as a whole
	quote  bool          // with the words noted
	out    string        // where a page goes
	paper  string
	force  bool

	timings *review.Timings // hold timed cuts against predictions, in place of listing
}

func (a *app) reviewCommand() *cobra.Command {
	var o reviewOptions
	c := &cobra.Command{
		Use:   "review [DIR]",
		Short: "Review a folder of visits: what is waiting, what needs a second look",
		Long:  reviewHelp(),
		Example: `  cutbrief review visits
  cutbrief review visits --where 'verdict = open and thickest > 10 mm' --sort company
  cutbrief review visits --where 'flags != ?' --fields date,company,flags,reasons
  cutbrief review visits --tally
  cutbrief review visits --by critical
  cutbrief review visits --format pdf --by rep --out team.pdf
  cutbrief review visits --measured
  cutbrief review visits --format csv > visits.csv
  cutbrief review visits --format ndjson --fields rep,verdict,unanswered`,
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) > 1 {
				return misuse("review takes one folder", "such as cutbrief review visits")
			}
			return nil
		},
		RunE: func(c *cobra.Command, args []string) error {
			job, err := a.reviewJob(o, args)
			if err != nil {
				return err
			}
			if job.listed() && !c.Flags().Changed("format") && !a.wantsPlain() {
				return a.reviewOnScreen(c.Context(), job, o)
			}
			return a.review(c.Context(), job)
		},
	}
	f := c.Flags()
	f.StringVar(&o.format, "format", string(tableFormat), strings.Join(namesOf(reviewFormats), ", "))
	f.StringVar(&o.where, "where", "", "keep only the rows this holds for, such as 'verdict = open'")
	f.StringVar(&o.sort, "sort", "-date", "fields to sort by, with a comma between; a minus puts the largest first")
	f.StringVar(&o.fields, "fields", "", "fields to show, with a comma between")
	f.StringVar(&o.by, "by", "", "count by one `field` in place of a list: "+strings.Join(countable, ", "))
	f.BoolVar(&o.tally, "tally", false, "count all visits in place of a list, in bars")
	f.BoolVar(&o.quote, "quote", false, "with --tally: quote what was noted where the answer was no")
	f.StringVar(&o.out, "out", "", "`path` of the page of --format pdf; - is standard output (default: team.pdf here)")
	f.StringVar(&o.paper, "paper", "a4", "sheet of --format pdf: a4 or letter")
	f.BoolVar(&o.force, "force", false, "write over a page that exists")
	f.BoolVar(&o.measured, "measured", false, "hold the cuts timed in demonstrations against what was predicted")
	complete(c, "format", namesOf(reviewFormats))
	complete(c, "by", countable)
	complete(c, "paper", papers)
	return c
}

// listed reports a job that a list to move in can do: nothing is counted, and no
// fields are named.
func (job reviewJob) listed() bool {
	return job.by == nil && !job.tally && job.timings == nil && !job.chosen
}

// countable are the fields that visits are counted by.
var countable = []string{"rep", "system", "critical", "metals", "month", "verdict"}

// reviewHelp is the one page about filters, fields and flags.
func reviewHelp() string {
	var b bytes.Buffer
	b.WriteString(`review reads every visit below a folder (by default the one visits are kept in), and
shows a line for each: what was recommended, how it stands by today's rules and range,
and what needs a second look. On a terminal it opens a list to move in, unless --format
or --fields is given; / filters it by words or by a filter as below. No file is hidden:
one that cannot be read is a line with the reason. What was worked out is kept in your
cache folder, and is worked out again for a file that changed; the index there can be
deleted at any time.

On a terminal a table fits its width: long texts are shortened, then columns are left
out, first metals, critical, due, outcome, rep, thickest, system and date; fields that
you name are only shortened. In a pipe or a file it is whole; CSV and JSON always are.

With --tally it counts in place of listing, in bars: how visits stand and how they ended,
by what decides and by system, what weighed most where the answer was no, what needs a
second look, which questions stay open, the time of an interview where it is known, and
timed cuts against their predictions. --by counts the same by one field, alone or with
--tally. --format pdf makes one page of it. A count has its base beside it, and no
percentage of five or fewer. Reps are named only with --by rep. What was noted in words
is quoted only with --quote. In the list on a terminal, t shows the same.

With --measured it holds the cuts timed in demonstrations against their predictions,
system by system: the median, and how far they lie apart. From five cuts that speak of
a system's row on, it says whether the row can stand: cuts in mild steel, predicted by
the row as it is today, below the speed of the hand. A median within 15 % of the time,
as at the bench, can. If not, it names the rated thickness that would fit. It changes
nothing. In the list on a terminal, m shows the same.

A filter compares fields with values:

  verdict = open and rep = "Runa Feltham" and thickest > 10 mm
  not (outcome = order or outcome = no) and due < today
  flags = differs or company ~ farm

  = != < <= > >=   as usual; text and words only with = and !=
  ~                holds the text
  ?                not known: outcome = ?   (not known is never less or more)
  and or not ( )   "and" binds closer than "or"

Of a list, such as metals or flags, = asks whether one of its words is the value. Put
a value that holds and, or, ? or a parenthesis in double quotes, and double a quote
inside them. Capitals do not matter. A bare thickness is in mm.

Fields:
`)
	t := tabwriter.NewWriter(&b, 0, 0, 2, ' ', 0)
	for _, f := range review.Fields() {
		fmt.Fprintf(t, "  %s\t%s\n", f.ID, f.Says)
	}
	t.Flush()
	b.WriteString("\nFlags:\n")
	for _, k := range review.FlagKinds() {
		fmt.Fprintf(t, "  %s\t%s\n", k.ID, k.Rule)
	}
	t.Flush()
	b.WriteString("\nCSV has an apostrophe before a cell that a spreadsheet could take for a formula.")
	return b.String()
}

// reviewJob checks the flags.
func (a *app) reviewJob(o reviewOptions, args []string) (job reviewJob, err error) {
	if job.format, err = among(reviewFormats, o.format); err != nil {
		return job, err
	}
	if job.where, err = review.ParseWhere(o.where, a.now()); err != nil {
		return job, misuse("--where: "+err.Error(), "fields, comparisons and examples: cutbrief review --help")
	}
	if job.order, err = review.ParseOrder(o.sort); err != nil {
		return job, misuse("--sort: "+err.Error(), "such as --sort -date,company")
	}
	if job.tally, err = o.tallied(job.format); err != nil {
		return job, err
	}
	if job.paper, err = paperOf(o.paper); err != nil {
		return job, err
	}
	job.quote, job.force, job.out = o.quote, o.force, cmp.Or(o.out, "team.pdf")
	job.fields, job.chosen = review.UsualFields(), o.fields != ""
	if o.fields != "" {
		if job.fields, err = review.ParseFields(o.fields); err != nil {
			return job, misuse("--fields: "+err.Error(), "such as --fields date,company,verdict")
		}
	}
	if o.by != "" {
		if job.by, err = countedBy(o.by, job.format); err != nil {
			return job, err
		}
	}
	if o.measured {
		if err = o.measurable(job.format); err != nil {
			return job, err
		}
		job.timings = &review.Timings{}
	}
	if len(args) == 1 {
		job.dir = args[0]
		return job, nil
	}
	job.dir, err = a.visitsDir("")
	return job, err
}

// countedBy reads --by.
func countedBy(name string, form format) (*review.Field, error) {
	f, known := review.FindField(name)
	if !known || !slices.Contains(countable, f.ID) {
		return nil, misuse(fmt.Sprintf("--by %q is not a field visits are counted by", name), "one of "+strings.Join(countable, ", "))
	}
	if form != tableFormat && form != jsonFormat && form != pdfFormat {
		return nil, misuse(fmt.Sprintf("--by is not written as %s", form), "choose --format table, json or pdf")
	}
	return &f, nil
}

// review reads the folder and writes what is asked for.
func (a *app) review(ctx context.Context, job reviewJob) error {
	s, err := a.reviewed(ctx, job)
	if err != nil {
		return err
	}
	if job.format == pdfFormat {
		return a.teamPage(job, s)
	}
	write := job.write
	if job.by != nil || job.tally {
		write = func(w io.Writer, s table.Sheet) error { return a.tally(w, job, s) }
	}
	if job.timings != nil {
		offered, err := a.offered()
		if err != nil {
			return err
		}
		write = job.measuredBy(offered)
	}
	if err := write(a.out, s); err != nil {
		return fail(fmt.Errorf("write standard output: %w", err), "the reading end may have closed early")
	}
	return nil
}

func (job reviewJob) write(w io.Writer, s table.Sheet) error {
	switch job.format {
	case csvFormat:
		return s.CSV(w)
	case jsonFormat:
		return s.JSON(w)
	case ndjsonFormat:
		return s.NDJSON(w)
	case markdownFormat:
		return s.Markdown(w)
	}
	return s.Text(w)
}

// reviewed reads the folder and picks the rows asked for, and shows how far it is.
func (a *app) reviewed(ctx context.Context, job reviewJob) (table.Sheet, error) {
	offered, err := a.offered()
	if err != nil {
		return table.Sheet{}, err
	}
	progress := a.progress()
	s, err := a.readRows(ctx, job, offered, progress)
	progress(-1)
	if err != nil {
		return s, fail(fmt.Errorf("read %s: %w", job.dir, reason(err)), "%s", folderHint(err))
	}
	return s, nil
}

// readRows reads the folder and picks the rows asked for. It tells how many files
// are read.
func (a *app) readRows(ctx context.Context, job reviewJob, offered system.Range, tell func(int)) (table.Sheet, error) {
	o := a.reading(job.dir, review.NewBench(offered, a.now()))
	o.Timings = job.timings
	rows := &review.Rows{}
	totals, err := readFolder(ctx, job.dir, o, func(batch []*review.Row) {
		rows.Add(batch...)
		tell(rows.Len())
	})
	if err != nil {
		return table.Sheet{}, err
	}
	totals.Invented = offered.Invented
	rows.Together()
	list := review.Arrange(rows, job.where, job.order, nil)
	return table.Sheet{Fields: job.fields, Rows: rows.Pick(list.Lines), Totals: totals, Width: widthOf(a.out), Chosen: job.chosen}, nil
}

// folderHint says what to do about a folder that cannot be read.
func folderHint(err error) string {
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return "name the folder: cutbrief review DIR"
	case errors.Is(err, fs.ErrPermission):
		return "ask for the right to read the folder"
	}
	return "name the folder that holds the visits: cutbrief review DIR"
}

// progress returns what shows on a terminal how many files are read, and goes
// away with −1. Elsewhere it shows nothing.
func (a *app) progress() func(n int) {
	if !isTerminal(a.err) {
		return func(int) {}
	}
	var shown time.Time
	return func(n int) {
		const width = 30
		switch now := a.now(); {
		case n < 0 && !shown.IsZero():
			fmt.Fprintf(a.err, "\r%*s\r", width, "")
		case n >= 0 && now.Sub(shown) > 200*time.Millisecond:
			shown = now
			fmt.Fprintf(a.err, "\r%-*s", width, fmt.Sprintf("reading: %d files", n))
		}
	}
}

// reading says how a folder is read: on which bench, and with which index.
func (a *app) reading(dir string, bench *review.Bench) review.Options {
	o := review.Options{Bench: bench, Program: build(), Now: a.now}
	cache, err1 := a.cacheDir()
	name, err2 := review.IndexName(dir)
	if err1 == nil && err2 == nil { // without one it only takes longer
		o.Index = filepath.Join(cache, name)
	}
	return o
}

// cacheDir is the folder for what can be worked out again.
func (w *world) cacheDir() (string, error) {
	switch w.goos {
	case "windows":
		return under(w.env("LocalAppData"), "cutbrief")
	case "darwin":
		return under(w.env("HOME"), "Library", "Caches", "cutbrief")
	}
	if dir := w.env("XDG_CACHE_HOME"); filepath.IsAbs(dir) {
		return filepath.Join(dir, "cutbrief"), nil
	}
	return under(w.env("HOME"), ".cache", "cutbrief")
}

// build tells this build of the program from any other.
func build() string {
	path, err := os.Executable()
	if err != nil {
		return version()
	}
	info, err := os.Stat(path)
	if err != nil {
		return version()
	}
	return fmt.Sprintf("%s %d %d", version(), info.Size(), info.ModTime().UnixNano())
}
