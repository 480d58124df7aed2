package demonstration

import (
	"math"
	"slices"

	"cutbrief/rules"
	"cutbrief/rules/cite"
	"cutbrief/rules/metal"
	"cutbrief/rules/size"
	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// situation is what the catalogue looks at: the job, the system shown, and the
// requirements to be proved.
type situation struct {
	job      *rules.Job
	system   *system.System // nil if none is recommended
	critical rules.Requirement
	ties     []rules.Requirement
	main     *rules.Piece // the metal that decided the size, nil if not known
}

func newSituation(job *rules.Job, result *rules.Result) situation {
	s := situation{job: job, critical: result.Critical.Requirement, ties: result.Critical.Tie}
	if result.First != nil {
		s.system = result.First.System
	}
	need, known := result.Need.Get()
	for i := range job.Pieces {
		if p := &job.Pieces[i]; known && p.Metal == need.Metal {
			s.main = p
		}
	}
	return s
}

// piece is one thing to cut.
type piece struct {
	metal     metal.ID
	thickness unit.Millimetre
}

// within reports whether p is no thicker than a capability in mild steel, give
// or take a nominal step.
func (s *situation) within(p piece, steel unit.Millimetre) bool {
	t, ok := s.asSteel(p)
	return ok && p.thickness > 0 && size.Compare(float64(t), float64(steel)) != size.TooSmall
}

// parts reports whether p comes apart, without the nominal step: beyond its
// severance a system is not shown off.
func (s *situation) parts(p piece) bool {
	t, ok := s.asSteel(p)
	return ok && p.thickness > 0 && t <= s.system.Severance
}

// asSteel is what a piece counts for in mild steel on this system; false for a
// metal without figures.
func (s *situation) asSteel(p piece) (unit.Millimetre, bool) {
	equivalence, _ := size.Equivalence(s.system, p.metal)
	factor, ok := equivalence.Get()
	return p.thickness * unit.Millimetre(factor), ok
}

// everyday is what is cut most days in the metal that decides.
func (s *situation) everyday() (piece, bool) {
	if s.main == nil {
		return piece{}, false
	}
	if t, ok := s.main.Everyday.Get(); ok {
		return piece{s.main.Metal, t}, true
	}
	t, ok := s.main.Thickest.Get()
	return piece{s.main.Metal, t}, ok
}

// thickest is the thickest regular clean cut in the metal that decides.
func (s *situation) thickest() (piece, bool) {
	if s.main == nil {
		return piece{}, false
	}
	if t, ok := s.main.Thickest.Get(); ok {
		return piece{s.main.Metal, t}, true
	}
	return s.everyday()
}

// sheet is the customer's own thin sheet, the thinnest everyday metal up to
// the limit, or else mild-steel sheet brought along.
func (s *situation) sheet() (piece, bool) {
	best := piece{metal.MildSteel, broughtSheet}
	own := false
	for i := range s.job.Pieces {
		t, _ := s.job.Pieces[i].Everyday.Get()
		if p := (piece{s.job.Pieces[i].Metal, t}); t <= thinMost && (!own || t < best.thickness) && s.within(p, s.system.Rated) {
			best, own = p, true
		}
	}
	return best, true
}

// Thin sheet, common practice, no source: tip on the work is at its best up to
// 3 mm. The sheet brought along is a common one.
const (
	thinMost     unit.Millimetre = 3
	broughtSheet unit.Millimetre = 2
)

// rarest is the rare thickest piece of all metals, as mild steel counts it.
func (s *situation) rarest() (piece, bool) {
	var best piece
	most := 0.0
	for i := range s.job.Pieces {
		p := &s.job.Pieces[i]
		t, _ := p.Rarest.Get()
		if steel, _ := s.asSteel(piece{p.Metal, t}); float64(steel) > most { // 0 where either is not known
			best, most = piece{p.Metal, t}, float64(steel)
		}
	}
	return best, most > 0
}

// cutsMetal reports whether the customer cuts that metal.
func (s *situation) cutsMetal(id metal.ID) bool {
	return slices.ContainsFunc(s.job.Pieces, func(p rules.Piece) bool { return p.Metal == id })
}

// angle is the customer's bevel angle from square, or the usual 45°.
func (s *situation) angle() unit.Degree {
	if a, ok := s.job.BevelAngle.Get(); ok && a > 0 && a <= steepest {
		return a
	}
	return steepest
}

const steepest unit.Degree = 45

// through is the metal along a tilted cut.
func through(t unit.Millimetre, a unit.Degree) unit.Millimetre {
	metal, err := size.TrueThickness(t, a)
	if err != nil {
		return unit.Millimetre(math.Inf(1))
	}
	return metal
}

// contains reports whether a known list holds v.
func contains[T comparable](list unit.Maybe[[]T], v T) bool {
	items, _ := list.Get()
	return slices.Contains(items, v)
}

// How the torch is set and held. All of it is common practice, no source, and
// the manual decides.
const (
	contactMost unit.Ampere = 40 // an open tip rests on the work up to here
	mediumMost  unit.Ampere = 80 // stand-off grows with the system from here on
)

var (
	leadAngle     = [2]unit.Degree{5, 10}
	trailingArc   = [2]unit.Degree{5, 10}
	standOffSmall = [2]unit.Millimetre{3, 6}  // up to mediumMost
	standOffLarge = [2]unit.Millimetre{5, 10} // above
)

// settingFor sets the torch for one piece: thin sheet turned down so that the
// tip rests on the work, everything else at full output.
func settingFor(s *system.System, p piece) OperatingPoint {
	set := OperatingPoint{Output: s.OutputMax, Lead: leadAngle, Trailing: trailingArc, Pressure: s.AirPressure, Through: p.thickness,
		Source: cite.Ref{Source: "practice-setting"}}
	if p.thickness <= thinMost {
		set.Output = max(s.OutputMin, min(contactMost, s.OutputMax))
	}
	set.OnWork = set.Output <= contactMost || s.ContactTip
	set.Shielded = set.OnWork && set.Output > contactMost
	if !set.OnWork {
		set.StandOff = standOffSmall
		if set.Output > mediumMost {
			set.StandOff = standOffLarge
		}
	}
	return set
}

// setting is how the torch is set for a row and its piece.
func (s *situation) setting(row *CatalogueCut, p piece) OperatingPoint {
	set := settingFor(s.system, p)
	if row.tilted {
		set.Through = through(p.thickness, s.angle())
	}
	set.Length = row.length
	if !row.noSpeed {
		set = s.paced(set, piece{p.metal, set.Through})
	}
	return set
}

// paced adds the travel speed to aim for, where the speed model gives one: for
// the metal along the cut, along an edge or template, at the setting's output;
// and the time for the length at that speed, in seconds.
// Source: size.Speed, from the system's own row.
// Check: 300 mm at 1000 mm/min take 18 s.
func (s *situation) paced(set OperatingPoint, p piece) OperatingPoint {
	steel, ok := s.asSteel(p)
	if !ok {
		return set
	}
	v, err := size.Speed(s.system, set.Output, steel, size.AlongEdge)
	if err != nil {
		return set
	}
	set.Speed = unit.Known(v)
	if set.Length > 0 {
		set.Seconds = unit.Known(unit.Second(float64(set.Length) / float64(v) * 60))
	}
	return set
}
