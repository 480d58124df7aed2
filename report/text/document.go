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

// document is written block by block, for a terminal or as Markdown. Texts of package report are worded already.
type document struct {
	Lines
	words *message.Catalog // says what is worded here
}

func newDocument(words *message.Catalog, width int) *document {
	if width != Markdown {
		width = max(cmp.Or(width, DefaultWidth), leastWidth)
	}
	return &document{Lines{Width: width}, words}
}

func (d *document) isMarkdown() bool { return d.Width == Markdown }

// String is the document.
func (d *document) String() string {
	if d.isMarkdown() {
		return strings.TrimPrefix(d.Lines.String(), "\n")
	}
	return d.Lines.String()
}

// lastBegins reports whether the last line begins so.
func (d *document) lastBegins(with string) bool {
	text := strings.TrimSuffix(d.Lines.String(), "\n")
	return strings.HasPrefix(text[strings.LastIndexByte(text, '\n')+1:], with)
}

// put writes a paragraph: behind a lead on a terminal; apart from what is before
// it, and between two marks, in Markdown.
func (d *document) put(lead, before, text, after string) {
	switch {
	case !d.isMarkdown():
		d.Block(lead, text)
	case text != "":
		d.Line("\n" + before + escaped(text) + after)
	}
}

// entry writes an item of a list, behind its lead or its mark. text is escaped in
// Markdown.
func (d *document) entry(lead, mark, text string) {
	if !d.isMarkdown() {
		d.Block(lead, text)
		return
	}
	if !d.lastBegins("- ") {
		d.Line("")
	}
	d.WriteString("- " + mark + escaped(text) + "\n")
}

func (d *document) strong(text string)    { d.put("  ", "**", text, "**") }   // the answer of a part
func (d *document) paragraph(text string) { d.put("  ", "", text, "") }       // more about it
func (d *document) item(text string)      { d.entry("  - ", "", text) }       // of a list
func (d *document) box(text string)       { d.entry("  [ ] ", "[ ] ", text) } // of a list, to be ticked off
func (d *document) tick(text string)      { d.entry("  [ ] ", "☐ ", text) }   // of a checklist, to be ticked off

func (d *document) title(text string) {
	d.put("", "# ", text, "")
	if !d.isMarkdown() {
		d.Line(strings.Repeat("=", min(d.Width, max(widest(text), 1))))
	}
}

// notice says that something is invented.
func (d *document) notice(text string) {
	if !d.isMarkdown() && text != "" && !d.lastBegins("=") {
		d.Line("")
	}
	d.put("*** ", "> **", text, "**")
}

// lead is a paragraph at the edge.
func (d *document) lead(text string) {
	if !d.isMarkdown() {
		d.Line("")
	}
	d.put("", "", text, "")
}

// heading opens a part.
func (d *document) heading(text string) {
	if d.isMarkdown() {
		d.put("", "## ", text, "")
		return
	}
	d.lead(strings.ToUpper(text))
}

// fields are labels and values in two columns. On a terminal a label that would
// leave no room for its value stands on a line of its own.
func (d *document) fields(lines []report.Line) {
	wide := 0
	for _, l := range lines {
		wide = max(wide, widest(l.Label)+2)
	}
	for _, l := range lines {
		switch {
		case d.isMarkdown():
			d.entry("", "**"+escaped(l.Label)+"**: ", l.Value)
		case wide <= d.Width/2:
			d.Block(pad(safe(l.Label), wide), l.Value)
		default:
			d.Block("", l.Label)
			d.Block("  ", l.Value)
		}
	}
}

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

// Render writes the brief in lines of at most width cells; 0 takes 80, and nothing
// is laid out narrower than 30. As Markdown every text is escaped, so that it reads
// as it was said.
func Render(b report.Brief, width int) string { return newDocument(b.Words, width).brief(&b) }

func (d *document) brief(b *report.Brief) string {
	d.title(b.Title)
	d.fields(b.Who)
	d.notice(b.Demo)
	d.lead(b.Need)
	d.heading(d.say(b.Answer()))
	d.strong(b.Headline)
	d.list("", b.Because)
	d.paragraph(b.Second)
	d.bars(b.Bars)
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
	d.reasons(b.Working)
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
		d.plan(b.Plan)
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
	d.costs(c.Bars)
	d.costByThickness(c.Curves)
}

// label is a text with what it is.
type label struct {
	is   message.ID
	text string
}

// plan writes each cut with what there is to know about it.
func (d *document) plan(list []report.Row) {
	rows := [][]string{append([]string{""}, d.row("Cut", "Metal and thickness", "Setting", "What to look for")...)}
	for i, r := range list {
		see := joined(r.See, sourced(r.Source, ""))
		rows = append(rows, []string{strconv.Itoa(i + 1), r.Cut, r.Piece, r.Setting, see})
		if !d.isMarkdown() {
			d.Block("  ", numbered(i+1, r.Cut))
			d.labels("     ", []label{
				{"Piece:", r.Piece}, {"Setting:", r.Setting}, {"Look for:", see}, {"Because:", joined(r.Because, bracket(r.Takes))}, {"Watch:", r.Beware},
			})
		}
	}
	if !d.inTable(rows) {
		return
	}
	for i, r := range list {
		if r.Because+r.Beware != "" {
			d.item(joined(strconv.Itoa(i+1)+":", r.Because, bracket(r.Takes), r.Beware))
		}
	}
}

// labels writes the texts that there are.
func (d *document) labels(indent string, list []label) {
	const wide = 10 // cells for the label
	for _, l := range list {
		if l.text != "" {
			d.Block(indent+pad(d.say(l.is)+" ", wide), l.text)
		}
	}
}

// signatures leave room for everybody's name and the date.
func (d *document) signatures(date string, who []string) {
	d.Line("")
	if d.isMarkdown() {
		const name, day = `\_\_\_\_\_\_\_\_\_\_`, `\_\_\_\_\_`
		for i, w := range who {
			who[i] = escaped(w) + ": " + name + " " + escaped(date) + ": " + day
		}
		d.Line(strings.Join(who, " "))
		return
	}
	for _, name := range who {
		d.Line("")
		room := d.Width - 20 - max(16, cells.StringWidth(name)) - cells.StringWidth(date)
		if d.Width < 48 || room < 8 {
			d.signature(name, d.Width-16)
			d.signature(date, 10)
			continue
		}
		d.Line(pad(name, 16) + strings.Repeat("_", room) + "  " + date + " " + strings.Repeat("_", 10))
	}
}

// signature is one line to write on, below what goes there if that is long.
func (d *document) signature(what string, room int) {
	if cells.StringWidth(what) >= 16 {
		d.Block("", what)
		what = ""
	}
	d.Line(pad(what, 16) + strings.Repeat("_", room))
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
