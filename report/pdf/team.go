package pdf

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"cutbrief/report"
	"cutbrief/report/export"
	"cutbrief/rules/message"
)

// Team draws the summary of a team's visits on one page. The same summary gives the
// same bytes. Where it is too long, the longest tables lose their last rows, and
// the page says which.
func Team(s export.Summary, p Paper) ([]byte, error) {
	f, err := newFaces()
	if err != nil {
		return nil, err
	}
	pg, err := fitTeam(f, s, p)
	if err != nil {
		return nil, err
	}
	return draw([]*leaf{pg}, about{title: s.Title, date: s.Day}, p, true)
}

// teamRows is how many rows of a table are kept: at first all that a usual team has,
// at last so few that they always fit.
type teamRows struct{ groups, endings, bars, lines int }

var teamSteps = []teamRows{{60, 20, 14, 3}, {40, 14, 14, 3}, {30, 12, 14, 3}, {24, 10, 14, 2}, {18, 8, 10, 2}, {12, 8, 8, 2}, {10, 6, 6, 1}, {6, 5, 5, 1}, {4, 3, 3, 1}, {2, 2, 2, 1}, {1, 1, 1, 1}}

func fitTeam(f faces, s export.Summary, p Paper) (*leaf, error) {
	c := cleaner{faces: f}
	clean := cleaned(&c, s)
	for _, rows := range teamSteps {
		pg, over, err := layTeam(f, clean, p, rows, c.said())
		if err != nil || over <= 0 {
			return pg, err
		}
	}
	return nil, fmt.Errorf("the summary does not fit on %s", p)
}

// summary is the page of a team while it is laid out, and what was left out of it.
type summary struct {
	canvas
	cuts []string
}

// kept returns how many of n are printed, and remembers the rest.
func (pg *summary) kept(part string, n, most int) int {
	if n <= most {
		return n
	}
	pg.shortened("%s (%d of %d left out)", part, n-most, n)
	return most
}

// shortened remembers what the reader does not see.
func (pg *summary) shortened(format string, a ...any) {
	if text := fmt.Sprintf(format, a...); !slices.Contains(pg.cuts, text) {
		pg.cuts = append(pg.cuts, text)
	}
}

// put writes a text, and remembers a part that was cut.
func (pg *summary) put(part, text string, at span, st style, in ink, most int) {
	pg.cut = 0
	if pg.within(at, most, run{text, st, in}); pg.cut > 0 {
		pg.shortened("%s", part)
	}
}

// layTeam places everything, and says how far it is too long, in mm.
func layTeam(f faces, s export.Summary, p Paper, rows teamRows, replaced message.Message) (*leaf, float64, error) {
	width, height, err := p.size()
	if err != nil {
		return nil, 0, err
	}
	pg := &summary{canvas: canvas{faces: f, full: span{sideMargin, width - 2*sideMargin}, y: topMargin}}
	pg.put("title", s.Title, pg.full, titleStyle, accent, 1)
	pg.shape(fillMark, pg.full.x, pg.y+0.4, pg.full.width, 0.7, accent)
	pg.y += row
	for _, l := range s.Lead {
		pg.put("what was counted", l, pg.full, bodyStyle, black, rows.lines)
	}
	pg.teamParts(s.Parts, rows)
	pg.teamGroups(s, rows.groups)
	end := pg.y
	pg.y = 0
	first := len(pg.marks)
	pg.teamFoot(s.Notes, replaced, rows.lines)
	shift := height - bottomMargin - pg.y
	for i := first; i < len(pg.marks); i++ {
		pg.marks[i] = pg.marks[i].moved(0, shift, 1)
	}
	return &leaf{marks: pg.marks, cuts: pg.cuts}, end + row - shift, nil
}

// teamParts puts the parts into two columns, each part where there is more room.
func (pg *summary) teamParts(parts []export.Part, rows teamRows) {
	top := pg.y + 2
	width := (pg.full.width - gutter) / 2
	label, count := pg.barWidths(parts)
	ends := [2]float64{top, top}
	for _, p := range parts {
		i := 0
		if ends[1] < ends[0] {
			i = 1
		}
		pg.y = ends[i]
		at := span{pg.full.x + float64(i)*(width+gutter), width}
		pg.put("title", p.Title, at, headStyle, accent, 1)
		pg.y += 0.6
		pg.teamBars(p.Title, p.Bars[:pg.kept(p.Title, len(p.Bars), rows.bars)], at, label, count)
		pg.endings(p.Title, p.Table[:pg.kept(p.Title, len(p.Table), rows.endings)], at)
		pg.put("notes", p.Note, at, smallStyle, grey, 2*rows.lines)
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
func (pg *summary) barWidths(parts []export.Part) (label, count float64) {
	for _, p := range parts {
		for _, b := range p.Bars {
			label, count = max(label, pg.faces.width(b.Label, smallStyle)), max(count, pg.faces.width(b.Count, smallStyle))
		}
	}
	return min(label, teamLabel), min(count, teamLabel)
}

// teamBars puts one bar under the other, with its label before and its count
// behind it.
func (pg *summary) teamBars(part string, bars []export.Bar, at span, label, count float64) {
	room := at.width - label - count - 2*teamGap
	for _, b := range bars {
		top := pg.y
		x := at.x + label + teamGap
		middle := top + (smallStyle.line()-teamBar)/2
		pg.shape(boxMark, x, middle, room, teamBar, grey)
		if b.Share > 0 {
			pg.shape(fillMark, x, middle, max(0.4, room*report.AxisShare(b.Share)), teamBar, accent)
		}
		pg.put(part, b.Count, span{x + room + teamGap, count + 0.01}, smallStyle, black, 1)
		pg.y = top
		pg.put(part, b.Label, span{at.x, label + 0.1}, smallStyle, black, 2)
		pg.y = max(pg.y, top+smallStyle.line()) + 0.5
	}
}

// endingHeads are the columns of figures of a table of endings.
var endingHeads = []string{"visits", "ordered", "waiting", "lost"}

// endingWide is the width of such a column, in mm.
const endingWide = 10.5

// endings puts a table of how the visits of each group ended, with the same as a
// bar: black for orders, hatched for what is waiting, empty for what is lost.
func (pg *summary) endings(part string, list []export.Ending, at span) {
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
		pg.right(at.x+label+float64(i+1)*endingWide, h, smallStyle, grey)
	}
	pg.y += smallStyle.line()
	for _, e := range list {
		top := pg.y
		for i, n := range []int{e.Visits, e.Ordered, e.Waiting, e.Lost} {
			pg.right(at.x+label+float64(i+1)*endingWide, strconv.Itoa(n), smallStyle, black)
		}
		pg.stack(e, span{at.x + at.width - room, room}, top+(smallStyle.line()-teamBar)/2)
		pg.put(part, e.Label, span{at.x, label + 0.1}, smallStyle, black, 2)
		pg.y = max(pg.y, top+smallStyle.line()) + 0.5
	}
	pg.endingKey(at)
}

// stack draws the endings of a group one after the other; what has no outcome
// stays blank.
func (pg *summary) stack(e export.Ending, at span, y float64) {
	if e.Visits <= 0 {
		return
	}
	x := at.x
	for _, part := range []struct {
		n    int
		kind markKind
		in   ink
	}{{e.Ordered, fillMark, accent}, {e.Waiting, hatchMark, black}, {e.Lost, boxMark, black}} {
		wide := at.width * report.AxisShare(float64(part.n)/float64(e.Visits))
		if wide = min(wide, at.x+at.width-x); wide > 0.2 {
			pg.shape(part.kind, x, y, wide, teamBar, part.in)
			x += wide
		}
	}
}

// endingKey says what the parts of the bars stand for.
func (pg *summary) endingKey(at span) {
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
	text  func(export.Group) string
}{
	{"visits", 0.06, func(g export.Group) string { return strconv.Itoa(g.Visits) }},
	{"firm", 0.14, func(g export.Group) string { return g.Firm }},
	{"ordered", 0.07, func(g export.Group) string { return strconv.Itoa(g.Ordered) }},
	{"waiting", 0.07, func(g export.Group) string { return strconv.Itoa(g.Waiting) }},
	{"lost", 0.05, func(g export.Group) string { return strconv.Itoa(g.Lost) }},
	{"interview", 0.16, func(g export.Group) string { return g.Middle }},
	{"left open most", 0.27, func(g export.Group) string { return g.Left }},
}

// teamGroups puts one row for each group across the page.
func (pg *summary) teamGroups(s export.Summary, most int) {
	if len(s.Groups) == 0 {
		return
	}
	const name = 0.18
	part := "by " + s.By
	pg.put("title", joined(" ", "By", s.By), pg.full, headStyle, accent, 1)
	pg.y += 0.6
	pg.groupRow(part, "", func(i int) string { return groupColumns[i].head }, name, grey)
	for _, g := range s.Groups[:pg.kept(part, len(s.Groups), most)] {
		pg.groupRow(part, g.Label, func(i int) string { return groupColumns[i].text(g) }, name, black)
	}
}

func (pg *summary) groupRow(part, first string, cell func(int) string, name float64, in ink) {
	top := pg.y
	pg.put(part, first, span{pg.full.x, pg.full.width*name - teamGap}, smallBold, in, 2)
	end, x := max(pg.y, top+smallStyle.line()), pg.full.x+pg.full.width*name
	for i, c := range groupColumns {
		pg.y = top
		pg.put(part, cell(i), span{x, pg.full.width*c.share - teamGap}, smallStyle, in, 2)
		end, x = max(end, pg.y), x+pg.full.width*c.share
	}
	pg.y = end + 0.5
}

// teamFoot puts how it was counted, and what was shortened or replaced.
func (pg *summary) teamFoot(notes []string, replaced message.Message, lines int) {
	pg.shape(ruleMark, pg.full.x, pg.y, pg.full.width, 0, grey)
	pg.y += 1
	for _, n := range notes {
		pg.put("notes", n, pg.full, smallStyle, grey, lines+1)
	}
	pg.within(pg.full, all, run{pg.words.Print(replaced), smallBold, black})
	if len(pg.cuts) > 0 {
		text := "Shortened to fit one page: " + strings.Join(said(pg.cuts), "; ") + ". The text form has it all."
		pg.within(pg.full, all, run{text, smallBold, black})
	}
}

// said leaves out the bare name of a part whose count of things left out is
// said too.
func said(cuts []string) []string {
	counted := func(c string) bool {
		return slices.ContainsFunc(cuts, func(other string) bool { return strings.HasPrefix(other, c+" (") })
	}
	return slices.DeleteFunc(slices.Clone(cuts), counted)
}
