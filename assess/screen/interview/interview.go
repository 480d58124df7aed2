// Package interview asks a customer's answers, one question at a time: on a full
// screen, or line by line for pipes and simple terminals. Both are views of one
// model, and say the same. It keeps the record through a Saver it is given, and
// makes the page through a Pager.
package interview

import (
	"context"
	"io"

	"cutbrief/assess"
	"cutbrief/rules"
	"cutbrief/rules/cost"
	"cutbrief/rules/message"
	"cutbrief/rules/system"
)

// Saver keeps a visit and says where.
type Saver interface {
	Save(v *assess.Visit) (path string, err error)
}

// Mover is a Saver that can go on in another place: a folder, or a file that is
// not there yet. Nothing is written before the next save.
type Mover interface {
	Saver
	MoveTo(place string) error
}

// Pager makes the page of a visit and says where it is.
type Pager interface {
	Page(v *assess.Visit) (path string, err error)
}

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
	Words   *message.Catalog // the language of what is shown; nil for English
	Width   int              // cells of a line of the result, line by line; 0 for 80
	Input   io.Reader
	Output  io.Writer       // a terminal for Run
	Usual   assess.Priors   // how the questions are usually answered; nil for the built-in shares
	Learned message.Message // what Usual was learned from, said at the start; empty if it was not
	InOrder bool            // ask in the order of the catalogue: the input cannot see what is asked
}

// Outcome says how an interview ended.
type Outcome struct {
	Path     string   // where the visit is kept, "" if it never was
	Page     string   // the page made last, "" if none
	Open     int      // questions still open
	Finished bool     // no question is open
	InputEnd bool     // line by line, the input ended before the rep left
	Unkept   []string // typed, not understood, and so not kept
	Unsaved  error    // why the last answers are not saved, nil if they are
}

// Run shows the interview until the rep leaves, a signal ends it or ctx is
// done. However it ends, the answers are saved; the error is the terminal's.
func Run(ctx context.Context, o Options) (Outcome, error) {
	m := newModel(o)
	err := m.Window.Run(ctx, o.Input, o.Output)
	return m.finish(), err
}
