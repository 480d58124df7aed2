package pdf

import (
	"strconv"

	"cutbrief/report"
	"cutbrief/rules"
)

func digits(n int) string { return strconv.Itoa(n) }

// confirm puts what is assumed or open, each with a box to tick.
func (pg *page) confirm(at span) bool {
	b := pg.brief
	lines := b.Confirm
	for _, f := range b.Flags {
		lines = append(lines[:len(lines):len(lines)], report.Line{Why: f})
	}
	if len(lines) == 0 {
		return false
	}
	pg.heading(at.x, confirmTitle(b.Outcome))
	for _, l := range lines[:pg.kept("to confirm", len(lines), pg.limits.confirm)] {
		pg.tick(l, at)
	}
	return true
}

// confirmTitle does not speak of an order where there is nothing to order.
func confirmTitle(outcome string) string {
	if rules.Outcome(outcome) == rules.Recommended {
		return "To confirm before ordering"
	}
	return "Still open"
}

// tick puts one thing to confirm behind its box: what, how it stands, and why
// it matters.
func (pg *page) tick(l report.Line, at span) {
	const indent, box = 3.6, 2.1
	in := span{at.x + indent, at.width - indent}
	pg.shape(boxMark, at.x, pg.y+0.7, box, box, black)
	label := l.Label
	if l.Value != "" {
		label += ": " + l.Value
	}
	if label != "" {
		pg.paragraph("to confirm", label, in, strongStyle, black, 2)
	}
	pg.paragraph("to confirm", l.Why, in, bodyStyle, black, pg.limits.long)
	pg.y += 0.5
}

// excluded puts the systems not taken, each with its reason.
func (pg *page) excluded(at span) bool {
	n := pg.kept("systems not taken", len(pg.brief.Excluded), pg.limits.excluded)
	if n == 0 {
		return false
	}
	pg.heading(at.x, "Not taken, and why")
	for _, l := range pg.brief.Excluded[:n] {
		pg.bullet("systems not taken", sentence(l.Label+":", l.Why), at, smallStyle, 2)
	}
	return true
}

// notes puts the customer's words and the rep's notes.
func (pg *page) notes(at span) bool {
	n := pg.kept("notes", len(pg.brief.Notes), pg.limits.notes)
	if n == 0 {
		return false
	}
	pg.heading(at.x, "Notes")
	for _, t := range pg.brief.Notes[:n] {
		pg.paragraph("notes", t, at, smallStyle, black, 2)
	}
	return true
}
