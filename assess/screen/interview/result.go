package interview

import (
	"strings"

	"cutbrief/assess"
	"cutbrief/assess/sanitize"
	"cutbrief/assess/screen"
	"cutbrief/report"
	"cutbrief/report/text"
	"cutbrief/rules"
	"cutbrief/rules/message"

	tea "github.com/charmbracelet/bubbletea"
)

// openResult shows what the answers come to.
func (m *Model) openResult() {
	m.state, m.wrong, m.behind = reading, nil, nil
	m.layResult()
}

// layResult shows the result from its top, laid out again for every width.
func (m *Model) layResult() { m.text.Show(m.resultLines) }

func (m *Model) resultLines(width int) []string {
	return lines(text.Render(report.Build(m.Visit, m.Range, m.about()), width))
}

// whyLines are how the result was reached.
func (m *Model) whyLines(width int) []string {
	return lines(text.Why(m.Options.Words, report.Why(m.Visit, m.Range, m.about()), width))
}

// about is how the report of this visit is worded.
func (m *Model) about() report.Options {
	return report.Options{Prices: m.Prices, Words: m.Options.Words}
}

func lines(text string) []string { return strings.Split(strings.TrimRight(text, "\n"), "\n") }

// openWhy shows how the result so far was reached. What is typed stays.
func (m *Model) openWhy() tea.Cmd {
	m.openOver(deriving)
	m.text.Show(m.whyLines)
	return nil
}

// toResult shows the result, and leaves open what is open.
func (m *Model) toResult() tea.Cmd {
	m.putAside()
	m.openResult()
	m.dropPaste()
	return nil
}

func (m *Model) makePage() tea.Cmd {
	if m.Pager == nil {
		m.Told = message.New("no page can be made here")
		return nil
	}
	m.Told = message.New("making the page …")
	m.change++
	return pageCmd(m.writer, m.Pager, m.Visit, m.change)
}

func (m *Model) hasPaged(msg pagedMsg) {
	m.saved = max(m.saved, msg.change)
	if msg.err != nil {
		m.Told, m.fault = message.Message{}, message.New("the page was not made: {1}", outside(msg.err.Error()))
		return
	}
	m.page, m.fault = msg.path, message.Message{}
	m.Told = message.New("the page is in {1}", outside(msg.path))
}

// requirements are what can decide a sale, in the language shown.
func (m *Model) requirements() []screen.Choice {
	var list []screen.Choice
	for _, r := range rules.Requirements() {
		list = append(list, screen.Choice{ID: string(r), Text: m.Say(report.RequirementName(r))})
	}
	return list
}

func (m *Model) openChoosing() tea.Cmd {
	var chosen []string
	if o := m.Visit.Overrule; o != nil {
		chosen = []string{string(o.Requirement)}
	}
	m.state, m.wrong = choosing, nil
	m.field = screen.NewField(m.Look, screen.FieldSpec{
		Kind: screen.One, Choices: m.requirements(), Stored: chosen, Has: screen.Draft{Chosen: chosen},
		None: m.Say("let the answers decide"), Width: m.Size.Main(),
	})
	return nil
}

// chooseRequirement asks for the reason of a choice, or lets the answers decide
// again.
func (m *Model) chooseRequirement() tea.Cmd {
	d := m.field.Draft()
	if d.Empty() {
		m.openResult()
		return m.decide(nil)
	}
	m.requirement = rules.Requirement(d.Chosen[0])
	reason := ""
	if o := m.Visit.Overrule; o != nil && o.Requirement == m.requirement {
		reason = sanitize.Line(o.Reason)
	}
	m.state = reasoning
	m.field = m.typing(screen.OneLine, reason)
	return nil
}

func (m *Model) keepReason() tea.Cmd {
	reason := strings.TrimSpace(sanitize.Line(m.field.Text()))
	if reason == "" {
		m.wrong = []message.Message{message.New("a choice of your own needs a reason"), message.New("say in a few words what you saw or heard; it is kept and printed")}
		return nil
	}
	m.openResult()
	return m.decide(&rules.Overrule{Requirement: m.requirement, Reason: reason})
}

// decide keeps the rep's choice of what decides; nil lets the answers decide.
func (m *Model) decide(o *rules.Overrule) tea.Cmd {
	if o == nil && m.Visit.Overrule == nil {
		return nil
	}
	m.Visit.Overrule = o
	m.think()
	m.layResult()
	m.Told = message.New("your choice and your reason are kept")
	if o == nil {
		m.Told = message.New("the answers decide again")
	}
	return m.save()
}

// reasonTitle asks for a reason.
func (m *Model) reasonTitle() string {
	return m.Say("Why does {1} decide?", report.RequirementName(m.requirement))
}

// company names the question whose answer is at the top.
var company = assess.Step{Question: &assess.Question{ID: assess.FactCompany}}
