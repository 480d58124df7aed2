package pdf

import (
	"strings"
)

// head puts the title, the date and who it is for.
func (pg *page) head() {
	title := pg.wrapped("title", pg.brief.Title, titleStyle, pg.width, 1)
	pg.y = pg.lines(pg.left, pg.y, title, titleStyle, accent) + 0.8
	pg.shape(fillMark, pg.left, pg.y, pg.width, 0.7, accent)
	pg.y += 2.4
	pg.who()
}

// who puts the answers to who and when in two columns, the label before.
func (pg *page) who() {
	const columns, most = 2, 8
	width := (pg.width - (columns-1)*gutter/2) / columns
	top, bottom := pg.y, pg.y
	for i, l := range pg.brief.Who[:pg.kept("who and when", len(pg.brief.Who), most)] {
		if i > 0 && i%columns == 0 {
			top = bottom + 0.5
		}
		x := pg.left + float64(i%columns)*(width+gutter/2)
		label := pg.wrapped("who and when", l.Label, smallStyle, width*0.4, 1)
		pg.lines(x, top+0.3, label, smallStyle, grey)
		indent := 0.0
		for _, t := range label {
			indent = pg.faces.width(t, smallStyle) + 1.8
		}
		pg.y = top
		pg.paragraph("who and when", l.Value, span{x + indent, width - indent}, strongStyle, black, pg.limits.who)
		bottom = max(bottom, pg.y, top+strongStyle.line())
	}
	pg.y = bottom + pg.limits.gap
}

// banner says that the data is invented.
func (pg *page) banner() {
	if pg.brief.Demo == "" {
		return
	}
	lines := pg.wrapped("banner", pg.brief.Demo, strongStyle, pg.width-6, 2)
	height := float64(len(lines))*strongStyle.line() + 2
	pg.shape(fillMark, pg.left, pg.y, pg.width, height, light)
	pg.shape(boxMark, pg.left, pg.y, pg.width, height, black)
	y := pg.y + 1
	for _, l := range lines {
		pg.text(pg.left+(pg.width-pg.faces.width(l, strongStyle))/2, y, l, strongStyle, black)
		y += strongStyle.line()
	}
	pg.y += height + pg.limits.gap
}

// need puts the one sentence the page rests on.
func (pg *page) need() {
	if pg.brief.Need == "" {
		return
	}
	pg.paragraph("need", pg.brief.Need, pg.full(), needStyle, black, max(pg.limits.long+1, 3))
	pg.y += pg.limits.gap
}

// recommendation puts the box that answers the question.
func (pg *page) recommendation() {
	const pad = 2.2
	b, top := pg.brief, pg.y
	in := span{pg.left + pad + 2.4, pg.width - 2*pad - 2.4}
	frame := len(pg.marks)
	pg.marks = append(pg.marks, mark{}, mark{}) // the frame goes beneath the text
	pg.y += pad
	pg.text(in.x, pg.y, pg.say(b.Answer()), smallStyle, grey)
	pg.y += smallStyle.line() + 0.2
	pg.paragraph("recommendation", b.Headline, in, headlineStyle, black, 2)
	pg.y += 0.6
	for _, t := range b.Because[:pg.kept("reasons", len(b.Because), pg.limits.because)] {
		pg.bullet("reasons", t, in, bodyStyle, pg.limits.long)
	}
	if b.Second != "" {
		pg.y += 0.6
		pg.paragraph("second choice", b.Second, in, bodyStyle, grey, max(2, pg.limits.long))
	}
	pg.y += pad - 0.6
	pg.marks[frame] = mark{kind: boxMark, x: pg.left, y: top, w: pg.width, h: pg.y - top, ink: accent}
	pg.marks[frame+1] = mark{kind: fillMark, x: pg.left, y: top, w: 1.8, h: pg.y - top, ink: accent}
	pg.y += pg.limits.gap
}

// bullet puts one sentence behind a dot.
func (pg *page) bullet(part, text string, at span, st style, most int) {
	const indent = 3.0
	if strings.TrimSpace(text) == "" {
		return
	}
	pg.text(at.x, pg.y, "•", st, accent)
	pg.paragraph(part, text, span{at.x + indent, at.width - indent}, st, black, most)
	pg.y += 0.35
}
