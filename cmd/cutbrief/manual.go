package main

import (
	"strconv"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"cutbrief/report/handbook"
	"cutbrief/rules/message"
)

// manual is the page of every command a user can see, for man(1), by the name of
// its file. The pages say nothing of a time or a machine, so that they are the
// same wherever they are made.
func (a *app) manual(root *cobra.Command, words *message.Catalog) map[string]string {
	a.localize(root, words)
	pages := map[string]string{}
	for _, c := range visible(root) {
		pages[pageName(c)+".1"] = manualOf(c, words).Roff(words)
	}
	return pages
}

// visible are a command and all below it that are not hidden.
func visible(c *cobra.Command) []*cobra.Command {
	list := []*cobra.Command{c}
	for _, below := range c.Commands() {
		if !below.Hidden {
			list = append(list, visible(below)...)
		}
	}
	return list
}

// pageName is what the page of a command is called: cutbrief-systems-check.
func pageName(c *cobra.Command) string { return strings.ReplaceAll(c.CommandPath(), " ", "-") }

// manualOf is the page of a command whose words were put in already.
func manualOf(c *cobra.Command, words *message.Catalog) handbook.Manual {
	m := handbook.Manual{
		Name: pageName(c), Short: c.Short, Command: c.CommandPath(), Takes: strings.TrimSpace(strings.TrimPrefix(c.UseLine(), c.CommandPath())),
		Long: c.Long, Examples: c.Example,
	}
	var below []handbook.ManualEntry
	if c.HasParent() {
		m.SeeAlso = []string{pageName(c.Parent())}
	}
	for _, b := range c.Commands() {
		if !b.Hidden {
			m.SeeAlso = append(m.SeeAlso, pageName(b))
			below = append(below, handbook.ManualEntry{Name: b.Name(), Says: b.Short + "."})
		}
	}
	if !c.HasAvailableSubCommands() {
		below = nil
	}
	m.Parts = []handbook.ManualPart{{Title: "COMMANDS", Entries: below}, {Title: "OPTIONS", Entries: entries(c.NonInheritedFlags())},
		{Title: "OPTIONS OF EVERY COMMAND", Entries: entries(c.InheritedFlags())}, {Title: "EXAMPLES"}}
	if c.HasParent() {
		return m
	}
	environment, statuses := handbook.ManualPart{Title: "ENVIRONMENT"}, handbook.ManualPart{Title: "EXIT STATUS"}
	for _, v := range variables {
		environment.Entries = append(environment.Entries, handbook.ManualEntry{Name: v.name, Says: words.Print(v.says.Message())})
	}
	for _, s := range exitStatuses {
		statuses.Entries = append(statuses.Entries, handbook.ManualEntry{Name: strconv.Itoa(s.status), Says: words.Print(s.says.Message())})
	}
	m.Parts = append(m.Parts, environment, statuses)
	return m
}

// entries are options as the manual lists them.
func entries(flags *pflag.FlagSet) (list []handbook.ManualEntry) {
	flags.VisitAll(func(f *pflag.Flag) {
		name := "--" + f.Name
		if f.Shorthand != "" {
			name = "-" + f.Shorthand + ", " + name
		}
		takes, says := pflag.UnquoteUsage(f)
		list = append(list, handbook.ManualEntry{Name: name, Takes: takes, Says: says})
	})
	return list
}
