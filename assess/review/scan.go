package review

import (
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"sync/atomic"
)

// file is one file that was found, or a folder that could not be read.
type file struct {
	path  string // below the folder scanned, with slashes
	stamp stamp
	err   error // why it cannot be read
}

// stamp tells one state of a file from another. Times are in nanoseconds since
// 1970; what a system does not tell is zero.
type stamp struct {
	size, modified, changed int64
	inode                   uint64
}

// taker takes files, one after the other. Each worker has its own.
type taker interface {
	// known reports whether the file need not be read.
	known(f *file) bool
	// read gets a file that was read; data is used again after it returns. A file
	// that could not be read has its reason in err and no data.
	read(f *file, data []byte)
}

// Reasons why something is not read; all are wrapped in the first.
var (
	errUnreadable = errors.New("cannot be read")
	errLink       = errors.New("a link to a folder, which is not followed")
	errRegular    = errors.New("not a regular file")
)

const (
	chunk     = 256 // names of a folder that are handed on at once
	mostTasks = 64  // tasks that may wait; beyond them a worker does its own
)

// task is a folder to list, or files of a folder to read.
type task struct {
	path  string     // below the folder scanned; "" is that folder
	in    *directory // set for files
	names []string
}

// scanner finds and reads all files of visits below a folder, fast and with little
// memory, and hides none: what cannot be read is handed over with the reason. It
// does not know what is in a file. Hidden files and folders are passed over; links
// to folders are named and not followed.
type scanner struct {
	root string
	most int64  // a file of more bytes is not read
	ask  bool   // look at each file before it is opened: it may be known
	look func() // called before a file is looked at; nil but in tests of slow disks

	mu    sync.Mutex
	wake  *sync.Cond
	tasks []task
	busy  int
}

// run reads with a worker for each taker. It returns when all is read or the
// context is done, and then its error. The folder itself not being readable is an
// error.
func (s *scanner) run(ctx context.Context, takers []taker) error {
	first, err := openDirectory(s.root)
	if err != nil {
		return err
	}
	first.release()
	s.tasks, s.wake = []task{{}}, sync.NewCond(&s.mu)
	stop := context.AfterFunc(ctx, func() {
		s.mu.Lock() // so that nobody begins to wait just now
		defer s.mu.Unlock()
		s.wake.Broadcast()
	})
	defer stop()
	var wg sync.WaitGroup
	for _, t := range takers {
		wg.Go(func() {
			w := worker{scanner: s, ctx: ctx, taker: t}
			w.work()
		})
	}
	wg.Wait()
	return ctx.Err()
}

// next is the task to do next; ok is false when there will be none. The last
// that came is the first done, so that few folders are open.
func (s *scanner) next(ctx context.Context) (t task, ok bool) {
	s.mu.Lock()
	defer s.mu.Unlock()
	for len(s.tasks) == 0 && s.busy > 0 && ctx.Err() == nil {
		s.wake.Wait()
	}
	if len(s.tasks) == 0 || ctx.Err() != nil {
		for _, t := range s.tasks { // will not be done
			if t.in != nil {
				t.in.release()
			}
		}
		s.tasks = nil
		return task{}, false
	}
	last := len(s.tasks) - 1
	t = s.tasks[last]
	s.tasks = s.tasks[:last]
	s.busy++
	return t, true
}

func (s *scanner) done() {
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.busy--; s.busy == 0 {
		s.wake.Broadcast()
	}
}

// offer hands on a task, unless too many wait. Folders always wait: they are
// names only.
func (s *scanner) offer(t task) bool {
	s.mu.Lock()
	defer s.mu.Unlock()
	if t.in != nil && len(s.tasks) >= mostTasks {
		return false
	}
	s.tasks = append(s.tasks, t)
	s.wake.Signal()
	return true
}

// worker does tasks, with a buffer of its own.
type worker struct {
	*scanner
	ctx   context.Context
	taker taker
	buf   []byte
	file  file
}

func (w *worker) work() {
	for {
		t, ok := w.next(w.ctx)
		if !ok {
			return
		}
		if t.in == nil {
			w.list(t.path)
		} else {
			w.read(t)
		}
		w.done()
	}
}

// list goes through a folder and hands on what is in it.
func (w *worker) list(path string) {
	d, err := openDirectory(filepath.Join(w.root, filepath.FromSlash(path)))
	if err != nil {
		w.fail(path, err)
		return
	}
	defer d.release()
	for ended := false; !ended && err == nil && w.ctx.Err() == nil; {
		var found []fs.DirEntry
		found, err = d.f.ReadDir(chunk)
		if ended = errors.Is(err, io.EOF); ended {
			err = nil
		}
		if names := w.names(d, path, found); len(names) > 0 {
			t := task{path: path, in: d, names: names}
			d.holds.Add(1)
			if !w.offer(t) {
				w.read(t)
			}
		}
	}
	if err != nil {
		w.fail(path, err)
	}
}

// names are those of files of visits. Folders become tasks.
func (w *worker) names(d *directory, path string, found []fs.DirEntry) []string {
	names := make([]string, 0, len(found))
	for _, e := range found {
		name := e.Name()
		switch {
		case strings.HasPrefix(name, "."):
		case e.IsDir():
			w.offer(task{path: below(path, name)})
		case len(name) > len(".json") && strings.EqualFold(name[len(name)-len(".json"):], ".json"):
			names = append(names, name)
		case d.leadsOn(e):
			w.fail(below(path, name), errLink)
		}
	}
	return names
}

func (w *worker) fail(path string, err error) {
	if path == "" {
		path = "."
	}
	w.file = file{path: path, err: fmt.Errorf("%w: %w", errUnreadable, err)}
	w.taker.read(&w.file, nil)
}

// below joins paths with a slash, so that they are the same on every system.
func below(path, name string) string {
	if path == "" {
		return name
	}
	return path + "/" + name
}

// read hands over the files of a task.
func (w *worker) read(t task) {
	defer t.in.release()
	for _, name := range t.names {
		if w.ctx.Err() != nil {
			return
		}
		f := &w.file
		*f = file{path: below(t.path, name)}
		if w.look != nil {
			w.look()
		}
		if w.ask {
			if f.stamp, f.err = t.in.stamp(name); f.err == nil && w.taker.known(f) {
				continue
			}
		}
		var data []byte
		if f.err == nil {
			data, f.err = t.in.read(name, w.most, &w.buf, &f.stamp)
		}
		if f.err != nil {
			f.err = fmt.Errorf("%w: %w", errUnreadable, f.err)
		}
		w.taker.read(f, data)
	}
}

// directory is an open folder. Its files are opened below it, which saves the
// system from walking down the path for each.
type directory struct {
	f     *os.File
	holds atomic.Int32 // by those who need it open
}

func openDirectory(path string) (*directory, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	info, err := f.Stat()
	if err == nil && !info.IsDir() {
		err = &fs.PathError{Op: "read", Path: path, Err: errors.New("not a folder")}
	}
	if err != nil {
		f.Close()
		return nil, err
	}
	d := &directory{f: f}
	d.holds.Add(1)
	return d, nil
}

// release closes the folder when nobody needs it any more.
func (d *directory) release() {
	if d.holds.Add(-1) == 0 {
		d.f.Close() // only read: nothing to lose
	}
}

// leadsOn reports a link to a folder.
func (d *directory) leadsOn(e fs.DirEntry) bool {
	if e.Type()&fs.ModeSymlink == 0 {
		return false
	}
	info, err := os.Stat(d.f.Name() + string(os.PathSeparator) + e.Name())
	return err == nil && info.IsDir()
}

// tooLarge words a file that is over the limit.
func tooLarge(size int64) error { return fmt.Errorf("%d bytes: too large for a visit", size) }

// fill reads to the end of a file of about a size into a buffer that is used
// again, and stops past the limit.
func fill(read func([]byte) (int, error), size, most int64, buf *[]byte) ([]byte, error) {
	if size > most {
		return nil, tooLarge(size)
	}
	if int64(cap(*buf)) <= size {
		*buf = make([]byte, size+4096)
	}
	n := 0
	for {
		got, err := read((*buf)[n:cap(*buf)])
		n += max(0, got)
		switch {
		case int64(n) > most:
			return nil, tooLarge(int64(n))
		case err != nil && !errors.Is(err, io.EOF):
			return nil, err
		case got <= 0 || (int64(n) == size && n < cap(*buf)):
			return (*buf)[:n], nil
		case n == cap(*buf): // it grew while it was read
			*buf = append(*buf, make([]byte, n)...)
			*buf = (*buf)[:cap(*buf)]
		}
	}
}
