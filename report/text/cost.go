package text

import (
	"strings"

	"cutbrief/report"
	"cutbrief/rules/message"
)

// cost writes the page's part about cost.
func (p *printer) cost(c *report.Cost) {
	if c == nil {
		return
	}
	p.heading("What it costs")
	for _, l := range c.Lines {
		p.block("  - ", l)
	}
	figure := 0
	for _, b := range c.Bars {
		figure = max(figure, cells.StringWidth(safe(b.Label)), cells.StringWidth(safe(b.Value)))
	}
	for i, b := range c.Bars {
		p.block("  ", b.Label)
		p.bar(b.Value, figure, [2]rune{lightBlock, fullBlock}[i%2], b.Share)
	}
	p.costByThickness(c.Curves)
}

// CostSheet writes the whole account in lines of at most width cells; 0 takes
// 80.
func CostSheet(s report.CostSheet, width int) string {
	if width == 0 {
		width = DefaultWidth
	}
	p := &printer{width: max(width, leastWidth), words: s.Words}
	p.block("", s.Title)
	p.line(strings.Repeat("=", min(p.width, max(cells.StringWidth(safe(s.Title)), 1))))
	if s.Demo != "" {
		p.block("*** ", s.Demo)
	}
	p.who(s.Prices)
	p.line("")
	p.block("", s.Cut)
	for _, w := range s.Today {
		p.way("Today: "+message.Keep(w.Name+", "+w.Cut), w)
	}
	for _, o := range s.Systems {
		p.way(message.Keep(o.Name+", "+o.Cut), o.CostWay)
		p.saving(o)
	}
	p.chart(s.Crossing)
	p.inputs(s.Inputs)
	p.list("How to read it", s.Notes)
	return p.out.String()
}

// way writes one way as a table of its parts.
func (p *printer) way(title string, w report.CostWay) {
	p.heading(title)
	if w.Why != "" {
		p.block("  ", w.Why)
		return
	}
	p.grid(wayRows(p.words, w), 30)
}

// wayRows are the parts of a way, low, likely and high.
func wayRows(words *message.Catalog, w report.CostWay) [][]string {
	rows := [][]string{words.Each([]string{message.Keep(w.Each) + " of cut", "low", "likely", "high"})}
	for _, l := range w.Lines {
		rows = append(rows, amounts(l.Name, l.Cost))
	}
	if w.PerMetre != nil {
		rows = append(rows, amounts(words.Say("together, "+message.Keep(w.Each)), *w.PerMetre))
	}
	if w.PerYear != nil {
		rows = append(rows, amounts(words.Say("together, a year"), *w.PerYear))
	}
	return rows
}

func amounts(name string, a report.Amount) []string {
	return append([]string{name}, a.Shown[:]...)
}

// saving writes what a system saves.
func (p *printer) saving(o report.CostOffer) {
	for _, l := range savingLines(p.words, o) {
		p.block("  - ", l)
	}
}

// savingLines say what a system saves, when it pays, and what moves that.
func savingLines(words *message.Catalog, o report.CostOffer) []string {
	var list []string
	keep := message.Keep // said already
	if o.Verdict != "" && o.Saving != nil {
		text := "Against " + keep(o.Against) + ": " + keep(o.Verdict+", "+o.Saving.Text+" "+o.Each)
		if o.SavingAll != nil {
			text += ", " + keep(o.SavingAll.Text) + " a year"
		}
		list = append(list, text+".")
	}
	if o.Payback != "" {
		text := "Payback: " + keep(o.Payback)
		if o.Worth != nil {
			text += "; over " + keep(o.Over) + " interest it is worth " + keep(o.Worth.Text) + " today"
		}
		list = append(list, text+".")
	}
	if len(o.Movers) > 0 {
		list = append(list, "Moved most by: "+keep(strings.Join(o.Movers, "; "))+".")
	}
	return words.Each(list)
}

// chart writes two bars for every thickness.
func (p *printer) chart(c *report.CostChart) {
	if c == nil {
		return
	}
	p.heading(c.Title)
	room := max(p.width-40, 8)
	for _, r := range c.Rows {
		p.line("  " + pad(safe(r.Thickness), 10) + pad(p.words.Say("plasma"), 9) + pad(r.Plasma.Shown[1], 8) + blocks(fullBlock, r.PlasmaShare, room))
		p.line("  " + pad("", 10) + pad(p.words.Say("oxy-fuel"), 9) + pad(r.Flame.Shown[1], 8) + blocks(lightBlock, r.FlameShare, room))
	}
	p.block("  ", c.Says)
}

// inputs writes every uncertain figure.
func (p *printer) inputs(list []report.CostInput) {
	if len(list) == 0 {
		return
	}
	p.heading("What it rests on, likely (low to high)")
	for _, in := range list {
		p.block("  - ", inputLine(p.words, in))
	}
}

func inputLine(words *message.Catalog, in report.CostInput) string {
	text := message.Keep(in.Name) + ": " + number(in.Likely) + " (" + number(in.Low) + " to " + number(in.High) + ") " + message.Keep(in.Unit)
	text = words.Say(text)
	return joined(text, sourced("", in.Basis), bracket(in.Note))
}

// Comparison writes systems side by side, at most three a block so that a
// block fits the width.
func Comparison(c report.Comparison, width int) string {
	if width == 0 {
		width = DefaultWidth
	}
	p := &printer{width: max(width, leastWidth), words: c.Words}
	p.block("", c.Title)
	p.line(strings.Repeat("=", min(p.width, cells.StringWidth(safe(c.Title)))))
	if c.Demo != "" {
		p.block("*** ", c.Demo)
	}
	for _, rows := range sideBySide(c) {
		p.line("")
		p.grid(rows, 20)
	}
	p.list("Notes", c.Notes)
	return p.out.String()
}

// sideBySide cuts a comparison into blocks of at most three columns.
func sideBySide(c report.Comparison) [][][]string {
	const most = 3
	var list [][][]string
	for from := 0; from < len(c.Columns); from += most {
		to := min(from+most, len(c.Columns))
		rows := [][]string{append([]string{""}, c.Columns[from:to]...)}
		for _, r := range c.Rows {
			rows = append(rows, append([]string{r.Label}, r.Cells[from:to]...))
		}
		list = append(list, rows)
	}
	return list
}

// grid writes rows in columns: the first as wide as told, the others alike.
// Cells that are too long go on in the next line.
func (p *printer) grid(rows [][]string, first int) {
	if len(rows) == 0 || len(rows[0]) < 2 {
		return
	}
	first = min(first, p.width/3)
	each := min(18, (p.width-2-first)/(len(rows[0])-1)-2)
	each = max(each, 4)
	for _, r := range rows {
		var wrapped [][]string
		tall := 0
		for i, cell := range r {
			width := each
			if i == 0 {
				width = first - 2
			}
			wrapped = append(wrapped, Wrap(cell, width))
			tall = max(tall, len(wrapped[i]))
		}
		for n := range tall {
			line := "  "
			for i, cell := range wrapped {
				text := ""
				if n < len(cell) {
					text = cell[n]
				}
				if i == 0 {
					line += pad(text, first)
				} else {
					line += pad(text, each+2)
				}
			}
			p.line(line)
		}
	}
}
