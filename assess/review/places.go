package review

import (
	"hash/maphash"
	"math/bits"
)

// places finds the place of a path in a list without holding the paths: a table of
// places, each as near as possible behind where the sum of its path points. At
// most half of the table is filled. The zero value is ready.
type places struct {
	n     int     // places there are, from 0
	table []int32 // a place and one; 0 is empty
	seed  maphash.Seed
}

// add takes the next place of the list. Of two paths alike the first is found.
func (p *places) add(path func(place int) string) {
	if 2*(p.n+1) > len(p.table) {
		p.grow(path)
	}
	p.enter(p.n, path)
	p.n++
}

// grow makes room for twice as many.
func (p *places) grow(path func(int) string) { p.room(2*p.n, path) }

// room makes a table for some places.
func (p *places) room(places int, path func(int) string) {
	if p.table == nil {
		p.seed = maphash.MakeSeed()
	}
	p.table = make([]int32, max(16, 2<<bits.Len(uint(places))))
	for i := range p.n {
		p.enter(i, path)
	}
}

func (p *places) enter(place int, path func(int) string) {
	if at, known := p.slot(path(place), path); !known {
		p.table[at] = int32(place + 1)
	}
}

// slot is where a path is in the table, or where it would be.
func (p *places) slot(of string, path func(int) string) (at uint64, known bool) {
	last := uint64(len(p.table) - 1)
	for at = maphash.String(p.seed, of) & last; p.table[at] > 0; at = (at + 1) & last {
		if path(int(p.table[at]-1)) == of {
			return at, true
		}
	}
	return at, false
}

// find is the place of a path.
func (p *places) find(of string, path func(int) string) (place int, known bool) {
	if len(p.table) == 0 {
		return 0, false
	}
	at, known := p.slot(of, path)
	return int(p.table[at]) - 1, known
}
