package casebook

import (
	"slices"

	"cutbrief/rules"
	"cutbrief/rules/message"
)

// Act is one thing a trainee can do with the customer.
type Act string

// The acts.
const (
	Ask     Act = "ask"     // ask the question of the catalogue
	Again   Act = "again"   // ask for a figure, or for a better answer
	Explain Act = "explain" // say in plain words what the question means
	Repeat  Act = "repeat"  // repeat back what is noted
	Measure Act = "measure" // hold a caliper to the piece
	Plate   Act = "plate"   // look at the compressor's plate
	Breaker Act = "breaker" // ask to see the breaker and the panel's label
)

// Acts returns every act, the cheapest first.
func Acts() []Act { return []Act{Ask, Again, Repeat, Explain, Measure, Plate, Breaker} }

// acts says what each costs in minutes. Common practice, no source: a question
// takes a minute, an explanation two, a walk to a plate three. Those that show
// something have the facts they show. A piece of the rare thickest is never at
// hand.
var acts = map[Act]struct {
	minutes int
	shows   []rules.Fact
}{
	Ask: {1, nil}, Again: {1, nil}, Repeat: {1, nil}, Explain: {2, nil},
	Measure: {3, []rules.Fact{rules.FactEveryday, rules.FactThickest, rules.FactPierced, rules.FactBevelled}},
	Plate:   {3, []rules.Fact{rules.FactAirDelivery, rules.FactReceiver}},
	Breaker: {3, []rules.Fact{rules.FactBreaker, rules.FactPhases, rules.FactVolts}},
}

// Minutes is what an act costs of the customer's patience.
func (a Act) Minutes() int { return acts[a].minutes }

// shows lists the facts an act shows by itself.
func (a Act) shows() []rules.Fact { return acts[a].shows }

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

// manner is one row: what such a customer is like, how hard it is, and which
// acts turn a first answer that is unclear or wrong into a true one.
type manner struct {
	id     Manner
	words  message.ID // for the trainer: this customer ...
	level  int        // 1 easy to 5 hard
	clears []Act
	skill  Skill // that it trains most
	errs   bool  // some first answers are wrong, not only unclear
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

// row is the row of a manner, the first for one that nobody knows.
func (m Manner) row() manner {
	return manners[max(0, slices.IndexFunc(manners, func(row manner) bool { return row.id == m }))]
}

func (m Manner) known() bool { return m.row().id == m }

// Skill is one thing a rep gets better at.
type Skill string

// The skills. Their identifiers are kept in the file of progress.
const (
	SkillSizes   Skill = "sizes"
	SkillUse     Skill = "use"
	SkillSite    Skill = "site"
	SkillFollow  Skill = "follow-up"
	SkillDecides Skill = "what-decides"
	SkillSystem  Skill = "system"
	SkillShowing Skill = "demonstration"
	SkillSafety  Skill = "safety"
)

// skill is one row: what it is called, what to do about it, and the facts that
// are learned by it.
type skill struct {
	id     Skill
	name   message.ID
	advice message.ID
	facts  []rules.Fact
}

var skills = []skill{
	{SkillSizes, "how thick", "Settle how thick the metal is: ask for a figure, and hold a caliper to the piece that decides.",
		[]rules.Fact{rules.FactMetals, rules.FactEveryday, rules.FactThickest, rules.FactRarest, rules.FactPierced, rules.FactBevelled, rules.FactBevelAngle}},
	{SkillUse, "repair or production", "Ask how much and how often before you write down repair or production, and explain both words.",
		[]rules.Fact{rules.FactUse, rules.FactCutLength, rules.FactDays, rules.FactBusyCuts, rules.FactBusyLength}},
	{SkillSite, "power and air", "Ask to see the breaker and the compressor's plate: three minutes each, and both can undo a sale.",
		[]rules.Fact{rules.FactSource, rules.FactPhases, rules.FactVolts, rules.FactBreaker, rules.FactCord, rules.FactCordSection, rules.FactGenerator,
			rules.FactDrier, rules.FactAirDelivery, rules.FactAirPressure, rules.FactReceiver, rules.FactHoseBore, rules.FactHoseLength, rules.FactAltitude}},
	{SkillFollow, "following up", "Repeat back what you noted, and ask again whenever an answer has no figure or does not go with an earlier one.", nil},
	{SkillDecides, "deciding requirement", "Ask what annoys them most about today's way, and what comes next, before you think of a system.",
		[]rules.Fact{rules.FactAnnoysMost, rules.FactAnnoysNext}},
	{SkillSystem, "the right system", "Before you name a system, go through the questions that could still change it.", nil},
	{SkillShowing, "the demonstration", "Open the demonstration with a cut that shows the deciding requirement, and close it with one if there is another.", nil},
	{SkillSafety, "safety", "Ask about eye protection, fume and hot work at every visit, however short it is.",
		[]rules.Fact{rules.FactEyes, rules.FactVentilation, rules.FactHotWork}},
}

// Skills returns every skill, in the order shown.
func Skills() []Skill {
	list := make([]Skill, len(skills))
	for i, s := range skills {
		list[i] = s.id
	}
	return list
}

func (s Skill) row() skill {
	for _, row := range skills {
		if row.id == s {
			return row
		}
	}
	return skill{id: s, name: message.ID(s)}
}

// Name is the skill's name for a reader.
func (s Skill) Name() message.ID { return s.row().name }

// skillOf is the skill a fact belongs to, "" if to none.
func skillOf(f rules.Fact) Skill {
	for _, row := range skills {
		if slices.Contains(row.facts, f) {
			return row.id
		}
	}
	return ""
}
