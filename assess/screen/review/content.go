package review

import (
	"strings"

	"cutbrief/assess/review"
	"cutbrief/assess/sanitize"
	"cutbrief/assess/screen"
	"cutbrief/report"
	"cutbrief/report/text"
)

// content words the part of the visit that is shown.
func (m *Model) content(width int) string {
	switch {
	case m.state == counting:
		return m.cuts
	case m.state == measuring:
		return m.cutLines(width)
	case m.part == flagsPart:
		return strings.Join(m.flagLines(width), "\n")
	case m.part == rawPart && len(m.raw) == 0:
		return strings.Join(screen.Wrap("There is nothing of this file to show.", width), "\n")
	case m.part == rawPart:
		return strings.Join(rawLines(m.raw, width), "\n")
	case m.visit == nil:
		return strings.Join(screen.Wrap("This file cannot be read as a visit.", width), "\n")
	case m.part == whyPart:
		return text.Why(report.Why(m.visit, m.Range, report.Options{}), width)
	}
	return strings.TrimRight(text.Render(report.Build(m.visit, m.Range, report.Options{}), width), "\n")
}

// flagLines say what needs a second look, why, and by which rule.
func (m *Model) flagLines(width int) []string {
	raised := m.open.Raised()
	lines := append(screen.Wrap(m.open.ShownPath(), width), m.factLines(width)...)
	if len(raised) == 0 {
		return append(lines, "", "Nothing needs a second look.")
	}
	for _, r := range raised {
		kind := r.Flag.Kind()
		lines = append(lines, "", m.look.Strong.Render(kind.Name))
		for _, part := range reasonParts(r) {
			lines = append(lines, screen.Wrap(part, width)...)
		}
		lines = append(lines, screen.Each(screen.Wrap("Rule: "+kind.Rule+".", width), m.look.Dim.Render)...)
	}
	if m.open.Unanswered != "" {
		lines = append(lines, "", m.look.Strong.Render("Not answered"))
		lines = append(lines, screen.Wrap(m.open.Unanswered, width)...)
	}
	return lines
}

// factLines are all columns of the list, also those that had no room in it.
func (m *Model) factLines(width int) []string {
	var facts []string
	for _, c := range offered {
		if f, ok := review.FindField(c.id); ok && c.id != "flags" && f.Text(m.open) != "" {
			facts = append(facts, c.id+" "+strings.Join(f.Items(m.open), ", "))
		}
	}
	return screen.Wrap(strings.Join(facts, " · "), width)
}

// reasonParts are the parts of a reason, a line each: of what would differ today,
// one for each field.
func reasonParts(r review.Raised) []string {
	if r.Flag == review.Differs {
		return strings.Split(r.Reason, "; ")
	}
	return []string{r.Reason}
}

// mostRaw is how much of a file is shown.
const mostRaw = 2000

// rawLines are the lines of the file as they stand, without what a terminal could
// act on.
func rawLines(raw []byte, width int) []string {
	var lines []string
	for line := range strings.Lines(string(raw)) {
		if len(lines) == mostRaw {
			return append(lines, "…")
		}
		body := strings.TrimLeft(line, " ")
		lines = append(lines, screen.Cut(strings.Repeat(" ", min(40, len(line)-len(body)))+sanitize.Line(body), width))
	}
	return lines
}
