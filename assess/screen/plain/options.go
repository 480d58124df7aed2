package plain

import (
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

// Pager makes the page of a visit and says where it is.
type Pager interface {
	Page(v *assess.Visit) (path string, err error)
}

// Options are what an interview is given. Visit and Saver are needed.
type Options struct {
	Visit   *assess.Visit
	Range   system.Range
	Prices  *cost.PriceList       // nil takes the built-in list, which is invented
	Path    string                // where the visit is kept, "" if nowhere yet
	Suggest map[rules.Fact]string // taken for an empty line: today's date, the rep's name
	Saver   Saver
	Pager   Pager            // nil if no page can be made
	Words   *message.Catalog // what is said, in other words; nil for our own
	Width   int              // cells a line of the result may have; 0 for 80
}

// Outcome says how an interview ended.
type Outcome struct {
	Path     string // where the visit is kept, "" if it never was
	Page     string // the page made last, "" if none
	Open     int    // questions still open
	Finished bool   // no question is open
	InputEnd bool   // the input ended before the rep said quit
	Unsaved  error  // why the last answers are not saved, nil if they are
}
