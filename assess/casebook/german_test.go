package casebook

import (
	"regexp"
	"strings"
	"testing"

	"cutbrief/assess"
	"cutbrief/rules/message"
	"cutbrief/rules/message/catalog"
)

// Everything a built-in or made customer can say, and what is told of it in the
// mark, has German words.
func TestCustomersSpeakGerman(t *testing.T) {
	german := catalog.For("de")
	has := func(id message.ID) {
		if letters.MatchString(holes.ReplaceAllString(string(id), "")) && !german.Has(id) {
			t.Errorf("no German words: %s", id)
		}
	}
	for _, section := range phrases() {
		for _, id := range section {
			has(id)
		}
	}
	for _, c := range Cases() {
		texts := []string{c.Opening, c.told(assess.FactContact), c.told(assess.FactPlace), c.told(assess.FactDecides)}
		for _, own := range c.Says {
			texts = append(texts, own)
		}
		for _, text := range texts {
			has(message.ID(text))
		}
	}
	for _, town := range towns {
		has(message.ID(town + ", Velmoor district"))
	}
	for _, who := range deciders {
		has(message.ID(who))
	}
	for _, q := range assess.Catalogue() {
		for _, o := range q.Options {
			for _, part := range strings.SplitN(string(o.Text), ": ", 2) {
				has(message.ID(part))
			}
		}
	}
	for _, s := range []State{Right, WrongFact, NotAsked, LeftOpen} {
		has(message.ID(s))
	}
}

var letters, holes = regexp.MustCompile(`\pL`), regexp.MustCompile(`\{\d\}`)

// A customer is the same in every language: the same is said and done, in other
// words, and no two answers are alike.
func TestNoTwoGermanAnswersAreAlike(t *testing.T) {
	german := catalog.For("de")
	for _, c := range everyone(t) {
		heard := map[string]message.Message{}
		for _, m := range chatter(&c) {
			said := german.Print(m)
			if other, twice := heard[said]; twice {
				t.Errorf("%s: %q for %q and %q", c.Name, said, other, m)
			}
			heard[said] = m
			if english := m.String(); said == english && letters.MatchString(english) && !strings.ContainsFunc(english, isDigit) {
				t.Errorf("%s stays English: %q", c.Name, english)
			}
		}
	}
}

func isDigit(r rune) bool { return r >= '0' && r <= '9' }
