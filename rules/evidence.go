package rules

import (
	"cmp"
	"slices"

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

// evidence is a row as it is given.
func (e *evidence) evidence() Evidence {
	return Evidence{e.requirement, false, e.weight, e.sentence, Asked{Fact: e.from}, practice}
}

// complaints are what the customer says annoys them, in order: what annoys most
// outranks what comes next.
var complaints = [...]struct {
	weight int
	from   Fact
}{{10, FactAnnoysMost}, {6, FactAnnoysNext}}

// nearTie is how far apart two inferred requirements may be and still be shown
// as one.
const nearTie = 1

// practice is the source of every row here.
var practice = cite.Ref{Source: "practice"}

// annoyance says which requirement a complaint about today's way points to.
type annoyance struct {
	id          Annoyance
	requirement Requirement
	sentence    message.ID
}

// row is the row of a complaint, nil if it points nowhere.
func (a Annoyance) row() *annoyance {
	for i := range annoyances {
		if annoyances[i].id == a {
			return &annoyances[i]
		}
	}
	return nil
}

// evidence is a row as it is given for the i-th complaint.
func (a *annoyance) evidence(i int) Evidence {
	return Evidence{a.requirement, true, complaints[i].weight, a.sentence, Asked{Fact: complaints[i].from}, practice}
}

var annoyances = []annoyance{
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
	return anyPiece(j, func(p *Piece) bool {
		t, ok := p.Everyday.Get()
		return ok && !beyond(t, limit)
	})
}

// cutsThick reports whether some metal's thickest known piece, clean or
// severed, is at least limit.
func cutsThick(j *Job, limit unit.Millimetre) bool {
	return anyPiece(j, func(p *Piece) bool { return !beyond(limit, max(p.Thickest.Or(0), p.Rarest.Or(0))) })
}

// PossibleEvidence returns everything that can point to a requirement, as it stands in
// the tables: what the customer says first, then what is inferred.
func PossibleEvidence() []Evidence {
	var list []Evidence
	for i := range annoyances {
		list = append(list, annoyances[i].evidence(0))
	}
	for i := range inferred {
		list = append(list, inferred[i].evidence())
	}
	return list
}

// requirements in the order they are named when all else is equal.
var requirements = []Requirement{Speed, Distortion, EdgeQuality, Ease, RunningCost, Portability, Reach, AcrossGaps}

// Requirements returns what can decide a sale, in the order it is named.
func Requirements() []Requirement { return slices.Clone(requirements) }

// score is the weight behind one requirement. What was said is compared first.
type score struct{ said, inferred int }

func (s score) over(t score) bool {
	return cmp.Or(s.said-t.said, s.inferred-t.inferred) > 0
}

// near reports whether t is as strong as s, give or take a near tie. Said
// evidence never ties with inferred evidence.
func (s score) near(t score) bool {
	return s.said == t.said && s.inferred-t.inferred <= nearTie && t != score{}
}

// scores adds up the evidence for each requirement, without building text.
func scores(j *Job) (of [8]score) {
	for i, a := range j.Annoys[:min(len(j.Annoys), len(complaints))] {
		if row := a.row(); row != nil {
			of[place(row.requirement)].said += complaints[i].weight
		}
	}
	for i := range inferred {
		if row := &inferred[i]; row.applies(j) {
			of[place(row.requirement)].inferred += row.weight
		}
	}
	return of
}

func place(r Requirement) int { return slices.Index(requirements, r) }

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
	for i, a := range j.Annoys[:min(len(j.Annoys), len(complaints))] {
		if row := a.row(); row != nil {
			list = append(list, row.evidence(i))
		}
	}
	for i := range inferred {
		if row := &inferred[i]; row.applies(j) {
			list = append(list, row.evidence())
		}
	}
	strength := func(e Evidence) int { // what was said weighs more than any inference
		if e.Requirement == stands {
			return e.Weight + 100
		}
		return e.Weight
	}
	slices.SortStableFunc(list, func(a, b Evidence) int { return strength(b) - strength(a) })
	return list
}
