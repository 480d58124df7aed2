// Package review shows a folder of visits on a full screen: a list that fills
// while files are read, and one visit in detail. It reads through functions it is
// given and changes no file.
package review

import (
	"context"
	"io"
	"os"
	"os/signal"
	"syscall"
	"time"

	"cutbrief/assess"
	"cutbrief/assess/review"
	"cutbrief/rules/system"

	tea "github.com/charmbracelet/bubbletea"
)

// Reader reads the folder: only what is remembered of it, without looking at any
// file, or else every file as it is. It hands rows over some at a time.
type Reader func(ctx context.Context, remembered bool, emit func([]*review.Row)) (review.Totals, error)

// Options are what a review is given. All but Page,
// Measured, Teller, Where and Sort are needed.
type Options struct {
	Dir   string
	Range system.Range
	Today time.Time
	Read  Reader
	Load  func(path string) (*assess.Visit, []byte, error) // path as in the row; the bytes also of what is no visit
	Page  func(path string, v *assess.Visit) (string, error)
	// Measured words what the timed cuts of the visits a filter keeps say.
	Measured func(ctx context.Context, filter string) (string, error)
	Teller   Teller // nil: nothing is counted
	Where    string // the filter to begin with
	Sort     string // the order to begin with; "" is the latest visit first
	Input    io.Reader
	Output   io.Writer // a terminal
}

// Run shows the review until the manager leaves, a signal ends it or ctx is done.
// The error is the terminal's.
func Run(ctx context.Context, o Options) error {
	ctx, cancel := signal.NotifyContext(ctx, os.Interrupt, syscall.SIGTERM, syscall.SIGHUP)
	defer cancel()
	m := newModel(ctx, o)
	p := tea.NewProgram(m, tea.WithInput(o.Input), tea.WithOutput(o.Output), tea.WithAltScreen(), tea.WithFPS(120), tea.WithoutSignalHandler())
	off := context.AfterFunc(ctx, p.Quit)
	defer off()
	_, err := p.Run()
	m.stop()
	return err
}
