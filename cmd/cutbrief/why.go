package main

import (
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"cutbrief/report"
	"cutbrief/report/data"
	"cutbrief/report/text"
	"cutbrief/rules"
	"cutbrief/rules/message"
)

// whyFormats are the forms a derivation can take.
var whyFormats = []format{textFormat, markdownFormat, jsonFormat}

// nextFormats are the forms the open questions can take.
var nextFormats = []format{textFormat, jsonFormat}

func (a *app) whyCommand() *cobra.Command {
	var name, units string
	c := &cobra.Command{
		Use:   "why FILE [TOPIC]",
		Short: "Derive any number on the page: inputs, formula, margin, source",
		Long: `why shows how the conclusions about a visit were reached: what was told, the rule in
words, the rule with the numbers put in, the margin, and what it rests on. A topic is
the name in square brackets; without one, all of them are shown. "-" as FILE reads a
visit from standard input.`,
		Example: `  cutbrief why visit.json
  cutbrief why visit.json clean-cut
  cutbrief why visit.json --format markdown
  cutbrief why - need --format json < visit.json`,
		Args: takes(1, 2, "why needs the file of a visit, and takes one topic", "such as cutbrief why visit.json clean-cut"),
		ValidArgsFunction: func(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
			if len(args) == 1 {
				return topics(), cobra.ShellCompDirectiveNoFileComp
			}
			return nil, cobra.ShellCompDirectiveDefault
		},
		RunE: func(_ *cobra.Command, args []string) error { return a.why(args, name, units) },
	}
	c.Flags().StringVar(&name, "format", string(textFormat), "text, markdown or json")
	c.Flags().StringVar(&units, "units", "", "mm or in (default: the visit's own)")
	complete(c, "format", namesOf(whyFormats))
	complete(c, "units", []string{"mm", "in"})
	return c
}

// topics are the names a derivation may be asked by.
func topics() []string {
	names := []string{"recommendation", "need", "metals", "critical", "margins", "excluded", "open"}
	for _, r := range rules.Table() {
		names = append(names, string(r.ID))
	}
	return names
}

// why prints the derivation of a visit, or of one topic of it.
func (a *app) why(args []string, name, units string) error {
	form, err := among(whyFormats, name)
	if err != nil {
		return err
	}
	v, offered, o, err := a.subject(args[0], units)
	if err != nil {
		return err
	}
	if o.Words, err = a.bookFor(form); err != nil {
		return err
	}
	reasons := report.Why(v, offered, o)
	if len(args) == 2 {
		if reasons, err = about(reasons, args[1]); err != nil {
			return err
		}
	}
	return a.putReasons(reasons, form, o.Words)
}

// about keeps one topic.
func about(reasons []report.Reason, topic string) ([]report.Reason, error) {
	var names []string
	for _, r := range reasons {
		if r.Topic == topic {
			return []report.Reason{r}, nil
		}
		names = append(names, r.Topic)
	}
	if slices.Contains(topics(), topic) {
		return nil, fail(fmt.Errorf("%s plays no part in this visit", topic), "topics here: %s", strings.Join(names, ", "))
	}
	return nil, misuse(fmt.Sprintf("%q is not a topic", topic), "one of "+strings.Join(names, ", "))
}

func (a *app) putReasons(reasons []report.Reason, form format, words *message.Catalog) error {
	switch form {
	case markdownFormat:
		return put(a.out, []byte(text.WhyMarkdownIn(words, reasons)))
	case jsonFormat:
		written, err := data.Reasons(reasons)
		if err != nil {
			return err
		}
		return put(a.out, written)
	}
	return put(a.out, []byte(text.WhyIn(words, reasons, text.DefaultWidth)))
}

func (a *app) nextCommand() *cobra.Command {
	var name string
	c := &cobra.Command{
		Use:   "next FILE",
		Short: "List the open questions that could change the recommendation",
		Long: `next lists what to ask next: the questions without an answer that could change the
system, what decides the sale, or a verdict about the site, strongest first. "-" as
FILE reads a visit from standard input.`,
		Example: `  cutbrief next visit.json
  cutbrief next visit.json --format json`,
		Args: anyVisit("next"),
		RunE: func(_ *cobra.Command, args []string) error { return a.next(args[0], name) },
	}
	c.Flags().StringVar(&name, "format", string(textFormat), "text or json")
	complete(c, "format", namesOf(nextFormats))
	return c
}

// next prints the open questions of a visit.
func (a *app) next(file, name string) error {
	form, err := among(nextFormats, name)
	if err != nil {
		return err
	}
	v, offered, err := a.visitAndRange(file)
	if err != nil {
		return err
	}
	words, err := a.bookFor(form)
	if err != nil {
		return err
	}
	lines := report.NextIn(words, v, offered)
	if form == textFormat {
		return put(a.out, []byte(text.NextIn(words, lines, text.DefaultWidth)))
	}
	written, err := data.Lines(lines)
	if err != nil {
		return err
	}
	return put(a.out, written)
}

// namesOf are the names of some formats.
func namesOf(list []format) []string {
	var names []string
	for _, f := range list {
		names = append(names, string(f))
	}
	return names
}

// among is the format named, if it is one of a list.
func among(list []format, name string) (format, error) {
	if f := format(strings.ToLower(name)); slices.Contains(list, f) {
		return f, nil
	}
	return "", misuse(fmt.Sprintf("--format %q is not a format we write here", name), "one of "+strings.Join(namesOf(list), ", "))
}
