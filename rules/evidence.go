package rules

import (
	"cutbrief/rules/cite"
	"cutbrief/rules/message"
	"cutbrief/rules/unit"
)

// evidence is one row of the table that names the critical requirement. The
// weights are common practice, no source: they order inferences among
// themselves only, as anything the customer says outranks all of them.
type evidence struct {
	requirement Requirement
	weight      int
	from        Fact
	sentence    message.ID
	applies     func(*Job) bool
}

// Weights of what the customer says: what annoys most outranks what comes next.
const (
	weightMost = 10
	weightNext = 6
)

// nearTie is how far apart two inferred requirements may be and still be shown
// as one.
const nearTie = 1

// practice is the source of every row here.
var practice = cite.Ref{Source: "practice"}

// annoyances says which requirement a complaint about today's way points to.
var annoyances = []struct {
	id          Annoyance
	requirement Requirement
	sentence    message.ID
}{
	{TooSlow, Speed, "You say the present way is too slow."},
	{Warps, Distortion, "You say the pieces warp."},
	{RoughEdge, EdgeQuality, "You say the edge needs too much work afterwards."},
	{HardToUse, Ease, "You say the present way is hard to use or to teach."},
	{CostsTooMuch, RunningCost, "You say the present way costs too much."},
	{TooHeavy, Portability, "You say the present equipment is too heavy to take to the work."},
	{TooThick, Reach, "You say the present way does not get through your heavy pieces."},
	{LosesArc, AcrossGaps, "You say grating and mesh cannot be cut well today."},
}

// inferred is what the other answers suggest, in no order that matters.
var inferred = []evidence{
	{Speed, 3, FactUse, "Production work waits for the cut.", func(j *Job) bool { return j.Use.Or("") == Production }},
	{Speed, 2, FactCutLength, "You cut more than 100 m a week.", func(j *Job) bool { return moreThan(j.CutPerWeek, 100) }},
	{Speed, 1, FactToday, "Discs and saws are slow in plate.", func(j *Job) bool { return has(j.Today, Abrasive) || has(j.Today, BandSaw) }},
	{Distortion, 2, FactEveryday, "Thin sheet that will be seen shows every ripple.", func(j *Job) bool { return cutsThin(j, 3) && has(j.EdgeNext, Seen) }},
	{Distortion, 2, FactToday, "A gas flame warps material up to 6 mm.", func(j *Job) bool { return cutsThin(j, 6) && has(j.Today, OxyFuel) }},
	{EdgeQuality, 3, FactEdgeNext, "The edge will be seen.", func(j *Job) bool { return has(j.EdgeNext, Seen) }},
	{EdgeQuality, 1, FactEdgeNext, "The edge is welded next, so grinding it first costs time.", func(j *Job) bool { return has(j.EdgeNext, Welded) }},
	{EdgeQuality, 1, FactFeatures, "Holes and shapes have to come out as drawn.", func(j *Job) bool { return has(j.Features, Holes) || has(j.Features, Shapes) }},
	{Ease, 3, FactExperience, "The operator is new to cutting.", func(j *Job) bool { return j.Experience.Or("") == Novice }},
	{RunningCost, 3, FactToday, "Work that is sent out costs transport and waiting.", func(j *Job) bool { return has(j.Today, SentOut) }},
	{RunningCost, 1, FactToday, "Gas cylinders cost rent whether they are used or not.", func(j *Job) bool { return has(j.Today, OxyFuel) }},
	{Portability, 3, FactPlaces, "The work is up high.", func(j *Job) bool { return has(j.Places, UpHigh) }},
	{Portability, 3, FactPlaces, "The work is out in the field.", func(j *Job) bool { return has(j.Places, Field) }},
	{Portability, 1, FactPlaces, "The system has to go to the work.", func(j *Job) bool { return has(j.Places, InPlace) }},
	{Reach, 3, FactRarest, "Pieces of 25 mm and more have to be severed.", func(j *Job) bool { return cutsThick(j, heavySection) }},
	{AcrossGaps, 4, FactFeatures, "You cut grating, mesh or expanded metal.", func(j *Job) bool { return has(j.Features, Gaps) }},
}

// heavySection is the thickness from which reach counts for something. Common
// practice, no source.
const heavySection unit.Millimetre = 25

func moreThan(m unit.Maybe[unit.Metre], limit unit.Metre) bool {
	v, ok := m.Get()
	return ok && beyond(v, limit)
}

// cutsThin reports whether some metal's everyday thickness is known and at
// most limit.
func cutsThin(j *Job, limit unit.Millimetre) bool {
	for _, p := range j.Pieces {
		if t, ok := p.Everyday.Get(); ok && !beyond(t, limit) {
			return true
		}
	}
	return false
}

// cutsThick reports whether some metal's thickest known piece, clean or
// severed, is at least limit.
func cutsThick(j *Job, limit unit.Millimetre) bool {
	for _, p := range j.Pieces {
		for _, m := range []unit.Maybe[unit.Millimetre]{p.Thickest, p.Rarest} {
			if t, ok := m.Get(); ok && !beyond(limit, t) {
				return true
			}
		}
	}
	return false
}

// PossibleEvidence returns everything that can point to a requirement, as it stands in
// the tables: what the customer says first, then what is inferred.
func PossibleEvidence() []Evidence {
	var list []Evidence
	for _, a := range annoyances {
		list = append(list, Evidence{Requirement: a.requirement, Said: true, Weight: weightMost, Sentence: a.sentence, From: Asked{Fact: FactAnnoysMost}, Source: practice})
	}
	for _, e := range inferred {
		list = append(list, Evidence{Requirement: e.requirement, Weight: e.weight, Sentence: e.sentence, From: Asked{Fact: e.from}, Source: practice})
	}
	return list
}
