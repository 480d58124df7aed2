package main

import (
	"embed"
	"fmt"
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

// helpTemplate is how the library lays out the usage of a command, with our words
// for its titles.
const helpTemplate = `@usage@{{if .Runnable}}
  {{.UseLine}}{{end}}{{if .HasAvailableSubCommands}}
  {{.CommandPath}} [command]{{end}}{{if .HasExample}}

@examples@
{{.Example}}{{end}}{{if .HasAvailableSubCommands}}

@commands@{{range .Commands}}{{if .IsAvailableCommand}}
  {{rpad .Name .NamePadding}} {{.Short}}{{end}}{{end}}{{end}}{{if .HasAvailableLocalFlags}}

@flags@
{{.LocalFlags.FlagUsages | trimTrailingWhitespaces}}{{end}}{{if .HasAvailableInheritedFlags}}

@global@
{{.InheritedFlags.FlagUsages | trimTrailingWhitespaces}}{{end}}{{if .HasAvailableSubCommands}}

@more@{{end}}
`

// setHelp has all that is said of the commands put into words when somebody asks.
func (a *app) setHelp(root *cobra.Command) {
	show := root.HelpFunc()
	root.SetHelpFunc(func(c *cobra.Command, args []string) {
		a.localize(root, a.helpWords())
		show(c, args)
	})
	if len(a.args) > 0 && strings.HasPrefix(a.args[0], cobra.ShellCompRequestCmd) {
		a.localize(root, a.helpWords()) // what is completed is explained
	}
}

// localize puts all that is said of a command and those below it into words.
func (a *app) localize(c *cobra.Command, words *message.Catalog) {
	say := func(id message.ID, args ...any) string { return words.Print(message.New(id, args...)) }
	c.SetUsageTemplate(strings.NewReplacer("@usage@", say("Usage:"), "@examples@", say("Examples:"), "@commands@", say("Commands:"),
		"@flags@", say("Flags:"), "@global@", say("Flags of every command:"),
		"@more@", say("More about a command: {1}", message.Name("{{.CommandPath}} COMMAND --help"))).Replace(helpTemplate))
	for _, f := range globalFlags {
		f.localize(c.PersistentFlags().Lookup(f.name), words)
	}
	c.InitDefaultVersionFlag()
	option{usage: "version of the program"}.localize(c.Flag("version"), words)
	a.localizeTree(c, helpTexts(words), words)
}

func (a *app) localizeTree(c *cobra.Command, texts map[string]helpText, words *message.Catalog) {
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
		a.localizeTree(below, texts, words)
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
