package rules

import (
	"cutbrief/rules/message"
	"cutbrief/rules/metal"
	"cutbrief/rules/size"
	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// nextEdge is the most demanding thing that happens to the edge next, "" if nothing
// is told.
func nextEdge(j *Job) EdgeUse {
	for _, use := range []EdgeUse{Seen, Machined, Welded, Scrap} {
		if has(j.EdgeNext, use) {
			return use
		}
	}
	return ""
}

// regularOf is the thickest regular cut of any piece, in its own metal.
func regularOf(j *Job) (most unit.Millimetre, known bool) {
	for i := range j.Pieces {
		if t, told, _ := j.Pieces[i].regular(); told {
			most, known = max(most, t), true
		}
	}
	return most, known
}

// judgeEdge: a torch led this way gives the edge the next operation needs. It
// excludes no system: the hand makes the edge, not the source.
func judgeEdge(d *demand, _ *system.System) mark {
	t, _ := regularOf(d.job)
	switch promised, err := size.CanPromise(nextEdge(d.job), d.job.Guidance.Or(FreeHand), t); {
	case err != nil: // not told, among others
		return mark{verdict: NotKnown}
	case promised:
		return mark{verdict: Met}
	}
	return mark{verdict: Borderline}
}

func edgeInputs(d *demand, _ *system.System) []Input {
	next := nextEdge(d.job)
	t, thick := regularOf(d.job)
	if next == "" || !thick {
		return nil
	}
	list := []Input{
		{Name: message.New("what happens next"), Word: message.ID(next), From: Asked{Fact: FactEdgeNext}},
		{Name: message.New("how the torch is guided"), Word: message.ID(d.job.Guidance.Or(FreeHand)), From: Asked{Fact: FactGuidance}},
	}
	need, err := size.EdgeNeeded(next, t)
	if err != nil {
		return list
	}
	list = append(list, Input{Name: message.New("what it needs"), Word: need.Words})
	if lean, err := size.Squareness(need.Squareness, t); err == nil {
		list = append(list,
			figureInput("squareness range of ISO 9013 it needs", need.Squareness, unit.Count),
			figureInput("the edge may lean by", lean, unit.Thickness))
	}
	if need.Allowance != 0 {
		list = append(list, figureInput("metal to leave on", need.Allowance, unit.Thickness))
	}
	return list
}

// band is the usual heated band of today's way, the coolest of several, which
// is the one to be measured against; false where we hold none.
func band(j *Job) (size.Band, Process, bool) {
	for _, cold := range []Process{Shear, Nibbler, BandSaw} {
		if has(j.Today, cold) {
			return size.ColdBand(), cold, true
		}
	}
	if has(j.Today, OxyFuel) && anyPiece(j, bandHolds) {
		return size.OxyFuelBand(), OxyFuel, true
	}
	return size.Band{}, "", false
}

// bandHolds reports a piece of the metal the usual bands are for: mild steel,
// coated or not.
func bandHolds(p *Piece) bool { return p.Metal == metal.MildSteel || p.Metal == metal.Galvanised }

// judgeHeat: plasma leaves no more heat in the work than today's way. It
// excludes no system. Where no band is held for today's way, it is not judged.
func judgeHeat(d *demand, _ *system.System) mark {
	today, _, held := band(d.job)
	if !d.job.Today.IsKnown() {
		return mark{verdict: NotKnown}
	}
	if !held {
		return mark{}
	}
	if size.PlasmaBand().High <= today.High {
		return mark{verdict: Met}
	}
	return mark{verdict: Borderline}
}

func heatInputs(d *demand, s *system.System) []Input {
	today, way, held := band(d.job)
	if !held {
		return nil
	}
	plasma := size.PlasmaBand()
	list := []Input{
		{Name: message.New("today's way"), Word: message.ID(way), From: Asked{Fact: FactToday}},
		figureInput("its heated band, at most", today.High, unit.Thickness),
		figureInput("hand plasma's, at most", plasma.High, unit.Thickness),
	}
	if zone, ok := heatedZone(d, s); ok {
		list = append(list, figureInput("worked out for the everyday cut in mild steel", zone, unit.Thickness))
	}
	return list
}

// heatedZone is how far beside the everyday cut mild steel changes its
// structure, worked out from the heat the cut leaves. Source: aws-wh-1 and
// wells-1952, from memory; it is shown beside the usual band, not instead.
func heatedZone(d *demand, s *system.System) (unit.Millimetre, bool) {
	t, _, _ := everyday(d, s) // what is not known is zero, and refused
	kerf, _ := size.Kerf(s.OutputMax)
	v, _ := size.Speed(s, s.OutputMax, t, LedAt(d.job))
	heat, _ := size.LeftInPlate(t, kerf, v)
	zone, err := size.HeatedZone(heat, t)
	return zone, err == nil
}
