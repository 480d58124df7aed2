package assess

import (
	"encoding/json"
	"fmt"
	"slices"
	"strings"
	"time"

	"cutbrief/rules/metal"
	"cutbrief/rules/unit"
)

// The most that is kept of demonstrations, far above any honest record.
const (
	maxShowings = 50
	maxShown    = 50

	// FigureMost is the largest measured figure kept, in its unit.
	FigureMost = 1e6
	// ObjectionsMost is how many objections are kept of one demonstration.
	ObjectionsMost = maxShown
)

// takeShowings takes the records of demonstrations and lists what is unknown
// in them.
func takeShowings(t *taker, v *Visit) []string {
	var unknown []string
	v.Showings = takeList(t, "showings", maxShowings, func(in *taker) Showing {
		s := takeShowing(in)
		unknown = append(unknown, s.unknown()...)
		return s
	})
	return unknown
}

// takeList takes a list of objects, each as take does, which leaves over what
// it does not know.
func takeList[T any](t *taker, name string, most int, take func(*taker) T) []T {
	raw, ok := t.take(name)
	if !ok {
		return nil
	}
	items := split(raw)
	if items == nil || len(items) > most {
		t.fail(name, raw, fmt.Sprintf("a list of at most %d", most))
		return nil
	}
	var list []T
	for i, item := range items {
		fields, err := members(item, nil)
		in := &taker{fields: fields, err: err}
		if err == nil {
			list = append(list, take(in))
		}
		if in.err != nil && t.err == nil {
			t.err = fmt.Errorf("%s, item %d: %w", name, i+1, in.err)
		}
	}
	return list
}

func takeShowing(t *taker) Showing {
	s := Showing{Date: t.date("date"), System: t.line("system")}
	s.Cuts = takeList(t, "cuts", maxShown, takeShown)
	s.Words = t.lines("words")
	s.Objections = takeList(t, "objections", maxShown, func(in *taker) Objection {
		return Objection{Said: in.lines("said"), Answer: in.lines("answer"), extra: in.leftOver()}
	})
	s.Outcome = Outcome(t.oneOf("outcome", endings))
	s.Because, s.Against = t.lines("because"), Against(t.oneOf("against", weights))
	takeNext(t, &s)
	s.extra = t.leftOver()
	return s
}

func takeShown(t *taker) Shown {
	c := Shown{
		Cut: t.line("cut"), Name: t.line("name"), Metal: metal.ID(t.oneOf("metal", metalNames())),
		Thickness: positive[unit.Millimetre](t, "thickness_mm"), Output: positive[unit.Ampere](t, "output_a"),
		Length: positive[unit.Millimetre](t, "length_mm"), Took: positive[unit.Second](t, "took_s"),
		Predicted: positive[unit.Second](t, "predicted_s"), Result: Result(t.oneOf("result", results)), Why: t.lines("why"),
	}
	if t.err == nil && c.Cut == "" {
		t.err = fmt.Errorf("cut is missing; the identifier of a cut is accepted")
	}
	c.extra = t.leftOver()
	return c
}

func takeNext(t *taker, s *Showing) {
	raw, ok := t.take("next")
	if !ok {
		return
	}
	fields, err := members(raw, nil)
	in := &taker{fields: fields, err: err}
	if err == nil {
		s.Next = Next{Step: in.lines("step"), Owner: in.line("owner"), Date: in.date("date")}
	}
	if in.err != nil {
		t.err = fmt.Errorf("next: %w", in.err)
	}
	s.nextExtra = in.leftOver()
}

// unknown lists what this program does not know of a demonstration.
func (s *Showing) unknown() []string {
	list := named("showing: field ", s.extra)
	for _, c := range s.Cuts {
		list = append(list, named("showing, cut "+quote(c.Cut)+": field ", c.extra)...)
	}
	for _, o := range s.Objections {
		list = append(list, named("showing, objection: field ", o.extra)...)
	}
	return append(list, named("showing, next: field ", s.nextExtra)...)
}

// oneOf takes one of some texts, or nothing.
func (t *taker) oneOf(name string, accepted []string) string {
	said := t.line(name)
	if said != "" && !slices.Contains(accepted, said) {
		t.fail(name, json.RawMessage(said), strings.Join(accepted, ", "))
	}
	return said
}

// date takes a day, or nothing.
func (t *taker) date(name string) string {
	said := t.line(name)
	if _, err := time.Parse(time.DateOnly, said); said != "" && err != nil {
		t.fail(name, json.RawMessage(said), "a date like 2026-11-25")
	}
	return said
}

// positive takes a number above 0, or nothing.
func positive[T ~float64](t *taker, name string) unit.Maybe[T] {
	raw, ok := t.take(name)
	if !ok {
		return unit.Maybe[T]{}
	}
	var value float64
	if raw[0] == 'n' || json.Unmarshal(raw, &value) != nil || !(value > 0 && value <= FigureMost) {
		t.fail(name, raw, "a number above 0 and up to 1000000")
		return unit.Maybe[T]{}
	}
	return unit.Known(T(value))
}
