package pdf

import (
	"cutbrief/report"
	"cutbrief/report/page"
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
	points     []place    // of a curve
	sign       *page.Sign // of a sign
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

// moved puts a mark that was laid out from 0 where it belongs: top mm further
// down, on a grid pressed or stretched by scale. Signs and squares keep their shape.
func (m mark) moved(top, scale float64) mark {
	m.y = top + m.y*scale
	if m.w != m.h {
		m.h *= scale
	}
	points := m.points
	m.points = nil
	for _, p := range points {
		m.points = append(m.points, place{p.x, top + p.y*scale})
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

// canvas collects marks from top to bottom.
type canvas struct {
	faces faces
	words *message.Catalog
	brief *report.Brief
	full  span
	y     float64 // where the next thing goes
	marks []mark
	cut   int // texts that were cut
}

// say prints a message in the language of the brief.
func (c *canvas) say(id message.ID, args ...any) string {
	return c.words.Print(message.New(id, args...))
}

// all is more lines than any text that has passed the gate needs.
const all = 400

// text puts one line with its top at y.
func (c *canvas) text(x, y float64, text string, st style, in ink) {
	c.marks = append(c.marks, mark{kind: textMark, x: x, y: y, h: st.line(), text: text, style: st, ink: in})
}

// shape puts a line or a box.
func (c *canvas) shape(kind markKind, x, y, w, h float64, in ink) {
	c.marks = append(c.marks, mark{kind: kind, x: x, y: y, w: w, h: h, ink: in})
}

// paragraph puts a text of at most most lines and moves on below it.
func (c *canvas) paragraph(at span, most int, runs ...run) {
	lines, cut := c.faces.flow(runs, at.width, most)
	if cut {
		c.cut++
	}
	for _, line := range lines {
		c.line(at.x, line)
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
func (c *canvas) bullet(at span, most int, runs ...run) {
	const indent = 3.4
	c.text(at.x, c.y, "•", runs[0].style, accent)
	c.paragraph(at.indented(indent), most, runs...)
}

// heading opens a part of the page.
func (c *canvas) heading(at span, text string) {
	c.paragraph(at, 2, run{text, headStyle, accent})
}

// right puts a text with its end at x.
func (c *canvas) right(x float64, text string, st style, in ink) {
	c.text(x-c.faces.width(text, st), c.y, text, st, in)
}
