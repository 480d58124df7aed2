package demonstration

import (
	"cutbrief/rules"
	"cutbrief/rules/message"
	"cutbrief/rules/metal"
	"cutbrief/rules/size"
	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// need is one precondition of a cut: on the system, the metal, the thickness
// or the site. A thickness or a way of taking fume that is not known does not
// hold; a place is taken for open until it is told to be closed, as the cautions
// and the checklist ask about it in any case.
type need struct {
	words message.ID // what must hold, after "it needs "
	holds func(*situation, piece) bool
}

var (
	lowOutput = need{"an output low enough for an open tip to rest on the work",
		func(s *situation, _ piece) bool { return turnsDown(s.system) }}
	withinRated = need{"metal no thicker than the system is rated for",
		func(s *situation, p piece) bool { return s.within(p, s.system.Rated) }}
	withinClean = need{"metal no thicker than the system cuts clean",
		func(s *situation, p piece) bool { return s.within(p, s.system.CleanMax) }}
	withinPierce = need{"metal no thicker than the system pierces",
		func(s *situation, p piece) bool { return s.within(p, s.pierce()) }}
	withinSever = need{"metal no thicker than the system parts",
		func(s *situation, p piece) bool { return s.parts(p) }}
	withinTilted = need{"a bevel whose true thickness the system cuts clean",
		func(s *situation, p piece) bool {
			return s.within(piece{p.metal, through(p.thickness, s.angle())}, s.system.CleanMax)
		}}
	arcHolds = need{"a system that holds or relights its arc across gaps",
		func(s *situation, _ piece) bool { return s.system.HoldsGaps }}
	canGouge = need{"a system with a gouging process in its manual",
		func(s *situation, _ piece) bool { return s.system.Gouges }}
	sheetOrRound = need{"a customer who cuts sheet or circles",
		func(s *situation, _ piece) bool { return cutsSheet(s) || contains(s.job.Features, rules.Circles) }}
	todayHere = need{"today's way standing in the shop, and able to make this cut",
		func(s *situation, p piece) bool { return todayStands(s, p) }}
	openPlace = need{"a place that is no tank, pit or closed room",
		func(s *situation, _ piece) bool { return s.job.HotWork.Or("") != rules.HotWorkClosed }}
	clearFloor = need{"a floor where what burns has been moved away",
		func(s *situation, _ piece) bool { return s.job.HotWork.Or("") != rules.HotWorkSensitive }}
	fumeTaken = need{"extraction at the cut or a place outdoors, and that is not known so far",
		func(s *situation, _ piece) bool { return takesFume(s) }}
)

// turnsDown reports whether the system's output goes low enough for an open
// tip on the work.
func turnsDown(s *system.System) bool { return s.OutputMin <= contactMost }

// takesFume reports whether fume is known to be taken away at the cut.
func takesFume(s *situation) bool {
	v := s.job.Ventilation.Or("")
	return v == rules.VentExtract || v == rules.VentOutside
}

// smokes reports whether a metal's fume is worse than mild steel's.
func smokes(id metal.ID) bool { return id != metal.MildSteel && id != metal.CastIron }

// cutsSheet reports whether thin sheet is among the customer's everyday work.
func cutsSheet(s *situation) bool {
	for i := range s.job.Pieces {
		if t, ok := s.job.Pieces[i].Everyday.Get(); ok && t > 0 && t <= thinMost {
			return true
		}
	}
	return false
}

func startsInside(s *situation) bool {
	start := s.job.Start.Or("")
	return start == rules.InPlate || start == rules.Anywhere || contains(s.job.Features, rules.Holes)
}

// features: the customer's work holds that feature.
func features(f rules.Feature) func(*situation) bool {
	return func(s *situation) bool { return contains(s.job.Features, f) }
}

func always(*situation) bool { return true }

func goesToTheWork(s *situation) bool {
	return contains(s.job.Places, rules.InPlace) || contains(s.job.Places, rules.UpHigh) || contains(s.job.Places, rules.Field)
}

// cutsCoated: coated metal is their work, or steel that has stood outdoors.
func cutsCoated(s *situation) bool { return s.cutsMetal(metal.Galvanised) || goesToTheWork(s) }

// todayStands: a way of today stands in the shop and makes that cut, so that it
// can be shown beside.
func todayStands(s *situation, p piece) bool {
	today, _ := s.job.Today.Get()
	for _, way := range today {
		if way != rules.SentOut && way != rules.OtherWay && makes(way, p) {
			return true
		}
	}
	return false
}

// makes reports whether nothing speaks against a way in that piece: the metal
// for gas, the thickness for a shear or nibbler, up to a nominal step.
func makes(way rules.Process, p piece) bool {
	if way == rules.OxyFuel {
		return rules.GasCuts(p.metal)
	}
	end, held := rules.ToolLimit(way, p.metal)
	return !held || size.Compare(float64(p.thickness), float64(end)) != size.TooSmall
}

// sheet is the customer's own thin sheet, or else common sheet brought along.
func sheet(s *situation) (piece, bool) { return s.sheet(), true }

// pierced is the everyday piece, or the thickest they pierce if it is thinner,
// or sheet where neither starts well.
func pierced(s *situation) (piece, bool) {
	p, ok := s.everyday()
	if s.main != nil {
		if t, told := s.main.Pierced.Get(); told && t > 0 && t < p.thickness {
			p.thickness = t
		}
	}
	if ok && !withinPierce.holds(s, p) {
		return s.sheet(), true // a hole that starts well in thinner metal
	}
	return p, ok
}

// bevelPlate is 6 mm mild steel: thick enough to show the face, thin enough
// for most systems at 45°.
func bevelPlate(*situation) (piece, bool) { return piece{metal.MildSteel, 6}, true }

// mesh is common expanded metal in mild steel.
func mesh(*situation) (piece, bool) { return piece{metal.MildSteel, 3}, true }

// coated is the customer's own coated steel, or their mild steel as it stands
// outdoors; none where the everyday cut is in it anyway.
func coated(s *situation) (piece, bool) {
	for _, id := range []metal.ID{metal.Galvanised, metal.MildSteel} {
		if p, ok := s.daily(id); ok && (id != metal.Galvanised || s.main == nil || s.main.Metal != id) {
			return p, true
		}
	}
	return piece{}, false
}

// hardMetal is the customer's stainless or aluminium beside the metal of the
// everyday cut.
func hardMetal(s *situation) (piece, bool) {
	for _, id := range []metal.ID{metal.Stainless, metal.Aluminium} {
		if p, ok := s.daily(id); ok && s.main != nil && s.main.Metal != id {
			return p, true
		}
	}
	return piece{}, false
}

// daily is what is cut most days in one metal, else the thickest regular cut.
func (s *situation) daily(id metal.ID) (piece, bool) {
	for i := range s.job.Pieces {
		p := &s.job.Pieces[i]
		if p.Metal != id {
			continue
		}
		for _, told := range []unit.Maybe[unit.Millimetre]{p.Everyday, p.Thickest} {
			if t, ok := told.Get(); ok && t > 0 {
				return piece{id, t}, true
			}
		}
	}
	return piece{}, false
}
