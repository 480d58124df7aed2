package pdf

import (
	"math"

	"cutbrief/report"
	"cutbrief/report/page"
	"cutbrief/rules"
	"cutbrief/rules/message"
)

// next is the demonstration and what is to be confirmed: one below the other,
// or side by side.
func (c *canvas) next() zone {
	below := present([]*block{c.plan(true), c.minutesStrip(true), c.confirm(2)})
	if len(below) == 0 {
		return zone{}
	}
	layouts := [][]column{{{c.full, below}}}
	for _, share := range []float64{0.5, 0.58} {
		left, right := c.full.halves(share)
		layouts = append(layouts, []column{{left, present([]*block{c.plan(false), c.minutesStrip(false)})}, {right, present([]*block{c.confirm(1)})}})
	}
	return headed(page.Next, layouts)
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

// plan is the demonstration: a table where it has the width of the page, else a
// list; the settings of the torch may be left to the representative.
func (c *canvas) plan(wide bool) *block {
	b := c.brief
	if len(b.Plan) == 0 {
		return nil
	}
	const name message.ID = "demonstration"
	put := func(rows, most int, detail cutDetail, notes bool) func(*canvas, span) {
		return func(c *canvas, at span) {
			c.heading(at, c.say(page.Shows))
			if detail == asTable {
				c.table(at, b.Plan[:rows], most)
			} else {
				c.cuts(at, b.Plan[:rows], most, detail)
			}
			c.paragraph(at, most, plainly(b.Bring, smallStyle, black)...)
			if notes {
				c.paragraph(at, all, plainly(joined(b.PlanNote...), smallStyle, grey)...)
			}
		}
	}
	n := len(b.Plan)
	var forms []form
	for _, d := range details {
		if d.detail == asTable && !wide {
			continue
		}
		f := form{loss: d.loss, gone: d.gone, draw: put(n, all, d.detail, true)}
		forms = append(forms, f)
		if len(b.PlanNote) > 0 {
			gone := append(d.gone[:len(d.gone):len(d.gone)], gone{what: "notes on the demonstration"})
			forms = append(forms, form{loss: d.loss + lossPlanNote, gone: gone, draw: put(n, all, d.detail, false)})
		}
	}
	return &block{name: name, forms: forms, last: capped(name, n, func(c *canvas, at span, n, most int) { put(n, most, cutsAlone, false)(c, at) })}
}

// cutDetail is how much is said of each cut.
type cutDetail int

const (
	asTable cutDetail = iota
	asList
	withoutSettings
	cutsAlone // and their pieces
)

// details are what is left out and lost by each.
var details = []struct {
	detail cutDetail
	loss   int
	gone   []gone
}{
	{asTable, 0, nil}, {asList, lossMerged, nil}, {withoutSettings, lossMerged + lossSettings, []gone{{what: "settings of the torch"}}},
	{cutsAlone, lossMerged + lossSettings + lossSee, []gone{{what: "settings of the torch"}, {what: "what to look for"}}},
}

// table puts the cuts as rows, each cell in its column.
func (c *canvas) table(at span, cuts []report.Row, most int) {
	const pad, indent = 3.0, 4.2
	x := at.x
	for _, col := range tableColumns {
		c.text(x, c.y, c.say(col.head), smallStyle, grey)
		x += col.share * at.width
	}
	c.y += smallStyle.line()
	for i := range cuts {
		c.shape(ruleMark, at.x, c.y+0.3, at.width, 0, grey)
		top, end := c.y, c.y
		x := at.x
		for k, col := range tableColumns {
			cell, st := span{x, col.share*at.width - pad}, bodyStyle
			if c.y = top; k == 0 {
				c.text(x, top, digits(i+1), strongStyle, accent)
				cell, st = cell.indented(indent), strongStyle
			}
			c.paragraph(cell, most, plainly(col.text(&cuts[i]), st, black)...)
			end, x = max(end, c.y), x+col.share*at.width
		}
		c.y = end
	}
	c.shape(ruleMark, at.x, c.y+0.3, at.width, 0, grey)
	c.y += row / 2
}

// cuts puts the cuts as a list, each in one paragraph.
func (c *canvas) cuts(at span, cuts []report.Row, most int, detail cutDetail) {
	const indent = 4.2
	for i, r := range cuts {
		c.text(at.x, c.y, digits(i+1), strongStyle, accent)
		text := r.Piece
		if detail == asList {
			text = sentence("; ", text, r.Setting)
		}
		if detail != cutsAlone {
			text = sentence("; ", text, r.See)
		}
		c.paragraph(at.indented(indent), most, run{r.Cut, strongStyle, black}, run{"–", bodyStyle, grey}, run{text, bodyStyle, black})
	}
}

// sentence joins two parts that are there.
func sentence(sep, one, other string) string {
	if one == "" || other == "" {
		return one + other
	}
	return one + sep + other
}

// minutesStrip is the demonstration in minutes, which says less where it is not
// wide.
func (c *canvas) minutesStrip(wide bool) *block {
	t := c.brief.Timeline
	if !hasTimeline(t) {
		return nil
	}
	f := form{draw: func(c *canvas, at span) { c.timeline(t, at) }}
	if !wide {
		f.loss = lossLow
	}
	return &block{name: "picture", forms: []form{f, {loss: lossMinutes, gone: []gone{{what: "picture"}}, draw: func(*canvas, span) {}}}}
}

// confirm is what is assumed or open, each with a box to tick, in so many
// columns; why it matters may be left to the representative.
func (c *canvas) confirm(columns int) *block {
	b := c.brief
	lines := b.Confirm
	for _, f := range b.Flags {
		lines = append(lines[:len(lines):len(lines)], report.Line{Why: f})
	}
	if len(lines) == 0 {
		return nil
	}
	const name message.ID = "to confirm"
	put := func(n, most, columns int, why bool) func(*canvas, span) {
		return func(c *canvas, at span) {
			c.heading(at, c.say(confirmTitle(b.Outcome)))
			c.balanced(at, columns, n, inOrder, func(c *canvas, at span, i int) { c.tick(lines[i], at, most, why) })
		}
	}
	n := len(lines)
	return &block{
		name: name,
		forms: []form{
			{draw: put(n, all, columns, true)},
			{loss: lossWhy, gone: []gone{{what: "why it is to be confirmed"}}, draw: put(n, all, columns, false)},
		},
		last: capped(name, n, func(c *canvas, at span, n, most int) { put(n, most, columns, false)(c, at) }),
	}
}

// confirmTitle does not speak of an order where there is nothing to order.
func confirmTitle(outcome string) message.ID {
	if rules.Outcome(outcome) == rules.Recommended {
		return page.Confirm
	}
	return page.Open
}

// tick puts one thing to confirm behind its box: what, how it stands, and why
// it matters. Where nothing stands but the why, that is what is confirmed.
func (c *canvas) tick(l report.Line, at span, most int, why bool) {
	const indent, box = 4.0, 2.2
	c.shape(boxMark, at.x, c.y+0.7, box, box, black)
	var runs []run
	if label := sentence(": ", l.Label, l.Value); label != "" {
		runs = append(runs, run{label, strongStyle, black})
	}
	if why && runs != nil && l.Why != "" {
		runs = append(runs, run{"–", bodyStyle, grey})
	}
	if why || runs == nil {
		runs = append(runs, run{l.Why, bodyStyle, black})
	}
	c.paragraph(at.indented(indent), most, runs...)
}

// balanced puts entries into one column or two of about one height, column by
// column, in the order they are read.
func (c *canvas) balanced(at span, columns, n int, share func([]float64) []bool, put func(c *canvas, at span, i int)) {
	wide := (at.width - float64(columns-1)*gutter) / float64(columns)
	var drawn []*canvas
	var heights []float64
	for i := range n {
		on := &canvas{faces: c.faces, words: c.words, brief: c.brief, full: c.full}
		put(on, span{0, wide}, i)
		drawn, heights = append(drawn, on), append(heights, on.y)
		c.cut += on.cut
	}
	right := make([]bool, n)
	if columns > 1 {
		right = share(heights)
	}
	top, bottom := c.y, c.y
	for k, x := range []float64{at.x, at.x + wide + gutter} {
		c.y = top
		for i, on := range drawn {
			if right[i] != (k == 1) {
				continue
			}
			for _, m := range on.marks {
				m = m.moved(c.y, 1)
				m.x += x
				c.marks = append(c.marks, m)
			}
			c.y += on.y
		}
		bottom = max(bottom, c.y)
	}
	c.y = bottom
}

// inOrder parts a list in two so that the higher part is lowest, and says what
// goes to the right: all from some entry on.
func inOrder(heights []float64) []bool {
	best, least := make([]bool, len(heights)), math.Inf(1)
	for turn := 1; turn <= len(heights); turn++ {
		right := make([]bool, len(heights))
		for i := turn; i < len(heights); i++ {
			right[i] = true
		}
		if h := higher(heights, right); h < least {
			best, least = right, h
		}
	}
	return best
}

// inAnyOrder does so for entries of which some may pass others: each column
// keeps their order. The first stays on the left.
func inAnyOrder(heights []float64) []bool {
	const many = 12 // there are no more hazards
	best := inOrder(heights)
	if len(heights) > many {
		return best
	}
	least := higher(heights, best)
	for set := range 1 << max(len(heights)-1, 0) {
		right := make([]bool, len(heights))
		for i := 1; i < len(heights); i++ {
			right[i] = set>>(i-1)&1 == 1
		}
		if h := higher(heights, right); h < least-0.01 {
			best, least = right, h
		}
	}
	return best
}

// higher is the height of the higher column.
func higher(heights []float64, right []bool) float64 {
	var sum [2]float64
	for i, h := range heights {
		if right[i] {
			sum[1] += h
		} else {
			sum[0] += h
		}
	}
	return max(sum[0], sum[1])
}

// dangers are the cautions: grouped by hazard beside its sign, what this job
// raises first and larger, and the sources once in a key.
func (c *canvas) dangers() *block {
	lines := c.brief.Cautions
	if len(lines) == 0 {
		return nil
	}
	const name message.ID = "cautions"
	put := func(n, most int, raised style, merge merging) func(*canvas, span) {
		return func(c *canvas, at span) {
			groups, key := page.Cautions(lines[:n])
			c.zoneHead(c.say(page.Dangers))
			c.balanced(at, 2, len(groups), inAnyOrder, func(c *canvas, at span, i int) { c.danger(&groups[i], at, most, raised, merge) })
			c.y = row * math.Ceil(c.y/row-0.01)
			c.paragraph(at, most*2, plainly(page.Key(c.words, key), smallStyle, grey)...)
		}
	}
	n := len(lines)
	var forms []form
	for _, raised := range []style{bodyStyle, smallBold} {
		for _, merge := range []merging{apart, theRest, together} {
			f := form{loss: int(merge) * lossMerged * 2, draw: put(n, all, raised, merge)}
			if raised == smallBold {
				f.loss += lossSmall
			}
			forms = append(forms, f)
		}
	}
	last := capped(name, n, func(c *canvas, at span, n, most int) { put(n, most, smallStyle, apart)(c, at) })
	return &block{name: name, forms: forms, last: last, weight: dangerWeight}
}

// merging is which cautions about one hazard share a paragraph.
type merging int

const (
	apart    merging = iota
	theRest          // those that are said to everybody
	together         // all
)

// dangerWeight is how much dearer a caution is than anything else decisive.
const dangerWeight = 20

// Heights of the signs, in mm: of what this job raises, and of the rest.
const (
	signLarge = 5 * row
	signSmall = 3.5 * row
)

// danger puts what is said about one hazard beside its sign.
func (c *canvas) danger(g *page.Group, at span, most int, raised style, merge merging) {
	size := signSmall
	if g.Raised() {
		size = signLarge
	}
	c.marks = append(c.marks, mark{kind: signMark, x: at.x, y: c.y + 0.3, w: size, h: size, sign: g.Sign})
	top, in := c.y, at.indented(signLarge+2)
	var runs []run
	for i, item := range g.Items {
		if runs != nil && (merge == apart || merge == theRest && g.Items[i-1].Raised) {
			c.paragraph(in, most, runs...)
			runs = nil
		}
		st := smallStyle
		if item.Raised {
			st = raised
		}
		text := item.Text
		if runs != nil {
			text = "•\u00a0" + text
		}
		runs = append(runs, run{text, st, black})
		if item.Letter != "" {
			runs = append(runs, run{"[" + item.Letter + "]", smallStyle, grey})
		}
	}
	c.paragraph(in, most, runs...)
	c.y = max(c.y, top+size)
	if merge != together {
		c.y += row / 2
	}
}

// more is what a customer may like to know and needs not: the other systems,
// and the notes.
func (c *canvas) more() zone {
	left, right := c.full.halves(0.5)
	var columns []column
	for i, b := range []*block{c.excluded(), c.notes()} {
		if b != nil {
			columns = append(columns, column{[]span{left, right}[i], []*block{b}})
		}
	}
	if columns == nil {
		return zone{}
	}
	return zone{[]layout{{draw: func(*canvas, int) {}, columns: columns}}}
}

// excluded are the other systems, each with its reason: all, or the nearest.
func (c *canvas) excluded() *block {
	lines := c.brief.Excluded
	const name message.ID = "other systems"
	return c.optional(name, page.NotTaken, len(lines), lossNearest, lossOthers, func(c *canvas, at span, i int) {
		c.bullet(at, all, run{lines[i].Label + ":", smallBold, black}, run{lines[i].Why, smallStyle, black})
	})
}

// notes are the customer's words and the representative's notes.
func (c *canvas) notes() *block {
	notes := c.brief.Notes
	return c.optional("notes", page.Notes, len(notes), lossNotes/2, lossNotes/2, func(c *canvas, at span, i int) {
		c.bullet(at, all, run{notes[i], smallStyle, black})
	})
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
