package assess

import (
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

	extra extras // unknown fields, kept
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

func spentObject() *object[Spent] {
	return &object[Spent]{
		extra: func(s *Spent) *extras { return &s.extra },
		title: func(*Spent) string { return "spent" },
		fields: []field[Spent]{
			{name: "sittings", says: "Times it was begun or gone on with.", written: func(*Spent) bool { return true },
				kind: count(func(s *Spent) *int { return &s.Sittings }, FigureMost)},
			{name: "seconds", says: "Time of all sittings, s; absent if it is not known of one of them.",
				kind: figure(func(s *Spent) *unit.Maybe[unit.Second] { return &s.Seconds }, FigureMost)},
		},
	}
}
