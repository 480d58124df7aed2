package handbook

import (
	"strings"

	"cutbrief/rules/message"
)

// Manual is the page of one command for man(1), its texts in the words asked for.
type Manual struct {
	Name     string // with hyphens: cutbrief-systems-check
	Short    string // one line
	Command  string // as it is typed
	Takes    string // what may follow it
	Long     string // paragraphs; one that begins behind a margin is laid out already
	Examples string
	Parts    []ManualPart
	SeeAlso  []string // other pages
}

// ManualPart is a list of names with what is said of each.
type ManualPart struct {
	Title   message.ID
	Entries []ManualEntry
}

// ManualEntry is one name, what it takes, and what is said of it.
type ManualEntry struct{ Name, Takes, Says string }

// Roff is the page as man(1) reads it. It says nothing of a time or a machine, so
// that it is the same wherever it is made.
func (m Manual) Roff(words *message.Catalog) string {
	p := roffPage{words: words}
	p.line(`.TH "` + strings.ToUpper(m.Name) + `" "1" "" "cutbrief" "cutbrief manual"`)
	p.line(".nh\n.ad l") // no hyphens put into commands, no stretched lines
	p.heading("NAME")
	p.text(m.Name + " - " + strings.ToLower(m.Short[:1]) + m.Short[1:])
	p.heading("SYNOPSIS")
	p.line(".B " + roff(m.Command))
	p.text(m.Takes)
	p.heading("DESCRIPTION")
	if m.Long == "" {
		p.text(m.Short + ".")
	} else {
		p.prose(m.Long)
	}
	for _, part := range m.Parts {
		switch {
		case part.Title == "EXAMPLES":
			p.heading(part.Title)
			p.asIs(m.Examples)
		case len(part.Entries) > 0:
			p.heading(part.Title)
		}
		for _, e := range part.Entries { // a name in bold with what is said of it behind or below
			p.line(".TP\n" + strings.TrimSpace(`\fB`+roff(e.Name)+`\fR \fI`+roff(e.Takes)+`\fR`))
			p.text(e.Says)
		}
	}
	if len(m.SeeAlso) > 0 {
		p.heading("SEE ALSO")
		p.line(".BR " + strings.ReplaceAll(roff(strings.Join(m.SeeAlso, "\n")), "\n", " (1),\n.BR ") + " (1)")
	}
	return p.String()
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
