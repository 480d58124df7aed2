package pdf

import (
	"strings"

	"cutbrief/report"
	"cutbrief/rules/message"
)

// sheetStep is the grid of the sheets behind the page, in mm: there is much on
// them, in two columns, and nobody reads them at arm's length.
const sheetStep = 1.55

// noteStyle is the type of the representative's notes.
var noteStyle, noteBold = style{false, 8}, style{true, 8}

// behind lays out what is printed behind the page on demand: the checklists, and
// the representative's notes, the pictures and the working, which follow on each
// other. Nothing is cut there; what does not fit a sheet goes on on the next.
func behind(f faces, b *report.Brief, p Paper) ([]*leaf, error) {
	width, height, err := p.size()
	if err != nil {
		return nil, err
	}
	w := &writer{canvas: canvas{faces: f, words: b.Words, brief: b, full: span{sideMargin, width - 2*sideMargin}}}
	w.bottom = (height - topMargin - bottomMargin) * row / sheetStep
	if len(b.Leaving)+len(b.OnSite) > 0 {
		w.turn()
		w.ticks("Before leaving", b.Leaving)
		w.ticks("At the site, before the first arc", b.OnSite)
		w.end()
	}
	if b.Private {
		w.note = w.say(report.PagePrivate)
		w.private()
	}
	w.pictures()
	if len(b.Working) > 0 {
		w.title("Working", "How each number on the page was reached, and its source.")
		for _, r := range b.Working {
			if !b.Private || r.Title != w.say(report.PageNotTaken) { // the notes have it
				w.reason(r)
			}
		}
	}
	w.end()
	return w.leaves, nil
}

// writer fills sheets from top to bottom, in two columns.
type writer struct {
	canvas
	at          span // the column
	top, bottom float64
	leaves      []*leaf
	note        string // said at the head of every sheet, "" for nothing
}

// turn begins a new sheet, which says whose it is.
func (w *writer) turn() {
	w.end()
	w.y, w.marks = 0, []mark{}
	whose := w.brief.Title
	if len(w.brief.Who) > 0 {
		whose += " · " + w.brief.Who[0].Value
	}
	w.within(w.full, 3, run{joined(" · ", whose, w.brief.Demo), smallStyle, grey})
	w.shape(ruleMark, w.full.x, w.y, w.full.width, 0, grey)
	w.y += row
	w.within(w.full, 1, run{w.note, strongStyle, black})
	w.at, _ = w.full.halves(0.5)
	w.top = w.y
}

// end closes the sheet.
func (w *writer) end() {
	if w.marks == nil {
		return
	}
	on := w.fresh()
	on.copied(&w.canvas, 0, topMargin, sheetStep/row)
	w.leaves, w.marks = append(w.leaves, &leaf{marks: on.marks}), nil
}

// room begins the next column, or sheet, where there is none or fewer than so
// many mm are left. Much more than a column has is given what there is.
func (w *writer) room(mm float64) {
	left, right := w.full.halves(0.5)
	switch {
	case w.marks == nil:
		w.turn()
	case w.y+mm <= w.bottom || w.y == w.top && w.at == left:
	case w.at == left:
		w.at, w.y = right, w.top
	default:
		w.turn()
	}
}

// title opens a part, with a remark in small type. It is not left alone at the
// foot of a column.
func (w *writer) title(text, remark message.ID) {
	const below = 4 // lines that stay with it
	w.room(headlineStyle.line() + below*bodyStyle.line())
	w.runs("", 0, run{w.say(text), headlineStyle, accent})
	if remark != "" {
		w.runs("", 0, run{w.say(remark), smallStyle, grey})
	}
	w.y += row / 2
}

// opened opens a list below a heading, which is not left alone either.
func (w *writer) opened(title string) {
	w.y += row / 2
	w.room(headStyle.line() + 2*bodyStyle.line())
	w.heading(w.at, title)
}

// runs writes a paragraph behind a first mark, line by line, in the next column
// where this one is full.
func (w *writer) runs(first string, indent float64, runs ...run) {
	lines, _ := w.faces.flow(runs, w.full.width/2-gutter/2-indent, all)
	for i, l := range lines {
		w.room(l[0].style.line())
		if i == 0 && first != "" {
			w.text(w.at.x+indent-3, w.y, first, runs[0].style, grey)
		}
		w.line(w.at.x+indent, l)
	}
}

// ticks puts a list with a box before each line. A line is not parted from its
// box or its source.
func (w *writer) ticks(title message.ID, lines []report.Line) {
	if len(lines) == 0 {
		return
	}
	const indent, side = 5.5, 2.9
	w.title(title, "Sources in brackets; without one it is common practice. The manual, local codes and the permit come before this list.")
	for _, l := range lines {
		text := l.Value
		if l.Source != "" && l.Source != l.Trust { // common practice is said once, above
			text += " [" + l.Source + "]"
		}
		said := run{text, bodyStyle, black}
		rows, _ := w.faces.flow([]run{said}, w.at.width-indent, all)
		w.room(float64(len(rows)) * bodyStyle.line())
		w.shape(boxMark, w.at.x, w.y+0.3, side, side, black)
		w.runs("", indent, said)
		w.y += row / 2
	}
	w.y += row
}

// private are the notes for the representative: what decides and the evidence,
// what may be said against it, what is assumed, what to bring and how to show
// it, and all that a page leaves out and the working does not hold.
func (w *writer) private() {
	b := w.brief
	w.title(report.PageSheet, "")
	w.lines(report.PageDecides, append([]report.Line{{Value: b.Critical}, {Value: b.ShownBy}}, b.Evidence...))
	w.lines(report.PageObjections, b.Objections)
	if len(b.Objections) > 0 {
		w.runs("", 0, run{w.say(report.PageAnswers), smallStyle, grey})
	}
	open := b.Confirm
	for _, f := range b.Flags {
		open = append(open[:len(open):len(open)], report.Line{Value: f})
	}
	w.lines(report.PageAssumptions, open)
	if b.Bring != "" {
		w.lines(report.PagePacking, append([]report.Line{{Value: b.Bring}}, asLines(b.PlanNote)...))
	}
	w.steps(b.Plan)
	w.lines(report.PageLeftOut, b.LeftOut)
	w.lines("Demonstrations held, and results", b.Shown)
	if len(b.Working) == 0 {
		if b.Cost != nil {
			w.lines(report.PageCosts, asLines(b.Cost.Lines))
		}
		var bars []report.Line
		for _, x := range b.Bars {
			bars = append(bars, report.Line{Label: x.Label, Value: x.Need + ", " + x.Have + ": " + x.Verdict, Why: x.Why, Source: x.Source, Trust: x.Trust})
		}
		w.lines(report.PageGiven, bars)
	}
	w.lines(report.PageNotTaken, b.Excluded)
	w.lines(report.PageNotes, asLines(b.Notes))
}

func asLines(texts []string) []report.Line {
	var list []report.Line
	for _, t := range texts {
		list = append(list, report.Line{Value: t})
	}
	return list
}

// lines put facts under a heading, each with why and its source.
func (w *writer) lines(title message.ID, lines []report.Line) {
	if len(lines) == 0 {
		return
	}
	w.opened(w.say(title))
	for _, l := range lines {
		if l.Label+l.Value+l.Why == "" {
			continue
		}
		var runs []run
		if l.Label != "" {
			label := l.Label
			if !strings.HasSuffix(label, "”") && !strings.HasSuffix(label, "“") { // what they say
				label += ":"
			}
			runs = append(runs, run{label, noteBold, black})
		}
		runs = append(runs, run{joined(" – ", l.Value, l.Why), noteStyle, black})
		if rests := restsOn(report.Reason{Source: l.Source, Trust: l.Trust}); rests != "" {
			runs = append(runs, run{"[" + rests + "]", smallStyle, grey})
		}
		w.runs("•", 3.4, runs...)
	}
}

// steps are the cuts with their settings, why they are in the plan and how they
// fail.
func (w *writer) steps(cuts []report.Row) {
	if len(cuts) == 0 {
		return
	}
	w.opened(w.say(report.PageSteps))
	for i, r := range cuts {
		w.runs(digits(i+1), 4.2, run{r.Cut, noteBold, black}, run{joined("; ", r.Piece, r.Setting, r.Takes), noteStyle, black},
			run{joined(" – ", r.See, r.Because), noteStyle, black}, run{r.Beware, smallStyle, grey})
	}
}

// reason puts one topic of the derivation with its parts.
func (w *writer) reason(r report.Reason) {
	const head = 3 // lines that stay together
	w.room(head * bodyStyle.line())
	w.runs("", 0, run{joined(": ", r.Title, r.Value), noteBold, black})
	var runs []run
	for _, part := range []struct {
		words message.ID
		text  string
		ink   ink
	}{{"Rule: {1}", r.Formula, black}, {"Here: {1}", r.Numbers, black}, {"Rests on: {1}", restsOn(r), grey}} {
		if part.text != "" {
			runs = append(runs, run{w.say(part.words, message.Name(part.text)), smallStyle, part.ink})
		}
	}
	for _, part := range r.Parts {
		text := "•\u00a0" + joined(" ", joined(": ", part.Title, part.Value), part.Numbers)
		if rests := restsOn(part); rests != "" {
			text += " [" + rests + "]"
		}
		runs = append(runs, run{text, smallStyle, black})
	}
	w.runs("", 3, runs...)
	w.y += row / 2
}

// restsOn is the source, or where there is none the kind of trust.
func restsOn(r report.Reason) string {
	if r.Source == "" {
		return r.Trust
	}
	return r.Source
}

// pictures put what people would rather look at than read: need against
// capability, where the notes do not give it in words, speed and cost by
// thickness, and the demonstration in minutes.
func (w *writer) pictures() {
	b := w.brief
	cost, speeds := report.CostPicture(b.Cost), report.SpeedPicture(b.Speeds)
	if !b.Pictures || len(b.Bars) == 0 && speeds == nil && cost == nil && !hasTimeline(b.Timeline) {
		return
	}
	w.title("In pictures", "The same figures as on the page.")
	if !b.Private && len(b.Bars) > 0 {
		w.opened(w.say(report.PageGiven))
		for _, bar := range b.Bars {
			w.whole(func(c *canvas, at span) { c.unmet(at, []report.Bar{bar}) })
		}
	}
	for _, of := range []*report.Picture{speeds, cost} {
		if of != nil {
			w.whole(func(c *canvas, at span) { c.picture(of, at, sheetPlot) })
			w.y += row
		}
	}
	if hasTimeline(b.Timeline) {
		w.stretches(b.Timeline)
	}
	w.y += row
}

// whole draws what stays together where there is room for it.
func (w *writer) whole(draw func(*canvas, span)) {
	on := w.fresh()
	draw(on, span{0, w.full.width/2 - gutter/2})
	w.room(on.y)
	w.copied(on, w.at.x, w.y, 1)
	w.y += on.y
}

// stretches draws the demonstration in minutes, and says below what each
// stretch is.
func (w *writer) stretches(t *report.Timeline) {
	w.whole(func(c *canvas, at span) {
		c.within(at, 2, run{t.Title, headStyle, accent})
		c.timeline(t, at)
	})
	for _, s := range t.Steps {
		mark := "•"
		if s.Number > 0 {
			mark = digits(s.Number)
		}
		w.runs(mark, 4.5, run{joined(": ", s.When, s.Name), smallStyle, black})
	}
	w.runs("", 0, run{joined(" ", t.Says, t.Rests), smallStyle, grey})
}
