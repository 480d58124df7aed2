package pdf

import "cutbrief/report"

// mostBars is more pairs of bars than there are rules that compare two numbers.
const mostBars = 30

// pictures put what people would rather look at than read on a sheet of its
// own: need against capability, speed and cost by thickness, and the
// demonstration in minutes, as large as there is room for.
func (w *writer) pictures() {
	if !w.brief.Pictures || !pictured(w.brief) {
		return
	}
	w.turn()
	pg := w.on
	w.title("In pictures", "The same figures as on the page.")
	half := (w.width - gutter) / 2
	left, right := span{pg.left, half}, span{pg.left + half + gutter, half}
	top := pg.y
	pg.limits.bars = mostBars
	pg.bars(left)
	below := pg.y
	pg.y = top
	if s := w.brief.Speeds; s != nil && len(s.Line) > 1 {
		pg.speeds(s, right, sheetPlot)
		pg.y += roomy.gap
	}
	if c := w.brief.Cost; c != nil && drawable(c.Curves) {
		pg.paragraph("cost by thickness", c.Curves.Title, right, headStyle, accent, 1)
		pg.curves(c.Curves, right, sheetPlot)
		pg.y += roomy.gap
	}
	pg.y = max(pg.y, below) + roomy.gap
	if t := w.brief.Timeline; t != nil && len(t.Steps) > 0 {
		w.timeline(t)
	}
}

// pictured reports whether there is anything to draw.
func pictured(b *report.Brief) bool {
	return len(b.Bars) > 0 || b.Speeds != nil && len(b.Speeds.Line) > 1 || b.Cost != nil && drawable(b.Cost.Curves) || b.Timeline != nil && len(b.Timeline.Steps) > 0
}

// timeline draws the demonstration in minutes, and lists below what each
// stretch is.
func (w *writer) timeline(t *report.Timeline) {
	if w.on.y+headStyle.line()+timeHigh+4*smallStyle.line() > w.bottom {
		w.turn()
	}
	pg := w.on
	pg.paragraph("the demonstration in minutes", t.Title, pg.full(), headStyle, accent, 1)
	pg.y += 0.6 + aboveLines
	pg.timeline(t, pg.full())
	pg.y += 1
	for _, s := range t.Steps {
		mark := "•"
		if s.Number > 0 {
			mark = digits(s.Number)
		}
		w.put(mark, colon(s.When, s.Name), 4.5, smallStyle, black)
	}
	w.put("", sentence(t.Says, t.Rests), 0, smallStyle, grey)
}
