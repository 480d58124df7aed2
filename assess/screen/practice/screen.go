package practice

import (
	"context"
	"fmt"
	"io"
	"slices"
	"strings"

	"cutbrief/assess/casebook"
	"cutbrief/assess/sanitize"
	"cutbrief/assess/screen"
	"cutbrief/report"
	"cutbrief/rules/message"

	tea "github.com/charmbracelet/bubbletea"
)

// Model is the practice on a full screen: the question on top, what the customer
// said below it, a line for the note at the foot, and beside them the time and
// what the notes mean so far. Its methods run one at a time, in Bubble Tea's loop.
type Model struct {
	screen.Basic
	window *screen.Window
	talk   *dialogue

	input  screen.Line
	drafts map[string]string // typed and not noted, by the name of the question
	heard  []string          // what was said and done, the newest last
	log    screen.Text       // it, laid out
	panel  report.Panel
	listed bool        // the list of questions is shown
	shown  []string    // the list, the decision or the mark
	sheet  screen.Text // it, laid out
}

func newModel(s *casebook.Session, words *message.Catalog) *Model {
	m := &Model{talk: newDialogue(s, words), drafts: map[string]string{}, input: screen.NewLine("")}
	m.window = screen.NewWindow(m, words)
	m.sheet, m.log = screen.NewText(m.window), screen.NewText(m.window)
	m.log.Beside = true
	m.log.Show(m.heardLines)
	m.talk.greet()
	m.talk.say("Invented. Enter asks, or notes what you typed; (1) is a minute of their time.")
	m.hear(m.talk.said()...)
	m.panel = m.talk.panel()
	return m
}

// Run shows the practice until the trainee leaves, a signal ends it or ctx is
// done. marked is false if it was left before the mark; the error is the
// terminal's.
func Run(ctx context.Context, in io.Reader, out io.Writer, s *casebook.Session, words *message.Catalog) (mark casebook.Mark, isMarked bool, err error) {
	m := newModel(s, words)
	err = m.window.Run(ctx, in, out)
	return m.talk.mark, m.talk.mark.Customer != nil, err
}

// Commands are those of the present stage. While a note is typed, the keys beside
// a question are control keys; where a terminal keeps one of them for itself, the
// word typed as a line does the same.
func (m *Model) Commands() []screen.Command {
	k := m.window.Keys
	leave := screen.Command{Binding: k.Leave, Do: m.Leave}
	switch {
	case m.talk.stage == marked:
		return []screen.Command{{Binding: k.Scroll}, {Binding: k.Why, Do: m.does(m.talk.why)}, {Binding: k.Back, Do: m.does(m.talk.page)}, {Binding: k.Quit, Do: m.Leave}}
	case m.talk.stage == deciding:
		return []screen.Command{{Binding: k.Accept, Do: m.enter}, {Binding: k.Scroll}, {Binding: k.Back, Do: m.does(m.talk.stepBack)}, leave}
	case m.listed:
		return []screen.Command{{Binding: k.Accept, Do: m.enter}, {Binding: k.Scroll}, {Binding: screen.Bind("back", "esc", "shift+tab", "ctrl+l"), Do: m.closeList}, leave}
	}
	ask := func(i int) screen.Command {
		a := acts[i]
		return screen.Command{Binding: screen.Bind(message.ID(m.window.Say("{1} ({2})", a.word, message.Count(a.act.Minutes()))), a.key), Do: m.does(func() { m.talk.act(a.act) })}
	}
	list := []screen.Command{
		{Binding: screen.Bind("ask or note", "enter", "ctrl+j"), Do: m.enter}, {Binding: screen.Bind("next question", "tab"), Do: m.does(func() { m.talk.move(1) })},
		ask(1), {Binding: screen.Bind("done", "ctrl+t"), Do: m.does(func() { m.talk.conclude(0) })}, leave, ask(0),
	}
	for i := 2; i < len(acts); i++ {
		list = append(list, ask(i))
	}
	return append(list, screen.Command{Binding: k.Back, Do: m.does(func() { m.talk.move(-1) })}, screen.Command{Binding: k.NotKnown, Do: m.does(m.talk.notKnown)},
		screen.Command{Binding: k.List, Do: m.openList}, screen.Command{Binding: k.Scroll})
}

// does has the dialogue do something and shows what comes of it: as heard, or as
// the sheet where a sheet is shown.
func (m *Model) does(do func()) func() tea.Cmd {
	return func() tea.Cmd {
		before := m.talk.step.Asked()
		m.talk.width = min(max(m.window.Size.Width-2, 1), 100)
		do()
		said := m.talk.said()
		for len(said) > 0 && said[0] == "" {
			said = said[1:]
		}
		switch {
		case m.talk.stage == left:
			return tea.Quit
		case m.talk.stage != talking:
			m.listed = false
			m.open(said)
		case m.talk.step.Asked() != before: // the question is drawn from the step
			m.listed = false
			m.drafts[fmt.Sprint(before)] = m.input.Text()
			m.input = screen.NewLine(m.drafts[fmt.Sprint(m.talk.step.Asked())])
		default:
			m.hear(said...)
		}
		m.panel = m.talk.panel()
		return nil
	}
}

// hear puts lines behind what was said and done, and shows the last of it.
func (m *Model) hear(lines ...string) {
	m.heard = append(m.heard, lines...)
	m.log.Lay()
	m.log.End()
}

// open shows lines as the sheet, from their top.
func (m *Model) open(lines []string) {
	m.shown = lines
	m.sheet.Show(m.sheetLines)
}

func (m *Model) sheetLines(width int) []string {
	var lines []string
	for _, l := range m.shown {
		if l == "" {
			lines = append(lines, "")
		}
		lines = append(lines, screen.Wrap(l, width)...)
	}
	return lines
}

func (m *Model) openList() tea.Cmd {
	m.talk.say("Type a number to go to that question.")
	m.talk.listAll()
	m.listed = true
	m.open(m.talk.said())
	return nil
}

func (m *Model) closeList() tea.Cmd {
	m.input, m.listed = screen.NewLine(""), false
	return nil
}

// enter takes what is typed: a note, a number of the list, a decision. With nothing
// typed it asks what was not asked yet.
func (m *Model) enter() tea.Cmd {
	line := strings.TrimSpace(m.input.Text())
	m.input = screen.NewLine("")
	switch {
	case line != "" && m.listed:
		m.listed = false
		return m.does(func() { m.talk.jump(line) })()
	case line != "" && m.talk.stage == deciding:
		return m.decide(line)
	case line != "":
		return m.does(func() { m.talk.line(line) })()
	case m.talk.stage != talking || m.listed:
		return nil
	case !m.talk.session.Asked(m.talk.step.Asked()):
		return m.does(func() { m.talk.act(casebook.Ask) })()
	}
	m.hear(m.window.Say("Type what you understood, follow up, or go on with Tab."))
	return nil
}

// decide takes a decision. One that is refused stays, with what is wrong below it.
func (m *Model) decide(line string) tea.Cmd {
	stage, asked, shown := m.talk.stage, m.talk.asked, m.shown
	cmd := m.does(func() { m.talk.line(line) })()
	if m.talk.stage == stage && m.talk.asked == asked {
		shown = slices.DeleteFunc(slices.Clone(shown), func(l string) bool { return strings.HasPrefix(l, refused) })
		m.open(append(shown, refused+strings.Join(m.shown, " ")))
		m.sheet.End()
	}
	return cmd
}

// refused begins the line that says what is wrong with what was typed.
const refused = "! "

// Typing is the line for a note or an answer.
func (m *Model) Typing() (string, bool) { return m.input.Text(), m.talk.stage != marked }

// Type edits the line, and scrolls where a key does nothing to a line.
func (m *Model) Type(msg tea.KeyMsg) tea.Cmd {
	scrolls := slices.Contains([]tea.KeyType{tea.KeyUp, tea.KeyDown, tea.KeyPgUp, tea.KeyPgDown}, msg.Type) ||
		m.input.Text() == "" && (msg.Type == tea.KeyHome || msg.Type == tea.KeyEnd)
	switch {
	case !scrolls && m.talk.stage != marked:
		m.input.Key(msg)
	case m.talk.stage != talking || m.listed:
		m.sheet.Key(msg)
	default:
		m.log.Key(msg)
	}
	return nil
}

// Help is why the question is asked, and what a note is like.
func (m *Model) Help(width int) []string {
	if m.talk.stage != talking || m.listed {
		return nil
	}
	m.talk.help()
	var lines []string
	for _, l := range m.talk.said() {
		lines = append(lines, screen.Wrap(l, width)...)
	}
	return lines
}

// Title is the customer and the time left.
func (m *Model) Title() (left, right string) {
	s := m.talk.session
	return m.window.Say("Practice · {1} · invented", message.Name(sanitize.Line(s.Customer.Company()))),
		m.window.Say("{1} of {2} min left", message.Count(s.Left), message.Count(s.Customer.Minutes))
}

// Body shows the question, what was said as far as there is room, and the line for
// the note; or a sheet with the line for an answer.
func (m *Model) Body(width, height int) []string {
	input := m.input.Lines(m.window.Look, screen.Focus, width)
	if m.talk.stage != talking || m.listed {
		if m.talk.stage == marked {
			input = nil
		}
		m.sheet.Above(len(input))
		return append(m.sheet.Lines(""), input...)
	}
	body := append(m.question(width, height), "")
	latest := m.log.AtEnd()
	if m.log.Above(len(body) + len(input)); latest {
		m.log.End()
	}
	body = append(body, m.log.Lines("")...)
	return append(body[:min(len(body), max(0, height-len(input)))], input...)
}

// question is the step with its choices and what is noted, as far as there is room
// beside what was said.
func (m *Model) question(width, height int) []string {
	const heardLeast = 3
	t, look := m.talk, m.window.Look
	at, of := t.step.PlaceInGroup(t.session.Steps())
	place := m.window.Say("{1} · {2} of {3}", t.step.Question.Group.Title(), message.Count(at), message.Count(of))
	lines := []string{look.Dim.Render(place)}
	lines = append(lines, screen.Each(screen.Wrap(m.window.Print(t.step.Text()), width), look.Strong.Render)...)
	for i, o := range t.options() {
		lines = append(lines, screen.Hang(fmt.Sprintf("%d ", i+1), o.Text, width)...)
	}
	if a, noted := t.session.Notes.Answer(t.step.Asked()); noted {
		lines = append(lines, screen.Each(screen.Hang(screen.Ticked, t.noted(t.step, a), width), look.Good.Render)...)
	} else {
		lines = append(lines, screen.Free+m.window.Say("nothing noted yet"))
	}
	if most := max(1, height-heardLeast-1-len(m.input.Lines(look, screen.Focus, width))); len(lines) > most {
		lines = append(lines[:most-1], look.Dim.Render(m.window.Say("… {1} lists all", message.Name("^L"))))
	}
	return lines
}

// heardLines are what was said and done, wrapped.
func (m *Model) heardLines(width int) []string {
	var lines []string
	for _, l := range m.heard {
		wrapped := screen.Wrap(l, width)
		if !strings.HasPrefix(l, `"`) {
			wrapped = screen.Each(wrapped, m.window.Look.Dim.Render)
		}
		lines = append(lines, wrapped...)
	}
	return lines
}

// Panel is the time, what the notes mean so far, and the notes.
func (m *Model) Panel(width int) []string {
	if m.talk.stage != talking || m.listed {
		return nil
	}
	s, w := m.talk.session, m.window
	const marks = 20
	full := (s.Left*marks + s.Customer.Minutes - 1) / s.Customer.Minutes
	var costs []string
	for _, a := range acts {
		cost := screen.Bind(a.word, a.key).Help().Key + " " + w.Say("{1} ({2})", a.word, message.Count(a.act.Minutes()))
		costs = append(costs, strings.ReplaceAll(cost, " ", "\u00a0")) // on one line
	}
	lines := w.Parts(width,
		screen.Part{Title: w.Say("Time left"), Texts: []string{strings.Repeat("#", full) + strings.Repeat(".", marks-full), strings.Join(costs, ", ")}},
		screen.Part{Title: w.Say("Capacity needed"), Texts: []string{m.panel.Need}},
		screen.Part{Title: w.Say("Deciding requirement"), Texts: []string{m.panel.Critical}})
	for _, flag := range m.panel.Flags {
		lines = append(lines, screen.Each(screen.Hang("! ", flag, width), w.Look.Bad.Render)...)
	}
	lines = append(lines, "", w.Look.Accent.Render(w.Say("Notes")))
	for _, step := range s.Steps() {
		if a, noted := s.Notes.Answer(step.Asked()); noted {
			lines = append(lines, screen.Cut(m.talk.noted(step, a)+" · "+w.Print(step.Name()), width))
		}
	}
	return lines
}
