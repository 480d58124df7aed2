package pdf

import (
	"fmt"

	"cutbrief/report"
	"cutbrief/rules/message"
)

// grids are the steps of the grid a page may have, in mm, each with what is lost
// by it: lines that lie close are harder to read. Type keeps its size.
var grids = []struct {
	step float64
	loss int
}{{1.9, 0}, {1.8, 0}, {1.75, 1}, {1.7, 3}, {1.65, 7}, {1.6, 12}, {1.55, 50}}

// most is how many rows the sheet with most of them has.
const most = 177

// fit lays a brief out on one page: of all ways to word, merge and place its
// parts that fit, the one that loses least.
func fit(f faces, b *report.Brief, p Paper, replaced message.Message) (*leaf, error) {
	width, height, err := p.size()
	if err != nil {
		return nil, err
	}
	c := &canvas{faces: f, words: b.Words, brief: b, full: span{sideMargin, width - 2*sideMargin}}
	room := height - topMargin - bottomMargin
	zones := c.zones(replaced)
	for _, last := range []bool{false, true} {
		c.lay(zones, last)
		for lines := 1; lines < 6; lines++ { // kept free for what is said to be elsewhere
			zones[len(zones)-1].layouts[0].head = 2 * lines
			if pg, ok := c.best(zones, room, lines); ok {
				return pg, nil
			}
		}
	}
	return nil, fmt.Errorf("the page does not fit on %s", p)
}

// best places the best choice, with lines kept free for what is elsewhere; false
// where nothing fits or the lines are too few.
func (c *canvas) best(zones []zone, room float64, lines int) (*leaf, bool) {
	plan := planned(zones, most)
	grid, loss := grids[0], never
	for _, g := range grids {
		if l := plan.loss(int(room/g.step)) + g.loss; l < loss {
			grid, loss = g, l
		}
	}
	if loss >= never {
		return nil, false
	}
	rows := int(room / grid.step)
	list := plan.at(rows)
	gone := left(list)
	said, cut := c.faces.flow(c.elsewhere(gone), c.full.width, max(lines, 1))
	if cut || len(said) > lines {
		return nil, false
	}
	spare := rows
	for _, z := range list {
		spare -= z.rows
	}
	on, y := c.fresh(), topMargin
	for i, z := range list {
		if i == len(list)-1 { // the foot stands at the foot
			y = topMargin + float64(rows-z.rows)*grid.step
		}
		c.zone(on, &z, y, grid.step/row, said)
		y += float64(z.rows+min(2, spare/len(list))) * grid.step
	}
	return &leaf{marks: on.marks, gone: gone, loss: loss, step: grid.step}, true
}

// zone puts a zone with its columns at its place on the page.
func (c *canvas) zone(on *canvas, z *choice, y, scale float64, said [][]piece) {
	head := c.fresh()
	if z.draw != nil {
		z.draw(head, z.rows)
	} else {
		for _, line := range said { // the foot begins with what is elsewhere
			head.line(c.full.x, line)
		}
	}
	on.copied(head, 0, y, scale)
	for _, column := range z.columns {
		at := y + float64(z.head)*row*scale
		for i := range column {
			part := c.fresh()
			column[i].draw(part)
			on.copied(part, 0, at, scale)
			at += float64(column[i].rows) * row * scale
		}
	}
}

// elsewhere says what stands on the representative's sheet only: in one line,
// unless something decisive is there.
func (c *canvas) elsewhere(list []gone) []run {
	if len(list) == 0 {
		return nil
	}
	st, in := smallStyle, grey
	var names []message.Message
	for _, g := range list {
		name := g.what.Message()
		if g.of > 0 {
			name = message.New("{1} ({2} of {3})", g.what, message.Count(g.left), message.Count(g.of))
			st, in = smallBold, black
		}
		names = append(names, name)
	}
	text := c.say(report.PageElsewhere, report.PageSheet, message.Join(", ", names...))
	for n := len(names) - 1; st == smallStyle && n > 0 && c.faces.width(text, st) > c.full.width; n-- {
		text = c.say(report.PageElsewhere, report.PageSheet, message.Join(", ", append(names[:n:n], report.PageAndMore.Message())...))
	}
	return []run{{text, st, in}}
}
