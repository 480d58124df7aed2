package assess

import (
	"slices"
	"sync"

	"cutbrief/rules"
)

// catalogue is every question, in the order that answers are saved and listed in.
// It is only ever read.
var catalogue = slices.Concat(visitQuestions, workQuestions, howQuestions, siteQuestions, todayQuestions, priceQuestions, decisionQuestions)

// places is where each question stands in the catalogue, built when it is first
// asked for. It is only ever read.
var places = sync.OnceValue(func() map[rules.Fact]int {
	m := make(map[rules.Fact]int, len(catalogue))
	for i, q := range catalogue {
		m[q.ID] = i
	}
	return m
})

// asking is the catalogue in the order asked: how the system is used comes right
// after the thicknesses, as the three together size a system. It is only ever
// read.
var asking = sync.OnceValue(func() []*Question {
	order, use := slices.Clone(catalogue), placeOf(rules.FactUse)
	order = slices.Delete(order, use, use+1)
	return slices.Insert(order, placeOf(rules.FactRarest)+1, catalogue[use])
})

// Catalogue returns every question in the order of the list. Callers only read the
// questions.
func Catalogue() []*Question { return slices.Clone(catalogue) }

// Find returns the question with this identifier.
func Find(id rules.Fact) (*Question, bool) {
	i, ok := places()[id]
	if !ok {
		return nil, false
	}
	return catalogue[i], true
}
