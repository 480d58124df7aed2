package review

import (
	"slices"
	"strings"

	"cutbrief/assess"
	"cutbrief/rules"
	"cutbrief/rules/metal"
)

// metalWords are all metals.
func metalWords() []string {
	var list []string
	for _, m := range metal.List() {
		list = append(list, string(m.ID))
	}
	return list
}

// criticalWords are all requirements that can decide.
func criticalWords() []string {
	var list []string
	for _, r := range rules.Requirements() {
		list = append(list, string(r))
	}
	return list
}

// verdictWords are all words of a verdict.
func verdictWords() []string {
	return []string{string(Firm), string(Open), string(FallsShort), string(NoneFits), string(NotYet)}
}

// outcomeWords are all words of an outcome.
func outcomeWords() []string {
	return []string{string(assess.Ordered), string(assess.Quote), string(assess.SecondVisit), string(assess.No)}
}

// againstWords are all words of what weighed most against it.
func againstWords() []string {
	var list []string
	for _, a := range assess.AllAgainst() {
		list = append(list, string(a))
	}
	return list
}

// flagWords are all flags.
func flagWords() []string {
	var list []string
	for _, k := range kinds {
		list = append(list, k.ID)
	}
	return list
}

// misspelt says which words a field has, where a value is none of them: a filter
// that can keep nothing would look like good news. "" if the value may stand.
func (f Field) misspelt(op, value string) string {
	if f.words == nil || op == "~" {
		return ""
	}
	words := f.words()
	if slices.ContainsFunc(words, func(w string) bool { return strings.EqualFold(w, value) }) {
		return ""
	}
	return "it is one of " + strings.Join(words, ", ") + ", or ? for not known"
}
