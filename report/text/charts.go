package text

import (
	"strconv"
	"strings"

	"cutbrief/report"
)

// Blocks of a picture. A full one and a light one differ without colour.
const (
	fullBlock  = '█'
	lightBlock = '░'
	leftBlock  = '·' // time left over
)

// bars put need against capability, on a terminal with the rule and its source
// below.
func (d *document) bars(list []report.Bar) {
	if len(list) == 0 {
		return
	}
	d.heading(d.say("Requirements and capabilities"))
	rows, figures := [][]string{d.row("Check", "Needed", "Given", "Verdict", "Why")}, 0
	for _, b := range list {
		rows = append(rows, []string{b.Label, b.Need, b.Have, b.Verdict, joined(b.Why, sourced(b.Source, b.Trust))})
		figures = max(figures, widest(b.Need, b.Have))
	}
	if d.inTable(rows) {
		return
	}
	for _, b := range list {
		d.Block("  ", labelled(b.Label, b.Verdict))
		d.bar(b.Need, figures, lightBlock, b.NeedShare)
		d.bar(b.Have, figures, fullBlock, b.HaveShare)
		d.Block("    ", joined(b.Why, sourced(b.Source, b.Trust)))
	}
}

// costs put what cutting costs today against what it would cost.
func (d *document) costs(list []report.CostBar) {
	rows, figures := [][]string{{"", d.say("Cost")}}, 0
	for _, b := range list {
		rows = append(rows, []string{b.Label, b.Value})
		figures = max(figures, widest(b.Label, b.Value))
	}
	if len(list) == 0 || d.inTable(rows) {
		return
	}
	for i, b := range list {
		d.Block("  ", b.Label)
		d.bar(b.Value, figures, [2]rune{lightBlock, fullBlock}[i%2], b.Share)
	}
}

// bar writes a figure and its bar, one under the other if a line is too short
// for both.
func (d *document) bar(text string, figures int, block rune, share float64) {
	const least, most = 8, 40
	room := d.Width - figures - 6
	if room >= least {
		d.Line("    " + pad(safe(text), figures) + "  " + placed(block, 0, share, min(room, most)))
		return
	}
	d.Block("    ", text)
	d.Line("    " + placed(block, 0, share, min(d.Width-4, most)))
}

// chart is a picture: bars in a terminal, a table in Markdown.
type chart struct {
	title  string // of its own part, "" if it stands within one
	intro  string // before it where it has no title
	unit   string // of the bars, which the head of the table says too
	bars   []bar
	head   []string // of the table
	rows   [][]string
	legend string
	basis  string // what it rests on
}

// bar is one bar from a share of its room to another, figures before it and
// words behind it.
type bar struct {
	figures  []string
	block    rune
	from, to float64
	words    string
}

// key is a block and what it stands for; in Markdown there are no blocks.
func (d *document) key(block rune, text string) string {
	if d.isMarkdown() {
		return text
	}
	return string(block) + " " + text
}

// speeds shows one bar a thickness, with what the thickness is behind it: full
// where the edge comes out clean, light where the piece only comes apart.
func (d *document) speeds(s *report.Speeds) {
	if s == nil || len(s.Marks) == 0 {
		return
	}
	c := chart{title: s.Title, head: append(d.row("Thickness", "Speed"), ""), legend: d.key(fullBlock, s.Clean) + "; " + d.key(lightBlock, s.Severed) + ".", basis: s.Rests}
	for _, m := range s.Marks {
		block, words := fullBlock, m.Says
		if m.At > s.CleanAt {
			block = lightBlock
		}
		if m.Yours {
			words = pointed(words)
		}
		c.bars = append(c.bars, bar{[]string{m.Thickness, m.Speed}, block, 0, m.Share, words})
		c.rows = append(c.rows, []string{m.Thickness, m.Speed, m.Says})
	}
	d.chart(c)
}

// pointed points from a word to the bar before it.
func pointed(s string) string {
	if s == "" {
		return ""
	}
	return "<- " + s
}

// costByThickness shows two bars a thickness, and says what is at one: what they cut
// most days, or where the lines cross.
func (d *document) costByThickness(s *report.Curves) {
	if s == nil || len(s.Points) == 0 {
		return
	}
	c := chart{
		intro: s.Title, unit: s.Up, head: []string{d.say("Thickness"), s.Plasma + ", " + s.Up, s.Flame + ", " + s.Up, ""},
	}
	c.legend = joinedBy("; ", d.key(fullBlock, s.Plasma), d.key(lightBlock, s.Flame), s.Crossing.Label) + "."
	if d.isMarkdown() { // the head of the table names both
		c.legend = s.Crossing.Label + "."
	}
	for _, p := range s.Points {
		at := ""
		if c := s.Everyday; c != nil && c.At == p.At {
			at = c.Label
		} else if likely := s.Crossing.Likely; likely != nil && *likely == p.At {
			at = s.Crossing.Here
		}
		c.bars = append(c.bars,
			bar{[]string{p.Thickness, p.Plasma.Shown[1]}, fullBlock, 0, p.PlasmaShare, pointed(at)},
			bar{[]string{"", p.Flame.Shown[1]}, lightBlock, 0, p.FlameShare, ""})
		c.rows = append(c.rows, []string{p.Thickness, p.Plasma.Shown[1], p.Flame.Shown[1], at})
	}
	d.chart(c)
}

// timeline shows every stretch of the demonstration where it lies in time.
func (d *document) timeline(t *report.Timeline) {
	if t == nil || len(t.Steps) == 0 {
		return
	}
	c := chart{title: t.Title, head: []string{d.say("When"), "", d.say("What")}, basis: joined(t.Says, t.Rests)}
	blocks := map[report.StepKind]rune{report.StepCut: fullBlock, report.StepSetUp: lightBlock, report.StepLeft: leftBlock}
	for _, s := range t.Steps {
		number, name := "", s.Name
		if s.Number > 0 {
			number, name = strconv.Itoa(s.Number), numbered(s.Number, s.Name)
		}
		c.bars = append(c.bars, bar{[]string{s.When}, blocks[s.Kind], s.From, s.To, name})
		c.rows = append(c.rows, []string{s.When, number, s.Name})
	}
	d.chart(c)
}

// crossing shows plasma and oxy-fuel by thickness.
func (d *document) crossing(s *report.CostChart) {
	if s == nil {
		return
	}
	c := chart{title: s.Title, head: d.row("Thickness", "Plasma", "Oxy-fuel"), basis: s.Says}
	plasma, flame := d.say("plasma"), d.say("oxy-fuel")
	for _, r := range s.Rows {
		c.bars = append(c.bars,
			bar{[]string{r.Thickness, plasma, r.Plasma.Shown[1]}, fullBlock, 0, r.PlasmaShare, ""},
			bar{[]string{"", flame, r.Flame.Shown[1]}, lightBlock, 0, r.FlameShare, ""})
		c.rows = append(c.rows, []string{r.Thickness, r.Plasma.Shown[1], r.Flame.Shown[1]})
	}
	d.chart(c)
}

// chart draws bars one under the other, or writes their table.
func (d *document) chart(c chart) {
	if c.title != "" {
		d.heading(c.title)
	}
	if d.isMarkdown() {
		if c.intro != "" {
			d.paragraph(c.intro + ":")
		}
		d.inTable(append([][]string{c.head}, c.rows...))
	} else {
		if c.intro != "" {
			d.Line("")
			d.Block("  ", c.intro+", "+c.unit+":")
		}
		d.barRows(c.bars)
	}
	d.paragraph(c.legend)
	d.paragraph(c.basis)
}

// barRows writes bars one under the other, their figures in columns. Words
// that have no room behind the bars stand below their bar; figures that leave
// no room for a bar stand above it.
func (d *document) barRows(rows []bar) {
	const indent, most, leastBar, leastWords = 2, 40, 16, 12
	figures := make([]int, len(rows[0].figures)) // cells of each column
	words, before := 0, indent
	for _, r := range rows {
		for i, f := range r.figures {
			figures[i] = max(figures[i], widest(f)+2)
		}
		words = max(words, widest(r.words))
	}
	for _, w := range figures {
		before += w
	}
	above := before > d.Width*2/3
	if above {
		before = 2 * indent
	}
	room := min(d.Width-before, most)
	words = min(words, (d.Width-before)/2)
	below := words < leastWords || d.Width-before-words-2 < leastBar
	if !below {
		room = min(d.Width-before-words-2, most)
	}
	for _, r := range rows {
		line := "  "
		if above {
			d.Block(line, joined(r.figures...))
			line += "  "
		} else {
			for i, w := range figures {
				line += strings.Repeat(" ", max(0, w-2-widest(r.figures[i]))) + safe(r.figures[i]) + "  "
			}
		}
		line += placed(r.block, r.from, r.to, room)
		if below || r.words == "" {
			d.Line(line)
			d.Block("      ", r.words)
			continue
		}
		for _, w := range Wrap(r.words, words) {
			d.Line(pad(line, before+room+2) + w)
			line = ""
		}
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

// columns writes a table on a terminal: the first column as wide as told, the
// others alike. Cells that are too long go on in the next line.
func (d *document) columns(rows [][]string, first int) {
	if len(rows) == 0 || len(rows[0]) < 2 {
		return
	}
	first = min(first, d.Width/3)
	each := max(min(18, (d.Width-2-first)/(len(rows[0])-1)-2), 4)
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
			d.Line(line)
		}
	}
}
