package pdf

import (
	"math"

	"cutbrief/report"
)

// Sizes of the pictures, in mm.
const (
	upRoom     = 10.0 // left of a plot, for the figures of its upright axis
	tickLength = 1.0
	stripHigh  = 1.5 // the strip that says where the lines cross
	keyLength  = 6.0
	markSize   = 1.5 // a customer's own thickness on the line
	labelGap   = 1.2 // from it to what it says
	widest     = 86.0
	sheetPlot  = 20 * row // on a sheet behind the page
)

// plot is the box that lines lie in, by its upper left corner and its size.
type plot struct{ x, y, wide, high float64 }

// across and up turn shares of the axes into places; what lies outside an axis
// is put at its end.
func (p plot) across(share float64) float64 { return p.x + p.wide*inside(share) }
func (p plot) up(share float64) float64     { return p.y + p.high*(1-inside(share)) }

func inside(share float64) float64 {
	if !(share > 0) { // also where it is no number
		return 0
	}
	return min(share, 1)
}

// drawable reports whether there is a line to draw.
func drawable(c *report.Cost) bool { return c != nil && c.Curves != nil && len(c.Curves.Points) > 1 }

func hasSpeeds(s *report.Speeds) bool { return s != nil && len(s.Line) > 1 }

// curves draws what cutting costs by thickness: the system in a solid line and
// oxy-fuel in dashes, with the thickness of most days and the range in which the
// lines cross.
func (c *canvas) curves(of *report.Curves, at span, high float64) {
	c.heading(at, of.Title)
	c.lineNames(of.Up, at, lineName{lineMark, accent, of.Plasma}, lineName{dashMark, black, of.Flame})
	p := c.plot(of.Across, at, high)
	c.axes(of.Ticks, of.UpTicks, of.Across, at, p)
	c.strip(of.Crossing, p)
	if of.Everyday != nil {
		c.shape(ruleMark, p.across(of.Everyday.At), p.y, 0, p.high, black)
	}
	var flame, plasma []place
	for _, point := range of.Points {
		flame = append(flame, place{p.across(point.At), p.up(point.FlameShare)})
		plasma = append(plasma, place{p.across(point.At), p.up(point.PlasmaShare)})
	}
	c.curve(dashMark, black, flame)
	c.curve(lineMark, accent, plasma)
	c.curveKey(of, at)
}

// speeds draws how fast the system cuts: in a solid line as long as the edge
// comes out clean, in dashes to where it severs no more, with the customer's
// own thicknesses on it.
func (c *canvas) speeds(s *report.Speeds, at span, high float64) {
	c.heading(at, s.Title)
	c.lineNames(s.Up, at, lineName{lineMark, accent, s.Clean}, lineName{dashMark, accent, s.Severed})
	p, top := c.plot(s.Across, at, high), c.y
	for i, m := range yours(s.Marks, all) { // a label that has to go to the left goes up
		if p.across(m.At)+labelGap+c.faces.width(m.Label, smallStyle) > at.x+at.width {
			p.y = max(p.y, min(c.y+float64(i+1)*smallStyle.line(), c.y+high))
		}
	}
	c.axes(s.Ticks, s.UpTicks, s.Across, at, p)
	var clean, severed []place
	for _, point := range s.Line {
		on := place{p.across(point.At), p.up(point.Share)}
		if point.At <= s.CleanAt {
			clean = append(clean, on)
		}
		if point.At >= s.CleanAt {
			severed = append(severed, on)
		}
	}
	c.curve(lineMark, accent, clean)
	c.curve(dashMark, accent, severed)
	c.shape(ruleMark, p.across(s.CleanAt), p.y+p.high-stripHigh, 0, stripHigh+tickLength, black)
	c.speedMarks(s, p, p.y-top, at)
	c.paragraph(at, 3, plainly(s.Rests, smallStyle, grey)...)
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
	c.marks = append(c.marks, m)
}

// lineName is how a line is drawn, and what it stands for.
type lineName struct {
	kind markKind
	in   ink
	text string
}

// lineNames say what the upright axis counts, and which line is which.
func (c *canvas) lineNames(up string, at span, names ...lineName) {
	y, x, end := c.y, at.x, at.x+min(at.width, widest)
	share := (end - x) / float64(len(names)+1)
	c.paragraph(span{x, share - 1}, 1, plainly(up, smallStyle, black)...)
	x += min(c.faces.width(up, smallStyle)+3, share)
	for i, n := range names {
		room := (end - x) / float64(len(names)-i)
		c.curve(n.kind, n.in, []place{{x, y + row}, {x + keyLength, y + row}})
		c.y = y
		c.paragraph(span{x + keyLength + 1, room - keyLength - 2}, 1, plainly(n.text, smallStyle, black)...)
		x += min(keyLength+c.faces.width(n.text, smallStyle)+4, room)
	}
	c.y = y + smallStyle.line()
}

// plot leaves room for the figures at the left, and for what the lower axis
// counts at the right.
func (c *canvas) plot(across string, at span, high float64) plot {
	words := min(c.faces.width(across, smallStyle), at.width/4) + 3
	return plot{at.x + upRoom, c.y + row, min(at.width, widest) - upRoom - words, high}
}

// axes draws both axes with their ticks and figures and moves on below them.
func (c *canvas) axes(ticks, upTicks []report.CurveTick, across string, at span, p plot) {
	c.shape(ruleMark, p.x, p.y, 0, p.high, black)
	c.shape(ruleMark, p.x, p.y+p.high, p.wide, 0, black)
	last := math.Inf(1) // the top of the figure below
	for _, t := range upTicks {
		y := p.up(t.At)
		c.shape(ruleMark, p.x-tickLength, y, tickLength, 0, black)
		wide, top := c.faces.width(t.Label, smallStyle), y-row
		if top+smallStyle.line() <= last && wide <= upRoom-tickLength-0.5 {
			c.text(p.x-tickLength-0.5-wide, top, t.Label, smallStyle, black)
			last = top
		}
	}
	c.y = p.y + p.high + row/2
	free, end := p.x-1.5, p.x+p.wide
	for _, t := range ticks {
		c.shape(ruleMark, p.across(t.At), p.y+p.high, 0, tickLength, black)
		wide := c.faces.width(t.Label, smallStyle)
		if x := p.across(t.At) - wide/2; x >= free && x+wide <= end+1.5 {
			c.text(x, c.y, t.Label, smallStyle, black)
			free = x + wide + 1
		}
	}
	c.paragraph(span{end + 2.5, min(at.width, widest) + at.x - end - 2.4}, 1, plainly(across, smallStyle, black)...)
	c.y = p.y + p.high + row/2 + smallStyle.line()
}

// strip lies on the axis from where oxy-fuel may be cheaper to where it surely
// is, or to the end; the bar in it is where it likely is.
func (c *canvas) strip(r report.CurveRange, p plot) {
	if r.From == nil {
		return
	}
	from, to := p.across(*r.From), p.x+p.wide
	if r.To != nil {
		to = p.across(*r.To)
	}
	if to-from < 0.1 {
		return
	}
	c.shape(hatchMark, from, p.y+p.high-stripHigh, to-from, stripHigh, black)
	if r.Likely != nil {
		const bar = 0.7
		x := min(max(p.across(*r.Likely)-bar/2, p.x), p.x+p.wide-bar)
		c.shape(fillMark, x, p.y+p.high-2*stripHigh, bar, 2*stripHigh, black)
	}
}

// curveKey says what the upright line and the strip stand for.
func (c *canvas) curveKey(of *report.Curves, at span) {
	const key = 3.5
	label := at.indented(key + 1)
	if of.Everyday != nil {
		c.shape(ruleMark, at.x+key/2, c.y+0.5, 0, smallStyle.line()-1, black)
		c.paragraph(label, 1, plainly(of.Everyday.Label, smallStyle, black)...)
	}
	if of.Crossing.Label == "" {
		return
	}
	if of.Crossing.From != nil {
		c.shape(hatchMark, at.x, c.y+1, key, stripHigh, black)
	}
	c.paragraph(label, 1, plainly(of.Crossing.Label, smallStyle, black)...)
}

// speedMarks put the customer's own thicknesses on the line, each with its
// label to the right of it and above the line, which falls from there; a label
// that has no room on the right is drawn to the left and as much higher as the
// line is there. Labels are put from below to above, so that none lies over
// another, and low enough to leave room for those above.
func (c *canvas) speedMarks(s *report.Speeds, p plot, above float64, at span) {
	end := c.y
	line, below, highest := smallStyle.line(), p.y+p.high, p.y-above
	marks := yours(s.Marks, int((p.high+above)/line))
	for i := len(marks) - 1; i >= 0; i-- {
		m := marks[i]
		x, y := p.across(m.At), p.up(m.Share)
		c.shape(ruleMark, x, y, 0, p.y+p.high-y, black)
		c.shape(fillMark, max(x-markSize/2, p.x), y-markSize/2, markSize, markSize, black)
		wide := min(c.faces.width(m.Label, smallStyle), at.x+at.width-p.x-labelGap)
		left := min(x+labelGap, at.x+at.width-wide)
		below = max(min(y, below, p.above(s.Line, left, max(left, x)))-line, highest+float64(i)*line)
		c.y = below
		c.paragraph(span{left, wide + 0.01}, 1, plainly(m.Label, smallStyle, black)...)
	}
	c.y = end
}

// above is how high a line rises between two places on the page, the foot of the
// plot beside it.
func (p plot) above(line []report.SpeedPoint, left, right float64) float64 {
	top := p.y + p.high
	for i := 1; i < len(line); i++ {
		from, to := p.across(line[i-1].At), p.across(line[i].At)
		for _, x := range []float64{max(left, from), min(right, to)} {
			if x >= from && x <= to && x >= left && x <= right && to > from {
				a, b := p.up(line[i-1].Share), p.up(line[i].Share)
				top = min(top, a+(b-a)*(x-from)/(to-from))
			}
		}
	}
	return top
}

// yours are the customer's own thicknesses, at most most of them.
func yours(marks []report.SpeedMark, most int) []report.SpeedMark {
	var list []report.SpeedMark
	for _, m := range marks {
		if m.Yours && len(list) < most {
			list = append(list, m)
		}
	}
	return list
}
