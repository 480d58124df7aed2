package main

import (
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"cutbrief/assess"
	"cutbrief/assess/casebook"
	"cutbrief/report"
	"cutbrief/rules/system"
)

// TestGlossary holds every message to the glossary: no text says a word of its
// second table, each of which has a better one beside it.
func TestGlossary(t *testing.T) {
	data, err := os.ReadFile("../../report/handbook/glossary.md")
	if err != nil {
		t.Fatal(err)
	}
	_, table, _ := strings.Cut(string(data), "| Not | But |\n|---|---|\n")
	table, _, _ = strings.Cut(table, "\n\n")
	var words []string
	for row := range strings.SplitSeq(table, "\n") {
		cells := strings.Split(row, "|")
		for word := range strings.SplitSeq(cells[1], "; ") {
			word, _, _ = strings.Cut(strings.TrimSpace(word), " (")
			words = append(words, strings.ReplaceAll(regexp.QuoteMeta(word), "…", ".*"))
		}
	}
	banned := regexp.MustCompile(`(?i)\b(` + strings.Join(words, "|") + `)\b`)
	var wrong []string
	for id, where := range identifiers(t) {
		if said := banned.FindString(string(id)); said != "" {
			wrong = append(wrong, where[0]+": "+said+": "+string(id))
		}
	}
	slices.Sort(wrong)
	for _, w := range wrong {
		t.Error(w)
	}
	t.Logf("%d words not to use", len(words))
}

// Questions and page are to be read aloud: US grade 8 or below by the formula of
// Flesch and Kincaid (1975), 0.39 words a sentence + 11.8 syllables a word - 15.59,
// over the whole text. A question has at most 15 words, a reason at most 20: our
// own limits.
func TestReadingEase(t *testing.T) {
	var questions, pages strings.Builder
	for _, q := range assess.Catalogue() {
		ask := strings.ReplaceAll(q.Ask.Message().String(), "{1}", "mild steel")
		why := q.Why.Message().String()
		if n := len(strings.Fields(ask)); n > 15 {
			t.Errorf("%d words: %s", n, ask)
		}
		if n := len(strings.Fields(why)); n > 20 {
			t.Errorf("%d words: %s", n, why)
		}
		questions.WriteString(ask + "\n" + why + "\n" + q.Help.Message().String() + "\n")
	}
	for _, name := range casebook.DemoVisits() {
		v, _ := casebook.DemoVisit(name)
		brief := report.Build(v, system.Demo(), report.Options{})
		for _, s := range slices.Concat([]string{brief.Need}, brief.Because, brief.Flags, brief.PlanNote) {
			pages.WriteString(s + "\n")
		}
		for _, l := range slices.Concat(brief.Confirm, brief.Cautions) {
			pages.WriteString(l.Value + "\n" + l.Why + "\n")
		}
	}
	for name, text := range map[string]string{"the questions": questions.String(), "the page": pages.String()} {
		grade := fleschKincaid(text)
		t.Logf("%s: grade %.1f", name, grade)
		if grade > 8 {
			t.Errorf("%s: grade %.1f; 8 is promised", name, grade)
		}
	}
}

var (
	sentenceEnd = regexp.MustCompile(`[.!?]+(\s|$)|\n`)
	wordOf      = regexp.MustCompile(`[A-Za-z']+`)
	vowels      = regexp.MustCompile(`[aeiouy]+`)
	silent      = regexp.MustCompile(`([^aeiouyl]e|[^aeiouytd]ed|[^aeiouyscxz]es)$`)
)

// fleschKincaid is the grade of a text. Syllables are counted as groups of vowels
// without a silent ending, at least one a word, which is right for most words.
func fleschKincaid(text string) float64 {
	sentences, words, syllables := 0, 0, 0
	for _, s := range sentenceEnd.Split(text, -1) {
		list := wordOf.FindAllString(strings.ToLower(s), -1)
		if len(list) == 0 {
			continue
		}
		sentences++
		words += len(list)
		for _, w := range list {
			syllables += max(1, len(vowels.FindAllString(silent.ReplaceAllString(w, "x"), -1)))
		}
	}
	return 0.39*float64(words)/float64(sentences) + 11.8*float64(syllables)/float64(words) - 15.59
}
