package pdf

import (
	"cutbrief/report"
	"cutbrief/rules"
	"cutbrief/rules/message"
)

// proof is what stands behind the recommendation: need against capability and
// one picture, beside what it costs and what decides. Which part stands below
// which is chosen by what fits best.
func (c *canvas) proof() zone {
	needs, cost, decides, picture := c.needs(), c.cost(), c.decides(), c.onePicture()
	if len(present([]*block{needs, cost, decides, picture})) == 0 {
		return zone{}
	}
	var layouts [][]column
	for _, share := range []float64{0.56, 0.5} {
		left, right := c.full.halves(share)
		for _, order := range [][2][2]*block{{{needs, picture}, {cost, decides}}, {{needs, decides}, {cost, picture}}, {{needs, cost}, {decides, picture}}} {
			layouts = append(layouts, []column{stack(left, order[0][:]...), stack(right, order[1][:]...)})
		}
	}
	return headed(report.PageProof, layouts)
}

// stack is a column of the blocks that are there.
func stack(at span, blocks ...*block) column {
	list := column{at: at}
	for _, b := range blocks {
		if b != nil {
			list.blocks = append(list.blocks, b.at(at))
		}
	}
	return list
}

func (c *canvas) isMet(b report.Bar) bool {
	return b.Verdict == c.words.Print(message.ID(rules.Met).Message())
}

// needs puts need against capability: what is not met or borderline first and
// larger, each with its verdict, then what is met, a line each, in a paragraph
// with its figures, or by name.
func (c *canvas) needs() *block {
	var unmet, met []report.Bar
	for _, b := range c.brief.Bars {
		if c.isMet(b) {
			met = append(met, b)
		} else {
			unmet = append(unmet, b)
		}
	}
	if len(c.brief.Bars) == 0 {
		return nil
	}
	put := func(rest func(*canvas, span)) func(*canvas, span) {
		return func(c *canvas, at span) {
			c.heading(at, c.say(report.PageGiven))
			c.unmet(at, unmet[:c.kept(len(unmet))])
			rest(c, at)
		}
	}
	words := func(figures bool) func(*canvas, span) {
		return put(func(c *canvas, at span) { c.paragraph(at, c.metWords(met, figures)...) })
	}
	forms := []form{{draw: put(func(c *canvas, at span) { c.met(at, met) })}}
	if len(met) > 0 {
		forms = append(forms, form{loss: lossBars, draw: words(true)}, form{loss: lossBars + lossFigures, gone: []gone{{what: "figures of what is met"}}, draw: words(false)})
	}
	return &block{name: "requirements and capabilities", forms: forms}
}

// metWords sums up what is met in one paragraph, with or without figures.
func (c *canvas) metWords(met []report.Bar, figures bool) []run {
	list := []run{{c.say(report.PageMet) + ":", strongStyle, black}}
	for i, b := range met {
		text := b.Label
		if figures {
			text += " (" + b.Need + ", " + b.Have + ")"
		}
		if i < len(met)-1 {
			text += "\u00a0·"
		}
		list = append(list, run{text, bodyStyle, black})
	}
	return list
}

// labels is how wide the names and verdicts of all bars are, so that the bars
// begin at one line.
func (c *canvas) labels(at span) float64 {
	label := 0.0
	for _, b := range c.brief.Bars {
		label = max(label, c.faces.width(b.Label, bodyStyle))
		if !c.isMet(b) {
			label = max(label, c.faces.width(b.Label, strongStyle), c.faces.width(b.Verdict, strongStyle))
		}
	}
	return min(label+0.5, at.width*0.36)
}

// bars draws need and capability, hatched and solid, one below the other, each so
// high and apart.
func (c *canvas) bars(b report.Bar, x, wide, high, apart float64) {
	c.shape(hatchMark, x, c.y, wide*share(b.NeedShare), high, black)
	c.shape(fillMark, x, c.y+apart, wide*share(b.HaveShare), high, accent)
}

// unmet puts a pair of bars for each, each bar with its figure.
func (c *canvas) unmet(at span, bars []report.Bar) {
	figure := 0.0
	for _, b := range bars {
		figure = max(figure, c.faces.width(b.Need, strongStyle), c.faces.width(b.Have, strongStyle))
	}
	label, figure := c.labels(at), min(figure+0.1, at.width*0.42)
	room := at.width - label - figure - 3
	for _, b := range bars {
		names, figures := span{at.x, label}, span{at.x + label + room + 3, figure}
		c.cells(func() {
			c.put(names, b.Label, strongStyle, black)
			c.put(names, b.Verdict, strongStyle, black)
		}, func() {
			c.y += 0.7
			c.bars(b, at.x+label+1.5, room, 2.1, 2*row)
		}, func() {
			top := c.y
			c.put(figures, b.Need, strongStyle, black)
			c.y = max(c.y, top+2*row)
			c.put(figures, b.Have, strongStyle, black)
		})
	}
}

// met puts a line for each, with a thin pair of bars.
func (c *canvas) met(at span, bars []report.Bar) {
	const gap, least = 2.0, 8.0
	need, have := 0.0, 0.0
	for _, b := range bars {
		need = max(need, c.faces.width(b.Need, bodyStyle)+1)
		have = max(have, c.faces.width(b.Have, bodyStyle)+1)
	}
	label, need, have := c.labels(at), min(need, at.width*0.28), min(have, at.width*0.28)
	room := at.width - label - need - have - 2*gap
	for _, b := range bars {
		c.cells(func() { c.put(span{at.x, label}, b.Label, bodyStyle, black) }, func() {
			if c.y += 0.55; room >= least {
				c.bars(b, at.x+label+1.5, room, 1.1, 1.3)
			}
		}, func() { c.put(span{at.x + at.width - need - have - gap/2, need}, b.Need, bodyStyle, black) },
			func() { c.put(span{at.x + at.width - have, have}, b.Have, bodyStyle, black) })
	}
}

// share keeps a bar visible and inside its room.
func share(v float64) float64 { return max(report.AxisShare(v), 0.01) }

// onePicture is the one picture that tells most, in full height or low.
func (c *canvas) onePicture() *block {
	of := report.PictureOf(c.brief)
	if of == nil {
		return nil
	}
	draw := func(rows float64) func(*canvas, span) {
		return func(c *canvas, at span) { c.picture(of, at, rows*row) }
	}
	worth := lossSpeeds
	if of.Crossing.Label != "" {
		worth = lossCurves
	}
	return &block{name: "picture", forms: []form{
		{draw: draw(14)}, {loss: lossLow, draw: draw(10)}, {loss: 2 * lossLow, draw: draw(7)},
		{loss: worth, gone: []gone{{what: "picture"}}, draw: func(*canvas, span) {}},
	}}
}

// cost is what cutting costs: the verdict, and today's way and the system's as
// ranges. The heading says so where prices are assumed.
func (c *canvas) cost() *block {
	of := c.brief.Cost
	if of == nil || len(of.Lines) == 0 {
		return nil
	}
	put := func(n int, ranges, merge bool) func(*canvas, span) {
		return func(c *canvas, at span) {
			title := report.PageCosts
			if of.Assumed {
				title = report.PageAssumed
			}
			c.heading(at, c.say(title))
			c.put(at, of.Lines[0], strongStyle, black)
			if ranges {
				c.ranges(of.Bars, at)
			}
			rest := of.Lines[1:n]
			if merge {
				rest = []string{joined(" ", rest...)}
			}
			for _, l := range rest {
				c.put(at, l, bodyStyle, black)
			}
		}
	}
	n, loss := len(of.Lines), 0
	if len(of.Bars) > 0 {
		loss = lossRange
	}
	detail := []gone{{what: "cost in detail"}}
	forms := []form{{draw: put(n, true, false)}, {draw: put(n, true, true)}, {loss: loss, gone: detail, draw: put(n, false, true)}}
	if n > 2 {
		forms = append(forms, form{loss: lossMovers, gone: detail, draw: put(2, true, true)}, form{loss: loss + lossMovers, gone: detail, draw: put(2, false, true)})
	}
	if n > 1 {
		forms = append(forms, form{loss: loss + lossMovers + lossPayback, gone: detail, draw: put(1, false, true)})
	}
	return &block{name: "cost", forms: forms}
}

// ranges draws what a length costs today and would cost: a box from low to
// high, hatched for today, with a stroke at the likely figure.
func (c *canvas) ranges(bars []report.CostBar, at span) {
	for i, b := range bars {
		figure := b.Value
		if figure == "" {
			figure = b.Brief
		}
		c.paragraph(at, run{b.Label, strongStyle, black}, run{figure, bodyStyle, black})
		low, mid, high := b.Low, b.Mid, b.High
		if high <= 0 {
			mid, high = b.Share, b.Share
		}
		kind, in := hatchMark, black
		if i > 0 {
			kind, in = fillMark, accent
		}
		from, to := at.x+at.width*report.AxisShare(low), at.x+at.width*share(high)
		c.shape(ruleMark, at.x, c.y+row, at.width, 0, grey)
		c.shape(kind, from, c.y+0.4, max(to-from, 0.4), 1.6, in)
		c.shape(fillMark, min(at.x+at.width*report.AxisShare(mid), at.x+at.width-0.7), c.y, 0.7, 2.4, black)
		c.y += 2 * row
	}
}

// decides is what decides, the evidence for it, and how the demonstration shows
// it.
func (c *canvas) decides() *block {
	b := c.brief
	if b.Critical == "" {
		return nil
	}
	var evidence []string
	for _, l := range b.Evidence {
		if l.Value != "" {
			evidence = append(evidence, l.Value)
		}
	}
	put := func(list func(*canvas, span, []string, style), shown string) func(*canvas, span) {
		return func(c *canvas, at span) {
			c.paragraph(at, run{c.say(report.PageDecides) + ":", headStyle, accent}, run{b.Critical, headStyle, black})
			list(c, at, evidence, bodyStyle)
			c.put(at, shown, bodyStyle, grey)
		}
	}
	forms := []form{{draw: put((*canvas).points, b.ShownBy)}, {loss: lossMerged, draw: put((*canvas).merged, b.ShownBy)}}
	if b.ShownBy != "" {
		gone := []gone{{what: "how it is shown"}}
		forms = append(forms, form{loss: lossShownBy, gone: gone, draw: put((*canvas).points, "")}, form{loss: lossShownBy + lossMerged, gone: gone, draw: put((*canvas).merged, "")})
	}
	return &block{name: "what decides", forms: forms, resort: 1}
}
