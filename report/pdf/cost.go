package pdf

import "cutbrief/report"

// cost puts what cutting costs: the verdict first, then one bar for today and
// one for the system. The heading says so where prices are assumed, so that
// the mark stays however short the part becomes.
func (pg *page) cost(at span) bool {
	c := pg.brief.Cost
	if c == nil || len(c.Lines) == 0 || pg.limits.cost == 0 {
		if c != nil {
			pg.shortened("cost")
		}
		return false
	}
	title := "What it costs"
	if c.Assumed {
		title += " (prices assumed)"
	}
	pg.heading(at.x, title)
	for i, l := range c.Lines[:pg.kept("cost", len(c.Lines), pg.limits.cost)] {
		st := bodyStyle
		if i > 0 {
			st = smallStyle
		}
		pg.bullet("cost", l, at, st, pg.limits.long)
	}
	if !pg.limits.costBars {
		if len(c.Bars) > 0 {
			pg.shortened("cost bars")
		}
		pg.curvesIfRoom(at)
		return true
	}
	for i, b := range c.Bars {
		pg.costBar(b, i, at)
	}
	pg.curvesIfRoom(at)
	return true
}

// costBar puts one bar with its label and figure: hatched for today, solid for
// the system.
func (pg *page) costBar(b report.CostBar, i int, at span) {
	const step = 3.6
	y, room := pg.y, at.width-barLabel-barFigure
	pg.paragraph("cost", b.Label, span{at.x, barLabel - 1}, strongStyle, black, 1)
	kind, in := hatchMark, black
	if i > 0 {
		kind, in = fillMark, accent
	}
	pg.shape(kind, at.x+barLabel, y+0.6, room*share(b.Share), barHeight, in)
	pg.y = y
	pg.paragraph("cost", b.Brief, span{at.x + barLabel + room + 1.5, barFigure - 1.5}, bodyStyle, black, 1)
	pg.y = y + step
}
