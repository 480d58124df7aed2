package interview

import (
	"github.com/charmbracelet/bubbles/viewport"
	tea "github.com/charmbracelet/bubbletea"

	"cutbrief/assess"
	"cutbrief/assess/sanitize"
	"cutbrief/assess/screen"
	"cutbrief/assess/screen/words"
	"cutbrief/report"
	"cutbrief/rules"
	"cutbrief/rules/cost"
	"cutbrief/rules/message"
	"cutbrief/rules/system"
)

// state is what the screen shows; each has one update and one view function.
type state int

const (
	asking     state = iota // a question
	noting                  // a note to it
	explaining              // why it is asked, at length
	listing                 // all questions with their state
	reading                 // the result
	deriving                // how it was reached
	overruling              // the rep's own choice of what decides
	reasoning               // and the reason for it
	leaving                 // waiting for the last save
	placing                 // another place to save in
)

// Model is the interview's state. Its methods run one at a time, in Bubble
// Tea's loop.
type Model struct {
	offered system.Range
	prices  *cost.PriceList
	visit   *assess.Visit
	suggest map[rules.Fact]string
	writer  *writer
	pager   Pager
	words   *message.Catalog // puts what is shown into other words

	look screen.Look
	keys keyMap
	size screen.Size

	state  state
	from   state // where Esc in a list, a note or an explanation leads
	asked  state // where Esc in the derivation leads
	before state // where a failed save led to another place
	home   state // where an answer leads once no question is open: list or result

	course assess.Course // which question comes next
	trail  []rules.Asked // those shown before, the last one last
	steps  []assess.Step // that can matter, given the answers so far
	open   int           // of them, how many are open
	step   assess.Step   // the one shown
	field  field
	held   field        // of the screen beneath, while another place is named
	how    assess.State // how an answer to it is known
	drafts map[rules.Asked]draft
	echo   string
	wrong  []string // what is wrong and what would be accepted
	told   string   // what just happened
	picked bool     // a number has just been taken as the answer
	paste  []string // pasted lines behind one that was not taken

	panel report.Panel
	side  []string

	rows []row // of the list
	at   int   // the row that has the focus

	result viewport.Model
	page   string // path of the page made

	requirement rules.Requirement // chosen to decide, before its reason

	change  int    // counts changes to the answers
	saved   int    // the change last saved
	kept    string // where, "" if nowhere yet
	pending int    // saves under way
	fault   string // why the last save failed, "" if it did not
	forced  bool   // leave even if saving fails
	unkept  []string
}

// newModel starts at the first open question; a visit without one opens at its
// result.
func newModel(o Options) *Model {
	m := &Model{
		offered: o.Range, prices: o.Prices, visit: o.Visit, suggest: o.Suggest, pager: o.Pager, words: o.Words,
		writer: &writer{saver: o.Saver, revision: o.Visit.Revision, path: o.Path},
		look:   screen.NewLook(), keys: newKeys(), size: screen.Usual(),
		kept: o.Path, drafts: map[rules.Asked]draft{}, result: viewport.New(1, 1), home: asking,
	}
	m.think()
	if len(m.steps) == 0 {
		m.openList()
		return m
	}
	next, open := m.course.First(m.visit, &m.panel.Result)
	if !open {
		m.show(m.steps[0])
		m.openResult()
		return m
	}
	m.show(next)
	return m
}

// Init has nothing to start: the first frame is drawn at once.
func (m *Model) Init() tea.Cmd { return nil }

// think works out what follows from the answers: which questions can matter,
// and what the panel says.
func (m *Model) think() {
	m.steps, m.open = m.visit.Steps(), m.visit.Open()
	m.panel = report.SoFarIn(m.words, m.visit, m.offered)
	m.side = sideLines(m.look, m.words, m.panel, m.size.Side())
}

// show puts a question on the screen, with what stands in it: what was typed
// and not yet accepted, else the stored answer, else what is usual.
func (m *Model) show(s assess.Step) {
	m.state, m.step = asking, s
	m.wrong, m.how = nil, assess.Told
	stored, has := m.visit.Answer(s.Asked())
	if has && stored.State != assess.Unknown && stored.State != "" {
		m.how = stored.State
	}
	d, unfinished := m.drafts[s.Asked()]
	if !unfinished {
		d = m.standing(s)
	}
	m.field = m.fieldFor(d, 0)
	m.understand()
}

// standing is what an untouched field of a step holds.
func (m *Model) standing(s assess.Step) draft {
	if a, has := m.visit.Answer(s.Asked()); has {
		return draft{text: sanitize.Lines(a.Said), chosen: a.Chosen}
	}
	usual := m.suggest[s.Question.ID]
	if usual != "" && s.Question.Form == assess.FormOne {
		return draft{chosen: []string{usual}}
	}
	return draft{text: usual}
}

// fieldFor builds the field of the step shown.
func (m *Model) fieldFor(d draft, row int) field {
	stored, has := m.visit.Answer(m.step.Asked())
	open := "not answered yet"
	switch {
	case has && stored.State == assess.Unknown:
		open = "leave it as not known"
	case has:
		open = "take the answer back"
	}
	return newField(m.look, fieldSpec{
		kind: m.step.Question.Form, options: words.In(m.words, m.visit.Options(m.step)), stored: stored.Chosen,
		open: m.say(open), has: d, row: row, width: m.size.Main(),
	})
}

// understand says how what is typed would be taken. It complains of nothing
// until Enter.
func (m *Model) understand() {
	m.echo = ""
	if m.field.typed == nil || m.field.draft().empty() {
		return
	}
	if _, echo, err := m.visit.Read(m.step, m.heard(m.step, *m.field.typed)); err == nil {
		m.echo = sanitize.Line(echo.String())
	}
}

// place is where a step stands in the steps that matter, −1 if it is not there.
func (m *Model) place(a rules.Asked) int {
	for i, s := range m.steps {
		if s.Asked() == a {
			return i
		}
	}
	return -1
}
