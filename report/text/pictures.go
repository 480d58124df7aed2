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

// speeds draws one bar a thickness, with what the thickness is behind it: full
// where the edge comes out clean, light where the piece only comes apart.
func (p *printer) speeds(s *report.Speeds) {
	if s == nil || len(s.Marks) == 0 {
		return
	}
	p.heading(s.Title)
	rows := make([]barRow, 0, len(s.Marks))
	for _, m := range s.Marks {
		block := fullBlock
		if m.At > s.CleanAt {
			block = lightBlock
		}
		rows = append(rows, barRow{[]string{m.Thickness, m.Speed}, block, 0, m.Share, named(m)})
	}
	p.barRows(rows)
	p.block("  ", string(fullBlock)+" "+s.Clean+"; "+string(lightBlock)+" "+s.Severed+".")
	p.block("  ", s.Rests)
}

// named says what a thickness is; the customer's own are pointed at.
func named(m report.SpeedMark) string {
	if m.Yours {
		return pointed(m.Says)
	}
	return m.Says
}

// pointed points from a word to the bar before it.
func pointed(s string) string {
	if s == "" {
		return ""
	}
	return "<- " + s
}

// costByThickness draws two bars a thickness.
func (p *printer) costByThickness(c *report.Curves) {
	if c == nil || len(c.Points) == 0 {
		return
	}
	p.line("")
	p.block("  ", c.Title+", "+c.Up+":")
	var rows []barRow
	for _, pt := range c.Points {
		rows = append(rows,
			barRow{[]string{pt.Thickness, pt.Plasma.Shown[1]}, fullBlock, 0, pt.PlasmaShare, pointed(place(c, pt.At))},
			barRow{[]string{"", pt.Flame.Shown[1]}, lightBlock, 0, pt.FlameShare, ""})
	}
	p.barRows(rows)
	p.block("  ", string(fullBlock)+" "+c.Plasma+"; "+string(lightBlock)+" "+c.Flame+"; "+c.Crossing.Label+".")
}

// place says what is at a thickness: what they cut most days, or where the
// lines cross.
func place(c *report.Curves, at float64) string {
	switch {
	case c.Everyday != nil && c.Everyday.At == at:
		return c.Everyday.Label
	case c.Crossing.Likely != nil && *c.Crossing.Likely == at:
		return c.Crossing.Here
	}
	return ""
}

// timeline draws every stretch of the demonstration where it lies in time.
func (p *printer) timeline(t *report.Timeline) {
	if t == nil || len(t.Steps) == 0 {
		return
	}
	p.heading(t.Title)
	blocks := map[report.StepKind]rune{report.StepCut: fullBlock, report.StepSetUp: lightBlock, report.StepLeft: leftBlock}
	var rows []barRow
	for _, s := range t.Steps {
		name := s.Name
		if s.Number > 0 {
			name = strconv.Itoa(s.Number) + ". " + name
		}
		rows = append(rows, barRow{[]string{s.When}, blocks[s.Kind], s.From, s.To, name})
	}
	p.barRows(rows)
	p.block("  ", joined(t.Says, t.Rests))
}

// barRow is one bar from a share of its room to another, figures before it and
// words behind it.
type barRow struct {
	figures  []string
	block    rune
	from, to float64
	words    string
}

// barRows writes bars one under the other, their figures in columns. Words
// that have no room behind the bars stand below their bar; figures that leave
// no room for a bar stand above it.
func (p *printer) barRows(rows []barRow) {
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

func (p *printer) barRow(r barRow, l barLayout) {
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
