package interview

import (
	"fmt"
	"slices"
	"strings"

	"cutbrief/assess"
	"cutbrief/assess/screen"
	"cutbrief/assess/screen/words"
	"cutbrief/rules/message"

	"github.com/charmbracelet/bubbles/key"
)

// View draws the present state. It is a function of the model alone.
func (m *Model) View() string {
	f := screen.Frame{Size: m.size, Look: m.look, Left: m.say(m.title()), Right: m.say(m.progress()), Foot: m.foot(), Side: m.side}
	room := m.size.Room(len(f.Foot))
	switch m.state {
	case noting:
		f.Body = m.viewNoting(room)
	case explaining:
		f.Body = m.viewExplaining()
	case listing:
		f.Body, f.Wide = m.viewListing(room), true
	case reading, deriving:
		return m.viewReading(f)
	case overruling:
		f.Body = m.viewOverruling(room)
	case reasoning:
		f.Body = m.viewReasoning()
	case leaving:
		f.Body = m.viewLeaving()
	case placing:
		f.Body = m.viewPlacing()
	default:
		f.Body = m.viewAsking(room)
	}
	f.Body = m.moreSaid(f.Body)
	return f.Render()
}

func (m *Model) title() string {
	name := "cutbrief"
	if s, ok := m.visit.Answer(assess.Step{Question: company}.Asked()); ok && s.Said != "" {
		name += " · " + outside(s.Said)
	}
	if m.visit.Demo {
		name += " · invented"
	}
	return name
}

// company names the question whose answer stands at the top.
var company = &assess.Question{ID: assess.FactCompany}

// progress says how many questions are open and, until all answers are on the
// disk, that they are not yet there.
func (m *Model) progress() string {
	kept := ""
	switch {
	case m.unsaved():
		kept = "NOT SAVED · "
	case m.saved < m.change:
		kept = "saving · "
	}
	if m.open == 0 {
		return kept + "all answered"
	}
	return fmt.Sprintf("%s%d still open", kept, m.open)
}

// foot lists the keys of the present state.
func (m *Model) foot() []string {
	k := m.keys
	var keys []key.Binding
	switch m.state {
	case noting:
		keys = []key.Binding{k.done, k.newLine, k.back, k.leave}
	case explaining:
		keys = []key.Binding{k.closeIt, k.quit}
	case listing:
		keys = []key.Binding{k.move, k.gotoItem, k.nextOpen, k.result, k.leaveOut, k.back, k.quit}
	case reading:
		keys = []key.Binding{k.scroll, k.page, k.derive, k.change, k.overrule, k.back, k.quit}
		if m.open > 0 {
			keys = slices.Insert(keys, 3, k.nextOpen)
		}
	case deriving:
		keys = []key.Binding{k.scroll, k.back, k.quit}
	case overruling, reasoning, placing:
		keys = []key.Binding{k.accept, k.back, k.leave}
	case leaving:
		if m.pending == 0 {
			keys = []key.Binding{k.retry, k.stay, screen.Key("^C", "leave without saving", "ctrl+c")}
		}
	default:
		keys = m.askingKeys()
	}
	if m.offersPlace() {
		keys = slices.Insert(keys, 1, k.elsewhere)
	}
	return m.look.Keys(m.size.Width-2, m.keysSaid(keys)...)
}

// askingKeys are the keys beside a question; the window's last lines go to the
// first of them.
func (m *Model) askingKeys() []key.Binding {
	k := m.keys
	keys := []key.Binding{k.accept}
	if m.field.kind == assess.FormLong {
		keys = append(keys, k.newLine)
	}
	keys = append(keys, k.back, k.later, k.unknown, k.leave)
	if m.size.Roomy() {
		keys = append(keys, k.explain, k.note, k.list, k.skip, k.finish, k.how)
	}
	if m.size.Side() > 0 {
		keys = append(keys, k.why)
	}
	return keys
}

// block is a part of the body; those with the highest number are the first to
// go where there is no room.
type block struct {
	lines []string
	spare int
}

// viewAsking shows the question, the field, and how the answer stands.
func (m *Model) viewAsking(room int) []string {
	width, q := m.size.Main(), m.step.Question
	at, of := words.Place(m.steps, m.step)
	top := []block{
		{[]string{m.look.Dim.Render(m.say(fmt.Sprintf("%s · %d of %d%s", words.GroupTitle(q.Group), at, of, m.turn())))}, 2},
		{[]string{""}, 6},
		{screen.Each(m.wrap(m.step.Text().String(), width), m.look.Strong.Render), 0},
		{screen.Each(m.wrap(string(q.Why), width), m.look.Dim.Render), 3},
		{m.example(), 4},
		{m.offerLines(), 3},
		{[]string{""}, 5},
	}
	below := []block{
		m.answerBlock(),
		{[]string{""}, 5},
		{m.standingLines(), 1},
		{m.noteLine(), 3},
		{m.pasteLines(), 1},
		{m.settledLines(), 2},
	}
	field, focus := m.field.view()
	return fit(top, field, focus, below, room)
}

// fit puts the blocks around the field, leaves out the spare ones until there
// is room, and shows of the field what is around the focus.
func fit(top []block, field []string, focus int, below []block, room int) []string {
	for spare := 6; spare > 0 && tall(top)+len(field)+tall(below) > room; spare-- {
		top, below = without(top, spare), without(below, spare)
	}
	field = screen.Around(field, focus, room-tall(top)-tall(below))
	return slices.Concat(flat(top), field, flat(below))
}

func tall(blocks []block) int {
	n := 0
	for _, b := range blocks {
		n += len(b.lines)
	}
	return n
}

func without(blocks []block, spare int) []block {
	return slices.DeleteFunc(slices.Clone(blocks), func(b block) bool { return b.spare == spare })
}

func flat(blocks []block) []string {
	var lines []string
	for _, b := range blocks {
		lines = append(lines, b.lines...)
	}
	return lines
}

// example shows an answer to what is typed, or how to choose from a list.
func (m *Model) example() []string {
	switch m.field.kind {
	case assess.FormOne:
		return []string{m.look.Dim.Render(m.say("a number takes it; or arrows, then Enter"))}
	case assess.FormSeveral:
		return []string{m.look.Dim.Render(m.say("Space or a number ticks, then Enter"))}
	}
	return screen.Each(m.hang(m.say("such as: "), string(m.step.Question.Example), m.size.Main()), m.look.Dim.Render)
}

// answer is the line under the field: what is wrong with it, what just
// happened, or how it is understood.
func (m *Model) answer() []string {
	width := m.size.Main()
	switch {
	case len(m.wrong) > 0:
		return m.wrongLines(width)
	case m.fault != "":
		return m.faultLines(width)
	case m.echo != "":
		return screen.Each(m.hang("  ", m.echo, width), m.look.Good.Render)
	case m.told != "":
		return screen.Each(m.wrap(m.told, width), m.look.Dim.Render)
	}
	return []string{""}
}

// answerBlock is that line; an empty one is spare.
func (m *Model) answerBlock() block {
	lines := m.answer()
	if len(lines) == 1 && lines[0] == "" {
		return block{lines, 6}
	}
	return block{lines, 0}
}

func (m *Model) wrongLines(width int) []string {
	lines := screen.Each(m.hang("! ", m.wrong[0], width), m.look.Bad.Render)
	for _, hint := range m.wrong[1:] {
		lines = append(lines, m.hang("  ", hint, width)...)
	}
	return lines
}

// faultLines say what was not saved. Nothing is lost while the screen is open.
func (m *Model) faultLines(width int) []string {
	lines := screen.Each(m.hang("! ", m.fault, width), m.look.Bad.Render)
	return append(lines, m.hang("  ", "the answers are still here; each new one tries again", width)...)
}

// standingLines say whether an answer is stored, which, and how it is known.
func (m *Model) standingLines() []string {
	a, has := m.visit.Answer(m.step.Asked())
	width := m.size.Main()
	if !has {
		return m.hang(screen.Free, m.unanswered(), width)
	}
	mark, _ := m.stateOf(m.step)
	said := words.Marked(m.step.Question, a)
	if m.field.isList() && a.State != assess.Unknown && len([]rune(m.say(said))) > width-20 {
		said = "answered" // the list shows which
	}
	if a.State != assess.Unknown {
		said += " · " + string(m.how)
	}
	if len(m.wrong) == 0 && !m.field.draft().equal(m.standing(m.step)) {
		said += " · Enter takes the new answer"
	}
	return screen.Each(m.hang(mark, said, width), m.look.Good.Render)
}

// unanswered says how things stand before there is an answer.
func (m *Model) unanswered() string {
	text := "not answered yet"
	if m.step.Question.Optional {
		text = "not answered, and may stay so"
	}
	if m.how != assess.Told {
		text += " · will be kept as " + string(m.how)
	}
	switch d := m.field.draft(); {
	case d.empty(), len(m.wrong) > 0: // Enter was tried, and did not take it
	case m.suggest[m.step.Question.ID] != "" && d.equal(m.standing(m.step)):
		text += " · usual, and Enter takes it"
	default:
		text += " · Enter takes it"
	}
	return text
}

func (m *Model) noteLine() []string {
	a, _ := m.visit.Answer(m.step.Asked())
	if a.Note == "" {
		return nil
	}
	return []string{m.cut("note: "+outside(a.Note), m.size.Main())}
}

func (m *Model) viewNoting(room int) []string {
	width := m.size.Main()
	top := []block{
		{[]string{m.look.Dim.Render(m.say("a note to"))}, 1},
		{screen.Each(m.wrap(m.step.Text().String(), width), m.look.Strong.Render), 0},
		{[]string{""}, 2},
	}
	field, _ := m.field.view()
	return fit(top, field, 0, nil, room)
}

func (m *Model) viewExplaining() []string {
	width, q := m.size.Main(), m.step.Question
	lines := screen.Each(m.wrap(m.step.Text().String(), width), m.look.Strong.Render)
	lines = append(append(lines, ""), m.wrap(string(q.Why), width)...)
	if q.Help != "" {
		lines = append(append(lines, ""), m.wrap(string(q.Help), width)...)
	}
	return append(append(lines, ""), m.hang(m.say("such as: "), string(q.Example), width)...)
}

// viewListing shows as many rows as there is room for, around the focus.
func (m *Model) viewListing(room int) []string {
	lines := make([]string, len(m.rows))
	for i, r := range m.rows {
		lines[i] = m.rowLine(r, i == m.at)
	}
	told := m.answer()
	return append(screen.Around(lines, m.at, room-len(told)), told...)
}

func (m *Model) rowLine(r row, focused bool) string {
	lead := strings.Repeat(" ", len([]rune(screen.Focus)))
	if focused {
		lead = m.look.Accent.Render(screen.Focus)
	}
	width := m.size.Width - 4
	switch {
	case r.skipped:
		return lead + screen.Cut(m.look.Strong.Render(m.say(r.title))+m.say(" – left out; Enter takes it back"), width)
	case r.put:
		return lead + screen.Cut(m.look.Strong.Render(m.say(r.title))+m.say(" – put off, comes last"), width)
	case r.step.Question == nil:
		return lead + m.look.Strong.Render(m.cut(r.title, width))
	}
	name := screen.Cut(r.mark+m.say(r.step.Name().String()), width)
	if left := width - len([]rune(name)) - 2; r.value != "" && left > 5 {
		name += "  " + m.look.Dim.Render(m.cut(r.value, left))
	}
	return lead + name
}

// viewReading shows the result, or its derivation, over the whole width.
func (m *Model) viewReading(f screen.Frame) string {
	f.Side, f.Wide = nil, true
	f.Body = append(strings.Split(m.result.View(), "\n"), m.readingLine())
	return f.Render()
}

// readingLine is the line under the result: a fault, what just happened, or how
// far down one is.
func (m *Model) readingLine() string {
	more := m.look.Dim.Render(m.say(screen.More(m.result.AtTop(), m.result.AtBottom())))
	switch {
	case m.fault != "":
		return m.look.Bad.Render("! "+m.say(m.fault)) + "  " + more
	case m.told != "":
		return m.look.Good.Render(m.say(m.told)) + "  " + more
	}
	return more
}

func (m *Model) viewOverruling(room int) []string {
	width := m.size.Main()
	top := []block{
		{screen.Each(m.wrap("What decides this sale, in your own judgement?", width), m.look.Strong.Render), 0},
		{screen.Each(m.wrap("The answers point at: "+orElse(message.Keep(m.panel.Critical), "nothing yet"), width), m.look.Dim.Render), 1},
		{[]string{""}, 2},
	}
	field, focus := m.field.view()
	return fit(top, field, focus, nil, room)
}

func (m *Model) viewReasoning() []string {
	width := m.size.Main()
	named := string(m.requirement)
	for _, o := range words.Requirements() {
		if o.ID == named {
			named = string(o.Text)
		}
	}
	lines := screen.Each(m.wrap("Why does "+named+" decide?", width), m.look.Strong.Render)
	lines = append(lines, screen.Each(m.wrap("Your reason is kept and printed beside your choice.", width), m.look.Dim.Render)...)
	field, _ := m.field.view()
	lines = append(append(lines, ""), field...)
	if len(m.wrong) > 0 {
		lines = append(lines, m.wrongLines(width)...)
	}
	return lines
}

func (m *Model) viewLeaving() []string {
	if m.pending > 0 || m.fault == "" {
		return []string{"", m.say("Saving …")}
	}
	return append([]string{""}, m.faultLines(m.size.Main())...)
}

func orElse(s, otherwise string) string {
	if s == "" {
		return otherwise
	}
	return s
}
