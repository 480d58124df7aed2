package practice

import (
	"strings"

	"cutbrief/assess/casebook"
	"cutbrief/assess/screen"
	"cutbrief/assess/screen/talk"
	"cutbrief/report"

	"github.com/charmbracelet/bubbles/textinput"
	"github.com/charmbracelet/bubbles/viewport"
	tea "github.com/charmbracelet/bubbletea"
)

// lineMost is how many characters of a note are taken.
const lineMost = 200

// Model is the state of a practice on the screen. Its methods run one at a
// time, in Bubble Tea's loop.
type Model struct {
	talk *talk.Talk
	look screen.Look
	keys keyMap
	size screen.Size

	input  textinput.Model
	drafts map[string]string // typed and not noted, by the name of the question
	said   []string          // what was said and done, the newest last
	up     int               // lines it is scrolled up by
	panel  report.Panel
	listed bool           // the list of questions is shown
	shown  string         // the text of the sheet: list, decision, mark
	sheet  viewport.Model // it, laid out
}

// how says how it works, below the customer's first words.
const how = "Invented. Enter asks, or notes what you typed; (1) is a minute of their time."

func newModel(s *casebook.Session) *Model {
	m := &Model{talk: talk.New(s, 0), look: screen.NewLook(), keys: newKeys(), size: screen.Usual(), sheet: viewport.New(1, 1), drafts: map[string]string{}}
	m.talk.Keys = true
	m.input = textinput.New()
	m.input.CharLimit = lineMost
	m.input.Focus()
	m.said = append(m.talk.Greeting(), how)
	m.think()
	return m
}

// Init has nothing to start: the first frame is drawn at once.
func (m *Model) Init() tea.Cmd { return nil }

// think works out what the notes mean so far.
func (m *Model) think() { m.panel = report.SoFar(m.talk.Session.Notes, m.talk.Session.Offered) }

// line hands a line to the talk and keeps what comes back: as said, or as the
// sheet where a sheet is shown.
func (m *Model) line(text string) {
	m.up = 0
	step := m.talk.Step().Name().String()
	out := strings.TrimRight(strings.TrimLeft(m.talk.Line(text), "\n"), "\n")
	switch {
	case m.talk.Stage() != talk.Talking:
		m.open(out)
	case m.talk.Step().Name().String() != step:
		m.listed = false // the question is drawn from the step
		m.drafts[step] = m.input.Value()
		m.input.SetValue(m.drafts[m.talk.Step().Name().String()])
	case out != "":
		m.said = append(m.said, strings.Split(out, "\n")...)
	}
	m.think()
}

// open shows a text as the sheet.
func (m *Model) open(text string) {
	m.shown = text
	m.lay()
	m.sheet.GotoTop()
}

// readable is the longest line, in cells, that reads well.
const readable = 100

// lay lays the sheet out for the window.
func (m *Model) lay() {
	width := min(m.size.Width-2, readable)
	at := m.sheet.YOffset
	m.sheet = viewport.New(max(1, m.size.Width-2), max(1, m.size.Room(len(m.foot()))-m.inputTall()))
	var lines []string
	for _, l := range strings.Split(m.shown, "\n") {
		if l == "" {
			lines = append(lines, "")
		}
		lines = append(lines, screen.Wrap(l, width)...)
	}
	m.sheet.SetContent(strings.Join(lines, "\n"))
	m.sheet.SetYOffset(at)
}

// inputTall is the input under a sheet, and the line that says that there is
// more.
func (m *Model) inputTall() int {
	if m.talk.Stage() == talk.Marked {
		return 1
	}
	return 1 + len(m.typed(m.size.Width-2))
}

// typed is the line for a note, wrapped.
func (m *Model) typed(width int) []string {
	return m.look.Typed([]rune(m.input.Value()), m.input.Position(), width)
}

func (m *Model) resize(width, height int) {
	m.size = screen.Size{Width: width, Height: height}
	m.talk.Width = min(max(width-2, 1), readable)
	m.lay()
}
