package pdf

import (
	"slices"
	"strings"
)

// foot puts what the figures rest on, what was shortened or replaced, and the
// lines for both signatures. It starts at y and is moved to the bottom later.
func (pg *page) foot(replaced string) {
	b := pg.brief
	pg.shape(ruleMark, pg.left, pg.y, pg.width, 0, grey)
	pg.y += 1
	n := pg.kept("what the figures rest on", len(b.Footing), pg.limits.footing)
	for _, t := range b.Footing[:n] {
		pg.paragraph("what the figures rest on", t, pg.full(), smallStyle, grey, 2)
	}
	for _, t := range b.Dropped[:pg.kept("what could not be shown", len(b.Dropped), 2)] {
		pg.paragraph("what could not be shown", t, pg.full(), smallBold, black, 2)
	}
	pg.y = pg.lines(pg.left, pg.y, pg.all(pg.say(replaced)), smallBold, black)
	if len(pg.cuts) > 0 {
		text := "Shortened to fit one page: " + strings.Join(said(pg.cuts), "; ") + ". The text form has it all."
		pg.y = pg.lines(pg.left, pg.y, pg.all(pg.say(text)), smallBold, black)
	}
	pg.signatures()
}

// said leaves out the bare name of a part whose count of things left out is
// said too.
func said(cuts []string) []string {
	var list []string
	for _, c := range cuts {
		counted := func(other string) bool { return strings.HasPrefix(other, c+" (") }
		if !slices.ContainsFunc(cuts, counted) {
			list = append(list, c)
		}
	}
	return list
}

// all breaks a text that is never cut.
func (pg *page) all(text string) []string {
	lines, _ := pg.faces.wrap(text, smallBold, pg.width, 99)
	return lines
}

// signatures puts a line for the customer and one for the representative.
func (pg *page) signatures() {
	const room = 7.5 // to write in
	pg.y += room
	width := (pg.width - gutter) / 2
	for i, who := range []string{"Customer", "Representative"} {
		x := pg.left + float64(i)*(width+gutter)
		pg.shape(ruleMark, x, pg.y, width*0.68, 0, black)
		pg.text(x, pg.y+0.4, pg.say(who), smallStyle, grey)
		pg.shape(ruleMark, x+width*0.72, pg.y, width*0.28, 0, black)
		pg.text(x+width*0.72, pg.y+0.4, pg.say("Date"), smallStyle, grey)
	}
	pg.y += 0.4 + smallStyle.line()
}
