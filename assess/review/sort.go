package review

import (
	"cmp"
	"encoding/binary"
	"maps"
	"math"
	"slices"
	"strings"
)

// sorter puts rows in order by numbers that stand for what their fields say, so
// that few rows have to be read again to be compared.
type sorter struct {
	rows   *Rows
	by     []criterion
	keys   []uint64 // of each row that is kept, one for each criterion
	places []int32  // of these rows
	a, b   entry    // two rows being compared
}

// criterion is one field rows are sorted by.
type criterion struct {
	field Field
	down  bool
	ranks map[string]uint64 // the number of each text; nil where the first letters are the number
}

// mostRanks is how many different texts of a field get numbers in their order. A
// field with more of them, such as the customer, goes by its first letters.
const mostRanks = 4096

// sorted returns the places of the rows that are kept, in an order. What is not
// known comes last, and rows that are alike are in the order of their paths.
func sorted(rows *Rows, keep Where, order Order) []int32 {
	s := &sorter{rows: rows}
	for _, o := range order {
		s.by = append(s.by, criterion{o.Field, o.Down, map[string]uint64{}})
	}
	return s.sort(keep)
}

// sort does it.
func (s *sorter) sort(keep Where) []int32 {
	s.pick(keep)
	for i := range s.by {
		s.by[i].rank()
	}
	s.number()
	lines := make([]int32, len(s.places)) // of keys and places
	for i := range lines {
		lines[i] = int32(i)
	}
	slices.SortFunc(lines, s.compare)
	for i, line := range lines {
		lines[i] = s.places[line]
	}
	return lines
}

// pick keeps rows and notes the texts they hold.
func (s *sorter) pick(keep Where) {
	s.places = make([]int32, 0, s.rows.Len())
	i := int32(-1)
	for r := range s.rows.All() {
		if i++; !keep(r) {
			continue
		}
		s.places = append(s.places, i)
		for k := range s.by {
			s.by[k].note(r)
		}
	}
}

func (c *criterion) note(r *Row) {
	if c.ranks == nil || c.field.num != nil {
		return
	}
	c.ranks[c.field.text(r)] = 0
	if len(c.ranks) > mostRanks {
		c.ranks = nil
	}
}

// rank numbers the texts in their order, the empty one last.
func (c *criterion) rank() {
	delete(c.ranks, "")
	texts := slices.SortedFunc(maps.Keys(c.ranks), func(a, b string) int {
		if c.down {
			return compareFold(b, a)
		}
		return compareFold(a, b)
	})
	for i, text := range texts {
		c.ranks[text] = uint64(i)
	}
}

// number works out the keys.
func (s *sorter) number() {
	s.keys = make([]uint64, 0, len(s.places)*len(s.by))
	for r := range s.rows.Pick(s.places) {
		for k := range s.by {
			s.keys = append(s.keys, s.by[k].key(r))
		}
	}
}

// unknownKey is behind all others.
const unknownKey = math.MaxUint64

// key is a number that is smaller for a row that comes first.
func (c *criterion) key(r *Row) uint64 {
	if c.field.num != nil {
		n, known := c.field.Number(r)
		return c.turned(math.Float64bits(n), known) // bits of positive numbers have their order
	}
	text := c.field.text(r)
	if n, ranked := c.ranks[text]; ranked {
		return n
	}
	var first [8]byte
	copy(first[:], strings.ToLower(text))
	return c.turned(binary.BigEndian.Uint64(first[:]), text != "")
}

func (c *criterion) turned(key uint64, known bool) uint64 {
	switch {
	case !known:
		return unknownKey
	case c.down:
		return ^key
	}
	return key
}

// compare compares the rows of two lines of keys.
func (s *sorter) compare(a, b int32) int {
	n := len(s.by)
	x, y := s.keys[int(a)*n:][:n], s.keys[int(b)*n:][:n]
	for k := range s.by {
		if c := cmp.Compare(x[k], y[k]); c != 0 {
			return c
		}
		if c := &s.by[k]; c.ranks == nil && x[k] != unknownKey {
			if d := s.read(c, a, b); d != 0 {
				return d
			}
		}
	}
	return strings.Compare(s.rows.Path(int(s.places[a])), s.rows.Path(int(s.places[b])))
}

// read compares what two rows say in full.
func (s *sorter) read(c *criterion, a, b int32) int {
	s.get(c, a, &s.a)
	s.get(c, b, &s.b)
	return c.field.order(&s.a.row, &s.b.row, c.down)
}

// get reads a row, or of the field that is nearly always compared in full only
// that.
func (s *sorter) get(c *criterion, line int32, e *entry) {
	place := int(s.places[line])
	if c.field.ID == "company" {
		e.row.Company = s.rows.shelf.company(place)
		return
	}
	s.rows.shelf.get(place, e)
}
