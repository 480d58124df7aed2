package pdf

import (
	"cutbrief/report"
	"cutbrief/rules"
	"cutbrief/rules/message"
)

// next is the demonstration and what is to be confirmed: one below the other,
// or side by side.
func (c *canvas) next() zone {
	plan, minutes, confirm := c.plan(), c.minutes(), c.confirm()
	if len(present([]*block{plan, minutes, confirm})) == 0 {
		return zone{}
	}
	layouts := [][]column{{stack(c.full, plan, minutes, confirm)}}
	for _, share := range []float64{0.5, 0.58, 0.66} {
		left, right := c.full.halves(share)
		layouts = append(layouts, []column{stack(left, plan, minutes), stack(right, confirm)})
	}
	return headed(report.PageNext, layouts)
}

// tableColumns are the columns of the demonstration with their shares.
var tableColumns = []struct {
	head  message.ID
	share float64
	text  func(r *report.Row) string
}{
	{"Cut", 0.26, func(r *report.Row) string { return r.Cut }},
	{"Metal and thickness", 0.17, func(r *report.Row) string { return r.Piece }},
	{"Setting", 0.27, func(r *report.Row) string { return r.Setting }},
	{"What to look for", 0.30, func(r *report.Row) string { return r.See }},
}

// details are what may be said of each cut, and what is left out and lost by it.
// The table wants the width of the page.
var details = []struct {
	put  func(c *canvas, at span, cuts []report.Row)
	loss int
	gone []gone
}{
	{(*canvas).table, 0, nil},
	{func(c *canvas, at span, cuts []report.Row) {
		c.cuts(at, cuts, func(r report.Row) string { return joined("; ", r.Piece, r.Setting, r.See) })
	}, lossMerged, nil},
	{func(c *canvas, at span, cuts []report.Row) {
		c.cuts(at, cuts, func(r report.Row) string { return joined("; ", r.Piece, r.See) })
	}, lossMerged + lossSettings, []gone{{what: "settings of the torch"}}},
	{func(c *canvas, at span, cuts []report.Row) {
		c.cuts(at, cuts, func(r report.Row) string { return r.Piece })
	}, lossMerged + lossSettings + lossSee, []gone{{what: "settings of the torch"}, {what: "what to look for"}}},
}

// plan is the demonstration: a table where it has the width of the page, else a
// list; the settings of the torch may be left to the representative.
func (c *canvas) plan() *block {
	b := c.brief
	if len(b.Plan) == 0 {
		return nil
	}
	var forms []form
	for i, d := range details {
		for _, notes := range []bool{true, false} {
			f := form{loss: d.loss, gone: d.gone, draw: func(c *canvas, at span) {
				if i == 0 && at != c.full {
					c.y += never // no room for a table
					return
				}
				c.heading(at, c.say(report.PageShows))
				d.put(c, at, b.Plan[:c.kept(len(b.Plan))])
				c.put(at, b.Bring, smallStyle, black)
				if notes {
					c.put(at, joined(" ", b.PlanNote...), smallStyle, grey)
				}
			}}
			if notes || len(b.PlanNote) > 0 {
				forms = append(forms, f)
			}
			if !notes && len(b.PlanNote) > 0 {
				last := &forms[len(forms)-1]
				last.loss, last.gone = last.loss+lossPlanNote, append(d.gone[:len(d.gone):len(d.gone)], gone{what: "notes on the demonstration"})
			}
		}
	}
	return &block{name: "demonstration", forms: forms}
}

// table puts the cuts as rows, each cell in its column.
func (c *canvas) table(at span, cuts []report.Row) {
	const pad, indent = 3.0, 4.2
	x := at.x
	for _, col := range tableColumns {
		c.text(x, c.y, c.say(col.head), smallStyle, grey)
		x += col.share * at.width
	}
	c.y += smallStyle.line()
	for i := range cuts {
		c.shape(ruleMark, at.x, c.y+0.3, at.width, 0, grey)
		c.text(at.x, c.y, digits(i+1), strongStyle, accent)
		x := at.x
		var cells []func()
		for k, col := range tableColumns {
			cell, st := span{x, col.share*at.width - pad}, bodyStyle
			if k == 0 {
				cell, st = cell.indented(indent), strongStyle
			}
			cells = append(cells, func() { c.put(cell, col.text(&cuts[i]), st, black) })
			x += col.share * at.width
		}
		c.cells(cells...)
	}
	c.shape(ruleMark, at.x, c.y+0.3, at.width, 0, grey)
	c.y += row / 2
}

// cuts puts the cuts as a list, each in one paragraph.
func (c *canvas) cuts(at span, cuts []report.Row, said func(report.Row) string) {
	const indent = 4.2
	for i, r := range cuts {
		c.text(at.x, c.y, digits(i+1), strongStyle, accent)
		c.paragraph(at.indented(indent), run{r.Cut, strongStyle, black}, run{"–", bodyStyle, grey}, run{said(r), bodyStyle, black})
	}
}

// minutes is the demonstration in minutes, which says less where it is not wide.
func (c *canvas) minutes() *block {
	t := c.brief.Timeline
	if !hasTimeline(t) {
		return nil
	}
	return &block{name: "the demonstration in minutes", forms: []form{
		{draw: func(c *canvas, at span) { c.timeline(t, at) }},
		{loss: lossMinutes, gone: []gone{{what: "the demonstration in minutes"}}, draw: func(*canvas, span) {}},
	}}
}

// confirm is what is assumed or open, each with a box to tick, in two columns
// where it has the width of the page; why it matters may be left to the
// representative.
func (c *canvas) confirm() *block {
	b := c.brief
	lines := b.Confirm
	for _, f := range b.Flags {
		lines = append(lines[:len(lines):len(lines)], report.Line{Why: f})
	}
	if len(lines) == 0 {
		return nil
	}
	title := report.PageOpen // not of an order where there is nothing to order
	if rules.Outcome(b.Outcome) == rules.Recommended {
		title = report.PageConfirm
	}
	put := func(why bool) func(*canvas, span) {
		return func(c *canvas, at span) {
			columns := 1
			if at == c.full {
				columns = 2
			}
			c.heading(at, c.say(title))
			c.balanced(at, columns, c.kept(len(lines)), inOrder, func(c *canvas, at span, i int) { c.tick(lines[i], at, why) })
		}
	}
	return &block{name: "to confirm", forms: []form{
		{draw: put(true)}, {loss: lossWhy, gone: []gone{{what: "why it is to be confirmed"}}, draw: put(false)},
	}}
}

// tick puts one thing to confirm behind its box: what, how it stands, and why
// it matters. Where nothing stands but the why, that is what is confirmed.
func (c *canvas) tick(l report.Line, at span, why bool) {
	const indent, box = 4.0, 2.2
	c.shape(boxMark, at.x, c.y+0.7, box, box, black)
	var runs []run
	if label := joined(": ", l.Label, l.Value); label != "" {
		runs = append(runs, run{label, strongStyle, black})
	}
	if why && runs != nil && l.Why != "" {
		runs = append(runs, run{"–", bodyStyle, grey})
	}
	if why || runs == nil {
		runs = append(runs, run{l.Why, bodyStyle, black})
	}
	c.paragraph(at.indented(indent), runs...)
}

// more is what a customer may like to know and needs not: the other systems,
// and the notes.
func (c *canvas) more() zone {
	left, right := c.full.halves(0.5)
	b := c.brief
	others := c.optional("other systems", report.PageNotTaken, len(b.Excluded), lossNearest, lossOthers, func(c *canvas, at span, i int) {
		c.bullet(at, run{b.Excluded[i].Label + ":", smallBold, black}, run{b.Excluded[i].Why, smallStyle, black})
	})
	notes := c.optional("notes", report.PageNotes, len(b.Notes), lossNotes/2, lossNotes/2, func(c *canvas, at span, i int) {
		c.bullet(at, run{b.Notes[i], smallStyle, black})
	})
	if others == nil && notes == nil {
		return zone{}
	}
	return zone{[]layout{{draw: func(*canvas, int) {}, columns: []column{stack(left, others), stack(right, notes)}}}}
}

// optional is a list that may be shortened to its first entries, or left to the
// representative.
func (c *canvas) optional(name, title message.ID, n, first, rest int, put func(*canvas, span, int)) *block {
	if n == 0 {
		return nil
	}
	show := func(k int) func(*canvas, span) {
		return func(c *canvas, at span) {
			c.heading(at, c.say(title))
			for i := range k {
				put(c, at, i)
			}
		}
	}
	b := &block{name: name, forms: []form{{draw: show(n)}}}
	if few := 3; n > few {
		b.forms = append(b.forms, form{loss: rest, gone: []gone{{what: name}}, draw: show(few)})
	}
	b.forms = append(b.forms, form{loss: first + rest, gone: []gone{{what: name}}, draw: func(*canvas, span) {}})
	return b
}
