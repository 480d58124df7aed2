package pdf

import (
	"fmt"
	"strconv"
	"strings"

	"cutbrief/report"
	team "cutbrief/report/table"
)

// Team draws the summary of a team's visits on one page. The same summary gives the
// same bytes. Where it is too long, the longest tables lose their last rows, and
// the page says which.
func Team(s team.Summary, p Paper) ([]byte, error) {
	f, err := newFaces()
	if err != nil {
		return nil, err
	}
	pg, err := fitTeam(f, s, p)
	if err != nil {
		return nil, err
	}
	return draw([]*page{pg}, p, true)
}

// teamRows is how many rows of a table are kept: at first all that a usual team has,
// at last so few that they always fit.
type teamRows struct{ groups, endings, bars, lines int }

var teamSteps = []teamRows{{60, 20, 14, 3}, {40, 14, 14, 3}, {30, 12, 14, 3}, {24, 10, 14, 2}, {18, 8, 10, 2}, {12, 8, 8, 2}, {10, 6, 6, 1}, {6, 5, 5, 1}, {4, 3, 3, 1}, {2, 2, 2, 1}, {1, 1, 1, 1}}

func fitTeam(f faces, s team.Summary, p Paper) (*page, error) {
	c := cleaner{faces: f}
	clean := c.team(s)
	for _, rows := range teamSteps {
		pg, over, err := layTeam(f, clean, p, rows, c.said())
		if err != nil || over <= 0 {
			return pg, err
		}
	}
	return nil, fmt.Errorf("the summary does not fit on %s", p)
}

// team returns a copy with every string made printable.
func (c *cleaner) team(s team.Summary) team.Summary {
	s.Title, s.Lead, s.Notes = c.text("title", s.Title), c.list("what was counted", s.Lead), c.list("notes", s.Notes)
	s.By = c.text("groups", s.By)
	var parts []team.Part
	for _, p := range s.Parts {
		p.Title, p.Note = c.text("title", p.Title), c.text("notes", p.Note)
		p.Bars, p.Table = c.teamBars(p.Bars), c.endings(p.Table)
		parts = append(parts, p)
	}
	s.Parts = parts
	var groups []team.Group
	for _, g := range s.Groups {
		g.Label, g.Firm, g.Middle, g.Left = c.text("groups", g.Label), c.text("groups", g.Firm), c.text("groups", g.Middle), c.text("groups", g.Left)
		groups = append(groups, g)
	}
	s.Groups = groups
	return s
}

func (c *cleaner) teamBars(bars []team.Bar) []team.Bar {
	var list []team.Bar
	for _, b := range bars {
		b.Label, b.Count = c.text("bars", b.Label), c.text("bars", b.Count)
		list = append(list, b)
	}
	return list
}

func (c *cleaner) endings(table []team.Ending) []team.Ending {
	var list []team.Ending
	for _, e := range table {
		e.Label = c.text("tables", e.Label)
		list = append(list, e)
	}
	return list
}

// layTeam places everything, and says how far it is too long, in mm.
func layTeam(f faces, s team.Summary, p Paper, rows teamRows, replaced string) (*page, float64, error) {
	width, height, err := p.size()
	if err != nil {
		return nil, 0, err
	}
	brief := &report.Brief{Title: s.Title, Date: s.Day}
	pg := &page{sheet: sheet{faces: f, y: topMargin}, brief: brief, left: sideMargin, width: width - 2*sideMargin}
	pg.paragraph("title", s.Title, pg.full(), titleStyle, accent, 1)
	pg.y += 0.8
	pg.shape(fillMark, pg.left, pg.y, pg.width, 0.7, accent)
	pg.y += 2.4
	for _, l := range s.Lead {
		pg.paragraph("what was counted", l, pg.full(), bodyStyle, black, rows.lines)
	}
	pg.teamParts(s.Parts, rows)
	pg.teamGroups(s, rows.groups)
	end := pg.y
	pg.y = 0
	first := len(pg.marks)
	pg.teamFoot(s.Notes, replaced, rows.lines)
	shift := height - bottomMargin - pg.y
	for i := first; i < len(pg.marks); i++ {
		pg.marks[i].y += shift
	}
	return pg, end + 2 - shift, nil
}

// teamParts puts the parts into two columns, each part where there is more room.
func (pg *page) teamParts(parts []team.Part, rows teamRows) {
	top := pg.y + 2
	width := (pg.width - gutter) / 2
	label, count := pg.barWidths(parts)
	ends := [2]float64{top, top}
	for _, p := range parts {
		i := 0
		if ends[1] < ends[0] {
			i = 1
		}
		pg.y = ends[i]
		at := span{pg.left + float64(i)*(width+gutter), width}
		pg.paragraph("title", p.Title, at, headStyle, accent, 1)
		pg.y += 0.6
		pg.teamBars(p.Title, p.Bars[:pg.kept(p.Title, len(p.Bars), rows.bars)], at, label, count)
		pg.endings(p.Title, p.Table[:pg.kept(p.Title, len(p.Table), rows.endings)], at)
		pg.paragraph("notes", p.Note, at, smallStyle, grey, 2*rows.lines)
		ends[i] = pg.y + 2.6
	}
	pg.y = max(ends[0], ends[1])
}

// Widths in mm: the space between two columns of a part, the widest label, and the
// height of a bar.
const (
	teamGap   = 1.6
	teamLabel = 36.0
	teamBar   = 2.4
)

// barWidths are the widths of the labels and the counts of all bars on the page, so
// that they can be compared.
func (pg *page) barWidths(parts []team.Part) (label, count float64) {
	for _, p := range parts {
		for _, b := range p.Bars {
			label, count = max(label, pg.faces.width(b.Label, smallStyle)), max(count, pg.faces.width(b.Count, smallStyle))
		}
	}
	return min(label, teamLabel), min(count, teamLabel)
}

// teamBars puts one bar under the other, with its label before and its count
// behind it.
func (pg *page) teamBars(part string, bars []team.Bar, at span, label, count float64) {
	room := at.width - label - count - 2*teamGap
	for _, b := range bars {
		top := pg.y
		x := at.x + label + teamGap
		middle := top + (smallStyle.line()-teamBar)/2
		pg.shape(boxMark, x, middle, room, teamBar, grey)
		if b.Share > 0 {
			pg.shape(fillMark, x, middle, max(0.4, room*inside(b.Share)), teamBar, accent)
		}
		pg.paragraph(part, b.Count, span{x + room + teamGap, count + 0.01}, smallStyle, black, 1)
		pg.y = top
		pg.paragraph(part, b.Label, span{at.x, label + 0.1}, smallStyle, black, 2)
		pg.y = max(pg.y, top+smallStyle.line()) + 0.5
	}
}

// endingHeads are the columns of figures of a table of endings.
var endingHeads = []string{"visits", "ordered", "waiting", "lost"}

// endingWide is the width of such a column, in mm.
const endingWide = 10.5

// endings puts a table of how the visits of each group ended, with the same as a
// bar: black for orders, hatched for what is waiting, empty for what is lost.
func (pg *page) endings(part string, list []team.Ending, at span) {
	if len(list) == 0 {
		return
	}
	label := 0.0
	for _, e := range list {
		label = max(label, pg.faces.width(e.Label, smallStyle))
	}
	label = min(label, teamLabel-6)
	room := at.width - label - float64(len(endingHeads))*endingWide - teamGap
	for i, h := range endingHeads {
		pg.right(at.x+label+float64(i+1)*endingWide, h, grey)
	}
	pg.y += smallStyle.line()
	for _, e := range list {
		top := pg.y
		for i, n := range []int{e.Visits, e.Ordered, e.Waiting, e.Lost} {
			pg.right(at.x+label+float64(i+1)*endingWide, strconv.Itoa(n), black)
		}
		pg.stack(e, span{at.x + at.width - room, room}, top+(smallStyle.line()-teamBar)/2)
		pg.paragraph(part, e.Label, span{at.x, label + 0.1}, smallStyle, black, 2)
		pg.y = max(pg.y, top+smallStyle.line()) + 0.5
	}
	pg.endingKey(at)
}

// right puts a text with its end at x.
func (pg *page) right(x float64, text string, in ink) {
	pg.text(x-pg.faces.width(text, smallStyle), pg.y, text, smallStyle, in)
}

// stack draws the endings of a group one after the other; what has no outcome
// stays blank.
func (pg *page) stack(e team.Ending, at span, y float64) {
	if e.Visits <= 0 {
		return
	}
	x := at.x
	for _, part := range []struct {
		n    int
		kind markKind
		in   ink
	}{{e.Ordered, fillMark, accent}, {e.Waiting, hatchMark, black}, {e.Lost, boxMark, black}} {
		wide := at.width * inside(float64(part.n)/float64(e.Visits))
		if wide = min(wide, at.x+at.width-x); wide > 0.2 {
			pg.shape(part.kind, x, y, wide, teamBar, part.in)
			x += wide
		}
	}
}

// endingKey says what the parts of the bars stand for.
func (pg *page) endingKey(at span) {
	x := at.x
	for _, k := range []struct {
		kind markKind
		in   ink
		text string
	}{{fillMark, accent, "ordered"}, {hatchMark, black, "waiting"}, {boxMark, black, "lost"}} {
		const key = 4.0
		pg.shape(k.kind, x, pg.y+(smallStyle.line()-teamBar)/2, key, teamBar, k.in)
		pg.text(x+key+1, pg.y, k.text, smallStyle, grey)
		x += key + 4 + pg.faces.width(k.text, smallStyle)
	}
	pg.text(x, pg.y, "blank: no outcome recorded", smallStyle, grey)
	pg.y += smallStyle.line()
}

// groupColumns are the columns behind the name of a group, with their share of the
// width.
var groupColumns = []struct {
	head  string
	share float64
	text  func(team.Group) string
}{
	{"visits", 0.06, func(g team.Group) string { return strconv.Itoa(g.Visits) }},
	{"firm", 0.14, func(g team.Group) string { return g.Firm }},
	{"ordered", 0.07, func(g team.Group) string { return strconv.Itoa(g.Ordered) }},
	{"waiting", 0.07, func(g team.Group) string { return strconv.Itoa(g.Waiting) }},
	{"lost", 0.05, func(g team.Group) string { return strconv.Itoa(g.Lost) }},
	{"interview", 0.16, func(g team.Group) string { return g.Middle }},
	{"left open most", 0.27, func(g team.Group) string { return g.Left }},
}

// teamGroups puts one row for each group across the page.
func (pg *page) teamGroups(s team.Summary, most int) {
	if len(s.Groups) == 0 {
		return
	}
	const name = 0.18
	part := "by " + s.By
	pg.paragraph("title", sentence("By", s.By), pg.full(), headStyle, accent, 1)
	pg.y += 0.6
	pg.groupRow(part, "", func(i int) string { return groupColumns[i].head }, name, grey)
	for _, g := range s.Groups[:pg.kept(part, len(s.Groups), most)] {
		pg.groupRow(part, g.Label, func(i int) string { return groupColumns[i].text(g) }, name, black)
	}
}

func (pg *page) groupRow(part, first string, cell func(int) string, name float64, in ink) {
	top := pg.y
	pg.paragraph(part, first, span{pg.left, pg.width*name - teamGap}, smallBold, in, 2)
	end, x := max(pg.y, top+smallStyle.line()), pg.left+pg.width*name
	for i, c := range groupColumns {
		pg.y = top
		pg.paragraph(part, cell(i), span{x, pg.width*c.share - teamGap}, smallStyle, in, 2)
		end, x = max(end, pg.y), x+pg.width*c.share
	}
	pg.y = end + 0.5
}

// teamFoot puts how it was counted, and what was shortened or replaced.
func (pg *page) teamFoot(notes []string, replaced string, lines int) {
	pg.shape(ruleMark, pg.left, pg.y, pg.width, 0, grey)
	pg.y += 1
	for _, n := range notes {
		pg.paragraph("notes", n, pg.full(), smallStyle, grey, lines+1)
	}
	pg.y = pg.lines(pg.left, pg.y, pg.all(replaced), smallBold, black)
	if len(pg.cuts) > 0 {
		text := "Shortened to fit one page: " + strings.Join(said(pg.cuts), "; ") + ". The text form has it all."
		pg.y = pg.lines(pg.left, pg.y, pg.all(text), smallBold, black)
	}
}
