package main

import (
	"errors"
	"strings"

	"github.com/spf13/cobra"

	"cutbrief/assess"
	"cutbrief/report"
	"cutbrief/report/data"
	"cutbrief/report/text"
	"cutbrief/rules/system"
)

// costFormats are the forms an account takes, compareFormats those of a
// comparison.
var (
	costFormats    = []format{textFormat, markdownFormat, csvFormat, jsonFormat}
	compareFormats = []format{textFormat, markdownFormat, jsonFormat}
)

func (a *app) costCommand() *cobra.Command {
	var name, units string
	c := &cobra.Command{
		Use:   "cost FILE",
		Short: "Work out what cutting costs today and would cost",
		Long: `cost makes the whole account of a visit: what a metre and a year of cutting cost today
and with each system that does the work, as ranges, what is saved, when a system has
paid for itself, what moves that most, and where oxy-fuel is cheaper. "-" as FILE reads
a visit from standard input. The prices are those the customer told, then your price
list's; see cutbrief prices.`,
		Example: `  cutbrief cost visit.json
  cutbrief cost visit.json --prices my-prices.csv
  cutbrief cost visit.json --format csv > cost.csv
  cutbrief cost - --format json < visit.json`,
		Args: anyVisit("cost"),
		RunE: func(_ *cobra.Command, args []string) error { return a.cost(args[0], name, units) },
	}
	c.Flags().StringVar(&name, "format", string(textFormat), "text, markdown, csv or json")
	c.Flags().StringVar(&units, "units", "", "mm or in (default: the visit's own)")
	complete(c, "format", namesOf(costFormats))
	complete(c, "units", []string{"mm", "in"})
	return c
}

// subject reads what a command about one visit is about.
func (a *app) subject(file, units string) (v *assess.Visit, offered system.Range, o report.Options, err error) {
	if o.Style, err = styleOf(units); err != nil {
		return
	}
	if offered, o.Prices, err = a.lists(); err != nil {
		return
	}
	v, err = a.readVisit(file)
	return
}

// cost prints the account of a visit.
func (a *app) cost(file, name, units string) error {
	form, err := among(costFormats, name)
	if err != nil {
		return err
	}
	v, offered, o, err := a.subject(file, units)
	if err != nil {
		return err
	}
	if o.Words, err = a.bookFor(form); err != nil {
		return err
	}
	sheet := report.Costs(v, offered, o)
	var written []byte
	switch form {
	case markdownFormat:
		written = []byte(text.CostMarkdown(sheet))
	case csvFormat:
		written, err = data.CostCSV(sheet)
	case jsonFormat:
		written, err = data.CostSheet(sheet)
	default:
		written = []byte(text.CostSheet(sheet, text.DefaultWidth))
	}
	if err != nil {
		return err
	}
	return put(a.out, written)
}

func (a *app) compareCommand() *cobra.Command {
	var name, units string
	var only []string
	c := &cobra.Command{
		Use:   "compare FILE",
		Short: "Put systems side by side with the way they cut today",
		Long: `compare puts the system recommended beside the alternatives and the way of today:
capacity, margin, speed on this customer's everyday cut, duty cycle, supply, air,
weight, price, cost of a metre, payback. Without --only it takes the best four that do
the work. "-" as FILE reads a visit from standard input.`,
		Example: `  cutbrief compare visit.json
  cutbrief compare visit.json --only demo-45,demo-70
  cutbrief compare visit.json --format markdown`,
		Args: anyVisit("compare"),
		RunE: func(_ *cobra.Command, args []string) error { return a.compare(args[0], name, units, only) },
	}
	c.Flags().StringVar(&name, "format", string(textFormat), "text, markdown or json")
	c.Flags().StringVar(&units, "units", "", "mm or in (default: the visit's own)")
	c.Flags().StringSliceVar(&only, "only", nil, "the systems to compare, by `id`, with commas between")
	complete(c, "format", namesOf(compareFormats))
	complete(c, "units", []string{"mm", "in"})
	return c
}

// compare prints systems side by side.
func (a *app) compare(file, name, units string, only []string) error {
	form, err := among(compareFormats, name)
	if err != nil {
		return err
	}
	v, offered, o, err := a.subject(file, units)
	if err != nil {
		return err
	}
	if o.Words, err = a.bookFor(form); err != nil {
		return err
	}
	c, err := report.Compare(v, offered, o, only)
	var unknown *report.UnknownSystemError
	if errors.As(err, &unknown) {
		return misuse(err.Error(), "its systems: "+strings.Join(idsOf(offered), ", "))
	}
	if err != nil {
		return err
	}
	switch form {
	case markdownFormat:
		return put(a.out, []byte(text.ComparisonMarkdown(c)))
	case jsonFormat:
		written, err := data.Comparison(c)
		if err != nil {
			return err
		}
		return put(a.out, written)
	}
	return put(a.out, []byte(text.Comparison(c, text.DefaultWidth)))
}

// idsOf are the identifiers of a range.
func idsOf(offered system.Range) []string {
	var ids []string
	for i := range offered.Systems {
		ids = append(ids, offered.Systems[i].ID)
	}
	return ids
}
