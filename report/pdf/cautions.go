package pdf

import (
	"math"

	"cutbrief/report"
)

// dangers are the cautions: grouped by hazard beside its sign, what this job
// raises first and larger, and the sources once in a key.
func (c *canvas) dangers() *block {
	if len(c.brief.Cautions) == 0 {
		return nil
	}
	groups, key := report.GroupCautions(c.brief.Cautions)
	sources := report.SourceKey(c.words, key)
	put := func(raised style, merge merging) func(*canvas, span) {
		return func(c *canvas, at span) {
			shown, said := groups, sources
			if c.limit.share > 1 {
				fewer, key := report.GroupCautions(c.brief.Cautions[:c.kept(len(c.brief.Cautions))])
				shown, said = fewer, report.SourceKey(c.words, key)
			}
			c.zoneHead(c.say(report.PageDangers))
			c.balanced(at, 2, len(shown), inAnyOrder, func(c *canvas, at span, i int) { c.danger(&shown[i], at, raised, merge) })
			c.y = row * math.Ceil(c.y/row-0.01)
			c.put(at, said, smallStyle, grey)
		}
	}
	var forms []form
	for _, raised := range []style{bodyStyle, smallBold} {
		for _, merge := range []merging{apart, theRest, together} {
			f := form{loss: int(merge) * lossMerged * 2, draw: put(raised, merge)}
			if raised == smallBold {
				f.loss += lossSmall
			}
			forms = append(forms, f)
		}
	}
	return &block{name: "cautions", forms: forms, resort: 2, weight: dangerWeight}
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
func (c *canvas) danger(g *report.CautionGroup, at span, raised style, merge merging) {
	size := signSmall
	if g.Raised() {
		size = signLarge
	}
	c.add(mark{kind: signMark, x: at.x, y: c.y + 0.3, w: size, h: size, sign: g.Sign})
	top, in := c.y, at.indented(signLarge+2)
	var runs []run
	for i, item := range g.Items {
		if runs != nil && (merge == apart || merge == theRest && g.Items[i-1].Raised) {
			c.paragraph(in, runs...)
			runs = nil
		}
		st, text := smallStyle, item.Text
		if item.Raised {
			st = raised
		}
		if runs != nil {
			text = "•\u00a0" + text
		}
		runs = append(runs, run{text, st, black})
		if item.Letter != "" {
			runs = append(runs, run{"[" + item.Letter + "]", smallStyle, grey})
		}
	}
	c.paragraph(in, runs...)
	c.y = max(c.y, top+size)
	if merge != together {
		c.y += row / 2
	}
}

// balanced puts entries into one column or two of about one height, column by
// column, in the order they are read.
func (c *canvas) balanced(at span, columns, n int, share func([]float64) []bool, put func(c *canvas, at span, i int)) {
	wide := (at.width - float64(columns-1)*gutter) / float64(columns)
	drawn, heights, right := make([]*canvas, n), make([]float64, n), make([]bool, n)
	for i := range n {
		on := c.fresh()
		put(on, span{0, wide}, i)
		drawn[i], heights[i] = on, on.y
		c.cut += on.cut
	}
	if columns > 1 {
		right = share(heights)
	}
	var column [2]func()
	for k, x := range []float64{at.x, at.x + wide + gutter} {
		column[k] = func() {
			for i, on := range drawn {
				if right[i] == (k == 1) {
					c.copied(on, x, c.y, 1)
					c.y += on.y
				}
			}
		}
	}
	c.cells(column[:]...)
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
	const most = 12 // there are no more hazards
	best := inOrder(heights)
	if len(heights) > most {
		return best
	}
	least := higher(heights, best)
	right := make([]bool, len(heights))
	for set := range 1 << max(len(heights)-1, 0) {
		for i := 1; i < len(heights); i++ {
			right[i] = set>>(i-1)&1 == 1
		}
		if h := higher(heights, right); h < least-0.01 {
			copy(best, right)
			least = h
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
