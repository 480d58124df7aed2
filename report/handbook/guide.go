package handbook

import (
	"embed"
	"strings"

	"cutbrief/rules/message"
)

//go:embed guide/*.md
var guides embed.FS

// readers are whom there is a guide for: the first is meant where none is named.
var readers = []string{"rep", "trainee", "manager"}

// Readers names them.
func Readers() []string { return append([]string(nil), readers...) }

// Guide is the guide for one kind of reader, in the language of the words in use
// or else in English: its title, and the rest in Markdown. Both are "" if there
// is none.
func Guide(name string, words *message.Catalog) (title, markdown string) {
	data, err := guides.ReadFile("guide/" + name + "." + words.Code() + ".md")
	if err != nil {
		data, _ = guides.ReadFile("guide/" + name + ".en.md")
	}
	title, markdown, _ = strings.Cut(strings.TrimPrefix(string(data), "# "), "\n\n")
	return title, markdown
}

// Told is a text in Markdown as it is read on a terminal, in lines of at most
// width cells: commands stand behind a margin, and marks are left out. It knows
// as much of Markdown as the guides use.
func Told(title, markdown string, width int) string {
	var b strings.Builder
	heading(&b, title, "=")
	for block := range strings.SplitSeq(strings.TrimSpace(markdown), "\n\n") {
		b.WriteString("\n")
		code := false
		for line := range strings.Lines(block) {
			line = strings.TrimSuffix(line, "\n")
			switch {
			case strings.HasPrefix(line, "```"):
				code = !code
			case code:
				b.WriteString("     " + line + "\n")
			default:
				b.WriteString(wrapped(strings.ReplaceAll(line, "`", ""), "", margin(line), width))
			}
		}
	}
	return b.String()
}

// margin is what stands before the further lines of a step, and of no other
// text.
func margin(line string) string {
	if number, _, step := strings.Cut(line, ". "); step && len(number) == 1 {
		return "   "
	}
	return ""
}
