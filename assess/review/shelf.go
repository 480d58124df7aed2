package review

import (
	"math"
	"slices"
	"strings"

	"cutbrief/assess/store/scan"
)

// entry is one file as it is kept: its row, the cuts timed in it, and the state it
// was read in. Without a size it has no such state.
type entry struct {
	path  string
	stamp scan.Stamp
	row   Row
	cuts  []timing
}

// shelf holds very many entries in little memory: each is bytes in a large block,
// of the same form as in the index file. A text that many entries share is there
// once. Blocks hold no pointers, so that collecting garbage passes them over.
// One goroutine at a time may change it; the zero value is ready.
type shelf struct {
	full  []string         // blocks with no room left
	open  *strings.Builder // the block being filled, behind the full ones
	refs  []ref            // the entries in their order
	texts texts
	buf   []byte
}

// ref is where an entry begins: which block, and which byte in it.
type ref uint64

func refOf(block, at int) ref { return ref(block)<<32 | ref(at) }

// blockSize is how much one block of a shelf holds.
const blockSize = 64 << 10

// write keeps an entry, in no place yet.
func (s *shelf) write(e *entry) ref {
	s.buf = s.texts.append(s.buf[:0], e)
	if s.open != nil && s.open.Len()+len(s.buf) > s.open.Cap() {
		s.close()
	}
	if s.open == nil {
		s.open = &strings.Builder{}
		s.open.Grow(max(blockSize, len(s.buf)))
	}
	at := refOf(len(s.full), s.open.Len())
	s.open.Write(s.buf)
	return at
}

// close begins a new block with the next entry.
func (s *shelf) close() {
	if s.open != nil {
		s.full, s.open = append(s.full, s.open.String()), nil
	}
}

// put adds an entry behind the others.
func (s *shelf) put(e *entry) { s.refs = append(s.refs, s.write(e)) }

// reader reads the entry at a place.
func (s *shelf) reader(i int) unpacker {
	block, at := int(s.refs[i]>>32), int(s.refs[i]&math.MaxUint32)
	if block < len(s.full) {
		return unpacker{in: s.full[block][at:], texts: s.texts.list}
	}
	return unpacker{in: s.open.String()[at:], texts: s.texts.list}
}

// get reads an entry.
func (s *shelf) get(i int, e *entry) {
	u := s.reader(i)
	u.entry(e)
}

// path is the path of an entry.
func (s *shelf) path(i int) string {
	u := s.reader(i)
	return u.text()
}

// company is the customer of an entry.
func (s *shelf) company(i int) string {
	u := s.reader(i)
	u.text() // the path
	return u.text()
}

// snapshot is a shelf of the same entries. Changing one does not change the other,
// though they share what was kept before.
func (s *shelf) snapshot() shelf {
	n := shelf{full: slices.Clone(s.full), refs: slices.Clone(s.refs), texts: texts{list: slices.Clip(s.texts.list)}}
	if s.open != nil {
		n.full = append(n.full, s.open.String())
	}
	return n
}
