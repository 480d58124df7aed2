package casebook

import (
	"slices"

	"cutbrief/rules/system"
)

// Repetition says in one sentence, on two lines, how the next customer is chosen.
const Repetition = "A skill that went well comes back after 1, then 2, then 4, then 8 practices;\none that did not comes back in the next."

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
// several the one that did worst lately. "" if nothing was tried yet.
func (p *Progress) Due() Skill {
	due, most, least := Skill(""), 0, 0.0
	for _, s := range Skills() {
		st, tried := p.standing(s)
		if !tried {
			continue
		}
		over := st.ago + 1 - waits[min(st.row, len(waits)-1)]
		lately, _ := p.recent(s)
		if share := lately.share(); due == "" || over > most || over == most && share < least {
			due, most, least = s, over, share
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
// and not met yet. false if all of them were: a made one is fresher.
func (p *Progress) Draw(from []Customer, level int) (Customer, bool) {
	fits := func(c Customer, m []Manner) bool {
		return (level == 0 || c.Level == level) && slices.Contains(m, c.Manner)
	}
	for _, c := range from {
		if fits(c, suited(p.Due())) && !p.met(c.Name) {
			return c, true
		}
	}
	return Customer{}, false
}

// met reports whether a case was met already.
func (p *Progress) met(name string) bool {
	return slices.ContainsFunc(p.Practices, func(one Practice) bool { return one.Case == name })
}

// Make makes a customer from a number. One that was not asked for by its number
// is of a manner that trains the skill that is due, if one near that number is.
func (p *Progress) Make(seed uint64, level int, offered system.Range, exact bool) (Customer, bool) {
	const near = 12
	for i := range uint64(near) {
		if c, ok := Make(seed+i, level, offered); ok && (exact || slices.Contains(suited(p.Due()), c.Manner)) {
			return c, true
		} else if exact {
			break
		}
	}
	return Make(seed, level, offered)
}
