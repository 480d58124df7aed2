package interview

import (
	"context"
	"io"
	"os"
	"os/signal"
	"syscall"

	tea "github.com/charmbracelet/bubbletea"

	"cutbrief/assess"
	"cutbrief/rules"
	"cutbrief/rules/cost"
	"cutbrief/rules/message"
	"cutbrief/rules/system"
)

// Options are what an interview is given. Visit, Saver, Input and Output are
// needed.
type Options struct {
	Visit   *assess.Visit
	Range   system.Range
	Prices  *cost.PriceList       // nil takes the built-in list, which is invented
	Path    string                // where the visit is kept, "" if nowhere yet
	Suggest map[rules.Fact]string // typed in beforehand, no answer until accepted: today's date, the rep's name
	Saver   Saver
	Pager   Pager            // nil if no page can be made
	Words   *message.Catalog // what is shown, in other words; nil for our own
	Input   io.Reader
	Output  io.Writer // a terminal
}

// Outcome says how an interview ended.
type Outcome struct {
	Path     string   // where the visit is kept, "" if it never was
	Page     string   // the page made last, "" if none
	Open     int      // questions still open
	Finished bool     // no question is open
	Unkept   []string // typed, not understood, and so not kept
	Unsaved  error    // why the last answers are not saved, nil if they are
}

// Run shows the interview until the rep leaves, a signal ends it or ctx is
// done. However it ends, the answers are saved; the error is the terminal's.
func Run(ctx context.Context, o Options) (Outcome, error) {
	m := newModel(o)
	p := tea.NewProgram(m, tea.WithInput(o.Input), tea.WithOutput(o.Output),
		tea.WithAltScreen(), tea.WithFPS(120), tea.WithoutSignalHandler())
	stop := watch(ctx, func() { p.Send(leaveMsg{}) })
	_, err := p.Run()
	stop()
	return m.finish(), err
}

// watch calls leave at the first signal to end, or when ctx is done.
func watch(ctx context.Context, leave func()) (stop func()) {
	ctx, cancel := signal.NotifyContext(ctx, os.Interrupt, syscall.SIGTERM, syscall.SIGHUP)
	off := context.AfterFunc(ctx, leave)
	return func() {
		off()
		cancel()
	}
}

// finish saves what no save has reached, and reports. It waits for a save that
// is under way.
func (m *Model) finish() Outcome {
	if m.state != leaving {
		m.settle() // the terminal went away
	}
	out := Outcome{Page: m.page, Open: m.open, Unkept: m.unkept}
	out.Finished = out.Open == 0
	if m.saved < m.change {
		saved := m.writer.save(m.visit, m.change)
		out.Unsaved = saved.err
	}
	out.Path = m.writer.path
	m.visit.Revision = max(m.visit.Revision, m.writer.revision)
	return out
}
