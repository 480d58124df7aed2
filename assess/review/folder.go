package review

import (
	"context"
	"runtime"
	"sync"
	"time"

	"cutbrief/assess"
	"cutbrief/assess/store/scan"
)

// Options say how a folder is read.
type Options struct {
	Bench    *Bench
	Index    string           // file to keep what was worked out in; "" keeps nothing
	Program  string           // which build of the program; another one trusts no index
	Unjudged bool             // run no rules on what the index does not know
	Workers  int              // 0 is one for each processor
	Now      func() time.Time // the clock that files are dated by
	Timings  *Timings         // if any, collects timed cuts
}

// Totals count what was read.
type Totals struct {
	Files  int // all files of visits, and folders that could not be read
	Unread int // of them, those that could not be read
	Known  int // of them, those whose row was in the index

	Invented bool // they are judged by an invented range
}

// Read reads every visit below a folder and hands over a row for each, in no
// order, some at a time and never two calls at once. The rows are the caller's,
// to keep and to change after Read returns. What the index could not be written
// for is no error: it only costs time.
func Read(ctx context.Context, dir string, o Options, emit func([]*Row)) (Totals, error) {
	b := &batches{emit: emit}
	started := o.Now()
	known := openIndex(o)
	var readers []*reader
	var mu sync.Mutex
	workers := o.Workers
	if workers == 0 {
		workers = runtime.NumCPU()
	}
	err := scan.Run(ctx, dir, scan.Options{Workers: workers, Most: assess.MaxSize, Ask: len(known.refs) > 0}, func() scan.Reader {
		mu.Lock()
		defer mu.Unlock()
		r := &reader{Options: o, known: known, out: b, day: o.Bench.Today.Format(time.DateOnly)}
		readers = append(readers, r)
		return r
	})
	var fresh []*shelf
	for _, r := range readers {
		r.flush()
		fresh = append(fresh, &r.fresh)
	}
	if err == nil && !o.Unjudged && o.Index != "" {
		known.save(o, fresh, started)
	}
	return b.totals, err
}

// batches hands rows on.
type batches struct {
	mu     sync.Mutex
	emit   func([]*Row)
	totals Totals
}

func (b *batches) put(rows []*Row, known int) {
	b.mu.Lock()
	defer b.mu.Unlock()
	b.totals.Files += len(rows)
	b.totals.Known += known
	for _, r := range rows {
		if r.Stage == Unread {
			b.totals.Unread++
		}
	}
	b.emit(rows)
}

// Batches begin small, so that the first rows are there at once.
const (
	firstBatch = 16
	mostBatch  = 512
)

// reader makes rows of files, for one worker.
type reader struct {
	Options
	known *index
	out   *batches
	day   string       // today
	visit assess.Visit // the one being looked at
	found entry        // the entry being looked at
	fresh shelf        // what the index is to hold beside what it held
	batch []*Row
	hits  int
	size  int
}

// Known hands over the row that the index holds for this very state of the file.
func (r *reader) Known(f *scan.File) bool {
	e := &r.found
	if !r.known.find(f, e) {
		return false
	}
	r.hits++
	r.take(e)
	return true
}

// Take makes the row of a file that was read.
func (r *reader) Take(f *scan.File, data []byte) {
	e := &r.found
	*e = entry{path: f.Path, stamp: f.Stamp}
	r.look(e, f, data)
	if !r.Unjudged && r.Index != "" && f.Err == nil {
		r.fresh.put(e)
	}
	r.take(e)
}

// take hands on the row of an entry.
func (r *reader) take(e *entry) {
	if r.Timings != nil {
		r.Timings.add(e.cuts)
	}
	row := e.row
	row.overdue(r.day)
	r.add(&row)
}

// look makes the row of a file.
func (r *reader) look(e *entry, f *scan.File, data []byte) {
	switch {
	case f.Err != nil:
		e.row = unread(f.Path, f.Err)
	default:
		if err := assess.DecodeInto(&r.visit, data); err != nil {
			e.row = unread(f.Path, err)
		} else if r.Unjudged {
			e.row = recorded(f.Path, &r.visit)
		} else {
			e.row, e.cuts = r.Bench.Judge(f.Path, &r.visit), timings(f.Path, &r.visit)
		}
	}
}

func (r *reader) add(row *Row) {
	if r.size == 0 {
		r.size = firstBatch
	}
	r.batch = append(r.batch, row)
	if len(r.batch) >= r.size {
		r.flush()
		r.size = min(2*r.size, mostBatch)
	}
}

func (r *reader) flush() {
	if len(r.batch) > 0 {
		r.out.put(r.batch, r.hits)
	}
	r.batch, r.hits = make([]*Row, 0, mostBatch), 0
}
