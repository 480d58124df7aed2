package text

import (
	"strconv"
	"strings"

	"cutbrief/report"
)

// markdown writes blocks with an empty line between them, every text escaped.
type markdown struct {
	out    strings.Builder
	inList bool // the last thing written was an item
}

// String is the document.
func (m *markdown) String() string { return strings.TrimLeft(m.out.String(), "\n") }

// raw writes a block as it is.
func (m *markdown) raw(before, text, after string) {
	if text != "" {
		m.out.WriteString("\n" + before + escaped(text) + after + "\n")
		m.inList = false
	}
}

func (m *markdown) title(text string)     { m.raw("# ", text, "") }
func (m *markdown) heading(text string)   { m.raw("## ", text, "") }
func (m *markdown) notice(text string)    { m.raw("> **", text, "**") }
func (m *markdown) strong(text string)    { m.raw("**", text, "**") }
func (m *markdown) lead(text string)      { m.raw("", text, "") }
func (m *markdown) paragraph(text string) { m.raw("", text, "") }
func (m *markdown) item(text string)      { m.entry(escaped(text)) }
func (m *markdown) box(text string)       { m.entry("[ ] " + escaped(text)) }
func (m *markdown) tick(text string)      { m.entry("☐ " + escaped(text)) }

func (m *markdown) entry(text string) {
	if !m.inList {
		m.out.WriteString("\n")
	}
	m.out.WriteString("- " + text + "\n")
	m.inList = true
}

func (m *markdown) fields(lines []report.Line) {
	for _, l := range lines {
		m.entry("**" + escaped(l.Label) + "**: " + escaped(l.Value))
	}
}

func (m *markdown) table(rows [][]string, _ int) {
	m.out.WriteString("\n")
	for i, r := range rows {
		cells := make([]string, len(r))
		for j := range r {
			cells[j] = escaped(r[j])
		}
		m.out.WriteString("| " + strings.Join(cells, " | ") + " |\n")
		if i == 0 {
			m.out.WriteString("|" + strings.Repeat(" --- |", len(r)) + "\n")
		}
	}
	m.inList = false
}

// sideBySide shortens long cells so that four of them fit 80 columns.
func (m *markdown) sideBySide(rows [][]string) {
	const most = 16
	for i := range rows {
		for j := range rows[i] {
			rows[i][j] = shortened(rows[i][j], most)
		}
	}
	m.table(rows, 0)
}

func (m *markdown) bars(d *document, list []report.Bar) {
	rows := [][]string{d.row("Check", "Needed", "Given", "Verdict", "Why")}
	for _, b := range list {
		rows = append(rows, []string{b.Label, b.Need, b.Have, b.Verdict, joined(b.Why, sourced(b.Source, b.Trust))})
	}
	m.table(rows, 0)
}

func (m *markdown) costs(list []report.CostBar, head string) {
	rows := [][]string{{"", head}}
	for _, b := range list {
		rows = append(rows, []string{b.Label, b.Value})
	}
	m.table(rows, 0)
}

func (m *markdown) chart(c chart) {
	m.heading(c.title)
	if c.intro != "" {
		m.paragraph(c.intro + ":")
	}
	m.table(append([][]string{c.head}, c.rows...), 0)
	m.paragraph(c.legendText(false))
	m.paragraph(c.basis)
}

func (m *markdown) plan(d *document, list []report.Row) {
	rows := [][]string{append([]string{""}, d.row("Cut", "Metal and thickness", "Setting", "What to look for")...)}
	for i, r := range list {
		rows = append(rows, []string{strconv.Itoa(i + 1), r.Cut, r.Piece, r.Setting, joined(r.See, sourced(r.Source, ""))})
	}
	m.table(rows, 0)
	for i, r := range list {
		if r.Because+r.Beware != "" {
			m.item(joined(strconv.Itoa(i+1)+":", r.Because, bracket(r.Takes), r.Beware))
		}
	}
}

// signatures leaves room for everybody's name and the date.
func (m *markdown) signatures(date string, who []string) {
	const name, day = `\_\_\_\_\_\_\_\_\_\_`, `\_\_\_\_\_`
	var parts []string
	for _, w := range who {
		parts = append(parts, escaped(w)+": "+name+" "+escaped(date)+": "+day)
	}
	m.out.WriteString("\n" + strings.Join(parts, " ") + "\n")
	m.inList = false
}

func (m *markdown) reason(d *document, r report.Reason) {
	m.heading(r.Title)
	m.out.WriteString("\n**" + escaped(r.Value) + "**\n")
	m.inList = false
	for _, l := range d.under(r) {
		m.paragraph(l)
	}
	for _, part := range r.Parts {
		m.item(inline(part))
	}
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
