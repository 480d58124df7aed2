// Package scan reads all files of visits below a folder, fast and with little
// memory, and hides none: what cannot be read is handed over with the reason. It
// does not know what is in a file. assess/review and its index use it.
package scan

import (
	"context"
	"fmt"
	"path/filepath"
	"strings"
	"sync"
)

// File is one file that was found, or a folder that could not be read.
type File struct {
	Path  string // below the folder scanned, with slashes
	Stamp Stamp
	Err   error // why it cannot be read
}

// Stamp tells one state of a file from another. Times are in nanoseconds since
// 1970; what a system does not tell is zero.
type Stamp struct {
	Size, Modified, Changed int64
	Inode                   uint64
}

// Reader takes files, one after the other. Each worker has its own.
type Reader interface {
	// Known reports whether the file need not be read.
	Known(f *File) bool
	// Take gets a file that was read; data is used again after it returns. A file
	// that could not be read has its reason in Err and no data.
	Take(f *File, data []byte)
}

// chunk is how many names of a folder are handed on at once.
const chunk = 256

// mostTasks is how many tasks may wait. Beyond them a worker does its own.
const mostTasks = 64

// task is a folder to list, or files of a folder to read.
type task struct {
	path  string  // below the folder scanned; "" is that folder
	in    *folder // set for files
	names []string
}

// scan is one run.
type scan struct {
	root string
	most int64 // bytes of a file
	ask  bool  // look at a file before it is opened

	mu    sync.Mutex
	wake  *sync.Cond
	tasks []task
	busy  int
}

// Options are what a scan can be told.
type Options struct {
	Workers int   // at least 1
	Most    int64 // a file of more bytes is not read
	Ask     bool  // Known may say yes: look at each file before it is opened
}

// Run reads every file of a visit below a folder. Hidden files and folders are
// passed over; links to folders are named and not followed. It returns when all
// is read or the context is done, and then its error. The folder itself not being
// readable is an error.
func Run(ctx context.Context, root string, o Options, reader func() Reader) error {
	first, err := openFolder(root)
	if err != nil {
		return err
	}
	first.close()
	s := &scan{root: root, most: o.Most, ask: o.Ask, tasks: []task{{}}}
	s.wake = sync.NewCond(&s.mu)
	stop := context.AfterFunc(ctx, func() {
		s.mu.Lock() // so that nobody begins to wait just now
		defer s.mu.Unlock()
		s.wake.Broadcast()
	})
	defer stop()
	var wg sync.WaitGroup
	for range max(1, o.Workers) {
		wg.Add(1)
		go func() {
			defer wg.Done()
			w := worker{scan: s, ctx: ctx, reader: reader()}
			w.work()
		}()
	}
	wg.Wait()
	return ctx.Err()
}

// next is the task to do next; ok is false when there will be none. The last
// that came is the first done, so that few folders are open.
func (s *scan) next(ctx context.Context) (t task, ok bool) {
	s.mu.Lock()
	defer s.mu.Unlock()
	for len(s.tasks) == 0 && s.busy > 0 && ctx.Err() == nil {
		s.wake.Wait()
	}
	if len(s.tasks) == 0 || ctx.Err() != nil {
		s.drop()
		return task{}, false
	}
	last := len(s.tasks) - 1
	t = s.tasks[last]
	s.tasks = s.tasks[:last]
	s.busy++
	return t, true
}

// drop lets go of what will not be done.
func (s *scan) drop() {
	for _, t := range s.tasks {
		if t.in != nil {
			t.in.release()
		}
	}
	s.tasks = nil
}

func (s *scan) done() {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.busy--
	s.wake.Broadcast()
}

// offer hands on a task, unless too many wait. Folders always wait: they are
// names only.
func (s *scan) offer(t task) bool {
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
	*scan
	ctx    context.Context
	reader Reader
	buf    []byte
	file   File
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
	f, err := openFolder(filepath.Join(w.root, filepath.FromSlash(path)))
	if err != nil {
		w.fail(path, err)
		return
	}
	defer f.release()
	for w.ctx.Err() == nil {
		names, err := w.names(f, path)
		if len(names) > 0 {
			t := task{path: path, in: f, names: names}
			f.hold()
			if !w.offer(t) {
				w.read(t)
			}
		}
		if err != nil {
			w.fail(path, err)
		}
		if err != nil || f.ended {
			return
		}
	}
}

// names reads on in a folder: the names of files of visits. Folders in it
// become tasks.
func (w *worker) names(f *folder, path string) ([]string, error) {
	entries, err := f.entries(chunk)
	names := make([]string, 0, len(entries))
	for _, e := range entries {
		name := e.Name()
		switch {
		case strings.HasPrefix(name, "."):
		case e.IsDir():
			w.offer(task{path: below(path, name)})
		case isVisit(name):
			names = append(names, name)
		case isLinkToFolder(f, e):
			w.fail(below(path, name), errLink)
		}
	}
	return names, err
}

// isVisit reports a name that files of visits have.
func isVisit(name string) bool {
	const ending = ".json"
	return len(name) > len(ending) && strings.EqualFold(name[len(name)-len(ending):], ending)
}

func (w *worker) fail(path string, err error) {
	w.file = File{Path: below(path, ""), Err: fmt.Errorf("%w: %w", ErrUnreadable, err)}
	w.reader.Take(&w.file, nil)
}

// below joins paths with a slash, so that they are the same on every system.
func below(path, name string) string {
	switch {
	case path == "" && name == "":
		return "."
	case path == "":
		return name
	case name == "":
		return path
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
		*f = File{Path: below(t.path, name)}
		if w.ask {
			if f.Stamp, f.Err = t.in.stamp(name); f.Err == nil && w.reader.Known(f) {
				continue
			}
		}
		var data []byte
		if f.Err == nil {
			data, f.Err = t.in.read(name, w.most, &w.buf, &f.Stamp)
		}
		if f.Err != nil {
			f.Err = fmt.Errorf("%w: %w", ErrUnreadable, f.Err)
		}
		w.reader.Take(f, data)
	}
}
