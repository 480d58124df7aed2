package review

import (
	"cmp"
	"slices"
	"strings"
)

// Pattern counts the visits that share a word of one column: how they stand, how
// they ended, what stays unanswered. Rows that no rule has run on are not in it.
type Pattern struct {
	Of         string // what they share; "" if it is not known
	Visits     int    // the base of all counts
	Firm       int
	Flagged    int // with any flag
	Ordered    int
	Lost       int
	Waiting    int     // shown, but neither ordered nor lost
	Unanswered []Count // questions, the one open most often first
}

// Count is how many visits of a pattern something holds for.
type Count struct {
	What   string
	Visits int
}

// mostQuestions is how many unanswered questions a pattern names.
const mostQuestions = 5

// Patterns counts rows by a column, the largest group first. A row counts once
// for each word of a list.
func Patterns(rows []*Row, by Field) []Pattern {
	groups := map[string]*Pattern{}
	questions := map[string]map[string]int{}
	for _, r := range rows {
		if r.Stage != Judged {
			continue
		}
		words := by.Items(r)
		if len(words) == 0 {
			words = []string{""}
		}
		for _, of := range words {
			p := groups[of]
			if p == nil {
				p = &Pattern{Of: of}
				groups[of], questions[of] = p, map[string]int{}
			}
			p.count(r)
			for _, q := range questionsOf(r) {
				questions[of][q]++
			}
		}
	}
	list := make([]Pattern, 0, len(groups))
	for of, p := range groups {
		p.Unanswered = counts(questions[of])
		list = append(list, *p)
	}
	slices.SortFunc(list, func(a, b Pattern) int {
		return cmp.Or(cmp.Compare(b.Visits, a.Visits), strings.Compare(a.Of, b.Of))
	})
	return list
}

func (p *Pattern) count(r *Row) {
	one := func(n *int, holds bool) {
		if holds {
			*n++
		}
	}
	p.Visits++
	one(&p.Firm, r.Verdict == Firm)
	one(&p.Flagged, r.Flags != 0)
	one(&p.Ordered, r.Outcome == "order")
	one(&p.Lost, r.Outcome == "no")
	one(&p.Waiting, r.Outcome != "" && !settledSale(r.Outcome))
}

// questionsOf are the questions of a row without an answer.
func questionsOf(r *Row) []string {
	f, _ := FindField("unanswered")
	return f.Items(r)
}

// counts are the commonest of what was counted.
func counts(of map[string]int) []Count {
	list := make([]Count, 0, len(of))
	for what, n := range of {
		list = append(list, Count{what, n})
	}
	slices.SortFunc(list, func(a, b Count) int {
		return cmp.Or(cmp.Compare(b.Visits, a.Visits), strings.Compare(a.What, b.What))
	})
	return list[:min(len(list), mostQuestions)]
}
