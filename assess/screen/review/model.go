package review

import (
	"context"
	"slices"

	"cutbrief/assess"
	"cutbrief/assess/review"
	"cutbrief/assess/screen"

	"github.com/charmbracelet/bubbles/viewport"
	tea "github.com/charmbracelet/bubbletea"
)

// state is what the screen shows; each has one update and one view function.
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
	Options
	look  screen.Look
	keys  keyMap
	size  screen.Size
	state state

	ctx   context.Context
	stop  context.CancelFunc // ends reading
	inbox chan tea.Msg       // rows as they come
	next  func() tea.Msg     // takes the next of them

	stage   stage
	totals  review.Totals
	judged  int
	rows    *review.Rows
	fault   string // why reading failed
	listed  int    // rows there were when the list was last arranged
	arrange int    // counts what the list was asked to be
	asked   int    // the arrangement under way, 0 if none is

	filter string
	typed  []rune
	sorts  []string // the orders the list can be put in
	sorted int      // place in them
	group  int      // place in groups
	list   review.Listing
	at     int  // the line of it that has the focus
	moved  bool // by the manager: then it stays with its row

	open   *review.Row
	visit  *assess.Visit
	raw    []byte
	part   part
	detail viewport.Model
	told   string // what just happened
	cuts   string // words about timed cuts, or what is counted
	split  int    // place in splits
	timing bool   // they are being read
}

// usualSorts are the orders a list can be put in.
var usualSorts = []string{"-date", "company", "rep", "-thickest", "system", "verdict", "due"}

// groups are the columns the list can be grouped by.
var groups = []string{"", "rep", "system", "critical", "month", "verdict"}

func newModel(ctx context.Context, o Options) *Model {
	ctx, stop := context.WithCancel(ctx)
	m := &Model{
		Options: o, look: screen.NewLook(), keys: newKeys(), size: screen.Usual(), filter: o.Where,
		ctx: ctx, stop: stop, inbox: make(chan tea.Msg), rows: &review.Rows{}, detail: viewport.New(1, 1), arrange: 1,
	}
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

// Init begins to read the folder.
func (m *Model) Init() tea.Cmd { return tea.Batch(m.read(true), m.wait()) }

// place is the place of the row that has the focus, −1 on the head of a group.
func (m *Model) place() int {
	if m.at >= len(m.list.Lines) || m.list.Head(m.at) != nil {
		return -1
	}
	return int(m.list.Lines[m.at])
}

// room is how many rows the list shows.
func (m *Model) room() int { return max(1, m.size.Room(len(m.foot()))-m.above()) }

// above is how many lines stand over the rows: the filter, the bar while reading,
// the names of the columns.
func (m *Model) above() int {
	n := 2
	if m.busy() {
		n++
	}
	return n
}

// busy reports that files are still being read.
func (m *Model) busy() bool { return m.stage == looking || m.stage == judging }
