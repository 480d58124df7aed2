package casebook

import (
	"slices"

	"cutbrief/rules"
)

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

// skills says what each is called, and what to do about it.
var skills = []struct {
	id     Skill
	name   string
	advice string
}{
	{SkillSizes, "how thick", "Settle how thick the metal is: ask for a figure, and hold a caliper to the piece that decides."},
	{SkillUse, "repair or production", "Ask how much and how often before you write down repair or production, and explain both words."},
	{SkillSite, "power and air", "Ask to see the breaker and the compressor's plate: three minutes each, and both can undo a sale."},
	{SkillFollow, "following up", "Repeat back what you noted, and ask again whenever an answer has no figure or does not go with an earlier one."},
	{SkillDecides, "what decides", "Ask what annoys them most about today's way, and what comes next, before you think of a system."},
	{SkillSystem, "the right system", "Before you name a system, go through the questions that could still change it."},
	{SkillShowing, "the demonstration", "Open the demonstration with a cut that shows what decides, and close it with one if there is another."},
	{SkillSafety, "safety", "Ask about eye protection, fume and hot work at every visit, however short it is."},
}

// Skills returns every skill, in the order shown.
func Skills() []Skill {
	var list []Skill
	for _, s := range skills {
		list = append(list, s.id)
	}
	return list
}

// Name is the skill's name for a reader.
func (s Skill) Name() string {
	for _, row := range skills {
		if row.id == s {
			return row.name
		}
	}
	return string(s)
}

func (s Skill) advice() string {
	for _, row := range skills {
		if row.id == s {
			return row.advice
		}
	}
	return ""
}

// The facts that belong together.
var (
	sizeFacts   = []rules.Fact{rules.FactMetals, rules.FactEveryday, rules.FactThickest, rules.FactRarest, rules.FactPierced, rules.FactBevelled, rules.FactBevelAngle}
	useFacts    = []rules.Fact{rules.FactUse, rules.FactCutLength, rules.FactDays, rules.FactBusyCuts, rules.FactBusyLength}
	siteFacts   = []rules.Fact{rules.FactSource, rules.FactPhases, rules.FactVolts, rules.FactBreaker, rules.FactCord, rules.FactCordSection, rules.FactGenerator, rules.FactDrier, rules.FactAirDelivery, rules.FactAirPressure, rules.FactReceiver, rules.FactHoseBore, rules.FactHoseLength, rules.FactAltitude}
	wishFacts   = []rules.Fact{rules.FactAnnoysMost, rules.FactAnnoysNext}
	safetyFacts = []rules.Fact{rules.FactEyes, rules.FactVentilation, rules.FactHotWork}
)

// skillOf is the skill a fact belongs to, "" if to none.
func skillOf(f rules.Fact) Skill {
	for _, row := range []struct {
		facts []rules.Fact
		skill Skill
	}{{sizeFacts, SkillSizes}, {useFacts, SkillUse}, {siteFacts, SkillSite}, {wishFacts, SkillDecides}, {safetyFacts, SkillSafety}} {
		if slices.Contains(row.facts, f) {
			return row.skill
		}
	}
	return ""
}
