package rules

import (
	"slices"

	"cutbrief/rules/message"
	"cutbrief/rules/size"
	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// mark is a verdict with the two numbers it rests on, and no text: what the
// interview needs at every key. An empty verdict means the rule does not apply.
type mark struct {
	verdict    Verdict
	need, have float64
	almost     message.ID // what borderline means in this very case; "" leaves it to the rule
}

// roundOff lets a figure at the very limit count as within it, however the limit
// comes out in binary and in whatever unit it was told: 0.5 % above 415 V is
// 417.075 V.
const roundOff = 1e-9

// beyond reports whether a figure told is more than a limit, or than another.
func beyond[T ~float64](told, limit T) bool { return told > limit*(1+roundOff) }

// compare judges a capability against a need.
func compare(need, have float64) Verdict {
	switch size.Compare(need, have) {
	case size.Enough:
		return Met
	case size.StepShort:
		return Borderline
	}
	return Short
}

// against is a capability beside a need.
func against[Q ~float64](need, have Q) mark {
	return mark{verdict: compare(float64(need), float64(have)), need: float64(need), have: float64(have)}
}

// between judges a capability when the need is only known to lie between
// least and most.
func between(least, most, have float64, sure bool) mark {
	low := compare(least, have)
	if low == Short || (sure && low == compare(most, have)) {
		return mark{verdict: low, need: least, have: have}
	}
	return mark{verdict: NotKnown, need: least, have: have}
}

// yesNo judges a capability a system has or has not. asked is nil-safe.
func yesNo(asked, known, capable bool) mark {
	switch {
	case !known && !capable:
		return mark{verdict: NotKnown}
	case !known || !asked:
		return mark{}
	case capable:
		return mark{verdict: Met}
	}
	return mark{verdict: Short}
}

// judgeClean: rated thickness at least the factor times the thickest regular
// clean cut, in mild steel.
func judgeClean(d *demand, s *system.System) mark {
	_, most, known, sure := heaviest(d, s, (*Piece).regular)
	if !known {
		return mark{verdict: NotKnown, have: float64(s.Rated)}
	}
	return between(most*d.multiple.Floor, most*d.atMost, float64(s.Rated), sure)
}

// judgeSever: the rare thickest piece is no more than the severance thickness.
func judgeSever(d *demand, s *system.System) mark {
	_, most, known, sure := heaviest(d, s, func(p *Piece) (unit.Millimetre, bool, bool) { return told(p.Rarest) })
	if !known {
		return mark{verdict: NotKnown, have: float64(s.Severance)}
	}
	if never(most, sure) {
		return mark{}
	}
	return between(most, most, float64(s.Severance), sure)
}

// judgePierce: the thickest piece started away from an edge is no more than
// the pierce thickness.
func judgePierce(d *demand, s *system.System) mark {
	t, err := size.Pierce(s)
	if err != nil {
		return mark{verdict: NotKnown}
	}
	have := float64(t)
	start, known := d.job.Start.Get()
	if !known {
		return mark{verdict: NotKnown, have: have}
	}
	if start == AtEdge {
		return mark{}
	}
	_, most, some, sure := heaviest(d, s, func(p *Piece) (unit.Millimetre, bool, bool) { return told(p.Pierced) })
	if !some {
		return mark{verdict: NotKnown, have: have}
	}
	if never(most, sure) {
		return mark{}
	}
	return between(most, most, have, sure)
}

// judgeBevel: the metal along the tilted cut, t/cos of the angle from square,
// is no more than the clean maximum.
func judgeBevel(d *demand, s *system.System) mark {
	have := float64(s.CleanMax)
	features, known := d.job.Features.Get()
	if !known {
		return mark{verdict: NotKnown, have: have}
	}
	if !slices.Contains(features, Bevels) {
		return mark{}
	}
	angle, told1 := d.job.BevelAngle.Get()
	_, most, some, sure := heaviest(d, s, func(p *Piece) (unit.Millimetre, bool, bool) { return told(p.Bevelled) })
	if !some {
		return mark{verdict: NotKnown, have: have}
	}
	if never(most, sure) {
		return mark{}
	}
	if most == 0 { // none in the metals told, and others are not told
		return mark{verdict: NotKnown, have: have}
	}
	if !told1 {
		return between(most, most, have, false) // at any angle it is at least the plate
	}
	metal, err := size.TrueThickness(unit.Millimetre(most), angle)
	if err != nil { // tilted further than a torch is held, whatever the system
		return mark{verdict: Short}
	}
	return between(float64(metal), float64(metal), have, sure)
}

// judgeGaps: gaps need a system that holds or relights its arc across them,
// also where they are what decides and only the complaint named them.
func judgeGaps(d *demand, s *system.System) mark {
	decides := d.requirement == AcrossGaps
	return yesNo(decides || has(d.job.Features, Gaps), decides || d.job.Features.IsKnown(), s.HoldsGaps)
}

// judgeGouging: gouging needs a system made for it.
func judgeGouging(d *demand, s *system.System) mark {
	return yesNo(has(d.job.Features, Gouging), d.job.Features.IsKnown(), s.Gouges)
}

// judgeMechanised: a carriage or table needs a torch made for one.
func judgeMechanised(d *demand, s *system.System) mark {
	guidance, known := d.job.Guidance.Get()
	return yesNo(guidance == Mechanised, known, s.Mechanised)
}
