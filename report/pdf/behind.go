package pdf

import (
	"cutbrief/report"
	"cutbrief/report/page"
	"cutbrief/rules/message"
)

// behind lays out what is printed behind the page on demand: the checklists, the
// pictures, the representative's sheet and the working. Nothing is cut there;
// what does not fit a sheet goes on on the next.
func behind(f faces, b *report.Brief, p Paper) ([]*leaf, error) {
	width, height, err := p.size()
	if err != nil {
		return nil, err
	}
	w := &writer{canvas: canvas{faces: f, words: b.Words, brief: b, full: span{sideMargin, width - 2*sideMargin}}, bottom: height - bottomMargin}
	if b.Private {
		w.private()
	}
	if len(b.Leaving)+len(b.OnSite) > 0 {
		w.turn()
		w.ticks("Before leaving", b.Leaving)
		w.ticks("At the site, before the first arc", b.OnSite)
	}
	w.pictures()
	if len(b.Working) > 0 {
		if b.Private {
			w.note = w.say(page.Private)
		}
		w.turn()
		w.title("Working", "How each number on the page was reached, and its source.")
		for _, r := range b.Working {
			w.reason(r)
		}
	}
	w.end()
	return w.leaves, nil
}

// writer fills sheets from top to bottom.
type writer struct {
	canvas
	bottom float64
	leaves []*leaf
	note   string // said at the head of every sheet, "" for nothing
}

// turn begins a new sheet, which says whose it is.
func (w *writer) turn() {
	w.end()
	w.y, w.marks = topMargin, []mark{}
	whose := w.brief.Title
	if len(w.brief.Who) > 0 {
		whose += " · " + w.brief.Who[0].Value
	}
	if w.brief.Demo != "" {
		whose += " · " + w.brief.Demo
	}
	w.paragraph(w.full, 3, plainly(whose, smallStyle, grey)...)
	w.shape(ruleMark, w.full.x, w.y, w.full.width, 0, grey)
	w.y += row
	w.paragraph(w.full, 1, plainly(w.note, strongStyle, black)...)
}

// end closes the sheet.
func (w *writer) end() {
	if w.marks != nil {
		w.leaves = append(w.leaves, &leaf{title: w.brief.Title, marks: w.marks})
		w.marks = nil
	}
}

// room turns the sheet where fewer than so many mm are left.
func (w *writer) room(mm float64) {
	if w.y+mm > w.bottom {
		w.turn()
	}
}

// title opens a part, with a remark in small type. It is not left alone at the
// foot of a sheet.
func (w *writer) title(text, remark message.ID) {
	const below = 4 // lines that stay with it
	w.room(headlineStyle.line() + below*bodyStyle.line())
	w.paragraph(w.full, all, plainly(w.say(text), headlineStyle, accent)...)
	if remark != "" {
		w.put("", w.say(remark), 0, smallStyle, grey)
	}
	w.y += row / 2
}

// put writes a text behind a first mark, line by line, turning the sheet where
// it is full.
func (w *writer) put(first, text string, indent float64, st style, in ink) {
	w.runs(first, indent, run{text, st, in})
}

func (w *writer) runs(first string, indent float64, runs ...run) {
	at := w.full.indented(indent)
	lines, _ := w.faces.flow(runs, at.width, all)
	for i, l := range lines {
		w.room(bodyStyle.line())
		if i == 0 && first != "" {
			w.text(at.x-3, w.y, first, runs[0].style, grey)
		}
		w.line(at.x, l)
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
	at := w.full.indented(indent)
	for _, l := range lines {
		rows, _ := w.faces.flow(plainly(warned(l), bodyStyle, black), at.width, all)
		w.room(float64(len(rows)) * bodyStyle.line())
		w.shape(boxMark, w.full.x, w.y+0.3, side, side, black)
		for _, r := range rows {
			w.line(at.x, r)
		}
		w.y += row / 2
	}
	w.y += row
}

// warned is a caution with its source; common practice is said once, above.
func warned(l report.Line) string {
	if l.Source == "" || l.Source == l.Trust {
		return l.Value
	}
	return l.Value + " [" + l.Source + "]"
}

// reason puts one topic of the derivation with its parts.
func (w *writer) reason(r report.Reason) {
	const head = 3 // lines that stay together
	w.room(head * bodyStyle.line())
	w.put("", sentence(": ", r.Title, r.Value), 0, strongStyle, black)
	const indent = 4
	for _, part := range []struct {
		words message.ID
		text  string
		ink   ink
	}{{"Rule: {1}", r.Formula, black}, {"Here: {1}", r.Numbers, black}, {"Rests on: {1}", restsOn(r), grey}} {
		if part.text != "" {
			w.put("", w.say(part.words, message.Name(part.text)), indent, smallStyle, part.ink)
		}
	}
	for _, part := range r.Parts {
		text := joined(sentence(": ", part.Title, part.Value), part.Numbers)
		if rests := restsOn(part); rests != "" {
			text += " [" + rests + "]"
		}
		w.put("•", text, indent+3, smallStyle, black)
	}
	w.y += row / 2
}

// restsOn is the source, or where there is none the kind of trust.
func restsOn(r report.Reason) string {
	if r.Source == "" {
		return r.Trust
	}
	return r.Source
}

// pictures put what people would rather look at than read on a sheet of its
// own: need against capability, speed and cost by thickness, and the
// demonstration in minutes, as large as there is room for.
func (w *writer) pictures() {
	b := w.brief
	if !b.Pictures || len(b.Bars) == 0 && !hasSpeeds(b.Speeds) && !drawable(b.Cost) && !hasTimeline(b.Timeline) {
		return
	}
	w.turn()
	w.title("In pictures", "The same figures as on the page.")
	left, right := w.full.halves(0.5)
	top := w.y
	if len(b.Bars) > 0 {
		w.heading(left, w.say(page.Given))
		bars, from, first := b.Bars[:min(len(b.Bars), mostBars)], w.y, len(w.marks)
		if w.unmet(left, bars, all); w.y > w.bottom {
			w.y, w.marks = from, w.marks[:first]
			w.unmet(left, bars, 1)
		}
	}
	below := w.y
	w.y = top
	if hasSpeeds(b.Speeds) {
		w.speeds(b.Speeds, right, sheetPlot)
		w.y += 2 * row
	}
	if drawable(b.Cost) {
		w.curves(b.Cost.Curves, right, sheetPlot)
		w.y += 2 * row
	}
	if w.y = max(w.y, below) + 2*row; hasTimeline(b.Timeline) {
		w.stretches(b.Timeline)
	}
}

// mostBars is more pairs of bars than there are rules that compare two numbers,
// and no more than a sheet holds.
const mostBars = 30

// stretches draws the demonstration in minutes, and lists below what each
// stretch is.
func (w *writer) stretches(t *report.Timeline) {
	w.room(headStyle.line() + timeHigh + 5*smallStyle.line())
	w.paragraph(w.full, 1, plainly(t.Title, headStyle, accent)...)
	w.timeline(t, w.full)
	for _, s := range t.Steps {
		mark := "•"
		if s.Number > 0 {
			mark = digits(s.Number)
		}
		w.put(mark, sentence(": ", s.When, s.Name), 4.5, smallStyle, black)
	}
	w.put("", joined(t.Says, t.Rests), 0, smallStyle, grey)
}
