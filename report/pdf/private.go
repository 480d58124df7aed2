package pdf

import (
	"strings"

	"cutbrief/report"
	"cutbrief/report/page"
	"cutbrief/rules/message"
)

// private is the sheet for the representative: what decides and the evidence,
// what may be said against it, what is assumed, what to bring and how to show
// it, and all that a page leaves out. It says on each of its sheets that the
// customer does not get it.
func (w *writer) private() {
	b := w.brief
	w.note = w.say(page.Private)
	w.turn()
	w.title(page.Sheet, "")
	w.lines(page.Decides, []report.Line{{Value: b.Critical}, {Value: b.ShownBy}})
	w.lines("", b.Evidence)
	w.lines(page.Objections, b.Objections)
	if len(b.Objections) > 0 {
		w.put("", w.say(page.Answers), 0, smallStyle, grey)
	}
	open := b.Confirm
	for _, f := range b.Flags {
		open = append(open[:len(open):len(open)], report.Line{Value: f})
	}
	w.lines(page.Assumptions, open)
	if b.Bring != "" {
		w.lines(page.Packing, append([]report.Line{{Value: b.Bring}}, asLines(b.PlanNote)...))
	}
	w.steps(b.Plan)
	w.lines(page.LeftOut, b.LeftOut)
	w.lines("Demonstrations held, and results", b.Shown)
	if b.Cost != nil {
		w.lines(page.Costs, append(asLines(b.Cost.Lines), costLines(b.Cost.Bars)...))
	}
	var bars []report.Line
	for _, x := range b.Bars {
		bars = append(bars, report.Line{Label: x.Label, Value: x.Need + ", " + x.Have + ": " + x.Verdict, Why: x.Why, Source: x.Source, Trust: x.Trust})
	}
	w.lines(page.Given, bars)
	w.lines(page.NotTaken, b.Excluded)
	w.lines(page.Notes, asLines(b.Notes))
	w.note = ""
}

func asLines(texts []string) []report.Line {
	var list []report.Line
	for _, t := range texts {
		list = append(list, report.Line{Value: t})
	}
	return list
}

func costLines(bars []report.CostBar) []report.Line {
	var list []report.Line
	for _, b := range bars {
		list = append(list, report.Line{Label: b.Label, Value: b.Value})
	}
	return list
}

// lines put facts under a heading, each with why and its source.
func (w *writer) lines(title message.ID, lines []report.Line) {
	if len(lines) == 0 {
		return
	}
	if title != "" {
		w.y += row / 2
		w.room(headStyle.line() + 2*bodyStyle.line())
		w.heading(w.full, w.say(title))
	}
	for _, l := range lines {
		var runs []run
		if l.Label != "" {
			label := l.Label
			if !strings.HasSuffix(label, "”") && !strings.HasSuffix(label, "“") { // what they say
				label += ":"
			}
			runs = append(runs, run{label, strongStyle, black})
		}
		runs = append(runs, run{sentence(" – ", l.Value, l.Why), bodyStyle, black})
		if rests := restsOn(report.Reason{Source: l.Source, Trust: l.Trust}); rests != "" {
			runs = append(runs, run{"[" + rests + "]", smallStyle, grey})
		}
		if sentence("", l.Label, l.Value+l.Why) != "" {
			w.runs("•", 3.4, runs...)
		}
	}
}

// steps are the cuts with their settings, why they are in the plan and how they
// fail.
func (w *writer) steps(cuts []report.Row) {
	if len(cuts) == 0 {
		return
	}
	w.y += row / 2
	w.room(headStyle.line() + 3*bodyStyle.line())
	w.heading(w.full, w.say(page.Steps))
	for i, r := range cuts {
		w.runs(digits(i+1), 4.2, run{r.Cut, strongStyle, black}, run{sentence("; ", sentence("; ", r.Piece, r.Setting), r.Takes), bodyStyle, black})
		w.put("", joined(r.See, "–", r.Because), 4.2, bodyStyle, black)
		w.put("", r.Beware, 4.2, smallStyle, grey)
	}
}
