package pdf

import (
	"cutbrief/report"
	"cutbrief/rules/message"
)

// more lays out what is printed behind the page on demand: the checklists, the
// pictures and the working. Nothing is cut there; what does not fit a sheet goes on on the
// next.
func more(f faces, b *report.Brief, p Paper) ([]*page, error) {
	width, height, err := p.size()
	if err != nil {
		return nil, err
	}
	w := &writer{faces: f, brief: b, width: width - 2*sideMargin, bottom: height - bottomMargin}
	if len(b.Leaving)+len(b.OnSite) > 0 {
		w.turn()
		w.ticks("Before leaving", b.Leaving)
		w.ticks("At the site, before the first arc", b.OnSite)
	}
	w.pictures()
	if len(b.Working) > 0 {
		w.turn()
		w.title("Working", "How each number on the page was reached, and what it rests on.")
		for _, r := range b.Working {
			w.reason(r)
		}
	}
	return w.pages, nil
}

// writer fills sheets from top to bottom.
type writer struct {
	faces  faces
	brief  *report.Brief
	width  float64
	bottom float64
	pages  []*page
	on     *page // the sheet being filled
}

// most is more lines than any text that has passed the gate needs.
const most = 400

// turn begins a new sheet, which says whose it is.
func (w *writer) turn() {
	w.on = &page{sheet: sheet{faces: w.faces, y: topMargin}, brief: w.brief, left: sideMargin, width: w.width}
	w.pages = append(w.pages, w.on)
	whose := w.brief.Title
	if len(w.brief.Who) > 0 {
		whose += " · " + w.brief.Who[0].Value
	}
	if w.brief.Demo != "" {
		whose += " · " + w.brief.Demo
	}
	w.on.paragraph("title", whose, w.on.full(), smallStyle, grey, 1)
	w.on.shape(ruleMark, w.on.left, w.on.y, w.width, 0, grey)
	w.on.y += 2.4
}

// title opens a part, with a remark in small type. It is not left alone at the
// foot of a sheet.
func (w *writer) title(text, remark string) {
	const below = 4 // lines that stay with it
	if w.on.y+headlineStyle.line()+below*bodyStyle.line() > w.bottom {
		w.turn()
	}
	w.on.text(w.on.left, w.on.y, w.on.say(text), headlineStyle, accent)
	w.on.y += headlineStyle.line() + 0.4
	w.put("", w.on.say(remark), 0, smallStyle, grey)
	w.on.y += 1.4
}

// put writes a text behind a first mark, line by line, turning the sheet where
// it is full.
func (w *writer) put(first, text string, indent float64, st style, in ink) {
	for i, l := range w.on.wrapped("working", text, st, w.width-indent, most) {
		if w.on.y+st.line() > w.bottom {
			w.turn()
		}
		if i == 0 && first != "" {
			w.on.text(w.on.left+indent-3, w.on.y, first, st, grey)
		}
		w.on.text(w.on.left+indent, w.on.y, l, st, in)
		w.on.y += st.line()
	}
}

// ticks puts a list with a box before each line. A line is not parted from its
// box or its source.
func (w *writer) ticks(title string, lines []report.Line) {
	if len(lines) == 0 {
		return
	}
	const indent, side = 5.5, 2.9
	w.title(title, "Sources in brackets; without one it is common practice. The manual, local codes and the permit come before this list.")
	for _, l := range lines {
		rows := w.on.wrapped("checklists", warned(l), bodyStyle, w.width-indent, most)
		if w.on.y+float64(len(rows))*bodyStyle.line() > w.bottom {
			w.turn()
		}
		w.on.shape(boxMark, w.on.left, w.on.y+0.3, side, side, black)
		w.on.y = w.on.lines(w.on.left+indent, w.on.y, rows, bodyStyle, black) + 0.9
	}
	w.on.y += 2.6
}

// reason puts one topic of the derivation with its parts.
func (w *writer) reason(r report.Reason) {
	const head = 3 // lines that stay together
	if w.on.y+head*bodyStyle.line() > w.bottom {
		w.turn()
	}
	w.put("", colon(r.Title, r.Value), 0, strongStyle, black)
	w.below(r, 4)
	w.on.y += 1.2
}

func (w *writer) below(r report.Reason, indent float64) {
	if r.Formula != "" {
		w.put("", w.on.say("Rule: "+message.Keep(r.Formula)), indent, smallStyle, black)
	}
	if r.Numbers != "" {
		w.put("", w.on.say("Here: "+message.Keep(r.Numbers)), indent, smallStyle, black)
	}
	if rests := restsOn(r); rests != "" {
		w.put("", w.on.say("Rests on: "+message.Keep(rests)), indent, smallStyle, grey)
	}
	for _, part := range r.Parts {
		text := sentence(colon(part.Title, part.Value), part.Numbers)
		if rests := restsOn(part); rests != "" {
			text += " [" + rests + "]"
		}
		w.put("•", text, indent+3, smallStyle, black)
	}
}

// colon writes "label: value", or the one that is there.
func colon(label, value string) string {
	if label == "" || value == "" {
		return label + value
	}
	return label + ": " + value
}

// restsOn is the source, or where there is none the kind of trust.
func restsOn(r report.Reason) string {
	if r.Source == "" {
		return r.Trust
	}
	return r.Source
}
