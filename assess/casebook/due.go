package casebook

import "slices"

// Repetition says in one sentence how the next customer is chosen.
const Repetition = "A skill that went well comes back after 1, then 2, then 4, then 8 practices; one that did not comes back in the next."

// waits is how many practices a skill rests after each time in a row that it
// went well. Common practice, no source.
var waits = [...]int{0, 1, 2, 4, 8}

// standing is how one skill stands: how often in a row it went well, and how
// many practices ago it was last tried.
type standing struct{ row, ago int }

func (p *Progress) standing(s Skill) (st standing, tried bool) {
	for i, one := range p.Practices {
		t, ok := one.Skills[s]
		if !ok {
			continue
		}
		tried = true
		st.ago = len(p.Practices) - 1 - i
		if st.row++; t.share() < weak {
			st.row = 0
		}
	}
	return st, tried
}

// Due returns the skill to practise next: the one that is most overdue, of
// several the first in the order of the skills. "" if nothing was tried yet.
func (p *Progress) Due() Skill {
	due, most := Skill(""), 0
	for _, s := range Skills() {
		st, tried := p.standing(s)
		if !tried {
			continue
		}
		over := st.ago + 1 - waits[min(st.row, len(waits)-1)]
		if due == "" || over > most {
			due, most = s, over
		}
	}
	return due
}

// suited lists the manners that train a skill most; all of them for one that
// every customer trains.
func suited(s Skill) []Manner {
	var list []Manner
	for _, m := range manners {
		if m.skill == s {
			list = append(list, m.id)
		}
	}
	if len(list) == 0 {
		return Manners()
	}
	return list
}

// Draw picks the next of some customers for a trainee: of a manner that trains
// the skill that is due, of the level asked for if there is one (0 takes any),
// and the one met longest ago.
func (p *Progress) Draw(from []Customer, level int) (Customer, bool) {
	fits := func(c Customer, m []Manner) bool {
		return (level == 0 || c.Level == level) && slices.Contains(m, c.Manner)
	}
	for _, m := range [][]Manner{suited(p.Due()), Manners()} {
		best, last := -1, 0
		for i, c := range from {
			if met := p.met(c.Name); fits(c, m) && (best < 0 || met < last) {
				best, last = i, met
			}
		}
		if best >= 0 {
			return from[best], true
		}
	}
	return Customer{}, false
}

// met is when a case was last met, counted from 1; 0 for never.
func (p *Progress) met(name string) int {
	for i := len(p.Practices) - 1; i >= 0; i-- {
		if p.Practices[i].Case == name {
			return i + 1
		}
	}
	return 0
}
