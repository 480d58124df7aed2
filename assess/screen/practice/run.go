package practice

import (
	"context"
	"io"
	"os"
	"os/signal"
	"syscall"

	"cutbrief/assess/casebook"

	tea "github.com/charmbracelet/bubbletea"
)

// Run shows the practice until the trainee leaves, a signal ends it or ctx is
// done. marked is false if it was left before the mark; the error is the
// terminal's.
func Run(ctx context.Context, in io.Reader, out io.Writer, s *casebook.Session) (mark casebook.Mark, marked bool, err error) {
	m := newModel(s)
	p := tea.NewProgram(m, tea.WithInput(in), tea.WithOutput(out), tea.WithAltScreen(), tea.WithFPS(120), tea.WithoutSignalHandler())
	ctx, cancel := signal.NotifyContext(ctx, os.Interrupt, syscall.SIGTERM, syscall.SIGHUP)
	off := context.AfterFunc(ctx, func() { p.Send(leaveMsg{}) })
	_, err = p.Run()
	off()
	cancel()
	mark, marked = m.talk.Mark()
	return mark, marked, err
}
