package pdf

import "cutbrief/report"

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
	top, room := c.y, at.width-timeWords
	for _, s := range t.Steps {
		x, wide := at.x+room*inside(s.From), room*(inside(s.To)-inside(s.From))
		if wide >= 0.1 {
			c.stretch(s, x, top, wide)
		}
	}
	given := max(at.x+room*inside(t.GivenAt)-0.25, at.x)
	c.shape(fillMark, given, top-row/2, 0.5, timeHigh+row/2+tickLength, black)
	c.y = top + timeHigh + tickLength
	c.minutes(t, at, room)
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

// minutes puts ticks and figures below the strip.
func (c *canvas) minutes(t *report.Timeline, at span, room float64) {
	y, free := c.y, at.x
	for _, tick := range t.Ticks {
		x := at.x + room*inside(tick.At)
		c.shape(ruleMark, x, y-tickLength, 0, tickLength, black)
		wide := c.faces.width(tick.Label, smallStyle)
		if left := max(x-wide/2, at.x); left >= free && left+wide <= at.x+room+2 {
			c.text(left, y, tick.Label, smallStyle, black)
			free = left + wide + 1
		}
	}
	left := at.x + room + 3
	c.paragraph(span{left, at.x + at.width - left}, 1, plainly(t.Across, smallStyle, black)...)
	c.y = y + smallStyle.line()
}
