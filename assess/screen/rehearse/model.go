package rehearse

import (
	"time"

	"cutbrief/assess"
	"cutbrief/assess/screen"
	"cutbrief/report"
	"cutbrief/rules/unit"

	tea "github.com/charmbracelet/bubbletea"
)

// state is what the screen shows; each has one update and one view function.
type state int

const (
	opening   state = iota // what is to come
	ready                  // a step, before it is cut
	timing                 // the time is running
	timed                  // the time is taken, and compared
	reasoning              // why it went so
	bewaring               // how the step can fail
	ticking                // a checklist
	closing                // all steps are done, or the rep leaves
)

// Model is the state of a rehearsal. Its methods run one at a time, in Bubble
// Tea's loop.
type Model struct {
	bench report.Bench
	clock func() time.Time
	tick  func(time.Duration) tea.Cmd // asks for a tickMsg after a while; nil asks for none

	look screen.Look
	keys keyMap
	size screen.Size

	state state
	from  state // where Esc leads from a list, a remark or the end
	step  int
	cuts  map[int]assess.Shown // what was measured and said, by step
	why   []rune               // the reason being typed

	began, now time.Time // of the demonstration, and now
	started    time.Time // of the time being taken
	pulse      int       // counts timers, so that an old tick is passed over

	list  int // of the two checklists
	row   int
	ticks [2]map[int]bool

	keeps bool // the rep wants it kept
}

// newModel opens before the first step.
func newModel(o Options) *Model {
	return &Model{
		bench: o.Bench, clock: o.Now, tick: later, look: screen.NewLook(), keys: newKeys(), size: screen.Usual(),
		cuts: map[int]assess.Shown{}, list: 1, ticks: [2]map[int]bool{{}, {}},
	}
}

// Init has nothing to start: the clock runs from the first step on.
func (m *Model) Init() tea.Cmd { return nil }

// at is the step shown.
func (m *Model) at() *report.Step { return &m.bench.Steps[m.step] }

// isTimed reports whether the time of the step is taken.
func (m *Model) isTimed() bool { return m.at().Timed && m.at().Predicted.IsKnown() }

// shown is the record of the step so far.
func (m *Model) shown() assess.Shown {
	if c, ok := m.cuts[m.step]; ok {
		return c
	}
	return m.at().Shown()
}

// elapsed is how long the time being taken has run, in s.
func (m *Model) elapsed() unit.Second { return unit.Second(m.now.Sub(m.started).Seconds()) }

// lines are the checklist shown.
func (m *Model) lines() []report.Line {
	if m.list == 0 {
		return m.bench.Leaving
	}
	return m.bench.OnSite
}
