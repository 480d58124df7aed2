package text

import (
	"strings"

	"cutbrief/report"
	"cutbrief/rules/message"
)

// Why writes a derivation as plain text in lines of at most width cells, as
// Render does: each topic with its result, formula, numbers, inputs and what
// it rests on.
func Why(reasons []report.Reason, width int) string { return WhyIn(nil, reasons, width) }

// WhyIn is Why in the words of a book, by which the reasons are worded already.
func WhyIn(words *message.Catalog, reasons []report.Reason, width int) string {
	if width == 0 {
		width = DefaultWidth
	}
	p := &printer{width: max(width, leastWidth), words: words}
	for i, r := range reasons {
		if i > 0 {
			p.line("")
		}
		p.block("", headed(r))
		p.below("  ", r)
	}
	return p.out.String()
}

// headed is a topic's first line: its title, its name in brackets, its result.
func headed(r report.Reason) string {
	return labelled(r.Title+" ["+r.Topic+"]", r.Value)
}

// below writes what stands under a topic.
func (p *printer) below(indent string, r report.Reason) {
	for _, l := range under(p.words, r) {
		p.block(indent, l)
	}
	for _, part := range r.Parts {
		p.block(indent+"- ", inline(part))
	}
}

// under lists the formula, the numbers put in, and what they rest on.
func under(words *message.Catalog, r report.Reason) []string {
	var list []string
	if r.Formula != "" {
		list = append(list, words.Say("rule: "+message.Keep(r.Formula)))
	}
	if r.Numbers != "" {
		list = append(list, words.Say("here: "+message.Keep(r.Numbers)))
	}
	if rests := sourced(r.Source, r.Trust); rests != "" {
		list = append(list, words.Say("rests on "+message.Keep(strings.Trim(rests, "[]"))))
	}
	return list
}

// inline writes a part on one line.
func inline(r report.Reason) string {
	return joined(labelled(r.Title, r.Value), bracket(r.Numbers), sourced(r.Source, r.Trust))
}

// WhyMarkdownIn writes a derivation as Markdown in the words of a book.
func WhyMarkdownIn(words *message.Catalog, reasons []report.Reason) string {
	m := &markdown{words: words}
	m.reasons(reasons)
	return strings.TrimLeft(m.out.String(), "\n")
}

func (m *markdown) reasons(reasons []report.Reason) {
	for _, r := range reasons {
		m.heading("## ", r.Title)
		m.paragraph("**" + escaped(r.Value) + "**")
		for _, l := range under(m.words, r) {
			m.paragraph(escaped(l))
		}
		for _, part := range r.Parts {
			m.item(escaped(inline(part)))
		}
	}
}

// NextIn writes the open questions, strongest first, a line or two each, in the
// words of a book, by which they are worded already.
func NextIn(words *message.Catalog, lines []report.Line, width int) string {
	if width == 0 {
		width = DefaultWidth
	}
	p := &printer{width: max(width, leastWidth), words: words}
	if len(lines) == 0 {
		p.block("", p.words.Say("Nothing is open that could change the recommendation."))
	}
	for _, l := range lines {
		p.block("- ", joined(labelled(l.Label, l.Value), dash(l.Why)))
	}
	return p.out.String()
}
