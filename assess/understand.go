package assess

import (
	"errors"

	"cutbrief/rules"
	"cutbrief/rules/message"
	"cutbrief/rules/metal"
	"cutbrief/rules/unit"
)

// meaning is what an answer was understood as.
type meaning struct {
	reading unit.Reading
	chosen  []string
	period  string  // for the length cut: a day or a week
	none    bool    // a known zero
	guess   bool    // said as a guess: "about 6"
	larger  bool    // the larger end of a range, or the most there is
	least   float64 // the smaller end of a range, else 0
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
	if err := m.read(s, said, a.Unit, style); err != nil {
		return meaning{}, err
	}
	if value := m.reading.Quantity.Value; !q.limit.within(value) {
		return meaning{}, mistake(s, a.Said, "is not plausible", message.New("it is usually {1}", q.limit.words(q.Kind, style)))
	}
	return m, nil
}

// read reads a figure, a guess at one, or the larger end of a range where a
// question asks for the most. taken is the unit that was taken for a bare number.
func (m *meaning) read(s Step, said, taken string, style unit.Style) error {
	figure, guess := unhedged(said)
	m.guess = guess
	if greatest(s.Question.ID) {
		for _, w := range mostBefore {
			if rest, found := cutWord(figure, w); found {
				figure, m.larger = rest, true
			}
		}
	}
	if taken != "" {
		figure += " " + taken
	}
	var err error
	if m.reading, err = unit.Read(figure, s.Question.Kind, style, sheetOf(s.Metal)); err == nil {
		return nil
	}
	low, high, isRange := ends(s, figure, style)
	switch {
	case isRange && greatest(s.Question.ID):
		m.reading, m.larger, m.least = high, true, low.Quantity.Value
		return nil
	case isRange && s.Question.ID == rules.FactEveryday:
		return mistake(s, said, "is two figures", message.New("give the one of most days, {1} or {2}", message.Figure(show(low, style)), message.Figure(show(high, style))))
	case isRange:
		return mistake(s, said, "is two figures", message.New("give the one to count on, {1} or {2}", message.Figure(show(low, style)), message.Figure(show(high, style))))
	}
	return unread(s, said, err)
}

// unread words an error of the unit room for the question at hand.
func unread(s Step, said string, err error) error {
	var e *unit.ReadError
	if !errors.As(err, &e) {
		return mistake(s, said, "is not understood", give(s))
	}
	return &Mistake{s.Name(), brief(said), e.Wrong(), e.Advice.Or(give(s))}
}

func sheetOf(id metal.ID) unit.Sheet {
	if id == "" {
		return unit.NoGauge
	}
	m, _ := metal.Find(id)
	return m.Sheet
}
