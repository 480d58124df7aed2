package review

import (
	"encoding/binary"
	"errors"
	"hash/crc32"
	"math"
	"sync"

	"cutbrief/assess/store/scan"
	"cutbrief/rules/unit"
)

// The index file: a line that names it, the key, the entries, how many they are,
// and a checksum (CRC-32, Castagnoli) of all before it. Numbers are varints, but
// the last two, which are of four bytes. A text that many entries
// share is written once and then by its number.
const (
	indexFormat = 2
	indexMagic  = "cutbrief-review-index 2\n"
	keyLen      = 16
	tailLen     = 8
)

// checksums is the table of the checksum, built when an index is first read or
// written.
var checksums = sync.OnceValue(func() *crc32.Table { return crc32.MakeTable(crc32.Castagnoli) })

var errIndex = errors.New("not an index of this program")

// texts are the fields of a row that are written as shared texts.
func (r *Row) texts() [10]*string {
	return [...]*string{&r.Date, &r.Rep, &r.Metals, (*string)(&r.Critical), &r.System, (*string)(&r.Verdict), &r.Outcome, &r.Due, &r.Why, &r.Unanswered}
}

type indexWriter struct {
	out   []byte
	texts map[string]uint64
	count uint32
}

func newIndexWriter(key string) *indexWriter {
	w := &indexWriter{texts: map[string]uint64{"": 0}}
	w.out = append(append(w.out, indexMagic...), key...)
	return w
}

func (w *indexWriter) number(n uint64) { w.out = binary.AppendUvarint(w.out, n) }

func (w *indexWriter) text(s string) {
	w.number(uint64(len(s)))
	w.out = append(w.out, s...)
}

// shared writes the number of a text; one that is new gets the next number, and
// follows it.
func (w *indexWriter) shared(s string) {
	n, ok := w.texts[s]
	if !ok {
		n = uint64(len(w.texts))
		w.texts[s] = n
	}
	w.number(n)
	if !ok {
		w.text(s)
	}
}

func (w *indexWriter) entry(e *entry) {
	w.count++
	w.text(e.path)
	w.number(uint64(e.stamp.Size))
	w.number(uint64(e.stamp.Modified))
	w.number(uint64(e.stamp.Changed))
	w.number(e.stamp.Inode)
	r := &e.row
	w.text(r.Company)
	for _, s := range r.texts() {
		w.shared(*s)
	}
	w.number(math.Float64bits(float64(r.Thickest)))
	w.number(uint64(r.Flags))
	w.number(uint64(r.Stage))
	w.number(r.Noted.packed())
}

func (w *indexWriter) end() []byte {
	w.out = binary.LittleEndian.AppendUint32(w.out, w.count)
	return binary.LittleEndian.AppendUint32(w.out, crc32.Checksum(w.out, checksums()))
}

// indexReader reads an index; texts are parts of its bytes.
type indexReader struct {
	in     string
	texts  []string
	broken bool
}

// decodeIndex reads the entries of an index that was made with a key.
func decodeIndex(data, key string) ([]entry, error) {
	head, tail := indexMagic+key, len(data)-tailLen
	if tail < len(head) || data[:len(head)] != head {
		return nil, errIndex
	}
	end := []byte(data[tail:])
	if checksum(data[:len(data)-4]) != binary.LittleEndian.Uint32(end[4:]) {
		return nil, errIndex
	}
	count := binary.LittleEndian.Uint32(end)
	r := indexReader{in: data[len(head):tail], texts: []string{""}}
	if uint64(count) > uint64(len(r.in)) {
		return nil, errIndex
	}
	entries := make([]entry, count)
	for i := range entries {
		r.entry(&entries[i])
	}
	if r.broken || len(r.in) > 0 {
		return nil, errIndex
	}
	return entries, nil
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

func (r *indexReader) number() uint64 {
	var n uint64
	for i := 0; i < len(r.in) && i < binary.MaxVarintLen64; i++ {
		c := r.in[i]
		n |= uint64(c&0x7f) << (7 * i)
		if c < 0x80 {
			r.in = r.in[i+1:]
			return n
		}
	}
	r.broken, r.in = true, ""
	return 0
}

func (r *indexReader) text() string {
	n := r.number()
	if n > uint64(len(r.in)) {
		r.broken = true
		return ""
	}
	s := r.in[:n]
	r.in = r.in[n:]
	return s
}

func (r *indexReader) shared() string {
	switch n := r.number(); {
	case n < uint64(len(r.texts)):
		return r.texts[n]
	case n > uint64(len(r.texts)):
		r.broken = true
		return ""
	}
	s := r.text()
	r.texts = append(r.texts, s)
	return s
}

func (r *indexReader) entry(e *entry) {
	e.path = r.text()
	e.stamp = scan.Stamp{Size: int64(r.number()), Modified: int64(r.number()), Changed: int64(r.number()), Inode: r.number()}
	row := &e.row
	row.Company = r.text()
	for _, s := range row.texts() {
		*s = r.shared()
	}
	row.Thickest = unit.Millimetre(math.Float64frombits(r.number()))
	row.Flags = FlagSet(r.number())
	row.Stage = Stage(r.number())
	row.Noted = unpacked(r.number())
	row.Path = cleanPath(e.path)
}
