package handbook

import (
	"embed"
	"strings"

	"cutbrief/report/text"
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
func Told(heading, markdown string, width int) string {
	b := text.Lines{Width: width}
	title(&b, heading, "=", nil)
	for block := range strings.SplitSeq(strings.TrimSpace(markdown), "\n\n") {
		b.Line("")
		code := false
		for line := range strings.SplitSeq(block, "\n") {
			switch {
			case strings.HasPrefix(line, "```"):
				code = !code
			case code:
				b.Line("     " + line)
			default:
				margin := "" // before the further lines of a step
				if number, _, step := strings.Cut(line, ". "); step && len(number) == 1 {
					margin = "   "
				}
				b.Hang("", margin, strings.ReplaceAll(line, "`", ""))
			}
		}
	}
	return b.String()
}
