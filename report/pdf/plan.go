package pdf

import "cutbrief/report"

// column is one column of the demonstration table.
type column struct {
	head  string
	share float64
}

var columns = []column{{"Cut", 0.26}, {"Metal and thickness", 0.17}, {"Setting", 0.27}, {"What to look for", 0.30}}

// plan puts the demonstration as a table, and the notes on it.
func (pg *page) plan() {
	b := pg.brief
	if len(b.Plan) == 0 {
		return
	}
	pg.heading(pg.left, "Demonstration")
	x := pg.left
	for _, c := range columns {
		pg.text(x, pg.y, pg.say(c.head), smallStyle, grey)
		x += c.share * pg.width
	}
	pg.y += smallStyle.line() + 0.4
	for i, r := range shown(b.Plan, pg.kept("demonstration", len(b.Plan), pg.limits.plan)) {
		pg.rule()
		pg.row(i+1, []string{r.Cut, r.Piece, r.Setting, r.See})
	}
	pg.rule()
	pg.paragraph("what to bring", b.Bring, pg.full(), smallStyle, black, pg.limits.bring)
	if len(b.PlanNote) > 0 && pg.limits.planNotes > 0 {
		pg.y += 0.3
		pg.paragraph("notes on the demonstration", sentence(b.PlanNote...), pg.full(), smallStyle, grey, pg.limits.planNotes)
	} else if len(b.PlanNote) > 0 {
		pg.shortened("notes on the demonstration")
	}
	pg.timelineIfRoom()
	pg.y += pg.limits.gap
}

// shown keeps the first cuts, which show what decides, and the last, which is
// the customer's own.
func shown(rows []report.Row, n int) []report.Row {
	if n == len(rows) || n == 0 {
		return rows[:n]
	}
	return append(rows[:n-1:n-1], rows[len(rows)-1])
}

func (pg *page) rule() {
	pg.shape(ruleMark, pg.left, pg.y, pg.width, 0, grey)
	pg.y += 0.6
}

// row puts one cut, each cell in its column.
func (pg *page) row(number int, cells []string) {
	const pad = 3.0
	x, top, bottom := pg.left, pg.y, pg.y+bodyStyle.line()
	for i, text := range cells {
		width, indent, st := columns[i].share*pg.width-pad, 0.0, bodyStyle
		if i == 0 {
			st, indent = strongStyle, 4.2
			pg.text(x, top, digits(number), st, accent)
		}
		pg.y = top
		pg.paragraph("demonstration", text, span{x + indent, width - indent}, st, black, pg.limits.cell)
		bottom = max(bottom, pg.y)
		x += columns[i].share * pg.width
	}
	pg.y = bottom + 0.5
}
