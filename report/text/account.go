package text

import (
	"math"
	"strconv"
	"strings"

	"cutbrief/report"
	"cutbrief/rules/message"
)

// CostSheet writes the whole account in lines of at most width cells; 0 takes
// 80.
func CostSheet(s report.CostSheet, width int) string { return newDocument(s.Words, width).account(&s) }

func (d *document) account(s *report.CostSheet) string {
	d.title(s.Title)
	d.notice(s.Demo)
	d.fields(s.Prices)
	d.lead(s.Cut)
	for _, w := range s.Today {
		d.way(d.say("Today: {1}", printed(w.Name+", "+w.Cut)), &w)
	}
	for _, o := range s.Systems {
		d.way(o.Name+", "+o.Cut, &o.CostWay)
		d.list("", d.savings(&o))
	}
	d.crossing(s.Crossing)
	var inputs []string
	for _, in := range s.Inputs {
		text := d.say("{1}: {2} ({3} to {4}) {5}", printed(in.Name), number(in.Likely), number(in.Low), number(in.High), printed(in.Unit))
		inputs = append(inputs, joined(text, sourced("", in.Basis), bracket(in.Note)))
	}
	d.list("Figures used, likely (low to high)", inputs)
	d.list("How to read it", s.Notes)
	return d.String()
}

// way writes one way as a table of its parts, low, likely and high.
func (d *document) way(title string, w *report.CostWay) {
	d.heading(title)
	if w.Why != "" {
		d.paragraph(w.Why)
		return
	}
	rows := [][]string{append([]string{d.say("{1} of cut", printed(w.Each))}, d.row("low", "likely", "high")...)}
	add := func(name string, a *report.Amount) {
		if a != nil {
			rows = append(rows, append([]string{name}, a.Shown[:]...))
		}
	}
	for i := range w.Lines {
		add(w.Lines[i].Name, &w.Lines[i].Cost)
	}
	add(d.say("together, {1}", printed(w.Each)), w.PerMetre)
	add(d.say("together, a year"), w.PerYear)
	if !d.inTable(rows) {
		d.columns(rows, 30)
	}
}

// savings say what a system saves, when it pays, and what moves that.
func (d *document) savings(o *report.CostOffer) []string {
	var list []string
	if o.Verdict != "" && o.Saving != nil {
		against, saved := printed(o.Against), printed(o.Verdict+", "+o.Saving.Text+" "+o.Each)
		if o.SavingAll != nil {
			list = append(list, d.say("Against {1}: {2}, {3} a year.", against, saved, printed(o.SavingAll.Text)))
		} else {
			list = append(list, d.say("Against {1}: {2}.", against, saved))
		}
	}
	switch {
	case o.Payback != "" && o.Worth != nil:
		list = append(list, d.say("Payback: {1}; over {2} interest it is worth {3} today.", printed(o.Payback), printed(o.Over), printed(o.Worth.Text)))
	case o.Payback != "":
		list = append(list, d.say("Payback: {1}.", printed(o.Payback)))
	}
	if len(o.Movers) > 0 {
		list = append(list, d.say("Depends most on: {1}.", printed(strings.Join(o.Movers, "; "))))
	}
	return list
}

// Comparison writes systems side by side, at most three a block so that a block
// fits the width; as Markdown with long cells shortened, so that its lines fit 80
// columns.
func Comparison(c report.Comparison, width int) string {
	return newDocument(c.Words, width).comparison(&c)
}

func (d *document) comparison(c *report.Comparison) string {
	const most, short = 3, 16 // columns side by side, and cells of each in Markdown
	d.title(c.Title)
	d.notice(c.Demo)
	for from := 0; from < len(c.Columns); from += most {
		to := min(from+most, len(c.Columns))
		rows := [][]string{append([]string{""}, c.Columns[from:to]...)}
		for _, r := range c.Rows {
			rows = append(rows, append([]string{r.Label}, r.Cells[from:to]...))
		}
		if !d.isMarkdown() {
			d.Line("")
			d.columns(rows, 20)
			continue
		}
		for _, r := range rows {
			for i := range r {
				r[i] = shortened(r[i], short)
			}
		}
		d.inTable(rows)
	}
	d.list("Notes", c.Notes)
	return d.String()
}

// number writes a number in full, without an exponent.
func number(v float64) any {
	text := strconv.FormatFloat(math.Abs(v), 'f', -1, 64)
	if v < 0 {
		text = "−" + text
	}
	return message.Figure(text)
}
