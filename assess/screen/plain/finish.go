package plain

import (
	"fmt"
	"strings"

	"cutbrief/assess/sanitize"
	texts "cutbrief/assess/screen/words"
	"cutbrief/rules"
)

// finish prints the result and takes the words that make sense there.
func (s *session) finish() {
	s.result()
	for {
		s.say("Say page (make the page), list, go and a number, overrule, or quit.")
		fmt.Fprint(s.out, "> ")
		line, ok := s.next()
		if !ok {
			s.outcome.InputEnd = true
			return
		}
		w, rest := parseEnding(s.Words.Word(line))
		switch w {
		case quit:
			return
		case answer:
			if place, named := s.elsewhere(rest); named {
				s.keepIn(place)
			}
		case page:
			s.page()
		case result:
			s.result()
		case list:
			s.list()
		case overrule:
			s.overrule(rest)
		case back:
			if len(s.Visit.Steps()) > 0 && s.goBack() {
				s.ask(s.step)
				return
			}
		case goTo:
			if s.jump(rest) {
				s.ask(s.step)
				return
			}
		}
	}
}

func (s *session) result() {
	fmt.Fprintf(s.out, "\n%s\n", texts.Result(s.Words, s.Visit, s.Range, s.Prices, s.Width))
	if open := s.Visit.Open(); open > 0 {
		s.say("\nQuestions still open: %d. Say list to see them.", open)
	}
}

func (s *session) page() {
	if s.Pager == nil {
		s.say("No page can be made from here.")
		return
	}
	path, err := s.Pager.Page(s.Visit)
	if err != nil {
		s.say("The page was not made: %s", outside(err.Error()))
		return
	}
	s.outcome.Page = path
	s.say("The page is in %s", outside(path))
}

// overrule takes "3 because of what was seen": the requirement and the reason.
func (s *session) overrule(rest string) {
	number, reason, _ := strings.Cut(rest, " ")
	choice, ok := texts.Choice(texts.Requirements(), number)
	reason = sanitize.Line(reason)
	switch {
	case number == "0":
		s.Visit.Overrule = nil
	case !ok || reason == "":
		s.offerOverrule()
		return
	default:
		s.Visit.Overrule = &rules.Overrule{Requirement: rules.Requirement(choice), Reason: reason}
	}
	s.save()
	s.result()
}

func (s *session) offerOverrule() {
	for i, o := range texts.Requirements() {
		s.say("%d. %s", i+1, o.Text)
	}
	s.say("Say overrule, a number and your reason, which is kept and printed.")
	s.say("Say overrule 0 to let the answers decide.")
}
