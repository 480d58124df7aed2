package pdf

import (
	"math"

	"cutbrief/report"
)

// Widths and heights of the lines by thickness, in mm.
const (
	plotWidth  = 56.0
	plotHeight = 15.0
	upRoom     = 10.0 // left of the plot, for the figures of its upright axis
	tickLength = 1.0
	stripHigh  = 1.5 // the strip that says where the lines cross
	keyLength  = 6.0
	aboveLines = 1.2
	belowNames = 1.8  // keeps the highest figure clear of the names
	namesWidth = 86.0 // about a column, also where there is more
)

// curvesHeight is how much of a page the lines take, in mm.
func curvesHeight() float64 {
	return aboveLines + 4*smallStyle.line() + belowNames + plotHeight + tickLength
}

// curvesIfRoom puts the lines by thickness below the part about cost. They are
// the first content to go where the page is full, and the page says so.
func (pg *page) curvesIfRoom(at span) {
	c := pg.brief.Cost.Curves
	switch {
	case !drawable(c):
	case !pg.limits.curves:
		pg.shortened("cost by thickness")
	default:
		pg.curves(c, at)
	}
}

// drawable reports whether there is a line to draw.
func drawable(c *report.Curves) bool { return c != nil && len(c.Points) > 1 }

// curves puts them behind the page, where there is always room.
func (w *writer) curves() {
	if w.brief.Cost == nil || !drawable(w.brief.Cost.Curves) {
		return
	}
	if w.on.y+strongStyle.line()+curvesHeight() > w.bottom {
		w.turn()
	}
	w.put("", "What cutting mild steel costs, by thickness", 0, strongStyle, black)
	w.on.curves(w.brief.Cost.Curves, span{w.on.left, w.width})
	w.on.y += 1.6
}

// curves draws the system in a solid line and oxy-fuel in dashes, with the
// thickness of most days and the range in which the lines cross.
func (pg *page) curves(c *report.Curves, at span) {
	pg.y += aboveLines
	pg.curveNames(c, at)
	plot := plot{x: at.x + upRoom, y: pg.y + belowNames}
	pg.axes(c, plot)
	pg.strip(c.Crossing, plot)
	if c.Everyday != nil {
		pg.shape(ruleMark, plot.across(c.Everyday.At), plot.y, 0, plotHeight, black)
	}
	pg.curve(c.Points, plot, dashMark, black, func(p report.CurvePoint) float64 { return p.FlameShare })
	pg.curve(c.Points, plot, lineMark, accent, func(p report.CurvePoint) float64 { return p.PlasmaShare })
	pg.y = plot.y + plotHeight + tickLength
	pg.acrossFigures(c, plot, at)
	pg.curveKey(c, at)
}

// plot is the box the lines lie in, by its upper left corner.
type plot struct{ x, y float64 }

// across and up turn shares of the axes into places; what lies outside an axis
// is put at its end.
func (p plot) across(share float64) float64 { return p.x + plotWidth*inside(share) }
func (p plot) up(share float64) float64     { return p.y + plotHeight*(1-inside(share)) }

func inside(share float64) float64 {
	if !(share > 0) { // also where it is no number
		return 0
	}
	return min(share, 1)
}

// curveNames says what the upright axis counts, and which line is which.
func (pg *page) curveNames(c *report.Curves, at span) {
	y, third := pg.y, min(at.width, namesWidth)/3
	middle := y + smallStyle.line()/2
	pg.paragraph("cost by thickness", c.Up, span{at.x, third - 1}, smallStyle, black, 1)
	names := []struct {
		kind markKind
		in   ink
		text string
	}{{lineMark, accent, c.Plasma}, {dashMark, black, c.Flame}}
	for i, n := range names {
		x := at.x + float64(i+1)*third
		pg.shape(n.kind, x, middle, keyLength, 0, n.in)
		pg.y = y
		pg.paragraph("cost by thickness", n.text, span{x + keyLength + 1, third - keyLength - 2}, smallStyle, black, 1)
	}
	pg.y = y + smallStyle.line()
}

// axes draws both axes with their ticks, and the figures of the upright one.
func (pg *page) axes(c *report.Curves, p plot) {
	pg.shape(ruleMark, p.x, p.y, 0, plotHeight, black)
	pg.shape(ruleMark, p.x, p.y+plotHeight, plotWidth, 0, black)
	for _, t := range c.Ticks {
		pg.shape(ruleMark, p.across(t.At), p.y+plotHeight, 0, tickLength, black)
	}
	last := math.Inf(1) // the top of the figure below
	for _, t := range c.UpTicks {
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
	pg.shape(hatchMark, from, p.y+plotHeight-stripHigh, to-from, stripHigh, black)
	if r.Likely != nil {
		const bar = 0.7
		x := min(max(p.across(*r.Likely)-bar/2, p.x), p.x+plotWidth-bar)
		pg.shape(fillMark, x, p.y+plotHeight-2*stripHigh, bar, 2*stripHigh, black)
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
func (pg *page) acrossFigures(c *report.Curves, p plot, at span) {
	y, free, end := pg.y, at.x, p.x+plotWidth
	for _, t := range c.Ticks {
		wide := pg.faces.width(t.Label, smallStyle)
		x := p.across(t.At) - wide/2
		if x >= free && x+wide <= end+1.5 {
			pg.text(x, y, t.Label, smallStyle, black)
			free = x + wide + 1
		}
	}
	left := end + 2.5
	pg.paragraph("cost by thickness", c.Across, span{left, at.x + at.width - left}, smallStyle, black, 1)
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
