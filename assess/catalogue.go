package assess

import (
	"slices"

	"cutbrief/rules"
)

// catalogue is every question in the order asked. It is only ever read.
var catalogue = slices.Concat(visitQuestions, workQuestions, howQuestions, siteQuestions, todayQuestions, priceQuestions, decisionQuestions)

// places is where each question stands in the catalogue. It is only ever read.
var places = func() map[rules.Fact]int {
	m := make(map[rules.Fact]int, len(catalogue))
	for i, q := range catalogue {
		m[q.ID] = i
	}
	return m
}()

// Catalogue returns every question in the order asked. Callers only read the
// questions.
func Catalogue() []*Question { return slices.Clone(catalogue) }

// Find returns the question with this identifier.
func Find(id rules.Fact) (*Question, bool) {
	i, ok := places[id]
	if !ok {
		return nil, false
	}
	return catalogue[i], true
}
