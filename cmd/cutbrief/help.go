package main

import (
	"embed"
	"fmt"
	"io"
	"strings"
	"text/tabwriter"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"cutbrief/rules/message"
)

//go:embed help/*.md
var helpDocuments embed.FS

// helpText is what help says of one command.
type helpText struct {
	short   string // one line, without a full stop
	long    string // paragraphs, broken by hand, as nobody else breaks them
	example string // command lines behind a margin, some with a remark
}

// helpTexts are those of every command by its path, in the language of the words
// in use, or else in English. A document has a part for each command: its short
// text, its paragraphs, and its examples, behind a margin.
func helpTexts(words *message.Catalog) map[string]helpText {
	document, err := helpDocuments.ReadFile("help/" + words.Code() + ".md")
	if err != nil {
		document, _ = helpDocuments.ReadFile("help/en.md") // a test reads it
	}
	list := map[string]helpText{}
	for part := range strings.SplitSeq("\n"+string(document), "\n# ") {
		path, rest, found := strings.Cut(part, "\n\n")
		if !found {
			continue // what stands before the first
		}
		short, rest, _ := strings.Cut(strings.TrimSpace(rest), "\n\n")
		text := helpText{short: short}
		if at := strings.LastIndex("\n\n"+rest, "\n\n    "); at >= 0 {
			text.long = strings.TrimSpace(rest[:at])
			text.example = strings.ReplaceAll("\n"+strings.TrimPrefix(rest[at:], "\n"), "\n    ", "\n  ")[1:]
		}
		list[path] = text
	}
	return list
}

// usage writes how a command is called, with our words for the titles.
func usage(c *cobra.Command, words *message.Catalog) string {
	var b strings.Builder
	part := func(title message.ID, text string) {
		fmt.Fprintf(&b, "\n\n%s\n%s", words.Print(title.Message()), strings.TrimRight(text, " \n"))
	}
	c.LocalFlags() // has the library put those of the commands above among them
	b.WriteString(words.Print(message.ID("Usage:").Message()))
	if c.Runnable() {
		b.WriteString("\n  " + c.UseLine())
	}
	if c.HasAvailableSubCommands() {
		b.WriteString("\n  " + c.CommandPath() + " [command]")
	}
	if c.HasExample() {
		part("Examples:", c.Example)
	}
	if c.HasAvailableSubCommands() {
		var list strings.Builder
		for _, below := range c.Commands() {
			if below.IsAvailableCommand() {
				fmt.Fprintf(&list, "  %-*s %s\n", below.NamePadding(), below.Name(), below.Short)
			}
		}
		part("Commands:", list.String())
	}
	if c.HasAvailableLocalFlags() {
		part("Flags:", c.LocalFlags().FlagUsages())
	}
	if c.HasAvailableInheritedFlags() {
		part("Flags of every command:", c.InheritedFlags().FlagUsages())
	}
	if c.HasAvailableSubCommands() {
		b.WriteString("\n\n" + words.Print(message.New("More about a command: {1}", message.Name(c.CommandPath()+" COMMAND --help"))))
	}
	return b.String() + "\n"
}

// setHelp has all that is said of the commands put into words when somebody asks.
func (a *app) setHelp(root *cobra.Command) {
	show := root.HelpFunc()
	root.SetHelpFunc(func(c *cobra.Command, args []string) {
		words := a.helpWords()
		a.localizeOne(c, a.localizeRoot(root, words), words) // and no other: that takes longer than all the rest
		show(c, args)
	})
	if len(a.args) > 0 && strings.HasPrefix(a.args[0], cobra.ShellCompRequestCmd) {
		a.localize(root, a.helpWords()) // what is completed is explained
	}
}

// localize puts all that is said of the commands into words.
func (a *app) localize(root *cobra.Command, words *message.Catalog) {
	a.localizeTree(root, a.localizeRoot(root, words), words)
}

// localizeRoot puts into words what is said with every command, and returns the
// texts of each.
func (a *app) localizeRoot(root *cobra.Command, words *message.Catalog) map[string]helpText {
	root.SetUsageFunc(func(c *cobra.Command) error {
		_, err := io.WriteString(c.OutOrStderr(), usage(c, words))
		return err
	})
	for _, f := range globalFlags {
		f.localize(root.PersistentFlags().Lookup(f.name), words)
	}
	return helpTexts(words)
}

func (a *app) localizeTree(c *cobra.Command, texts map[string]helpText, words *message.Catalog) {
	a.localizeOne(c, texts, words)
	for _, below := range c.Commands() {
		a.localizeTree(below, texts, words)
	}
}

// localizeOne puts a command into words, and names those below it.
func (a *app) localizeOne(c *cobra.Command, texts map[string]helpText, words *message.Catalog) {
	row, text := a.rows[c], texts[pathOf(c)]
	if row == nil {
		return // one of the library's own, for shells
	}
	c.Short, c.Long, c.Example = text.short, text.long, text.example
	if row.tables != nil {
		for _, t := range row.tables() {
			c.Long += "\n\n" + t.text(words)
		}
	}
	for _, f := range row.flags {
		f.localize(c.Flag(f.name), words)
	}
	c.InitDefaultHelpFlag()
	option{usage: "help for this command"}.localize(c.Flag("help"), words)
	for _, below := range c.Commands() {
		if a.rows[below] != nil {
			below.Short = texts[pathOf(below)].short
		}
	}
}

// helpTable is a list of names with what is said of each.
type helpTable struct {
	title message.ID
	rows  []helpRow
}

type helpRow struct {
	name string
	says message.ID
}

func (t helpTable) text(words *message.Catalog) string {
	var b strings.Builder
	b.WriteString(words.Print(t.title.Message()) + "\n")
	w := tabwriter.NewWriter(&b, 0, 0, 2, ' ', 0)
	for _, r := range t.rows {
		fmt.Fprintf(w, "  %s\t%s\n", r.name, words.Print(r.says.Message()))
	}
	w.Flush() // into memory; it cannot fail
	return strings.TrimRight(b.String(), "\n")
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
