package pdf

import (
	"fmt"
	"strings"

	"cutbrief/report"
)

// page lays one brief out under given limits.
type page struct {
	sheet
	brief  *report.Brief
	limits limits
	left   float64
	width  float64
	cuts   []string // what was shortened, in words
}

// full is the column as wide as the page.
func (pg *page) full() span { return span{pg.left, pg.width} }

// span is where a column starts and how wide it is, in mm.
type span struct{ x, width float64 }

// gutter is the space between two columns, in mm.
const gutter = 7.0

// layOut places everything. It returns the page and how far it is too long, in
// mm; at most zero if it fits. The marks go where there is room for them.
func layOut(f faces, b *report.Brief, p Paper, l limits, replaced string, room []mark) (*page, float64, error) {
	width, height, err := p.size()
	if err != nil {
		return nil, 0, err
	}
	pg := &page{sheet: sheet{faces: f, y: topMargin, marks: room[:0]}, brief: b, limits: l, left: sideMargin, width: width - 2*sideMargin}
	pg.head()
	pg.banner()
	pg.need()
	pg.recommendation()
	pg.middle()
	pg.plan()
	pg.cautions()
	end := pg.y
	pg.y = 0
	first := len(pg.marks)
	pg.foot(replaced)
	shift := height - bottomMargin - pg.y
	for i := first; i < len(pg.marks); i++ {
		pg.marks[i].y += shift
	}
	return pg, end - shift, nil
}

// shortened remembers what the reader does not see.
func (pg *page) shortened(format string, a ...any) {
	text := fmt.Sprintf(format, a...)
	for _, c := range pg.cuts {
		if c == text {
			return
		}
	}
	pg.cuts = append(pg.cuts, text)
}

// wrapped breaks a text, and remembers a part that was cut.
func (pg *page) wrapped(part, text string, st style, width float64, most int) []string {
	lines, cut := pg.faces.wrap(text, st, width, most)
	if cut {
		pg.shortened("%s", part)
	}
	return lines
}

// paragraph puts a text across part of the page and moves on below it.
func (pg *page) paragraph(part, text string, at span, st style, in ink, most int) {
	pg.y = pg.lines(at.x, pg.y, pg.wrapped(part, text, st, at.width, most), st, in)
}

// heading opens a part of the page.
func (pg *page) heading(x float64, text string) {
	pg.text(x, pg.y, pg.say(text), headStyle, accent)
	pg.y += headStyle.line() + 0.6
}

// kept returns how many of n are printed, and remembers the rest.
func (pg *page) kept(part string, n, most int) int {
	if n <= most {
		return n
	}
	pg.shortened("%s (%d of %d left out)", part, n-most, n)
	return most
}

// sentence joins parts that are there.
func sentence(parts ...string) string {
	var list []string
	for _, p := range parts {
		if p != "" {
			list = append(list, p)
		}
	}
	return strings.Join(list, " ")
}
