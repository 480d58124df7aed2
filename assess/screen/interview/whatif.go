package interview

import (
	"math"
	"strings"

	"cutbrief/assess"
	"cutbrief/assess/sanitize"
	"cutbrief/assess/screen"
	"cutbrief/report"
	"cutbrief/rules/message"

	tea "github.com/charmbracelet/bubbletea"
)

// supposal is one answer moved on the result; the visit stays as it is until it is
// accepted.
type supposal struct {
	steps  []assess.Step // that can be moved
	at     screen.Focused
	answer *assess.Answer // nil while nothing is moved
	told   report.Supposed
}

// openSupposing shows what the result would be, were one answer another.
func (m *Model) openSupposing() tea.Cmd {
	steps := report.Movable(m.Visit, m.Range)
	if len(steps) == 0 {
		m.Told = message.New("no figure given so far would change the result by itself")
		return nil
	}
	m.state, m.supposal = supposing, supposal{steps: steps}
	m.retell()
	return nil
}

// supposedVisit is the visit with the answer moved.
func (m *Model) supposedVisit() *assess.Visit {
	if a := m.supposal.answer; a != nil {
		return m.Visit.With(*a)
	}
	return m.Visit
}

func (m *Model) retell() {
	s := &m.supposal
	s.told = report.Suppose(m.Visit, m.supposedVisit(), s.steps[s.at].Asked(), m.Range, m.about())
}

// suppose goes to another answer, which puts the one that was moved back, or moves
// the one there is.
func (m *Model) suppose(msg tea.KeyMsg) {
	s := &m.supposal
	switch msg.Type {
	case tea.KeyLeft, tea.KeyRight:
		if a, plausible := m.supposedVisit().Moved(s.steps[s.at], msg.Type == tea.KeyRight); plausible {
			s.answer = &a
			m.retell()
		}
	default:
		if at := s.at; s.at.Key(msg, len(s.steps), 5, func(int) bool { return true }) && s.at != at {
			s.answer = nil
			m.retell()
		}
	}
}

// keepSupposed takes the answer that was moved into the visit.
func (m *Model) keepSupposed() tea.Cmd {
	a := m.supposal.answer
	if a == nil {
		return m.backToResult()
	}
	save := m.keep(*a)
	m.openResult()
	m.Told = message.New("{1}: {2}, as tried", m.supposal.steps[m.supposal.at].Name().Capital(), message.Name(m.supposal.told.Value))
	return save
}

// supposedLines are the answers that can be moved, the scale of the one in focus,
// and what would be recommended.
func (m *Model) supposedLines(width, height int) []string {
	s, look := &m.supposal, m.Look
	var rows []string
	for i, step := range s.steps {
		name := m.Print(step.Name().Capital())
		if i == int(s.at) {
			rows = append(rows, look.Accent.Render(screen.Focus)+look.Strong.Render(screen.Cut(name+"  ← "+s.told.Value+" →", width-2)))
			continue
		}
		a, _ := m.Visit.Answer(step.Asked())
		rows = append(rows, "  "+screen.Cut(name+"  "+m.Print(step.Question.Shown(a)), width-2))
	}
	below := append([]string{"", ruler(s.told.Ends, s.told.At, min(width, 60))}, m.scaleLines(width)...)
	below = append(below, "")
	for _, part := range report.SupposedParts(&s.told) {
		below = append(below, screen.Hang(m.Print(part.Label)+" ", sanitize.Line(part.Text), width)...)
	}
	head := m.styled(look.Dim, width, m.Say("Try another figure. Nothing changes until Enter."))
	room := max(2, height-len(head)-len(below))
	return append(append(head, m.Rows(rows, int(s.at), room)...), screen.Fit(below, height-len(head)-min(room, len(rows)))...)
}

// scaleLines say which system leads along the scale; the line that holds the figure
// stands out.
func (m *Model) scaleLines(width int) []string {
	var lines []string
	for i, text := range m.supposal.told.Scale {
		text = screen.Cut(sanitize.Line(text), width-2)
		if i == m.supposal.told.Here {
			lines = append(lines, m.Look.Accent.Render(screen.Focus)+m.Look.Strong.Render(text))
			continue
		}
		lines = append(lines, "  "+text)
	}
	return lines
}

// ruler draws a scale with its break points, and where the figure stands on it.
func ruler(ends []float64, at float64, width int) string {
	marks := []rune(strings.Repeat("─", width))
	place := func(share float64) int { return min(max(int(math.Round(share*float64(width-1))), 0), width-1) }
	marks[0], marks[width-1] = '├', '┤'
	for _, end := range ends[:max(0, len(ends)-1)] {
		marks[place(end)] = '┼'
	}
	marks[place(at)] = '●'
	return string(marks)
}

// whatIf takes "thickest-clean 14 mm", or with a metal "thickest-clean stainless
// 6 mm", and says what would follow. Nothing changes. Without a figure it lists the
// answers that can be tried.
func (l *lineView) whatIf(rest string) {
	m := l.m
	for _, s := range report.Movable(m.Visit, m.Range) {
		figure, named := cutWords(rest, string(s.Question.ID)+" ")
		if metal, its := cutWords(figure, string(s.Metal)+" "); its && s.Metal != "" {
			figure = metal
		}
		if !named {
			continue
		}
		a, _, err := m.Visit.Read(s, l.Words.Answer(figure))
		if err != nil {
			if s.Metal != "" && figure != rest {
				continue // perhaps of the next metal
			}
			l.Put("Not accepted: {1}.", message.Of(err))
			return
		}
		l.supposed(report.Suppose(m.Visit, m.Visit.With(a), s.Asked(), m.Range, m.about()))
		return
	}
	l.Put("Type what if, an answer and a figure. You can try:")
	for _, s := range report.Movable(m.Visit, m.Range) {
		a, _ := m.Visit.Answer(s.Asked())
		name := strings.TrimSpace(string(s.Question.ID) + " " + string(s.Metal))
		l.Put("- {1}, now {2}", message.Name(name), s.Question.Shown(a))
	}
}

func (l *lineView) supposed(s report.Supposed) {
	l.Put("{1}: {2}. Nothing is changed.", message.Name(s.Name), message.Name(s.Value))
	for _, part := range report.SupposedParts(&s) {
		l.Say(message.Join(" ", part.Label, message.Text(part.Text)))
	}
	for _, text := range s.Scale {
		l.Say(message.Join(" ", message.Text("-"), message.Text(text)))
	}
}
