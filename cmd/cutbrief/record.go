package main

import (
	"context"
	"fmt"
	"time"

	"github.com/spf13/cobra"

	"cutbrief/assess"
	"cutbrief/assess/screen/record"
	"cutbrief/report"
)

func (a *app) recordCommand() *cobra.Command {
	var date string
	c := &cobra.Command{
		Use:   "record FILE",
		Short: "Note what was shown, what was said and what comes next",
		Long: `record asks, line by line, how each cut of the demonstration went, what the customer
said, what spoke against it and how it was answered, how it ended, and what is to be
done by whom and when. All of it is kept in the file of the visit. It can be left at any
line by "quit" or by ending the input: what was given is saved. A second time it shows
what stands there, and Enter leaves it.`,
		Example: `  printf 'good\n' | cutbrief record visit.json
  printf 'quit\n' | cutbrief record visit.json --date 2026-12-01`,
		Args: oneVisit("record"),
		RunE: func(c *cobra.Command, args []string) error { return a.record(c.Context(), args[0], date) },
	}
	c.Flags().StringVar(&date, "date", "", "the `day` of the demonstration, such as 2026-12-01 (default: today)")
	return c
}

// record asks after a demonstration and keeps the answers.
func (a *app) record(ctx context.Context, file, date string) error {
	day, err := a.dayOf(date)
	if err != nil {
		return err
	}
	v, offered, err := a.visitAndRange(file)
	if err != nil {
		return err
	}
	s := &sitting{app: a, offered: offered, visit: v, path: file, kept: true}
	return a.ask(ctx, s, report.AtBench(v, offered, report.Options{}), day)
}

// ask runs the questions of a record and says where the answers are.
func (a *app) ask(ctx context.Context, s *sitting, bench report.Bench, day string) error {
	a.leaves.Store(true)
	end, err := record.Run(untilDone{ctx, a.in}, a.out, record.Options{Visit: s.visit, Bench: bench, Date: day, Rep: said(s.visit, assess.FactRep), Saver: s})
	if err != nil {
		return fail(fmt.Errorf("read the answers: %w", err), "what was given is kept; go on with cutbrief record %s", shellWord(s.path))
	}
	if end.Unsaved != nil {
		return fail(fmt.Errorf("the record is not saved: %w", end.Unsaved), "free the file or its folder, then note it again")
	}
	return put(a.out, []byte("\n"+recorded(end.Path)))
}

// recorded says where the record is, and how to go on.
func recorded(path string) string {
	if path == "" {
		return "Nothing was noted, so nothing was saved.\n"
	}
	return "The record is in " + tidy(path) + ".\nTo follow up: cutbrief followup " + shellWord(tidy(path)) + "\n"
}

// dayOf checks --date; without it the demonstration was today.
func (a *app) dayOf(date string) (string, error) {
	if date == "" {
		return a.now().Format(time.DateOnly), nil
	}
	if _, err := time.Parse(time.DateOnly, date); err != nil {
		return "", misuse(fmt.Sprintf("--date %q is not a day", date), "year, month and day, such as 2026-12-01")
	}
	return date, nil
}
