package pdf

import (
	"slices"
	"strconv"
	"strings"

	"cutbrief/report"
	"cutbrief/report/page"
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
	c.paragraph(c.full, 1, run{title, bigBold, accent})
}

// capped are the last resorts of a list: fewer of its entries, and fewer lines
// of each. Draw puts the first n entries with at most most lines each.
func capped(what message.ID, n int, draw func(c *canvas, at span, n, most int)) []form {
	var list []form
	for _, cap := range [][2]int{{n, 4}, {n, 2}, {n, 1}, {n / 2, 2}, {n / 2, 1}, {n / 4, 1}, {1, 1}} {
		keep := min(max(cap[0], 1), n)
		f := form{loss: (n-keep)*lossDecisive + lossLines/cap[1], draw: func(c *canvas, at span) { draw(c, at, keep, cap[1]) }}
		if keep < n {
			f.gone = []gone{{what, n - keep, n}}
		}
		list = append(list, f)
	}
	return list
}

// head is the title and who it is for.
func (c *canvas) head() *block {
	b := c.brief
	who := func(columns, n, most int) form {
		return form{draw: func(c *canvas, at span) {
			c.paragraph(at, 1, run{b.Title, titleStyle, accent})
			c.shape(fillMark, at.x, c.y+0.4, at.width, 0.7, accent)
			c.y += row
			c.grid(at, columns, n, func(i int, at span) {
				c.paragraph(at, most, run{b.Who[i].Label, smallStyle, grey}, run{b.Who[i].Value, strongStyle, black})
			})
		}}
	}
	n := len(b.Who)
	flowing := form{loss: lossMerged, draw: func(c *canvas, at span) {
		who(1, 0, all).draw(c, at)
		c.pairs(at, b.Who)
	}}
	return &block{name: "who and when", forms: []form{who(3, n, all), who(2, n, all), flowing},
		last: capped("who and when", n, func(c *canvas, at span, n, most int) { who(3, n, most).draw(c, at) })}
}

// pairs puts labels and values one behind the other; a pair is not parted unless
// it is wider than a line.
func (c *canvas) pairs(at span, lines []report.Line) {
	const apart = 4.0
	x := at.x
	for _, l := range lines {
		label := c.faces.width(l.Label+" ", smallStyle)
		wide := label + c.faces.width(l.Value, strongStyle)
		if x > at.x && x+wide > at.x+at.width {
			x, c.y = at.x, c.y+strongStyle.line()
		}
		if wide > at.width {
			c.paragraph(at, all, run{l.Label, smallStyle, grey}, run{l.Value, strongStyle, black})
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

// grid puts entries into columns, line by line.
func (c *canvas) grid(at span, columns, n int, put func(i int, at span)) {
	wide := (at.width - float64(columns-1)*gutter/2) / float64(columns)
	top, bottom := c.y, c.y
	for i := range n {
		if i%columns == 0 {
			top = bottom
		}
		c.y = top
		put(i, span{at.x + float64(i%columns)*(wide+gutter/2), wide})
		bottom = max(bottom, c.y)
	}
	c.y = bottom
}

// banner says that the data is invented.
func (c *canvas) banner() *block {
	text := c.brief.Demo
	if text == "" {
		return nil
	}
	put := func(most int) form {
		return form{draw: func(c *canvas, at span) {
			frame := len(c.marks)
			c.marks = append(c.marks, mark{}, mark{})
			lines, cut := c.faces.flow(plainly(text, strongStyle, black), at.width-6, most)
			if c.y = row / 2; cut {
				c.cut++
			}
			for _, l := range lines {
				c.line(at.x+(at.width-c.faces.end(l))/2, l)
			}
			c.y += row / 2
			c.marks[frame] = mark{kind: fillMark, x: at.x, w: at.width, h: c.y, ink: light}
			c.marks[frame+1] = mark{kind: boxMark, x: at.x, w: at.width, h: c.y, ink: black}
		}}
	}
	bare := form{loss: lossMerged, draw: func(c *canvas, at span) { c.paragraph(at, all, plainly(text, strongStyle, black)...) }}
	return &block{name: "banner", forms: []form{put(all), bare}, last: []form{put(2), put(1)}}
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
	put := func(most int, beside bool) func(*canvas, span) {
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
			if c.paragraph(at, most, run{answer, bigBold, accent}); beside {
				c.y = top
			}
			c.paragraph(left, most, run{b.Headline, st, black})
			c.y = max(c.y, top+st.line())
			if !right {
				c.paragraph(at, most, run{b.Second, bigStyle, grey})
			}
		}
	}
	forms := []form{{draw: put(all, false)}}
	if c.faces.width(answer+b.Second, bigBold)+c.faces.width(b.Headline, titleStyle) < c.full.width-25 {
		forms = append(forms, form{loss: lossMerged, draw: put(1, true)})
	}
	return &block{name: "recommendation", forms: forms, last: []form{{draw: put(2, false)}, {draw: put(1, false)}}}
}

// need is the one sentence the page rests on.
func (c *canvas) need() *block { return c.sentence("need", c.brief.Need, bigStyle, black) }

// sentence is a block of one text; nil without it.
func (c *canvas) sentence(name message.ID, text string, st style, in ink) *block {
	if text == "" {
		return nil
	}
	put := func(most int) form {
		return form{draw: func(c *canvas, at span) { c.paragraph(at, most, plainly(text, st, in)...) }}
	}
	return &block{name: name, forms: []form{put(all)}, last: []form{put(4), put(2), put(1)}}
}

// reasons say why: one below the other or, where that is too long, one behind
// the other.
func (c *canvas) reasons() *block {
	const name message.ID = "reasons"
	texts, st := c.brief.Because, bigStyle
	if len(texts) == 0 {
		return nil
	}
	each := func(c *canvas, at span, n, most int) {
		for _, t := range texts[:n] {
			c.bullet(at, most, run{t, st, black})
		}
	}
	return &block{
		name: name,
		forms: []form{
			{draw: func(c *canvas, at span) { each(c, at, len(texts), all) }},
			{loss: lossReasons, draw: func(c *canvas, at span) { c.paragraph(at, all, merged(texts, st)...) }},
		},
		last: capped(name, len(texts), each),
	}
}

// merged puts sentences into one paragraph, parted by dots.
func merged(texts []string, st style) []run {
	var list []run
	for _, t := range texts {
		list = append(list, run{"•\u00a0" + t, st, black})
	}
	return list
}

func digits(n int) string { return strconv.Itoa(n) }

// values are the texts of lines.
func values(lines []report.Line) []string {
	var list []string
	for _, l := range lines {
		if l.Value != "" {
			list = append(list, l.Value)
		}
	}
	return list
}

// footing is what the figures rest on, and what was replaced.
func (c *canvas) footing(replaced message.Message) *block {
	b := c.brief
	put := func(c *canvas, at span, n, most int) {
		rests := b.Footing
		if b.Check != "" && len(rests) > 0 { // its printed form ends the footing, on a line of its own
			rests = rests[:len(rests)-1]
		}
		c.paragraph(at, 2*most, plainly(strings.Join(rests[:min(n, len(rests))], " "), smallStyle, grey)...)
		for _, t := range b.Footing[len(rests):] {
			c.paragraph(at, most, plainly(t, smallStyle, grey)...)
		}
		for _, t := range b.Dropped[:min(len(b.Dropped), most)] {
			c.paragraph(at, most, plainly(t, smallBold, black)...)
		}
		c.paragraph(at, all, plainly(c.words.Print(replaced), smallBold, black)...)
	}
	n := len(b.Footing)
	forms := []form{{draw: func(c *canvas, at span) { put(c, at, n, all) }}}
	if n > 1 {
		forms = append(forms, form{loss: lossFooting, gone: []gone{{what: "what the figures rest on"}}, draw: func(c *canvas, at span) { put(c, at, 1, all) }})
	}
	return &block{name: "what the figures rest on", forms: forms, last: capped("what the figures rest on", n, put)}
}

// signatures are a line for the customer and one for the representative.
func (c *canvas) signatures() *block {
	return &block{forms: []form{{draw: func(c *canvas, at span) {
		c.y = 4 * row // to write in
		left, right := at.halves(0.5)
		for i, who := range []message.ID{page.Customer, page.Seller} {
			on := []span{left, right}[i]
			c.shape(ruleMark, on.x, c.y, on.width*0.68, 0, black)
			c.text(on.x, c.y, c.say(who), smallStyle, grey)
			c.shape(ruleMark, on.x+on.width*0.72, c.y, on.width*0.28, 0, black)
			c.text(on.x+on.width*0.72, c.y, c.say(page.Date), smallStyle, grey)
		}
		c.y += smallStyle.line() - row
	}}}}
}

// joined are parts of a sentence that are there.
func joined(parts ...string) string {
	return strings.Join(slices.DeleteFunc(parts, func(s string) bool { return s == "" }), " ")
}
