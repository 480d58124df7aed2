// Package text lays the documents of package report out as plain text for a
// terminal or a mail, and as Markdown. It leaves nothing of them out and writes
// no escape byte. Commands and screens import it.
package text

import (
	"cmp"
	"strconv"
	"strings"

	"cutbrief/report"
	"cutbrief/rules"
	"cutbrief/rules/message"
)

// writer lays out the blocks a document is made of. Texts are worded already.
type writer interface {
	title(text string)
	notice(text string)                       // that something is invented
	fields(lines []report.Line)               // labels and values in two columns
	lead(text string)                         // a paragraph at the edge
	heading(text string)                      // opens a part
	strong(text string)                       // the answer of a part
	paragraph(text string)                    // more about it
	item(text string)                         // of a list
	box(text string)                          // of a list, to be ticked off
	tick(text string)                         // of a checklist, to be ticked off
	table(rows [][]string, first int)         // the first row is the head; first is the widest first column
	sideBySide(rows [][]string)               // a table that stands by itself
	bars(d *document, list []report.Bar)      // need against capability
	costs(list []report.CostBar, head string) // two bars
	chart(c chart)                            // a picture
	plan(d *document, list []report.Row)      // the cuts of a demonstration
	signatures(date string, who []string)     // room to sign
	reason(d *document, r report.Reason)      // one topic of the working
	String() string
}

// document is written block by block.
type document struct {
	writer
	words *message.Catalog // says what is worded here; texts of package report are worded already
}

func terminalDocument(words *message.Catalog, width int) *document {
	return &document{&terminal{width: max(cmp.Or(width, DefaultWidth), leastWidth)}, words}
}

func markdownDocument(words *message.Catalog) *document { return &document{&markdown{}, words} }

func (d *document) say(id message.ID, args ...any) string {
	return d.words.Print(message.New(id, args...))
}

// printed is a text that is worded already.
func printed(text string) message.Name { return message.Name(text) }

// row is a row of a table in our words.
func (d *document) row(ids ...message.ID) []string {
	var cells []string
	for _, id := range ids {
		cells = append(cells, d.say(id))
	}
	return cells
}

// list writes a part of sentences, if there are any.
func (d *document) list(title message.ID, texts []string) {
	if len(texts) > 0 && title != "" {
		d.heading(d.say(title))
	}
	for _, t := range texts {
		d.item(t)
	}
}

// facts writes a part of facts with what they rest on, if there are any.
func (d *document) facts(title message.ID, lines []report.Line, put func(string), word func(report.Line) string) {
	if len(lines) > 0 {
		d.heading(d.say(title))
	}
	for _, l := range lines {
		put(joined(word(l), sourced(l.Source, l.Trust)))
	}
}

// Render writes the brief as plain text in lines of at most width cells; 0
// takes 80, and nothing is laid out narrower than 30.
func Render(b report.Brief, width int) string { return terminalDocument(b.Words, width).brief(&b) }

// Markdown writes the brief as Markdown, every text escaped so that it reads
// as it was said.
func Markdown(b report.Brief) string { return markdownDocument(b.Words).brief(&b) }

func (d *document) brief(b *report.Brief) string {
	d.title(b.Title)
	d.fields(b.Who)
	d.notice(b.Demo)
	d.lead(b.Need)
	d.heading(d.say(b.Answer()))
	d.strong(b.Headline)
	d.list("", b.Because)
	d.paragraph(b.Second)
	if len(b.Bars) > 0 {
		d.heading(d.say("Requirements and capabilities"))
		d.bars(d, b.Bars)
	}
	d.speeds(b.Speeds)
	d.cost(b.Cost)
	d.critical(b)
	d.confirm(b)
	d.demonstration(b)
	d.facts("Demonstrations held, and results", b.Shown, d.item, withReason)
	d.facts("Other systems, and why not", b.Excluded, d.item, reasoned)
	d.list("Notes", b.Notes)
	d.facts("Cutting can hurt people and start fires", b.Cautions, d.item, valueOf)
	d.list("Sources and basis", b.Footing)
	d.list("What could not be shown", b.Dropped)
	d.signatures(d.say("Date"), d.row("Customer", "Representative"))
	d.facts("Before leaving", b.Leaving, d.tick, valueOf)
	d.facts("At the site, before the first arc", b.OnSite, d.tick, valueOf)
	d.facts("Objections to expect", b.Objections, d.item, withReason)
	if len(b.Working) > 0 {
		d.heading(d.say("Working"))
	}
	for _, r := range b.Working {
		d.reason(d, r)
	}
	return d.String()
}

func valueOf(l report.Line) string    { return l.Value }
func reasoned(l report.Line) string   { return labelled(l.Label, l.Why) }
func withReason(l report.Line) string { return joined(labelled(l.Label, l.Value), dash(l.Why)) }

func (d *document) critical(b *report.Brief) {
	if b.Critical == "" {
		return
	}
	d.heading(d.say("Deciding requirement"))
	d.strong(b.Critical)
	for _, e := range b.Evidence {
		d.item(joined(e.Value, bracket(joinedBy(", ", e.Label, e.Why)), sourced(e.Source, e.Trust)))
	}
	d.paragraph(b.ShownBy)
}

// confirm does not speak of an order where there is nothing to order.
func (d *document) confirm(b *report.Brief) {
	if len(b.Confirm) == 0 && len(b.Flags) == 0 {
		return
	}
	title := message.ID("Still open")
	if rules.Outcome(b.Outcome) == rules.Recommended {
		title = "To confirm before ordering"
	}
	d.heading(d.say(title))
	for _, l := range b.Confirm {
		d.box(joined(withReason(l), sourced(l.Source, l.Trust)))
	}
	for _, f := range b.Flags {
		d.box(f)
	}
}

func (d *document) demonstration(b *report.Brief) {
	if len(b.Plan) > 0 {
		d.heading(d.say("Demonstration"))
		d.plan(d, b.Plan)
		d.list("", b.PlanNote)
		if b.Bring != "" {
			d.item(b.Bring)
		}
	}
	d.timeline(b.Timeline)
	d.facts("Not shown, and why", b.LeftOut, d.item, reasoned)
}

// cost writes the page's part about cost.
func (d *document) cost(c *report.Cost) {
	if c == nil {
		return
	}
	d.heading(d.say("What it costs"))
	d.list("", c.Lines)
	if len(c.Bars) > 0 {
		d.costs(c.Bars, d.say("Cost"))
	}
	d.costByThickness(c.Curves)
}

// under lists the formula of a topic, the numbers put in, and what they rest on.
func (d *document) under(r report.Reason) []string {
	var list []string
	add := func(id message.ID, text string) {
		if text != "" {
			list = append(list, d.say(id, printed(text)))
		}
	}
	add("rule: {1}", r.Formula)
	add("here: {1}", r.Numbers)
	add("source: {1}", strings.Trim(sourced(r.Source, r.Trust), "[]"))
	return list
}

// inline writes a step of a derivation on one line.
func inline(r report.Reason) string {
	return joined(labelled(r.Title, r.Value), bracket(r.Numbers), sourced(r.Source, r.Trust))
}

// Why writes a derivation as plain text in lines of at most width cells, as
// Render does: each topic with its result, formula, numbers, inputs and what
// it rests on; in the words of a catalog, by which the reasons are worded already.
func Why(words *message.Catalog, reasons []report.Reason, width int) string {
	d := terminalDocument(words, width)
	for i, r := range reasons {
		d.writer.(*terminal).topic("", i > 0, d, r)
	}
	return d.String()
}

// WhyMarkdown writes a derivation as Markdown in the words of a catalog.
func WhyMarkdown(words *message.Catalog, reasons []report.Reason) string {
	d := markdownDocument(words)
	for _, r := range reasons {
		d.reason(d, r)
	}
	return d.String()
}

// Next writes the open questions, strongest first, a line or two each, in the
// words of a catalog, by which they are worded already.
func Next(words *message.Catalog, lines []report.Line, width int) string {
	d := terminalDocument(words, width)
	t := d.writer.(*terminal)
	if len(lines) == 0 {
		t.block("", d.say("Nothing is open that could change the recommendation."))
	}
	for _, l := range lines {
		t.block("- ", withReason(l))
	}
	return d.String()
}

// joined puts the parts that are there behind one another.
func joined(parts ...string) string { return joinedBy(" ", parts...) }

func joinedBy(sep string, parts ...string) string {
	var list []string
	for _, p := range parts {
		if p != "" {
			list = append(list, p)
		}
	}
	return strings.Join(list, sep)
}

// labelled writes "label: value", or the one that is there.
func labelled(label, value string) string { return joinedBy(": ", label, value) }

func bracket(s string) string {
	if s == "" {
		return ""
	}
	return "(" + s + ")"
}

func dash(s string) string {
	if s == "" {
		return ""
	}
	return "– " + s
}

// numbered is a text behind its number.
func numbered(n int, s string) string { return strconv.Itoa(n) + ". " + s }

// sourced writes what a fact rests on. Kinds of trust that are among several
// sources already, or that the source itself says, are not said twice.
func sourced(source, trust string) string {
	if source != trust && strings.Contains(trust, "; ") {
		var kinds []string
		for _, kind := range strings.Split(trust, "; ") {
			if !strings.Contains("; "+source+"; ", "; "+kind+"; ") {
				kinds = append(kinds, kind)
			}
		}
		trust = strings.Join(kinds, "; ")
	}
	if source != "" && strings.Contains(source, trust) {
		trust = ""
	}
	if source+trust == "" {
		return ""
	}
	return "[" + joinedBy("; ", source, trust) + "]"
}
