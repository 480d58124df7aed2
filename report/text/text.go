package text

import (
	"strconv"
	"strings"

	"cutbrief/report"
	"cutbrief/rules/message"
)

// Widths of a text, in cells.
const (
	DefaultWidth = 80
	leastWidth   = 30
)

// Render writes the brief as plain text in lines of at most width cells; 0
// takes 80, and nothing is laid out narrower than 30.
func Render(b report.Brief, width int) string {
	if width == 0 {
		width = DefaultWidth
	}
	p := &printer{width: max(width, leastWidth), words: b.Words}
	p.top(&b)
	p.recommendation(&b)
	p.bars(b.Bars)
	p.speeds(b.Speeds)
	p.cost(b.Cost)
	p.critical(&b)
	p.confirm(&b)
	p.plan(&b)
	p.timeline(b.Timeline)
	p.leftOut(b.LeftOut)
	p.shown(b.Shown)
	p.excluded(b.Excluded)
	p.list("Notes", b.Notes)
	p.cautions(b.Cautions)
	p.list("What the figures rest on", b.Footing)
	p.list("What could not be shown", b.Dropped)
	p.signatures()
	p.ticks("Before leaving", b.Leaving)
	p.ticks("At the site, before the first arc", b.OnSite)
	p.working(b.Working)
	return p.out.String()
}

// printer writes lines.
type printer struct {
	out   strings.Builder
	width int
	words *message.Catalog // says what the printer itself words; the brief's texts are said already
}

func (p *printer) line(s string) { p.out.WriteString(strings.TrimRight(s, " ") + "\n") }

// block writes a text wrapped, its first line behind first and the others
// behind spaces of the same width.
func (p *printer) block(first, text string) {
	indent := strings.Repeat(" ", cells.StringWidth(first))
	for i, l := range Wrap(text, max(p.width-len(indent), 8)) {
		if i > 0 {
			first = indent
		}
		p.line(first + l)
	}
}

// heading opens a part.
func (p *printer) heading(s string) {
	p.line("")
	p.block("", strings.ToUpper(p.words.Say(s)))
}

// list writes a part of plain sentences, if there are any.
func (p *printer) list(title string, texts []string) {
	if len(texts) == 0 {
		return
	}
	p.heading(title)
	for _, t := range texts {
		p.block("  - ", t)
	}
}

func (p *printer) top(b *report.Brief) {
	p.block("", b.Title)
	p.line(strings.Repeat("=", min(p.width, max(cells.StringWidth(safe(b.Title)), 1))))
	p.who(b.Who)
	if b.Demo != "" {
		p.line("")
		p.block("*** ", b.Demo)
	}
	p.line("")
	p.block("", b.Need)
}

// who puts the values in one column; a label that would leave no room for it
// stands on a line of its own.
func (p *printer) who(lines []report.Line) {
	wide := 0
	for _, l := range lines {
		wide = max(wide, cells.StringWidth(safe(l.Label))+2)
	}
	for _, l := range lines {
		if wide <= p.width/2 {
			p.block(pad(safe(l.Label), wide), l.Value)
			continue
		}
		p.block("", l.Label)
		p.block("  ", l.Value)
	}
}

func (p *printer) recommendation(b *report.Brief) {
	p.heading(string(b.Answer()))
	p.block("  ", b.Headline)
	for _, t := range b.Because {
		p.block("  - ", t)
	}
	p.block("  ", b.Second)
}

// bars writes need against capability, with the rule and its source below.
func (p *printer) bars(bars []report.Bar) {
	if len(bars) == 0 {
		return
	}
	p.heading("Needed and given")
	figure := 0
	for _, b := range bars {
		figure = max(figure, cells.StringWidth(safe(b.Need)), cells.StringWidth(safe(b.Have)))
	}
	for _, b := range bars {
		p.block("  ", b.Label+": "+b.Verdict)
		p.bar(b.Need, figure, lightBlock, b.NeedShare)
		p.bar(b.Have, figure, fullBlock, b.HaveShare)
		p.block("    ", joined(b.Why, sourced(b.Source, b.Trust)))
	}
}

// bar writes a figure and its bar, one under the other if a line is too short
// for both.
func (p *printer) bar(text string, figure int, block rune, share float64) {
	const least, most = 8, 40
	room := p.width - figure - 6
	if room >= least {
		p.line("    " + pad(safe(text), figure) + "  " + blocks(block, share, min(room, most)))
		return
	}
	p.block("    ", text)
	p.line("    " + blocks(block, share, min(p.width-4, most)))
}

// blocks draws a bar of at least one block.
func blocks(block rune, share float64, room int) string {
	n := int(share*float64(room) + 0.5)
	return strings.Repeat(string(block), min(max(n, 1), room))
}

func (p *printer) critical(b *report.Brief) {
	if b.Critical == "" {
		return
	}
	p.heading("What decides")
	p.block("  ", b.Critical)
	for _, e := range b.Evidence {
		p.block("  - ", joined(e.Value, marked(e.Label, e.Why), sourced(e.Source, e.Trust)))
	}
	p.block("  ", b.ShownBy)
}

func (p *printer) confirm(b *report.Brief) {
	if len(b.Confirm) == 0 && len(b.Flags) == 0 {
		return
	}
	p.heading(confirmTitle(b.Outcome))
	for _, l := range b.Confirm {
		p.block("  [ ] ", joined(labelled(l.Label, l.Value), dash(l.Why), sourced(l.Source, l.Trust)))
	}
	for _, f := range b.Flags {
		p.block("  [ ] ", f)
	}
}

func (p *printer) plan(b *report.Brief) {
	if len(b.Plan) == 0 {
		return
	}
	p.heading("Demonstration")
	for i, r := range b.Plan {
		p.block("  "+strconv.Itoa(i+1)+". ", r.Cut)
		p.row("     ", "Piece:", r.Piece)
		p.row("     ", "Setting:", r.Setting)
		p.row("     ", "Look for:", joined(r.See, sourced(r.Source, "")))
		p.row("     ", "Because:", joined(r.Because, bracket(r.Takes)))
		p.row("     ", "Beware:", r.Beware)
	}
	for _, t := range b.PlanNote {
		p.block("  - ", t)
	}
	if b.Bring != "" {
		p.block("  - ", b.Bring)
	}
}

// row writes a labelled text, if there is one.
func (p *printer) row(indent, label, text string) {
	const wide = 10 // cells for the label
	if text != "" {
		p.block(indent+pad(p.words.Say(label)+" ", wide), text)
	}
}

// ticks writes lines to tick off.
func (p *printer) ticks(title string, lines []report.Line) {
	if len(lines) == 0 {
		return
	}
	p.heading(title)
	for _, l := range lines {
		p.block("  [ ] ", joined(l.Value, sourced(l.Source, l.Trust)))
	}
}

// working writes the derivation as Why does.
func (p *printer) working(reasons []report.Reason) {
	if len(reasons) == 0 {
		return
	}
	p.heading("Working")
	for _, r := range reasons {
		p.line("")
		p.block("  ", headed(r))
		p.below("    ", r)
	}
}

// shown writes what was shown and what came of it.
func (p *printer) shown(lines []report.Line) {
	if len(lines) == 0 {
		return
	}
	p.heading("Shown, and what came of it")
	for _, l := range lines {
		p.block("  - ", joined(labelled(l.Label, l.Value), dash(l.Why), sourced(l.Source, l.Trust)))
	}
}

// leftOut writes the cuts that are not in the plan.
func (p *printer) leftOut(lines []report.Line) {
	if len(lines) == 0 {
		return
	}
	p.heading("Not shown, and why")
	for _, l := range lines {
		p.block("  - ", labelled(l.Label, l.Why))
	}
}

func (p *printer) excluded(lines []report.Line) {
	if len(lines) == 0 {
		return
	}
	p.heading("Not taken, and why")
	for _, l := range lines {
		p.block("  - ", joined(labelled(l.Label, l.Why), sourced(l.Source, l.Trust)))
	}
}

func (p *printer) cautions(lines []report.Line) {
	if len(lines) == 0 {
		return
	}
	p.heading("Cutting can hurt people and start fires")
	for _, l := range lines {
		p.block("  - ", joined(l.Value, sourced(l.Source, l.Trust)))
	}
}

func (p *printer) signatures() {
	p.line("")
	date := p.words.Say("Date")
	for _, who := range p.words.Each([]string{"Customer", "Representative"}) {
		p.line("")
		room := p.width - 20 - cells.StringWidth(pad(who, 16)) - cells.StringWidth(date)
		if p.width < 48 || room < 8 {
			p.signature(who, p.width-16)
			p.signature(date, 10)
			continue
		}
		p.line(pad(who, 16) + strings.Repeat("_", room) + "  " + date + " " + strings.Repeat("_", 10))
	}
}

// signature is one line to write on, below what goes there if that is long.
func (p *printer) signature(what string, room int) {
	if cells.StringWidth(what) >= 16 {
		p.block("", what)
		what = ""
	}
	p.line(pad(what, 16) + strings.Repeat("_", room))
}
