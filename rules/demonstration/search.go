package demonstration

import (
	"math"
	"math/bits"
	"slices"

	"cutbrief/rules"
	"cutbrief/rules/unit"
)

// set is a choice of cuts with what it is worth, in the order shown.
type set struct {
	proofs int // of the critical requirement, two at most: the first cut and the last
	worth  int
	takes  unit.Second
	order  []*candidate
}

// sum is what the cuts of a set come to, in whatever order they are shown.
type sum struct {
	takes        unit.Second // the cuts alone
	worth        int32       // of the cuts alone
	shows        int32
	ties, groups uint32 // requirements as strong as the critical one, and set-ups, a bit each
}

// value is the worth of a set, comparable: proofs count before all else.
func (s sum) value() int64 {
	proofs := min(s.shows, 2)
	worth := s.worth + int32(bits.OnesCount32(s.ties))*worthTie + (s.shows-proofs)*worthAgain
	return int64(proofs)<<32 | int64(worth)
}

// search returns the best set that fits the time. It looks at every one: with
// the fourteen rows of the catalogue that is at most 16,383 sets. The worthiest are
// put in order first, and those worth less only where none of these fits.
func search(able []candidate, given unit.Second) set {
	sums := sumsOf(able)
	best, below := set{}, int64(math.MaxInt64)
	for best.order == nil {
		value := int64(-1)
		for mask := 1; mask < len(sums); mask++ {
			if v := sums[mask].value(); v < below && v > value && sums[mask].mayFit(given) {
				value = v
			}
		}
		if value < 0 {
			return best
		}
		for mask := 1; mask < len(sums); mask++ {
			if s := &sums[mask]; s.value() != value || !s.mayFit(given) {
				continue
			}
			order := arrange(pick(able, mask))
			takes := sums[mask].takes + setUps(order)
			if takes <= given && (best.order == nil || takes < best.takes) {
				best = set{int(value >> 32), int(value & math.MaxUint32), takes, order}
			}
		}
		below = value
	}
	return best
}

// mayFit reports whether the cuts fit the time with one set-up for each group but
// the first, which no order can do without.
func (s *sum) mayFit(given unit.Second) bool {
	return s.takes+unit.Second(bits.OnesCount32(s.groups)-1)*SetUpTakes <= given
}

// sumsOf is what every set comes to, by its mask.
func sumsOf(able []candidate) []sum {
	sums := make([]sum, 1<<len(able))
	var ties []rules.Requirement
	for i := range able {
		c := &able[i]
		one := sum{takes: c.takes(), worth: int32(c.worth)}
		if c.shows {
			one.shows = 1
		}
		for _, r := range c.ties {
			if !slices.Contains(ties, r) {
				ties = append(ties, r)
			}
			one.ties |= 1 << slices.Index(ties, r)
		}
		one.groups = 1 << slices.IndexFunc(able, func(other candidate) bool { return other.setUp == c.setUp })
		for mask := range 1 << i {
			s := &sums[mask]
			sums[mask|1<<i] = sum{s.takes + one.takes, s.worth + one.worth, s.shows + one.shows, s.ties | one.ties, s.groups | one.groups}
		}
	}
	return sums
}

// pick returns the cuts of a set.
func pick(able []candidate, mask int) []*candidate {
	chosen := make([]*candidate, 0, bits.OnesCount(uint(mask)))
	for i := range able {
		if mask&(1<<i) != 0 {
			chosen = append(chosen, &able[i])
		}
	}
	return chosen
}

// arrange puts the chosen cuts, which come in the order of the catalogue, into
// the order with the fewest set-ups among those that open and close as they
// should. Where several are equal, the cut listed first opens and the one
// listed last closes; the customer's own piece closes before any other.
func arrange(chosen []*candidate) []*candidate {
	best, room := []*candidate(nil), []*candidate(nil)
	for first := range chosen {
		for back := range chosen {
			last := len(chosen) - 1 - back
			if (first == last && len(chosen) > 1) || !opens(chosen, first) || !closes(chosen, first, last) {
				continue
			}
			if room = grouped(room[:0], chosen, first, last); best == nil || setUps(room) < setUps(best) {
				best, room = room, best
			}
		}
	}
	return best
}

// opens reports whether a cut may come first: it proves the critical
// requirement, unless none does.
func opens(chosen []*candidate, first int) bool {
	return chosen[first].shows || !slices.ContainsFunc(chosen, func(c *candidate) bool { return c.shows })
}

// closes reports whether a cut may come last after first: it proves the
// critical requirement, if two do; the customer's own piece, if it can.
func closes(chosen []*candidate, first, last int) bool {
	shows := 0
	var own *candidate
	for i := range chosen {
		if chosen[i].shows {
			shows++
		}
		if chosen[i].row.last && i != first {
			own = chosen[i]
		}
	}
	if own != nil && (own.shows || shows < 2) {
		return chosen[last].row.last
	}
	return chosen[last].shows || shows < 2
}

// grouped orders the cuts set-up by set-up behind order, with first and last in
// their places.
func grouped(order, chosen []*candidate, first, last int) []*candidate {
	used := uint(1)<<first | uint(1)<<last
	take := func(group setUp) {
		for i, c := range chosen {
			if used&(1<<i) == 0 && c.setUp == group {
				used |= 1 << i
				order = append(order, c)
			}
		}
	}
	order = append(order, chosen[first])
	take(chosen[first].setUp)
	for i, c := range chosen {
		if used&(1<<i) == 0 && c.setUp != chosen[last].setUp {
			take(c.setUp)
		}
	}
	take(chosen[last].setUp)
	if first != last {
		order = append(order, chosen[last])
	}
	return order
}

// setUps is the time the set-ups between the cuts take.
func setUps(order []*candidate) unit.Second {
	total := unit.Second(0)
	for i := 1; i < len(order); i++ {
		if order[i].setUp != order[i-1].setUp {
			total += SetUpTakes
		}
	}
	return total
}
