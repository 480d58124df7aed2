package assess

import (
	"encoding/json"
	"fmt"
	"math"
	"time"

	"cutbrief/rules/unit"
)

// Pause is the longest time between two answers that counts as part of an
// interview. After a longer one the rep was away, or the machine asleep: it counts
// as a pause (common practice, no source).
const Pause = 10 * time.Minute

// Spent is how long an interview took, from the start of each sitting to its last
// answer, without pauses. It sizes nothing.
type Spent struct {
	Sittings int
	Seconds  unit.Maybe[unit.Second] // of all sittings; not known if it is not of one of them

	extra map[string]json.RawMessage // unknown fields, kept
}

// Stopwatch counts the time of one sitting.
type Stopwatch struct {
	before  Spent
	counts  bool // there is something to add to
	last    time.Time
	took    time.Duration
	strange bool // the clock went back
}

// NewStopwatch starts a sitting. A visit that has answers but no time, as those of
// earlier programs, stays without one: a part would be taken for the whole.
func NewStopwatch(v *Visit, now time.Time) *Stopwatch {
	w := &Stopwatch{counts: v.Spent != nil || len(v.Answers) == 0, last: now}
	w.before.Seconds = unit.Known(unit.Second(0))
	if v.Spent != nil {
		w.before = *v.Spent
	}
	return w
}

// Lap notes in the visit how long it took up to now.
func (w *Stopwatch) Lap(v *Visit, now time.Time) {
	gap := now.Sub(w.last)
	w.last = now
	switch {
	case gap < 0:
		w.strange = true
	case gap <= Pause:
		w.took += gap
	}
	if !w.counts {
		return
	}
	next := Spent{Sittings: min(w.before.Sittings+1, FigureMost), extra: w.before.extra}
	if before, known := w.before.Seconds.Get(); known && !w.strange {
		total := math.Floor(float64(before) + w.took.Seconds())
		next.Seconds = unit.Known(unit.Second(min(total, FigureMost)))
	}
	v.Spent = &next
}

// takeSpent reads how long the interview took, if it was saved.
func takeSpent(t *taker, v *Visit) []string {
	raw, ok := t.take("spent")
	if !ok {
		return nil
	}
	fields, err := members(raw, nil)
	in := &taker{fields: fields, err: err}
	if err == nil {
		v.Spent = in.spent()
	}
	if in.err != nil {
		t.err = fmt.Errorf("spent: %w", in.err)
		return nil
	}
	return named("spent: field ", v.Spent.extra)
}

func (t *taker) spent() *Spent {
	s := &Spent{}
	s.Sittings, _ = t.whole("sittings")
	if raw, ok := t.take("seconds"); ok {
		var seconds float64
		if raw[0] == 'n' || json.Unmarshal(raw, &seconds) != nil || !(seconds >= 0 && seconds <= FigureMost) {
			t.fail("seconds", raw, "a number from 0 to 1000000")
		}
		s.Seconds = unit.Known(unit.Second(seconds))
	}
	if t.err == nil && s.Sittings > FigureMost {
		t.err = fmt.Errorf("sittings is %d; at most 1000000 is accepted", s.Sittings)
	}
	s.extra = t.leftOver()
	return s
}

func (s *Spent) encode() member {
	var o object
	o.add("sittings", s.Sittings)
	addNumber(&o, "seconds", s.Seconds)
	o.addExtra(s.extra)
	raw, err := o.bytes()
	return member{raw: raw, err: err}
}

func spentSchema() node {
	return node{
		"type":        "object",
		"description": "How long the interview took at the keyboard, without pauses of more than 10 minutes between two answers. It sizes nothing.",
		"properties": node{
			"sittings": node{"type": "integer", "minimum": 0, "maximum": FigureMost, "description": "Times it was begun or gone on with."},
			"seconds":  node{"type": "number", "minimum": 0, "maximum": FigureMost, "description": "Time of all sittings, s; absent if it is not known of one of them."},
		},
	}
}
