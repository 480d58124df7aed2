package text

import (
	"strconv"

	"cutbrief/report"
	"cutbrief/rules/message"
)

// Blocks of a picture. A full one and a light one differ without colour.
const (
	fullBlock  = '█'
	lightBlock = '░'
	leftBlock  = '·' // time left over
)

func figure(text string) message.Figure { return message.Figure(text) }

// chart is a picture: bars in a terminal, a table in Markdown.
type chart struct {
	title  string // of its own part, "" if it stands within one
	intro  string // before it where it has no title
	unit   string // of the bars, which the head of the table says too
	bars   []bar
	head   []string // of the table
	rows   [][]string
	legend []legend
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

// legend says what a block stands for; 0 for none. inHead says that the head of
// the table says so too.
type legend struct {
	block  rune
	text   string
	inHead bool
}

// legendText is the legend as a sentence, with its blocks or without.
func (c *chart) legendText(blocks bool) string {
	var parts []string
	for _, l := range c.legend {
		switch {
		case blocks && l.block != 0:
			parts = append(parts, string(l.block)+" "+l.text)
		case blocks || !l.inHead:
			parts = append(parts, l.text)
		}
	}
	if len(parts) == 0 {
		return ""
	}
	return joinedBy("; ", parts...) + "."
}

// speeds shows one bar a thickness, with what the thickness is behind it: full
// where the edge comes out clean, light where the piece only comes apart.
func (d *document) speeds(s *report.Speeds) {
	if s == nil || len(s.Marks) == 0 {
		return
	}
	c := chart{title: s.Title, head: append(d.row("Thickness", "Speed"), ""), legend: []legend{{fullBlock, s.Clean, false}, {lightBlock, s.Severed, false}}, basis: s.Rests}
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

// costByThickness shows two bars a thickness.
func (d *document) costByThickness(s *report.Curves) {
	if s == nil || len(s.Points) == 0 {
		return
	}
	c := chart{
		intro: s.Title, unit: s.Up, head: []string{d.say("Thickness"), s.Plasma + ", " + s.Up, s.Flame + ", " + s.Up, ""},
		legend: []legend{{fullBlock, s.Plasma, true}, {lightBlock, s.Flame, true}, {0, s.Crossing.Label, false}},
	}
	for _, p := range s.Points {
		at := place(s, p.At)
		c.bars = append(c.bars,
			bar{[]string{p.Thickness, p.Plasma.Shown[1]}, fullBlock, 0, p.PlasmaShare, pointed(at)},
			bar{[]string{"", p.Flame.Shown[1]}, lightBlock, 0, p.FlameShare, ""})
		c.rows = append(c.rows, []string{p.Thickness, p.Plasma.Shown[1], p.Flame.Shown[1], at})
	}
	d.chart(c)
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
