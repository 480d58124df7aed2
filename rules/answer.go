package rules

import (
	"math"
	"slices"

	"cutbrief/rules/message"
	"cutbrief/rules/unit"
)

// answer is one fact a customer can tell: where a job holds it, what it is called
// as an input of a check, and which answers are plausible while it is not told,
// from the easiest for a system to the hardest. What is plausible is common
// practice, no source, unless the row says otherwise: it decides nothing but what
// is worth asking.
type answer struct {
	fact     Fact
	name     message.ID // as an input; {1} is the metal
	perMetal bool
	matters  func(*Job, *Piece) bool // whether it can matter while it is not told; nil if always
	slot
	besides []Fact // what an answer puts in too, unless it is told: it is asked only with that answer
	fully   bool   // these at their hardest, whichever answer it is
}

// slot is where a job holds an answer. The piece is nil for a fact that is not
// told per metal.
type slot struct {
	known  func(*Job, *Piece) bool
	input  func(*Job, *Piece) Input              // value or word, where it is known; nil if it is no input
	set    func(j *Job, p *Piece, share float64) // puts in an answer: share 0 is the easiest, 1 the hardest
	value  func(j *Job, p *Piece, v float64)     // puts in a figure in the unit of its kind; nil for a choice
	option func(j *Job, option string)           // puts in one option; nil for a figure and for several of a list
	ends   [2]float64                            // of a figure of the job, the easiest and the hardest that are plausible
	steps  int                                   // how many plausible answers are tried; 0 if none are
}

// number is a slot of a figure that is plausible from the easiest to the hardest.
func number[Q ~float64](at func(*Job) *unit.Maybe[Q], kind unit.Kind, easiest, hardest float64) slot {
	s := slot{
		known: func(j *Job, _ *Piece) bool { return at(j).IsKnown() },
		input: func(j *Job, _ *Piece) Input {
			v, _ := at(j).Get()
			return Input{Value: unit.Quantity{Value: float64(v), Kind: kind}}
		},
		set:   func(j *Job, _ *Piece, share float64) { *at(j) = unit.Known(Q(blend(easiest, hardest, share))) },
		value: func(j *Job, _ *Piece, v float64) { *at(j) = unit.Known(Q(v)) },
		ends:  [2]float64{easiest, hardest},
	}
	if easiest != hardest {
		s.steps = 3
	}
	return s
}

// one is a slot of one option of a list, the easiest answer first.
func one[C ~string](at func(*Job) *unit.Maybe[C], options ...C) slot {
	s := choice(at, options...)
	s.option = func(j *Job, option string) { *at(j) = unit.Known(C(option)) }
	return s
}

// choice is a slot of one or several of a list, the easiest answer first.
func choice[C any](at func(*Job) *unit.Maybe[C], options ...C) slot {
	return slot{
		known: func(j *Job, _ *Piece) bool { return at(j).IsKnown() },
		set: func(j *Job, _ *Piece, share float64) {
			*at(j) = unit.Known(options[int(math.Round(share*float64(len(options)-1)))])
		},
		steps: len(options),
	}
}

// thickness is a slot of a piece, plausible between times of the regular cut, or
// between two plain figures in mm where no regular cut is told.
func thickness(f Fact, timesLow, timesHigh, low, high float64) slot {
	return slot{
		known: func(_ *Job, p *Piece) bool { return thicknessOf(p, f).IsKnown() },
		input: func(_ *Job, p *Piece) Input {
			t, _ := thicknessOf(p, f).Get()
			return Input{Value: mm(t)}
		},
		set: func(_ *Job, p *Piece, share float64) {
			from, to := low, high
			if regular, told, _ := p.regular(); told {
				from, to = timesLow*float64(regular), timesHigh*float64(regular)
			}
			*thicknessOf(p, f) = unit.Known(unit.Millimetre(blend(from, to, share)))
		},
		value: func(_ *Job, p *Piece, v float64) { p.put(f, unit.Millimetre(v)) },
		ends:  [2]float64{low, high},
		steps: 5,
	}
}

// steepestBevel is the largest bevel angle from square we plan for. Common
// practice, no source: weld preparations run from 15 to 45 degrees.
const steepestBevel unit.Degree = 45

// answers is in the order a question is preferred when two matter as much.
var answers = []answer{
	{fact: FactUse, slot: one(func(j *Job) *unit.Maybe[Use] { return &j.Use }, Maintenance, Mixed, Production)},
	{fact: FactThickest, name: "thickest regular clean cut, {1}", perMetal: true, slot: thickness(FactThickest, 1, 2, 1, 25)},
	{fact: FactRarest, name: "rare thickest, {1}", perMetal: true, slot: thickness(FactRarest, 0, 2, 0, 50)},
	{fact: FactStart, slot: one(func(j *Job) *unit.Maybe[Start] { return &j.Start }, AtEdge, InPlate, Anywhere),
		besides: []Fact{FactPierced}},
	{fact: FactPierced, name: "thickest pierced, {1}", perMetal: true, slot: thickness(FactPierced, 0, 1, 0, 25),
		matters: func(j *Job, _ *Piece) bool { return j.Start.Or(AtEdge) != AtEdge }},
	{fact: FactFeatures, slot: choice(func(j *Job) *unit.Maybe[[]Feature] { return &j.Features },
		[]Feature{Straight}, []Feature{Bevels}, []Feature{Gouging}, []Feature{Gaps}, []Feature{Straight, Bevels, Gouging, Gaps}),
		besides: []Fact{FactBevelled, FactBevelAngle}, fully: true},
	{fact: FactBevelled, name: "thickest bevelled, {1}", perMetal: true, slot: thickness(FactBevelled, 0, 1, 0, 25), matters: whereBevelled},
	{fact: FactBevelAngle, name: "angle from square", matters: whereBevelled,
		slot: number(func(j *Job) *unit.Maybe[unit.Degree] { return &j.BevelAngle }, unit.Angle, 15, float64(steepestBevel))},
	{fact: FactEveryday, name: "everyday thickness, {1}", perMetal: true, slot: thickness(FactEveryday, 1.0/3, 1, 1, 25)},
	{fact: FactBusyCuts, name: "cuts in the busiest ten minutes", slot: busyTime(func(j *Job) *unit.Maybe[float64] { return &j.BusyCuts }, unit.Count, 1, 5, 20)},
	{fact: FactBusyLength, name: "length of each", slot: busyTime(func(j *Job) *unit.Maybe[unit.Metre] { return &j.BusyLength }, unit.Length, 0.1, 0.3, 0.5)},
	{fact: FactGuidance, slot: one(func(j *Job) *unit.Maybe[Guidance] { return &j.Guidance }, FreeHand, Mechanised)},
	{fact: FactSource, slot: one(func(j *Job) *unit.Maybe[PowerSource] { return &j.Power.Source }, Mains, MainsGen),
		besides: []Fact{FactGenerator}},
	{fact: FactBreaker, matters: func(j *Job, _ *Piece) bool { return onMains(j) },
		slot: number(func(j *Job) *unit.Maybe[unit.Ampere] { return &j.Power.Breaker }, unit.Current, 63, 15)},
	{fact: FactGenerator, matters: func(j *Job, _ *Piece) bool { return onGenerator(j) },
		slot: number(func(j *Job) *unit.Maybe[unit.KilovoltAmpere] { return &j.Power.Generator }, unit.ApparentPower, 40, 5)},
	{fact: FactCord, name: "cord, one way", slot: number(func(j *Job) *unit.Maybe[unit.Metre] { return &j.Power.Cord }, unit.Length, 0, 30),
		besides: []Fact{FactCordSection}},
	{fact: FactCordSection, name: "conductor size", matters: func(j *Job, _ *Piece) bool { return j.Power.Cord.Or(0) > 0 },
		slot: number(func(j *Job) *unit.Maybe[unit.SquareMillimetre] { return &j.Power.CordSection }, unit.Section, 10, 2.5)},
	{fact: FactDrier, slot: one(func(j *Job) *unit.Maybe[Drier] { return &j.Air.Drier }, Desiccant, Refrigerant, Separator, NoDrier, NoAir)},
	{fact: FactAirDelivery, name: "air delivery", matters: hasAir,
		slot: number(func(j *Job) *unit.Maybe[unit.LitrePerMinute] { return &j.Air.Delivery }, unit.Flow, 500, 100)},
	{fact: FactAirPressure, matters: hasAir, slot: number(func(j *Job) *unit.Maybe[unit.Bar] { return &j.Air.Pressure }, unit.Pressure, 10, 4)},
	{fact: FactHoseBore, matters: hasAir, slot: number(func(j *Job) *unit.Maybe[unit.Millimetre] { return &j.Air.HoseBore }, unit.Thickness, 13, 6)},
	{fact: FactHoseLength, matters: hasAir, slot: number(func(j *Job) *unit.Maybe[unit.Metre] { return &j.Air.HoseLength }, unit.Length, 5, 30)},
	{fact: FactAltitude, name: "altitude", slot: number(func(j *Job) *unit.Maybe[unit.Metre] { return &j.Altitude }, unit.Length, 0, 1500)},

	// What follows is weighed elsewhere: metals, supply, and what decides the sale.
	{fact: FactMetals, slot: slot{known: func(j *Job, _ *Piece) bool { return len(j.Pieces) > 0 }}},
	{fact: FactPhases, slot: one(func(j *Job) *unit.Maybe[Phases] { return &j.Power.Phases })},
	{fact: FactVolts, name: "voltage", slot: number(func(j *Job) *unit.Maybe[unit.Volt] { return &j.Power.Volts }, unit.Voltage, 0, 0)},
	{fact: FactCutLength, slot: number(func(j *Job) *unit.Maybe[unit.Metre] { return &j.CutPerWeek }, unit.Length, 0, 0)},
	{fact: FactToday, slot: choice(func(j *Job) *unit.Maybe[[]Process] { return &j.Today })},
	{fact: FactEdgeNext, slot: choice(func(j *Job) *unit.Maybe[[]EdgeUse] { return &j.EdgeNext })},
	{fact: FactPlaces, slot: choice(func(j *Job) *unit.Maybe[[]Place] { return &j.Places })},
	{fact: FactExperience, slot: one(func(j *Job) *unit.Maybe[Experience] { return &j.Experience })},
}

// busyTime is a slot of the busiest ten minutes, shorter in repair work.
func busyTime[Q ~float64](at func(*Job) *unit.Maybe[Q], kind unit.Kind, least, repair, otherwise float64) slot {
	s := number(at, kind, least, otherwise)
	inRepair := number(at, kind, least, repair).set
	set := s.set
	s.set = func(j *Job, p *Piece, share float64) {
		if j.Use.Or("") == Maintenance {
			inRepair(j, p, share)
		} else {
			set(j, p, share)
		}
	}
	return s
}

func whereBevelled(j *Job, _ *Piece) bool { return has(j.Features, Bevels) }

// hasAir reports whether there is a compressor, as far as it is told.
func hasAir(j *Job, _ *Piece) bool { return j.Air.Drier.Or("") != NoAir }

// answerOf is the row of a fact, nil if it has none.
func answerOf(f Fact) *answer {
	if i := slices.IndexFunc(answers, func(a answer) bool { return a.fact == f }); i >= 0 {
		return &answers[i]
	}
	return nil
}

// put puts in an answer and what is asked only with it.
func (a *answer) put(j *Job, p *Piece, share float64) {
	a.set(j, p, share)
	if a.fully {
		share = 1
	}
	for _, f := range a.besides {
		b := answerOf(f)
		fill := func(p *Piece) {
			if !b.known(j, p) {
				b.set(j, p, share)
			}
		}
		if b.perMetal {
			eachPiece(j, fill)
		} else {
			fill(nil)
		}
	}
}

// open reports whether the fact is not told and can still matter.
func (a *answer) open(j *Job, p *Piece) bool {
	return a.steps != 0 && !a.known(j, p) && (a.matters == nil || a.matters(j, p))
}

// missing lists those of some facts that a job does not tell.
func (j *Job) missing(facts ...Fact) (list []Asked) {
	for _, f := range facts {
		switch a := answerOf(f); {
		case a.perMetal:
			for i := range j.Pieces {
				if p := &j.Pieces[i]; !a.known(j, p) {
					list = append(list, Asked{f, p.Metal})
				}
			}
		case !a.known(j, nil):
			list = append(list, Asked{Fact: f})
		}
	}
	return list
}

// told are those of some facts that a job tells, as inputs of a check.
func (j *Job) told(facts ...Fact) (list []Input) {
	for _, f := range facts {
		if a := answerOf(f); a.known(j, nil) {
			in := a.input(j, nil)
			in.Name, in.From = a.name.Message(), Asked{Fact: f}
			list = append(list, in)
		}
	}
	return list
}

// blend is the point between low and high at a share of the way.
func blend(low, high, share float64) float64 { return low + (high-low)*share }

func eachPiece(j *Job, do func(*Piece)) {
	for i := range j.Pieces {
		do(&j.Pieces[i])
	}
}

// thicknessOf picks one of a piece's thicknesses by the fact that holds it.
func thicknessOf(p *Piece, f Fact) *unit.Maybe[unit.Millimetre] {
	switch f {
	case FactEveryday:
		return &p.Everyday
	case FactRarest:
		return &p.Rarest
	case FactPierced:
		return &p.Pierced
	case FactBevelled:
		return &p.Bevelled
	}
	return &p.Thickest
}

// put sets a thickness; the everyday cut is no thicker than the thickest.
func (p *Piece) put(f Fact, t unit.Millimetre) {
	*thicknessOf(p, f) = unit.Known(t)
	if f == FactThickest && over(p.Everyday, p.Thickest) {
		p.Everyday = p.Thickest
	}
}

// supplies are the mains a shop may have, tried where phase or voltage is not
// told. Source: IEC 60038 Table 1.
var supplies = []struct {
	phases Phases
	volts  unit.Volt
}{
	{SinglePhase, 120}, {SinglePhase, 208}, {SinglePhase, 230}, {SinglePhase, 240},
	{ThreePhase, 208}, {ThreePhase, 240}, {ThreePhase, 400}, {ThreePhase, 480},
}
