package interview

import (
	"testing"

	"cutbrief/rules"
)

func TestWhyIsBehindOneKeyAndKeepsWhatIsTyped(t *testing.T) {
	d := drive(t, newVisit()).throughTo(rules.FactEveryday).keys("3/8 in", "<f1>", "w")
	d.Sees("[recommendation]", "Esc back")
	d.keys("<esc>")
	d.at(rules.FactEveryday)
	d.Sees("› 3/8 in")
}

func TestTheResultAnswersWhy(t *testing.T) {
	d := drive(t, newVisit()).keys("<ctrl+l>", "r")
	d.Sees("w why")
	d.keys("w")
	d.Sees("[recommendation]")
	d.keys("<esc>")
	d.Sees("p make the page")
}

func TestLeavingFromTheDerivationKeepsWhatIsTyped(t *testing.T) {
	d := drive(t, newVisit()).throughTo(rules.FactEveryday).keys("3/8 in", "<f1>", "w", "<ctrl+c>")
	var said string
	for _, a := range d.disk.last.Answers {
		if a.Question == rules.FactEveryday {
			said = a.Said
		}
	}
	if said != "3/8 in" {
		t.Errorf("kept %q of what was typed", said)
	}
}
