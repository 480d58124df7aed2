package pdf

import "cutbrief/report"

// Sizes of the demonstration in minutes, in mm.
const (
	timeHigh   = 4.4
	timeWords  = 16.0 // right of the strip, for what the axis counts
	timeInside = 1.0  // from the edge of a stretch to its text
)

// timelineIfRoom puts the demonstration in minutes below its table. It is the
// first content to go where the page is full.
func (pg *page) timelineIfRoom() {
	t := pg.brief.Timeline
	switch {
	case t == nil || len(t.Steps) == 0:
	case !pg.limits.timeline:
		pg.shortened("pictures")
	default:
		pg.y += aboveLines
		pg.timeline(t, pg.full())
	}
}

// timeline draws the stretches of the demonstration one behind the other: cuts
// as boxes with their number in the plan, set-ups hatched, what is left over
// open. A stroke stands where the time there is ends.
func (pg *page) timeline(t *report.Timeline, at span) {
	const part = "the demonstration in minutes"
	top, room := pg.y, at.width-timeWords
	for _, s := range t.Steps {
		x, wide := at.x+room*inside(s.From), room*(inside(s.To)-inside(s.From))
		if wide < 0.1 {
			continue
		}
		pg.stretch(s, x, top, wide)
	}
	given := max(at.x+room*inside(t.GivenAt)-0.25, at.x)
	pg.shape(fillMark, given, top-aboveLines/2, 0.5, timeHigh+aboveLines/2+tickLength, black)
	pg.y = top + timeHigh + tickLength
	pg.minutes(part, t, at, room)
}

// stretch draws one, with its text where it has room.
func (pg *page) stretch(s report.TimelineStep, x, y, wide float64) {
	text, st := s.Takes, smallStyle
	switch s.Kind {
	case report.StepCut:
		pg.shape(fillMark, x, y, wide, timeHigh, light)
		pg.shape(boxMark, x, y, wide, timeHigh, black)
		text, st = digits(s.Number)+": "+s.Takes, smallBold
	case report.StepSetUp:
		pg.shape(hatchMark, x, y, wide, timeHigh, grey)
		return
	default:
		pg.shape(ruleMark, x, y+timeHigh, wide, 0, black)
		if long := s.Name + ", " + s.Takes; pg.faces.width(long, st) <= wide-2*timeInside {
			text = long
		}
	}
	for _, text := range []string{text, digits(s.Number)} {
		if w := pg.faces.width(text, st); text != "0" && w <= wide-2*timeInside {
			pg.text(x+(wide-w)/2, y+(timeHigh-st.line())/2, text, st, black)
			return
		}
	}
}

// minutes puts ticks and figures below the strip.
func (pg *page) minutes(part string, t *report.Timeline, at span, room float64) {
	y, free := pg.y, at.x
	for _, tick := range t.Ticks {
		x := at.x + room*inside(tick.At)
		pg.shape(ruleMark, x, y-tickLength, 0, tickLength, black)
		wide := pg.faces.width(tick.Label, smallStyle)
		if left := max(x-wide/2, at.x); left >= free && left+wide <= at.x+room+2 {
			pg.text(left, y, tick.Label, smallStyle, black)
			free = left + wide + 1
		}
	}
	left := at.x + room + 3
	pg.paragraph(part, t.Across, span{left, at.x + at.width - left}, smallStyle, black, 1)
	pg.y = y + smallStyle.line()
}
