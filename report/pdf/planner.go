package pdf

import (
	"math"
	"slices"

	"cutbrief/rules/message"
)

// form is one way to put a block: in full, shorter, merged, or not at all.
type form struct {
	loss int    // what is lost by it: worths of lossGo added up
	gone []gone // what it leaves to the representative's sheet
	draw func(*canvas, span)
}

// gone is what a form leaves out: all of it, or left of of.
type gone struct {
	what     message.ID
	left, of int
}

// block is a part of the page with all forms it can take. Where no choice among
// them fits, one is cut down as a last resort.
type block struct {
	name     message.ID
	forms    []form
	resort   int // that one, counted from the last
	weight   int // of what is decisive in it; 0 is 1
	measured []measured
	wide     map[span]*block // for other columns
}

// at is the block for a column, measured for it once.
func (b *block) at(s span) *block {
	if b == nil {
		return nil
	}
	if b.wide == nil {
		b.wide = map[span]*block{}
	}
	if b.wide[s] == nil {
		b.wide[s] = &block{name: b.name, forms: b.forms, resort: b.resort, weight: b.weight}
	}
	return b.wide[s]
}

// measured is a form in its column: how many rows it takes.
type measured struct {
	rows, loss int
	gone       []gone
	form       *form
	at         span
	limit      limit
}

// draw puts it on a canvas.
func (m *measured) draw(c *canvas) {
	c.limit = m.limit
	m.form.draw(c, m.at)
}

// column is a stack of blocks.
type column struct {
	at     span
	blocks []*block
}

// zone is a part of the page as wide as it, in one of its layouts.
type zone struct{ layouts []layout }

// layout is columns side by side. Head is how many rows its heading takes above
// them, foot what stays free below.
type layout struct {
	loss, head, foot int
	draw             func(c *canvas, rows int) // the heading, and what lies beneath the columns
	columns          []column
}

// never is the loss where nothing fits.
const never = math.MaxInt / 4

// table is the least loss by the rows there are.
type table []int

// stacked is a column worked out: for every block and number of rows the form
// to take. No block has as many as 256.
type stacked struct {
	table table
	picks [][]uint8
}

// stack works a column out, exactly: for each number of rows up to most, the
// forms of all its blocks that together lose least.
func (c *column) stack(most int) stacked {
	s := stacked{table: make(table, most+1)}
	next := make(table, most+1)
	for _, b := range c.blocks {
		pick := make([]uint8, most+1)
		for h := range next {
			next[h] = never
		}
		for i := range b.measured {
			l := &b.measured[i]
			for h := l.rows; h <= most; h++ {
				if loss := s.table[h-l.rows] + l.loss; loss < next[h] {
					next[h], pick[h] = loss, uint8(i)
				}
			}
		}
		s.table, next, s.picks = next, s.table, append(s.picks, pick)
	}
	return s
}

// chosen are the forms for so many rows.
func (s *stacked) chosen(c *column, rows int) []measured {
	list := make([]measured, len(c.blocks))
	for i := len(c.blocks) - 1; i >= 0; i-- {
		list[i] = c.blocks[i].measured[s.picks[i][rows]]
		rows -= list[i].rows
	}
	return list
}

// zoned is a zone worked out: the layout to take for every number of rows.
type zoned struct {
	table   table
	layout  []int
	columns [][]stacked
}

func (z *zone) plan(most int) zoned {
	out := zoned{table: make(table, most+1), layout: make([]int, most+1)}
	for i, l := range z.layouts {
		if i > 0 && len(l.columns) > 0 && &l.columns[0] == &z.layouts[i-1].columns[0] { // under another heading
			out.columns = append(out.columns, out.columns[i-1])
			continue
		}
		var list []stacked
		for i := range l.columns {
			list = append(list, l.columns[i].stack(most))
		}
		out.columns = append(out.columns, list)
	}
	for h := range out.table {
		out.table[h] = never
		for i, columns := range out.columns {
			l := &z.layouts[i]
			loss, room := l.loss, h-l.head-l.foot
			if room < 0 {
				continue
			}
			for _, c := range columns {
				loss = min(loss+c.table[room], never)
			}
			if loss < out.table[h] {
				out.table[h], out.layout[h] = loss, i
			}
		}
	}
	return out
}

// plan is the best choice for a whole page.
type plan struct {
	zones  []zone
	zoned  []zoned
	tables []table // after each zone
	splits [][]int // how many rows the zone takes
}

// planned works out all zones one below the other, exactly: rows are whole, so
// every way to share them out is tried.
func planned(zones []zone, most int) *plan {
	p := &plan{zones: zones}
	before := make(table, most+1)
	for i := range zones {
		z := zones[i].plan(most)
		next, split := make(table, most+1), make([]int, most+1)
		for h := range next {
			next[h] = never
			for k := range h + 1 {
				if loss := before[h-k] + z.table[k]; loss < next[h] {
					next[h], split[h] = loss, k
				}
			}
		}
		p.zoned, p.tables, p.splits = append(p.zoned, z), append(p.tables, next), append(p.splits, split)
		before = next
	}
	return p
}

// loss is the least for so many rows.
func (p *plan) loss(rows int) int { return p.tables[len(p.tables)-1][rows] }

// choice is a zone with its forms: what stands in each of its columns.
type choice struct {
	*layout
	columns [][]measured
	rows    int // with head and foot
}

// at is the choice for so many rows, zone by zone. It takes no more rows than
// it needs.
func (p *plan) at(rows int) []choice {
	list := make([]choice, len(p.zones))
	for i := len(p.zones) - 1; i >= 0; i-- {
		z, share := &p.zones[i], p.splits[i][rows]
		rows -= share
		which := p.zoned[i].layout[share]
		l := &z.layouts[which]
		list[i] = choice{layout: l, rows: l.head + l.foot}
		for k := range l.columns {
			forms := p.zoned[i].columns[which][k].chosen(&l.columns[k], share-l.head-l.foot)
			list[i].columns = append(list[i].columns, forms)
			list[i].rows = max(list[i].rows, rowsOf(forms)+l.head+l.foot)
		}
	}
	return list
}

func rowsOf(forms []measured) int {
	rows := 0
	for _, l := range forms {
		rows += l.rows
	}
	return rows
}

// left is everything a choice leaves out, each once.
func left(list []choice) []gone {
	var out []gone
	for _, z := range list {
		for _, column := range z.columns {
			for _, l := range column {
				for _, g := range l.gone {
					if !slices.Contains(out, g) {
						out = append(out, g)
					}
				}
			}
		}
	}
	return out
}

// lay measures every form of the blocks of some zones that is not yet, once:
// where it stands does not change how it looks.
func (c *canvas) lay(zones []zone, last bool) {
	for _, z := range zones {
		for _, l := range z.layouts {
			for _, col := range l.columns {
				for _, b := range col.blocks {
					c.layBlock(b, col.at, last)
				}
			}
		}
	}
}

// limits are the last resorts, one after the other.
var limits = []limit{{1, 4}, {1, 2}, {1, 1}, {2, 2}, {2, 1}, {4, 1}, {all, 1}}

func (c *canvas) layBlock(b *block, at span, cutting bool) {
	for i := len(b.measured); i < len(b.forms); i++ {
		b.measured = append(b.measured, c.measure(b, measured{form: &b.forms[i], at: at}))
	}
	if len(b.measured) > len(b.forms) || !cutting {
		return
	}
	last := &b.forms[len(b.forms)-1-b.resort]
	for _, l := range limits {
		b.measured = append(b.measured, c.measure(b, measured{form: last, at: at, limit: l}))
	}
}

// measure says how many rows a form takes and what is lost by it.
func (c *canvas) measure(b *block, m measured) measured {
	on := c.fresh()
	on.blind = true
	m.draw(on)
	if m.rows = int(math.Ceil(on.y/row - 0.01)); m.rows > 0 {
		m.rows++ // to the next block
	}
	m.loss, m.gone = on.left*lossDecisive, m.form.gone
	if m.limit.lines > 0 {
		m.loss += lossLines / m.limit.lines
	}
	m.loss = (m.loss+lossCut*on.cut)*max(b.weight, 1) + m.form.loss
	switch of := (gone{b.name, on.left, on.of}); {
	case on.left > 0:
		m.gone = append(m.gone[:len(m.gone):len(m.gone)], of)
	case on.cut > 0:
		m.gone = append(m.gone[:len(m.gone):len(m.gone)], gone{what: b.name})
	}
	return m
}
