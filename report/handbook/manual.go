package handbook

import (
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"cutbrief/rules/message"
)

// ManualPart is a list of names with what is said of each.
type ManualPart struct {
	Title   message.ID
	Entries []ManualEntry
}

// ManualEntry is one name, what it takes, and what is said of it.
type ManualEntry struct{ Name, Takes, Says string }

// Manuals are the pages of a command and of all below it that a user can see, by
// the names of their files. The words of the commands were put in already; that of
// the program has some parts besides. They say nothing of a time or a machine, so
// that they are the same wherever they are made.
func Manuals(root *cobra.Command, words *message.Catalog, besides ...ManualPart) map[string]string {
	pages := map[string]string{}
	for _, c := range visible(root) {
		if c.HasParent() {
			besides = nil
		}
		pages[pageName(c)+".1"] = roffOf(c, words, besides)
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

// roffOf is the page of a command as man(1) reads it.
func roffOf(c *cobra.Command, words *message.Catalog, besides []ManualPart) string {
	p := roffPage{words: words}
	name := pageName(c)
	p.line(`.TH "` + strings.ToUpper(name) + `" "1" "" "cutbrief" "cutbrief manual"`)
	p.line(".nh\n.ad l") // no hyphens put into commands, no stretched lines
	p.heading("NAME")
	p.text(name + " - " + strings.ToLower(c.Short[:1]) + c.Short[1:])
	p.heading("SYNOPSIS")
	p.line(".B " + roff(c.CommandPath()))
	p.text(strings.TrimSpace(strings.TrimPrefix(c.UseLine(), c.CommandPath())))
	p.heading("DESCRIPTION")
	if c.Long == "" {
		p.text(c.Short + ".")
	} else {
		p.prose(c.Long)
	}
	var below []ManualEntry
	var others []string // pages to see also
	if c.HasParent() {
		others = []string{pageName(c.Parent())}
	}
	for _, b := range c.Commands() {
		if !b.Hidden {
			others = append(others, pageName(b))
			below = append(below, ManualEntry{Name: b.Name(), Says: b.Short + "."})
		}
	}
	p.part(ManualPart{"COMMANDS", below})
	p.part(ManualPart{"OPTIONS", entries(c.NonInheritedFlags())})
	p.part(ManualPart{"OPTIONS OF EVERY COMMAND", entries(c.InheritedFlags())})
	p.heading("EXAMPLES")
	p.asIs(c.Example)
	for _, part := range besides {
		p.part(part)
	}
	if len(others) > 0 {
		p.heading("SEE ALSO")
		p.line(".BR " + strings.ReplaceAll(roff(strings.Join(others, "\n")), "\n", " (1),\n.BR ") + " (1)")
	}
	return p.String()
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

// roffPage is a page as it is written.
type roffPage struct {
	strings.Builder
	words *message.Catalog
}

func (p *roffPage) line(s string) { p.WriteString(s + "\n") }
func (p *roffPage) text(s string) { p.line(roff(s)) }
func (p *roffPage) heading(title message.ID) {
	p.line(`.SH "` + p.words.Print(title.Message()) + `"`)
}

// part is a list of names in bold, with what is said of each behind or below; nothing
// if it is empty.
func (p *roffPage) part(part ManualPart) {
	if len(part.Entries) > 0 {
		p.heading(part.Title)
	}
	for _, e := range part.Entries {
		p.line(".TP\n" + strings.TrimSpace(`\fB`+roff(e.Name)+`\fR \fI`+roff(e.Takes)+`\fR`))
		p.text(e.Says)
	}
}

// prose is text in paragraphs. One that begins behind a margin is laid out
// already, as a table of fields is.
func (p *roffPage) prose(s string) {
	for i, paragraph := range strings.Split(s, "\n\n") {
		if i > 0 {
			p.line(".PP")
		}
		if strings.Contains("\n"+paragraph, "\n ") {
			p.asIs(paragraph)
		} else {
			p.text(paragraph)
		}
	}
}

// asIs keeps the lines and the spaces.
func (p *roffPage) asIs(s string) {
	p.line(".nf")
	p.text(s)
	p.line(".fi")
}

// roff writes a text so that man prints it as it stands: a backslash and a
// hyphen have a meaning of their own, and so has a full stop or an apostrophe
// at the beginning of a line.
func roff(s string) string {
	s = strings.NewReplacer(`\`, `\e`, "-", `\-`).Replace(s)
	lines := strings.Split(s, "\n")
	for i, l := range lines {
		if strings.HasPrefix(l, ".") || strings.HasPrefix(l, "'") {
			lines[i] = `\&` + l
		}
	}
	return strings.Join(lines, "\n")
}
