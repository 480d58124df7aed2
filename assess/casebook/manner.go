package casebook

import "slices"

// Manner is a customer's way of speaking.
type Manner string

// The manners.
const (
	Precise     Manner = "precise"
	Vague       Manner = "vague"
	WrongUnit   Manner = "wrong-unit"
	AsksBack    Manner = "asks-back"
	SaysMaking  Manner = "says-production" // and means repair
	Hurry       Manner = "hurry"
	Biggest     Manner = "biggest"
	Contradicts Manner = "contradicts"
	FixedIdea   Manner = "fixed-idea"
)

// manner is one row: what it is like, how hard it is, and which acts turn a
// first answer that is unclear or wrong into a true one.
type manner struct {
	id     Manner
	words  string // for the trainer: the customer ...
	level  int    // 1 easy to 5 hard
	clears []Act
	skill  Skill // that it trains most
	slips  bool  // some first answers are wrong, not only unclear
}

var manners = []manner{
	{Precise, "answers what is asked, with figures", 1, []Act{Again, Repeat, Explain, Measure}, SkillSite, false},
	{Vague, "shows with the hands and gives no figures", 1, []Act{Again, Measure}, SkillSizes, false},
	{WrongUnit, "gives the right number in the wrong unit or gauge", 2, []Act{Repeat, Measure}, SkillSizes, true},
	{AsksBack, "asks what the words mean", 2, []Act{Explain}, SkillFollow, false},
	{SaysMaking, "says production and means repair", 3, []Act{Explain, Repeat}, SkillUse, true},
	{Hurry, "has no time", 3, []Act{Again, Repeat}, SkillSafety, false},
	{Biggest, "wants the biggest there is", 4, []Act{Explain, Measure}, SkillSizes, true},
	{Contradicts, "says one thing and then another", 4, []Act{Again, Repeat, Measure}, SkillFollow, true},
	{FixedIdea, "has one fixed idea", 5, []Act{Again, Explain}, SkillDecides, true},
}

// Manners returns every manner, the easiest first.
func Manners() []Manner {
	var list []Manner
	for _, m := range manners {
		list = append(list, m.id)
	}
	return list
}

func (m Manner) row() manner {
	for _, row := range manners {
		if row.id == m {
			return row
		}
	}
	return manners[0]
}

func (m Manner) known() bool { return slices.Contains(Manners(), m) }

// Words says what such a customer is like: "answers what is asked, with figures".
func (m Manner) Words() string { return m.row().words }
