package casebook

import (
	"flag"
	"math/rand/v2"
	"reflect"
	"slices"
	"strings"
	"sync"
	"testing"
	"unicode"

	"pgregory.net/rapid"

	"cutbrief/assess"
	"cutbrief/rules"
	"cutbrief/rules/message"
	"cutbrief/rules/system"
)

// Every made customer is consistent and solvable: nothing in the facts is
// contradicted, the rules come to a firm recommendation from them, and a rep who
// always asks what could still change it gets there within the patience.
func TestMadeCustomersAreSolvable(t *testing.T) {
	flag.Set("rapid.checks", "25") // each makes a customer twice and checks it
	made := 0
	rapid.Check(t, func(t *rapid.T) {
		seed, level := rapid.Uint64().Draw(t, "seed"), rapid.IntRange(1, 5).Draw(t, "level")
		c, ok := Make(seed, level, system.Demo())
		if !ok {
			t.Fatalf("seed %d, level %d: none was found", seed, level)
		}
		made++
		for _, f := range Check(&c, system.Demo()) {
			t.Errorf("seed %d, level %d: %s", seed, level, f)
		}
		r := rules.Evaluate(c.job(), system.Demo())
		if r.Outcome != rules.Recommended || !r.Firm || c.Facts.Demo != true || c.Level != level {
			t.Errorf("seed %d: %s, firm %v", seed, r.Outcome, r.Firm)
		}
		again, _ := Make(seed, level, system.Demo())
		if !reflect.DeepEqual(again, c) {
			t.Errorf("seed %d gives two customers", seed)
		}
	})
	if made == 0 {
		t.Error("none was made")
	}
}

// everyone is the built-in customers and some made ones.
func everyone(testing.TB) []Customer { return slices.Clone(all()) }

var all = sync.OnceValue(func() []Customer {
	list := Cases()
	for seed := range uint64(10) {
		if c, ok := Make(seed, 1+int(seed)%5, system.Demo()); ok {
			list = append(list, c)
		}
	}
	return list
})

// No two answers are alike in a session, whatever is done in it and however
// long it takes; and the same number gives the same words.
func TestNoTwoAnswersAreAlike(t *testing.T) {
	for _, c := range everyone(t) {
		c.Minutes = minutesMost
		words := chatter(&c)
		heard := map[string]bool{}
		for _, m := range words {
			w := m.String()
			if heard[w] {
				t.Errorf("%s, seed %d: %q is said twice", c.Name, c.Seed, w)
			}
			heard[w] = true
			if strings.Contains(w, "{") || strings.TrimSpace(w) == "" {
				t.Errorf("%s: %q", c.Name, w)
			}
		}
		if !reflect.DeepEqual(words, chatter(&c)) {
			t.Errorf("%s: the same number gives other words", c.Name)
		}
	}
}

// chatter does what a restless trainee would until the customer leaves.
func chatter(c *Customer) []message.Message {
	s := Start(c, system.Demo())
	said := []message.Message{s.Opening()}
	rng := rand.New(rand.NewPCG(7, 7))
	steps := s.Customer.Facts.Steps()
	for !s.Over() {
		step := steps[rng.IntN(len(steps))]
		if a, known := c.truth(step.Asked()); known && rng.IntN(2) == 0 {
			s.Notes.Set(a)
		}
		if words, err := s.Do(Acts()[rng.IntN(len(Acts()))], step); err == nil {
			said = append(said, words)
		}
	}
	return append(said, s.Farewell())
}

// What is unclear is first answered without a figure, and a good follow-up
// brings the truth; so it does of what is first said wrong.
func TestAFollowUpBringsTheTruth(t *testing.T) {
	for _, c := range everyone(t) {
		for _, a := range c.toFollowUp() {
			s, step := Start(&c, system.Demo()), stepOf(a)
			first, err := s.Do(Ask, step)
			if err != nil {
				t.Fatal(err)
			}
			truth, _ := c.truth(a)
			said := c.answer(step.Question, truth).String()
			if c.unclear(a) && strings.ContainsFunc(first.String(), unicode.IsDigit) || s.heard[a] {
				t.Errorf("%s: %s is given away: %q", c.Name, step.Name(), first)
			}
			if wrong, has := c.Wrong[a]; has {
				s.Notes.Set(wrong)
			}
			act, ok := c.clearedBy(a.Fact)
			if !ok {
				t.Errorf("%s: nothing clears up %s", c.Name, step.Name())
				continue
			}
			if act == Repeat && len(c.Wrong) == 0 {
				s.Notes.Set(truth)
			}
			brought, err := s.Do(act, step)
			if err != nil || !s.heard[a] || !strings.Contains(strings.ToLower(brought.String()), strings.ToLower(said)) {
				t.Errorf("%s: %s of %s brings %q, %v; true is %q", c.Name, act, step.Name(), brought, err, said)
			}
		}
	}
}

// Whoever believes all that is first heard comes to another system, or to
// something else that decides.
func TestBelievingTheFirstAnswersCosts(t *testing.T) {
	for _, c := range everyone(t) {
		if !misleads(&c, system.Demo()) {
			t.Errorf("%s, seed %d: nothing that is first heard matters", c.Name, c.Seed)
		}
	}
}

// The sections that tell nothing yet hold no figure and no place for one.
func TestVagueWordsHoldNoFigure(t *testing.T) {
	small := []string{"one ", "two ", "three", "four", "five", "six", "seven", "eight", "nine", "ten ", "eleven", "twelve"}
	for section, list := range phrases() {
		if !strings.HasPrefix(section, "vague") {
			continue
		}
		for _, id := range list {
			line := string(id)
			for _, word := range small {
				if strings.Contains(strings.ToLower(line)+" ", " "+word) && word != "one " {
					t.Errorf("%s: %q", section, line)
				}
			}
			if strings.Contains(line, "{1}") || strings.Contains(line, "{3}") || strings.ContainsFunc(line, unicode.IsDigit) {
				t.Errorf("%s: %q", section, line)
			}
		}
	}
}

// perfect is a practice by the good way through, every answer noted as it is.
func perfect(c *Customer) (*Session, Decision) {
	s := Start(c, system.Demo())
	r := NewRoute(c, system.Demo())
	for _, a := range r.Asked {
		step := stepOf(a)
		if c.onPlate(a.Fact) && !s.heard[a] {
			act, _ := c.clearedBy(a.Fact)
			s.Do(act, step)
		} else if !s.heard[a] {
			s.Do(Ask, step)
		}
		truth, known := c.truth(a)
		if !known {
			truth = assess.Answer{Question: a.Fact, Metal: a.Metal, State: assess.Unknown}
		}
		s.Notes.Set(truth)
		if known && !s.heard[a] {
			act, _ := c.clearedBy(a.Fact)
			s.Do(act, step)
		}
	}
	truth := rules.Judge(c.job(), system.Demo())
	d := Decision{Decides: truth.Critical.Requirement, System: firstOf(&truth)}
	if truth.First != nil {
		for _, cut := range programme(c.job(), truth, d.System).Cuts {
			if cut.Proves == d.Decides {
				d.Cuts = append(d.Cuts, cut.ID)
				break
			}
		}
	}
	return s, d
}

// Whoever takes the good way through is in time, is right about everything that
// matters, and is told of no miss that costs the system or what decides.
func TestTheGoodWayThroughIsMarkedAsGood(t *testing.T) {
	for _, c := range everyone(t) {
		s, d := perfect(&c)
		m := s.Mark(d)
		if !m.RightSystem || !m.RightDecides || !m.Proven || len(m.Safety) > 0 || len(m.Let) > 0 || s.Used() > c.Minutes || s.Used() > m.Route.Minutes {
			t.Errorf("%s seed %d: %s forgotten %v, let %v, route %d", c.Name, c.Seed, m.Summary(), m.Safety, m.Let, m.Route.Minutes)
		}
		for _, i := range m.Items {
			if i.Effect.Level > ChangesVerdict && i.State == WrongFact {
				t.Errorf("%s: %s", c.Name, i.Effect.Sentence())
			}
		}
	}
}
