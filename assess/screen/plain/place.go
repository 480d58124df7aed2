package plain

import "strings"

// Mover is a Saver that can go on in another place: a folder, or a file that is
// not there yet. Nothing is written before the next save.
type Mover interface {
	Saver
	MoveTo(place string) error
}

// elsewhere is the place that a line names after a save that failed. At any
// other time such a line is an answer like any.
func (s *session) elsewhere(line string) (place string, named bool) {
	const words = "save in "
	if _, able := s.Saver.(Mover); !able || !s.changed || len(line) < len(words) {
		return "", false
	}
	return strings.TrimSpace(line[len(words):]), strings.EqualFold(line[:len(words)], words)
}

// keepIn goes on in another place and saves there.
func (s *session) keepIn(place string) {
	mover, _ := s.Saver.(Mover)
	if err := mover.MoveTo(place); err != nil {
		s.say("Not saved: %s.", outside(err.Error()))
		return
	}
	s.save()
	if !s.changed {
		s.say("Saved in %s.", outside(s.outcome.Path))
	}
}
