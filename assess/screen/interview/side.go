package interview

import (
	"fmt"

	"cutbrief/assess/sanitize"
	"cutbrief/assess/screen"
	"cutbrief/report"
	"cutbrief/rules/message"
)

// sideLines lays the panel out for its width; nothing at width 0.
func sideLines(look screen.Look, words *message.Catalog, p report.Panel, width int) []string {
	if width == 0 {
		return nil
	}
	var lines []string
	part := func(title string, texts ...string) {
		if len(texts) == 0 || texts[0] == "" {
			return
		}
		if len(lines) > 0 {
			lines = append(lines, "")
		}
		lines = append(lines, look.Accent.Render(words.Say(title)))
		for _, t := range texts {
			lines = append(lines, screen.Wrap(sanitize.Line(t), width)...)
		}
	}
	first := neededFirst(p)
	part("To size a system, tell me", first...)
	part("Capacity needed", p.Need, p.Because)
	if p.Result.Critical.Requirement != "" {
		part("What decides", p.Critical)
	}
	part("Still in", stillIn(words, p)...)
	part("Look again", most(p.Flags, 2)...)
	if len(first) == 0 {
		part("Ask next", inShort(most(p.Ask, 4), width)...)
	}
	return lines
}

// neededFirst lists what has to be told before anything can be sized. Before
// that, what other answers could change is not worth a word.
func neededFirst(p report.Panel) []string {
	var first []string
	for _, name := range p.First {
		first = append(first, "- "+name)
	}
	return first
}

// inShort keeps each text to two lines, and shows where there was more.
func inShort(texts []string, width int) []string {
	for i, t := range texts {
		if lines := screen.Wrap(sanitize.Line(t), width); len(lines) > 2 {
			texts[i] = lines[0] + " " + screen.Cut(lines[1]+" "+lines[2], width)
		}
	}
	return texts
}

// stillIn lists the first systems still in, and counts the rest.
func stillIn(words *message.Catalog, p report.Panel) []string {
	const shown = 3
	list := most(p.In, shown)
	if more := len(p.In) - shown; more > 0 {
		list = append(list, words.Say(fmt.Sprintf("and %d more", more)))
	}
	switch {
	case p.Out == 1:
		list = append(list, words.Say("1 falls short"))
	case p.Out > 1:
		list = append(list, words.Say(fmt.Sprintf("%d fall short", p.Out)))
	}
	return list
}

func most(list []string, n int) []string { return append([]string(nil), list[:min(n, len(list))]...) }
