package handbook

import (
	"embed"
	"fmt"
	"strings"
	"text/tabwriter"

	"github.com/spf13/cobra"

	"cutbrief/assess/review"
	"cutbrief/rules/message"
)

//go:embed help/*.md
var helpDocuments embed.FS

// HelpText is what help says of one command.
type HelpText struct {
	Short   string // one line, without a full stop
	Long    string // paragraphs, broken by hand, as nobody else breaks them
	Example string // command lines behind a margin, some with a remark
}

// HelpTexts are those of every command by its path, in the language of the words
// in use, or else in English. A document has a part for each command: its short
// text, its paragraphs, and its examples, behind a margin.
func HelpTexts(words *message.Catalog) map[string]HelpText {
	document, err := helpDocuments.ReadFile("help/" + words.Code() + ".md")
	if err != nil {
		document, _ = helpDocuments.ReadFile("help/en.md") // a test reads it
	}
	list := map[string]HelpText{}
	for part := range strings.SplitSeq("\n"+string(document), "\n# ") {
		path, rest, found := strings.Cut(part, "\n\n")
		if !found {
			continue // what stands before the first
		}
		short, rest, _ := strings.Cut(strings.TrimSpace(rest), "\n\n")
		text := HelpText{Short: short}
		if at := strings.LastIndex("\n\n"+rest, "\n\n    "); at >= 0 {
			text.Long = strings.TrimSpace(rest[:at])
			text.Example = strings.ReplaceAll("\n"+strings.TrimPrefix(rest[at:], "\n"), "\n    ", "\n  ")[1:]
		}
		list[path] = text
	}
	return list
}

// Usage writes how a command is called, with our words for the titles.
func Usage(c *cobra.Command, words *message.Catalog) string {
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

// Filters say what a filter of a review is made of, each a list behind its title.
func Filters(words *message.Catalog) []string {
	compare := helpTable{title: "A filter compares fields with values:", rows: []helpRow{
		{"= != < <= > >=", "as usual; text and words only with = and !="}, {"~", "holds the text"},
		{"?", "not known: outcome = ? (not known is never less or more)"}, {"and or not ( )", `"and" binds closer than "or"`}}}
	fields, flags := helpTable{title: "Fields:"}, helpTable{title: "Flags of a visit:"}
	for _, f := range review.Fields() {
		fields.rows = append(fields.rows, helpRow{f.ID, f.Says})
	}
	for _, k := range review.FlagKinds() {
		flags.rows = append(flags.rows, helpRow{k.ID, k.Rule})
	}
	return []string{compare.text(words), fields.text(words), flags.text(words)}
}
