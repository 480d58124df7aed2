package demonstration

import (
	"cmp"
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
	order  []candidate
	mask   int // which of the candidates
}

// search returns the best set that fits the time. It looks at every one: with
// the fourteen rows of the catalogue that is at most 16,383 sets.
func search(able []candidate, given unit.Second) set {
	var best set
	for _, s := range fitting(able, given) {
		if best.order != nil && (s.proofs != best.proofs || s.worth != best.worth) {
			break // the rest is worth less
		}
		s.order = arrange(pick(able, s.mask))
		s.takes += setUps(s.order)
		if s.takes <= given && (best.order == nil || s.takes < best.takes) {
			best = s
		}
	}
	return best
}

// fitting lists the sets whose cuts fit the time with one set-up for each group
// but the first, which no order can do without; the worthiest first, equals in
// the order of the catalogue.
func fitting(able []candidate, given unit.Second) []set {
	group := groups(able)
	var list []set
	for mask := 1; mask < 1<<len(able); mask++ {
		if s, seen := weigh(able, mask, group); s.takes+unit.Second(bits.OnesCount(seen)-1)*setUpTakes <= given {
			list = append(list, s)
		}
	}
	slices.SortFunc(list, func(s, t set) int {
		return cmp.Or(t.proofs-s.proofs, t.worth-s.worth, s.mask-t.mask)
	})
	return list
}

// groups numbers the set-ups, one bit each, by candidate.
func groups(able []candidate) []uint {
	group := make([]uint, len(able))
	for i := range able {
		first := slices.IndexFunc(able, func(c candidate) bool { return c.setUp == able[i].setUp })
		group[i] = 1 << first
	}
	return group
}

// pick returns the cuts of a set.
func pick(able []candidate, mask int) []candidate {
	var chosen []candidate
	for i := range able {
		if mask&(1<<i) != 0 {
			chosen = append(chosen, able[i])
		}
	}
	return chosen
}

// weigh adds up the worth and the time of the cuts alone, and collects their
// groups.
func weigh(able []candidate, mask int, group []uint) (s set, seen uint) {
	s.mask = mask
	var ties []rules.Requirement
	shows := 0
	for i := range able {
		if mask&(1<<i) == 0 {
			continue
		}
		c := &able[i]
		seen |= group[i]
		s.worth += c.worth
		s.takes += c.takes()
		if c.shows {
			shows++
		}
		for _, r := range c.ties {
			if !slices.Contains(ties, r) {
				ties = append(ties, r)
			}
		}
	}
	s.proofs = min(shows, 2)
	s.worth += len(ties)*worthTie + (shows-s.proofs)*worthAgain
	return s, seen
}

// arrange puts the chosen cuts, which come in the order of the catalogue, into
// the order with the fewest set-ups among those that open and close as they
// should. Where several are equal, the cut listed first opens and the one
// listed last closes; the customer's own piece closes before any other.
func arrange(chosen []candidate) []candidate {
	var best []candidate
	for first := range chosen {
		for back := range chosen {
			last := len(chosen) - 1 - back
			if (first == last && len(chosen) > 1) || !opens(chosen, first) || !closes(chosen, first, last) {
				continue
			}
			if try := grouped(chosen, first, last); best == nil || setUps(try) < setUps(best) {
				best = try
			}
		}
	}
	return best
}

// opens reports whether a cut may come first: it proves the critical
// requirement, unless none does.
func opens(chosen []candidate, first int) bool {
	return chosen[first].shows || !slices.ContainsFunc(chosen, func(c candidate) bool { return c.shows })
}

// closes reports whether a cut may come last after first: it proves the
// critical requirement, if two do; the customer's own piece, if it can.
func closes(chosen []candidate, first, last int) bool {
	shows := 0
	var own *candidate
	for i := range chosen {
		if chosen[i].shows {
			shows++
		}
		if chosen[i].row.last && i != first {
			own = &chosen[i]
		}
	}
	if own != nil && (own.shows || shows < 2) {
		return chosen[last].row.last
	}
	return chosen[last].shows || shows < 2
}

// grouped orders the cuts set-up by set-up, with first and last in their
// places.
func grouped(chosen []candidate, first, last int) []candidate {
	order := []candidate{chosen[first]}
	used := make([]bool, len(chosen))
	used[first], used[last] = true, true
	take := func(group setUp) {
		for i, c := range chosen {
			if !used[i] && c.setUp == group {
				used[i] = true
				order = append(order, c)
			}
		}
	}
	take(chosen[first].setUp)
	for i, c := range chosen {
		if !used[i] && c.setUp != chosen[last].setUp {
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
func setUps(order []candidate) unit.Second {
	total := unit.Second(0)
	for i := 1; i < len(order); i++ {
		if order[i].setUp != order[i-1].setUp {
			total += setUpTakes
		}
	}
	return total
}
