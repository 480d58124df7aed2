package interview

import (
	"slices"
	"strings"

	"cutbrief/assess"
	"cutbrief/assess/sanitize"
	"cutbrief/assess/screen"
	"cutbrief/rules/message"

	tea "github.com/charmbracelet/bubbletea"
)

// openSentence asks for a sentence that may answer several questions. What is
// typed at the question stays.
func (m *Model) openSentence() tea.Cmd {
	if m.state == asking {
		m.putAside()
	}
	m.openOver(telling)
	m.wrong, m.said = nil, ""
	m.field = m.typing(screen.OneLine, "")
	return nil
}

// hear looks for facts in what is typed. None is an answer yet.
func (m *Model) hear() tea.Cmd {
	m.said, m.taken, m.refused = strings.TrimSpace(sanitize.Line(m.field.Text())), 0, 0
	m.found, m.rest = m.Visit.Understand(m.said)
	if len(m.found) == 0 {
		m.wrong = []message.Message{message.New("nothing was found in it that answers a question"), message.New("say what is cut, how thick, and on which supply; or press Esc")}
		return nil
	}
	m.state = offering
	return nil
}

// closeSentence goes back to where the sentence was begun.
func (m *Model) closeSentence() tea.Cmd {
	m.found, m.rest, m.said, m.wrong = nil, nil, "", nil
	m.close()
	switch {
	case m.state == listing:
		m.rows = m.listRows()
	case m.state == reading:
	case m.hasAnswer(m.step):
		m.goOn()
	default:
		m.show(m.step)
	}
	return nil
}

func (m *Model) hasAnswer(s assess.Step) bool {
	_, has := m.Visit.Answer(s.Asked())
	return has
}

// takeFound takes the fact shown as the answer to its question.
func (m *Model) takeFound() tea.Cmd {
	m.taken++
	return tea.Batch(m.keep(m.found[0].Answer), m.nextFound())
}

func (m *Model) refuseFound() tea.Cmd {
	m.refused++
	return m.nextFound()
}

// nextFound shows the next fact whose question is asked at all: one about a metal
// that was refused is not.
func (m *Model) nextFound() tea.Cmd {
	m.found = slices.DeleteFunc(m.found[1:], func(f assess.Found) bool { return f.Step.Metal != "" && m.place(f.Step.Asked()) < 0 })
	if len(m.found) > 0 {
		return nil
	}
	rest := m.notUnderstood()
	cmd := m.closeSentence()
	m.Told = message.Join("; ", message.New("{1} taken, {2} refused", message.Count(m.taken), message.Count(m.refused)), rest)
	return cmd
}

// notUnderstood says which parts of the sentence gave nothing.
func (m *Model) notUnderstood() message.Message {
	if len(m.rest) == 0 {
		return message.Message{}
	}
	return message.New("not understood: {1}", outside(strings.Join(m.rest, " / ")))
}

// foundText is the fact offered, as its question shows an answer.
func (m *Model) foundText() message.Message {
	f := m.found[0]
	if f.Step.Question.Form == assess.FormQuantity {
		if _, echo, err := m.Visit.Read(f.Step, strings.TrimSpace(f.Answer.Said+" "+f.Answer.Unit)); err == nil && !echo.IsEmpty() {
			return echo
		}
	}
	return f.Step.Question.Shown(f.Answer)
}

// answeredSoFar is what answers the question of the fact offered so far.
func (m *Model) answeredSoFar() message.Message {
	a, has := m.Visit.Answer(m.found[0].Step.Asked())
	switch {
	case !has:
		return message.Message{}
	case a.State == assess.Unknown:
		return message.New("so far: {1}", message.ID("not known"))
	}
	return message.New("so far: {1}", m.found[0].Step.Question.Shown(a))
}

// offeringLines show one fact with its question, the words that say so, and what
// was not understood.
func (m *Model) offeringLines(width, height int) []string {
	f := m.found[0]
	dim := func(text message.Message) []string {
		if text.IsEmpty() {
			return nil
		}
		return m.styled(m.Look.Dim, width, m.Print(text))
	}
	return m.Stack([]screen.Block{
		{Lines: dim(message.New("found in the sentence: {1} to accept or refuse", message.Count(len(m.found)))), Optional: 2}, {Lines: []string{""}, Optional: 5},
		{Lines: m.styled(m.Look.Strong, width, m.Print(f.Step.Text()))},
		{Lines: m.hung(m.Look.Good, width, screen.Focus, m.Print(m.foundText()))},
		{Lines: dim(m.answeredSoFar()), Optional: 1},
		{Lines: dim(message.New("said: “{1}”", outside(f.Words))), Optional: 3}, {Lines: []string{""}, Optional: 5},
		{Lines: dim(m.notUnderstood()), Optional: 4},
	}, nil, 0, nil, height)
}

// sentence takes a sentence in plain lines, and offers what is found in it.
func (l *lineView) sentence(text string) {
	m := l.m
	m.openSentence()
	m.field = m.typing(screen.OneLine, text)
	if m.hear(); m.state == offering {
		return
	}
	l.Put("Not accepted: {1}.", m.wrong[0])
	m.closeSentence()
}

// offer shows the fact found next.
func (l *lineView) offer() {
	m := l.m
	l.Print("")
	l.Say(m.found[0].Step.Text())
	l.Put("Found: {1}", m.foundText())
	if before := m.answeredSoFar(); !before.IsEmpty() {
		l.Say(before.Capital())
	}
	l.Put("Type yes to accept it, no to refuse it, or back to leave the sentence.")
}

// offered takes the answer to a fact that was offered.
func (l *lineView) offered(line string) {
	switch strings.ToLower(line) {
	case "yes", "y":
		l.do(l.m.takeFound)
	case "no", "n":
		l.do(l.m.refuseFound)
	case "back":
		l.do(l.m.closeSentence)
	case "quit":
		l.over = true
	}
}
