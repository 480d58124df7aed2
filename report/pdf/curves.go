package pdf

import (
	"math"

	"cutbrief/report"
)

// Widths and heights of the lines by thickness, in mm.
const (
	plotWidth  = 56.0
	plotHeight = 15.0
	sheetPlot  = 34.0 // on a sheet behind the page
	upRoom     = 10.0 // left of the plot, for the figures of its upright axis
	tickLength = 1.0
	stripHigh  = 1.5 // the strip that says where the lines cross
	keyLength  = 6.0
	aboveLines = 1.2
	belowNames = 1.8  // keeps the highest figure clear of the names
	namesWidth = 86.0 // about a column, also where there is more
)

// curvesIfRoom puts the lines by thickness below the part about cost. They are
// the first content to go where the page is full, and the page says so.
func (pg *page) curvesIfRoom(at span) {
	c := pg.brief.Cost.Curves
	switch {
	case !drawable(c):
	case !pg.limits.curves:
		pg.shortened("pictures")
	default:
		pg.curves(c, at, plotHeight)
	}
}

// drawable reports whether there is a line to draw.
func drawable(c *report.Curves) bool { return c != nil && len(c.Points) > 1 }

// curves draws the system in a solid line and oxy-fuel in dashes, with the
// thickness of most days and the range in which the lines cross.
func (pg *page) curves(c *report.Curves, at span, high float64) {
	const part = "cost by thickness"
	pg.y += aboveLines
	pg.lineNames(part, c.Up, at, lineName{lineMark, accent, c.Plasma}, lineName{dashMark, black, c.Flame})
	plot := plot{x: at.x + upRoom, y: pg.y + belowNames, high: high}
	pg.axes(c.Ticks, c.UpTicks, plot)
	pg.strip(c.Crossing, plot)
	if c.Everyday != nil {
		pg.shape(ruleMark, plot.across(c.Everyday.At), plot.y, 0, plot.high, black)
	}
	pg.curve(c.Points, plot, dashMark, black, func(p report.CurvePoint) float64 { return p.FlameShare })
	pg.curve(c.Points, plot, lineMark, accent, func(p report.CurvePoint) float64 { return p.PlasmaShare })
	pg.y = plot.y + plot.high + tickLength
	pg.acrossFigures(part, c.Ticks, c.Across, plot, at)
	pg.curveKey(c, at)
}

// plot is the box the lines lie in, by its upper left corner and its height.
type plot struct{ x, y, high float64 }

// across and up turn shares of the axes into places; what lies outside an axis
// is put at its end.
func (p plot) across(share float64) float64 { return p.x + plotWidth*inside(share) }
func (p plot) up(share float64) float64     { return p.y + p.high*(1-inside(share)) }

func inside(share float64) float64 {
	if !(share > 0) { // also where it is no number
		return 0
	}
	return min(share, 1)
}

// lineName is how a line is drawn, and what it stands for.
type lineName struct {
	kind markKind
	in   ink
	text string
}

// lineNames say what the upright axis counts, and which line is which.
func (pg *page) lineNames(part, up string, at span, names ...lineName) {
	y, x, end := pg.y, at.x, at.x+min(at.width, namesWidth)
	share := (end - x) / float64(len(names)+1)
	pg.paragraph(part, up, span{x, share - 1}, smallStyle, black, 1)
	x += min(pg.faces.width(up, smallStyle)+3, share)
	for i, n := range names {
		room := (end - x) / float64(len(names)-i)
		pg.shape(n.kind, x, y+smallStyle.line()/2, keyLength, 0, n.in)
		pg.y = y
		pg.paragraph(part, n.text, span{x + keyLength + 1, room - keyLength - 2}, smallStyle, black, 1)
		x += min(keyLength+pg.faces.width(n.text, smallStyle)+4, room)
	}
	pg.y = y + smallStyle.line()
}

// axes draws both axes with their ticks, and the figures of the upright one.
func (pg *page) axes(ticks, upTicks []report.CurveTick, p plot) {
	pg.shape(ruleMark, p.x, p.y, 0, p.high, black)
	pg.shape(ruleMark, p.x, p.y+p.high, plotWidth, 0, black)
	for _, t := range ticks {
		pg.shape(ruleMark, p.across(t.At), p.y+p.high, 0, tickLength, black)
	}
	last := math.Inf(1) // the top of the figure below
	for _, t := range upTicks {
		y := p.up(t.At)
		pg.shape(ruleMark, p.x-tickLength, y, tickLength, 0, black)
		wide, top := pg.faces.width(t.Label, smallStyle), y-smallStyle.line()/2
		if top+smallStyle.line() <= last && wide <= upRoom-tickLength-0.5 {
			pg.text(p.x-tickLength-0.5-wide, top, t.Label, smallStyle, black)
			last = top
		}
	}
}

// strip lies on the axis from where oxy-fuel may be cheaper to where it surely
// is, or to the end; the bar in it is where it likely is.
func (pg *page) strip(r report.CurveRange, p plot) {
	if r.From == nil {
		return
	}
	from, to := p.across(*r.From), p.x+plotWidth
	if r.To != nil {
		to = p.across(*r.To)
	}
	if to-from < 0.1 {
		return
	}
	pg.shape(hatchMark, from, p.y+p.high-stripHigh, to-from, stripHigh, black)
	if r.Likely != nil {
		const bar = 0.7
		x := min(max(p.across(*r.Likely)-bar/2, p.x), p.x+plotWidth-bar)
		pg.shape(fillMark, x, p.y+p.high-2*stripHigh, bar, 2*stripHigh, black)
	}
}

// curve draws one line from point to point; its dashes go on round the bends.
func (pg *page) curve(points []report.CurvePoint, p plot, kind markKind, in ink, share func(report.CurvePoint) float64) {
	come := 0.0
	for i := 1; i < len(points); i++ {
		x, y := p.across(points[i-1].At), p.up(share(points[i-1]))
		w, h := p.across(points[i].At)-x, p.up(share(points[i]))-y
		pg.marks = append(pg.marks, mark{kind: kind, x: x, y: y, w: w, h: h, ink: in, phase: math.Mod(come, dashOn+dashOff)})
		come += math.Hypot(w, h)
	}
}

// acrossFigures puts the figures of the lower axis, those that have room, and
// what they count.
func (pg *page) acrossFigures(part string, ticks []report.CurveTick, across string, p plot, at span) {
	y, free, end := pg.y, at.x, p.x+plotWidth
	for _, t := range ticks {
		wide := pg.faces.width(t.Label, smallStyle)
		x := p.across(t.At) - wide/2
		if x >= free && x+wide <= end+1.5 {
			pg.text(x, y, t.Label, smallStyle, black)
			free = x + wide + 1
		}
	}
	left := end + 2.5
	pg.paragraph(part, across, span{left, at.x + at.width - left}, smallStyle, black, 1)
	pg.y = y + smallStyle.line()
}

// curveKey says what the upright line and the strip stand for.
func (pg *page) curveKey(c *report.Curves, at span) {
	const key = 3.5
	if c.Everyday != nil {
		pg.shape(ruleMark, at.x+key/2, pg.y+0.3, 0, smallStyle.line()-0.6, black)
		pg.paragraph("cost by thickness", c.Everyday.Label, span{at.x + key + 1, at.width - key - 1}, smallStyle, black, 1)
	}
	if c.Crossing.Label == "" {
		return
	}
	if c.Crossing.From != nil {
		pg.shape(hatchMark, at.x, pg.y+0.8, key, stripHigh, black)
	}
	pg.paragraph("cost by thickness", c.Crossing.Label, span{at.x + key + 1, at.width - key - 1}, smallStyle, black, 1)
}
