package review

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"cutbrief/assess/store/scan"
	"cutbrief/rules"
)

// index is what was worked out before, read from a file. A file whose size,
// times and number are those of the entry is not read again. Each entry is found
// at most once in a run.
type index struct {
	*shelf
	places places
	seen   []bool
}

// IndexName is the name of the index of a folder: the same folder has the same.
func IndexName(dir string) (string, error) {
	whole, err := filepath.Abs(dir)
	if err != nil {
		return "", err
	}
	sum := sha256.Sum256([]byte(whole))
	return "review-" + hex.EncodeToString(sum[:8]) + ".index", nil
}

// indexKey is what an index must have been made with to be of use: this build,
// these rules, this range.
func indexKey(o Options) string {
	sum := sha256.Sum256(fmt.Appendf(nil, "%d %q %d %q", indexFormat, o.Program, rules.Edition, o.Bench.print))
	return string(sum[:16])
}

// openIndex reads the index. One that is missing, damaged or made otherwise is
// as good as none.
func openIndex(o Options) *index {
	x := &index{shelf: &shelf{}}
	if o.Index == "" {
		return x
	}
	data, err := readIndex(o.Index)
	if err != nil {
		return x
	}
	if s, err := decodeIndex(data, indexKey(o)); err == nil {
		x.shelf, x.seen = s, make([]bool, len(s.refs))
		x.places.room(len(s.refs), s.path)
		for range s.refs {
			x.places.add(s.path)
		}
	}
	return x
}

// readIndex reads a file into a text of which the rows will be parts.
func readIndex(path string) (string, error) {
	f, err := os.Open(path)
	if err != nil {
		return "", err
	}
	defer f.Close() // only read: nothing to lose
	info, err := f.Stat()
	if err != nil {
		return "", err
	}
	var b strings.Builder
	b.Grow(int(info.Size()))
	_, err = io.Copy(&b, f)
	return b.String(), err
}

// find reads the entry of a file in this very state.
func (x *index) find(f *scan.File, e *entry) bool {
	i, ok := x.places.find(f.Path, x.path)
	if !ok || x.seen[i] {
		return false
	}
	if x.get(i, e); e.stamp != f.Stamp {
		return false
	}
	x.seen[i] = true // by one worker: a path is met once
	return true
}

// settled is how much older than the scan a file must be for its times to tell
// one edit from the next: the coarsest clock of a file system, FAT's, ticks every
// two seconds (Microsoft, FAT specification, from memory).
const settled = 2 * time.Second

// save writes the entries that were met and the fresh ones, in place of the file
// or not at all. Files written just before the scan, or by a clock ahead of ours,
// are left out: another edit might not change their times.
func (x *index) save(o Options, fresh []*shelf, started time.Time) {
	limit := started.Add(-settled).UnixNano()
	old := func(e *entry) bool { return e.stamp.Modified < limit && e.stamp.Changed < limit }
	if !slices.Contains(x.seen, false) && len(x.seen) > 0 && !slices.ContainsFunc(fresh, func(s *shelf) bool { return s.holds(old) }) {
		return // nothing new
	}
	// Without an index the next run only takes longer.
	_ = replaceIndex(o.Index, func(out io.Writer) error {
		w := newIndexWriter(out, indexKey(o))
		var e entry
		for i, met := range x.seen {
			if met {
				x.get(i, &e)
				w.entry(&e)
			}
		}
		for _, s := range fresh {
			for i := range s.refs {
				if s.get(i, &e); old(&e) {
					w.entry(&e)
				}
			}
		}
		return w.end()
	})
}

// holds reports whether something is so of an entry.
func (s *shelf) holds(is func(*entry) bool) bool {
	var e entry
	for i := range s.refs {
		if s.get(i, &e); is(&e) {
			return true
		}
	}
	return false
}

// replaceIndex writes a file beside the old one and gives it its name. The name
// beside it is always the same, so that what a killed program left is found: it
// is taken away once it is old. While another program writes, nothing is written:
// the index serves speed alone.
func replaceIndex(path string, write func(io.Writer) error) error {
	if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
		return err
	}
	beside := path + ".new"
	if left, err := os.Lstat(beside); err == nil && time.Since(left.ModTime()) > longestWrite {
		os.Remove(beside)
	}
	f, err := os.OpenFile(beside, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o600)
	if err != nil {
		return err
	}
	err = errors.Join(write(f), f.Close())
	if err == nil {
		err = os.Rename(beside, path)
	}
	if err != nil {
		os.Remove(beside)
	}
	return err
}

// longestWrite is longer than any index takes to be written.
const longestWrite = 10 * time.Minute
