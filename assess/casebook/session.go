package casebook

import (
	"errors"
	"math/rand/v2"
	"slices"

	"cutbrief/assess"
	"cutbrief/rules"
	"cutbrief/rules/system"
)

// Errors of Do. None of them costs a minute.
var (
	ErrOver     = errors.New("the customer has gone back to work")
	ErrNoStep   = errors.New("there is no question to it yet")
	ErrNotAsked = errors.New("that has not been asked yet")
	ErrNoNote   = errors.New("nothing is noted yet that could be repeated back")
	ErrNoPiece  = errors.New("there is no piece of that to hold a caliper to")
	ErrNoPlate  = errors.New("there is no such plate here")
)

// Turn is one act with what came of it.
type Turn struct {
	Act   Act
	Asked rules.Asked
	At    int // minutes gone before it
	Words string
}

// Session is one practice under way: a customer, the notes, and the minutes
// left. It is not safe for use by several at once.
type Session struct {
	Customer *Customer
	Offered  system.Range
	Notes    *assess.Visit // the trainee's
	Log      []Turn

	left  int
	heard map[rules.Asked]bool // the truth was said or seen
	asked map[rules.Asked]bool
	first map[rules.Asked]assess.Answer // the first note to each
	voice *voice
}

// Start begins a practice with the notes a rep has before the first question.
func Start(c *Customer, offered system.Range) *Session {
	return &Session{
		Customer: c, Offered: offered, Notes: c.met(), left: c.Minutes,
		heard: map[rules.Asked]bool{}, asked: map[rules.Asked]bool{}, first: map[rules.Asked]assess.Answer{},
		voice: &voice{rng: rand.New(rand.NewPCG(c.Seed, 0x6375747465)), manner: c.Manner, used: map[string]bool{}},
	}
}

// Left is how many minutes of patience are left.
func (s *Session) Left() int { return s.left }

// Used is how many are gone.
func (s *Session) Used() int { return s.Customer.Minutes - s.left }

// Over reports whether the customer has gone.
func (s *Session) Over() bool { return s.left == 0 }

// Opening is what the customer says first.
func (s *Session) Opening() string {
	if s.Customer.Opening != "" {
		return s.Customer.Opening
	}
	return s.voice.say("opening "+string(s.Customer.Manner), nil)
}

// Farewell is what the customer says when the patience is used up.
func (s *Session) Farewell() string { return s.voice.say("farewell", nil) }

// Steps are the questions that can matter, given the notes so far.
func (s *Session) Steps() []assess.Step {
	var list []assess.Step
	for _, step := range s.Notes.Steps() {
		if step.Question.Group != assess.GroupVisit {
			list = append(list, step)
		}
	}
	return list
}

// Note keeps what the trainee understood.
func (s *Session) Note(a assess.Answer) {
	if _, noted := s.first[a.Asked()]; !noted {
		s.first[a.Asked()] = a
	}
	s.Notes.Set(a)
}

// Asked reports whether a step was asked.
func (s *Session) Asked(a rules.Asked) bool { return s.asked[a] }

// Do does one act about a step and returns what the customer says to it. An
// error says why it cannot be done, and costs nothing.
func (s *Session) Do(act Act, step assess.Step) (string, error) {
	if s.Over() {
		return "", ErrOver
	}
	words, err := s.reply(act, step)
	if err != nil {
		return "", err
	}
	t := Turn{Act: act, At: s.Used(), Words: words}
	if step.Question != nil {
		t.Asked = step.Asked()
	}
	s.Log = append(s.Log, t)
	s.left = max(0, s.left-act.Minutes())
	return words, nil
}

func (s *Session) reply(act Act, step assess.Step) (string, error) {
	switch {
	case act == Plate, act == Breaker:
		return s.look(act)
	case step.Question == nil:
		return "", ErrNoStep
	case act == Ask:
		return s.ask(step), nil
	case act == Measure:
		return s.measure(step)
	case !s.asked[step.Asked()]:
		return "", ErrNotAsked
	case act == Repeat:
		return s.repeat(step)
	}
	return s.followUp(act, step), nil
}

// ask is the first answer to a question, or the same again.
func (s *Session) ask(step assess.Step) string {
	a, c := step.Asked(), s.Customer
	again := s.asked[a]
	s.asked[a] = true
	if own, has := c.Says[a]; has && !again {
		s.voice.used[own] = true
		s.heard[a] = s.heard[a] || c.plain(a)
		return own
	}
	truth, known := c.truth(a)
	switch {
	case step.Metal != "" && !slices.Contains(c.Facts.Metals(), step.Metal):
		return s.voice.say("not ours", step)
	case !known:
		s.heard[a] = true
		return s.voice.say("no idea", step)
	case s.heard[a] || c.plain(a):
		s.heard[a] = true
		return s.voice.tell(step, truth)
	case c.onlySeen(a.Fact):
		return s.voice.say("look "+string(a.Fact), step)
	}
	if wrong, has := c.Wrong[a]; has {
		return s.voice.slip(step, wrong)
	}
	return s.voice.unclear(step, truth)
}

// followUp is what asking again or explaining brings.
func (s *Session) followUp(act Act, step assess.Step) string {
	a := step.Asked()
	truth, known := s.Customer.truth(a)
	switch {
	case !known:
		return s.voice.say("no idea", step)
	case s.heard[a] && act == Explain:
		return s.voice.say("known already", step)
	case s.heard[a]:
		return s.voice.tell(step, truth)
	case s.Customer.clears(act, a.Fact):
		s.heard[a] = true
		return s.voice.clear(act, step, truth)
	case s.Customer.onlySeen(a.Fact):
		return s.voice.say("look "+string(a.Fact), step)
	}
	return s.voice.say("stubborn "+string(s.Customer.Manner), step)
}

// repeat is what the customer says to a note read aloud.
func (s *Session) repeat(step assess.Step) (string, error) {
	a := step.Asked()
	note, noted := s.Notes.Answer(a)
	if !noted || note.State == assess.Unknown {
		return "", ErrNoNote
	}
	truth, known := s.Customer.truth(a)
	switch {
	case !known:
		return s.voice.say("no idea", step), nil
	case !s.heard[a] && !s.Customer.clears(Repeat, a.Fact):
		return s.voice.say("stubborn "+string(s.Customer.Manner), step), nil
	case s.Customer.same(step, note):
		s.heard[a] = true
		return s.voice.say("yes", step), nil
	}
	s.heard[a] = true
	return s.voice.clear(Repeat, step, truth), nil
}

// measure holds a caliper to the piece.
func (s *Session) measure(step assess.Step) (string, error) {
	a := step.Asked()
	truth, known := s.Customer.truth(a)
	if !slices.Contains(caliper, a.Fact) || !known || isNone(truth) {
		return "", ErrNoPiece
	}
	s.heard[a] = true
	return s.voice.say("caliper", step, truth), nil
}

// look goes to a plate and reads all it says.
func (s *Session) look(act Act) (string, error) {
	facts, section := plate, "plate"
	if act == Breaker {
		facts, section = panel, "panel"
	}
	var list []string
	for _, f := range facts {
		a := rules.Asked{Fact: f}
		if truth, known := s.Customer.truth(a); known {
			s.heard[a] = true
			q, _ := assess.Find(f)
			list = append(list, q.Name+" "+spoken(q, truth))
		}
	}
	if len(list) == 0 {
		return "", ErrNoPlate
	}
	return s.voice.list(section, list), nil
}
