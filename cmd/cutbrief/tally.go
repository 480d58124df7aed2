package main

import (
	"fmt"
	"io"
	"iter"
	"path/filepath"
	"strings"

	"cutbrief/assess"
	"cutbrief/assess/review"
	"cutbrief/assess/sanitize"
	"cutbrief/assess/store"
	"cutbrief/report/pdf"
	"cutbrief/report/table"
	"cutbrief/report/team"
)

// tallied checks the flags that go with --tally and --format pdf, and says whether
// the visits are counted as a whole.
func (o reviewOptions) tallied(form format) (bool, error) {
	whole := o.tally || form == pdfFormat
	switch {
	case o.measured && (whole || o.by != ""):
		return false, misuse("--measured and --by, --tally or a page are given together", "choose one of them")
	case whole && form != tableFormat && form != jsonFormat && form != pdfFormat:
		return false, misuse(fmt.Sprintf("--tally is not written as %s", form), "choose --format table, json or pdf")
	case o.quote && (!o.tally || form != tableFormat):
		return false, misuse("--quote goes with --tally, as text", "cutbrief review --tally --quote")
	case form != pdfFormat && (o.out != "" || o.force):
		return false, misuse("--out and --force go with --format pdf", "other formats are written to standard output")
	}
	return whole, nil
}

// patterns is what is counted over the rows.
func (a *app) patterns(job reviewJob, s table.Sheet) table.Patterns {
	return table.Patterns{Tally: review.TallyOf(s.Rows, job.by), Totals: s.Totals, Whole: job.tally, Width: widthOf(a.out), Today: a.now()}
}

// tally writes what is counted.
func (a *app) tally(w io.Writer, job reviewJob, s table.Sheet) error {
	p := a.patterns(job, s)
	if job.format == jsonFormat {
		return p.JSON(w)
	}
	if err := p.Text(w); err != nil || !job.quote {
		return err
	}
	_, err := io.WriteString(w, quotes(job.dir, s))
	return err
}

// teamPage makes the one page about the visits of a team and puts it in place.
func (a *app) teamPage(job reviewJob, s table.Sheet) error {
	if job.out == "-" && isTerminal(a.out) {
		return misuse("a PDF would only garble this terminal", "name a file with --out, or give --tally without --format pdf")
	}
	data, err := pdf.Team(team.Of(review.TallyOf(s.Rows, job.by), s.Totals, a.now()), pdf.Paper(job.paper))
	if err != nil {
		return fail(err, "the same as text: cutbrief review --tally")
	}
	return a.deliver([]target{{path: job.out, data: data}}, job.force)
}

// teller words and prints what is counted in the full-screen review.
type teller struct {
	app      *app
	job      reviewJob
	invented bool // the range
}

func (t teller) tally(rows iter.Seq[*review.Row], files int, by string) (review.Tally, review.Totals) {
	var column *review.Field
	if f, known := review.FindField(by); known {
		column = &f
	}
	return review.TallyOf(rows, column), review.Totals{Files: files, Invented: t.invented}
}

// Tell words the counts for a width.
func (t teller) Tell(rows iter.Seq[*review.Row], files int, by string, width int) (string, error) {
	tally, totals := t.tally(rows, files, by)
	var b strings.Builder
	err := table.Patterns{Tally: tally, Totals: totals, Whole: true, Width: width, Today: t.app.now()}.Text(&b)
	return b.String(), err
}

// Print makes the page beside those made before, and writes over none.
func (t teller) Print(rows iter.Seq[*review.Row], files int, by string) (string, error) {
	tally, totals := t.tally(rows, files, by)
	data, err := pdf.Team(team.Of(tally, totals, t.app.now()), pdf.Paper(t.job.paper))
	if err != nil {
		return "", err
	}
	return writeFree(t.job.out, data)
}

// quotes are the words noted where the answer was no: why, and what spoke against
// it. They are read from the files, as no row holds them.
func quotes(dir string, s table.Sheet) string {
	var b strings.Builder
	b.WriteString("\nNoted where the answer was no\n")
	found := false
	for r := range s.Rows {
		if r.Stage != review.Judged || r.Outcome != string(assess.No) {
			continue
		}
		v, _, err := store.Load(filepath.Join(dir, filepath.FromSlash(r.Path)))
		if err != nil {
			fmt.Fprintf(&b, "  %s: %s\n", r.ShownPath(), sanitize.Line(reason(err).Error()))
			continue
		}
		if latest := v.Latest(); latest != nil {
			for _, l := range wordsOf(latest) {
				found = true
				fmt.Fprintf(&b, "  %s: %s\n", r.ShownPath(), l)
			}
		}
	}
	if !found {
		b.WriteString("  Nothing is noted in words.\n")
	}
	return b.String()
}

// wordsOf are the words noted of a demonstration, each in quotes.
func wordsOf(s *assess.Showing) []string {
	quoted := func(text string) string { return "“" + sanitize.Line(text) + "”" }
	var list []string
	if strings.TrimSpace(s.Because) != "" {
		list = append(list, quoted(s.Because))
	}
	for _, o := range s.Objections {
		line := "spoke against it: " + quoted(o.Said)
		if strings.TrimSpace(o.Answer) != "" {
			line += ", answered: " + quoted(o.Answer)
		}
		list = append(list, line)
	}
	return list
}
