package review

import (
	"context"
	"runtime"
	"runtime/debug"
	"sync"
	"time"

	"cutbrief/assess"
)

// Options say how a folder is read.
type Options struct {
	Criteria   *Criteria
	Index      string           // file to keep what was worked out in; "" keeps nothing
	Program    string           // which build of the program; another one trusts no index
	Remembered bool             // only what the index holds: no file is looked at, and some may have changed
	Workers    int              // 0 is what suits the machine
	Now        func() time.Time // the clock that files are dated by
	Timings    *Timings         // if any, collects timed cuts

	Look func() // called before a file is looked at; nil but in tests of slow disks
}

// Totals count what was read.
type Totals struct {
	Files  int // all files of visits, and folders that could not be read
	Unread int // of them, those that could not be read
	Known  int // of them, those whose row was in the index

	Invented bool // they are judged by an invented range
}

// fewestWorkers hide the time that a slow share takes to tell a file's times.
const fewestWorkers = 8

// Read reads every visit below a folder and hands over a row for each, in no
// order, some at a time and never two calls at once. The rows are the caller's,
// to keep and to change after Read returns. From very many rows on, garbage is
// collected sooner in the whole program. What the index could not be written
// for is no error: it only costs time.
func Read(ctx context.Context, dir string, o Options, emit func([]*Row)) (Totals, error) {
	b := &batches{emit: emit}
	started := o.Now()
	x := openIndex(o)
	if o.Remembered {
		return b.remembered(x, o), ctx.Err()
	}
	workers := o.Workers
	if workers == 0 {
		workers = max(fewestWorkers, runtime.NumCPU())
	}
	readers := make([]*reader, workers)
	takers := make([]taker, workers)
	for i := range readers {
		readers[i] = &reader{Options: o, index: x, out: b, day: o.Criteria.Today.Format(time.DateOnly)}
		takers[i] = readers[i]
	}
	s := scanner{root: dir, most: assess.MaxSize, ask: len(x.refs) > 0, look: o.Look}
	err := s.run(ctx, takers)
	var fresh []*entries
	for _, r := range readers {
		r.flush()
		fresh = append(fresh, &r.fresh)
	}
	if err == nil && o.Index != "" {
		x.save(o, fresh, started)
	}
	return b.totals, err
}

// garbageShares say how much garbage there may be from some number of rows on, in
// per cent of what is kept. A row takes about 100 bytes: 30 % of 50,000 rows is
// the garbage of some eight visits being judged. What is kept of a row holds no
// pointers, so that collecting more often costs little; left alone, garbage would
// take as much memory as all rows.
var garbageShares = [...]struct{ rows, percent int }{{1, 100}, {25000, 50}, {50000, 30}}

// batches hands rows on.
type batches struct {
	mu     sync.Mutex
	emit   func([]*Row)
	totals Totals
}

func (b *batches) put(rows []*Row, known int) {
	b.mu.Lock()
	defer b.mu.Unlock()
	before := b.totals.Files
	b.totals.Files += len(rows)
	for _, s := range garbageShares {
		if before < s.rows && s.rows <= b.totals.Files {
			debug.SetGCPercent(s.percent)
		}
	}
	b.totals.Known += known
	for _, r := range rows {
		if r.Stage == Unread {
			b.totals.Unread++
		}
	}
	b.emit(rows)
}

// remembered hands over what an index holds.
func (b *batches) remembered(x *index, o Options) Totals {
	r := reader{Options: o, out: b, day: o.Criteria.Today.Format(time.DateOnly)}
	for _, e := range x.all() {
		r.take(e)
	}
	r.flush()
	return b.totals
}

// Batches begin small, so that the first rows are there at once.
const (
	firstBatch = 16
	mostBatch  = 128
)

// reader makes rows of files, for one worker.
type reader struct {
	Options
	index *index
	out   *batches
	day   string // today
	found entry  // the entry being looked at
	visit assess.Visit
	room  room
	fresh entries // what the index is to hold beside what it held
	next  int     // the place in the index where the next file is looked for first
	rows  []Row   // room for those of a batch
	batch []*Row
	hits  int
	size  int
}

// known hands over the row that the index holds for this very state of a file.
func (r *reader) known(f *file) bool {
	e := &r.found
	if !r.index.find(f.path, f.stamp, &r.next, e) {
		return false
	}
	r.hits++
	r.take(e)
	return true
}

// read makes the row of a file that was read.
func (r *reader) read(f *file, data []byte) {
	e := &r.found
	*e = entry{path: f.path, stamp: f.stamp}
	if f.err != nil {
		e.row = unread(f.path, f.err)
	} else if err := assess.DecodeInto(&r.visit, data); err != nil {
		e.row = unread(f.path, err)
	} else {
		e.row = r.Criteria.judge(f.path, &r.visit, &r.room)
		e.cuts = timings(f.path, &r.visit)
	}
	if r.Index != "" && f.err == nil {
		r.fresh.put(e)
	}
	r.take(e)
}

// take hands on the row of an entry.
func (r *reader) take(e *entry) {
	if r.Timings != nil {
		r.Timings.add(e.cuts)
	}
	if len(r.rows) == cap(r.rows) {
		r.rows = make([]Row, 0, max(r.size, firstBatch))
	}
	r.rows = append(r.rows, e.row)
	row := &r.rows[len(r.rows)-1]
	row.overdue(r.day)
	if r.size == 0 {
		r.size = firstBatch
	}
	if r.batch = append(r.batch, row); len(r.batch) >= r.size {
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
