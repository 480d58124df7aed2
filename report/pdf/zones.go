package pdf

import (
	"slices"
	"strconv"
	"strings"

	"cutbrief/report"
	"cutbrief/rules/message"
)

// zones are the parts of the page from top to bottom: who it is for, what we
// recommend and why, the figures behind it, what happens next, and the foot.
func (c *canvas) zones(replaced message.Message) []zone {
	bare := func(*canvas, int) {}
	full := func(draw func(*canvas, int), blocks ...*block) zone {
		return zone{[]layout{{draw: draw, columns: []column{{c.full, present(blocks)}}}}}
	}
	inner := c.full.indented(panelIndent)
	inner.width -= panelIndent / 2
	list := []zone{
		full(bare, c.head(), c.banner()),
		{[]layout{{head: 1, foot: 1, draw: panel, columns: []column{{inner, present([]*block{c.headline(), c.need(), c.reasons()})}}}}},
	}
	for _, z := range []zone{c.proof(), c.next(), full(bare, c.dangers()), c.more()} {
		if len(z.layouts) > 0 {
			list = append(list, z)
		}
	}
	return append(list, full(nil, c.footing(replaced), c.signatures()))
}

// present are the blocks that are there.
func present(blocks []*block) []*block {
	return slices.DeleteFunc(slices.Clone(blocks), func(b *block) bool { return b == nil })
}

// headed are layouts below a heavy rule with the title of a zone or, where room
// is short, without it: the parts have headings of their own.
func headed(title message.ID, layouts [][]column) zone {
	var z zone
	for _, columns := range layouts {
		z.layouts = append(z.layouts,
			layout{head: 4, columns: columns, draw: func(c *canvas, _ int) { c.zoneHead(c.say(title)) }},
			layout{head: 1, loss: lossTitle, columns: columns, draw: func(c *canvas, _ int) { c.shape(fillMark, c.full.x, 0, c.full.width, 0.5, accent) }})
	}
	return z
}

// zoneHead is a heavy rule and the title of a zone.
func (c *canvas) zoneHead(title string) {
	c.shape(fillMark, c.full.x, c.y, c.full.width, 0.5, accent)
	c.within(c.full, 1, run{title, bigBold, accent})
}

// title is the title of a page above a heavy rule.
func (c *canvas) title(text string) {
	c.within(c.full, 1, run{text, titleStyle, accent})
	c.shape(fillMark, c.full.x, c.y+0.4, c.full.width, 0.7, accent)
	c.y += row
}

// head is the title and who it is for.
func (c *canvas) head() *block {
	b := c.brief
	who := func(columns int) func(*canvas, span) {
		return func(c *canvas, at span) {
			c.title(b.Title)
			n := c.kept(len(b.Who))
			wide := (at.width - float64(columns-1)*gutter/2) / float64(columns)
			for first := 0; first < n; first += columns {
				var row []func()
				for i := first; i < min(first+columns, n); i++ {
					cell := span{at.x + float64(i-first)*(wide+gutter/2), wide}
					row = append(row, func() {
						c.paragraph(cell, run{b.Who[i].Label, smallStyle, grey}, run{b.Who[i].Value, strongStyle, black})
					})
				}
				c.cells(row...)
			}
		}
	}
	flowing := func(c *canvas, at span) {
		c.title(b.Title)
		c.pairs(at, b.Who)
	}
	return &block{name: "who and when", resort: 2, forms: []form{{draw: who(3)}, {draw: who(2)}, {loss: lossMerged, draw: flowing}}}
}

// pairs puts labels and values one behind the other; a pair is not parted unless
// it is wider than a line.
func (c *canvas) pairs(at span, lines []report.Line) {
	const apart = 4.0
	x := at.x
	for _, l := range lines[:c.kept(len(lines))] {
		label := c.faces.width(l.Label+" ", smallStyle)
		wide := label + c.faces.width(l.Value, strongStyle)
		if x > at.x && x+wide > at.x+at.width {
			x, c.y = at.x, c.y+strongStyle.line()
		}
		if wide > at.width {
			c.paragraph(at, run{l.Label, smallStyle, grey}, run{l.Value, strongStyle, black})
			continue
		}
		c.text(x, c.y, l.Label, smallStyle, grey)
		c.text(x+label, c.y, l.Value, strongStyle, black)
		x += wide + apart
	}
	if x > at.x {
		c.y += strongStyle.line()
	}
}

// banner says that the data is invented.
func (c *canvas) banner() *block {
	said := run{c.brief.Demo, strongStyle, black}
	if said.text == "" {
		return nil
	}
	framed := func(c *canvas, at span) {
		const edge = row / 2
		lines, _ := c.faces.flow([]run{said}, at.width-6, all)
		high := float64(len(lines))*strongStyle.line() + 2*edge
		c.shape(fillMark, at.x, 0, at.width, high, light)
		c.shape(boxMark, at.x, 0, at.width, high, black)
		c.y = edge
		for _, l := range lines {
			c.line(at.x+(at.width-c.faces.end(l))/2, l)
		}
		c.y = high
	}
	return &block{name: "banner", forms: []form{{draw: framed}, {loss: lossMerged, draw: func(c *canvas, at span) { c.paragraph(at, said) }}}}
}

// panelIndent is how far the text of the panel is from its edge, in mm.
const panelIndent = 5.0

// panel is what lies beneath what we recommend: nothing else on the page is as
// dark as its edge.
func panel(c *canvas, rows int) {
	high := float64(rows-1) * row
	c.shape(fillMark, c.full.x, 0, c.full.width, high, light)
	c.shape(fillMark, c.full.x, 0, 2, high, accent)
}

// headline answers the question in the largest type that takes one line. The
// second choice stands at the right above it, or beside it, where there is room;
// else below.
func (c *canvas) headline() *block {
	b := c.brief
	answer := c.words.Print(b.Answer().Message())
	put := func(beside bool) func(*canvas, span) {
		return func(c *canvas, at span) {
			top, left := c.y, at
			second := c.faces.width(b.Second, bigStyle)
			if beside {
				left = at.indented(c.faces.width(answer, bigBold) + 4)
				left.width -= second + 4
			}
			st := headlineStyle
			for _, larger := range []style{titleStyle, hugeStyle} {
				if c.faces.width(b.Headline, larger) <= left.width {
					st = larger
				}
			}
			if beside {
				c.y += st.line() - bigStyle.line()
			}
			right := second < at.width/2 && b.Second != ""
			if right {
				c.right(at.x+at.width, b.Second, bigStyle, grey)
			}
			if c.put(at, answer, bigBold, accent); beside {
				c.y = top
			}
			c.put(left, b.Headline, st, black)
			c.y = max(c.y, top+st.line())
			if !right {
				c.put(at, b.Second, bigStyle, grey)
			}
		}
	}
	forms := []form{{draw: put(false)}}
	if c.faces.width(answer+b.Second, bigBold)+c.faces.width(b.Headline, titleStyle) < c.full.width-25 {
		forms = append(forms, form{loss: lossMerged, draw: put(true)})
	}
	return &block{name: "recommendation", forms: forms, resort: len(forms) - 1}
}

// need is the one sentence the page rests on.
func (c *canvas) need() *block {
	if c.brief.Need == "" {
		return nil
	}
	return &block{name: "need", forms: []form{{draw: func(c *canvas, at span) { c.put(at, c.brief.Need, bigStyle, black) }}}}
}

// reasons say why: one below the other or, where that is too long, one behind
// the other.
func (c *canvas) reasons() *block {
	texts := c.brief.Because
	if len(texts) == 0 {
		return nil
	}
	return &block{name: "reasons", resort: 1, forms: []form{
		{draw: func(c *canvas, at span) { c.points(at, texts, bigStyle) }},
		{loss: lossReasons, draw: func(c *canvas, at span) { c.merged(at, texts, bigStyle) }},
	}}
}

// points puts texts one below the other, each behind a dot.
func (c *canvas) points(at span, texts []string, st style) {
	for _, t := range texts[:c.kept(len(texts))] {
		c.bullet(at, run{t, st, black})
	}
}

// merged puts texts into one paragraph, parted by dots.
func (c *canvas) merged(at span, texts []string, st style) {
	var list []run
	for _, t := range texts[:c.kept(len(texts))] {
		list = append(list, run{"•\u00a0" + t, st, black})
	}
	c.paragraph(at, list...)
}

func digits(n int) string { return strconv.Itoa(n) }

// footing is what the figures rest on, and what was replaced.
func (c *canvas) footing(replaced message.Message) *block {
	const name message.ID = "what the figures rest on"
	b := c.brief
	rests, check := b.Footing, ""
	if n := len(rests) - 1; b.Check != "" && n >= 0 { // its printed form ends the footing, on a line of its own
		rests, check = rests[:n], rests[n]
	}
	put := func(rests []string) func(*canvas, span) {
		return func(c *canvas, at span) {
			c.put(at, strings.Join(rests[:c.kept(len(rests))], " "), smallStyle, grey)
			c.put(at, check, smallStyle, grey)
			for _, t := range b.Dropped[:c.kept(len(b.Dropped))] {
				c.put(at, t, smallBold, black)
			}
			c.within(at, all, run{c.words.Print(replaced), smallBold, black})
		}
	}
	forms := []form{{draw: put(rests)}}
	if len(rests) > 1 {
		forms = append(forms, form{loss: lossFooting, gone: []gone{{what: name}}, draw: put(rests[:1])})
	}
	return &block{name: name, forms: forms}
}

// signatures are a line for the customer and one for the representative.
func (c *canvas) signatures() *block {
	return &block{forms: []form{{draw: func(c *canvas, at span) {
		c.y = 4 * row // to write in
		left, right := at.halves(0.5)
		for i, who := range []message.ID{report.PageCustomer, report.PageSeller} {
			on := []span{left, right}[i]
			c.shape(ruleMark, on.x, c.y, on.width*0.68, 0, black)
			c.text(on.x, c.y, c.say(who), smallStyle, grey)
			c.shape(ruleMark, on.x+on.width*0.72, c.y, on.width*0.28, 0, black)
			c.text(on.x+on.width*0.72, c.y, c.say(report.PageDate), smallStyle, grey)
		}
		c.y += smallStyle.line() - row
	}}}}
}
