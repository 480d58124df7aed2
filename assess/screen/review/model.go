// Package review shows a folder of visits on a full screen: a list that fills
// while files are read, and one visit in detail. It reads through functions it is
// given and changes no file.
package review

import (
	"context"
	"io"
	"iter"
	"slices"
	"time"

	"cutbrief/assess"
	"cutbrief/assess/review"
	"cutbrief/assess/screen"
	"cutbrief/rules/message"
	"cutbrief/rules/system"

	tea "github.com/charmbracelet/bubbletea"
)

// Reader reads the folder: only what is remembered of it, without looking at any
// file, or else every file as it is. It hands rows over some at a time.
type Reader func(ctx context.Context, remembered bool, emit func([]*review.Row)) (review.Totals, error)

// Teller words and prints what is counted over the rows shown. It is asked in the
// background.
type Teller interface {
	// Tell words the counts in lines of at most width cells. Files are those of the
	// folder. By is the column to count by, "" for none.
	Tell(rows iter.Seq[*review.Row], files int, by string, width int) (string, error)
	// Print makes the page of the same and says where it is.
	Print(rows iter.Seq[*review.Row], files int, by string) (string, error)
}

// Options are what a review is given. All but Words, Page, Measured, Teller, Where
// and Sort are needed.
type Options struct {
	Dir   string
	Range system.Range
	Today time.Time
	Words *message.Catalog
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

// state is what the screen shows.
type state int

const (
	listing   state = iota // all rows
	filtering              // the same, with the filter being typed
	reading                // one visit
	measuring              // what the timed cuts say
	counting               // what is counted over the rows
)

// stage is how far the folder is read.
type stage int

const (
	looking stage = iota // what is remembered of it
	judging              // every file as it is
	whole                // done
	stopped              // by the manager
)

// part is what is shown of one visit.
type part int

const (
	flagsPart part = iota
	briefPart
	whyPart
	rawPart
	parts
)

// Model is the review's state. Its methods run one at a time, in Bubble Tea's
// loop.
type Model struct {
	screen.Basic
	Options
	window *screen.Window
	state  state

	ctx   context.Context
	stop  context.CancelFunc // ends reading
	inbox chan tea.Msg       // what is read, as it comes
	next  func() tea.Msg     // takes the next of it

	stage    stage
	totals   review.Totals
	judged   int
	rows     *review.Rows
	fault    message.Message // why reading failed
	listed   int             // rows there were when the list was last arranged
	arranged int             // counts what the list was asked to be
	asked    int             // the arrangement under way, 0 if none is

	filter string
	typed  screen.Line
	sorts  []string // the orders the list can be put in
	sorted int      // place in them
	group  int      // place in groups
	list   review.Listing
	at     screen.Focused // the line of it
	moved  bool           // by the manager: then it stays with its row

	open   *review.Row
	visit  *assess.Visit
	raw    []byte
	part   part
	text   screen.Text // of a visit, of timed cuts, of counts
	worded string      // words about timed cuts, or what is counted
	split  int         // place in splits
	busy   bool        // timed cuts are being read
}

// usualSorts are the orders a list can be put in.
var usualSorts = []string{"-date", "company", "rep", "-thickest", "system", "verdict", "due"}

// groups are the columns the list can be grouped by.
var groups = []message.ID{"", "rep", "system", "critical", "month", "verdict"}

// splits are the columns that the counts can be split by. Reps are named only where
// the manager goes on to them.
var splits = []message.ID{"", "month", "metals", "rep"}

func newModel(ctx context.Context, o Options) *Model {
	ctx, stop := context.WithCancel(ctx)
	m := &Model{Options: o, filter: o.Where, ctx: ctx, stop: stop, inbox: make(chan tea.Msg), rows: &review.Rows{}, arranged: 1}
	m.window = screen.NewWindow(m, o.Words)
	m.text = screen.NewText(m.window)
	m.next = m.fromInbox
	m.sorts = usualSorts
	if m.sorted = slices.Index(m.sorts, o.Sort); m.sorted < 0 {
		m.sorted = 0
		if o.Sort != "" {
			m.sorts = append([]string{o.Sort}, m.sorts...)
		}
	}
	return m
}

// Run shows the review until the manager leaves, a signal ends it or ctx is done.
// The error is the terminal's.
func Run(ctx context.Context, o Options) error {
	m := newModel(ctx, o)
	defer m.stop()
	return m.window.Run(m.ctx, o.Input, o.Output)
}

// place is the place of the row that has the focus, −1 on the head of a group.
func (m *Model) place() int {
	if at := int(m.at); at < len(m.list.Lines) && m.list.Head(at) == nil {
		return int(m.list.Lines[at])
	}
	return -1
}

// unfinished reports that files are still being read.
func (m *Model) unfinished() bool { return m.stage == looking || m.stage == judging }

// kept goes through the rows there are that the filter keeps.
func (m *Model) kept() iter.Seq[*review.Row] {
	rows, keep := m.rows.Snapshot(), m.where()
	return func(yield func(*review.Row) bool) {
		for r := range rows.All() {
			if keep(r) && !yield(r) {
				return
			}
		}
	}
}
