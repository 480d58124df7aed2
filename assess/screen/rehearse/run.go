package rehearse

import (
	"context"
	"io"
	"os"
	"os/signal"
	"syscall"
	"time"

	"cutbrief/assess"
	"cutbrief/report"

	tea "github.com/charmbracelet/bubbletea"
)

// Options are what a rehearsal is given. All are needed; the bench has at least
// one step.
type Options struct {
	Bench  report.Bench
	Now    func() time.Time
	Input  io.Reader
	Output io.Writer // a terminal
}

// Outcome is what was measured and noted, in the order of the plan.
type Outcome struct {
	Cuts []assess.Shown
	Keep bool // the rep wants it in the visit
}

// Run shows the rehearsal until the rep leaves, a signal ends it or ctx is
// done. The error is the terminal's.
func Run(ctx context.Context, o Options) (Outcome, error) {
	m := newModel(o)
	p := tea.NewProgram(m, tea.WithInput(o.Input), tea.WithOutput(o.Output),
		tea.WithAltScreen(), tea.WithFPS(120), tea.WithoutSignalHandler())
	ctx, cancel := signal.NotifyContext(ctx, os.Interrupt, syscall.SIGTERM, syscall.SIGHUP)
	defer cancel()
	off := context.AfterFunc(ctx, func() { p.Send(leaveMsg{}) })
	defer off()
	_, err := p.Run()
	return m.outcome(), err
}

// outcome lists what was noted; a reason being typed counts.
func (m *Model) outcome() Outcome {
	if m.state == reasoning {
		m.keepWhy()
	}
	out := Outcome{Keep: m.keeps}
	for i := range m.bench.Steps {
		if c, ok := m.cuts[i]; ok {
			out.Cuts = append(out.Cuts, c)
		}
	}
	return out
}
