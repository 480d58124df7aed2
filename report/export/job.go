package export

import (
	"context"
	"io"
	"iter"
	"path/filepath"
	"strings"
	"time"

	"cutbrief/assess"
	"cutbrief/assess/review"
	"cutbrief/assess/store"
	"cutbrief/rules/message"
	"cutbrief/rules/system"
)

// Job is a review to be made of a folder: what is read, kept, ordered and counted.
type Job struct {
	Dir     string
	Offered system.Range
	Words   *message.Catalog
	Where   review.Where
	Order   review.Order
	Fields  []review.Field
	Chosen  bool          // the fields were named
	By      *review.Field // counted by this, in place of listing
	Whole   bool          // counted as a whole
	Width   int           // cells a line may take; 0 is as many as it needs
	Now     func() time.Time
	Index   string // the file of the index; without one it only takes longer
	Program string // the build that writes it
}

// Reading says how the folder is read, by some criteria.
func (j *Job) Reading(criteria *review.Criteria) review.Options {
	return review.Options{Criteria: criteria, Program: j.Program, Now: j.Now, Index: j.Index}
}

// Criteria are those of the range and of today.
func (j *Job) Criteria() *review.Criteria { return review.NewCriteria(j.Offered, j.Now()) }

// Read reads the folder and picks the rows asked for. It tells how many files are
// read. Timings, if any, take in the cuts that were timed.
func (j *Job) Read(ctx context.Context, where review.Where, timings *review.Timings, tell func(int)) (Sheet, error) {
	o := j.Reading(j.Criteria())
	o.Timings = timings
	rows := &review.Rows{}
	totals, err := review.Read(ctx, j.Dir, o, func(batch []*review.Row) {
		rows.Add(batch...)
		tell(rows.Len())
	})
	if err != nil {
		return Sheet{}, err
	}
	totals.Invented = j.Offered.Invented
	rows.Together()
	list := review.Arrange(rows, where, j.Order, nil)
	return Sheet{Fields: j.Fields, Rows: rows.Pick(list.Lines), Totals: totals, Width: j.Width, Chosen: j.Chosen, Words: j.Words}, nil
}

// Counted is what is counted over rows, as the job asks for.
func (j *Job) Counted(s Sheet) Patterns {
	return Patterns{Tally: review.TallyOf(s.Rows, j.By), Totals: s.Totals, Whole: j.Whole, Width: s.Width, Today: j.Now(), Words: j.Words}
}

// Visit reads the visit that a row is about.
func (j *Job) Visit(path string) (*assess.Visit, []byte, error) {
	return store.LoadRaw(j.below(path))
}

// below is the file that a row is about.
func (j *Job) below(path string) string { return filepath.Join(j.Dir, filepath.FromSlash(path)) }

// Tell words what is counted over rows by a field, "" for none, for a width.
func (j *Job) Tell(rows iter.Seq[*review.Row], files int, by string, width int) (string, error) {
	return written(j.some(rows, files, by, width).Text)
}

// Summary is what the page about a team says of rows, counted by a field.
func (j *Job) Summary(rows iter.Seq[*review.Row], files int, by string) Summary {
	return j.some(rows, files, by, 0).Summary()
}

func (j *Job) some(rows iter.Seq[*review.Row], files int, by string, width int) Patterns {
	own := *j
	own.By, own.Whole = FieldNamed(by), true
	return own.Counted(Sheet{Rows: rows, Totals: review.Totals{Files: files, Invented: j.Offered.Invented}, Width: width})
}

// Measured words how timed cuts compare with the predictions, for the visits that a
// typed filter keeps.
func (j *Job) Measured(ctx context.Context, filter string) (string, error) {
	timings := &review.Timings{}
	s, err := j.Read(ctx, review.Find(filter, j.Now()), timings, func(int) {})
	if err != nil {
		return "", store.Cause(err)
	}
	return written(MeasuredOf(s, timings, j.Offered).Text)
}

func written(write func(io.Writer) error) (string, error) {
	var b strings.Builder
	err := write(&b)
	return b.String(), err
}

// FieldNamed is the field to count by, nil for none.
func FieldNamed(name string) *review.Field {
	if f, known := review.FindField(name); known {
		return &f
	}
	return nil
}
