package rehearse

import (
	"context"
	"io"
	"math"
	"time"

	"cutbrief/assess"
	"cutbrief/assess/screen"
	"cutbrief/report"
	"cutbrief/rules/message"
	"cutbrief/rules/unit"

	tea "github.com/charmbracelet/bubbletea"
)

// Options are what a rehearsal is given. All but Words are needed; the bench has
// at least one step.
type Options struct {
	Bench  report.Bench // in the same words
	Words  *message.Catalog
	Now    func() time.Time
	Input  io.Reader
	Output io.Writer // a terminal
}

// Outcome is what was measured and noted, in the order of the plan.
type Outcome struct {
	Cuts []assess.ShownCut
	Keep bool // the rep wants it in the visit
}

// state is what the screen shows.
type state int

const (
	opening   state = iota // what is to come
	ready                  // a step, before it is cut
	timing                 // the time is running
	timed                  // the time is taken, and compared
	reasoning              // why it went so
	ticking                // a checklist
	closing                // all steps are done, or the rep leaves
)

// Model is the state of a rehearsal. Its methods run one at a time, in Bubble
// Tea's loop.
type Model struct {
	screen.Basic
	Options
	window *screen.Window
	tick   func(time.Duration) tea.Cmd // asks for a tickMsg after a while; nil asks for none

	state state
	from  state // where Esc leads from a list, a reason or the end
	step  int
	cuts  map[int]assess.ShownCut // what was measured and said, by step
	why   screen.Line             // the reason being typed

	began, now time.Time // of the demonstration, and now
	started    time.Time // of the time being taken
	pulse      int       // counts timers, so that an old tick is passed over

	list  int // of the two checklists
	row   screen.Focused
	ticks [2]map[int]bool

	keeps bool // the rep wants it kept
}

// newModel opens before the first step.
func newModel(o Options) *Model {
	m := &Model{Options: o, tick: later, cuts: map[int]assess.ShownCut{}, list: 1, ticks: [2]map[int]bool{{}, {}}}
	m.window = screen.NewWindow(m, o.Words)
	return m
}

// Run shows the rehearsal until the rep leaves, a signal ends it or ctx is
// done. The error is the terminal's.
func Run(ctx context.Context, o Options) (Outcome, error) {
	m := newModel(o)
	err := m.window.Run(ctx, o.Input, o.Output)
	return m.outcome(), err
}

// outcome lists what was noted; a reason being typed counts.
func (m *Model) outcome() Outcome {
	if m.state == reasoning {
		m.keepWhy()
	}
	out := Outcome{Keep: m.keeps}
	for i := range m.Bench.Steps {
		if c, ok := m.cuts[i]; ok {
			out.Cuts = append(out.Cuts, c)
		}
	}
	return out
}

// at is the step shown.
func (m *Model) at() *report.Step { return &m.Bench.Steps[m.step] }

// isTimed reports whether the time of the step is taken.
func (m *Model) isTimed() bool { return m.at().Timed && m.at().Predicted.IsKnown() }

// shown is the record of the step so far.
func (m *Model) shown() assess.ShownCut {
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
		return m.Bench.Leaving
	}
	return m.Bench.OnSite
}

// tickMsg says that the clock is worth a look. An old one, of a timer that was
// stopped, is passed over.
type tickMsg struct{ pulse int }

// How often the clock is drawn: a hand cannot tell a tenth of a second, and
// minutes need no more than one look a second.
const (
	quick = 100 * time.Millisecond
	slow  = time.Second
)

// later waits, and then lets the screen look at the clock.
func later(d time.Duration) tea.Cmd {
	return tea.Tick(d, func(time.Time) tea.Msg { return tickMsg{} })
}

// beat asks for the next look at the clock.
func (m *Model) beat() tea.Cmd {
	d := slow
	if m.state == timing {
		d = quick
	}
	cmd := m.tick(d)
	if cmd == nil {
		return nil
	}
	pulse := m.pulse
	return func() tea.Msg {
		cmd()
		return tickMsg{pulse}
	}
}

// restart makes the clock beat anew, at the pace of the present state.
func (m *Model) restart() tea.Cmd {
	m.pulse++
	return m.beat()
}

// Receive looks at the clock that was handed in.
func (m *Model) Receive(msg tea.Msg) tea.Cmd {
	if tick, ok := msg.(tickMsg); ok && tick.pulse == m.pulse {
		m.now = m.Now()
		return m.beat()
	}
	return nil
}

// hundredths rounds a time to what a hand can tell and a file should hold.
func hundredths(t unit.Second) unit.Second { return unit.Second(math.Round(float64(t)*100) / 100) }
