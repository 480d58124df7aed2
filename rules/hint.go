package rules

import (
	"cutbrief/rules/unit"
)

// hint is a question that bears on what decides the sale and on nothing else,
// with the answers that point the most different ways. Common practice, no source:
// they decide nothing but what is worth asking.
type hint struct {
	fact    Fact
	answers []func(*Job)
}

// hints is in the order a question is preferred when two matter as much.
var hints = []hint{
	{FactCutLength, []func(*Job){
		func(j *Job) { j.CutPerWeek = unit.Known(unit.Metre(10)) },
		func(j *Job) { j.CutPerWeek = unit.Known(unit.Metre(200)) }}},
	{FactToday, []func(*Job){
		func(j *Job) { j.Today = unit.Known([]Process{Abrasive}) },
		func(j *Job) { j.Today = unit.Known([]Process{OxyFuel}) },
		func(j *Job) { j.Today = unit.Known([]Process{SentOut}) }}},
	{FactEdgeNext, []func(*Job){
		func(j *Job) { j.EdgeNext = unit.Known([]EdgeUse{Welded}) },
		func(j *Job) { j.EdgeNext = unit.Known([]EdgeUse{Seen}) }}},
	{FactPlaces, []func(*Job){
		func(j *Job) { j.Places = unit.Known([]Place{Bench}) },
		func(j *Job) { j.Places = unit.Known([]Place{InPlace}) },
		func(j *Job) { j.Places = unit.Known([]Place{Field}) }}},
	{FactExperience, []func(*Job){
		func(j *Job) { j.Experience = unit.Known(Novice) }}},
}

// open reports whether the question is not answered.
func (h hint) open(j *Job) bool { return !answerOf(h.fact).known(j, nil) }

// undecided stands for nothing that decides.
const undecided Requirement = "undecided"

// settled reports whether what decides is said or overruled, so that nothing
// inferred can change it.
func settled(j *Job) bool {
	if j.Overrule != nil && j.Overrule.Requirement != "" {
		return true
	}
	for _, s := range scores(j) {
		if s.said != 0 {
			return true
		}
	}
	return false
}

// openHints weighs the questions that only bear on what decides. While the
// complaint that would outrank them all is not told, only those that could
// change the system are worth a line beside it.
func (s *study) openHints() []OpenQuestion {
	if settled(s.job) {
		return nil
	}
	least := couldDecide
	if len(s.job.Annoys) == 0 {
		least = couldSystem
	}
	var list []OpenQuestion
	for _, h := range hints {
		if !h.open(s.job) {
			continue
		}
		item := OpenQuestion{Asked: Asked{Fact: h.fact}}
		for _, answer := range h.answers {
			s.try(&item, answer)
		}
		if item.Strength >= least {
			list = append(list, item)
		}
	}
	return list
}

// mayDecide lists what may yet come to decide, one requirement for each that
// sizes a system in its own way: speed by its factor, gaps by an arc that holds,
// and any other by neither.
func mayDecide(j *Job) []Requirement {
	if settled(j) {
		return []Requirement{decidingOrOverruled(j)}
	}
	if len(j.Annoys) == 0 {
		return []Requirement{undecided, Speed, AcrossGaps}
	}
	least, most := scores(j), scores(hintingAll(j))
	var list []Requirement
	for i, r := range requirements {
		if most[i].inferred > 0 && reaches(r, most[i], least) && sizes(r, most[i]) {
			list = append(list, r)
		}
	}
	return append(list, others(least, most)...)
}

// sizes reports whether a requirement that decides, with all the evidence it may
// get, asks something of a system by itself.
func sizes(r Requirement, most score) bool {
	return r == AcrossGaps || (r == Speed && most.inferred >= speedWorth)
}

// reaches reports whether a requirement with all the evidence it may get can
// come level with every other's evidence so far; that of reach never takes from
// what speed asks.
func reaches(r Requirement, most score, least [8]score) bool {
	for i := range least {
		if least[i].over(most) && !(r == Speed && requirements[i] == Reach) {
			return false
		}
	}
	return true
}

// others is undecided if anything may decide that sizes no system.
func others(least, most [8]score) []Requirement {
	nothing := true
	for i, r := range requirements {
		if r == Reach && sizes(Speed, least[place(Speed)]) {
			continue // what speed asks stands
		}
		if !sizes(r, most[i]) && most[i].inferred > 0 && reaches(r, most[i], least) {
			return []Requirement{undecided}
		}
		nothing = nothing && least[i] == score{}
	}
	if nothing {
		return []Requirement{undecided}
	}
	return nil
}

// hintingAll answers every open question about what decides with everything at
// once: the most evidence each requirement may get.
func hintingAll(j *Job) *Job {
	all := j.clone()
	all.Use = unit.Known(all.Use.Or(Production))
	all.CutPerWeek = unit.Known(all.CutPerWeek.Or(200))
	all.Today = unit.Known(all.Today.Or([]Process{Abrasive, OxyFuel, SentOut}))
	all.EdgeNext = unit.Known(all.EdgeNext.Or([]EdgeUse{Welded, Seen}))
	all.Features = unit.Known(all.Features.Or([]Feature{Holes, Gaps}))
	all.Experience = unit.Known(all.Experience.Or(Novice))
	all.Places = unit.Known(all.Places.Or([]Place{InPlace, UpHigh, Field}))
	eachPiece(&all, func(p *Piece) {
		p.Everyday = unit.Known(p.Everyday.Or(1))
		p.Thickest = unit.Known(p.Thickest.Or(50))
		p.Rarest = unit.Known(p.Rarest.Or(50))
	})
	return &all
}
