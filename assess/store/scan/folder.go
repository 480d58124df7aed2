package scan

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"sync/atomic"
)

// ErrUnreadable is what every reason why something is not read is wrapped in.
var ErrUnreadable = errors.New("cannot be read")

// Reasons why something is not read.
var (
	errLink    = errors.New("a link to a folder, which is not followed")
	errRegular = errors.New("not a regular file")
)

// folder is an open folder. Its files are opened below it, which saves the
// system from walking down the path for each.
type folder struct {
	f     *os.File
	ended bool
	holds atomic.Int32
}

func openFolder(path string) (*folder, error) {
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
	d := &folder{f: f}
	d.hold()
	return d, nil
}

func (d *folder) hold() { d.holds.Add(1) }

// release closes the folder when nobody needs it any more.
func (d *folder) release() {
	if d.holds.Add(-1) == 0 {
		d.f.Close() // only read: nothing to lose
	}
}

func (d *folder) close() { d.release() }

// entries reads on, at most n.
func (d *folder) entries(n int) ([]fs.DirEntry, error) {
	entries, err := d.f.ReadDir(n)
	if errors.Is(err, io.EOF) {
		d.ended, err = true, nil
	}
	return entries, err
}

// isLinkToFolder reports a link that would lead on.
func isLinkToFolder(d *folder, e fs.DirEntry) bool {
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
