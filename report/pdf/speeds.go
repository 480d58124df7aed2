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
	pg.speedMarks(part, s.Marks, plot, at)
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
// label to the right of it and above the line, which falls from there. Labels
// are put from below to above, so that none lies over another, and low enough
// to leave room for those above.
func (pg *page) speedMarks(part string, marks []report.SpeedMark, p plot, at span) {
	marks = yours(marks, int((p.high+belowNames)/smallStyle.line()))
	line, below, highest := smallStyle.line(), p.y+p.high, p.y-belowNames
	for i := len(marks) - 1; i >= 0; i-- {
		m := marks[i]
		x, y := p.across(m.At), p.up(m.Share)
		pg.shape(ruleMark, x, y, 0, p.y+p.high-y, black)
		pg.shape(fillMark, max(x-markSize/2, p.x), y-markSize/2, markSize, markSize, black)
		below = max(min(y, below)-line, highest+float64(i)*line)
		for _, text := range pg.wrapped(part, m.Label, smallStyle, at.x+at.width-p.x-labelGap, 1) {
			wide := pg.faces.width(text, smallStyle)
			pg.text(min(x+labelGap, at.x+at.width-wide), below, text, smallStyle, black)
		}
	}
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
