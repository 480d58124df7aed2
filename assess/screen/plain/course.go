package plain

import (
	"cutbrief/assess"
	texts "cutbrief/assess/screen/words"
	"cutbrief/rules"
)

// soFar is what the answers come to.
func (s *session) soFar() *rules.Result {
	job, _ := s.Visit.Job()
	r := rules.Evaluate(job, s.Range)
	return &r
}

// move goes on; false once there is no question left in that direction.
func (s *session) move(on move) bool {
	switch on {
	case stay:
		return true
	case toResult:
		return false
	case behind:
		return s.goBack()
	case pastGroup:
		s.putOff()
	case outOfGroup:
		s.skip()
	}
	if _, answered := s.Visit.Answer(s.step.Asked()); !answered && on != pastGroup {
		s.course.Leave(s.step) // one that is put off comes back
	}
	next, more := s.course.Next(s.Visit, s.step, s.soFar())
	if more {
		s.trail, s.step = append(s.trail, s.step.Asked()), next
	}
	return more
}

// goBack goes to the question asked before, else to the one before in the list.
func (s *session) goBack() bool {
	steps := s.Visit.Steps()
	at := s.place() - 1
	for len(s.trail) > 0 {
		last := s.trail[len(s.trail)-1]
		s.trail = s.trail[:len(s.trail)-1]
		if i := placeOf(steps, last); i >= 0 {
			at = i
			break
		}
	}
	if at < 0 || at >= len(steps) {
		return false
	}
	s.revisit(steps[at])
	return true
}

// revisit asks a question out of turn. Its group, if it was put off, is taken up
// again.
func (s *session) revisit(step assess.Step) {
	s.course.TakeUp(step.Question.Group)
	s.step = step
}

// putOff leaves the rest of the group open, to come back last.
func (s *session) putOff() {
	g := s.step.Question.Group
	s.say("%s.", texts.PutOff(g, s.course.PutOff(s.Visit, g), "back asks"))
}

// skip leaves the rest of the group out of this visit.
func (s *session) skip() {
	g := s.step.Question.Group
	var out []assess.Step
	for _, step := range s.Visit.Steps() {
		if _, answered := s.Visit.Answer(step.Asked()); !answered && step.Question.Group == g {
			out = append(out, step)
		}
	}
	s.Visit.Skip(g)
	s.say("%s. The list takes it back in.", texts.LeftOut(g, out))
	s.save()
}

// place is where the step stands among those that matter; 0 if it is not there.
func (s *session) place() int { return max(0, placeOf(s.Visit.Steps(), s.step.Asked())) }

// placeOf is where a question stands among steps, −1 if it is not there.
func placeOf(steps []assess.Step, a rules.Asked) int {
	for i, step := range steps {
		if step.Asked() == a {
			return i
		}
	}
	return -1
}
