package handbook

import (
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"cutbrief/rules/message"
)

// Manuals are the pages of a command and of all below it that a user can see, by
// the names of their files. The words of the commands were put in already; that of
// the program has some parts besides. They say nothing of a time or a machine, so
// that they are the same wherever they are made.
func Manuals(root *cobra.Command, words *message.Catalog, besides ...ManualPart) map[string]string {
	pages := map[string]string{}
	for _, c := range visible(root) {
		m := manualOf(c)
		if !c.HasParent() {
			m.Parts = append(m.Parts, besides...)
		}
		pages[m.Name+".1"] = m.Roff(words)
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
func manualOf(c *cobra.Command) Manual {
	m := Manual{
		Name: pageName(c), Short: c.Short, Command: c.CommandPath(), Takes: strings.TrimSpace(strings.TrimPrefix(c.UseLine(), c.CommandPath())),
		Long: c.Long, Examples: c.Example,
	}
	var below []ManualEntry
	if c.HasParent() {
		m.SeeAlso = []string{pageName(c.Parent())}
	}
	for _, b := range c.Commands() {
		if !b.Hidden {
			m.SeeAlso = append(m.SeeAlso, pageName(b))
			below = append(below, ManualEntry{Name: b.Name(), Says: b.Short + "."})
		}
	}
	if !c.HasAvailableSubCommands() {
		below = nil
	}
	m.Parts = []ManualPart{{Title: "COMMANDS", Entries: below}, {Title: "OPTIONS", Entries: entries(c.NonInheritedFlags())},
		{Title: "OPTIONS OF EVERY COMMAND", Entries: entries(c.InheritedFlags())}, {Title: "EXAMPLES"}}
	return m
}

// entries are options as the manual lists them.
func entries(flags *pflag.FlagSet) (list []ManualEntry) {
	flags.VisitAll(func(f *pflag.Flag) {
		name := "--" + f.Name
		if f.Shorthand != "" {
			name = "-" + f.Shorthand + ", " + name
		}
		takes, says := pflag.UnquoteUsage(f)
		list = append(list, ManualEntry{Name: name, Takes: takes, Says: says})
	})
	return list
}
