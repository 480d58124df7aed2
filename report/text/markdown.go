package text

import "strings"

// inTable writes rows as a table if the document is Markdown, where every picture
// is one, and reports whether it is. The first row is the head.
func (d *document) inTable(rows [][]string) bool {
	if !d.isMarkdown() {
		return false
	}
	d.Line("")
	for i, r := range rows {
		for _, cell := range r {
			d.WriteString("| " + escaped(cell) + " ")
		}
		d.Line("|")
		if i == 0 {
			d.Line("|" + strings.Repeat(" --- |", len(r)))
		}
	}
	return true
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
