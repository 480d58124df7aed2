package interview

import (
	"strings"

	"cutbrief/assess"
	"cutbrief/assess/sanitize"
	"cutbrief/assess/screen"
	"cutbrief/rules/message"

	"github.com/charmbracelet/lipgloss"
)

// Title is whose visit it is, and how many questions are open; until all answers
// are on the disk, that they are not yet there.
func (m *Model) Title() (left, right string) {
	left, right = "cutbrief", m.Say("all answered")
	if a, ok := m.Visit.Answer(company.Asked()); ok && a.Said != "" {
		left += " · " + sanitize.Line(a.Said)
	}
	if m.Visit.Demo {
		left += " · " + m.Say("invented")
	}
	if m.open > 0 {
		right = m.Print(message.Counted(m.open, "{1} question left", "{1} questions left"))
	}
	switch {
	case m.unsaved():
		right = m.Say("NOT SAVED") + " · " + right
	case m.saved < m.change:
		right = m.Say("saving") + " · " + right
	}
	return left, right
}

// Body draws the present state.
func (m *Model) Body(width, height int) []string {
	field, focus := m.field.Lines()
	switch m.state {
	case listing:
		return m.listLines(width, height)
	case reading, deriving:
		return m.text.Lines(m.remark())
	case supposing:
		return m.supposedLines(width, height)
	case leaving:
		if m.pending > 0 || m.fault.IsEmpty() {
			return []string{"", m.Say("Saving …")}
		}
		return append([]string{""}, m.faultLines(width)...)
	case noting:
		return m.Stack([]screen.Block{
			{Lines: m.styled(m.Look.Dim, width, m.Say("note for this question")), Optional: 1},
			{Lines: m.asked(width)}, {Lines: []string{""}, Optional: 2},
		}, field, 0, nil, height)
	case choosing:
		critical := m.panel.Critical
		return m.Stack([]screen.Block{
			{Lines: m.styled(m.Look.Strong, width, m.Say("What do you think decides this sale?"))},
			{Lines: m.styled(m.Look.Dim, width, m.Say("The answers point to: {1}", message.Name(critical))), Optional: 1}, {Lines: []string{""}, Optional: 2},
		}, field, focus, nil, height)
	case reasoning:
		return m.typingLines(width, height, m.reasonTitle(), m.Say("Your reason is kept and printed beside your choice."))
	case placing:
		return m.typingLines(width, height, m.Say("Where else should the visit be saved?"),
			m.Say("Name a folder or a new file. Nothing changes in the first place."))
	case telling:
		return m.typingLines(width, height, m.Say("What did they say?"),
			m.Say("Type it as it was said, such as: half inch plate most days, 230 single phase, 30 amp breaker. Each answer found is shown before it counts."))
	case offering:
		return m.offeringLines(width, height)
	}
	return m.Stack(m.aboveField(width), field, focus, m.belowField(width), height)
}

// typingLines are a text to be typed, below its question.
func (m *Model) typingLines(width, height int, title, more string) []string {
	field, focus := m.field.Lines()
	var wrong []screen.Block
	if len(m.wrong) > 0 {
		wrong = []screen.Block{{Lines: m.wrongLines(width)}}
	}
	return m.Stack([]screen.Block{
		{Lines: m.styled(m.Look.Strong, width, title)}, {Lines: m.styled(m.Look.Dim, width, more), Optional: 1}, {Lines: []string{""}, Optional: 2},
	}, field, focus, wrong, height)
}

// styled wraps a text in lines of one style.
func (m *Model) styled(style lipgloss.Style, width int, text string) []string {
	return screen.Each(screen.Wrap(text, width), style.Render)
}

// hung is styled behind a first word, which the later lines are set in below.
func (m *Model) hung(style lipgloss.Style, width int, first, text string) []string {
	return screen.Each(screen.Hang(first, text, width), style.Render)
}

func (m *Model) asked(width int) []string {
	return m.styled(m.Look.Strong, width, m.Print(m.step.Text()))
}

// aboveField are the question, why it is asked, and how to answer.
func (m *Model) aboveField(width int) []screen.Block {
	q := m.step.Question
	return []screen.Block{
		{Lines: []string{m.Look.Dim.Render(m.Print(message.Join(" · ", q.Group.Title(), m.turn())))}, Optional: 2},
		{Lines: []string{""}, Optional: 6},
		{Lines: m.asked(width)},
		{Lines: m.styled(m.Look.Dim, width, m.Say(q.Why)), Optional: 3},
		{Lines: m.styled(m.Look.Dim, width, m.Print(m.howTo())), Optional: 4},
		{Lines: m.offerLines(width), Optional: 3},
		{Lines: []string{""}, Optional: 5},
	}
}

// turn says why a question comes when it does, where that is not plain.
func (m *Model) turn() message.Message {
	switch {
	case m.Visit.Idle(m.step, &m.panel.Result):
		return message.New("no longer decides")
	case m.course.Last():
		return message.New("skipped before")
	}
	return message.Message{}
}

// howTo shows an answer to what is typed, or how to choose from a list.
func (m *Model) howTo() message.Message {
	switch m.field.Spec.Kind {
	case screen.One:
		return message.New("type a number, or use the arrows and Enter")
	case screen.Several:
		return message.New("tick with Space or a number, then press Enter")
	}
	return message.New("for example: {1}", m.step.Question.Example)
}

// offerLines say what one key takes.
func (m *Model) offerLines(width int) []string {
	o, offered := m.Visit.Offered(m.step)
	if !offered {
		return nil
	}
	return m.styled(m.Look.Dim, width, m.Say("type = for {1}: {2}", m.step.Question.Said(o.Text()), o.Why))
}

// belowField are how what is typed is understood, and how the answer is known.
func (m *Model) belowField(width int) []screen.Block {
	a, _ := m.answer()
	note := []string{}
	if a.Note != "" {
		note = []string{screen.Cut(m.Say("note: {1}", outside(a.Note)), width)}
	}
	var waiting, settled []string
	if len(m.paste) > 0 {
		waiting = m.styled(lipgloss.NewStyle(), width, m.Say("{1} will follow this answer", pastedLines(m.paste)))
	}
	if m.isSettled() {
		settled = m.styled(m.Look.Good, width, m.Print(message.New("{1}: ^R shows the result", settledText)))
	}
	heard := screen.Block{Lines: m.remarkLines(width)}
	if heard.Lines == nil {
		heard = screen.Block{Lines: []string{""}, Optional: 6}
	}
	return []screen.Block{
		heard, {Lines: []string{""}, Optional: 5}, {Lines: m.standingLines(width), Optional: 1},
		{Lines: note, Optional: 3}, {Lines: waiting, Optional: 1}, {Lines: settled, Optional: 2},
	}
}

// settledText says that the interview may end.
const settledText message.ID = "no likely answer to the other questions can change the recommendation"

func (m *Model) isSettled() bool { return m.open > 0 && m.Visit.Settled(&m.panel.Result) }

// remarkLines say what is wrong with the answer, what just happened, or how what
// is typed is understood.
func (m *Model) remarkLines(width int) []string {
	switch {
	case len(m.wrong) > 0:
		return m.wrongLines(width)
	case !m.fault.IsEmpty():
		return m.faultLines(width)
	case !m.echo.IsEmpty():
		return m.hung(m.Look.Good, width, "  ", m.Print(m.echo))
	case !m.Told.IsEmpty():
		return m.styled(m.Look.Dim, width, m.Print(m.Told))
	}
	return nil
}

func (m *Model) wrongLines(width int) []string {
	lines := m.hung(m.Look.Bad, width, "! ", m.Print(m.wrong[0]))
	for _, hint := range m.wrong[1:] {
		lines = append(lines, screen.Hang("  ", m.Print(hint), width)...)
	}
	return lines
}

// faultLines say what was not saved. Nothing is lost while the screen is open.
func (m *Model) faultLines(width int) []string {
	lines := m.hung(m.Look.Bad, width, "! ", m.Print(m.fault))
	return append(lines, screen.Hang("  ", m.Say("your answers are still here; the next one tries again"), width)...)
}

// standingLines say whether an answer is stored, which, and how it is known.
func (m *Model) standingLines(width int) []string {
	a, has := m.answer()
	if !has {
		return screen.Hang(screen.Free, m.Print(m.unanswered()), width)
	}
	mark, _ := m.stateOf(m.step)
	shown := m.step.Question.Shown(a)
	if m.field.IsList() && a.State != assess.Unknown && len([]rune(m.Print(shown))) > width-20 {
		shown = message.New("answered") // the list shows which
	}
	parts := []message.Message{shown}
	if a.State != assess.Unknown {
		parts = append(parts, stateNames[m.known].Message())
	}
	if len(m.wrong) == 0 && !m.field.Draft().Equal(m.standing(m.step)) {
		parts = append(parts, message.New("Enter accepts the new answer"))
	}
	return m.hung(m.Look.Good, width, mark, m.Print(message.Join(" · ", parts...)))
}

// unanswered says how things are before there is an answer.
func (m *Model) unanswered() message.Message {
	parts := []message.Message{message.New("not answered yet")}
	if m.step.Question.Optional {
		parts[0] = message.New("optional, not answered")
	}
	if m.known != assess.Told {
		parts = append(parts, message.New("will be kept as {1}", stateNames[m.known]))
	}
	switch d := m.field.Draft(); {
	case d.Empty(), len(m.wrong) > 0: // Enter was tried, and did not take it
	case m.Suggest[m.step.Question.ID] != "" && d.Equal(m.standing(m.step)):
		parts = append(parts, message.New("the usual answer: Enter accepts it"))
	default:
		parts = append(parts, message.New("Enter accepts it"))
	}
	return message.Join(" · ", parts...)
}

// Help explains the question at length.
func (m *Model) Help(width int) []string {
	if m.state != asking {
		return nil
	}
	q := m.step.Question
	text := append(m.asked(width), "")
	text = append(text, screen.Wrap(m.Say(q.Why), width)...)
	if q.Help != "" {
		text = append(append(text, ""), screen.Wrap(m.Say(q.Help), width)...)
	}
	return append(append(text, ""), screen.Wrap(m.Say("for example: {1}", q.Example), width)...)
}

// listLines are as many rows as there is room for, around the focus.
func (m *Model) listLines(width, height int) []string {
	lines := make([]string, len(m.rows))
	for i, r := range m.rows {
		lines[i] = "  " + m.rowLine(r, width-2)
		if i == int(m.at) {
			lines[i] = m.Look.Accent.Render(screen.Focus) + m.rowLine(r, width-2)
		}
	}
	remark := m.remarkLines(width)
	if remark == nil {
		remark = []string{""}
	}
	return append(m.Rows(lines, int(m.at), height-len(remark)), remark...)
}

func (m *Model) rowLine(r row, width int) string {
	if r.step.Question == nil {
		title := m.Print(r.group.Title())
		rest := ""
		if r.skipped {
			rest = " – " + m.Say("skipped; Enter brings it back")
		} else if r.put {
			rest = " – " + m.Say("comes at the end")
		}
		return screen.Cut(m.Look.Strong.Render(title)+rest, width)
	}
	name := screen.Cut(r.mark+m.Print(r.step.Name()), width)
	if left := width - lipgloss.Width(name) - 2; !r.value.IsEmpty() && left > 5 {
		name += "  " + m.Look.Dim.Render(screen.Cut(m.Print(r.value), left))
	}
	return name
}

// remark is the line under the result: a fault, or what just happened.
func (m *Model) remark() string {
	switch {
	case !m.fault.IsEmpty():
		return m.Look.Bad.Render("! " + m.Print(m.fault))
	case !m.Told.IsEmpty():
		return m.Look.Good.Render(m.Print(m.Told))
	}
	return ""
}

// Panel is what the answers mean so far.
func (m *Model) Panel(width int) []string {
	if m.state == listing || m.state == reading || m.state == deriving || m.state == supposing {
		return nil
	}
	p := &m.panel
	var first, next, decides []string
	for _, name := range p.First {
		first = append(first, "- "+name)
	}
	if len(first) == 0 {
		next = inShort(most(p.Ask, 4), width)
	}
	if p.Result.Critical.Requirement != "" {
		decides = []string{p.Critical}
	}
	return m.Parts(width,
		screen.Part{Title: m.Say("To size a system, tell me"), Texts: first},
		screen.Part{Title: m.Say("Capacity needed"), Texts: []string{p.Need, p.Because}},
		screen.Part{Title: m.Say("What decides"), Texts: decides},
		screen.Part{Title: m.Say("Systems that fit so far"), Texts: m.fitting()},
		screen.Part{Title: m.Say("Check these answers"), Texts: most(p.Flags, 2)},
		screen.Part{Title: m.Say("Ask next"), Texts: next})
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

// fitting lists the first systems that fit so far, and counts the others.
func (m *Model) fitting() []string {
	const shown = 3
	list := most(m.panel.In, shown)
	if more := len(m.panel.In) - shown; more > 0 {
		list = append(list, m.Say("and {1} more", message.Count(more)))
	}
	if out := m.panel.Out; out > 0 {
		list = append(list, m.Print(message.Counted(out, "{1} is not enough", "{1} are not enough")))
	}
	return list
}

// most are the first n of some texts that may hold what was typed.
func most(list []string, n int) []string {
	var first []string
	for _, text := range list[:min(n, len(list))] {
		first = append(first, strings.TrimSpace(sanitize.Line(text)))
	}
	return first
}
