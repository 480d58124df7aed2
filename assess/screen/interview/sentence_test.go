package interview

import (
	"slices"
	"strings"
	"testing"

	"cutbrief/rules"
	"cutbrief/rules/message/catalog"
)

const told = "half inch stainless most days, sometimes inch, 230 single phase, 30 amp breaker, little compressor"

// A sentence is offered fact by fact. Nothing is taken without a key, what is
// refused is not, and what was not understood is shown.
func TestASentenceIsTakenFactByFact(t *testing.T) {
	d := drive(t, newVisit()).keys("1", "<f2>")
	d.Sees("What did they say?")
	d.keys("perhaps one day", "<enter>")
	d.Sees("! nothing was found in it that answers a question")
	d.keys("<ctrl+u>", told, "<enter>")
	d.Sees("found in the sentence: 6 to accept or refuse", "Which metals do you cut?", "› stainless", "said: “half inch stainless most days”", "not understood: little compressor")
	if len(d.m.Visit.Answers) != 1 || d.disk.saves != 1 {
		t.Fatalf("taken without a key: %+v", d.m.Visit.Answers)
	}
	d.keys("<enter>", "x")
	if d.disk.saves != 2 || len(d.m.Visit.Answers) != 2 {
		t.Errorf("%d saves, %+v", d.disk.saves, d.m.Visit.Answers)
	}
	d.keys("<enter>", "<enter>", "<enter>", "<enter>")
	d.at(rules.FactThickest) // metals were accepted meanwhile
	d.Sees("5 taken, 1 refused; not understood: little compressor")
	for f, want := range map[rules.Asked]string{
		{Fact: rules.FactRarest, Metal: "stainless"}: "1 inch", {Fact: rules.FactEveryday, Metal: "stainless"}: "",
		{Fact: rules.FactVolts}: "230 V", {Fact: rules.FactBreaker}: "30 amp",
	} {
		if a, _ := d.m.Visit.Answer(f); a.Said != want {
			t.Errorf("%v is %q, want %q", f, a.Said, want)
		}
	}
}

// Where the metal is refused, nothing about it is offered.
func TestWhatHangsOnARefusedMetalIsNotOffered(t *testing.T) {
	d := drive(t, newVisit()).keys("<f2>", told, "<enter>", "x")
	d.Sees("found in the sentence: 3 to accept or refuse")
	d.keys("<esc>")
	if len(d.m.Visit.Answers) > 0 || d.m.state != asking {
		t.Errorf("%+v", d.m.Visit.Answers)
	}
}

// From the list and the result the way leads back there; leaving names what was
// said and not taken.
func TestASentenceAnywhere(t *testing.T) {
	for _, from := range []string{"<ctrl+l>", "<ctrl+r>"} {
		d := drive(t, newVisit()).keys(from)
		was := d.m.state
		d.keys("<f2>", told, "<enter>", "<enter>", "<enter>", "<enter>", "<enter>", "<enter>", "<enter>")
		if d.m.state != was || len(d.m.Visit.Answers) != 6 {
			t.Errorf("%s: %d answers:\n%s", from, len(d.m.Visit.Answers), d.View())
		}
	}
	for _, keys := range [][]string{{told}, {told, "<enter>", "<enter>"}} {
		d := drive(t, newVisit()).keys("<f2>").keys(append(keys, "<ctrl+c>")...)
		if out := d.m.finish(); !d.Quit || !slices.Equal(out.Unkept, []string{told}) {
			t.Errorf("%v: %+v", d.Quit, out.Unkept)
		}
	}
}

func TestASentenceInPlainLines(t *testing.T) {
	v := newVisit()
	out, _ := talk(t, v, "say perhaps one day", "say 230 single phase, 30 amp breaker, and a cat", "", "yes", "no", "yes", "quit")
	for _, want := range []string{"Not accepted: nothing was found", "Is the power single-phase or three-phase?\nFound: single-phase\nType yes", "2 taken, 1 refused; not understood: a cat"} {
		if !strings.Contains(out, want) {
			t.Errorf("%q is not in:\n%s", want, out)
		}
	}
	if len(v.Answers) != 2 || stored(v, rules.FactVolts).Said != "" || stored(v, rules.FactBreaker).Said != "30 amp" {
		t.Errorf("kept %+v", v.Answers)
	}
	v = newVisit()
	speak(t, catalog.For("de"), &memory{}, v, "Satz meist Edelstahl, 400 V Drehstrom", "ja", "nein", "ja", "ende")
	if len(v.Answers) != 2 || stored(v, rules.FactMetals).Chosen[0] != "stainless" || !strings.EqualFold(stored(v, rules.FactVolts).Said, "400 V") {
		t.Errorf("in German kept %+v", v.Answers)
	}
}
