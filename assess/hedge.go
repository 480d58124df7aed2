package assess

import (
	"strings"

	"cutbrief/rules"
	"cutbrief/rules/unit"
)

// Words around a figure that is a guess, and words that make it the most there
// is. They are only ever read.
var (
	guessBefore = []string{"about ", "around ", "roughly ", "maybe ", "perhaps ", "say ", "approximately ", "approx. ", "approx ", "circa ", "ca. ", "ca.", "ca ", "~", "≈"}
	guessBehind = []string{" or so", " or thereabouts", "-ish", "ish", "?"}
	mostBefore  = []string{"up to ", "at most ", "no more than ", "not more than ", "max. ", "max "}
	rangeWords  = []string{" to ", " or ", "–", "-"}
)

// unhedged takes the words of a guess off a figure, and says whether there were
// any.
func unhedged(said string) (figure string, guess bool) {
	figure = strings.TrimSpace(said)
	if isPlainFigure(figure) {
		return figure, false
	}
	for _, w := range guessBefore {
		if rest, found := cutWord(figure, w); found {
			figure, guess = rest, true
			break
		}
	}
	for _, w := range guessBehind {
		if rest, found := strings.CutSuffix(figure, w); found && strings.TrimSpace(rest) != "" {
			return strings.TrimSpace(rest), true
		}
	}
	return figure, guess
}

// isPlainFigure reports a text that neither begins nor ends as one with a word
// around a figure may.
func isPlainFigure(s string) bool {
	return s != "" && s[0] >= '0' && s[0] <= '9' && strings.IndexByte("soh?SOH", s[len(s)-1]) < 0
}

// cutWord takes a word off the front, however it is written.
func cutWord(s, word string) (rest string, found bool) {
	if len(s) <= len(word) || !strings.EqualFold(s[:len(word)], word) {
		return s, false
	}
	return strings.TrimSpace(s[len(word):]), true
}

// greatest reports a question that asks for the most there is, so that of a range
// the larger end is the answer.
func greatest(f rules.Fact) bool {
	switch f {
	case rules.FactThickest, rules.FactRarest, rules.FactPierced, rules.FactBevelled:
		return true
	}
	return false
}

// ends reads a range, such as "6 to 10 mm", as its two ends, the lesser first. A
// unit said once is that of both; but of "6 mm to 1/2" nobody knows whether the
// half is one of an inch.
func ends(s Step, said string, style unit.Style) (low, high unit.Reading, ok bool) {
	said = strings.ToLower(strings.TrimSpace(said))
	if rest, found := cutWord(said, "between "); found {
		said = strings.Replace(rest, " and ", " to ", 1)
	}
	read := func(text string) (unit.Reading, error) {
		return unit.Read(text, s.Question.Kind, style, sheetOf(s.Metal))
	}
	for _, between := range rangeWords {
		first, second, found := strings.Cut(said, between)
		if !found {
			continue
		}
		b, err := read(second)
		if err != nil {
			continue
		}
		a, err := read(first)
		switch {
		case err == nil && a.Bare && !b.Bare:
			a, err = read(first + " " + b.Unit)
		case err == nil && b.Bare && !a.Bare:
			b, err = read(second + " " + a.Unit)
		}
		if err != nil || a.Bare && a.Unit != b.Unit || a.Unit != "in" && (inInches(s, first) || inInches(s, second)) {
			continue
		}
		if a.Quantity.Value > b.Quantity.Value {
			a, b = b, a
		}
		return a, b, true
	}
	return unit.Reading{}, unit.Reading{}, false
}

// inInches reports a bare fraction of a thickness, which is inches by itself
// whatever the units of the visit are.
func inInches(s Step, said string) bool {
	r, err := unit.Read(said, s.Question.Kind, unit.Metric, sheetOf(s.Metal))
	return err == nil && r.Bare && r.Unit == "in"
}
