package main

import (
	"github.com/spf13/cobra"

	"cutbrief/report/handbook"
	"cutbrief/report/text"
)

// pageFormats are the forms a page of the handbook can take.
var pageFormats = []format{textFormat, markdownFormat}

func (a *app) rulesCommand() *cobra.Command {
	var name string
	c := &cobra.Command{
		Use:   "rules",
		Short: "Print every rule, factor and caution with its source",
		Long: `rules prints what every recommendation rests on, from the tables the program itself works
with: the rules in words, what each metal counts for, what points to the requirement that
decides, the cautions, the cuts of a demonstration, the built-in prices, and the register
of sources. Each says how it is known. For one visit, cutbrief why shows the same with
that visit's numbers put in.`,
		Example: `  cutbrief rules
  cutbrief rules --format markdown > rules.md`,
		Args: noArgs,
		RunE: func(*cobra.Command, []string) error { return a.putPage(handbook.Rules(), name) },
	}
	c.Flags().StringVar(&name, "format", string(textFormat), "text or markdown")
	complete(c, "format", namesOf(pageFormats))
	return c
}

// putPage prints a page of the handbook.
func (a *app) putPage(p handbook.Page, name string) error {
	form, err := among(pageFormats, name)
	if err != nil {
		return err
	}
	if form == markdownFormat {
		return put(a.out, []byte(p.Markdown()))
	}
	return put(a.out, []byte(p.Text(text.DefaultWidth)))
}
