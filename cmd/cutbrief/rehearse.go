package main

import (
	"context"
	"fmt"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"cutbrief/assess"
	"cutbrief/assess/screen/rehearse"
	"cutbrief/report"
	"cutbrief/report/text"
)

func (a *app) rehearseCommand() *cobra.Command {
	var plainly bool
	c := &cobra.Command{
		Use:   "rehearse FILE",
		Short: "Run the demonstration at the bench, step by step, with a clock",
		Long: `rehearse runs the planned demonstration on the full screen, in large and few words: one
step at a time, with how the torch is set, what to look for, the checklists to tick and
a clock. The time of a straight cut is taken with the space bar and held against the
prediction at once. It works alone, and in front of the customer.

At the end you choose whether what was measured is kept in the visit; then it asks for
the rest, as record does. Where no screen can be drawn (a pipe, or TERM=dumb), and with
--plain, the plan is printed as text.`,
		Example: `  cutbrief rehearse visit.json
  cutbrief rehearse visit.json --plain`,
		Args: oneVisit("rehearse"),
		RunE: func(c *cobra.Command, args []string) error {
			return a.rehearse(c.Context(), args[0], plainly || a.wantsPlain())
		},
	}
	c.Flags().BoolVar(&plainly, "plain", false, "print the plan as text, without drawing a screen")
	return c
}

// rehearse runs the demonstration of a visit, or prints it.
func (a *app) rehearse(ctx context.Context, file string, plainly bool) error {
	v, offered, err := a.visitAndRange(file)
	if err != nil {
		return err
	}
	words, err := a.book()
	if err != nil {
		return err
	}
	bench := report.AtBench(v, offered, report.Options{Words: words})
	switch {
	case len(bench.Steps) == 0 && bench.System == "":
		return fail(fmt.Errorf("%s: nothing to show: %s", file, bench.Headline), "what is missing: cutbrief next %s", shellWord(file))
	case len(bench.Steps) == 0:
		return fail(fmt.Errorf("%s: no cut fits the time given", file), "give the demonstration more time: cutbrief interview %s", shellWord(file))
	case plainly:
		return put(a.out, []byte(text.Bench(bench, text.DefaultWidth)))
	}
	return a.atBench(ctx, &sitting{app: a, offered: offered, visit: v, path: file, kept: true}, bench)
}

// atBench draws the rehearsal, and keeps what the rep wants kept.
func (a *app) atBench(ctx context.Context, s *sitting, bench report.Bench) error {
	a.leaves.Store(true)
	end, err := rehearse.Run(ctx, rehearse.Options{Bench: bench, Words: bench.Words, Now: a.now, Input: a.in, Output: a.out})
	if err != nil {
		return fail(fmt.Errorf("draw the demonstration: %w", err), "try cutbrief rehearse --plain %s", shellWord(s.path))
	}
	if !end.Keep || len(end.Cuts) == 0 {
		return put(a.out, []byte(unkept(end.Cuts, bench, s.path)))
	}
	day := a.now().Format(time.DateOnly)
	showing := s.visit.ShowingOn(day)
	showing.System = bench.SystemID
	for _, c := range end.Cuts {
		showing.Keep(c)
	}
	if _, err := s.Save(s.visit); err != nil {
		return fail(fmt.Errorf("what was measured is not saved: %w", err), "free the file or its folder, then note it with cutbrief record %s", shellWord(s.path))
	}
	return a.ask(ctx, s, bench, day)
}

// unkept says what was measured and not kept, so that nothing is lost unseen.
func unkept(cuts []assess.Shown, bench report.Bench, path string) string {
	if len(cuts) == 0 {
		return "Nothing was measured or noted.\n"
	}
	var b strings.Builder
	b.WriteString("Not kept in the visit:\n")
	for _, c := range cuts {
		b.WriteString("  " + strings.Join(strings.Fields(c.Name+": "+string(c.Result)+" "+report.Measured(c, bench.Style)), " "))
		if c.Why != "" {
			b.WriteString(" (" + tidy(c.Why) + ")")
		}
		b.WriteString("\n")
	}
	return b.String() + "To note it after all: cutbrief record " + shellWord(tidy(path)) + "\n"
}
