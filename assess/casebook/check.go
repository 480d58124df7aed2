package casebook

import (
	"fmt"
	"slices"
	"strings"
	"unicode"

	"cutbrief/rules"
	"cutbrief/rules/csvfile"
	"cutbrief/rules/message"
	"cutbrief/rules/system"
)

// Check says of a customer what would make a practice unfair: facts the rules
// cannot decide on, facts that contradict one another, a manner without its
// trouble, a figure in plain sight where it should be hidden, or too little
// patience for the good way through.
func Check(c *Customer, offered system.Range) []csvfile.Finding {
	var list []csvfile.Finding
	add := func(column, problem, accepted string) {
		list = append(list, csvfile.Finding{Line: c.Line, Row: c.Name, Column: column, Severity: csvfile.Error, Problem: message.Text(problem), Accepted: message.Text(accepted)})
	}
	result := rules.Evaluate(c.job(), offered)
	switch {
	case result.Outcome == rules.NotYet:
		add("", "the facts are too few to size anything: "+names(result.Missing)+" is missing", "an answer to each of these")
		return list
	case result.Outcome == rules.Recommended && !result.Firm:
		var open []rules.Asked
		for _, q := range result.Open {
			if q.Strength >= 3 { // it could change the system
				open = append(open, q.Asked)
			}
		}
		add("", "the right answer is not firm: "+names(open)+" could change it", "an answer to each of these")
	case result.Critical.Requirement == "":
		add("annoys-most", "nothing says what decides", "what annoys them, or how the edge is used")
	case len(result.Critical.Tie) > 0:
		add("annoys-most", "what decides is a tie", "one complaint that outweighs the others")
	}
	for _, f := range result.Flags {
		// One that warns of the site contradicts nothing.
		if slices.ContainsFunc(f.From, func(a rules.Asked) bool { return a.Fact != rules.FactEyes && a.Fact != rules.FactVentilation }) {
			add("", "the facts contradict one another: "+string(f.Sentence), "facts that go together; what is only said belongs on a line wrong")
		}
	}
	checkManner(c, add)
	if r := NewRoute(c, offered); !r.Arrives {
		add("", "no way of asking leads to the right answer", "facts that decide")
	} else if r.Minutes > c.Minutes {
		add("minutes", fmt.Sprintf("%d minutes are too few: the good way through takes %d", c.Minutes, r.Minutes), fmt.Sprintf("at least %d", r.Minutes))
	}
	return list
}

// checkManner reports a manner that shows nowhere, and figures it gives away.
func checkManner(c *Customer, add func(column, problem, accepted string)) {
	switch {
	case c.Manner.row().errs && len(c.Wrong) == 0:
		add("manner", "this customer says nothing wrong", "a line such as wrong thickest-clean mild-steel: 6 mm")
	case c.Manner == AsksBack && len(c.Unclear) == 0:
		add("manner", "this customer is clear about everything", "a line such as unclear: thickest-clean mild-steel")
	}
	for _, a := range c.toFollowUp() {
		if said, has := c.Says[a]; has && c.unclear(a) && strings.ContainsFunc(said, unicode.IsDigit) {
			add("says "+string(a.Fact), "gives a figure in plain sight", "words without a figure")
		}
	}
}

// names lists what questions are called: "a, b and c".
func names(list []rules.Asked) string {
	return message.And(message.Each(list, func(a rules.Asked) message.Message { return stepName(stepOf(a)) })...).String()
}
