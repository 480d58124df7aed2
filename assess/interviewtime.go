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

// InterviewTime is how long an interview took, from the start of each session to
// its last answer, without pauses. It sizes nothing.
type InterviewTime struct {
	Sessions int
	Seconds  unit.Maybe[unit.Second] // of all sessions; not known if it is not of one of them

	extra extras // unknown fields, kept
}

// Stopwatch counts the time of one session.
type Stopwatch struct {
	before  InterviewTime
	counts  bool // there is something to add to
	last    time.Time
	took    time.Duration
	strange bool // the clock went back
}

// NewStopwatch starts a session. A visit that has answers but no time, as those of
// earlier programs, stays without one: a part would be taken for the whole.
func NewStopwatch(v *Visit, now time.Time) *Stopwatch {
	w := &Stopwatch{counts: v.InterviewTime != nil || len(v.Answers) == 0, last: now}
	w.before.Seconds = unit.Known(unit.Second(0))
	if v.InterviewTime != nil {
		w.before = *v.InterviewTime
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
	next := InterviewTime{Sessions: min(w.before.Sessions+1, FigureMost), extra: w.before.extra}
	if before, known := w.before.Seconds.Get(); known && !w.strange {
		total := math.Floor(float64(before) + w.took.Seconds())
		next.Seconds = unit.Known(unit.Second(min(total, FigureMost)))
	}
	v.InterviewTime = &next
}

func interviewTimeObject() *object[InterviewTime] {
	return &object[InterviewTime]{
		extra: func(s *InterviewTime) *extras { return &s.extra },
		title: func(*InterviewTime) string { return "spent" },
		fields: []field[InterviewTime]{
			{name: "sittings", says: "Times it was begun or gone on with.", written: func(*InterviewTime) bool { return true },
				kind: count(func(s *InterviewTime) *int { return &s.Sessions }, FigureMost)},
			{name: "seconds", says: "Time of all sittings, s; absent if it is not known of one of them.",
				kind: figure(func(s *InterviewTime) *unit.Maybe[unit.Second] { return &s.Seconds }, FigureMost)},
		},
	}
}
