package text

import (
	"strconv"
	"strings"

	"cutbrief/report"
	"cutbrief/rules/message"
)

// Markdown writes the brief as Markdown, every text escaped so that it reads
// as it was said.
func Markdown(b report.Brief) string {
	m := &markdown{words: b.Words}
	m.heading("# ", b.Title)
	for _, l := range b.Who {
		m.item("**" + escaped(l.Label) + "**: " + escaped(l.Value))
	}
	if b.Demo != "" {
		m.paragraph("> **" + escaped(b.Demo) + "**")
	}
	m.paragraph(escaped(b.Need))
	m.heading("## ", string(b.Answer()))
	m.paragraph("**" + escaped(b.Headline) + "**")
	m.sentences("", b.Because)
	m.paragraph(escaped(b.Second))
	m.bars(b.Bars)
	m.speeds(b.Speeds)
	m.cost(b.Cost)
	m.critical(&b)
	m.confirm(&b)
	m.plan(&b)
	m.lines("Shown, and what came of it", b.Shown, func(l report.Line) string { return joined(labelled(l.Label, l.Value), dash(l.Why)) })
	m.lines("Not taken, and why", b.Excluded, func(l report.Line) string { return labelled(l.Label, l.Why) })
	m.sentences("Notes", b.Notes)
	m.lines("Cutting can hurt people and start fires", b.Cautions, func(l report.Line) string { return l.Value })
	m.sentences("What the figures rest on", b.Footing)
	m.sentences("What could not be shown", b.Dropped)
	m.signatures()
	m.lines("Before leaving", b.Leaving, ticked)
	m.lines("At the site, before the first arc", b.OnSite, ticked)
	if len(b.Working) > 0 {
		m.heading("## ", "Working")
		m.reasons(b.Working)
	}
	return strings.TrimLeft(m.out.String(), "\n")
}

// signatures leaves room for both.
func (m *markdown) signatures() {
	const name, day = `\_\_\_\_\_\_\_\_\_\_`, `\_\_\_\_\_`
	date := escaped(m.words.Say("Date")) + ": " + day
	customer, rep := escaped(m.words.Say("Customer")), escaped(m.words.Say("Representative"))
	m.paragraph(customer + ": " + name + " " + date + " " + rep + ": " + name + " " + date)
}

// ticked is a line to tick off by hand.
func ticked(l report.Line) string { return "☐ " + l.Value }

// markdown writes blocks with an empty line between them.
type markdown struct {
	out   strings.Builder
	list  bool             // the last thing written was an item
	words *message.Catalog // says what is worded here; the brief's texts are said already
}

func (m *markdown) paragraph(s string) {
	if s == "" {
		return
	}
	m.out.WriteString("\n" + s + "\n")
	m.list = false
}

func (m *markdown) heading(level, s string) { m.paragraph(level + escaped(m.words.Say(s))) }

func (m *markdown) item(s string) {
	if !m.list {
		m.out.WriteString("\n")
	}
	m.out.WriteString("- " + s + "\n")
	m.list = true
}

// sentences writes a list under a heading, if there is one.
func (m *markdown) sentences(title string, texts []string) {
	if len(texts) > 0 && title != "" {
		m.heading("## ", title)
	}
	for _, t := range texts {
		m.item(escaped(t))
	}
}

// lines writes facts with what they rest on.
func (m *markdown) lines(title string, lines []report.Line, word func(report.Line) string) {
	if len(lines) > 0 {
		m.heading("## ", title)
	}
	for _, l := range lines {
		m.item(escaped(joined(word(l), sourced(l.Source, l.Trust))))
	}
}

func (m *markdown) bars(bars []report.Bar) {
	if len(bars) == 0 {
		return
	}
	m.heading("## ", "Needed and given")
	rows := [][]string{m.words.Each([]string{"Check", "Needed", "Given", "Verdict", "Why"})}
	for _, b := range bars {
		rows = append(rows, []string{b.Label, b.Need, b.Have, b.Verdict, joined(b.Why, sourced(b.Source, b.Trust))})
	}
	m.table(rows)
}

func (m *markdown) critical(b *report.Brief) {
	if b.Critical == "" {
		return
	}
	m.heading("## ", "What decides")
	m.paragraph("**" + escaped(b.Critical) + "**")
	for _, e := range b.Evidence {
		m.item(escaped(joined(e.Value, marked(e.Label, e.Why), sourced(e.Source, e.Trust))))
	}
	m.paragraph(escaped(b.ShownBy))
}

func (m *markdown) confirm(b *report.Brief) {
	if len(b.Confirm) == 0 && len(b.Flags) == 0 {
		return
	}
	m.heading("## ", confirmTitle(b.Outcome))
	for _, l := range b.Confirm {
		m.item("[ ] " + escaped(joined(labelled(l.Label, l.Value), dash(l.Why), sourced(l.Source, l.Trust))))
	}
	for _, f := range b.Flags {
		m.item("[ ] " + escaped(f))
	}
}

func (m *markdown) plan(b *report.Brief) {
	if len(b.Plan) == 0 {
		return
	}
	m.heading("## ", "Demonstration")
	rows := [][]string{m.words.Each([]string{"", "Cut", "Metal and thickness", "Setting", "What to look for"})}
	for i, r := range b.Plan {
		rows = append(rows, []string{strconv.Itoa(i + 1), r.Cut, r.Piece, r.Setting, joined(r.See, sourced(r.Source, ""))})
	}
	m.table(rows)
	for i, r := range b.Plan {
		if r.Because+r.Beware != "" {
			m.item(escaped(joined(strconv.Itoa(i+1)+":", r.Because, bracket(r.Takes), r.Beware)))
		}
	}
	m.sentences("", b.PlanNote)
	if b.Bring != "" {
		m.item(escaped(b.Bring))
	}
	m.timeline(b.Timeline)
	m.lines("Not shown, and why", b.LeftOut, func(l report.Line) string { return labelled(l.Label, l.Why) })
}

func (m *markdown) table(rows [][]string) {
	m.out.WriteString("\n")
	for i, r := range rows {
		for j := range r {
			r[j] = escaped(r[j])
		}
		m.out.WriteString("| " + strings.Join(r, " | ") + " |\n")
		if i == 0 {
			m.out.WriteString("|" + strings.Repeat(" --- |", len(r)) + "\n")
		}
	}
	m.list = false
}

// marks are the characters Markdown may act on.
var marks = strings.NewReplacer(
	`\`, `\\`, "`", "\\`", "*", `\*`, "_", `\_`, "[", `\[`, "]", `\]`, "|", `\|`, "#", `\#`, "~", `\~`,
	"&", "&amp;", "<", "&lt;", ">", "&gt;",
)

// escaped writes a text so that Markdown shows it as it is.
func escaped(s string) string {
	s = marks.Replace(strings.TrimSpace(safe(s)))
	if s == "" {
		return s
	}
	switch head := strings.TrimLeft(s, "0123456789"); {
	case s[0] == '-' || s[0] == '+' || s[0] == '=':
		return `\` + s
	case len(head) < len(s) && head != "" && (head[0] == '.' || head[0] == ')'):
		return s[:len(s)-len(head)] + `\` + head
	}
	return s
}
