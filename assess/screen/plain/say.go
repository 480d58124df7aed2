package plain

import (
	"fmt"
	"strconv"
	"strings"

	"cutbrief/assess"
	"cutbrief/assess/sanitize"
	texts "cutbrief/assess/screen/words"
)

// question prints the step: what is asked, why, what can be said, and what is
// stored already.
func (s *session) question() {
	q := s.step.Question
	at, of := texts.Place(s.Visit.Steps(), s.step)
	s.say("\n%s, %d of %d", texts.GroupTitle(q.Group), at, of)
	s.say("%s", s.step.Text())
	s.say("%s", q.Why)
	s.offer()
	s.stored()
	if s.Visit.Open() > 0 && s.Visit.Settled(s.soFar()) {
		s.say("%s: say result", texts.Settled)
	}
	fmt.Fprint(s.out, "> ")
}

// offer says how the question can be answered.
func (s *session) offer() {
	q := s.step.Question
	for i, o := range s.Visit.Options(s.step) {
		s.say("%d. %s", i+1, o.Text)
	}
	switch q.Form {
	case assess.FormOne:
		s.say("Say one number.")
	case assess.FormSeveral:
		s.say("Say one or more numbers, such as 1, 3.")
	case assess.FormLong:
		s.say("Such as: %s", q.Example)
		s.say("As many lines as you like; a line with a single dot ends it.")
	default:
		s.say("Such as: %s", q.Example)
	}
}

// stored says what is answered already, and what an empty line would do.
func (s *session) stored() {
	a, has := s.Visit.Answer(s.step.Asked())
	usual := s.Suggest[s.step.Question.ID]
	switch {
	case has && a.State == assess.Unknown:
		s.say("So far: not known. An empty line leaves it so.")
	case has:
		s.say("So far: %s (%s). An empty line keeps it.", texts.Marked(s.step.Question, a), a.State)
	case usual != "":
		s.say("An empty line takes: %s", s.usually(usual))
	}
	if o, offered := s.Visit.Offered(s.step); offered && !has {
		s.say("= takes %s: %s", texts.SaidSo(s.step.Question, o.Text()), o.Why)
	}
	if a.Note != "" {
		s.say("Note: %s", outside(a.Note))
	}
}

// usually is what is taken for an empty line, as it is read.
func (s *session) usually(usual string) string {
	for _, o := range s.Visit.Options(s.step) {
		if o.ID == usual {
			return string(o.Text)
		}
	}
	return outside(usual)
}

func (s *session) help() {
	q := s.step.Question
	if q.Help != "" {
		s.say("%s", q.Help)
	} else {
		s.say("%s", q.Why)
	}
	s.say("Such as: %s", q.Example)
	fmt.Fprint(s.out, "> ")
}

// list prints every question with its state, and the groups left out.
func (s *session) list() {
	group := assess.Group("")
	for i, step := range s.Visit.Steps() {
		if step.Question.Group != group {
			group = step.Question.Group
			s.say("%s", texts.GroupTitle(group))
		}
		s.say("%d. %s: %s", i+1, step.Name(), s.state(step))
	}
	for i, g := range s.Visit.Skipped {
		s.say("Left out: %s. Say go %d to take it back in.", texts.GroupTitle(g), len(s.Visit.Steps())+1+i)
	}
	s.say("Say go and a number to go to a question.")
	fmt.Fprint(s.out, "> ")
}

func (s *session) state(step assess.Step) string {
	a, has := s.Visit.Answer(step.Asked())
	switch {
	case !has && step.Question.Optional:
		return "optional, not answered"
	case !has:
		return "open"
	case a.State == assess.Unknown:
		return "not known"
	}
	return fmt.Sprintf("%s (%s)", texts.Marked(step.Question, a), a.State)
}

// jump goes to the question with that number in the list; false if there is
// none.
func (s *session) jump(number string) bool {
	n, _ := strconv.Atoi(number)
	steps := s.Visit.Steps()
	if n >= 1 && n <= len(steps) {
		s.revisit(steps[n-1])
		return true
	}
	if g := n - len(steps) - 1; g >= 0 && g < len(s.Visit.Skipped) {
		return s.takeBackIn(s.Visit.Skipped[g])
	}
	s.say("There is no question %s.", outside(number))
	fmt.Fprint(s.out, "> ")
	return false
}

// takeBackIn asks a skipped group after all.
func (s *session) takeBackIn(g assess.Group) bool {
	s.Visit.Ask(g)
	s.course.TakeUp(g)
	s.save()
	for _, step := range s.Visit.Steps() {
		if step.Question.Group == g {
			s.step = step
			return true
		}
	}
	return false
}

// note keeps a note beside the answer; a question without one counts as not
// known until it is answered.
func (s *session) note(text string) {
	a, has := s.Visit.Answer(s.step.Asked())
	if text = strings.TrimSpace(text); text == "" {
		s.say("Say note and then the text.")
		fmt.Fprint(s.out, "> ")
		return
	}
	if !has {
		a = assess.NotKnown(s.step)
		s.say("Noted. The question counts as not known until it is answered.")
	} else {
		s.say("Noted.")
	}
	a.Note = sanitize.Lines(text)
	s.Visit.Set(a)
	s.save()
	fmt.Fprint(s.out, "> ")
}

// setHow says how the answer is known, the stored one or the next one.
func (s *session) setHow(h assess.State) {
	a, has := s.Visit.Answer(s.step.Asked())
	if !has || a.State == assess.Unknown {
		s.how[s.step] = h
		s.say("The answer will be kept as %s.", h)
	} else {
		a.State = h
		s.Visit.Set(a)
		s.say("Kept as %s.", h)
		s.save()
	}
	fmt.Fprint(s.out, "> ")
}

func (s *session) clear() {
	if _, has := s.Visit.Answer(s.step.Asked()); has {
		s.Visit.Clear(s.step.Asked())
		s.say("The answer is taken back.")
		s.save()
	} else {
		s.say("There is no answer to take back.")
	}
	fmt.Fprint(s.out, "> ")
}
