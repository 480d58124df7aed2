package plain

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"

	"cutbrief/assess"
	"cutbrief/assess/sample"
	"cutbrief/rules"
	"cutbrief/rules/message"
	"cutbrief/rules/message/catalog"
	"cutbrief/rules/message/unsaid"
	"cutbrief/rules/system"
)

// speak is talk in the words of a book.
func speak(t *testing.T, book *message.Catalog, disk *memory, v *assess.Visit, lines ...string) string {
	t.Helper()
	var out strings.Builder
	_, err := Run(strings.NewReader(strings.Join(lines, "\n")+"\n"), &out, Options{
		Visit: v, Range: system.Demo(), Saver: disk, Pager: disk, Width: 80, Words: book, Suggest: map[rules.Fact]string{assess.FactDate: "2026-11-25"},
	})
	if err != nil {
		t.Fatal(err)
	}
	return out.String()
}

// Every text of the plain interview has German words: every question of a new
// visit, with help, the list, notes and wrong answers, and all that can be said at
// the end.
func TestNoTextIsLeftUnsaid(t *testing.T) {
	book, ear := unsaid.German()
	each := []string{"help", "list", "note", "note well", "measured", "assumed", "told", "clear", "clear", "half a thumb, 99", "99999999", "go 9999", "not known", "back", "measured", "note again", "-"}
	var lines []string
	for range 60 {
		lines = append(lines, each...)
	}
	speak(t, book, &memory{}, newVisit(), lines...)
	speak(t, book, &memory{}, newVisit(), append(whole(t), "list", "page", "overrule", "overrule 1 seen", "overrule 0", "result", "back", "back", "skip", "list", "quit")...)
	speak(t, book, &memory{}, newVisit(), "later", "later", "later", "back", "later", "later", "later", "later", "quit")
	speak(t, book, &memory{}, newVisit(), append(whole(t), "go 1", "later", "go 38", "clear", "later", "quit")...)
	speak(t, book, &memory{}, newVisit(), append(before, "1", "about 6", "=", "quit")...)
	speak(t, book, &memory{}, newVisit(), "back", "", "", "skip", "list", "go 60", "")
	speak(t, book, &memory{fail: errors.New("no room")}, newVisit(), "Alder Vale", "")
	speak(t, book, &memory{}, newVisit())
	for _, name := range sample.Names() {
		v, _ := sample.Visit(name)
		speak(t, book, &memory{}, v, "list", "go 1", "", "result", "page", "quit")
	}
	for _, text := range ear.Unsaid() {
		t.Error(text)
	}
}

// The words of the book are understood beside our own, and a comma for decimals.
func TestGermanIsUnderstood(t *testing.T) {
	book, _ := unsaid.German()
	v := newVisit()
	out := speak(t, book, &memory{}, v,
		"Schlosserei Ahorn", "zurück", "hilfe", "", "weiß nicht", "nicht bekannt", "", "Ossi Berg", "1", "Baustahl",
		"12,5 mm", "20", "keine", "liste", "ergebnis", "ende")
	there := slices.IndexFunc(v.Steps(), func(s assess.Step) bool { return s.Question.ID == rules.FactCutLength })
	speak(t, book, &memory{}, v, fmt.Sprintf("gehe %d", there+1), "40 m am Tag", "ende")
	for f, want := range map[rules.Asked]string{
		{Fact: assess.FactCompany}:                      "Schlosserei Ahorn",
		{Fact: rules.FactEveryday, Metal: "mild-steel"}: "12,5 mm",
		{Fact: rules.FactRarest, Metal: "mild-steel"}:   "none",
		{Fact: rules.FactCutLength}:                     "40 m a day",
	} {
		if a, _ := v.Answer(f); a.Said != want {
			t.Errorf("%v: %q, want %q\n%s", f, a.Said, want, out)
		}
	}
	if a, _ := v.Answer(rules.Asked{Fact: assess.FactContact}); a.State != assess.Unknown {
		t.Errorf("weiß nicht: %v", a)
	}
	for _, text := range []string{"Für welche Firma ist das?", "Verstanden: 20 → 20 mm", "1. Baustahl", "Schlosserei Ahorn"} {
		if !strings.Contains(out, text) {
			t.Errorf("%q is not in\n%s", text, out)
		}
	}
}

// What a customer said stays as it was typed, also where it begins like a word of
// the book: "gehe zu" and a number goes to a question, and "gehe zu" anything else
// is an answer.
func TestAnAnswerThatBeginsLikeAWordStays(t *testing.T) {
	const company = "Gehe zu Stahlbau und Hof"
	v := newVisit()
	speak(t, catalog.For("de"), &memory{}, v, company, "ende")
	if got := said(v, assess.FactCompany).Said; got != company {
		t.Errorf("%q became %q", company, got)
	}
}
