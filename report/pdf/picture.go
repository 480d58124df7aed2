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
	widest     = 96.0
	sheetPlot  = 20 * row // on a sheet behind the page
)

// plot is the box that lines lie in, by its upper left corner and its size.
type plot struct{ x, y, wide, high float64 }

// across and up turn shares of the axes into places; what lies outside an axis
// is put at its end.
func (p plot) across(share float64) float64 { return p.x + p.wide*report.AxisShare(share) }
func (p plot) up(share float64) float64     { return p.y + p.high*(1-report.AxisShare(share)) }

// picture draws lines by thickness: a solid one and one in dashes, with what is
// to be seen on them, and below them what that stands for.
func (c *canvas) picture(of *report.Picture, at span, high float64) {
	at.width = min(at.width, widest)
	c.heading(at, of.Title)
	c.lineNames(of, at)
	words := min(c.faces.width(of.Across, smallStyle), at.width/4) + 3
	top, p := c.y, plot{at.x + upRoom, c.y + row, at.width - upRoom - words, high}
	for i, m := range of.Marks { // a label that has to go to the left goes up
		if p.across(m.At)+labelGap+c.faces.width(m.Label, smallStyle) > at.x+at.width {
			p.y = max(p.y, min(c.y+float64(i+1)*smallStyle.line(), c.y+high))
		}
	}
	c.axes(of, at, p)
	c.strip(of.Crossing, p)
	if of.Everyday != nil {
		c.shape(ruleMark, p.across(of.Everyday.At), p.y, 0, p.high, black)
	}
	if of.Clean != nil {
		c.shape(ruleMark, p.across(*of.Clean), p.y+p.high-stripHigh, 0, stripHigh+tickLength, black)
	}
	for i, l := range of.Lines {
		var points []place
		for _, point := range l.Points {
			points = append(points, place{p.across(point[0]), p.up(point[1])})
		}
		c.curve([]markKind{lineMark, dashMark}[i], lineInk(l), points)
	}
	c.marked(of, p, p.y-top, at)
	c.key(of, at)
	c.within(at, 3, run{of.Rests, smallStyle, grey})
}

func lineInk(l report.PictureLine) ink {
	if l.Black {
		return black
	}
	return accent
}

// lineNames say what the upright axis counts, and which line is which.
func (c *canvas) lineNames(of *report.Picture, at span) {
	y, x, end := c.y, at.x, at.x+at.width
	share := at.width / 3
	c.within(span{x, share - 1}, 1, run{of.Up, smallStyle, black})
	x += min(c.faces.width(of.Up, smallStyle)+3, share)
	for i, l := range of.Lines {
		room := (end - x) / float64(2-i)
		c.curve([]markKind{lineMark, dashMark}[i], lineInk(l), []place{{x, y + row}, {x + keyLength, y + row}})
		c.y = y
		c.within(span{x + keyLength + 1, room - keyLength - 2}, 1, run{l.Name, smallStyle, black})
		x += min(keyLength+c.faces.width(l.Name, smallStyle)+4, room)
	}
	c.y = y + smallStyle.line()
}

// axes draws both axes with their ticks and figures and moves on below them.
func (c *canvas) axes(of *report.Picture, at span, p plot) {
	c.shape(ruleMark, p.x, p.y, 0, p.high, black)
	c.shape(ruleMark, p.x, p.y+p.high, p.wide, 0, black)
	last := math.Inf(1) // the top of the figure below
	for _, t := range of.UpTicks {
		y := p.up(t.At)
		c.shape(ruleMark, p.x-tickLength, y, tickLength, 0, black)
		wide, top := c.faces.width(t.Label, smallStyle), y-row
		if top+smallStyle.line() <= last && wide <= upRoom-tickLength-0.5 {
			c.text(p.x-tickLength-0.5-wide, top, t.Label, smallStyle, black)
			last = top
		}
	}
	c.y = p.y + p.high + row/2
	c.ticks(of.Ticks, p, p.y+p.high, p.x-1.5, 1.5)
	end := p.x + p.wide
	c.within(span{end + 2.5, at.x + at.width - end - 2.4}, 1, run{of.Across, smallStyle, black})
	c.y = p.y + p.high + row/2 + smallStyle.line()
}

// ticks puts the ticks of a lower axis, and those of their figures that have room
// from a place on and to over the end.
func (c *canvas) ticks(list []report.CurveTick, p plot, y, from, over float64) {
	free := from
	for _, t := range list {
		c.shape(ruleMark, p.across(t.At), y, 0, tickLength, black)
		wide := c.faces.width(t.Label, smallStyle)
		if x := max(p.across(t.At)-wide/2, from); x >= free && x+wide <= p.x+p.wide+over {
			c.text(x, c.y, t.Label, smallStyle, black)
			free = x + wide + 1
		}
	}
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

// key says what the upright line and the strip stand for: side by side where
// there is room.
func (c *canvas) key(of *report.Picture, at span) {
	const symbol = 3.5
	wide := 0.0
	if of.Everyday != nil && of.Everyday.Label != "" {
		c.shape(ruleMark, at.x+symbol/2, c.y+0.5, 0, smallStyle.line()-1, black)
		c.within(at.indented(symbol+1), 1, run{of.Everyday.Label, smallStyle, black})
		wide = c.faces.width(of.Everyday.Label, smallStyle) + symbol + 4
	}
	if of.Crossing.Label == "" {
		return
	}
	if wide > 0 && wide+symbol+1+c.faces.width(of.Crossing.Label, smallStyle) <= at.width {
		at, c.y = at.indented(wide), c.y-smallStyle.line()
	}
	if of.Crossing.From != nil {
		c.shape(hatchMark, at.x, c.y+1, symbol, stripHigh, black)
	}
	c.within(at.indented(symbol+1), 1, run{of.Crossing.Label, smallStyle, black})
}

// marked puts the customer's own thicknesses on the lines, each with its label to
// the right of it and above the line, which falls from there; a label that has no
// room on the right is drawn to the left and as much higher as the line is there.
// Labels are put from below to above, so that none lies over another, and low
// enough to leave room for those above.
func (c *canvas) marked(of *report.Picture, p plot, above float64, at span) {
	end := c.y
	line, below, highest := smallStyle.line(), p.y+p.high, p.y-above
	for i := min(len(of.Marks), int((p.high+above)/line)) - 1; i >= 0; i-- {
		m := of.Marks[i]
		x, y := p.across(m.At), p.up(m.Share)
		c.shape(ruleMark, x, y, 0, p.y+p.high-y, black)
		c.shape(fillMark, max(x-markSize/2, p.x), y-markSize/2, markSize, markSize, black)
		wide := min(c.faces.width(m.Label, smallStyle), at.x+at.width-p.x-labelGap)
		left := min(x+labelGap, at.x+at.width-wide)
		over := p.y + p.high
		for _, l := range of.Lines {
			over = min(over, p.above(l.Points, left, max(left, x)))
		}
		below = max(min(y, below, over)-line, highest+float64(i)*line)
		c.y = below
		c.within(span{left, wide + 0.01}, 1, run{m.Label, smallStyle, black})
	}
	c.y = end
}

// above is how high a line rises between two places on the page, the foot of the
// plot beside it.
func (p plot) above(line [][2]float64, left, right float64) float64 {
	top := p.y + p.high
	for i := 1; i < len(line); i++ {
		from, to := p.across(line[i-1][0]), p.across(line[i][0])
		for _, x := range []float64{max(left, from), min(right, to)} {
			if x >= from && x <= to && x >= left && x <= right && to > from {
				a, b := p.up(line[i-1][1]), p.up(line[i][1])
				top = min(top, a+(b-a)*(x-from)/(to-from))
			}
		}
	}
	return top
}

// Sizes of the demonstration in minutes, in mm.
const (
	timeHigh   = 2.5 * row
	timeWords  = 18.0 // right of the strip, for what the axis counts
	timeInside = 1.0  // from the edge of a stretch to its text
)

func hasTimeline(t *report.Timeline) bool { return t != nil && len(t.Steps) > 0 }

// timeline draws the stretches of the demonstration one behind the other: cuts
// as boxes with their number in the plan, set-ups hatched, what is left over
// open. A stroke stands where the time there is ends.
func (c *canvas) timeline(t *report.Timeline, at span) {
	c.y += row / 2
	p := plot{at.x, c.y, at.width - timeWords, timeHigh}
	for _, s := range t.Steps {
		if x := p.across(s.From); p.across(s.To)-x >= 0.1 {
			c.stretch(s, x, p.y, p.across(s.To)-x)
		}
	}
	given := max(p.across(t.GivenAt)-0.25, at.x)
	c.shape(fillMark, given, p.y-row/2, 0.5, timeHigh+row/2+tickLength, black)
	c.y += timeHigh + tickLength
	y := c.y
	c.ticks(t.Ticks, p, y-tickLength, at.x, 2)
	c.within(at.indented(p.wide+3), 1, run{t.Across, smallStyle, black})
	c.y = y + smallStyle.line()
}

// stretch draws one, with its text where it has room.
func (c *canvas) stretch(s report.TimelineStep, x, y, wide float64) {
	text, st := s.Takes, smallStyle
	switch s.Kind {
	case report.StepCut:
		c.shape(fillMark, x, y, wide, timeHigh, light)
		c.shape(boxMark, x, y, wide, timeHigh, black)
		text, st = digits(s.Number)+": "+s.Takes, smallBold
	case report.StepSetUp:
		c.shape(hatchMark, x, y, wide, timeHigh, grey)
		return
	default:
		c.shape(ruleMark, x, y+timeHigh, wide, 0, black)
		if long := s.Name + ", " + s.Takes; c.faces.width(long, st) <= wide-2*timeInside {
			text = long
		}
	}
	for _, text := range []string{text, digits(s.Number)} {
		if w := c.faces.width(text, st); text != "0" && w <= wide-2*timeInside {
			c.text(x+(wide-w)/2, y+(timeHigh-st.line())/2, text, st, black)
			return
		}
	}
}
