package review

import (
	"bufio"
	"crypto/sha256"
	"encoding/binary"
	"encoding/hex"
	"errors"
	"fmt"
	"hash"
	"hash/crc32"
	"io"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"time"

	"cutbrief/rules"
)

// The index file: a line that names it, the key, the entries as pack.go writes
// them, the texts they share, and a tail: how many entries there are, where the
// texts begin, and a checksum (CRC-32, Castagnoli) of all before it. The numbers
// of the tail are of a fixed size, the smallest byte first.
const (
	indexFormat = 6
	indexMagic  = "cutbrief-review-index 6\n"
	keyLen      = 16
	tailLen     = 4 + 8 + 4
)

// checksums is the table of the checksum, built when an index is first read or
// written.
var checksums = sync.OnceValue(func() *crc32.Table { return crc32.MakeTable(crc32.Castagnoli) })

var errIndex = errors.New("not an index of this program")

// index is what was worked out before, read from a file. A file whose size,
// times and number are those of the entry is not read again. Each entry is found
// at most once in a run.
type index struct {
	entries
	sums   sync.Once // of the paths, once one is not met in its turn
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
	sum := sha256.Sum256(fmt.Appendf(nil, "%d %q %d %q", indexFormat, o.Program, rules.Edition, o.Criteria.print))
	return string(sum[:keyLen])
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
	if s, err := decodeIndex(data, indexKey(o)); err == nil {
		x.entries, x.seen = *s, make([]bool, len(s.refs))
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

// find reads the entry of a file in this very state. The files of a folder are
// mostly met in the order they were met before, so that the entry is looked for
// first at next, and else by the sum of its path.
func (x *index) find(path string, of stamp, next *int, e *entry) bool {
	i := *next
	if i >= len(x.refs) || x.path(i) != path {
		x.sums.Do(func() { x.places.add(&x.entries) })
		var known bool
		if i, known = x.places.find(&x.entries, path); !known {
			return false
		}
	}
	if *next = i + 1; x.seen[i] {
		return false
	}
	if x.get(i, e); e.stamp != of {
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
func (x *index) save(o Options, fresh []*entries, started time.Time) {
	limit := started.Add(-settled).UnixNano()
	write := func(out io.Writer) error {
		w := newIndexWriter(out, indexKey(o))
		for i, e := range x.all() {
			if x.seen[i] {
				w.entry(e)
			}
		}
		for _, s := range fresh {
			for _, e := range s.all() {
				if e.stamp.modified < limit && e.stamp.changed < limit {
					w.entry(e)
				}
			}
		}
		return w.end()
	}
	new := slices.ContainsFunc(fresh, func(s *entries) bool {
		for _, e := range s.all() {
			if e.stamp.modified < limit && e.stamp.changed < limit {
				return true
			}
		}
		return false
	})
	if new || len(x.seen) == 0 || slices.Contains(x.seen, false) {
		_ = replaceIndex(o.Index, write) // without an index the next run only takes longer
	}
}

// replaceIndex writes a file beside the old one and gives it its name. The name
// beside it is always the same, so that what a killed program left is found: it
// is taken away once it is old. While another program writes, nothing is written:
// the index serves speed alone.
func replaceIndex(path string, write func(io.Writer) error) error {
	const longestWrite = 10 * time.Minute // longer than any index takes to be written
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

// indexWriter writes an index as its entries come, and holds only the texts they
// share.
type indexWriter struct {
	out   *bufio.Writer
	sum   hash.Hash32
	size  uint64
	count uint32
	packer
}

func newIndexWriter(out io.Writer, key string) *indexWriter {
	w := &indexWriter{out: bufio.NewWriterSize(out, blockSize), sum: crc32.New(checksums())}
	w.write(append([]byte(indexMagic), key...))
	return w
}

// write keeps what is wrong for the end, as bufio does.
func (w *indexWriter) write(data []byte) {
	w.sum.Write(data) // never fails
	w.size += uint64(len(data))
	_, _ = w.out.Write(data)
}

func (w *indexWriter) entry(e *entry) {
	w.write(w.packer.entry(e))
	w.count++
}

func (w *indexWriter) end() error {
	textsAt, p := w.size, packer{}
	p.number(uint64(len(w.texts)))
	for _, s := range w.texts {
		p.text(s)
	}
	p.out = binary.LittleEndian.AppendUint32(p.out, w.count)
	w.write(binary.LittleEndian.AppendUint64(p.out, textsAt))
	w.write(binary.LittleEndian.AppendUint32(nil, w.sum.Sum32()))
	return w.out.Flush()
}

// decodeIndex reads an index that was made with a key. The entries are parts of
// its bytes.
func decodeIndex(data, key string) (*entries, error) {
	head, tail := indexMagic+key, len(data)-tailLen
	if tail < len(head) || data[:len(head)] != head || uint64(len(data)) > math.MaxUint32 { // more than a place in a block can tell
		return nil, errIndex
	}
	end := []byte(data[tail:])
	count, textsAt := binary.LittleEndian.Uint32(end), binary.LittleEndian.Uint64(end[4:])
	if checksum(data[:len(data)-4]) != binary.LittleEndian.Uint32(end[12:]) || textsAt < uint64(len(head)) || textsAt > uint64(tail) {
		return nil, errIndex
	}
	s := &entries{full: []string{data}}
	var err error
	if s.texts, err = decodeTexts(data[textsAt:tail]); err != nil {
		return nil, err
	}
	s.refs, err = decodeEntries(data[:textsAt], len(head), count, s.texts)
	return s, err
}

func decodeTexts(data string) ([]string, error) {
	u := unpacker{in: data}
	n := u.number()
	if n > uint64(len(u.in)) {
		return nil, errIndex
	}
	list := make([]string, n)
	for i := range list {
		list[i] = u.text()
	}
	if u.broken || len(u.in) > 0 {
		return nil, errIndex
	}
	return list, nil
}

// decodeEntries reads every entry once, so that none is broken later, and says
// where each begins.
func decodeEntries(data string, at int, count uint32, texts []string) ([]ref, error) {
	if uint64(count) > uint64(len(data)) {
		return nil, errIndex
	}
	u := unpacker{in: data[at:], texts: texts}
	refs := make([]ref, count)
	var e entry
	for i := range refs {
		refs[i] = refOf(0, len(data)-len(u.in))
		u.entry(&e)
	}
	if u.broken || len(u.in) > 0 {
		return nil, errIndex
	}
	return refs, nil
}

// checksum takes the sum of a text without copying all of it.
func checksum(data string) uint32 {
	var part [32 << 10]byte
	sum := uint32(0)
	for len(data) > 0 {
		n := copy(part[:], data)
		sum = crc32.Update(sum, checksums(), part[:n])
		data = data[n:]
	}
	return sum
}
