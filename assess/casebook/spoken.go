package casebook

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"cutbrief/assess"
	"cutbrief/assess/sanitize"
	"cutbrief/rules/metal"
	"cutbrief/rules/unit"
)

// spoken is an answer as a customer would say it: the figure with its unit, or
// the words of what is chosen.
func spoken(q *assess.Question, a assess.Answer) string {
	if len(a.Chosen) == 0 {
		return sanitize.Line(strings.TrimSpace(a.Said + " " + a.Unit))
	}
	var words []string
	for _, id := range a.Chosen {
		i := slices.IndexFunc(q.Options, func(o assess.Option) bool { return o.ID == id })
		if i < 0 {
			continue
		}
		text := q.Options[i].Text
		if _, after, ok := strings.Cut(text, ": "); ok {
			text = after // "maintenance: repair and odd jobs"
		}
		words = append(words, text)
	}
	return series(words)
}

// series joins words as a sentence does: "a, b and c".
func series(words []string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:len(words)-1], ", ") + " and " + words[len(words)-1]
}

// isNone reports an answer that is a known zero.
func isNone(a assess.Answer) bool {
	return slices.Contains([]string{"none", "no", "nothing", "never", "0"}, strings.ToLower(strings.TrimSpace(a.Said)))
}

func sheetOf(s assess.Step) unit.Sheet {
	m, _ := metal.Find(s.Metal)
	return m.Sheet
}

// label is an answer in one word where its options have one: "production".
func label(q *assess.Question, a assess.Answer) string {
	for _, o := range q.Options {
		if len(a.Chosen) == 1 && o.ID == a.Chosen[0] {
			if before, _, ok := strings.Cut(o.Text, ": "); ok {
				return before
			}
		}
	}
	return spoken(q, a)
}

// capital starts a text with a capital letter.
func capital(s string) string {
	r, n := utf8.DecodeRuneInString(s)
	if n == 0 {
		return s
	}
	return string(unicode.ToUpper(r)) + s[n:]
}
