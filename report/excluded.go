package report

import (
	"slices"
	"strings"

	"cutbrief/rules"
)

// excluded lists every system not taken, with its reason.
func (b *builder) excluded() []Line {
	if b.result.Outcome == rules.NotYet {
		return nil
	}
	var list []Line
	for _, c := range b.nearestFirst() {
		if b.result.First == nil || c.System != b.result.First.System {
			list = append(list, b.notTaken(c))
		}
	}
	return list
}

// notTaken says why one system is not taken: by the checks that gave it its
// status or, where it stands as well as the first choice, that it is more than
// is needed.
func (b *builder) notTaken(c *rules.Candidate) Line {
	l := Line{Label: plain(c.System.Name), Value: string(c.Status)}
	var why, sources, kinds []string
	for i := range c.Checks {
		if check := &c.Checks[i]; counts(c.Status, check) {
			why = append(why, b.shortfall(check))
			sources = append(sources, cited(check.Source))
			kinds = append(kinds, trusted(check.Source))
		}
	}
	if first := b.result.First; len(why) == 0 || (first != nil && c.Status == first.Status) {
		why = []string{"stands as well, with more to spare: rated for " + b.given(millimetres(c.System.Rated))}
		sources, kinds = nil, nil
	}
	l.Why = stop(strings.Join(why, "; "))
	l.Source, l.Trust = strings.Join(unique(sources), "; "), strings.Join(unique(kinds), "; ")
	return l
}

// counts reports whether a check gave a system its status.
func counts(s rules.Status, c *rules.Check) bool {
	r, _ := c.Rule.Find()
	switch s {
	case rules.FallsShort:
		return r.Hard && c.Verdict == rules.Short
	case rules.FitsAfterSite:
		return r.Site && c.Verdict == rules.Short
	case rules.FitsNearly:
		return r.Hard && c.Verdict == rules.Borderline
	}
	return false
}

// nearestFirst orders the systems for the list of those not taken. Where one
// is recommended they stay as ranked; where none fits, those that come nearest
// lead.
func (b *builder) nearestFirst() []*rules.Candidate {
	var list []*rules.Candidate
	for i := range b.result.Candidates {
		list = append(list, &b.result.Candidates[i])
	}
	if b.result.Outcome == rules.NoneFits {
		slices.SortStableFunc(list, nearer)
	}
	return list
}

// nearest is the system that comes nearest where none fits, nil if the range
// is empty.
func (b *builder) nearest() *rules.Candidate {
	if list := b.nearestFirst(); len(list) > 0 {
		return list[0]
	}
	return nil
}

// nearer compares how far two systems are from fitting: one that only another
// supply keeps out comes first; then by what they cannot do at all, then by the
// worst shortfall in numbers.
func nearer(x, y *rules.Candidate) int {
	if a, b := failsOn(x, rules.RuleSupply), failsOn(y, rules.RuleSupply); a != b {
		if a {
			return -1
		}
		return 1
	}
	cannotX, worstX := away(x)
	cannotY, worstY := away(y)
	switch {
	case cannotX != cannotY:
		return cannotX - cannotY
	case worstX > worstY:
		return -1
	case worstX < worstY:
		return 1
	}
	return 0
}

// away counts the hard checks a system fails without a number, and returns
// the smallest share of a need that it gives.
func away(c *rules.Candidate) (cannot int, worst float64) {
	worst = 1
	for i := range c.Checks {
		check := &c.Checks[i]
		r, _ := check.Rule.Find()
		switch {
		case !r.Hard || check.Verdict != rules.Short:
		case numeric(check):
			worst = min(worst, check.Have.Value/check.Need.Value)
		default:
			cannot++
		}
	}
	return cannot, worst
}

// instead says what would do the work if no system of the range does.
func (b *builder) instead() []string {
	c := b.nearest()
	if c == nil {
		return []string{"The range holds no system at all."}
	}
	var list, cures []string
	for i := range c.Checks {
		check := &c.Checks[i]
		r, _ := check.Rule.Find()
		if check.Verdict != rules.Short || !r.Hard {
			continue
		}
		list = append(list, "Nearest is "+plain(c.System.Name)+", but "+stop(b.shortfall(check)))
		if r.Cure != "" {
			cures = append(cures, "What would do: "+stop(string(r.Cure)))
		}
	}
	if b.onlySupply() {
		list = append([]string{"The supply here, as told: " + b.supply() + "."}, list...)
		return append(list, unique(cures)...)
	}
	return append(append(list, unique(cures)...), "Another process may be the honest answer: oxy-fuel for heavy mild steel, a saw for heavy section, or work sent out.")
}

// onlySupply reports whether some system would do the work and only the supply
// keeps it out: then the work is not what has to change.
func (b *builder) onlySupply() bool {
	for i := range b.result.Candidates {
		if c := &b.result.Candidates[i]; c.Status == rules.FallsShort && failsOn(c, rules.RuleSupply) {
			return true
		}
	}
	return false
}

// failsOn reports whether one rule alone gives a system its shortfall.
func failsOn(c *rules.Candidate, only rules.RuleID) bool {
	for i := range c.Checks {
		if check := &c.Checks[i]; check.Rule != only && counts(c.Status, check) {
			return false
		}
	}
	return true
}
