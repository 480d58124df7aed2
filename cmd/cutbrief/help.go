package main

import (
	"io"
	"strconv"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"cutbrief/report/handbook"
	"cutbrief/rules/message"
)

// setHelp has all that is said of the commands put into words when somebody asks.
func (a *app) setHelp(root *cobra.Command) {
	show := root.HelpFunc()
	root.SetHelpFunc(func(c *cobra.Command, args []string) {
		words := a.helpWords()
		if texts := a.localizeRoot(root, words); a.rows[c] != nil { // and not one of the library's own, for shells
			a.localizeOne(c, texts, words) // and no other: that takes longer than all the rest
		}
		show(c, args)
	})
	if len(a.args) > 0 && strings.HasPrefix(a.args[0], cobra.ShellCompRequestCmd) {
		a.localize(root, a.helpWords()) // what is completed is explained
	}
}

// localize puts all that is said of the commands into words.
func (a *app) localize(root *cobra.Command, words *message.Catalog) {
	texts := a.localizeRoot(root, words)
	for c := range a.rows {
		if c == root || c.HasParent() {
			a.localizeOne(c, texts, words)
		}
	}
}

// localizeRoot puts into words what is said with every command, and returns the
// texts of each.
func (a *app) localizeRoot(root *cobra.Command, words *message.Catalog) map[string]handbook.HelpText {
	root.SetUsageFunc(func(c *cobra.Command) error {
		_, err := io.WriteString(c.OutOrStderr(), handbook.Usage(c, words))
		return err
	})
	for _, f := range globalFlags {
		f.localize(root.PersistentFlags().Lookup(f.name), words)
	}
	return handbook.HelpTexts(words)
}

// localizeOne puts a command into words, and names those below it.
func (a *app) localizeOne(c *cobra.Command, texts map[string]handbook.HelpText, words *message.Catalog) {
	row, text := a.rows[c], texts[pathOf(c)]
	c.Short, c.Long, c.Example = text.Short, text.Long, text.Example
	if row.tables != nil {
		for _, t := range row.tables(words) {
			c.Long += "\n\n" + t
		}
	}
	for _, f := range row.flags {
		f.localize(c.Flag(f.name), words)
	}
	c.InitDefaultHelpFlag()
	option{usage: "help for this command"}.localize(c.Flag("help"), words)
	for _, below := range c.Commands() {
		if a.rows[below] != nil {
			below.Short = texts[pathOf(below)].Short
		}
	}
}

// localize says what a flag does, what it may be and what it is at first.
func (f option) localize(to *pflag.Flag, words *message.Catalog) {
	var values []message.Message
	for _, v := range f.values {
		values = append(values, message.Text(v))
	}
	says := message.New(f.usage, message.Or(values...))
	if at := to.DefValue; at != "" && at != "false" && at != "0" && at != "[]" {
		says = message.New("{1} (default: {2})", says, message.Name(at))
		to.DefValue = "" // or the library would say it in English
	}
	to.Usage = words.Print(says)
}

// manual is the page of every command a user can see, for man(1), by the name of
// its file.
func (a *app) manual(root *cobra.Command, words *message.Catalog) map[string]string {
	a.localize(root, words)
	environment, statuses := handbook.ManualPart{Title: "ENVIRONMENT"}, handbook.ManualPart{Title: "EXIT STATUS"}
	for _, v := range variables {
		environment.Entries = append(environment.Entries, handbook.ManualEntry{Name: v.name, Says: words.Print(v.says.Message())})
	}
	for _, s := range exitStatuses {
		statuses.Entries = append(statuses.Entries, handbook.ManualEntry{Name: strconv.Itoa(s.status), Says: words.Print(s.says.Message())})
	}
	return handbook.Manuals(root, words, environment, statuses)
}
