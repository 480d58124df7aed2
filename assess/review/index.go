package review

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"time"

	"cutbrief/assess/store/scan"
	"cutbrief/rules"
)

// entry is what the index holds of one file.
type entry struct {
	path  string
	stamp scan.Stamp
	row   Row
}

// index is what was worked out before, read from a file. A file whose size,
// times and number are those of the entry is not read again. Each entry is found
// at most once in a run.
type index struct {
	entries []entry
	at      map[string]int32
	seen    []bool
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
	x := &index{}
	if o.Index == "" {
		return x
	}
	data, err := readIndex(o.Index)
	if err != nil {
		return x
	}
	if entries, err := decodeIndex(data, indexKey(o)); err == nil {
		x.entries = entries
		x.seen = make([]bool, len(entries))
		x.at = make(map[string]int32, len(entries))
		for i := range entries {
			x.at[entries[i].path] = int32(i)
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

func (x *index) find(f *scan.File) (*Row, bool) {
	i, ok := x.at[f.Path]
	if !ok || x.entries[i].stamp != f.Stamp || x.seen[i] {
		return nil, false
	}
	x.seen[i] = true // by one worker: a path is met once
	return &x.entries[i].row, true
}

// settled is how much older than the scan a file must be for its times to tell
// one edit from the next: the coarsest clock of a file system, FAT's, ticks every
// two seconds (Microsoft, FAT specification, from memory).
const settled = 2 * time.Second

// save writes the entries that were met and the fresh ones, in place of the file
// or not at all. Files written just before the scan, or by a clock ahead of ours,
// are left out: another edit might not change their times.
func (x *index) save(o Options, fresh []*entry, started time.Time) {
	limit := started.Add(-settled).UnixNano()
	kept := make([]*entry, 0, len(fresh))
	for _, e := range fresh {
		if e.stamp.Modified < limit && e.stamp.Changed < limit {
			kept = append(kept, e)
		}
	}
	gone := 0
	for i := range x.entries {
		if !x.seen[i] {
			gone++
		}
	}
	if len(kept) == 0 && gone == 0 && x.entries != nil {
		return // nothing new
	}
	w := newIndexWriter(indexKey(o))
	for i := range x.entries {
		if x.seen[i] {
			w.entry(&x.entries[i])
		}
	}
	for _, e := range kept {
		w.entry(e)
	}
	_ = replaceIndex(o.Index, w.end()) // without it the next run only takes longer
}

// replaceIndex writes a file beside the old one and gives it its name.
func replaceIndex(path string, data []byte) error {
	if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
		return err
	}
	f, err := os.CreateTemp(filepath.Dir(path), "."+strings.TrimSuffix(filepath.Base(path), ".index")+"-*")
	if err != nil {
		return err
	}
	_, err = f.Write(data)
	err = errors.Join(err, f.Close())
	if err == nil {
		err = os.Rename(f.Name(), path)
	}
	if err != nil {
		os.Remove(f.Name())
	}
	return err
}
