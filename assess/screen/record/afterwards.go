package record

import (
	"strings"
	"time"

	"cutbrief/assess"
)

var outcomeChoices = []choice{
	{string(assess.Ordered), "order"}, {string(assess.Quote), "quote"}, {string(assess.SecondVisit), "second visit"}, {string(assess.No), "no"},
}

// afterwards asks what was said and what comes next.
func (s *session) afterwards() {
	if s.over {
		return
	}
	s.say("")
	s.keep(&s.showing.Words, s.ask("What did the customer say, in their own words?", s.showing.Words))
	s.objections()
	if typed := s.choose("How did it end? 1 order, 2 quote, 3 second visit or 4 no", strings.ReplaceAll(string(s.showing.Outcome), "-", " "), outcomeChoices); typed != "" {
		s.showing.Outcome, s.changed = assess.Outcome(typed), true
	}
	s.against()
	s.keep(&s.showing.Because, s.ask("Why?", s.showing.Because))
	s.next()
}

// againstChoices are what can weigh most against it, in one word each.
func againstChoices() []choice {
	var list []choice
	for _, a := range assess.AllAgainst() {
		list = append(list, choice{string(a), string(a)})
	}
	return list
}

// against asks what weighed most where the outcome is no. It is counted over many
// visits, and so is one of few words.
func (s *session) against() {
	if s.showing.Outcome != assess.No {
		s.changed = s.changed || s.showing.Against != ""
		s.showing.Against = ""
		return
	}
	const question = `What weighed most against it? 1 price, 2 habit (they keep today's way), 3 cut (it
did not convince), 4 site (supply, air, room), 5 elsewhere (they buy something
else), 6 later (no money or time now), or 7 other`
	if typed := s.choose(question, string(s.showing.Against), againstChoices()); typed != "" {
		s.showing.Against, s.changed = assess.Against(typed), true
	}
}

// objections asks for what spoke against it, until nothing more is typed.
func (s *session) objections() {
	for _, o := range s.showing.Objections {
		s.say("Noted already: %s. Answered: %s.", strings.TrimSuffix(o.Said, "."), strings.TrimSuffix(o.Answer, "."))
	}
	for !s.over && len(s.showing.Objections) < assess.ObjectionsMost {
		said := s.ask("What spoke against it? Enter for nothing more", "")
		if said == "" {
			return
		}
		s.showing.Objections, s.changed = append(s.showing.Objections, assess.Objection{Said: said}), true
		s.keep(&s.showing.Objections[len(s.showing.Objections)-1].Answer, s.ask("  The answer given?", ""))
	}
}

// next asks for the next step, its owner and its date.
func (s *session) next() {
	n := &s.showing.Next
	s.keep(&n.Step, s.ask("What is the next step?", n.Step))
	if n.Step == "" {
		return
	}
	owner := n.Owner
	if owner == "" {
		owner = s.Rep
	}
	typed := s.ask("By whom?", owner)
	if typed == "" && !s.over {
		typed = owner
	}
	s.keep(&n.Owner, typed)
	s.date(n)
}

// date asks until a day is typed; "" leaves it as it is.
func (s *session) date(n *assess.Next) {
	for {
		typed := s.ask("By when? Year, month and day", n.Date)
		if _, err := time.Parse(time.DateOnly, typed); typed == "" || err == nil {
			s.keep(&n.Date, typed)
			return
		}
		s.say("  %q is not a date; give it like 2026-11-25.", typed)
	}
}
