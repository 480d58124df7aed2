package text

import (
	"strings"

	"cutbrief/report"
	"cutbrief/rules/message"
)

// Widths of a text, in cells.
const (
	DefaultWidth = 80
	leastWidth   = 30
)

// terminal writes lines.
type terminal struct {
	out    strings.Builder
	width  int
	titled bool // the last thing written was the title
}

// String is the document.
func (p *terminal) String() string { return p.out.String() }

func (p *terminal) line(s string) {
	p.out.WriteString(strings.TrimRight(s, " ") + "\n")
	p.titled = false
}

// block writes a text wrapped, its first line behind first and the others
// behind spaces of the same width.
func (p *terminal) block(first, text string) {
	indent := strings.Repeat(" ", cells.StringWidth(first))
	for i, l := range Wrap(text, max(p.width-len(indent), 8)) {
		if i > 0 {
			first = indent
		}
		p.line(first + l)
	}
}

func (p *terminal) title(text string) {
	p.block("", text)
	p.line(strings.Repeat("=", min(p.width, max(cells.StringWidth(safe(text)), 1))))
	p.titled = true
}

func (p *terminal) notice(text string) {
	if text == "" {
		return
	}
	if !p.titled {
		p.line("")
	}
	p.block("*** ", text)
}

// fields puts the values in one column; a label that would leave no room for it
// stands on a line of its own.
func (p *terminal) fields(lines []report.Line) {
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

// lead stands apart from what is before it.
func (p *terminal) lead(text string) {
	p.line("")
	p.block("", text)
}

func (p *terminal) heading(text string)   { p.lead(strings.ToUpper(text)) }
func (p *terminal) strong(text string)    { p.block("  ", text) }
func (p *terminal) paragraph(text string) { p.block("  ", text) }
func (p *terminal) item(text string)      { p.block("  - ", text) }
func (p *terminal) box(text string)       { p.block("  [ ] ", text) }
func (p *terminal) tick(text string)      { p.block("  [ ] ", text) }

func (p *terminal) sideBySide(rows [][]string) {
	p.line("")
	p.table(rows, 20)
}

// table writes rows in columns: the first as wide as told, the others alike.
// Cells that are too long go on in the next line.
func (p *terminal) table(rows [][]string, first int) {
	if len(rows) == 0 || len(rows[0]) < 2 {
		return
	}
	first = min(first, p.width/3)
	each := max(min(18, (p.width-2-first)/(len(rows[0])-1)-2), 4)
	for _, r := range rows {
		var wrapped [][]string
		tall := 0
		for i, cell := range r {
			width := each
			if i == 0 {
				width = first - 2
			}
			wrapped = append(wrapped, Wrap(cell, width))
			tall = max(tall, len(wrapped[i]))
		}
		for n := range tall {
			line, width := "  ", first
			for _, cell := range wrapped {
				text := ""
				if n < len(cell) {
					text = cell[n]
				}
				line += pad(text, width)
				width = each + 2
			}
			p.line(line)
		}
	}
}

// bars writes need against capability, with the rule and its source below.
func (p *terminal) bars(_ *document, list []report.Bar) {
	figure := 0
	for _, b := range list {
		figure = max(figure, cells.StringWidth(safe(b.Need)), cells.StringWidth(safe(b.Have)))
	}
	for _, b := range list {
		p.block("  ", labelled(b.Label, b.Verdict))
		p.bar(b.Need, figure, lightBlock, b.NeedShare)
		p.bar(b.Have, figure, fullBlock, b.HaveShare)
		p.block("    ", joined(b.Why, sourced(b.Source, b.Trust)))
	}
}

func (p *terminal) costs(list []report.CostBar, _ string) {
	figure := 0
	for _, b := range list {
		figure = max(figure, cells.StringWidth(safe(b.Label)), cells.StringWidth(safe(b.Value)))
	}
	for i, b := range list {
		p.block("  ", b.Label)
		p.bar(b.Value, figure, [2]rune{lightBlock, fullBlock}[i%2], b.Share)
	}
}

// bar writes a figure and its bar, one under the other if a line is too short
// for both.
func (p *terminal) bar(text string, figure int, block rune, share float64) {
	const least, most = 8, 40
	room := p.width - figure - 6
	if room >= least {
		p.line("    " + pad(safe(text), figure) + "  " + placed(block, 0, share, min(room, most)))
		return
	}
	p.block("    ", text)
	p.line("    " + placed(block, 0, share, min(p.width-4, most)))
}

// chart draws bars one under the other.
func (p *terminal) chart(c chart) {
	if c.title != "" {
		p.heading(c.title)
	}
	if c.intro != "" {
		p.line("")
		p.block("  ", c.intro+", "+c.unit+":")
	}
	p.barRows(c.bars)
	p.block("  ", c.legendText(true))
	p.block("  ", c.basis)
}

// barRows writes bars one under the other, their figures in columns. Words
// that have no room behind the bars stand below their bar; figures that leave
// no room for a bar stand above it.
func (p *terminal) barRows(rows []bar) {
	const indent, most, leastBar, leastWords = 2, 40, 16, 12
	l := barLayout{figures: make([]int, len(rows[0].figures))}
	words, before := 0, indent
	for _, r := range rows {
		for i, f := range r.figures {
			l.figures[i] = max(l.figures[i], cells.StringWidth(safe(f))+2)
		}
		words = max(words, cells.StringWidth(safe(r.words)))
	}
	for _, w := range l.figures {
		before += w
	}
	if before > p.width*2/3 {
		l.figures, before = nil, 2*indent
	}
	l.bar = min(p.width-before, most)
	if l.words = min(words, (p.width-before)/2); l.words >= leastWords && p.width-before-l.words-2 >= leastBar {
		l.bar = min(p.width-before-l.words-2, most)
	} else {
		l.words = 0
	}
	for _, r := range rows {
		p.barRow(r, l)
	}
}

// barLayout is how many cells each part of a row of bars takes.
type barLayout struct {
	figures    []int // nil where they stand above
	bar, words int   // words is 0 where they stand below
}

func (p *terminal) barRow(r bar, l barLayout) {
	line := "  "
	if l.figures == nil {
		p.block(line, joined(r.figures...))
		line += "  "
	}
	for i, w := range l.figures {
		line += ahead(safe(r.figures[i]), w-2) + "  "
	}
	indent := cells.StringWidth(line) + l.bar + 2
	line += placed(r.block, r.from, r.to, l.bar)
	if l.words == 0 || r.words == "" {
		p.line(line)
		p.block("      ", r.words)
		return
	}
	for _, w := range Wrap(r.words, l.words) {
		p.line(pad(line, indent) + w)
		line = ""
	}
}

// placed draws a bar from one share of its room to another, at least a block.
func placed(block rune, from, to float64, room int) string {
	cell := func(share float64) int {
		if !(share > 0) { // also where it is no number
			return 0
		}
		return int(min(share, 1)*float64(room) + 0.5)
	}
	start := min(cell(from), room-1)
	return strings.Repeat(" ", start) + strings.Repeat(string(block), max(cell(to)-start, 1))
}

// labels are labelled texts of a cut.
type labels []struct {
	label message.ID
	text  string
}

// plan writes each cut with what there is to know about it.
func (p *terminal) plan(d *document, list []report.Row) {
	for i, r := range list {
		p.block("  ", numbered(i+1, r.Cut))
		p.labels(d, "     ", labels{
			{"Piece:", r.Piece}, {"Setting:", r.Setting}, {"Look for:", joined(r.See, sourced(r.Source, ""))},
			{"Because:", joined(r.Because, bracket(r.Takes))}, {"Watch:", r.Beware},
		})
	}
}

// labels writes the labelled texts that there are.
func (p *terminal) labels(d *document, indent string, list labels) {
	const wide = 10 // cells for the label
	for _, l := range list {
		if l.text != "" {
			p.block(indent+pad(d.say(l.label)+" ", wide), l.text)
		}
	}
}

func (p *terminal) signatures(date string, who []string) {
	p.line("")
	for _, name := range who {
		p.line("")
		room := p.width - 20 - cells.StringWidth(pad(name, 16)) - cells.StringWidth(date)
		if p.width < 48 || room < 8 {
			p.signature(name, p.width-16)
			p.signature(date, 10)
			continue
		}
		p.line(pad(name, 16) + strings.Repeat("_", room) + "  " + date + " " + strings.Repeat("_", 10))
	}
}

// signature is one line to write on, below what goes there if that is long.
func (p *terminal) signature(what string, room int) {
	if cells.StringWidth(what) >= 16 {
		p.block("", what)
		what = ""
	}
	p.line(pad(what, 16) + strings.Repeat("_", room))
}

func (p *terminal) reason(d *document, r report.Reason) { p.topic("  ", true, d, r) }

// topic writes a topic: its title, its name in brackets, its result, and what
// stands under it.
func (p *terminal) topic(indent string, apart bool, d *document, r report.Reason) {
	if apart {
		p.line("")
	}
	p.block(indent, labelled(r.Title+" ["+r.Topic+"]", r.Value))
	for _, l := range d.under(r) {
		p.block(indent+"  ", l)
	}
	for _, part := range r.Parts {
		p.block(indent+"  - ", inline(part))
	}
}
