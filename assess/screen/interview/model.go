package interview

import (
	"cutbrief/assess"
	"cutbrief/assess/sanitize"
	"cutbrief/assess/screen"
	"cutbrief/report"
	"cutbrief/rules"
	"cutbrief/rules/message"

	tea "github.com/charmbracelet/bubbletea"
)

// state is what is shown.
type state int

const (
	asking    state = iota // a question
	noting                 // a note to it
	listing                // all questions with their state
	reading                // the result
	deriving               // how it was reached
	supposing              // the result, were one answer another
	choosing               // the rep's own choice of what decides
	reasoning              // and the reason for it
	placing                // another place to save in
	telling                // a sentence that may answer several questions
	offering               // what was found in it, one by one
	leaving                // waiting for the last save
)

// Model is the interview's state. Its methods run one at a time.
type Model struct {
	*screen.Window
	Options
	writer *writer

	state  state
	behind []state // where Esc leads, the nearest last
	home   state   // where an answer leads once no question is open: list or result

	course assess.Course // which question comes next
	trail  []rules.Asked // those shown before, the last one last
	steps  []assess.Step // that can matter, given the answers so far
	open   int           // of them, how many are open
	step   assess.Step   // the one shown
	field  screen.Field
	held   screen.Field // of the state beneath, while another place is named
	known  assess.State // how an answer to it is known
	drafts map[rules.Asked]screen.Draft
	echo   message.Message   // how what is typed would be taken
	wrong  []message.Message // what is wrong and what would be accepted
	picked bool              // a number has just been taken as the answer
	paste  []string          // pasted lines behind one that was not taken

	panel report.Panel
	rows  []row          // of the list
	at    screen.Focused // the row that has the focus
	text  screen.Text    // the result, or how it was reached
	page  string         // path of the page made

	requirement rules.Requirement // chosen to decide, before its reason

	supposal supposal // one answer moved

	said           string         // the sentence
	found          []assess.Found // in it, and not yet accepted or refused
	rest           []string       // of it, not understood
	taken, refused int

	change  int             // counts changes to the answers
	saved   int             // the change last saved
	kept    string          // where, "" if nowhere yet
	pending int             // saves under way
	fault   message.Message // why the last save failed, empty if it did not
	failure error
	forced  bool // leave even if saving fails
	unkept  []string
}

// newModel starts at the first open question; a visit without one opens at its
// result.
func newModel(o Options) *Model {
	m := &Model{
		Options: o, writer: &writer{saver: o.Saver, revision: o.Visit.Revision, path: o.Path},
		kept: o.Path, drafts: map[rules.Asked]screen.Draft{}, home: asking,
	}
	m.Window = screen.NewWindow(m, o.Words)
	m.text = screen.NewText(m.Window)
	if !o.InOrder {
		m.course.Offered, m.course.Usual = o.Range, o.Usual
	}
	m.think()
	if len(m.steps) == 0 {
		m.openList()
		return m
	}
	next, open := m.course.First(m.Visit, &m.panel.Result)
	if !open {
		m.show(m.steps[0])
		m.openResult()
		return m
	}
	m.show(next)
	m.Told = o.Learned
	return m
}

// think works out what follows from the answers: which questions can matter,
// and what the panel says.
func (m *Model) think() {
	m.steps, m.open = m.Visit.Steps(), m.Visit.Open()
	m.panel = report.SoFar(m.Options.Words, m.Visit, m.Range)
}

// show puts a question on the screen, with what is in it: what was typed and not
// yet accepted, else the stored answer, else what is usual.
func (m *Model) show(s assess.Step) {
	m.state, m.step, m.behind = asking, s, nil
	m.wrong, m.known, m.picked = nil, assess.Told, false
	if a, has := m.answer(); has && a.State != assess.Unknown && a.State != "" {
		m.known = a.State
	}
	d, unfinished := m.drafts[s.Asked()]
	if !unfinished {
		d = m.standing(s)
	}
	m.field = m.fieldFor(d)
	m.understand()
}

// answer is the stored answer to the question shown.
func (m *Model) answer() (assess.Answer, bool) { return m.Visit.Answer(m.step.Asked()) }

// standing is what an untouched field of a step holds.
func (m *Model) standing(s assess.Step) screen.Draft {
	if a, has := m.Visit.Answer(s.Asked()); has {
		return screen.Draft{Text: sanitize.Lines(a.Said), Chosen: a.Chosen}
	}
	usual := m.Suggest[s.Question.ID]
	if usual != "" && s.Question.Form == assess.FormOne {
		return screen.Draft{Chosen: []string{usual}}
	}
	return screen.Draft{Text: usual}
}

// kinds are the fields of the forms of question; others take one line.
var kinds = map[assess.Form]screen.FieldKind{assess.FormOne: screen.One, assess.FormSeveral: screen.Several, assess.FormLong: screen.ManyLines}

// fieldFor builds the field of the step shown.
func (m *Model) fieldFor(d screen.Draft) screen.Field {
	stored, has := m.answer()
	none := message.ID("not answered yet")
	switch {
	case has && stored.State == assess.Unknown:
		none = "keep it as not known"
	case has:
		none = "remove the answer"
	}
	return screen.NewField(m.Look, screen.FieldSpec{
		Kind: kinds[m.step.Question.Form], Choices: screen.Choices(m.Options.Words, m.Visit.Options(m.step)), Stored: stored.Chosen,
		None: m.Say(none), Has: d, Width: m.Size.Main(),
	})
}

// understand says how what is typed would be taken. It complains of nothing
// until Enter.
func (m *Model) understand() {
	m.echo = message.Message{}
	if m.field.IsList() || m.field.Draft().Empty() {
		return
	}
	if _, echo, err := m.read(m.step, m.field.Draft()); err == nil {
		m.echo = echo
	}
}

// place is where a question is in the steps that matter, −1 if it is not there.
func (m *Model) place(a rules.Asked) int {
	for i, s := range m.steps {
		if s.Asked() == a {
			return i
		}
	}
	return -1
}

// openOver shows something over the present state, which Esc leads back to.
func (m *Model) openOver(s state) {
	m.behind = append(m.behind, m.state)
	m.state = s
}

// close goes back to what was shown beneath.
func (m *Model) close() {
	last := len(m.behind) - 1
	m.state, m.behind = m.behind[last], m.behind[:last]
	if m.state == reading {
		m.layResult()
	}
}

// Init has nothing to start: the first frame is drawn at once.
func (m *Model) Init() tea.Cmd { return nil }
