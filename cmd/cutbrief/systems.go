package main

import (
	"bytes"
	"fmt"
	"os"
	"slices"
	"strings"
	"text/tabwriter"

	"github.com/spf13/cobra"

	"cutbrief/rules"
	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

func (a *app) systemsCommand() *cobra.Command {
	c := &cobra.Command{
		Use:   "systems",
		Short: "List the systems you can offer; check or start a file of your own",
		Long: `systems lists the range the program sizes with. The built-in range is invented. Your
own range is a CSV file named by --systems, by the environment variable
CUTBRIEF_SYSTEMS, or kept as cutbrief/systems.csv in your configuration folder.`,
		Example: `  cutbrief systems
  cutbrief systems --systems my-systems.csv`,
		Args: noArgs,
		RunE: func(*cobra.Command, []string) error { return a.listSystems() },
	}
	c.AddCommand(a.systemsCheckCommand(), a.systemsTemplateCommand())
	return c
}

func (a *app) systemsTemplateCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "template",
		Short: "Print an example of a systems file to start from",
		Example: `  cutbrief systems template
  cutbrief systems template > my-systems.csv`,
		Args: noArgs,
		RunE: func(*cobra.Command, []string) error { return put(a.out, []byte(system.Template())) },
	}
}

func (a *app) systemsCheckCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "check FILE",
		Short: "Check a systems file line by line",
		Long: `check reads a systems file and says, line by line, what is wrong, what looks odd and
what was assumed. The exit status is 1 if anything is wrong.`,
		Example: "  cutbrief systems check my-systems.csv",
		Args:    takes(1, 1, "systems check needs the name of one file", "such as cutbrief systems check my-systems.csv"),
		RunE:    func(_ *cobra.Command, args []string) error { return a.checkSystems(args[0]) },
	}
}

// listSystems prints the range as a table, one system a line.
func (a *app) listSystems() error {
	offered, err := a.offered()
	if err != nil {
		return err
	}
	var b bytes.Buffer
	fmt.Fprintf(&b, "%s: %s%s\n\n", tidy(offered.Name), counted(len(offered.Systems), "system"), remark(offered))
	t := tabwriter.NewWriter(&b, 0, 0, 2, ' ', 0)
	fmt.Fprintln(t, "ID\tNAME\tRATED\tCLEAN TO\tSEVERS\tOUTPUT\tPHASES\tWEIGHT\tPRICE")
	for i := range offered.Systems {
		fmt.Fprintln(t, systemLine(&offered.Systems[i], offered.Currency))
	}
	t.Flush() // into memory; it cannot fail
	fmt.Fprint(&b, "\nThicknesses are mild steel, cut by hand.\n")
	return put(a.out, b.Bytes())
}

// counted is a number of things in words: 1 system, 2 systems.
func counted(n int, thing string) string {
	if n == 1 {
		return "1 " + thing
	}
	return fmt.Sprintf("%d %ss", n, thing)
}

// remark says so of a range that is.
func remark(r system.Range) string {
	if r.Invented {
		return ", all invented for the demo"
	}
	return ""
}

func systemLine(s *system.System, currency string) string {
	show := func(value float64, kind unit.Kind, r unit.Round) string {
		return unit.Show(unit.Quantity{Value: value, Kind: kind}, unit.Metric, r)
	}
	return strings.Join([]string{
		tidy(s.ID), tidy(s.Name),
		show(float64(s.Rated), unit.Thickness, unit.Down),
		show(float64(s.CleanMax), unit.Thickness, unit.Down),
		show(float64(s.Severance), unit.Thickness, unit.Down),
		fmt.Sprintf("%g–%g A", float64(s.OutputMin), float64(s.OutputMax)),
		phases(s.Supplies),
		show(float64(s.Weight), unit.Weight, unit.Up),
		price(s.Price, currency),
	}, "\t")
}

// phases lists the kinds of supply a system takes, each once.
func phases(supplies []system.Supply) string {
	var list []string
	for _, s := range supplies {
		if p := fmt.Sprint(s.Phases); !slices.Contains(list, p) {
			list = append(list, p)
		}
	}
	slices.Sort(list)
	return strings.Join(list, " or ")
}

func price(p unit.Maybe[unit.Money], currency string) string {
	money, known := p.Get()
	if !known {
		return "not known"
	}
	return strings.TrimSpace(fmt.Sprintf("%.0f %s", float64(money), tidy(currency)))
}

// checkSystems prints every finding about a file, one a line, and fails if
// there is an error among them.
func (a *app) checkSystems(path string) error {
	file, err := os.Open(path)
	if err != nil {
		return fail(fmt.Errorf("read systems %s: %w", path, reason(err)), "an example to start from: cutbrief systems template")
	}
	defer file.Close()
	offered, findings := examine(file, path)
	findings = offered.Merge(findings, rules.Doubts(offered))
	var b bytes.Buffer
	for _, f := range findings {
		fmt.Fprintln(&b, tidy(f.String()))
	}
	fmt.Fprintf(&b, "%s: %s can be used\n", tidy(path), counted(len(offered.Systems), "system"))
	if err := put(a.out, b.Bytes()); err != nil {
		return err
	}
	if n := system.Count(findings, system.Error); n > 0 {
		return fail(fmt.Errorf("systems %s: %d to correct", path, n), "the lines above say where and what would be accepted")
	}
	return nil
}
