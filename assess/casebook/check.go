package casebook

import (
	"slices"
	"strings"
	"unicode"

	"cutbrief/rules"
	"cutbrief/rules/message"
	"cutbrief/rules/system"
	"cutbrief/rules/tabular"
)

// Check says of a customer what would make a practice unfair: facts the rules
// cannot decide on, facts that contradict one another, a manner without its
// trouble, a figure in plain sight where it should be hidden, or too little
// patience for the good way through.
func Check(c *Customer, offered system.Range) []tabular.Finding {
	var list []tabular.Finding
	add := func(column string, accepted message.Message, problem message.ID, args ...any) {
		list = append(list, tabular.Finding{Line: c.Line, Row: c.Name, Column: column, Severity: tabular.Error, Problem: message.New(problem, args...), Accepted: accepted})
	}
	each := message.New("an answer to each of these")
	result := rules.Evaluate(c.job(), offered)
	switch {
	case result.Outcome == rules.NotYet:
		add("", each, "the facts are too few to size anything: {1} is missing", names(result.Missing))
		return list
	case result.Outcome == rules.Recommended && !result.Firm:
		var open []rules.Asked
		for _, q := range result.Open {
			if q.Strength >= 3 { // it could change the system
				open = append(open, q.Asked)
			}
		}
		add("", each, "the right answer is not firm: {1} could change it", names(open))
	case result.Critical.Requirement == "":
		add("annoys-most", message.New("what annoys them, or how the edge is used"), "nothing says what decides")
	case len(result.Critical.Tie) > 0:
		add("annoys-most", message.New("one complaint that outweighs the others"), "what decides is a tie")
	}
	for _, f := range result.Flags {
		// One that warns of the site contradicts nothing.
		if slices.ContainsFunc(f.From, func(a rules.Asked) bool { return a.Fact != rules.FactEyes && a.Fact != rules.FactVentilation }) {
			add("", message.New("facts that go together; what is only said belongs on a line wrong"), "the facts contradict one another: {1}", f.Sentence)
		}
	}
	checkManner(c, add)
	if r := NewRoute(c, offered); !r.Arrives {
		add("", message.New("facts that decide"), "no way of asking leads to the right answer")
	} else if r.Minutes > c.Minutes {
		add("minutes", message.New("at least {1}", message.Count(r.Minutes)), "{1} minutes are too few: the good way through takes {2}", message.Count(c.Minutes), message.Count(r.Minutes))
	}
	return list
}

// checkManner reports a manner that shows nowhere, and figures it gives away.
func checkManner(c *Customer, add func(column string, accepted message.Message, problem message.ID, args ...any)) {
	switch {
	case c.Manner.row().errs && len(c.Wrong) == 0:
		add("manner", message.New("a line such as {1}", message.Name("wrong thickest-clean mild-steel: 6 mm")), "this customer says nothing wrong")
	case c.Manner == AsksBack && len(c.Unclear) == 0:
		add("manner", message.New("a line such as {1}", message.Name("unclear: thickest-clean mild-steel")), "this customer is clear about everything")
	}
	for _, a := range c.toFollowUp() {
		if said, has := c.Says[a]; has && c.unclear(a) && strings.ContainsFunc(said, unicode.IsDigit) {
			add("says "+string(a.Fact), message.New("words without a figure"), "gives a figure in plain sight")
		}
	}
}

// names lists what questions are called: "a, b and c".
func names(list []rules.Asked) message.Message {
	return message.And(message.Each(list, func(a rules.Asked) message.Message { return stepName(stepOf(a)) })...)
}
