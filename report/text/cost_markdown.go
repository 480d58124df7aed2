package text

import (
	"math"
	"strconv"
	"strings"

	"cutbrief/report"
	"cutbrief/rules/message"
)

// cost writes the page's part about cost.
func (m *markdown) cost(c *report.Cost) {
	if c == nil {
		return
	}
	m.sentences("What it costs", c.Lines)
	rows := [][]string{m.words.Each([]string{"", "Cost"})}
	for _, b := range c.Bars {
		rows = append(rows, []string{b.Label, b.Value})
	}
	if len(c.Bars) > 0 {
		m.table(rows)
	}
	m.costByThickness(c.Curves)
}

// CostMarkdown writes the whole account as Markdown.
func CostMarkdown(s report.CostSheet) string {
	m := &markdown{words: s.Words}
	m.heading("# ", s.Title)
	if s.Demo != "" {
		m.paragraph("> **" + escaped(s.Demo) + "**")
	}
	for _, l := range s.Prices {
		m.item("**" + escaped(l.Label) + "**: " + escaped(l.Value))
	}
	m.paragraph(escaped(s.Cut))
	for _, w := range s.Today {
		m.way("Today: "+message.Keep(w.Name+", "+w.Cut), w)
	}
	for _, o := range s.Systems {
		m.way(message.Keep(o.Name+", "+o.Cut), o.CostWay)
		m.sentences("", savingLines(m.words, o))
	}
	m.chart(s.Crossing)
	if len(s.Inputs) > 0 {
		m.heading("## ", "What it rests on, likely (low to high)")
	}
	for _, in := range s.Inputs {
		m.item(escaped(inputLine(m.words, in)))
	}
	m.sentences("How to read it", s.Notes)
	return strings.TrimLeft(m.out.String(), "\n")
}

func (m *markdown) way(title string, w report.CostWay) {
	m.heading("## ", title)
	if w.Why != "" {
		m.paragraph(escaped(w.Why))
		return
	}
	m.table(wayRows(m.words, w))
}

func (m *markdown) chart(c *report.CostChart) {
	if c == nil {
		return
	}
	m.heading("## ", c.Title)
	rows := [][]string{m.words.Each([]string{"Thickness", "Plasma", "Oxy-fuel"})}
	for _, r := range c.Rows {
		rows = append(rows, []string{r.Thickness, r.Plasma.Shown[1], r.Flame.Shown[1]})
	}
	m.table(rows)
	m.paragraph(escaped(c.Says))
}

// mostCell is the longest cell that keeps four of them within 80 columns.
const mostCell = 16

// ComparisonMarkdown writes systems side by side as tables whose lines fit 80
// columns: at most three systems each, long cells shortened.
func ComparisonMarkdown(c report.Comparison) string {
	m := &markdown{words: c.Words}
	m.heading("# ", c.Title)
	if c.Demo != "" {
		m.paragraph("> **" + escaped(c.Demo) + "**")
	}
	for _, rows := range sideBySide(c) {
		for i := range rows {
			for j := range rows[i] {
				rows[i][j] = shortened(rows[i][j], mostCell)
			}
		}
		m.table(rows)
	}
	m.sentences("Notes", c.Notes)
	return strings.TrimLeft(m.out.String(), "\n")
}

// shortened cuts a text so that it fits once it is escaped.
func shortened(s string, most int) string {
	s = strings.TrimSpace(safe(s))
	if cells.StringWidth(escaped(s)) <= most {
		return s
	}
	r := []rune(s)
	for len(r) > 0 && cells.StringWidth(escaped(string(r)+"…")) > most {
		r = r[:len(r)-1]
	}
	return strings.TrimRight(string(r), " ") + "…"
}

// number writes a number in full, without an exponent.
func number(v float64) string {
	text := strconv.FormatFloat(math.Abs(v), 'f', -1, 64)
	if v < 0 {
		return "−" + text
	}
	return text
}
