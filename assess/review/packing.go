package review

import (
	"encoding/binary"
	"math"
	"math/bits"
	"strings"

	"cutbrief/assess/store/scan"
	"cutbrief/rules/demonstration"
	"cutbrief/rules/metal"
	"cutbrief/rules/unit"
)

// mostTexts bounds what is kept for sharing: with more than these, texts are not
// alike, and looking for one that is costs more than it saves.
const mostTexts = 10000

// texts are the texts that entries share, each at its number less one.
type texts struct {
	list    []string
	numbers map[string]uint64
}

// number is the number of a text; 0 if it is not shared.
func (t *texts) number(s string) uint64 {
	if t.numbers == nil {
		t.numbers = make(map[string]uint64, len(t.list))
		for i, s := range t.list {
			t.numbers[s] = uint64(i + 1)
		}
	}
	n := t.numbers[s]
	if n == 0 && len(t.list) < mostTexts {
		s = strings.Clone(s) // it may be part of a whole file
		t.list = append(t.list, s)
		n = uint64(len(t.list))
		t.numbers[s] = n
	}
	return n
}

// texts are the fields of a row that are likely to be alike in many rows.
func (r *Row) texts() [10]*string {
	return [...]*string{&r.Date, &r.Rep, &r.Metals, (*string)(&r.Critical), &r.System, (*string)(&r.Verdict), &r.Outcome, &r.Due, &r.Why, &r.Unanswered}
}

// append writes an entry. Numbers are varints, a text is its length and bytes, a
// shared text its number, or 0 and the text.
func (t *texts) append(out []byte, e *entry) []byte {
	r := &e.row
	out = appendText(out, e.path)
	out = appendText(out, r.Company)
	for _, s := range r.texts() {
		out = t.appendShared(out, *s)
	}
	out = appendFloat(out, float64(r.Thickest))
	out = binary.AppendUvarint(out, uint64(r.Flags))
	out = binary.AppendUvarint(out, uint64(r.Stage))
	out = binary.AppendUvarint(out, r.Noted.packed())
	out = binary.AppendUvarint(out, uint64(len(e.cuts)))
	for i := range e.cuts {
		out = t.appendCut(out, &e.cuts[i])
	}
	return appendStamp(out, e.stamp)
}

func appendText(out []byte, s string) []byte {
	return append(binary.AppendUvarint(out, uint64(len(s))), s...)
}

func (t *texts) appendShared(out []byte, s string) []byte {
	n := t.number(s)
	out = binary.AppendUvarint(out, n)
	if n == 0 {
		out = appendText(out, s)
	}
	return out
}

// appendFloat writes the bits back to front: those of a round number end in zeros.
func appendFloat(out []byte, v float64) []byte {
	return binary.AppendUvarint(out, bits.ReverseBytes64(math.Float64bits(v)))
}

// appendStamp writes the later time as its distance from the earlier: most are
// the same.
func appendStamp(out []byte, s scan.Stamp) []byte {
	out = binary.AppendUvarint(out, uint64(s.Size))
	out = binary.AppendVarint(out, s.Modified)
	out = binary.AppendVarint(out, s.Changed-s.Modified)
	return binary.AppendUvarint(out, s.Inode)
}

// unpacker reads what texts wrote. The texts it gives are parts of its bytes.
type unpacker struct {
	in     string
	texts  []string
	broken bool
}

func (u *unpacker) fail() {
	u.broken, u.in = true, ""
}

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

func (u *unpacker) float() float64 { return math.Float64frombits(bits.ReverseBytes64(u.number())) }

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

func (u *unpacker) entry(e *entry) {
	e.path = u.text()
	row := &e.row
	row.Company = u.text()
	for _, s := range row.texts() {
		*s = u.shared()
	}
	row.Thickest = unit.Millimetre(u.float())
	row.Flags = FlagSet(u.number())
	row.Stage = Stage(u.number())
	row.Noted = unpacked(u.number())
	row.Path = e.path
	e.cuts = u.cuts(e.path)
	e.stamp.Size = int64(u.number())
	e.stamp.Modified = u.signed()
	e.stamp.Changed = e.stamp.Modified + u.signed()
	e.stamp.Inode = u.number()
}

// appendCut writes a timed cut. Of which visit it is, its entry tells.
func (t *texts) appendCut(out []byte, c *timing) []byte {
	out = t.appendShared(out, c.system)
	out = t.appendShared(out, string(c.cut.Metal))
	out = appendMaybe(out, c.cut.Thickness)
	out = appendMaybe(out, c.cut.Output)
	out = appendMaybe(out, c.cut.Length)
	out = appendFloat(out, float64(c.cut.Took))
	return appendFloat(out, float64(c.cut.Predicted))
}

// appendMaybe writes whether a quantity is known, and then what it is.
func appendMaybe[Q ~float64](out []byte, m unit.Maybe[Q]) []byte {
	v, known := m.Get()
	if !known {
		return append(out, 0)
	}
	return appendFloat(append(out, 1), float64(v))
}

func maybe[Q ~float64](u *unpacker) unit.Maybe[Q] {
	if u.number() == 0 {
		return unit.Maybe[Q]{}
	}
	return unit.Known(Q(u.float()))
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
			Thickness: maybe[unit.Millimetre](u), Output: maybe[unit.Ampere](u), Length: maybe[unit.Millimetre](u),
			Took: unit.Second(u.float()), Predicted: unit.Second(u.float())}})
	}
	return list
}
