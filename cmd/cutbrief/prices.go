package main

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"
	"text/tabwriter"

	"github.com/spf13/cobra"

	"cutbrief/rules/csvfile"
	prices "cutbrief/rules/price"
	"cutbrief/rules/system"
)

func (a *app) pricesCommand() *cobra.Command {
	c := &cobra.Command{
		Use:   "prices",
		Short: "List the prices costs are worked out with; check or start a list of your own",
		Long: `prices lists the prices that costs are worked out with. The built-in list is invented.
Your own list is a CSV file named by --prices, by the environment variable
CUTBRIEF_PRICES, or kept as cutbrief/prices.csv in your configuration folder. What the
customer tells in the interview stands before any list.`,
		Example: `  cutbrief prices
  cutbrief prices --prices my-prices.csv`,
		Args: noArgs,
		RunE: func(*cobra.Command, []string) error { return a.listPrices() },
	}
	c.AddCommand(a.pricesCheckCommand(), a.pricesTemplateCommand())
	return c
}

func (a *app) pricesTemplateCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "template",
		Short: "Print an example of a price list to start from",
		Example: `  cutbrief prices template
  cutbrief prices template > my-prices.csv`,
		Args: noArgs,
		RunE: func(*cobra.Command, []string) error { return put(a.out, []byte(prices.Template())) },
	}
}

func (a *app) pricesCheckCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "check FILE",
		Short: "Check a price list line by line",
		Long: `check reads a price list and says, line by line, what is wrong, what looks odd and what
was assumed. The exit status is 1 if anything is wrong.`,
		Example: "  cutbrief prices check my-prices.csv",
		Args:    takes(1, 1, "prices check needs the name of one file", "such as cutbrief prices check my-prices.csv"),
		RunE:    func(_ *cobra.Command, args []string) error { return a.checkPrices(args[0]) },
	}
}

// priceList is the list costs are worked out with: the user's own, or the
// built-in invented one when there is none. A list with errors is refused.
func (a *app) priceList() (*prices.List, error) {
	list := prices.Demo()
	path, named := a.pricesFile(a.prices)
	if path == "" {
		return &list, nil
	}
	file, err := os.Open(path)
	if !named && errors.Is(err, fs.ErrNotExist) {
		return &list, nil
	}
	if err != nil {
		return nil, fail(fmt.Errorf("read prices %s: %w", path, reason(err)), "an example to start from: cutbrief prices template")
	}
	defer file.Close()
	list, findings := prices.Read(file, filepath.Base(path))
	for _, f := range findings {
		if f.Severity == csvfile.Error {
			return nil, fail(fmt.Errorf("prices %s: %s", path, f), "see every line with: cutbrief prices check %s", path)
		}
	}
	return &list, nil
}

// lists are the systems to size with and the prices to cost with.
func (a *app) lists() (system.Range, *prices.List, error) {
	offered, err := a.offered()
	if err != nil {
		return system.Range{}, nil, err
	}
	list, err := a.priceList()
	return offered, list, err
}

// pricesFile is the user's own price list, found as systemsFile finds the
// range.
func (w *world) pricesFile(flag string) (path string, named bool) {
	if flag != "" {
		return flag, true
	}
	if path := w.env("CUTBRIEF_PRICES"); path != "" {
		return path, true
	}
	base, err := w.userDir("XDG_CONFIG_HOME", ".config")
	if err != nil {
		return "", false
	}
	return filepath.Join(base, "cutbrief", "prices.csv"), false
}

// listPrices prints the list as a table, one price a line.
func (a *app) listPrices() error {
	list, err := a.priceList()
	if err != nil {
		return err
	}
	var b bytes.Buffer
	mark := ""
	if list.Invented {
		mark = ", with prices invented for the demo"
	}
	fmt.Fprintf(&b, "%s: %s%s\n", tidy(list.Name), counted(len(list.IDs()), "item"), mark)
	fmt.Fprintf(&b, "%s, %s, %s\n\n", saidOf(list.Currency, "currency"), saidOf(list.Date, "date"), saidOf(list.Place, "place"))
	t := tabwriter.NewWriter(&b, 0, 0, 2, ' ', 0)
	fmt.Fprintln(t, "ITEM\tLOW\tLIKELY\tHIGH\tUNIT\tBASIS")
	for _, id := range list.IDs() {
		p, _ := list.Get(id)
		item, _ := prices.FindItem(id)
		fmt.Fprintf(t, "%s\t%s\t%s\t%s\t%s\t%s\n", id, priced(p.Low), priced(p.Likely), priced(p.High), tidy(unitOf(item, list.Currency)), p.Basis)
	}
	t.Flush() // into memory; it cannot fail
	return put(a.out, b.Bytes())
}

// saidOf is what a list says of itself, or that it does not.
func saidOf(text, what string) string {
	if text == "" {
		return "no " + what + " said"
	}
	return tidy(text)
}

// unitOf is the unit of an item: EUR per h, or a plain one.
func unitOf(item prices.Item, currency string) string {
	if item.Money {
		return currency + " per " + item.Unit()
	}
	return item.Unit()
}

func priced(v float64) string { return strconv.FormatFloat(v, 'g', 5, 64) }

// checkPrices prints every finding about a file, one a line, and fails if
// there is an error among them.
func (a *app) checkPrices(path string) error {
	file, err := os.Open(path)
	if err != nil {
		return fail(fmt.Errorf("read prices %s: %w", path, reason(err)), "an example to start from: cutbrief prices template")
	}
	defer file.Close()
	list, findings := prices.Read(file, filepath.Base(path))
	var b bytes.Buffer
	for _, f := range findings {
		fmt.Fprintln(&b, tidy(f.String()))
	}
	fmt.Fprintf(&b, "%s: %s can be used\n", tidy(path), counted(len(list.IDs()), "item"))
	if err := put(a.out, b.Bytes()); err != nil {
		return err
	}
	if n := csvfile.Count(findings, csvfile.Error); n > 0 {
		return fail(fmt.Errorf("prices %s: %d to correct", path, n), "the lines above say where and what would be accepted")
	}
	return nil
}
