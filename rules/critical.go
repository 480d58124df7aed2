package rules

import (
	"slices"
	"sort"
)

// requirements in the order they are named when all else is equal.
var requirements = []Requirement{Speed, Distortion, EdgeQuality, Ease, RunningCost, Portability, Reach, AcrossGaps}

// Requirements returns what can decide a sale, in the order it is named.
func Requirements() []Requirement { return slices.Clone(requirements) }

// score is the weight behind one requirement. What was said is compared first.
type score struct{ said, inferred int }

func (s score) over(t score) bool {
	if s.said != t.said {
		return s.said > t.said
	}
	return s.inferred > t.inferred
}

// near reports whether t is as strong as s, give or take a near tie. Said
// evidence never ties with inferred evidence.
func (s score) near(t score) bool {
	return s.said == t.said && s.inferred-t.inferred <= nearTie && t != score{}
}

// scores adds up the evidence for each requirement, without building text.
func scores(j *Job) (of [8]score) {
	said := [...]int{weightMost, weightNext}
	for i, a := range j.Annoys {
		if i >= len(said) {
			break
		}
		for _, row := range annoyances {
			if row.id == a {
				of[place(row.requirement)].said += said[i]
			}
		}
	}
	for i := range inferred {
		if row := &inferred[i]; row.applies(j) {
			of[place(row.requirement)].inferred += row.weight
		}
	}
	return of
}

func place(r Requirement) int { return max(0, slices.Index(requirements, r)) }

// deciding returns the requirement the evidence points at, "" if none, and
// the others that are as strong.
func deciding(j *Job) (first Requirement, ties []Requirement) {
	of := scores(j)
	best := strongest(&of)
	if best < 0 {
		return "", nil
	}
	for i := range of {
		if i != best && of[best].near(of[i]) {
			ties = append(ties, requirements[i])
		}
	}
	return requirements[best], ties
}

// strongest is the place of the requirement with the most evidence, the first of
// equals; −1 if there is none.
func strongest(of *[8]score) int {
	best := -1
	for i := range of {
		if of[i] != (score{}) && (best < 0 || of[i].over(of[best])) {
			best = i
		}
	}
	return best
}

// decidingOrOverruled is the requirement that stands: the rep's, if the rep
// overruled the evidence.
func decidingOrOverruled(j *Job) Requirement {
	if j.Overrule != nil && j.Overrule.Requirement != "" {
		return j.Overrule.Requirement
	}
	first, _ := deciding(j)
	return first
}

// critical names the requirement that decides, with all its evidence where that
// is wanted.
func critical(j *Job, how detail) Critical {
	first, ties := deciding(j)
	c := Critical{Requirement: first, Tie: ties}
	if j.Overrule != nil && j.Overrule.Requirement != "" {
		c.Overruled, c.Reason, c.Instead = true, j.Overrule.Reason, first
		c.Requirement, c.Tie = j.Overrule.Requirement, nil
	}
	if how != summary {
		c.Evidence = evidenceOf(j, c.Requirement)
	}
	return c
}

// evidenceOf lists what speaks for any requirement: first that which stands,
// then by strength.
func evidenceOf(j *Job, stands Requirement) []Evidence {
	var list []Evidence
	for i, a := range j.Annoys {
		for _, row := range annoyances {
			if row.id != a || i > 1 {
				continue
			}
			weight, from := weightMost, FactAnnoysMost
			if i == 1 {
				weight, from = weightNext, FactAnnoysNext
			}
			list = append(list, Evidence{row.requirement, true, weight, row.sentence, Asked{Fact: from}, practice})
		}
	}
	for _, row := range inferred {
		if row.applies(j) {
			list = append(list, Evidence{row.requirement, false, row.weight, row.sentence, Asked{Fact: row.from}, practice})
		}
	}
	sort.SliceStable(list, func(a, b int) bool {
		x, y := list[a], list[b]
		if (x.Requirement == stands) != (y.Requirement == stands) {
			return x.Requirement == stands
		}
		if x.Said != y.Said {
			return x.Said
		}
		return x.Weight > y.Weight
	})
	return list
}
