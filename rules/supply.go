package rules

import (
	"math"

	"cutbrief/rules/message"
	"cutbrief/rules/size"
	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// plateTolerance is how far the site's voltage may lie outside the plate's
// range and still be worth a question. From memory of IEC 60974-1 (operation
// at rated supply voltage ±10 %), so it only ever makes a verdict borderline.
const plateTolerance = size.VoltTolerance

// offer is one supply the site can give.
type offer struct {
	phases int
	volts  float64
}

// offers lists what the site can give: the supply told and, where three phases
// are on hand, one phase taken from them, line to line or line to neutral.
// What is left of the room has no phases, and suits no system. known is false while
// phase or voltage is not told. It allocates nothing.
func offers(p *SitePower) (list [4]offer, known bool) {
	phases, ok1 := p.Phases.Get()
	volts, ok2 := p.Volts.Get()
	if !ok1 || !ok2 {
		return list, false
	}
	v := float64(volts)
	if phases == SinglePhase {
		return [4]offer{{1, v}}, true
	}
	list = [4]offer{{3, v}, {1, v}, {1, v / math.Sqrt(3)}}
	if phases == BothPhases { // the voltage told may be that of the single phase
		list[3] = offer{3, v * math.Sqrt(3)}
	}
	return list, true
}

// feed is a system's supply and the voltage it is fed with at the site; a nil
// supply is none that suits.
type feed struct {
	*system.Supply
	volts unit.Volt
}

// match returns the system's supply that suits the site best, and how well;
// of two that suit, the one with more phases, which draws less.
func match(p *SitePower, s *system.System) (feed, Verdict) {
	list, known := offers(p)
	if !known {
		return feed{}, halfKnown(p, s)
	}
	var chosen feed
	verdict := Short
	for i := range s.Supplies {
		for _, o := range list {
			v := suits(&s.Supplies[i], o)
			better := v == Met && (verdict != Met || s.Supplies[i].Phases > chosen.Phases)
			if better || (v == Borderline && verdict == Short) {
				chosen, verdict = feed{&s.Supplies[i], unit.Volt(o.volts)}, v
			}
		}
	}
	return chosen, verdict
}

// halfKnown rules a system out on its phases alone where that is possible: a
// single-phase shop cannot feed a system that only takes three.
func halfKnown(p *SitePower, s *system.System) Verdict {
	if phases, told := p.Phases.Get(); !told || phases != SinglePhase {
		return NotKnown
	}
	for i := range s.Supplies {
		if s.Supplies[i].Phases == 1 {
			return NotKnown
		}
	}
	return Short
}

// suits judges one supply of a system against one the site can give.
func suits(s *system.Supply, o offer) Verdict {
	if s.Phases != o.phases {
		return Short
	}
	low, high := float64(s.VoltMin)*(1-roundOff), float64(s.VoltMax)*(1+roundOff)
	switch {
	case o.volts >= low*(1-lineRounding) && o.volts <= high*(1+lineRounding):
		return Met
	case o.volts >= low*(1-plateTolerance) && o.volts <= high*(1+plateTolerance):
		return Borderline
	}
	return Short
}

// lineRounding lets nominal voltages meet: 400 V between lines is 230.9 V to
// neutral and is called 230 V. Source: IEC 60038 Table 1.
const lineRounding = 0.005

// judgeSupply: the site has a phase and a voltage the system can be fed with.
func judgeSupply(d *demand, s *system.System) mark {
	_, v := match(&d.job.Power, s)
	return mark{verdict: v}
}

// supplyInputs names what is told of the supply, and the voltage of the single
// phase that is taken from three.
func supplyInputs(d *demand, s *system.System) []Input {
	list := make([]Input, 0, 9) // room for what the draw and the cord add
	if p, ok := d.job.Power.Phases.Get(); ok {
		list = append(list, Input{Name: message.New("supply"), Word: phaseWords[p], From: Asked{Fact: FactPhases}})
	}
	volts, ok := d.job.Power.Volts.Get()
	if !ok {
		return list
	}
	list = append(list, d.job.told(FactVolts)...)
	if f, _ := match(&d.job.Power, s); f.Supply != nil && f.Phases == 1 && f.volts != volts {
		list = append(list, figureInput("one phase of it, to neutral", math.Round(float64(f.volts)), unit.Voltage))
	}
	return list
}

// phaseWords are the phases as a reader is told. They are only ever read.
var phaseWords = map[Phases]message.ID{
	SinglePhase: "single-phase", ThreePhase: "three-phase", BothPhases: "single- and three-phase",
}
