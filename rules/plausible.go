package rules

import (
	"cutbrief/rules/unit"
	"slices"
)

// steepestBevel is the largest bevel angle from square we plan for. Common
// practice, no source: weld preparations run from 15 to 45 degrees.
const steepestBevel unit.Degree = 45

// span is one question with the answers it may plausibly have, from the
// easiest for a system to the hardest. Common practice, no source, unless the
// basis says otherwise: the spans decide nothing but what is worth asking.
type span struct {
	fact     Fact
	perMetal bool
	basis    string
	// open reports whether the question is unanswered and can still matter.
	open func(*Job, *Piece) bool
	// set puts in an answer: share 0 is the easiest, 1 the hardest.
	set func(j *Job, p *Piece, share float64)
	// steps is how many answers to try; a choice has one per option.
	steps int
}

// spans is in the order a question is preferred when two matter as much.
var spans = []span{
	{fact: FactUse, steps: 3, basis: "the three uses",
		open: func(j *Job, _ *Piece) bool { return !j.Use.IsKnown() },
		set: func(j *Job, _ *Piece, share float64) {
			j.Use = unit.Known(pick(share, Maintenance, Mixed, Production))
		}},
	{fact: FactThickest, perMetal: true, steps: 5, basis: "from the everyday thickness to twice that; 1 to 25 mm where nothing is told",
		open: func(_ *Job, p *Piece) bool { return !p.Thickest.IsKnown() },
		set:  setThickness(FactThickest, 1, 2, 1, 25)},
	{fact: FactRarest, perMetal: true, steps: 5, basis: "from none to twice the regular cut",
		open: func(_ *Job, p *Piece) bool { return !p.Rarest.IsKnown() },
		set:  setThickness(FactRarest, 0, 2, 0, 50)},
	{fact: FactStart, steps: 3, basis: "the three places a cut can start",
		open: func(j *Job, _ *Piece) bool { return !j.Start.IsKnown() },
		set: func(j *Job, _ *Piece, share float64) {
			j.Start = unit.Known(pick(share, AtEdge, InPlate, Anywhere))
			if share > 0 {
				eachPiece(j, func(p *Piece) { fill(p, FactPierced, 0, 1, 0, 25, share) })
			}
		}},
	{fact: FactPierced, perMetal: true, steps: 5, basis: "from none to the regular cut",
		open: func(j *Job, p *Piece) bool {
			start, known := j.Start.Get()
			return known && start != AtEdge && !p.Pierced.IsKnown()
		},
		set: setThickness(FactPierced, 0, 1, 0, 25)},
	{fact: FactFeatures, steps: 5, basis: "straight cuts only, or bevels, gouging, gaps, or all of it",
		open: func(j *Job, _ *Piece) bool { return !j.Features.IsKnown() },
		set: func(j *Job, _ *Piece, share float64) {
			features := pick(share, []Feature{Straight}, []Feature{Bevels}, []Feature{Gouging}, []Feature{Gaps}, []Feature{Straight, Bevels, Gouging, Gaps})
			j.Features = unit.Known(features)
			if slices.Contains(features, Bevels) {
				j.BevelAngle = unit.Known(j.BevelAngle.Or(steepestBevel))
				eachPiece(j, func(p *Piece) { fill(p, FactBevelled, 0, 1, 0, 25, 1) })
			}
		}},
	{fact: FactBevelled, perMetal: true, steps: 5, basis: "from none to the regular cut",
		open: func(j *Job, p *Piece) bool { return has(j.Features, Bevels) && !p.Bevelled.IsKnown() },
		set:  setThickness(FactBevelled, 0, 1, 0, 25)},
	{fact: FactBevelAngle, steps: 3, basis: "15 to 45 degrees from square",
		open: func(j *Job, _ *Piece) bool { return has(j.Features, Bevels) && !j.BevelAngle.IsKnown() },
		set: func(j *Job, _ *Piece, share float64) {
			j.BevelAngle = unit.Known(15 + (steepestBevel-15)*unit.Degree(share))
		}},
	{fact: FactEveryday, perMetal: true, steps: 3, basis: "from a third of the thickest regular cut to all of it",
		open: func(_ *Job, p *Piece) bool { return !p.Everyday.IsKnown() },
		set:  setThickness(FactEveryday, 1.0/3, 1, 1, 25)},
	{fact: FactBusyCuts, steps: 3, basis: "1 to 5 in repair work, 1 to 20 otherwise",
		open: func(j *Job, _ *Piece) bool { return !j.BusyCuts.IsKnown() },
		set: func(j *Job, _ *Piece, share float64) {
			j.BusyCuts = unit.Known(blend(1, busyMost(j, 5, 20), share))
		}},
	{fact: FactBusyLength, steps: 3, basis: "0.1 to 0.3 m in repair work, 0.1 to 0.5 m otherwise",
		open: func(j *Job, _ *Piece) bool { return !j.BusyLength.IsKnown() },
		set: func(j *Job, _ *Piece, share float64) {
			j.BusyLength = unit.Known(unit.Metre(blend(0.1, busyMost(j, 0.3, 0.5), share)))
		}},
	{fact: FactGuidance, steps: 2, basis: "by hand, or on a carriage or table",
		open: func(j *Job, _ *Piece) bool { return !j.Guidance.IsKnown() },
		set: func(j *Job, _ *Piece, share float64) {
			j.Guidance = unit.Known(pick(share, FreeHand, Mechanised))
		}},
	{fact: FactSource, steps: 2, basis: "the mains, or also a generator of 5 kVA",
		open: func(j *Job, _ *Piece) bool { return !j.Power.Source.IsKnown() },
		set: func(j *Job, _ *Piece, share float64) {
			j.Power.Source = unit.Known(pick(share, Mains, MainsGen))
			if share > 0 && !j.Power.Generator.IsKnown() {
				j.Power.Generator = unit.Known(unit.KilovoltAmpere(blend(40, 5, share)))
			}
		}},
	{fact: FactBreaker, steps: 3, basis: "63 A down to 15 A",
		open: func(j *Job, _ *Piece) bool { return onMains(j) && !j.Power.Breaker.IsKnown() },
		set: func(j *Job, _ *Piece, share float64) {
			j.Power.Breaker = unit.Known(unit.Ampere(blend(63, 15, share)))
		}},
	{fact: FactGenerator, steps: 3, basis: "40 kVA down to 5 kVA",
		open: func(j *Job, _ *Piece) bool { return onGenerator(j) && !j.Power.Generator.IsKnown() },
		set: func(j *Job, _ *Piece, share float64) {
			j.Power.Generator = unit.Known(unit.KilovoltAmpere(blend(40, 5, share)))
		}},
	{fact: FactCord, steps: 3, basis: "none to 30 m",
		open: func(j *Job, _ *Piece) bool { return !j.Power.Cord.IsKnown() },
		set: func(j *Job, _ *Piece, share float64) {
			j.Power.Cord = unit.Known(unit.Metre(blend(0, 30, share)))
			if share > 0 && !j.Power.CordSection.IsKnown() {
				j.Power.CordSection = unit.Known(unit.SquareMillimetre(blend(10, 2.5, share)))
			}
		}},
	{fact: FactCordSection, steps: 3, basis: "10 mm² down to 2.5 mm²",
		open: func(j *Job, _ *Piece) bool {
			length, known := j.Power.Cord.Get()
			return known && length > 0 && !j.Power.CordSection.IsKnown()
		},
		set: func(j *Job, _ *Piece, share float64) {
			j.Power.CordSection = unit.Known(unit.SquareMillimetre(blend(10, 2.5, share)))
		}},
	{fact: FactDrier, steps: 5, basis: "the kinds of drier, none, or no compressor",
		open: func(j *Job, _ *Piece) bool { return !j.Air.Drier.IsKnown() },
		set: func(j *Job, _ *Piece, share float64) {
			j.Air.Drier = unit.Known(pick(share, Desiccant, Refrigerant, Separator, NoDrier, NoAir))
		}},
	{fact: FactAirDelivery, steps: 3, basis: "500 l/min down to 100 l/min",
		open: func(j *Job, _ *Piece) bool { return hasAir(j) && !j.Air.Delivery.IsKnown() },
		set: func(j *Job, _ *Piece, share float64) {
			j.Air.Delivery = unit.Known(unit.LitrePerMinute(blend(500, 100, share)))
		}},
	{fact: FactAirPressure, steps: 3, basis: "10 bar down to 4 bar",
		open: func(j *Job, _ *Piece) bool { return hasAir(j) && !j.Air.Pressure.IsKnown() },
		set: func(j *Job, _ *Piece, share float64) {
			j.Air.Pressure = unit.Known(unit.Bar(blend(10, 4, share)))
		}},
	{fact: FactHoseBore, steps: 3, basis: "13 mm down to 6 mm",
		open: func(j *Job, _ *Piece) bool { return hasAir(j) && !j.Air.HoseBore.IsKnown() },
		set: func(j *Job, _ *Piece, share float64) {
			j.Air.HoseBore = unit.Known(unit.Millimetre(blend(13, 6, share)))
		}},
	{fact: FactHoseLength, steps: 3, basis: "5 m to 30 m",
		open: func(j *Job, _ *Piece) bool { return hasAir(j) && !j.Air.HoseLength.IsKnown() },
		set: func(j *Job, _ *Piece, share float64) {
			j.Air.HoseLength = unit.Known(unit.Metre(blend(5, 30, share)))
		}},
	{fact: FactAltitude, steps: 3, basis: "sea level to 1500 m",
		open: func(j *Job, _ *Piece) bool { return !j.Altitude.IsKnown() },
		set: func(j *Job, _ *Piece, share float64) {
			j.Altitude = unit.Known(unit.Metre(blend(0, 1500, share)))
		}},
}

// pick chooses by share from options ordered easiest first.
func pick[T any](share float64, options ...T) T {
	i := int(share*float64(len(options)-1) + 0.5)
	return options[i]
}

// busyMost is the upper end of a span that is shorter in repair work.
func busyMost(j *Job, repair, otherwise float64) float64 {
	if j.Use.Or("") == Maintenance {
		return repair
	}
	return otherwise
}

// blend is the point between low and high at a share of the way.
func blend(low, high, share float64) float64 { return low + (high-low)*share }

func eachPiece(j *Job, do func(*Piece)) {
	for i := range j.Pieces {
		do(&j.Pieces[i])
	}
}

// setThickness fills a thickness between times of the regular cut, or between
// two plain figures where no regular cut is told.
func setThickness(f Fact, timesLow, timesHigh, low, high float64) func(*Job, *Piece, float64) {
	return func(_ *Job, p *Piece, share float64) { fill(p, f, timesLow, timesHigh, low, high, share) }
}

// fill sets a thickness that is not known yet.
func fill(p *Piece, f Fact, timesLow, timesHigh, low, high, share float64) {
	field := thicknessOf(p, f)
	if field.IsKnown() {
		return
	}
	if regular, told, _ := p.regular(); told {
		low, high = timesLow*float64(regular), timesHigh*float64(regular)
	}
	*field = unit.Known(unit.Millimetre(blend(low, high, share)))
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

// hasAir reports whether there is a compressor, as far as it is told.
func hasAir(j *Job) bool { return j.Air.Drier.Or("") != NoAir }
