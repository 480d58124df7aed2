package pdf

import (
	"math"

	"cutbrief/report"
	"cutbrief/rules/message"
)

// mark is one thing on the page, placed in mm from the top left corner. Laying
// out makes marks; drawing only copies them to the file. So the whole page can
// be measured, and checked, before a byte is written.
type mark struct {
	kind       markKind
	x, y, w, h float64 // for text h is the height of its line, and w is not kept
	text       string
	style      style
	ink        ink
	points     []place      // of a curve
	sign       *report.Sign // of a sign
}

type place struct{ x, y float64 }

type markKind int

const (
	textMark  markKind = iota
	ruleMark           // a line from x,y by w,h
	fillMark           // a filled box
	boxMark            // an outlined box
	hatchMark          // an outlined box with slanted lines
	lineMark           // a thick line from point to point
	dashMark           // the same, in dashes
	signMark           // a safety sign
)

// moved puts a mark that was laid out from 0 where it belongs: x and y mm away, on
// a grid pressed or stretched by scale. Signs and squares keep their shape.
func (m mark) moved(x, y, scale float64) mark {
	m.x, m.y = x+m.x, y+m.y*scale
	if m.w != m.h {
		m.h *= scale
	}
	points := m.points
	m.points = nil
	for _, p := range points {
		m.points = append(m.points, place{x + p.x, y + p.y*scale})
	}
	return m
}

// ink is a colour, chosen so that a black and white print keeps the order from
// dark to light.
type ink struct{ r, g, b uint8 }

var (
	black  = ink{0, 0, 0}
	grey   = ink{95, 95, 95}
	light  = ink{238, 238, 236}
	accent = ink{28, 62, 80}
)

// span is where a column starts and how wide it is, in mm.
type span struct{ x, width float64 }

// gutter is the space between two columns, in mm.
const gutter = 6.8

// halves parts a span into two columns; the first has the share.
func (s span) halves(share float64) (left, right span) {
	wide := (s.width - gutter) * share
	return span{s.x, wide}, span{s.x + wide + gutter, s.width - gutter - wide}
}

// indented leaves room at the left.
func (s span) indented(by float64) span { return span{s.x + by, s.width - by} }

// limit is a last resort: which share of the entries of a list is kept, one of so
// many, and how many lines of each text. Zero keeps all.
type limit struct{ share, lines int }

// canvas collects marks from top to bottom. What is only measured collects none.
type canvas struct {
	faces faces
	words *message.Catalog
	brief *report.Brief
	full  span
	y     float64 // where the next thing goes
	marks []mark
	blind bool // measure alone
	limit limit
	cut   int // texts that were cut
	left  int // entries that were left out, of so many
	of    int
}

// fresh is a canvas of the same page with nothing on it.
func (c *canvas) fresh() *canvas {
	return &canvas{faces: c.faces, words: c.words, brief: c.brief, full: c.full, blind: c.blind, limit: c.limit}
}

// say prints a message in the language of the brief.
func (c *canvas) say(id message.ID, args ...any) string {
	return c.words.Print(message.New(id, args...))
}

// kept is how many of n entries of a list are shown.
func (c *canvas) kept(n int) int {
	k := n
	if c.limit.share > 1 && n > 0 {
		k = max(n/c.limit.share, 1)
	}
	c.left, c.of = c.left+n-k, c.of+n
	return k
}

// add puts a mark.
func (c *canvas) add(m mark) {
	if !c.blind {
		c.marks = append(c.marks, m)
	}
}

// text puts one line with its top at y.
func (c *canvas) text(x, y float64, text string, st style, in ink) {
	c.add(mark{kind: textMark, x: x, y: y, h: st.line(), text: text, style: st, ink: in})
}

// right puts a text with its end at x.
func (c *canvas) right(x float64, text string, st style, in ink) {
	c.text(x-c.faces.width(text, st), c.y, text, st, in)
}

// shape puts a line or a box.
func (c *canvas) shape(kind markKind, x, y, w, h float64, in ink) {
	c.add(mark{kind: kind, x: x, y: y, w: w, h: h, ink: in})
}

// curve puts a line from point to point.
func (c *canvas) curve(kind markKind, in ink, points []place) {
	if len(points) < 2 {
		return
	}
	m := mark{kind: kind, x: math.Inf(1), y: math.Inf(1), ink: in, points: points}
	right, low := 0.0, 0.0
	for _, p := range points {
		m.x, m.y, right, low = min(m.x, p.x), min(m.y, p.y), max(right, p.x), max(low, p.y)
	}
	m.w, m.h = right-m.x, low-m.y
	c.add(m)
}

// all is more lines than any text that is let in needs.
const all = 400

// paragraph puts runs one behind the other and moves on below them.
func (c *canvas) paragraph(at span, runs ...run) {
	most := all
	if c.limit.lines > 0 {
		most = c.limit.lines
	}
	c.within(at, most, runs...)
}

// within is paragraph with at most so many lines.
func (c *canvas) within(at span, most int, runs ...run) {
	lines, cut := c.faces.flow(runs, at.width, most)
	if cut {
		c.cut++
	}
	for _, line := range lines {
		c.line(at.x, line)
	}
}

// put puts a text and moves on below it.
func (c *canvas) put(at span, text string, st style, in ink) {
	if text != "" {
		c.paragraph(at, run{text, st, in})
	}
}

// line puts one line of pieces and moves on below it.
func (c *canvas) line(x float64, line []piece) {
	high := 0.0
	for _, p := range line {
		high = max(high, p.style.line())
	}
	for _, p := range line {
		c.text(x+p.x, c.y+high-p.style.line(), p.text, p.style, p.ink)
	}
	c.y += high
}

// bullet puts a paragraph behind a dot.
func (c *canvas) bullet(at span, runs ...run) {
	const indent = 3.4
	c.text(at.x, c.y, "•", runs[0].style, accent)
	c.paragraph(at.indented(indent), runs...)
}

// heading opens a part of the page.
func (c *canvas) heading(at span, text string) { c.within(at, 2, run{text, headStyle, accent}) }

// cells puts what has a column each side by side, and moves on below the highest.
func (c *canvas) cells(put ...func()) {
	top, end := c.y, c.y
	for _, p := range put {
		c.y = top
		p()
		end = max(end, c.y)
	}
	c.y = end
}

// copied puts the marks of another canvas here.
func (c *canvas) copied(on *canvas, x, y, scale float64) {
	for _, m := range on.marks {
		c.add(m.moved(x, y, scale))
	}
}

// joined are parts of a sentence that are there, parted by sep.
func joined(sep string, parts ...string) string {
	text := ""
	for _, p := range parts {
		if text != "" && p != "" {
			text += sep
		}
		text += p
	}
	return text
}
