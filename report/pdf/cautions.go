package pdf

import "cutbrief/report"

// cautions puts the cautions in small but legible type, each with its source,
// in two columns of even height.
func (pg *page) cautions() {
	b := pg.brief
	if len(b.Cautions) == 0 {
		return
	}
	title := pg.say("Cutting can hurt people and start fires")
	note := pg.say("Sources in brackets; without one it is common practice.")
	pg.text(pg.left+pg.faces.width(title, headStyle)+3, pg.y+0.6, note, smallStyle, grey)
	pg.text(pg.left, pg.y, title, headStyle, accent)
	pg.y += headStyle.line() + 0.6
	half := (pg.width - gutter) / 2
	const indent = 3.0
	var items [][]string
	total := 0
	for _, c := range b.Cautions[:pg.kept("cautions", len(b.Cautions), pg.limits.cautions)] {
		lines := pg.wrapped("cautions", warned(c), smallStyle, half-indent, pg.limits.caution)
		if len(lines) == 0 {
			continue
		}
		items = append(items, lines)
		total += len(lines)
	}
	top, bottom, done, x := pg.y, pg.y, 0, pg.left
	for _, lines := range items {
		if x == pg.left && done > 0 && done+len(lines)/2 >= (total+1)/2 {
			x, pg.y = pg.left+half+gutter, top
		}
		pg.text(x, pg.y, "•", smallStyle, accent)
		pg.y = pg.lines(x+indent, pg.y, lines, smallStyle, black) + 0.35
		done += len(lines)
		bottom = max(bottom, pg.y)
	}
	pg.y = bottom + pg.limits.gap
}

// warned is a caution with its source; common practice is said once, in the
// footing.
func warned(c report.Line) string {
	if c.Source == "" || c.Source == c.Trust {
		return c.Value
	}
	return c.Value + " [" + c.Source + "]"
}
