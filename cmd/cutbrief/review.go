package main

import (
	"cmp"
	"context"
	"io"
	"iter"
	"os"
	"path/filepath"
	"slices"

	"cutbrief/assess"
	"cutbrief/assess/review"
	screen "cutbrief/assess/screen/review"
	"cutbrief/assess/store"
	"cutbrief/report"
	"cutbrief/report/export"
	"cutbrief/report/pdf"
	"cutbrief/rules/message"
)

// countable are the fields that visits are counted by.
var countable = []string{"rep", "system", "critical", "metals", "month", "verdict"}

// holdReview reviews a folder on a full screen, or writes what is asked for.
func holdReview(c *call) error {
	job, err := c.reviewJob()
	if err != nil {
		return err
	}
	listed := job.By == nil && !job.Whole && !c.on("measured") && !job.Chosen
	if listed && !c.flags.Changed("format") && !c.wantsPlain() {
		return c.reviewOnScreen(job)
	}
	return c.writeReview(job)
}

// reviewJob is what a review has to do, checked.
func (c *call) reviewJob() (job *export.Job, err error) {
	job = &export.Job{Dir: c.arg(0), Fields: review.UsualFields(), Chosen: c.text("fields") != "", By: export.FieldNamed(c.choice("by")), Now: c.now, Program: build()}
	job.Whole = c.on("tally") || c.form() == export.FormatPDF
	job.Width, _ = sizeOf(c.out)
	if job.Where, err = review.ParseWhere(c.text("where"), c.now()); err != nil {
		return nil, misuse(message.ID("fields, comparisons and examples: cutbrief review --help").Message(), "--where: {1}", err)
	}
	if job.Order, err = review.ParseOrder(c.text("sort")); err != nil {
		return nil, misuse(message.ID("such as --sort -date,company").Message(), "--sort: {1}", err)
	}
	if job.Chosen {
		if job.Fields, err = review.ParseFields(c.text("fields")); err != nil {
			return nil, misuse(message.ID("such as --fields date,company,verdict").Message(), "--fields: {1}", err)
		}
	}
	if err := c.agree(job); err != nil {
		return nil, err
	}
	if job.Dir == "" {
		if job.Dir, err = c.files().Visits(""); err != nil {
			return nil, err
		}
	}
	name, unnamed := review.IndexName(job.Dir)
	if index, err := c.files().Find(store.CacheFolder, name); err == nil && unnamed == nil { // without one it only takes longer
		job.Index = index
	}
	if job.Offered, err = c.systems(); err != nil {
		return nil, err
	}
	job.Words, err = c.wordsFor(c.form())
	return job, err
}

// agree refuses flags that do not go together.
func (c *call) agree(job *export.Job) error {
	counted, form, measured := []export.Format{export.FormatTable, export.FormatJSON, export.FormatPDF}, c.form(), c.on("measured")
	for _, rule := range []struct {
		broken     bool
		what, hint message.ID
	}{
		{measured && (job.Whole || job.By != nil), "--measured and --by, --tally or a page are given together", "choose one of them"},
		{job.Whole && !slices.Contains(counted, form), "--tally is not written as {1}", "choose --format table, json or pdf"},
		{c.on("quote") && (!c.on("tally") || form != export.FormatTable), "--quote goes with --tally, as text", "cutbrief review --tally --quote"},
		{form != export.FormatPDF && form != export.FormatWorkbook && (c.text("out") != "" || c.on("force")), "--out and --force go with --format pdf or xlsx", "other formats are written to standard output"},
		{job.By != nil && !slices.Contains(counted, form), "--by is not written as {1}", "choose --format table, json or pdf"},
		{measured && !slices.Contains([]export.Format{export.FormatTable, export.FormatCSV, export.FormatJSON, export.FormatWorkbook}, form), "--measured is not written as {1}", "choose --format table, csv, json or xlsx"},
	} {
		if rule.broken {
			return misuse(rule.hint.Message(), rule.what, message.Name(form))
		}
	}
	return nil
}

// writeReview reads the folder and writes what is asked for.
func (c *call) writeReview(job *export.Job) error {
	var timings *review.Timings
	if c.on("measured") {
		timings = &review.Timings{}
	}
	tell := c.progress("reading: {1} file", "reading: {1} files")
	sheet, err := job.Read(context.Background(), job.Where, timings, tell)
	tell(-1)
	if err != nil {
		return store.FolderProblem(job.Dir, err)
	}
	var measured export.Measured
	if timings != nil {
		measured = export.MeasuredOf(sheet, timings, job.Offered)
	}
	switch {
	case c.form() == export.FormatPDF:
		return c.writeTeam(job, sheet)
	case c.form() == export.FormatWorkbook && timings != nil:
		return c.deliverBook("review.xlsx", measured.Workbook())
	case c.form() == export.FormatWorkbook:
		return c.deliverBook("review.xlsx", sheet.Workbook())
	}
	list := map[export.Format]func(io.Writer) error{export.FormatTable: sheet.Text, export.FormatCSV: sheet.CSV, export.FormatJSON: sheet.JSON, export.FormatNDJSON: sheet.NDJSON, export.FormatMarkdown: sheet.Markdown}
	switch {
	case timings != nil:
		list = map[export.Format]func(io.Writer) error{export.FormatTable: measured.Text, export.FormatCSV: measured.CSV, export.FormatJSON: measured.JSON}
	case job.By != nil || job.Whole:
		p := job.Counted(sheet)
		if c.on("quote") {
			p.Quotes = job.Quotes(sheet.Rows)
		}
		list = map[export.Format]func(io.Writer) error{export.FormatTable: p.Text, export.FormatJSON: p.JSON}
	}
	return writeFailed(list[c.form()](c.out))
}

// writeTeam writes the one page about the visits of a team.
func (c *call) writeTeam(job *export.Job, sheet export.Sheet) error {
	path := cmp.Or(c.text("out"), "team.pdf")
	if err := c.noTerminal(path, "name a file with --out, or give --tally without --format pdf"); err != nil {
		return err
	}
	made, err := pdf.Team(job.Counted(sheet).Summary(), pdf.Paper(c.choice("paper")))
	if err != nil {
		return message.WithHint(err, "the same as text: cutbrief review --tally")
	}
	return c.deliver(output{path, made})
}

// reviewOnScreen shows the folder on a full screen.
func (c *call) reviewOnScreen(job *export.Job) error {
	if _, err := os.ReadDir(job.Dir); err != nil {
		return store.FolderProblem(job.Dir, err)
	}
	criteria := job.Criteria()
	ctx, stop := untilInterrupted()
	defer stop()
	err := screen.Run(ctx, screen.Options{
		Dir: job.Dir, Range: job.Offered, Today: c.now(), Words: job.Words, Where: c.text("where"), Sort: c.text("sort"), Input: c.in, Output: c.out,
		Read: func(ctx context.Context, remembered bool, emit func([]*review.Row)) (review.Totals, error) {
			how := job.Reading(criteria)
			how.Remembered = remembered
			return review.Read(ctx, job.Dir, how, emit)
		},
		Load: job.Visit, Measured: job.Measured, Teller: teller{job, c.choice("paper")},
		Page: func(path string, v *assess.Visit) (string, error) {
			made, err := pdf.Render(report.Build(v, job.Offered, report.Options{Words: job.Words}), "a4")
			if err != nil {
				return "", err
			}
			return store.WriteNext(export.NameAfter(filepath.Base(path), export.FormatPDF), made)
		},
	})
	if err != nil {
		return message.WithHint(message.Errorf("draw the review: {1}", err), "try cutbrief review --format table")
	}
	return nil
}

// teller words and prints what is counted in the full-screen review.
type teller struct {
	*export.Job
	paper string
}

// Print makes the page beside those made before, and writes over none.
func (t teller) Print(rows iter.Seq[*review.Row], files int, by string) (string, error) {
	made, err := pdf.Team(t.Summary(rows, files, by), pdf.Paper(t.paper))
	if err != nil {
		return "", err
	}
	return store.WriteNext("team.pdf", made)
}
