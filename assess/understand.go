package assess

import (
	"errors"
	"strings"

	"cutbrief/rules"
	"cutbrief/rules/metal"
	"cutbrief/rules/unit"
)

// meaning is what an answer was understood as.
type meaning struct {
	reading unit.Reading
	chosen  []string
	period  string // for the length cut: a day or a week
	none    bool   // a known zero
}

// understand reads the answer to a question of quantity. The unit kept in the
// answer, if any, is the one taken for a bare number when it was given, so
// that it never changes meaning.
func understand(s Step, a Answer, style unit.Style) (meaning, error) {
	q := s.Question
	said, m := a.Said, meaning{}
	if q.ID == rules.FactCutLength {
		said, m.period = splitPace(said)
	}
	if q.none && isNone(said) {
		m.none, m.reading.Quantity.Kind = true, q.Kind
		return m, nil
	}
	if a.Unit != "" {
		said = strings.TrimSpace(said) + " " + a.Unit
	}
	var err error
	if m.reading, err = unit.Read(said, q.Kind, style, sheetOf(s.Metal)); err != nil {
		return meaning{}, unread(s, said, err)
	}
	if value := m.reading.Quantity.Value; !q.limit.within(value) {
		return meaning{}, mistake(s, a.Said, "is not plausible", "it is usually "+q.limit.words(q.Kind, style))
	}
	return m, nil
}

// unread words an error of the unit room for the question at hand.
func unread(s Step, said string, err error) error {
	var e *unit.ReadError
	if !errors.As(err, &e) {
		return mistake(s, said, "is not understood", "give "+s.Question.Example)
	}
	wrong := strings.TrimPrefix(e.Error(), `"`+e.Said+`" `)
	if e.Advice != "" {
		return mistake(s, said, wrong, e.Advice)
	}
	return mistake(s, said, wrong, "give "+s.Question.Example+guess(said))
}

// hedges are words and signs around a figure that is a guess or a range. They
// are only ever read.
var hedges = []string{"about", "around", "roughly", "maybe", "up to", "say ", "ca ", "ca.", "~", " to ", " or ", "–", "-", "ish", "?"}

// guess says how to give what was said with doubt or as a range.
func guess(said string) string {
	small := strings.ToLower(said)
	for _, h := range hedges {
		if strings.Contains(small, h) && strings.ContainsAny(small, "0123456789") {
			return "; a guess is given as one figure, and kept as assumed"
		}
	}
	return ""
}

func sheetOf(id metal.ID) unit.Sheet {
	m, _ := metal.Find(id)
	return m.Sheet
}
