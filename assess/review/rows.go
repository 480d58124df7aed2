package review

import (
	"hash/maphash"
	"iter"
	"math"
	"slices"
	"strings"
)

// entries holds very many entries in little memory: each is bytes in a large
// block, of the same form as in the index file. Blocks hold no pointers, so that
// collecting garbage passes them over. One goroutine at a time may change it; the
// zero value is ready.
type entries struct {
	full []string         // blocks with no room left
	open *strings.Builder // the block being filled, behind the full ones
	refs []ref            // the entries in their order
	packer
}

// ref is where an entry begins: which block, and which byte in it.
type ref uint64

func refOf(block, at int) ref { return ref(block)<<32 | ref(at) }

// blockSize is how much one block holds.
const blockSize = 64 << 10

// write keeps packed bytes, in no place yet.
func (s *entries) write(packed []byte) ref {
	if s.open != nil && s.open.Len()+len(packed) > s.open.Cap() {
		s.full, s.open = append(s.full, s.open.String()), nil
	}
	if s.open == nil {
		s.open = &strings.Builder{}
		s.open.Grow(max(blockSize, len(packed)))
	}
	at := refOf(len(s.full), s.open.Len())
	s.open.Write(packed)
	return at
}

// put adds an entry behind the others. Room for their places grows by a sixteenth:
// append would leave a fifth of it empty.
func (s *entries) put(e *entry) {
	if n := len(s.refs); n == cap(s.refs) {
		s.refs = append(make([]ref, 0, n+max(n/16, 512)), s.refs...)
	}
	s.refs = append(s.refs, s.write(s.entry(e)))
}

// set puts an entry in the place of another.
func (s *entries) set(i int, e *entry) {
	packed := s.entry(e)
	if there := s.reader(i).in; len(there) < len(packed) || there[:len(packed)] != string(packed) {
		s.refs[i] = s.write(packed)
	}
}

// reader reads the entry at a place.
func (s *entries) reader(i int) unpacker {
	block, at := int(s.refs[i]>>32), int(s.refs[i]&math.MaxUint32)
	if block < len(s.full) {
		return unpacker{in: s.full[block][at:], texts: s.texts}
	}
	return unpacker{in: s.open.String()[at:], texts: s.texts}
}

// get reads an entry.
func (s *entries) get(i int, e *entry) {
	u := s.reader(i)
	u.entry(e)
}

// path is the path of an entry.
func (s *entries) path(i int) string {
	u := s.reader(i)
	return u.text()
}

// all goes through the entries. The next is put in the place of each.
func (s *entries) all() iter.Seq2[int, *entry] {
	return func(yield func(int, *entry) bool) {
		var e entry
		for i := range s.refs {
			if s.get(i, &e); !yield(i, &e) {
				return
			}
		}
	}
}

// snapshot is the same entries. Changing one does not change the other, though
// they share what was kept before.
func (s *entries) snapshot() entries {
	n := entries{full: slices.Clone(s.full), refs: slices.Clone(s.refs), packer: packer{texts: slices.Clip(s.texts)}}
	if s.open != nil {
		n.full = append(n.full, s.open.String())
	}
	return n
}

// places finds the place of a path among entries, by the sum of the path alone:
// the paths are not held. The zero value is ready.
type places struct {
	n    int // places that were added, from 0
	seed maphash.Seed
	at   map[uint64]int32
}

// add takes in the entries it does not have yet. Of two paths alike the first is
// found.
func (p *places) add(s *entries) {
	if p.at == nil {
		p.seed, p.at = maphash.MakeSeed(), make(map[uint64]int32, len(s.refs))
	}
	for ; p.n < len(s.refs); p.n++ {
		sum := maphash.String(p.seed, s.path(p.n))
		if _, there := p.at[sum]; !there {
			p.at[sum] = int32(p.n)
		}
	}
}

// find is the place of a path.
func (p *places) find(s *entries, path string) (place int, known bool) {
	if p.at == nil {
		return 0, false
	}
	at, known := p.at[maphash.String(p.seed, path)]
	return int(at), known && s.path(int(at)) == path
}

// Rows holds very many rows in little memory. One goroutine at a time may change
// it; the zero value is ready.
type Rows struct {
	entries entries
	places  places // of the paths, once Set needs them
	met     []bool // since Begin, by place
}

// Add puts rows of other files behind those there are. It keeps no pointer to
// them.
func (rows *Rows) Add(list ...*Row) {
	for _, r := range list {
		rows.entries.put(&entry{path: r.Path, row: *r})
	}
}

// Set puts each row in the place of the one of the same path, or behind the
// others.
func (rows *Rows) Set(list ...*Row) {
	for _, r := range list {
		rows.places.add(&rows.entries)
		i, known := rows.places.find(&rows.entries, r.Path)
		if !known {
			rows.Add(r)
			continue
		}
		rows.entries.set(i, &entry{path: r.Path, row: *r})
		if i < len(rows.met) {
			rows.met[i] = true
		}
	}
}

// Begin begins to note which of the rows there are is set again.
func (rows *Rows) Begin() { rows.met = make([]bool, rows.Len()) }

// End drops the rows that were not: their files are gone.
func (rows *Rows) End() {
	kept := rows.entries.refs[:0]
	for i, at := range rows.entries.refs {
		if i >= len(rows.met) || rows.met[i] {
			kept = append(kept, at)
		}
	}
	rows.entries.refs, rows.places, rows.met = kept, places{}, nil
}

// Len is how many rows there are.
func (rows *Rows) Len() int { return len(rows.entries.refs) }

// At returns a row.
func (rows *Rows) At(i int) Row {
	var e entry
	rows.entries.get(i, &e)
	return e.row
}

// Path returns the path of a row, which costs less than the row.
func (rows *Rows) Path(i int) string { return rows.entries.path(i) }

// All goes through the rows. A row is to be copied by those who keep it: the next
// is put in its place.
func (rows *Rows) All() iter.Seq[*Row] {
	return func(yield func(*Row) bool) {
		for _, e := range rows.entries.all() {
			if !yield(&e.row) {
				return
			}
		}
	}
}

// Pick goes through the rows at some places, as All does.
func (rows *Rows) Pick(places []int32) iter.Seq[*Row] {
	return func(yield func(*Row) bool) {
		var e entry
		for _, i := range places {
			if rows.entries.get(int(i), &e); !yield(&e.row) {
				return
			}
		}
	}
}

// Snapshot returns the same rows. Changing one changes not the other, and another
// goroutine may have it.
func (rows *Rows) Snapshot() *Rows { return &Rows{entries: rows.entries.snapshot()} }
