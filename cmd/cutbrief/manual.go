package main

import (
	"strconv"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"cutbrief/rules/message"
)

// manual is the page of every command a user can see, for man(1), by the name of
// its file. The pages say nothing of a time or a machine, so that they are the
// same wherever they are made.
func (a *app) manual(root *cobra.Command, words *message.Catalog) map[string]string {
	a.localize(root, words)
	pages := map[string]string{}
	for _, c := range visible(root) {
		pages[pageName(c)+".1"] = manualPage(c, words)
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

// manualPage is the page of a command whose words were put in already.
func manualPage(c *cobra.Command, words *message.Catalog) string {
	p := page{words: words}
	p.line(`.TH "` + strings.ToUpper(pageName(c)) + `" "1" "" "cutbrief" "cutbrief manual"`)
	p.line(".nh\n.ad l") // no hyphens put into commands, no stretched lines
	p.heading("NAME")
	p.text(pageName(c) + " - " + strings.ToLower(c.Short[:1]) + c.Short[1:])
	p.heading("SYNOPSIS")
	p.line(".B " + roff(c.CommandPath()))
	p.text(strings.TrimSpace(strings.TrimPrefix(c.UseLine(), c.CommandPath())))
	p.heading("DESCRIPTION")
	if c.Long == "" {
		p.text(c.Short + ".")
	} else {
		p.prose(c.Long)
	}
	p.commands(c)
	p.options("OPTIONS", c.NonInheritedFlags())
	p.options("OPTIONS OF EVERY COMMAND", c.InheritedFlags())
	p.heading("EXAMPLES")
	p.asIs(c.Example)
	if !c.HasParent() {
		p.environment()
	}
	p.seeAlso(c)
	return p.String()
}

// page is a manual page as it is written.
type page struct {
	strings.Builder
	words *message.Catalog
}

func (p *page) line(s string)            { p.WriteString(s + "\n") }
func (p *page) text(s string)            { p.line(roff(s)) }
func (p *page) heading(title message.ID) { p.line(`.SH "` + p.words.Print(title.Message()) + `"`) }

// prose is text in paragraphs. One that begins behind a margin is laid out
// already, as a table of fields is.
func (p *page) prose(s string) {
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
func (p *page) asIs(s string) {
	p.line(".nf")
	p.text(s)
	p.line(".fi")
}

// tagged is a name in bold with what is said of it behind or below.
func (p *page) tagged(name, argument, says string) {
	p.line(".TP")
	p.line(strings.TrimSpace(`\fB` + roff(name) + `\fR \fI` + roff(argument) + `\fR`))
	p.text(says)
}

func (p *page) commands(c *cobra.Command) {
	if !c.HasAvailableSubCommands() {
		return
	}
	p.heading("COMMANDS")
	for _, below := range c.Commands() {
		if !below.Hidden {
			p.tagged(below.Name(), "", below.Short+".")
		}
	}
}

func (p *page) options(title message.ID, flags *pflag.FlagSet) {
	if !flags.HasAvailableFlags() {
		return
	}
	p.heading(title)
	flags.VisitAll(func(f *pflag.Flag) {
		name := "--" + f.Name
		if f.Shorthand != "" {
			name = "-" + f.Shorthand + ", " + name
		}
		argument, says := pflag.UnquoteUsage(f)
		p.tagged(name, argument, says)
	})
}

// environment says what the program hears from outside, and what it answers.
func (p *page) environment() {
	p.heading("ENVIRONMENT")
	for _, v := range variables {
		p.tagged(v.name, "", p.words.Print(v.says.Message()))
	}
	p.heading("EXIT STATUS")
	for _, s := range exitStatuses {
		p.tagged(strconv.Itoa(s.status), "", p.words.Print(s.says.Message()))
	}
}

func (p *page) seeAlso(c *cobra.Command) {
	var others []string
	if c.HasParent() {
		others = append(others, pageName(c.Parent()))
	}
	for _, below := range c.Commands() {
		if !below.Hidden {
			others = append(others, pageName(below))
		}
	}
	if len(others) == 0 {
		return
	}
	p.heading("SEE ALSO")
	for i, name := range others {
		end := ","
		if i == len(others)-1 {
			end = ""
		}
		p.line(".BR " + roff(name) + " (1)" + end)
	}
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
