package handbook

import "strings"

// Markdown is a page as CommonMark with tables.
func (p Page) Markdown() string {
	var b strings.Builder
	b.WriteString("# " + p.Title + "\n")
	for _, s := range p.Says {
		b.WriteString("\n" + s + "\n")
	}
	for _, s := range p.Sections {
		b.WriteString("\n" + s.markdown())
	}
	return b.String()
}

func (s Section) markdown() string {
	var b strings.Builder
	b.WriteString("## " + s.Title + "\n\n")
	for _, text := range s.Says {
		b.WriteString(text + "\n\n")
	}
	if len(s.Rows) == 0 {
		return strings.TrimSuffix(b.String(), "\n")
	}
	row(&b, s.Head)
	b.WriteString(strings.Repeat("|---", len(s.Head)) + "|\n")
	for _, r := range s.Rows {
		row(&b, r)
	}
	return b.String()
}

func row(b *strings.Builder, cells []string) {
	for _, c := range cells {
		b.WriteString("| " + inCell.Replace(c) + " ")
	}
	b.WriteString("|\n")
}

// inCell keeps what has a meaning in a table from having it.
var inCell = strings.NewReplacer("|", `\|`, "\n", " ", "<", "&lt;", "*", `\*`, "_", `\_`, "`", "\\`")
