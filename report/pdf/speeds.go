package pdf

import "cutbrief/report"

// Heights of the line of speeds, in mm.
const (
	speedsHigh = 17.0
	markSize   = 1.5 // a customer's own thickness on the line
	labelGap   = 1.2 // from it to what it says
)

// speedsIfRoom puts the speeds where there is room. They go before anything
// that is said in words nowhere else.
func (pg *page) speedsIfRoom(at span) bool {
	s := pg.brief.Speeds
	switch {
	case s == nil || len(s.Line) < 2:
		return false
	case !pg.limits.speeds:
		pg.shortened("pictures")
		return false
	}
	pg.speeds(s, at, speedsHigh)
	return true
}

// speeds draws how fast the system cuts: in a solid line as long as the edge
// comes out clean, in dashes to where it severs no more, with the customer's
// own thicknesses on it.
func (pg *page) speeds(s *report.Speeds, at span, high float64) {
	const part = "speed by thickness"
	pg.paragraph(part, s.Title, at, headStyle, accent, 1)
	pg.y += 0.6
	pg.lineNames(part, s.Up, at, lineName{lineMark, accent, s.Clean}, lineName{dashMark, accent, s.Severed})
	plot := plot{x: at.x + upRoom, y: pg.y + belowNames, high: high}
	pg.axes(s.Ticks, s.UpTicks, plot)
	pg.speedLine(s, plot)
	pg.speedMarks(part, s, plot, at)
	pg.y = plot.y + plot.high + tickLength
	pg.acrossFigures(part, s.Ticks, s.Across, plot, at)
	pg.paragraph(part, s.Rests, at, smallStyle, grey, 3)
}

// speedLine draws both pieces of the line, which meet where the clean edge ends.
func (pg *page) speedLine(s *report.Speeds, p plot) {
	var clean, severed []report.CurvePoint
	for _, point := range s.Line {
		c := report.CurvePoint{At: point.At, CostPoint: report.CostPoint{PlasmaShare: point.Share}}
		if point.At <= s.CleanAt {
			clean = append(clean, c)
		}
		if point.At >= s.CleanAt {
			severed = append(severed, c)
		}
	}
	share := func(c report.CurvePoint) float64 { return c.PlasmaShare }
	pg.curve(clean, p, lineMark, accent, share)
	pg.curve(severed, p, dashMark, accent, share)
	pg.shape(ruleMark, p.across(s.CleanAt), p.y+p.high-stripHigh, 0, stripHigh+tickLength, black)
}

// speedMarks put the customer's own thicknesses on the line, each with its
// label to the right of it and above the line, which falls from there; a label
// that has no room on the right is drawn to the left and as much higher as the
// line is there. Labels are put from below to above, so that none lies over
// another, and low enough to leave room for those above.
func (pg *page) speedMarks(part string, s *report.Speeds, p plot, at span) {
	line, below, highest := smallStyle.line(), p.y+p.high, p.y-belowNames
	marks := yours(s.Marks, int((p.high+belowNames)/line))
	for i := len(marks) - 1; i >= 0; i-- {
		m := marks[i]
		x, y := p.across(m.At), p.up(m.Share)
		pg.shape(ruleMark, x, y, 0, p.y+p.high-y, black)
		pg.shape(fillMark, max(x-markSize/2, p.x), y-markSize/2, markSize, markSize, black)
		for _, text := range pg.wrapped(part, m.Label, smallStyle, at.x+at.width-p.x-labelGap, 1) {
			left := min(x+labelGap, at.x+at.width-pg.faces.width(text, smallStyle))
			below = max(min(y, below, p.lineAt(s.Line, left))-line, highest+float64(i)*line)
			pg.text(left, below, text, smallStyle, black)
		}
	}
}

// lineAt is how high a line lies at a place on the page, the foot of the plot
// beside it.
func (p plot) lineAt(line []report.SpeedPoint, x float64) float64 {
	top := p.y + p.high
	for i := 1; i < len(line); i++ {
		from, to := p.across(line[i-1].At), p.across(line[i].At)
		if x >= from && x <= to && to > from {
			a, b := p.up(line[i-1].Share), p.up(line[i].Share)
			top = min(top, a+(b-a)*(x-from)/(to-from))
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
