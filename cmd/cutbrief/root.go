package main

import (
	"context"
	"fmt"
	"os"
	"os/signal"
	"strings"
	"sync/atomic"
	"syscall"

	"github.com/spf13/cobra"
)

// app is one run of the program: the world, and what holds for every command.
type app struct {
	world
	systems string      // --systems
	prices  string      // --prices
	words   string      // --words
	began   bool        // the command line was understood and a command is running
	leaves  atomic.Bool // the command takes an interrupt for leaving, and ends by itself
}

// run runs one command and returns the exit status. An interrupt ends it at
// once, unless the command has something to save first.
func run(w world) int {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	a := &app{world: w}
	status := make(chan int, 1)
	go func() { status <- complain(w.err, a.execute(ctx), a.began) }()
	select {
	case s := <-status:
		return s
	case <-ctx.Done():
		if a.leaves.Load() {
			return <-status
		}
		return interrupted
	}
}

// execute reads the command line and runs what it names. A panic is our fault
// and never the user's: it is reported as any other failure.
func (a *app) execute(ctx context.Context) (err error) {
	defer func() {
		if r := recover(); r != nil {
			err = fail(fmt.Errorf("a fault in the program: %v", r), "please report it, with the command and the file")
		}
	}()
	root := a.root()
	root.SetArgs(a.args)
	return root.ExecuteContext(ctx)
}

// root is the command without a name: the interview.
func (a *app) root() *cobra.Command {
	var o interviewOptions
	c := &cobra.Command{
		Use:   "cutbrief",
		Short: "Size an air plasma cutting system to a customer's work, and print the page",
		Long: `cutbrief interviews a customer about what they cut, sizes a hand-held air plasma
cutting system to it, names the requirement that decides the sale, and prints an
honest one-page recommendation with a plan for the demonstration.

Without a command it starts the interview of a new visit.`,
		Example: `  cutbrief                        start the interview of a new visit
  cutbrief sample                 see the whole chain on an invented visit
  cutbrief interview visit.json   go on with a visit, or revise it
  cutbrief brief visit.json       print the page of a saved visit`,
		Args:                       a.noSuchCommand,
		SuggestionsMinimumDistance: 2,
		SilenceErrors:              true,
		SilenceUsage:               true,
		Version:                    version(),
		PersistentPreRun:           func(*cobra.Command, []string) { a.began = true },
		RunE:                       func(c *cobra.Command, _ []string) error { return a.interview(c.Context(), o) },
		CompletionOptions:          cobra.CompletionOptions{DisableDefaultCmd: true},
	}
	c.SetIn(a.in)
	c.SetOut(a.out)
	c.SetErr(a.err)
	c.SetVersionTemplate("{{.Version}}\n")
	c.SetFlagErrorFunc(flagProblem)
	c.PersistentFlags().StringVar(&a.systems, "systems", "", "CSV `file` with the systems you can offer, in place of the built-in invented range")
	c.PersistentFlags().StringVar(&a.prices, "prices", "", "CSV `file` with the prices to reckon with, in place of the built-in invented list")
	c.PersistentFlags().StringVar(&a.words, "words", "", "words of the interview and the page: en, de, or a CSV `file` with your own")
	o.flags(c)
	c.AddCommand(a.interviewCommand(), a.sampleCommand(), a.briefCommand(), a.whyCommand(), a.nextCommand(), a.practiceCommand(), a.reviewCommand(), a.manyCommand(), a.systemsCommand(),
		a.schemaCommand(), a.completionCommand(), a.versionCommand())
	c.AddCommand(a.costCommand(), a.compareCommand(), a.pricesCommand(), a.wordsCommand())
	c.AddCommand(a.rehearseCommand(), a.recordCommand(), a.followupCommand(), a.redactCommand(), a.doctorCommand(), a.guideCommand(), a.rulesCommand(), a.formatsCommand(), a.manualCommand())
	c.SetHelpCommand(helpCommand())
	return c
}

// noSuchCommand refuses words after the bare program name, and guesses what
// was meant.
func (a *app) noSuchCommand(c *cobra.Command, args []string) error {
	if len(args) == 0 {
		return nil
	}
	hint := "see cutbrief --help for the commands"
	if near := c.SuggestionsFor(args[0]); len(near) > 0 {
		hint = "did you mean cutbrief " + strings.Join(near, " or cutbrief ") + "?"
	} else if strings.HasSuffix(args[0], ".json") {
		hint = "to go on with a saved visit: cutbrief interview " + args[0]
	}
	return misuse(fmt.Sprintf("%q is not a command", args[0]), hint)
}

// flagProblem words an error of a flag.
func flagProblem(c *cobra.Command, err error) error {
	text, _, _ := strings.Cut(err.Error(), ": strconv.") // what follows speaks of our insides
	return misuse(text, "see "+c.CommandPath()+" --help")
}

// noArgs refuses arguments where there is nothing to name.
func noArgs(c *cobra.Command, args []string) error {
	if len(args) == 0 {
		return nil
	}
	return misuse(fmt.Sprintf("%s takes no argument, got %q", c.CommandPath(), args[0]), "see "+c.CommandPath()+" --help")
}
