package review

import (
	"bufio"
	"encoding/binary"
	"errors"
	"hash"
	"hash/crc32"
	"io"
	"math"
	"sync"
)

// The index file: a line that names it, the key, the entries as packing.go writes
// them, the texts they share, and a tail: how many entries there are, where the
// texts begin, and a checksum (CRC-32, Castagnoli) of all before it. The numbers
// of the tail are of a fixed size, the smallest byte first.
const (
	indexFormat = 3
	indexMagic  = "cutbrief-review-index 3\n"
	keyLen      = 16
	tailLen     = 4 + 8 + 4
)

// checksums is the table of the checksum, built when an index is first read or
// written.
var checksums = sync.OnceValue(func() *crc32.Table { return crc32.MakeTable(crc32.Castagnoli) })

var errIndex = errors.New("not an index of this program")

// indexWriter writes an index as its entries come, and holds only the texts they
// share.
type indexWriter struct {
	out   *bufio.Writer
	sum   hash.Hash32
	size  uint64
	count uint32
	texts texts
	buf   []byte
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
	w.buf = w.texts.append(w.buf[:0], e)
	w.write(w.buf)
	w.count++
}

func (w *indexWriter) end() error {
	textsAt := w.size
	w.buf = binary.AppendUvarint(w.buf[:0], uint64(len(w.texts.list)))
	for _, s := range w.texts.list {
		w.buf = appendText(w.buf, s)
	}
	w.buf = binary.LittleEndian.AppendUint32(w.buf, w.count)
	w.buf = binary.LittleEndian.AppendUint64(w.buf, textsAt)
	w.write(w.buf)
	w.write(binary.LittleEndian.AppendUint32(nil, w.sum.Sum32()))
	return w.out.Flush()
}

// decodeIndex reads an index that was made with a key. The entries are parts of
// its bytes.
func decodeIndex(data, key string) (*shelf, error) {
	head, tail := indexMagic+key, len(data)-tailLen
	if tail < len(head) || data[:len(head)] != head {
		return nil, errIndex
	}
	if uint64(len(data)) > math.MaxUint32 {
		return nil, errIndex // more than a place in a block can tell
	}
	end := []byte(data[tail:])
	count, textsAt := binary.LittleEndian.Uint32(end), binary.LittleEndian.Uint64(end[4:])
	if checksum(data[:len(data)-4]) != binary.LittleEndian.Uint32(end[12:]) || textsAt < uint64(len(head)) || textsAt > uint64(tail) {
		return nil, errIndex
	}
	s := &shelf{full: []string{data}}
	var err error
	if s.texts.list, err = decodeTexts(data[textsAt:tail]); err != nil {
		return nil, err
	}
	s.refs, err = decodeEntries(data[:textsAt], len(head), count, s.texts.list)
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
