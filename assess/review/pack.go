package review

import (
	"encoding/binary"
	"math"
	"math/bits"
	"strings"

	"cutbrief/rules/demonstration"
	"cutbrief/rules/metal"
	"cutbrief/rules/unit"
)

// entry is one file as it is kept: its row, the cuts timed in it, and the state it
// was read in. Without a size it has no such state.
type entry struct {
	path  string
	stamp stamp
	row   Row
	cuts  []timing
}

// keeper is how a column is kept of a row.
type keeper interface {
	pack(p *packer, r *Row)
	unpack(u *unpacker, r *Row)
}

// textKept is a text; one that is likely to be alike in many rows is there once.
type textKept struct {
	at    func(*Row) *string
	alike bool
}

func own(at func(*Row) *string) keeper   { return textKept{at, false} }
func alike(at func(*Row) *string) keeper { return textKept{at, true} }

func (k textKept) pack(p *packer, r *Row) {
	if k.alike {
		p.shared(*k.at(r))
	} else {
		p.text(*k.at(r))
	}
}

func (k textKept) unpack(u *unpacker, r *Row) {
	if k.alike {
		*k.at(r) = u.shared()
	} else {
		*k.at(r) = u.text()
	}
}

// numberKept is a number.
type numberKept struct {
	get func(*Row) uint64
	set func(*Row, uint64)
}

func (k numberKept) pack(p *packer, r *Row)     { p.number(k.get(r)) }
func (k numberKept) unpack(u *unpacker, r *Row) { k.set(r, u.number()) }

// The columns that are kept as numbers.
var (
	flagsKept = numberKept{func(r *Row) uint64 { return uint64(r.Flags) }, func(r *Row, n uint64) { r.Flags = FlagSet(n) }}
	stageKept = numberKept{func(r *Row) uint64 { return uint64(r.Stage) }, func(r *Row, n uint64) { r.Stage = Stage(n) }}
	notedKept = numberKept{func(r *Row) uint64 { return r.Noted.packed() }, func(r *Row, n uint64) { r.Noted = unpacked(n) }}
)

// thickestKept keeps a thickness as a text that rows share: most are one of a few,
// and 12.7 takes nine bytes.
type thickestKept struct{}

func (thickestKept) pack(p *packer, r *Row) {
	if r.Thickest == 0 {
		p.shared("")
		return
	}
	p.shared(string(binary.LittleEndian.AppendUint64(nil, math.Float64bits(float64(r.Thickest)))))
}

func (thickestKept) unpack(u *unpacker, r *Row) {
	r.Thickest = 0
	if s := u.shared(); len(s) == 8 {
		r.Thickest = unit.Millimetre(math.Float64frombits(binary.LittleEndian.Uint64([]byte(s))))
	}
}

// floatBits are the bits back to front: those of a round number end in zeros.
func floatBits(v float64) uint64 { return bits.ReverseBytes64(math.Float64bits(v)) }
func floatOf(n uint64) float64   { return math.Float64frombits(bits.ReverseBytes64(n)) }

// mostTexts bounds what is kept for sharing: with more than these, texts are not
// alike, and looking for one that is costs more than it saves.
const mostTexts = 10000

// packer writes entries. Numbers are varints, a text is its length and bytes, a
// shared text its number from 1, or 0 and the text.
type packer struct {
	out     []byte
	texts   []string // that are shared
	numbers map[string]uint64
}

func (p *packer) number(n uint64) { p.out = binary.AppendUvarint(p.out, n) }
func (p *packer) signed(n int64)  { p.out = binary.AppendVarint(p.out, n) }
func (p *packer) float(v float64) { p.number(floatBits(v)) }
func (p *packer) text(s string)   { p.number(uint64(len(s))); p.out = append(p.out, s...) }
func (p *packer) shared(s string) {
	n := p.numberOf(s)
	if p.number(n); n == 0 {
		p.text(s)
	}
}

// numberOf is the number of a text; 0 if it is not shared.
func (p *packer) numberOf(s string) uint64 {
	if p.numbers == nil {
		p.numbers = make(map[string]uint64, len(p.texts))
		for i, s := range p.texts {
			p.numbers[s] = uint64(i + 1)
		}
	}
	n := p.numbers[s]
	if n == 0 && len(p.texts) < mostTexts {
		s = strings.Clone(s) // it may be part of a whole file
		p.texts = append(p.texts, s)
		n = uint64(len(p.texts))
		p.numbers[s] = n
	}
	return n
}

// maybe writes whether a quantity is known, and then what it is.
func maybe[Q ~float64](p *packer, m unit.Maybe[Q]) {
	v, known := m.Get()
	if !known {
		p.number(0)
		return
	}
	p.number(1)
	p.float(float64(v))
}

// entry writes an entry in place of what was written before.
func (p *packer) entry(e *entry) []byte {
	p.out = p.out[:0]
	p.text(e.path)
	for i := range columns {
		if k := columns[i].keep; k != nil {
			k.pack(p, &e.row)
		}
	}
	p.number(uint64(len(e.cuts)))
	for i := range e.cuts {
		c := &e.cuts[i].cut // of which visit it is, its entry tells
		p.shared(e.cuts[i].system)
		p.shared(string(c.Metal))
		maybe(p, c.Thickness)
		maybe(p, c.Output)
		maybe(p, c.Length)
		p.float(float64(c.Took))
		p.float(float64(c.Predicted))
	}
	p.number(uint64(e.stamp.size))
	p.signed(e.stamp.modified)
	p.signed(e.stamp.changed - e.stamp.modified) // nearly always nothing
	p.number(e.stamp.inode)
	return p.out
}

// unpacker reads what a packer wrote. The texts it gives are parts of its bytes.
type unpacker struct {
	in     string
	texts  []string
	broken bool
}

func (u *unpacker) fail() { u.broken, u.in = true, "" }

func (u *unpacker) number() uint64 {
	var n uint64
	for i := 0; i < len(u.in) && i < binary.MaxVarintLen64; i++ {
		c := u.in[i]
		n |= uint64(c&0x7f) << (7 * i)
		if c < 0x80 {
			u.in = u.in[i+1:]
			return n
		}
	}
	u.fail()
	return 0
}

// signed reads a number that may be below zero, as binary.AppendVarint writes it.
func (u *unpacker) signed() int64 {
	n := u.number()
	return int64(n>>1) ^ -int64(n&1)
}

func (u *unpacker) float() float64 { return floatOf(u.number()) }

func (u *unpacker) text() string {
	n := u.number()
	if n > uint64(len(u.in)) {
		u.fail()
		return ""
	}
	s := u.in[:n]
	u.in = u.in[n:]
	return s
}

func (u *unpacker) shared() string {
	n := u.number()
	switch {
	case n == 0:
		return u.text()
	case n > uint64(len(u.texts)):
		u.fail()
		return ""
	}
	return u.texts[n-1]
}

func maybeOf[Q ~float64](u *unpacker) unit.Maybe[Q] {
	if u.number() == 0 {
		return unit.Maybe[Q]{}
	}
	return unit.Known(Q(u.float()))
}

func (u *unpacker) entry(e *entry) {
	e.path = u.text()
	e.row.Path = e.path
	for i := range columns {
		if k := columns[i].keep; k != nil {
			k.unpack(u, &e.row)
		}
	}
	e.cuts = u.cuts(e.path)
	e.stamp.size = int64(u.number())
	e.stamp.modified = u.signed()
	e.stamp.changed = e.stamp.modified + u.signed()
	e.stamp.inode = u.number()
}

// cuts reads the timed cuts; nil if there are none, as nearly always.
func (u *unpacker) cuts(path string) []timing {
	n := u.number()
	if n > uint64(len(u.in)) {
		u.fail()
		return nil
	}
	var list []timing
	for range n {
		list = append(list, timing{u.shared(), demonstration.Timed{Visit: path, Metal: metal.ID(u.shared()),
			Thickness: maybeOf[unit.Millimetre](u), Output: maybeOf[unit.Ampere](u), Length: maybeOf[unit.Millimetre](u),
			Took: unit.Second(u.float()), Predicted: unit.Second(u.float())}})
	}
	return list
}
