package main

import (
	"context"
	"fmt"
	"hash/fnv"
	"io"
	"os"
	"strings"

	"github.com/spf13/cobra"

	"cutbrief/assess/casebook"
	"cutbrief/assess/screen/practice"
	"cutbrief/assess/screen/talk"
	"cutbrief/rules/csvfile"
	"cutbrief/rules/system"
)

// practiceOptions are the flags of practice.
type practiceOptions struct {
	name   string
	cases  string
	seed   uint64
	seeded bool
	level  int
	plain  bool
	list   bool
	report bool
	format string
}

// practiceFormats are the forms a report of progress can take.
var practiceFormats = []format{textFormat, commaFormat, jsonFormat}

const commaFormat format = "csv"

func (a *app) practiceCommand() *cobra.Command {
	var o practiceOptions
	c := &cobra.Command{
		Use:   "practice",
		Short: "Practise on invented customers who are not easy, and be marked by the rules",
		Long: `practice is an interview with an invented customer who has a way of speaking and a few
minutes of patience. You ask, listen, follow up and take notes as in a real interview,
then say what decides, which system you would offer and which cuts you would show. The
mark says what each miss could have cost, judged by the same rules as a real page.

Without --case or --seed the next customer is chosen for you.
` + casebook.Repetition(nil) + `
--seed makes a customer from a number: the same number and level give the same customer,
so that a trainer can hand it out. Progress is kept in your data folder; it holds
nothing about real customers. --report shows it.

Where no screen can be drawn, or with --plain, the practice goes line by line.`,
		Example: `  cutbrief practice --list
  cutbrief practice --plain --case bench-top < /dev/null   a built-in customer
  cutbrief practice --plain --seed 17 --level 3 < /dev/null   one made from a number
  cutbrief practice template > my-cases.txt && cutbrief practice --cases my-cases.txt --list
  cutbrief practice --report --format csv`,
		Args: noArgs,
		RunE: func(c *cobra.Command, _ []string) error {
			o.seeded = c.Flags().Changed("seed")
			return a.practice(c.Context(), o)
		},
	}
	c.Flags().StringVar(&o.name, "case", "", "`name` of the customer to meet")
	c.Flags().StringVar(&o.cases, "cases", "", "`file` with cases of your own, beside the built-in ones")
	c.Flags().Uint64Var(&o.seed, "seed", 0, "`number` to make a customer from; with --case it chooses the words")
	c.Flags().IntVar(&o.level, "level", 0, "1, easy, to 5, hard (default: any)")
	c.Flags().BoolVar(&o.plain, "plain", false, "go line by line, without drawing a screen")
	c.Flags().BoolVar(&o.list, "list", false, "list the customers and leave")
	c.Flags().BoolVar(&o.report, "report", false, "print your progress and leave")
	c.Flags().StringVar(&o.format, "format", string(textFormat), "of the report: text, csv or json")
	complete(c, "format", namesOf(practiceFormats))
	_ = c.RegisterFlagCompletionFunc("case", func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
		return caseNames(casebook.Cases()), cobra.ShellCompDirectiveNoFileComp
	}) // fails only for a flag that does not exist
	c.AddCommand(a.practiceCheckCommand(), a.practiceTemplateCommand())
	return c
}

func (a *app) practiceTemplateCommand() *cobra.Command {
	return &cobra.Command{
		Use:     "template",
		Short:   "Print a case to start from, with the format explained",
		Example: "  cutbrief practice template > my-cases.txt",
		Args:    noArgs,
		RunE:    func(*cobra.Command, []string) error { return put(a.out, []byte(casebook.Template())) },
	}
}

func (a *app) practiceCheckCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "check FILE",
		Short: "Check a file of cases line by line",
		Long: `check reads a file of cases and says, line by line, what is wrong: answers that are not
understood, facts that contradict one another, a right answer that the rules do not come
to, and too little patience for a good way through. The exit status is 1 if anything is
wrong. The format is explained in: cutbrief practice template`,
		Example: "  cutbrief practice template > my-cases.txt && cutbrief practice check my-cases.txt",
		Args:    takes(1, 1, "practice check needs the name of one file", "such as cutbrief practice check my-cases.txt"),
		RunE:    func(_ *cobra.Command, args []string) error { return a.checkCases(args[0]) },
	}
}

// practice does what the flags ask for.
func (a *app) practice(ctx context.Context, o practiceOptions) error {
	if o.level < 0 || o.level > 5 {
		return misuse(fmt.Sprintf("--level %d is no level", o.level), "1, easy, to 5, hard")
	}
	if o.report {
		return a.reportProgress(o.format)
	}
	offered, err := a.offered()
	if err != nil {
		return err
	}
	known, err := a.customers(o.cases, offered)
	if err != nil {
		return err
	}
	if o.list {
		return put(a.out, []byte(listed(known, o.level)))
	}
	path, err := a.progressFile()
	if err != nil {
		return err
	}
	progress, err := loadProgress(path)
	if err != nil {
		return err
	}
	customer, err := a.meet(o, known, &progress, offered)
	if err != nil {
		return err
	}
	return a.holdPractice(ctx, o, path, casebook.Start(&customer, offered))
}

// customers are the built-in cases and those of a file. A file with an error is
// refused: a practice must be fair.
func (a *app) customers(file string, offered system.Range) ([]casebook.Customer, error) {
	if file == "" {
		return casebook.Cases(), nil
	}
	own, findings, err := examineCases(file, offered)
	if err != nil {
		return nil, err
	}
	if len(findings) > 0 {
		return nil, fail(fmt.Errorf("cases %s: %s", file, findings[0]), "see every line with: cutbrief practice check %s", shellWord(file))
	}
	return append(own, casebook.Cases()...), nil
}

// examineCases reads a file of cases and checks each that can be read.
func examineCases(file string, offered system.Range) ([]casebook.Customer, []csvfile.Finding, error) {
	f, err := os.Open(file)
	if err != nil {
		return nil, nil, fail(fmt.Errorf("read cases %s: %w", file, reason(err)), "an example to start from: cutbrief practice template")
	}
	defer f.Close()
	list, findings := casebook.Read(f)
	for i := range list {
		findings = append(findings, casebook.Check(&list[i], offered)...)
	}
	return list, findings, nil
}

// checkCases prints every finding about a file, one a line.
func (a *app) checkCases(file string) error {
	offered, err := a.offered()
	if err != nil {
		return err
	}
	list, findings, err := examineCases(file, offered)
	if err != nil {
		return err
	}
	var b strings.Builder
	for _, f := range findings {
		fmt.Fprintln(&b, tidy(f.String()))
	}
	fmt.Fprintf(&b, "%s: %s read\n", tidy(file), counted(len(list), "case"))
	if err := put(a.out, []byte(b.String())); err != nil {
		return err
	}
	if len(findings) > 0 {
		return fail(fmt.Errorf("cases %s: %d to correct", file, len(findings)), "the lines above say where and what would be accepted")
	}
	return nil
}

// listed is the customers as a table; how each speaks is for the trainee to
// find out.
func listed(list []casebook.Customer, level int) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%-18s %-6s %-8s %s\n", "CASE", "LEVEL", "MINUTES", "WHO")
	for _, c := range list {
		if level == 0 || c.Level == level {
			fmt.Fprintf(&b, "%-18s %-6d %-8d %s\n", tidy(c.Name), c.Level, c.Minutes, tidy(c.Company()))
		}
	}
	return b.String() + "\nAll invented. Meet one with: cutbrief practice --case NAME\n"
}

func caseNames(list []casebook.Customer) []string {
	var names []string
	for _, c := range list {
		names = append(names, c.Name)
	}
	return names
}

// meet finds the customer to meet.
func (a *app) meet(o practiceOptions, known []casebook.Customer, p *casebook.Progress, offered system.Range) (casebook.Customer, error) {
	if !o.seeded {
		o.seed = a.drawSeed()
	}
	switch {
	case o.name != "":
		for _, c := range known {
			if c.Name == o.name {
				c.Seed = o.seed
				return c, nil
			}
		}
		return casebook.Customer{}, misuse(fmt.Sprintf("%q is not a case", o.name), "see cutbrief practice --list")
	case !o.seeded:
		if c, ok := p.Draw(known, o.level); ok {
			c.Seed = o.seed
			return c, nil
		}
	}
	if o.level == 0 {
		o.level = 1 + int(o.seed%5)
	}
	c, ok := p.Make(o.seed, o.level, offered, o.seeded)
	if !ok {
		return c, fail(fmt.Errorf("no customer can be made for the systems of %s", offered.Name), "try another --seed or --level, or a --case")
	}
	return c, nil
}

// drawSeed is a number that is short enough to be told on.
func (a *app) drawSeed() uint64 {
	h := fnv.New32a()
	io.WriteString(h, a.newID())
	return uint64(h.Sum32() % 100000)
}

// again is how to meet the same customer again.
func again(c *casebook.Customer, o practiceOptions) string {
	command := "cutbrief practice"
	if o.cases != "" {
		command += " --cases " + shellWord(o.cases)
	}
	if c.Name != "" {
		return fmt.Sprintf("%s --case %s --seed %d", command, c.Name, c.Seed)
	}
	return fmt.Sprintf("%s --seed %d --level %d", command, c.Seed, c.Level)
}

// holdPractice runs the practice in the way that fits, keeps the mark, and says
// goodbye.
func (a *app) holdPractice(ctx context.Context, o practiceOptions, path string, s *casebook.Session) error {
	a.leaves.Store(true)
	m, marked, err := a.practise(ctx, o, s)
	if err != nil {
		return err
	}
	text := "\nThis customer again: " + tidy(again(s.Customer, o)) + "\n"
	if marked {
		progress, err := addProgress(path, m.Practice(a.now()))
		if err != nil {
			return err
		}
		text = "\n" + progress.Chart(nil) + casebook.Repetition(nil) + "\n" + text
	}
	return put(a.out, []byte(text))
}

// practise runs the practice on the screen, or line by line.
func (a *app) practise(ctx context.Context, o practiceOptions, s *casebook.Session) (casebook.Mark, bool, error) {
	if o.plain || a.wantsPlain() {
		m, marked, err := talk.Run(untilDone{ctx, a.in}, a.out, s)
		if err != nil {
			err = fail(fmt.Errorf("read the lines: %w", err), "start again; a practice is kept only when it is marked")
		}
		return m, marked, err
	}
	m, marked, err := practice.Run(ctx, a.in, a.out, s)
	if err != nil {
		return m, marked, fail(fmt.Errorf("draw the practice: %w", err), "try cutbrief practice --plain")
	}
	if marked {
		err = put(a.out, []byte(m.Summary().String()+"\n")) // the page went with the screen
	}
	return m, marked, err
}
