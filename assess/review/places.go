package review

import (
	"hash/maphash"
	"math/bits"
)

// places finds the place of a path in a list without holding the paths: a table of
// places, each as near as possible behind where the sum of its path points. At
// most half of the table is filled.
type places struct {
	seed  maphash.Seed
	table []int32 // a place and one; 0 is empty
	path  func(place int) string
}

// newPlaces lists n places with their paths. Of two alike the first is found.
func newPlaces(n int, path func(int) string) places {
	p := places{seed: maphash.MakeSeed(), table: make([]int32, 2<<bits.Len(uint(n))), path: path}
	for i := range n {
		if at, known := p.slot(path(i)); !known {
			p.table[at] = int32(i + 1)
		}
	}
	return p
}

// slot is where a path is in the table, or where it would be.
func (p *places) slot(path string) (at uint64, known bool) {
	last := uint64(len(p.table) - 1)
	for at = maphash.String(p.seed, path) & last; p.table[at] > 0; at = (at + 1) & last {
		if p.path(int(p.table[at]-1)) == path {
			return at, true
		}
	}
	return at, false
}

// find is the place of a path.
func (p *places) find(path string) (place int, known bool) {
	if len(p.table) == 0 {
		return 0, false
	}
	at, known := p.slot(path)
	return int(p.table[at]) - 1, known
}
