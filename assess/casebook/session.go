package casebook

import (
	"math/rand/v2"
	"slices"

	"cutbrief/assess"
	"cutbrief/rules"
	"cutbrief/rules/message"
	"cutbrief/rules/system"
)

// What Do refuses. None of it costs a minute.
var (
	ErrOver     = message.Errorf("the customer has gone back to work")
	ErrNoStep   = message.Errorf("there is no question to it yet")
	ErrNotAsked = message.Errorf("that has not been asked yet")
	ErrNoNote   = message.Errorf("nothing is noted yet that could be repeated back")
	ErrNoPiece  = message.Errorf("there is no piece of that to hold a caliper to")
	ErrNoPlate  = message.Errorf("there is no such plate here")
)

// Turn is one act with when it was done.
type Turn struct {
	Act   Act
	Asked rules.Asked
	At    int // minutes gone before it
}

// Session is one practice under way: a customer, the notes, and the minutes
// left. It is not safe for use by several at once.
type Session struct {
	Customer *Customer
	Offered  system.Range
	Notes    *assess.Visit // the trainee's
	Log      []Turn
	Left     int // minutes of patience

	heard   map[rules.Asked]bool // the truth was said or seen
	asked   map[rules.Asked]bool
	speaker speaker
}

// Start begins a practice with the notes a rep has before the first question.
func Start(c *Customer, offered system.Range) *Session {
	return &Session{
		Customer: c, Offered: offered, Notes: c.introduced(), Left: c.Minutes,
		heard: map[rules.Asked]bool{}, asked: map[rules.Asked]bool{},
		speaker: speaker{c, rand.New(rand.NewPCG(c.Seed, 0x6375747465)), map[string]bool{}},
	}
}

// Used is how many are gone.
func (s *Session) Used() int { return s.Customer.Minutes - s.Left }

// Over reports whether the customer has gone.
func (s *Session) Over() bool { return s.Left == 0 }

// Opening is what the customer says first.
func (s *Session) Opening() message.Message {
	if own := s.Customer.Opening; own != "" {
		return s.Customer.prose(own)
	}
	return s.remark("opening "+string(s.Customer.Manner), assess.Step{})
}

// Farewell is what the customer says when the patience is used up.
func (s *Session) Farewell() message.Message { return s.remark("farewell", assess.Step{}) }

// remark is something said that holds no answer.
func (s *Session) remark(section string, about assess.Step) message.Message {
	return s.speaker.say(section, about, message.Message{})
}

// Steps are the questions that can matter, given the notes so far.
func (s *Session) Steps() []assess.Step {
	return slices.DeleteFunc(s.Notes.Steps(), func(step assess.Step) bool { return step.Question.Group == assess.GroupVisit })
}

// Asked reports whether a step was asked.
func (s *Session) Asked(a rules.Asked) bool { return s.asked[a] }

// Do does one act about a step and returns what the customer says to it.
func (s *Session) Do(act Act, step assess.Step) (message.Message, error) {
	said, err := s.reply(act, step)
	if err == nil {
		t := Turn{Act: act, At: s.Used()}
		if step.Question != nil {
			t.Asked = step.Asked()
		}
		s.Log = append(s.Log, t)
		s.Left = max(0, s.Left-act.Minutes())
	}
	return said, err
}

func (s *Session) reply(act Act, step assess.Step) (message.Message, error) {
	switch {
	case s.Over():
		return message.Message{}, ErrOver
	case act == Plate, act == Breaker:
		return s.readOff(act)
	case step.Question == nil:
		return message.Message{}, ErrNoStep
	}
	a := step.Asked()
	note, noted := s.Notes.Answer(a)
	truth, known := s.Customer.truth(a)
	switch {
	case act == Ask:
		return s.ask(step), nil
	case act == Measure && (!slices.Contains(act.shows(), a.Fact) || !known || isNone(truth)):
		return message.Message{}, ErrNoPiece
	case act == Measure:
		s.heard[a] = true
		return s.speaker.say("caliper", step, s.Customer.answer(step.Question, truth)), nil
	case !s.asked[a]:
		return message.Message{}, ErrNotAsked
	case act == Repeat && (!noted || note.State == assess.Unknown):
		return message.Message{}, ErrNoNote
	}
	return s.followUp(act, step, note), nil
}

// ask is the first answer to a question, or the same again.
func (s *Session) ask(step assess.Step) message.Message {
	a, c := step.Asked(), s.Customer
	again := s.asked[a]
	s.asked[a] = true
	truth, known := c.truth(a)
	own, has := c.Says[a]
	wrong, errs := c.Wrong[a]
	switch {
	case has && !again:
		said := c.prose(own)
		s.speaker.fresh(said)
		s.heard[a] = s.heard[a] || c.plain(a)
		return said
	case step.Metal != "" && !slices.Contains(c.Facts.Metals(), step.Metal):
		return s.remark("not ours", step)
	case !known:
		s.heard[a] = true
		return s.remark("no idea", step)
	case s.heard[a] || c.plain(a):
		s.heard[a] = true
		return s.speaker.tell(step, truth)
	case c.onPlate(a.Fact):
		return s.remark("look "+string(a.Fact), step)
	case errs:
		section := "wrong " + string(c.Manner)
		if phrases()[section] == nil {
			return s.speaker.tell(step, wrong)
		}
		return s.speaker.say(section, step, c.label(step.Question, wrong))
	}
	return s.speaker.evade(step, truth)
}

// followUp is what asking again, explaining or repeating back brings. note is
// what is repeated back.
func (s *Session) followUp(act Act, step assess.Step, note assess.Answer) message.Message {
	a := step.Asked()
	truth, known := s.Customer.truth(a)
	heard, clears := s.heard[a], s.Customer.clears(act, a.Fact)
	s.heard[a] = heard || known && clears
	switch {
	case !known:
		return s.remark("no idea", step)
	case heard && act == Explain:
		return s.remark("known already", step)
	case act == Repeat && (heard || clears) && s.Customer.same(step, note):
		return s.remark("yes", step)
	case heard && act == Again, (heard || clears) && isNone(truth):
		return s.speaker.tell(step, truth)
	case heard || clears:
		return s.speaker.say("clear "+string(act), step, s.Customer.answer(step.Question, truth))
	case act != Repeat && s.Customer.onPlate(a.Fact):
		return s.remark("look "+string(a.Fact), step)
	}
	return s.remark("stubborn "+string(s.Customer.Manner), step)
}

// readOff goes to a plate and reads all it says.
func (s *Session) readOff(act Act) (message.Message, error) {
	var list []message.Message
	for _, f := range act.shows() {
		step := stepOf(rules.Asked{Fact: f})
		if truth, known := s.Customer.truth(step.Asked()); known {
			s.heard[step.Asked()] = true
			list = append(list, message.New("{1} {2}", stepName(step), s.Customer.answer(step.Question, truth)))
		}
	}
	if len(list) == 0 {
		return message.Message{}, ErrNoPlate
	}
	return s.speaker.say(string(act), assess.Step{}, message.Join("; ", list...)), nil
}
