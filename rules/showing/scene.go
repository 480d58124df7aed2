package showing

import (
	"math"

	"cutbrief/rules"
	"cutbrief/rules/metal"
	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// scene is what the catalogue looks at: the job, the system shown, and the
// requirements to be proved.
type scene struct {
	job      *rules.Job
	system   *system.System // nil if none is recommended
	critical rules.Requirement
	ties     []rules.Requirement
	main     *rules.Piece // the metal that decided the size, nil if not known
}

func newScene(job *rules.Job, result *rules.Result) scene {
	s := scene{job: job, critical: result.Critical.Requirement, ties: result.Critical.Tie}
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

// limit turns a capability in mild steel into the same in another metal: the
// system's own rating in that metal takes precedence over the list's factor.
// It reports false for a metal without figures.
func (s *scene) limit(steel unit.Millimetre, id metal.ID) (unit.Millimetre, bool) {
	if own, ok := s.system.PerMetal[id]; ok && s.system.Rated > 0 {
		return steel * own / s.system.Rated, true
	}
	m, _ := metal.Find(id)
	factor, ok := m.Equivalence.Get()
	if !ok || factor <= 0 {
		return 0, false
	}
	return steel / unit.Millimetre(factor), true
}

// within reports whether p is no thicker than a capability in mild steel.
func (s *scene) within(p piece, steel unit.Millimetre) bool {
	most, ok := s.limit(steel, p.metal)
	return ok && p.thickness > 0 && p.thickness <= most*(1+nominalStep)
}

// nominalStep: 12 mm and 1/2 in are one size in the trade. Common practice, no
// source.
const nominalStep = 0.06

// pierce is the thickness the system pierces: half the clean maximum where no
// figure is given. Common practice, no source.
func (s *scene) pierce() unit.Millimetre { return s.system.Pierce.Or(s.system.CleanMax / 2) }

// everyday is what is cut most days in the metal that decides.
func (s *scene) everyday() (piece, bool) {
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
func (s *scene) thickest() (piece, bool) {
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
func (s *scene) sheet() piece {
	best := piece{metal.MildSteel, broughtSheet}
	own := false
	for i := range s.job.Pieces {
		t, ok := s.job.Pieces[i].Everyday.Get()
		if ok && t > 0 && t <= thinMost && (!own || t < best.thickness) && s.within(piece{s.job.Pieces[i].Metal, t}, s.system.Rated) {
			best, own = piece{s.job.Pieces[i].Metal, t}, true
		}
	}
	return best
}

// Thin sheet, common practice, no source: tip on the work is at its best up to
// 3 mm. The sheet brought along is a common one.
const (
	thinMost     unit.Millimetre = 3
	broughtSheet unit.Millimetre = 2
)

// rarest is the rare thickest piece of all metals, as mild steel counts it.
func (s *scene) rarest() (piece, bool) {
	var best piece
	most := 0.0
	for i := range s.job.Pieces {
		p := &s.job.Pieces[i]
		t, ok := p.Rarest.Get()
		one, cuttable := s.limit(1, p.Metal)
		if ok && cuttable && float64(t/one) > most {
			best, most = piece{p.Metal, t}, float64(t/one)
		}
	}
	return best, most > 0
}

// cutsMetal reports whether the customer cuts that metal.
func (s *scene) cutsMetal(id metal.ID) bool {
	for i := range s.job.Pieces {
		if s.job.Pieces[i].Metal == id {
			return true
		}
	}
	return false
}

// angle is the customer's bevel angle from square, or the usual 45°.
func (s *scene) angle() unit.Degree {
	if a, ok := s.job.BevelAngle.Get(); ok && a > 0 && a <= steepest {
		return a
	}
	return steepest
}

const steepest unit.Degree = 45

// through is the metal along a tilted cut: t/cos a, in mm. Check: 6 mm at 45°
// is 8.485 mm.
func through(t unit.Millimetre, a unit.Degree) unit.Millimetre {
	return t / unit.Millimetre(math.Cos(float64(a)*math.Pi/180))
}

// contains reports whether a known list holds v.
func contains[T comparable](list unit.Maybe[[]T], v T) bool {
	items, _ := list.Get()
	for _, item := range items {
		if item == v {
			return true
		}
	}
	return false
}
