package main

import (
	"cmp"
	"context"
	"errors"
	"io"
	"io/fs"
	"iter"
	"os"
	"path/filepath"
	"runtime/debug"
	"slices"
	"strings"

	"cutbrief/assess"
	"cutbrief/assess/review"
	screen "cutbrief/assess/screen/review"
	"cutbrief/assess/store"
	"cutbrief/report"
	"cutbrief/report/export"
	"cutbrief/report/pdf"
	"cutbrief/rules/message"
	"cutbrief/rules/system"
)

// countable are the fields that visits are counted by.
var countable = []string{"rep", "system", "critical", "metals", "month", "verdict"}

func reviewCommand() command {
	paper := paperFlag
	paper.usage = "paper size of --format pdf: {1}"
	return command{
		use:    "review [DIR]",
		tables: reviewTables,
		args:   arguments{most: 1, what: "one folder"},
		flags: []option{
			formatFlag(tableFormat, csvFormat, jsonFormat, ndjsonFormat, markdownFormat, pdfFormat, xlsxFormat), paper,
			{name: "where", value: "", usage: "keep only the rows this holds for, such as 'verdict = open'"},
			{name: "sort", value: "-date", usage: "fields to sort by, with a comma between; a minus puts the largest first"},
			{name: "fields", value: "", usage: "fields to show, with a comma between"},
			{name: "by", value: "", usage: "count by one `field` instead of a list: {1}", values: countable, refuse: "visits are not counted by {1}"},
			{name: "tally", value: false, usage: "count all visits instead of a list, as bars"},
			{name: "quote", value: false, usage: "with --tally: quote what was noted where the answer was no"},
			{name: "out", value: "", usage: "`path` of the page of --format pdf or the workbook of --format xlsx; - is standard output (default: team.pdf or review.xlsx here)"},
			{name: "force", value: false, usage: "write over a file that exists"},
			{name: "measured", value: false, usage: "compare the cuts timed in demonstrations with the prediction"},
		},
		run: func(c *call) error {
			job, err := c.reviewJob()
			if err != nil {
				return err
			}
			if job.listed() && !c.flags.Changed("format") && !c.wantsPlain() {
				return job.onScreen()
			}
			return job.write()
		},
	}
}

// reviewTables are what a filter is made of.
func reviewTables() []helpTable {
	compare := helpTable{title: "A filter compares fields with values:", rows: []helpRow{
		{"= != < <= > >=", "as usual; text and words only with = and !="}, {"~", "holds the text"},
		{"?", "not known: outcome = ? (not known is never less or more)"}, {"and or not ( )", `"and" binds closer than "or"`}}}
	fields, flags := helpTable{title: "Fields:"}, helpTable{title: "Flags of a visit:"}
	for _, f := range review.Fields() {
		fields.rows = append(fields.rows, helpRow{f.ID, message.ID(f.Says)})
	}
	for _, k := range review.FlagKinds() {
		flags.rows = append(flags.rows, helpRow{k.ID, message.ID(k.Rule)})
	}
	return []helpTable{compare, fields, flags}
}

// reviewJob is what a review has to do, checked.
type reviewJob struct {
	*call
	dir     string
	format  format
	offered system.Range
	words   *message.Catalog
	where   review.Where
	order   review.Order
	fields  []review.Field
	chosen  bool            // the fields were named
	by      *review.Field   // count by this, in place of listing
	tally   bool            // count as a whole
	timings *review.Timings // hold timed cuts against predictions, in place of listing
	pageAt  string          // where a page goes
}

// reviewJob checks the flags.
func (c *call) reviewJob() (job *reviewJob, err error) {
	job = &reviewJob{call: c, format: c.form(), pageAt: cmp.Or(c.text("out"), "team.pdf"), dir: c.arg(0), fields: review.UsualFields(), chosen: c.text("fields") != "", by: column(c.choice("by"))}
	job.tally = c.on("tally") || job.format == pdfFormat
	if c.on("measured") {
		job.timings = &review.Timings{}
	}
	if job.where, err = review.ParseWhere(c.text("where"), c.now()); err != nil {
		return nil, misuse(message.ID("fields, comparisons and examples: cutbrief review --help").Message(), "--where: {1}", err)
	}
	if job.order, err = review.ParseOrder(c.text("sort")); err != nil {
		return nil, misuse(message.ID("such as --sort -date,company").Message(), "--sort: {1}", err)
	}
	if job.chosen {
		if job.fields, err = review.ParseFields(c.text("fields")); err != nil {
			return nil, misuse(message.ID("such as --fields date,company,verdict").Message(), "--fields: {1}", err)
		}
	}
	if err := job.agree(); err != nil {
		return nil, err
	}
	if job.dir == "" {
		if job.dir, err = c.visitsDir(""); err != nil {
			return nil, err
		}
	}
	if job.offered, err = c.systems(); err != nil {
		return nil, err
	}
	job.words, err = c.wordsFor(job.format)
	return job, err
}

// agree refuses flags that do not go together.
func (job *reviewJob) agree() error {
	counted := []format{tableFormat, jsonFormat, pdfFormat}
	for _, rule := range []struct {
		broken     bool
		what, hint message.ID
	}{
		{job.timings != nil && (job.tally || job.by != nil), "--measured and --by, --tally or a page are given together", "choose one of them"},
		{job.tally && !slices.Contains(counted, job.format), "--tally is not written as {1}", "choose --format table, json or pdf"},
		{job.on("quote") && (!job.on("tally") || job.format != tableFormat), "--quote goes with --tally, as text", "cutbrief review --tally --quote"},
		{job.format != pdfFormat && job.format != xlsxFormat && (job.text("out") != "" || job.on("force")), "--out and --force go with --format pdf or xlsx", "other formats are written to standard output"},
		{job.by != nil && !slices.Contains(counted, job.format), "--by is not written as {1}", "choose --format table, json or pdf"},
		{job.timings != nil && !slices.Contains([]format{tableFormat, csvFormat, jsonFormat, xlsxFormat}, job.format), "--measured is not written as {1}", "choose --format table, csv, json or xlsx"},
	} {
		if rule.broken {
			return misuse(rule.hint.Message(), rule.what, message.Name(job.format))
		}
	}
	return nil
}

// listed reports a job that a list to move in can do: nothing is counted, and no
// fields are named.
func (job *reviewJob) listed() bool {
	return job.by == nil && !job.tally && job.timings == nil && !job.chosen
}

// write reads the folder and writes what is asked for.
func (job *reviewJob) write() error {
	tell := job.progress("reading: {1} file", "reading: {1} files")
	sheet, err := job.read(context.Background(), job.where, job.timings, tell)
	tell(-1)
	if err != nil {
		return folderProblem(job.dir, err)
	}
	if job.format == pdfFormat {
		if err := job.noTerminal(job.pageAt, "name a file with --out, or give --tally without --format pdf"); err != nil {
			return err
		}
		made, err := job.page(sheet.Rows, sheet.Totals, job.by)
		if err != nil {
			return message.WithHint(err, "the same as text: cutbrief review --tally")
		}
		return job.deliver(job.on("force"), output{job.pageAt, made})
	}
	if job.format == xlsxFormat {
		made := sheet.Workbook()
		if job.timings != nil {
			made = job.measured(sheet, job.timings).Workbook()
		}
		return job.deliverBook("review.xlsx", made)
	}
	if err := job.writer(sheet)(job.out); err != nil {
		return message.WithHint(message.Errorf("write standard output: {1}", err), "the program that reads the output may have closed it")
	}
	return nil
}

// writer is what writes the rows, or what is counted of them.
func (job *reviewJob) writer(s export.Sheet) func(io.Writer) error {
	list := map[format]func(io.Writer) error{tableFormat: s.Text, csvFormat: s.CSV, jsonFormat: s.JSON, ndjsonFormat: s.NDJSON, markdownFormat: s.Markdown}
	switch {
	case job.timings != nil:
		m := job.measured(s, job.timings)
		list = map[format]func(io.Writer) error{tableFormat: m.Text, csvFormat: m.CSV, jsonFormat: m.JSON}
	case job.by != nil || job.tally:
		p := job.patterns(review.TallyOf(s.Rows, job.by), s.Totals, s.Width)
		if job.on("quote") {
			p.Quotes = export.Quotes(s.Rows, job.words, func(path string) (*assess.Visit, error) {
				v, _, err := store.Load(job.below(path))
				return v, err
			})
		}
		list = map[format]func(io.Writer) error{tableFormat: p.Text, jsonFormat: p.JSON}
	}
	return list[job.format]
}

// patterns is what is counted over rows.
func (job *reviewJob) patterns(t review.Tally, totals review.Totals, width int) export.Patterns {
	return export.Patterns{Tally: t, Totals: totals, Whole: job.tally, Width: width, Today: job.now(), Words: job.words}
}

func (job *reviewJob) measured(s export.Sheet, timings *review.Timings) export.Measured {
	return export.MeasuredOf(s, timings, job.offered)
}

// page is the one page about the visits of a team.
func (job *reviewJob) page(rows iter.Seq[*review.Row], totals review.Totals, by *review.Field) ([]byte, error) {
	return pdf.Team(export.Summarize(review.TallyOf(rows, by), totals, job.now(), job.words), pdf.Paper(job.choice("paper")))
}

// below is the file that a row is about.
func (job *reviewJob) below(path string) string {
	return filepath.Join(job.dir, filepath.FromSlash(path))
}

// read reads the folder and picks the rows asked for. It tells how many files are
// read.
func (job *reviewJob) read(ctx context.Context, where review.Where, timings *review.Timings, tell func(int)) (export.Sheet, error) {
	o := job.reading(review.NewCriteria(job.offered, job.now()))
	o.Timings = timings
	rows := &review.Rows{}
	totals, err := readFolder(ctx, job.dir, o, func(batch []*review.Row) {
		rows.Add(batch...)
		tell(rows.Len())
	})
	if err != nil {
		return export.Sheet{}, err
	}
	totals.Invented = job.offered.Invented
	rows.Together()
	list := review.Arrange(rows, where, job.order, nil)
	width, _ := sizeOf(job.out)
	return export.Sheet{Fields: job.fields, Rows: rows.Pick(list.Lines), Totals: totals, Width: width, Chosen: job.chosen, Words: job.words}, nil
}

// folderProblem says what to do about a folder that cannot be read.
func folderProblem(dir string, err error) error {
	hint := message.ID("name the folder that holds the visits: cutbrief review DIR")
	switch {
	case errors.Is(err, fs.ErrNotExist):
		hint = "name the folder: cutbrief review DIR"
	case errors.Is(err, fs.ErrPermission):
		hint = "ask for the right to read the folder"
	}
	return message.WithHint(message.Errorf("read {1}: {2}", message.Name(dir), store.Cause(err)), hint)
}

// reading says how a folder is read: by which criteria, and with which index.
func (job *reviewJob) reading(criteria *review.Criteria) review.Options {
	o := review.Options{Criteria: criteria, Program: build(), Now: job.now}
	name, unnamed := review.IndexName(job.dir)
	if index, err := job.place(cacheFolder, name); err == nil && unnamed == nil { // without one it only takes longer
		o.Index = index
	}
	return o
}

// garbageShares say how much garbage there may be from some number of rows on, in
// per cent of what is kept. A row takes about 100 bytes: 30 % of 50,000 rows is
// the garbage of some eight visits being judged.
var garbageShares = [...]struct{ rows, percent int }{{1, 100}, {25000, 50}, {50000, 30}}

// readFolder reads a folder as review.Read does, and holds garbage short while
// rows add up. What is kept of a row holds no pointers, so that collecting more
// often costs little; left alone, garbage would take as much memory as all rows.
func readFolder(ctx context.Context, dir string, o review.Options, emit func([]*review.Row)) (review.Totals, error) {
	n := 0
	return review.Read(ctx, dir, o, func(rows []*review.Row) {
		before := n
		n += len(rows)
		for _, s := range garbageShares {
			if before < s.rows && s.rows <= n {
				debug.SetGCPercent(s.percent)
			}
		}
		emit(rows)
	})
}

// onScreen shows the folder on a full screen.
func (job *reviewJob) onScreen() error {
	if _, err := os.ReadDir(job.dir); err != nil {
		return folderProblem(job.dir, err)
	}
	criteria := review.NewCriteria(job.offered, job.now())
	ctx, stop := untilInterrupted()
	defer stop()
	err := screen.Run(ctx, screen.Options{
		Dir: job.dir, Range: job.offered, Today: job.now(), Words: job.words, Where: job.text("where"), Sort: job.text("sort"), Input: job.in, Output: job.out,
		Read: func(ctx context.Context, remembered bool, emit func([]*review.Row)) (review.Totals, error) {
			how := job.reading(criteria)
			how.Remembered = remembered
			return readFolder(ctx, job.dir, how, emit)
		},
		Load:     func(path string) (*assess.Visit, []byte, error) { return store.LoadRaw(job.below(path)) },
		Measured: job.measuredText,
		Teller:   teller{job},
		Page: func(path string, v *assess.Visit) (string, error) {
			made, err := pdf.Render(report.Build(v, job.offered, report.Options{Words: job.words}), "a4")
			if err != nil {
				return "", err
			}
			return writeNext(nameAfter(filepath.Base(path), pdfFormat), made)
		},
	})
	if err != nil {
		return message.WithHint(message.Errorf("draw the review: {1}", err), "try cutbrief review --format table")
	}
	return nil
}

// measuredText words how timed cuts compare with the predictions, for the visits
// that a typed filter keeps.
func (job *reviewJob) measuredText(ctx context.Context, filter string) (string, error) {
	timings := &review.Timings{}
	s, err := job.read(ctx, review.Find(filter, job.now()), timings, func(int) {})
	if err != nil {
		return "", store.Cause(err)
	}
	var b strings.Builder
	err = job.measured(s, timings).Text(&b)
	return b.String(), err
}

// teller words and prints what is counted in the full-screen review.
type teller struct{ *reviewJob }

// Tell words the counts for a width.
func (t teller) Tell(rows iter.Seq[*review.Row], files int, by string, width int) (string, error) {
	p := t.patterns(review.TallyOf(rows, column(by)), review.Totals{Files: files, Invented: t.offered.Invented}, width)
	p.Whole = true
	var b strings.Builder
	err := p.Text(&b)
	return b.String(), err
}

// Print makes the page beside those made before, and writes over none.
func (t teller) Print(rows iter.Seq[*review.Row], files int, by string) (string, error) {
	made, err := t.page(rows, review.Totals{Files: files, Invented: t.offered.Invented}, column(by))
	if err != nil {
		return "", err
	}
	return writeNext(t.pageAt, made)
}

// column is the field to count by, nil for none.
func column(name string) *review.Field {
	if f, known := review.FindField(name); known {
		return &f
	}
	return nil
}
