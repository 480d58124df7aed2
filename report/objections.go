package report

import (
	"slices"
	"strings"

	"cutbrief/rules"
	"cutbrief/rules/message"
)

// objections are what a customer may say against the recommendation, each with
// what the brief holds to answer it. Nothing is said that is not on the page or
// in its working; which objections to expect is common practice, no source.
func (b *builder) objections(page *Brief) []Line {
	if !b.recommended() {
		return nil
	}
	var list []Line
	add := func(said message.ID, answers ...string) {
		answers = slices.DeleteFunc(answers, func(s string) bool { return s == "" })
		if len(answers) > 0 {
			list = append(list, b.line(said.Message(), message.Text(strings.Join(answers, " "))))
		}
	}
	if page.Cost != nil {
		add("“It costs too much.”", slices.Clone(page.Cost.Lines)...)
	}
	smaller, larger := b.neighbours()
	add("“A smaller one would do.”", smaller)
	add("“Why not a larger one?”", larger, page.Second)
	add("“What we have is good enough.”", mapped(page.Evidence, func(e *Line) string { return e.Value })...)
	changes, nearly, others := b.reservations(b.result.First)
	add("“What is it not good at?”", b.prints(slices.Concat(changes, nearly, others)...)...)
	add("“Are you sure?”", b.print(b.certainty()))
	return list
}

// neighbours are why the next smaller and the next larger system are not taken.
func (b *builder) neighbours() (smaller, larger string) {
	first := b.result.First.System
	var below, above *rules.Candidate
	for i := range b.result.Candidates {
		switch c := &b.result.Candidates[i]; {
		case c.System.Rated < first.Rated && (below == nil || c.System.Rated > below.System.Rated):
			below = c
		case c.System.Rated > first.Rated && (above == nil || c.System.Rated < above.System.Rated):
			above = c
		}
	}
	why := func(c *rules.Candidate) string {
		if c == nil {
			return ""
		}
		l := b.notTaken(c)
		return l.Label + ": " + l.Why
	}
	return why(below), why(above)
}
