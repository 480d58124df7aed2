package casebook

import (
	"fmt"
	"slices"
	"strconv"

	"cutbrief/assess"
	"cutbrief/report"
	"cutbrief/rules"
	"cutbrief/rules/message"
)

// Decision is what the trainee concludes.
type Decision struct {
	Decides rules.Requirement
	System  string   // System.ID; "" says that none fits
	Cuts    []string // of the demonstration, in the order shown
}

// State says how one fact came out.
type State message.ID

// The states of a fact.
const (
	Right     State = "right"
	WrongFact State = "wrong"        // noted, and not so
	NotAsked  State = "not asked"    // no note
	LeftOpen  State = "not answered" // noted as not known, though it can be learned
)

// Item is one fact with how it came out and what a miss could have cost.
type Item struct {
	Asked  rules.Asked
	Name   message.Message
	State  State
	Noted  message.Message // as the trainee has it, empty if not
	Truth  message.Message
	Effect Effect
}

// Tally is how often something came out right.
type Tally struct {
	Right int `json:"right"`
	Of    int `json:"of"`
}

func (t Tally) share() float64 {
	if t.Of == 0 {
		return 0
	}
	return float64(t.Right) / float64(t.Of)
}

// Mark is the page at the end of a practice: no score, but what happened and
// what it would have led to.
type Mark struct {
	Customer *Customer
	Decision Decision
	Used     int // minutes
	Acts     int

	Items   []Item
	System  []message.Message // whether the system is right, and what it would have meant
	Decides []message.Message
	Showing []message.Message
	Order   []message.Message
	Caught  []message.Message // unclear or wrong answers that were cleared up
	Let     []message.Message // those that were not
	Safety  []message.Message // questions of safety forgotten
	Route   Route
	Skills  map[Skill]Tally
	Next    Skill // to practise next

	RightSystem, RightDecides, Proven bool
}

// marking is a mark under way, with what it is made from.
type marking struct {
	Mark
	of    *Session
	truth rules.Result // of the facts
	notes rules.Result // of the trainee's notes
}

// Mark judges a practice by the rules: the trainee's understanding against what
// is true. It changes nothing in the session.
func (s *Session) Mark(d Decision) Mark {
	noted, _ := s.Notes.Job()
	m := marking{of: s, truth: rules.Judge(s.Customer.job(), s.Offered), notes: rules.Judge(noted, s.Offered)}
	m.Mark = Mark{
		Customer: s.Customer, Decision: d, Used: s.Used(), Acts: len(s.Log), Skills: map[Skill]Tally{},
		Route: NewRoute(s.Customer, s.Offered),
	}
	m.facts()
	m.system()
	m.decides()
	m.showing()
	m.order()
	m.followUps()
	m.safety()
	m.Next = m.next()
	return m.Mark
}

// Why is how the right answer is derived, in the words of a catalog.
func (s *Session) Why(words *message.Catalog) []report.Reason {
	return report.Why(s.Customer.Facts, s.Offered, report.Options{Words: words})
}

// facts goes through every fact that is true of the customer.
func (m *marking) facts() {
	c := m.Customer
	for _, s := range c.Facts.Steps() {
		truth, known := c.truth(s.Asked())
		if !known || s.Question.Group == assess.GroupVisit || s.Question.Optional {
			continue
		}
		item := Item{Asked: s.Asked(), Name: stepName(s), Truth: c.answer(s.Question, truth), State: Right}
		note, noted := m.of.Notes.Answer(s.Asked())
		switch {
		case !noted:
			item.State = NotAsked
		case note.State == assess.Unknown:
			item.State = LeftOpen
		case !c.same(s, note):
			item.State, item.Noted = WrongFact, c.answer(s.Question, note)
		}
		if item.State != Right {
			item.Effect = m.effect(note, item)
		}
		m.Items = append(m.Items, item)
		// What was not asked counts only if it mattered: nobody asks everything.
		if of := skillOf(s.Question.ID); of != "" && (item.State != NotAsked || slices.Contains(m.Route.Asked, item.Asked) || item.Effect.Level > ChangesVerdict) {
			m.count(of, item.State == Right)
		}
	}
}

func (m *marking) count(of Skill, right bool) {
	t := m.Skills[of]
	t.Of++
	if right {
		t.Right++
	}
	m.Skills[of] = t
}

// followUps says which answers that were unclear or wrong were cleared up.
func (m *marking) followUps() {
	c := m.Customer
	for _, a := range c.toFollowUp() {
		step := stepOf(a)
		truth, _ := c.truth(a)
		note, noted := m.of.Notes.Answer(a)
		caught := noted && m.of.heard[a] && c.same(step, note)
		first := message.New("first heard without a figure")
		if wrong, has := c.Wrong[a]; has {
			first = message.New("first heard as {1}", c.label(step.Question, wrong))
		} else if c.onPlate(a.Fact) {
			first = message.New("only its plate says it")
		}
		text := message.New("{1}: {2}; it is {3}", stepName(step), first, c.answer(step.Question, truth))
		switch {
		case caught:
			m.Caught = append(m.Caught, text)
		case m.of.asked[a]:
			m.Let = append(m.Let, text)
		}
		if caught || m.of.asked[a] {
			m.count(SkillFollow, caught)
		}
	}
}

// safety lists the questions of safety that were forgotten.
func (m *marking) safety() {
	for _, f := range SkillSafety.row().facts {
		step := stepOf(rules.Asked{Fact: f})
		if truth, known := m.Customer.truth(step.Asked()); known && !m.of.asked[step.Asked()] {
			m.Safety = append(m.Safety, message.New("{1}: {2}", stepName(step), m.Customer.answer(step.Question, truth)))
		}
	}
}

// order says how soon the questions that decide were asked.
func (m *marking) order() {
	var first []message.Message
	for _, t := range m.of.Log {
		if t.Act == Ask && len(first) < 3 {
			first = append(first, stepName(stepOf(t.Asked)))
		}
	}
	if len(first) > 0 {
		m.Order = append(m.Order, message.New("You began with {1}.", message.Join("; ", first...)))
	}
	early, asked := 0, 0
	for _, a := range m.Route.Asked {
		first := slices.IndexFunc(m.of.Log, func(t Turn) bool { // asked, or its plate looked at
			return (t.Act == Ask || t.Act == Measure) && t.Asked == a || (t.Act == Plate || t.Act == Breaker) && slices.Contains(t.Act.shows(), a.Fact)
		})
		if first >= 0 {
			asked++
			if m.of.Log[first].At < m.Customer.Minutes/2 {
				early++
			}
		}
	}
	m.Order = append(m.Order,
		message.New("For this customer {1} questions decide the result. You asked {2} of them, {3} within the first half of the time.", number(len(m.Route.Asked)), number(asked), number(early)),
		message.New("A good way through takes {1} minutes: it always asks what could still change the system.", number(m.Route.Minutes)))
}

// wellDone is the share of right from which a skill needs no practice.
const wellDone = 0.8

// next is the one skill to practise next: what cost most, else the weakest.
func (m *marking) next() Skill {
	worst, most := Skill(""), ChangesVerdict
	for _, item := range m.Items {
		if s := skillOf(item.Asked.Fact); item.Effect.Level > most && s != "" {
			worst, most = s, item.Effect.Level
		}
	}
	least := 1.0
	for _, s := range Skills() {
		if t := m.Skills[s]; most == ChangesVerdict && t.Of > 0 && t.share() < least {
			worst, least = s, t.share()
		}
	}
	return worst
}

// number is a whole number within a sentence.
func number(n int) message.Figure { return message.Figure(strconv.Itoa(n)) }

// rounded is a whole number of a unit.
func rounded(v float64, unit string) message.Figure {
	return message.Figure(fmt.Sprintf("%.0f %s", v, unit))
}
