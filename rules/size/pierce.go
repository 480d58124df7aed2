package size

import (
	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// pierceShare is the part of the clean maximum that a system pierces where its
// row does not say. Common practice, no source.
const pierceShare = 0.5

// Pierce returns the thickest mild steel in mm a system starts in away from an
// edge: the row's own figure, or half of the clean maximum.
//
// Valid for a row with a clean maximum above 0. Source: rating-plate where
// given, else practice. Check: clean maximum 20 mm, nothing given → 10 mm.
func Pierce(s *system.System) (unit.Millimetre, error) {
	if t, ok := s.Pierce.Get(); ok {
		return t, within("pierce thickness", float64(t), 0, float64(s.Severance), "mm")
	}
	if !(s.CleanMax > 0) {
		return 0, ErrRow
	}
	return s.CleanMax * pierceShare, nil
}
