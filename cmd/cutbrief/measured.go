package main

import (
	"context"
	"fmt"
	"io"
	"strings"

	"cutbrief/assess/review"
	"cutbrief/report"
	"cutbrief/report/table"
	"cutbrief/rules/demonstration"
	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// measurable checks the flags that go with --measured.
func (o reviewOptions) measurable(form format) error {
	if form != tableFormat && form != csvFormat && form != jsonFormat {
		return misuse(fmt.Sprintf("--measured is not written as %s", form), "choose --format table, csv or json")
	}
	return nil
}

// measuredBy returns what writes how timed cuts compare with the predictions, and
// what they say of the rows of a range.
func (job reviewJob) measuredBy(offered system.Range) func(io.Writer, table.Sheet) error {
	return func(w io.Writer, s table.Sheet) error {
		m := table.Measured{Totals: s.Totals, Enough: demonstration.FewestCuts, Caution: "The band is the one at the bench: common practice, no source. No row is changed: that is for whoever answers for the range."}
		for r := range s.Rows {
			if r.Stage == review.Judged {
				m.Visits++
			}
		}
		for _, one := range job.timings.Measured(s.Rows, offered) {
			m.List = append(m.List, followed(one, offered))
		}
		switch job.format {
		case csvFormat:
			return m.CSV(w)
		case jsonFormat:
			return m.JSON(w)
		}
		return m.Text(w)
	}
}

// measuredText is the same in words, for the visits that a typed filter keeps. It
// writes nothing to the terminal.
func (a *app) measuredText(ctx context.Context, job reviewJob, offered system.Range, filter string) (string, error) {
	job.timings, job.where, job.format = &review.Timings{}, review.Find(filter, a.now()), tableFormat
	s, err := a.readRows(ctx, job, offered, func(int) {})
	if err != nil {
		return "", reason(err)
	}
	var b strings.Builder
	err = job.measuredBy(offered)(&b, s)
	return b.String(), err
}

// followed words what was measured with one system.
func followed(m review.Measured, offered system.Range) table.Followed {
	f := table.Followed{Measured: m}
	var row *system.System
	if s, known := offered.Find(m.System); known {
		row, f.Name = &s, s.Name
	}
	for _, l := range report.Track(m.Track, row, unit.Metric) {
		f.Lines = append(f.Lines, [2]string{l.Label, l.Value})
		f.Row = l.Value // the last says what it means for the row
	}
	return f
}
