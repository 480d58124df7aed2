package text

import (
	"strconv"

	"cutbrief/report"
)

// speeds writes the speeds by thickness as a table.
func (m *markdown) speeds(s *report.Speeds) {
	if s == nil || len(s.Marks) == 0 {
		return
	}
	m.heading("## ", s.Title)
	rows := [][]string{m.words.Each([]string{"Thickness", "Speed", ""})}
	for _, k := range s.Marks {
		rows = append(rows, []string{k.Thickness, k.Speed, k.Says})
	}
	m.table(rows)
	m.paragraph(escaped(s.Clean + "; " + s.Severed + "."))
	m.paragraph(escaped(s.Rests))
}

// costByThickness writes both lines as a table.
func (m *markdown) costByThickness(c *report.Curves) {
	if c == nil || len(c.Points) == 0 {
		return
	}
	m.paragraph(escaped(c.Title) + ":")
	rows := [][]string{{m.words.Say("Thickness"), c.Plasma + ", " + c.Up, c.Flame + ", " + c.Up, ""}}
	for _, p := range c.Points {
		rows = append(rows, []string{p.Thickness, p.Plasma.Shown[1], p.Flame.Shown[1], place(c, p.At)})
	}
	m.table(rows)
	m.paragraph(escaped(c.Crossing.Label + "."))
}

// timeline writes the demonstration in minutes as a table.
func (m *markdown) timeline(t *report.Timeline) {
	if t == nil || len(t.Steps) == 0 {
		return
	}
	m.heading("## ", t.Title)
	rows := [][]string{m.words.Each([]string{"When", "", "What"})}
	for _, s := range t.Steps {
		number := ""
		if s.Number > 0 {
			number = strconv.Itoa(s.Number)
		}
		rows = append(rows, []string{s.When, number, s.Name})
	}
	m.table(rows)
	m.paragraph(escaped(joined(t.Says, t.Rests)))
}
