package text

import (
	"strings"

	"cutbrief/report"
	"cutbrief/rules/message"
)

// reasons write the topics of the working.
func (d *document) reasons(list []report.Reason) {
	for _, r := range list {
		if !d.isMarkdown() {
			d.Line("")
			d.topic("  ", r)
			continue
		}
		d.heading(r.Title)
		d.Line("\n**" + escaped(r.Value) + "**")
		for _, l := range d.under(r) {
			d.paragraph(l)
		}
		for _, part := range r.Parts {
			d.item(inline(part))
		}
	}
}

// topic writes a topic on a terminal: its title, its name in brackets, its result,
// and what stands under it.
func (d *document) topic(indent string, r report.Reason) {
	d.Block(indent, labelled(r.Title+" ["+r.Topic+"]", r.Value))
	for _, l := range d.under(r) {
		d.Block(indent+"  ", l)
	}
	for _, part := range r.Parts {
		d.Block(indent+"  - ", inline(part))
	}
}

// under lists the formula of a topic, the numbers put in, and what they rest on.
func (d *document) under(r report.Reason) []string {
	var list []string
	for _, l := range []label{{"rule: {1}", r.Formula}, {"here: {1}", r.Numbers}, {"source: {1}", strings.Trim(sourced(r.Source, r.Trust), "[]")}} {
		if l.text != "" {
			list = append(list, d.say(l.is, printed(l.text)))
		}
	}
	return list
}

// inline writes a step of a derivation on one line.
func inline(r report.Reason) string {
	return joined(labelled(r.Title, r.Value), bracket(r.Numbers), sourced(r.Source, r.Trust))
}

// Why writes a derivation in lines of at most width cells, as
// Render does: each topic with its result, formula, numbers, inputs and what
// it rests on; in the words of a catalog, by which the reasons are worded already.
func Why(words *message.Catalog, reasons []report.Reason, width int) string {
	d := newDocument(words, width)
	if d.isMarkdown() {
		d.reasons(reasons)
		return d.String()
	}
	for i, r := range reasons {
		if i > 0 {
			d.Line("")
		}
		d.topic("", r)
	}
	return d.String()
}

// Next writes the open questions, strongest first, a line or two each, in the
// words of a catalog, by which they are worded already.
func Next(words *message.Catalog, lines []report.Line, width int) string {
	d := newDocument(words, width)
	if len(lines) == 0 {
		d.Block("", d.say("Nothing is open that could change the recommendation."))
	}
	for _, l := range lines {
		d.Block("- ", withReason(l))
	}
	return d.String()
}
