package handbook

import (
	"embed"
	"strings"
)

//go:embed guide/*.md
var guides embed.FS

// readers are whom there is a guide for, with its title.
var readers = []struct{ name, title string }{
	{"rep", "Ten minutes for a representative"},
	{"trainee", "Ten minutes for a trainee"},
	{"manager", "Ten minutes for a manager"},
}

// Readers names them.
func Readers() []string {
	var names []string
	for _, r := range readers {
		names = append(names, r.name)
	}
	return names
}

// Guide is the guide for one kind of reader, in Markdown and without a title;
// false if there is none.
func Guide(name string) (title, text string, ok bool) {
	for _, r := range readers {
		if r.name == name {
			data, err := guides.ReadFile("guide/" + name + ".md")
			return r.title, string(data), err == nil
		}
	}
	return "", "", false
}

// Told is a text in Markdown as it is read on a terminal, in lines of at most
// width cells: commands stand behind a margin, and marks are left out. It knows
// as much of Markdown as the guides use.
func Told(title, markdown string, width int) string {
	var b strings.Builder
	heading(&b, title, "=")
	code := false
	for block := range strings.SplitSeq(strings.TrimSpace(markdown), "\n\n") {
		b.WriteString("\n")
		code = false
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
