package review

import (
	"strings"

	"cutbrief/assess/review"
	"cutbrief/assess/sanitize"
	"cutbrief/assess/screen"
	"cutbrief/report"
	"cutbrief/report/text"
	"cutbrief/rules/message"
)

// visitLines are the part of the visit that is shown.
func (m *Model) visitLines(width int) []string {
	options := report.Options{Words: m.Words}
	switch {
	case m.part == flagsPart:
		return m.flagLines(width)
	case m.part == rawPart && len(m.raw) == 0:
		return screen.Wrap(m.window.Say("There is nothing of this file to show."), width)
	case m.part == rawPart:
		return rawLines(m.raw, width)
	case m.visit == nil:
		return screen.Wrap(m.window.Say("This file cannot be read as a visit."), width)
	case m.part == whyPart:
		return strings.Split(text.Why(m.Words, report.Why(m.visit, m.Range, options), width), "\n")
	}
	return strings.Split(strings.TrimRight(text.Render(report.Build(m.visit, m.Range, options), width), "\n"), "\n")
}

// flagLines say what needs a second look, why, and by which rule.
func (m *Model) flagLines(width int) []string {
	w := m.window
	raised := m.open.Raised()
	lines := append(screen.Wrap(m.open.ShownPath(), width), screen.Wrap(m.facts(), width)...)
	if len(raised) == 0 {
		return append(lines, "", w.Say("Nothing needs a second look."))
	}
	for _, r := range raised {
		kind := r.Flag.Kind()
		lines = append(lines, "", w.Look.Strong.Render(w.Say(kind.Name)))
		reasons := []string{sanitize.Line(m.Words.Print(r.Reason))}
		if r.Flag == review.Differs { // a line for each field that would
			reasons = strings.Split(reasons[0], "; ")
		}
		for _, reason := range reasons {
			lines = append(lines, screen.Wrap(reason, width)...)
		}
		lines = append(lines, screen.Each(screen.Wrap(w.Say("Rule: {1}.", message.ID(kind.Rule)), width), w.Look.Dim.Render)...)
	}
	if unanswered, _ := review.FindField("unanswered"); m.open.Unanswered != "" {
		lines = append(lines, "", w.Look.Strong.Render(w.Say("Not answered")))
		lines = append(lines, screen.Wrap(unanswered.Cell(m.Words, m.open), width)...)
	}
	return lines
}

// facts are all columns of the list, also those that had no room in it.
func (m *Model) facts() string {
	var facts []string
	for _, c := range columns {
		if f := c.field(); c.id != "flags" && f.Text(m.open) != "" {
			facts = append(facts, m.window.Say(c.id)+" "+f.Cell(m.Words, m.open))
		}
	}
	return strings.Join(facts, " · ")
}

// rawLines are the lines of the file as they stand, without what a terminal could
// act on.
func rawLines(raw []byte, width int) []string {
	const most = 2000
	var lines []string
	for line := range strings.Lines(string(raw)) {
		if len(lines) == most {
			return append(lines, "…")
		}
		body := strings.TrimLeft(line, " ")
		lines = append(lines, screen.Cut(strings.Repeat(" ", min(40, len(line)-len(body)))+sanitize.Line(body), width))
	}
	return lines
}

// wordedLines are words about timed cuts, later lines of one set in. Counts are
// worded for the width they are shown in.
func (m *Model) wordedLines(width int) []string {
	if m.state == counting {
		return strings.Split(m.worded, "\n")
	}
	var lines []string
	for _, body := range strings.Split(strings.TrimRight(m.worded, "\n"), "\n") {
		in := body[:len(body)-len(strings.TrimLeft(body, " "))]
		if body = sanitize.Line(body); body == "" {
			lines = append(lines, "")
			continue
		}
		lines = append(lines, screen.Hang(in, body, width)...)
	}
	return lines
}
