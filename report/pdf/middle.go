package pdf

import (
	"cutbrief/report"
	"cutbrief/rules"
)

// middle puts the parts that need half a page's width in two columns: need
// against capability first, then speed by thickness, what it costs, what
// decides, what is to be confirmed, the systems not taken and the notes, each
// in the column that is shorter.
func (pg *page) middle() {
	half := (pg.width - gutter) / 2
	at := [2]span{{pg.left, half}, {pg.left + half + gutter, half}}
	below := [2]float64{pg.y, pg.y}
	for _, part := range []func(span) bool{pg.bars, pg.speedsIfRoom, pg.cost, pg.critical, pg.confirm, pg.excluded, pg.notes} {
		column := 0
		if below[1] < below[0] {
			column = 1
		}
		pg.y = below[column]
		if part(at[column]) {
			below[column] = pg.y + pg.limits.gap
		}
	}
	pg.y = max(below[0], below[1])
}

// Widths and heights of the bars, in mm.
const (
	barHeight = 2.1
	barLabel  = 28.5
	barFigure = 29.0
	barWidest = 38.0 // of a figure that is longer than the usual
)

// bars puts one pair of bars per need: hatched for what is needed, solid for
// what is given, each with its number.
func (pg *page) bars(at span) bool {
	if len(pg.brief.Bars) == 0 {
		return false
	}
	pg.heading(at.x, "Needed and given")
	n := pg.kept("needed and given", len(pg.brief.Bars), pg.limits.bars)
	figure := barFigure
	for _, b := range pg.brief.Bars {
		figure = max(figure, pg.faces.width(b.Need, bodyStyle)+2, pg.faces.width(b.Have, bodyStyle)+2)
	}
	figure = min(figure, barWidest)
	for _, b := range telling(pg.brief.Bars, n, pg.say(string(rules.Met))) {
		pg.bar(b, at, figure)
	}
	return true
}

// telling picks n bars, in their order: those not met before those whose verdict
// is the word for met.
func telling(bars []report.Bar, n int, word string) []report.Bar {
	pick := make([]bool, len(bars))
	for _, met := range []bool{false, true} {
		for i, b := range bars {
			if n > 0 && !pick[i] && (b.Verdict == word) == met {
				pick[i] = true
				n--
			}
		}
	}
	var list []report.Bar
	for i, b := range bars {
		if pick[i] {
			list = append(list, b)
		}
	}
	return list
}

func (pg *page) bar(b report.Bar, at span, figure float64) {
	const part, step = "needed and given", 3.35
	x, y := at.x+barLabel, pg.y
	room := at.width - barLabel - figure
	figures := span{x + room + 1.5, figure - 1.5}
	pg.paragraph(part, b.Label, span{at.x, barLabel - 1}, strongStyle, black, 1)
	pg.y = y + step
	verdict := smallStyle
	verdict.bold = b.Verdict != pg.say(string(rules.Met))
	pg.paragraph(part, b.Verdict, span{at.x, barLabel - 1}, verdict, black, 1)
	pg.shape(hatchMark, x, y+0.6, room*share(b.NeedShare), barHeight, black)
	pg.shape(fillMark, x, y+step+0.5, room*share(b.HaveShare), barHeight, accent)
	pg.y = y
	pg.paragraph(part, b.Need, figures, bodyStyle, black, 1)
	pg.y = y + step
	pg.paragraph(part, b.Have, figures, bodyStyle, black, 1)
	pg.y = y + 2*step + 0.7
}

// share keeps a bar visible and inside its room.
func share(v float64) float64 {
	if !(v > 0.01) {
		return 0.01
	}
	return min(v, 1)
}

// critical puts what decides, why, and how the demonstration shows it.
func (pg *page) critical(at span) bool {
	b := pg.brief
	if b.Critical == "" {
		return false
	}
	pg.heading(at.x, "What decides")
	pg.paragraph("what decides", b.Critical, at, strongStyle, black, max(2, pg.limits.long))
	pg.y += 0.5
	for _, e := range b.Evidence[:pg.kept("evidence", len(b.Evidence), pg.limits.evidence)] {
		pg.bullet("evidence", e.Value, at, bodyStyle, pg.limits.long)
	}
	if b.ShownBy != "" {
		pg.y += 0.3
		pg.paragraph("what decides", b.ShownBy, at, bodyStyle, grey, max(2, pg.limits.long))
	}
	return true
}
