package review

import (
	"cmp"
	"iter"
	"slices"
	"strings"

	"cutbrief/assess"
)

// Pattern counts visits that rules have run on: those that share a word of a
// column, or all of them.
type Pattern struct {
	Of      string // what they share; "" if it is not known, or for all
	Visits  int    // the base of all counts but those of Against and Cuts
	Flagged int    // with any flag

	Firm, Open, FallsShort, NoneFits, NotYet int // how they stand: the sum is Visits
	Ordered, Quoted, Again, Lost, NoOutcome  int // how they ended, Again in a second visit: the sum is Visits

	Against    []Count // what weighed most with those lost, "" where it is not noted: the sum is Lost
	Poor       int     // of those lost, in how many a cut went poorly
	Unanswered []Count // questions, the one open most often first
	Took       Took
	Cuts       Cuts
}

// Waiting is how many have an outcome that is neither an order nor a no.
func (p *Pattern) Waiting() int { return p.Quoted + p.Again }

// Count is how many visits something holds for.
type Count struct {
	What   string
	Visits int
}

// Took sums up how long interviews took, of those whose time is known: in
// minutes.
type Took struct {
	Known             int // the base of what follows
	Low, Median, High int
	Within            [4]int // up to 10, 20, 40 and more minutes: the sum is Known
}

// Spans are the longest times of Took.Within, in minutes; the last has none.
// Common practice, no source: they only spread what is shown.
var spans = [...]int{10, 20, 40}

// Spans lists the longest times that Took.Within counts up to, in minutes.
func Spans() []int { return spans[:] }

// Cuts counts timed cuts that were predicted, held against the prediction as at
// the bench.
type Cuts struct{ Slow, Fit, Fast int }

// All is the base of the three.
func (c Cuts) All() int { return c.Slow + c.Fit + c.Fast }

// mostQuestions is how many unanswered questions a pattern names.
const mostQuestions = 5

// groups counts the visits that share a word of a column.
type groups struct {
	by Field
	of map[string]*counter
}

func newGroups(by Field) *groups { return &groups{by, map[string]*counter{}} }

// add counts a row once for each word of a list.
func (g *groups) add(r *Row) {
	words := g.by.Items(r)
	if len(words) == 0 {
		words = []string{""}
	}
	for _, of := range words {
		if g.of[of] == nil {
			g.of[of] = newCounter(of)
		}
		g.of[of].add(r)
	}
}

// patterns lists months in their order, and else the largest group first.
func (g *groups) patterns() []Pattern {
	list := make([]Pattern, 0, len(g.of))
	for _, c := range g.of {
		list = append(list, c.pattern())
	}
	slices.SortFunc(list, func(a, b Pattern) int {
		if g.by.ID == "month" {
			return strings.Compare(a.Of, b.Of)
		}
		return cmp.Or(cmp.Compare(b.Visits, a.Visits), strings.Compare(a.Of, b.Of))
	})
	return list
}

// counter counts the visits of one pattern.
type counter struct {
	p         Pattern
	questions map[string]int
	against   map[string]int
	minutes   []int
}

func newCounter(of string) *counter {
	return &counter{p: Pattern{Of: of}, questions: map[string]int{}, against: map[string]int{}}
}

func (c *counter) add(r *Row) {
	c.p.Visits++
	if r.Flags != 0 {
		c.p.Flagged++
	}
	*c.p.standing(r.Verdict)++
	*c.p.ending(r.Outcome)++
	if r.Outcome == string(assess.No) {
		c.against[string(r.Noted.Because())]++
		if r.Noted.Poor {
			c.p.Poor++
		}
	}
	for _, q := range questionsOf(r) {
		c.questions[q]++
	}
	if r.Noted.Minutes > 0 {
		c.minutes = append(c.minutes, int(r.Noted.Minutes))
	}
	c.p.Cuts.Slow += int(r.Noted.Slow)
	c.p.Cuts.Fit += int(r.Noted.Fit)
	c.p.Cuts.Fast += int(r.Noted.Fast)
}

// standing is the count of a verdict. A row that was judged has one of the five.
func (p *Pattern) standing(v Verdict) *int {
	switch v {
	case Firm:
		return &p.Firm
	case Open:
		return &p.Open
	case FallsShort:
		return &p.FallsShort
	case NoneFits:
		return &p.NoneFits
	}
	return &p.NotYet
}

// ending is the count of an outcome.
func (p *Pattern) ending(outcome string) *int {
	switch assess.Outcome(outcome) {
	case assess.Ordered:
		return &p.Ordered
	case assess.Quote:
		return &p.Quoted
	case assess.SecondVisit:
		return &p.Again
	case assess.No:
		return &p.Lost
	}
	return &p.NoOutcome
}

// pattern sums up.
func (c *counter) pattern() Pattern {
	c.p.Against = counts(c.against)
	c.p.Unanswered = counts(c.questions)
	c.p.Unanswered = c.p.Unanswered[:min(len(c.p.Unanswered), mostQuestions)]
	c.p.Took = took(c.minutes)
	return c.p
}

// took sums up times in minutes. Of an even number the median is the mean of the
// two in the middle, rounded up.
func took(minutes []int) Took {
	t := Took{Known: len(minutes)}
	if t.Known == 0 {
		return t
	}
	slices.Sort(minutes)
	middle := t.Known / 2
	t.Low, t.Median, t.High = minutes[0], (minutes[(t.Known-1)/2]+minutes[middle]+1)/2, minutes[t.Known-1]
	for _, m := range minutes {
		i := 0
		for i < len(spans) && m > spans[i] {
			i++
		}
		t.Within[i]++
	}
	return t
}

// questionsOf are the questions of a row without an answer.
func questionsOf(r *Row) []string {
	f, _ := FindField("unanswered")
	return f.Items(r)
}

// counts lists what was counted, the commonest first.
func counts(of map[string]int) []Count {
	list := make([]Count, 0, len(of))
	for what, n := range of {
		list = append(list, Count{what, n})
	}
	slices.SortFunc(list, func(a, b Count) int {
		return cmp.Or(cmp.Compare(b.Visits, a.Visits), strings.Compare(a.What, b.What))
	})
	return list
}

// Tally is what is counted over the rows a manager looks at.
type Tally struct {
	Files, Unread int    // rows, and those of them that could not be read
	First, Last   string // days of the earliest and the latest visit counted; "" if none has a day

	All          Pattern
	Raised       []Count   // flags over all rows, by identifier and gravest first: the base is Files
	Requirements []Pattern // the same visits by what decides
	Systems      []Pattern // and by system
	By           string    // and by the column asked for, "" if none is
	Groups       []Pattern
}

// TallyOf counts rows in one pass: Files is Unread and All.Visits together. It keeps no row, and names no rep and no customer unless by is such a
// column.
func TallyOf(rows iter.Seq[*Row], by *Field) Tally {
	t := Tally{}
	all := newCounter("")
	critical, _ := FindField("critical")
	system, _ := FindField("system")
	requirements, systems, asked := newGroups(critical), newGroups(system), &groups{}
	if by != nil {
		t.By, asked = by.ID, newGroups(*by)
	}
	var raised [flags]int
	for r := range rows {
		t.Files++
		for _, f := range r.Flags.list() {
			raised[f]++
		}
		if r.Stage == Unread {
			t.Unread++
			continue
		}
		t.span(r.Date)
		all.add(r)
		requirements.add(r)
		systems.add(r)
		if by != nil {
			asked.add(r)
		}
	}
	for f, n := range raised {
		if n > 0 {
			t.Raised = append(t.Raised, Count{kinds[f].ID, n})
		}
	}
	t.All, t.Requirements, t.Systems, t.Groups = all.pattern(), requirements.patterns(), systems.patterns(), asked.patterns()
	return t
}

// span widens the days that are covered.
func (t *Tally) span(day string) {
	if day == "" {
		return
	}
	if t.First == "" || day < t.First {
		t.First = day
	}
	t.Last = max(t.Last, day)
}
