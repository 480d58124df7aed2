package pdf

import (
	"cutbrief/report"
	"cutbrief/report/page"
	"cutbrief/rules"
	"cutbrief/rules/message"
)

// proof is what stands behind the recommendation: need against capability and
// one picture, beside what it costs and what decides. Which part stands below
// which is chosen by what fits best.
func (c *canvas) proof() zone {
	needs, cost, decides, picture := c.needs(), c.cost(), c.decides(), c.picture()
	if len(present([]*block{needs, cost, decides, picture})) == 0 {
		return zone{}
	}
	var layouts [][]column
	for _, share := range []float64{0.56, 0.5} {
		left, right := c.full.halves(share)
		mostly, costs, proves, shows := fresh(needs), fresh(cost), fresh(decides), fresh(picture)
		for _, order := range [][2][]*block{
			{{mostly, fresh(picture)}, {costs, proves}}, {{mostly, fresh(decides)}, {costs, shows}}, {{mostly, fresh(cost)}, {proves, shows}},
		} {
			layouts = append(layouts, []column{{left, present(order[0][:])}, {right, present(order[1][:])}})
		}
	}
	return headed(page.Proof, layouts)
}

// fresh is the same block for another width, not yet laid out.
func fresh(b *block) *block {
	if b == nil {
		return nil
	}
	return &block{name: b.name, forms: b.forms, last: b.last}
}

// needs puts need against capability: what is not met or borderline first and
// larger, each with its verdict, then what is met, a line each, in a paragraph
// with its figures, or by name.
func (c *canvas) needs() *block {
	var unmet, met []report.Bar
	for _, b := range c.brief.Bars {
		if b.Verdict == c.words.Print(message.ID(rules.Met).Message()) {
			met = append(met, b)
		} else {
			unmet = append(unmet, b)
		}
	}
	if len(unmet)+len(met) == 0 {
		return nil
	}
	const name message.ID = "requirements and capabilities"
	forms := []form{{draw: func(c *canvas, at span) {
		c.heading(at, c.say(page.Given))
		c.unmet(at, unmet, all)
		c.met(at, met)
	}}}
	if len(met) > 0 {
		forms = append(forms, form{loss: lossBars, draw: func(c *canvas, at span) {
			c.heading(at, c.say(page.Given))
			c.unmet(at, unmet, all)
			c.paragraph(at, all, c.metWords(met, true)...)
		}}, form{loss: lossBars + lossFigures, gone: []gone{{what: "figures of what is met"}}, draw: func(c *canvas, at span) {
			c.heading(at, c.say(page.Given))
			c.unmet(at, unmet, all)
			c.paragraph(at, all, c.metWords(met, false)...)
		}})
	}
	last := capped(name, max(len(unmet), 1), func(c *canvas, at span, n, most int) {
		c.unmet(at, unmet[:min(n, len(unmet))], min(most, 2))
		c.paragraph(at, most, c.metWords(met, false)...)
	})
	return &block{name: name, forms: forms, last: last}
}

// metWords sums up what is met in one paragraph, with or without figures.
func (c *canvas) metWords(met []report.Bar, figures bool) []run {
	if len(met) == 0 {
		return nil
	}
	list := []run{{c.say(page.Met) + ":", strongStyle, black}}
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
		if b.Verdict != c.words.Print(message.ID(rules.Met).Message()) {
			label = max(label, c.faces.width(b.Label, strongStyle), c.faces.width(b.Verdict, strongStyle))
		}
	}
	return min(label+0.5, at.width*0.36)
}

// unmet puts a pair of bars for each: hatched for what is needed, solid for what
// is given, each with its figure.
func (c *canvas) unmet(at span, bars []report.Bar, most int) {
	figure := 0.0
	for _, b := range bars {
		figure = max(figure, c.faces.width(b.Need, strongStyle), c.faces.width(b.Have, strongStyle))
	}
	label, figure := c.labels(at), min(figure+0.1, at.width*0.42)
	for _, b := range bars {
		top, room := c.y, at.width-label-figure-3
		figures := span{at.x + label + room + 3, figure}
		c.paragraph(span{at.x, label}, most, plainly(b.Label, strongStyle, black)...)
		c.paragraph(span{at.x, label}, most, plainly(b.Verdict, strongStyle, black)...)
		end := c.y
		c.shape(hatchMark, at.x+label+1.5, top+0.7, room*share(b.NeedShare), 2.1, black)
		c.shape(fillMark, at.x+label+1.5, top+2*row+0.7, room*share(b.HaveShare), 2.1, accent)
		c.y = top
		c.paragraph(figures, most, plainly(b.Need, strongStyle, black)...)
		c.y = max(c.y, top+2*row)
		c.paragraph(figures, most, plainly(b.Have, strongStyle, black)...)
		c.y = max(c.y, end)
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
		top := c.y
		c.paragraph(span{at.x, label}, all, plainly(b.Label, bodyStyle, black)...)
		end := c.y
		c.y = top
		if room >= least {
			c.shape(hatchMark, at.x+label+1.5, top+0.55, room*share(b.NeedShare), 1.1, black)
			c.shape(fillMark, at.x+label+1.5, top+1.85, room*share(b.HaveShare), 1.1, accent)
		}
		c.paragraph(span{at.x + at.width - need - have - gap/2, need}, all, plainly(b.Need, bodyStyle, black)...)
		end, c.y = max(end, c.y), top
		c.paragraph(span{at.x + at.width - have, have}, all, plainly(b.Have, bodyStyle, black)...)
		c.y = max(c.y, end)
	}
}

// share keeps a bar visible and inside its room.
func share(v float64) float64 {
	if !(v > 0.01) {
		return 0.01
	}
	return min(v, 1)
}

// picture is the one picture that tells most: what cutting costs by thickness
// where a flame cuts today, else how fast the system cuts.
func (c *canvas) picture() *block {
	b := c.brief
	draw := func(high float64) func(*canvas, span) {
		return func(c *canvas, at span) {
			if drawable(b.Cost) {
				c.curves(b.Cost.Curves, at, high)
			} else {
				c.speeds(b.Speeds, at, high)
			}
		}
	}
	if !drawable(b.Cost) && !hasSpeeds(b.Speeds) {
		return nil
	}
	return &block{name: "picture", forms: []form{
		{draw: draw(14 * row)}, {loss: lossLow, draw: draw(10 * row)}, {loss: 2 * lossLow, draw: draw(8 * row)},
		{loss: lossPicture, gone: []gone{{what: "picture"}}, draw: func(*canvas, span) {}},
	}}
}

// cost is what cutting costs: the verdict, and today's way and the system's as
// ranges. The heading says so where prices are assumed.
func (c *canvas) cost() *block {
	of := c.brief.Cost
	if of == nil || len(of.Lines) == 0 {
		return nil
	}
	put := func(n, most int, ranges, merge bool) func(*canvas, span) {
		return func(c *canvas, at span) {
			title := page.Costs
			if of.Assumed {
				title = page.Assumed
			}
			c.heading(at, c.say(title))
			c.paragraph(at, most, plainly(of.Lines[0], strongStyle, black)...)
			if ranges {
				c.ranges(of.Bars, at)
			}
			if rest := of.Lines[1:n]; merge {
				c.paragraph(at, most, plainly(joined(rest...), bodyStyle, black)...)
			} else {
				for _, l := range rest {
					c.paragraph(at, most, plainly(l, bodyStyle, black)...)
				}
			}
		}
	}
	n := len(of.Lines)
	loss := 0
	if len(of.Bars) > 0 {
		loss = lossRange
	}
	detail := []gone{{what: "cost in detail"}}
	forms := []form{{draw: put(n, all, true, false)}, {draw: put(n, all, true, true)}, {loss: loss, gone: detail, draw: put(n, all, false, true)}}
	if n > 2 {
		forms = append(forms, form{loss: lossMovers, gone: detail, draw: put(2, all, true, true)}, form{loss: loss + lossMovers, gone: detail, draw: put(2, all, false, true)})
	}
	if n > 1 {
		forms = append(forms, form{loss: loss + lossMovers + lossPayback, gone: detail, draw: put(1, all, false, true)})
	}
	return &block{name: "cost", forms: forms, last: []form{{loss: lossLines, gone: detail, draw: put(1, 3, false, true)}, {loss: lossLines, gone: detail, draw: put(1, 1, false, true)}}}
}

// ranges draws what a length costs today and would cost: a box from low to
// high, hatched for today, with a stroke at the likely figure.
func (c *canvas) ranges(bars []report.CostBar, at span) {
	for i, b := range bars {
		figure := b.Value
		if figure == "" {
			figure = b.Brief
		}
		c.paragraph(at, all, run{b.Label, strongStyle, black}, run{figure, bodyStyle, black})
		low, mid, high := b.Low, b.Mid, b.High
		if high <= 0 {
			mid, high = b.Share, b.Share
		}
		kind, in := hatchMark, black
		if i > 0 {
			kind, in = fillMark, accent
		}
		from, to := at.x+at.width*inside(low), at.x+at.width*max(inside(high), 0.01)
		c.shape(ruleMark, at.x, c.y+row, at.width, 0, grey)
		c.shape(kind, from, c.y+0.4, max(to-from, 0.4), 1.6, in)
		c.shape(fillMark, min(at.x+at.width*inside(mid), at.x+at.width-0.7), c.y, 0.7, 2.4, black)
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
	evidence := values(b.Evidence)
	put := func(n, most int, merge, shown bool) func(*canvas, span) {
		return func(c *canvas, at span) {
			c.paragraph(at, most, run{c.say(page.Decides) + ":", headStyle, accent}, run{b.Critical, headStyle, black})
			if merge {
				c.paragraph(at, most, merged(evidence[:n], bodyStyle)...)
			} else {
				for _, t := range evidence[:n] {
					c.bullet(at, most, run{t, bodyStyle, black})
				}
			}
			if shown && b.ShownBy != "" {
				c.paragraph(at, most, plainly(b.ShownBy, bodyStyle, grey)...)
			}
		}
	}
	n := len(evidence)
	gone := []gone{{what: "how it is shown"}}
	forms := []form{{draw: put(n, all, false, true)}, {loss: lossMerged, draw: put(n, all, true, true)}}
	if b.ShownBy != "" {
		forms = append(forms, form{loss: lossShownBy, gone: gone, draw: put(n, all, false, false)}, form{loss: lossShownBy + lossMerged, gone: gone, draw: put(n, all, true, false)})
	}
	return &block{name: "what decides", forms: forms, last: capped("evidence", n, func(c *canvas, at span, n, most int) { put(n, most, false, false)(c, at) })}
}
