package assess

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"maps"
	"slices"
	"strings"
	"unicode/utf8"

	"cutbrief/rules"
	"cutbrief/rules/metal"
)

// Decode reads a saved visit. It refuses a newer version by name
// (ErrNewerFormat), a foreign format (ErrForeign), and anything over its
// limits; unknown fields and questions are kept, and listed so that they can
// be reported. A value of the wrong type is an error that names the question,
// the value and what is accepted. An answer of the right type that cannot be
// understood is kept: Job reports it.
func Decode(data []byte) (v *Visit, unknown []string, err error) {
	data = bytes.TrimPrefix(data, []byte("\uFEFF")) // some editors put a mark at the start
	switch {
	case len(data) > MaxSize:
		return nil, nil, fmt.Errorf("read visit: %d bytes: %w", len(data), ErrTooLarge)
	case !utf8.Valid(data):
		return nil, nil, errors.New("read visit: the file is not UTF-8 text")
	case isWellFormed(data): // everything below relies on it
	case !shallow(data):
		return nil, nil, errors.New("read visit: nested too deeply")
	default:
		return nil, nil, fmt.Errorf("read visit: %w", wellFormed(data))
	}
	fields, err := members(data, nil)
	if err != nil {
		return nil, nil, fmt.Errorf("read visit: %w", err)
	}
	t := &taker{fields: fields}
	if err := checkFormat(t); err != nil {
		return nil, nil, fmt.Errorf("read visit: %w", err)
	}
	v, unknown = takeVisit(t)
	if t.err != nil {
		return nil, nil, fmt.Errorf("read visit: %w", t.err)
	}
	return v, unknown, nil
}

// checkFormat looks at format and version before anything else: the rest of a
// foreign file means nothing.
func checkFormat(t *taker) error {
	raw, ok := t.take("format")
	if name, isText := unquote(raw); !ok || !isText || name != formatName {
		return fmt.Errorf("%w: the file's format is %s; %q is accepted", ErrForeign, quote(string(raw)), formatName)
	}
	version, ok := t.whole("version")
	switch {
	case t.err != nil:
		return t.err
	case ok && version > formatVersion:
		return fmt.Errorf("%w: this file is format version %d; this program reads version 1 to %d", ErrNewerFormat, version, formatVersion)
	case version < 1:
		return fmt.Errorf("this file has no format version; version 1 to %d is accepted", formatVersion)
	}
	migrate(t, version)
	return nil
}

func takeVisit(t *taker) (*Visit, []string) {
	v := &Visit{ID: t.line("id"), Created: t.time("created"), Updated: t.time("updated"), Demo: t.yes("demo")}
	v.Revision, _ = t.whole("revision")
	v.Skipped = takeSkipped(t)
	unknown := takeOverrule(t, v)
	unknown = append(unknown, takeRecommendation(t, v)...)
	unknown = append(unknown, takeSpent(t, v)...)
	unknown = append(unknown, takeAnswers(t, v)...)
	unknown = append(unknown, takeShowings(t, v)...)
	v.extra = t.leftOver()
	return v, append(named("field ", v.extra), unknown...)
}

// named lists the names of unknown fields.
func named(before string, extra map[string]json.RawMessage) []string {
	var list []string
	for _, name := range slices.Sorted(maps.Keys(extra)) {
		list = append(list, before+quote(name))
	}
	return list
}

func takeSkipped(t *taker) []Group {
	var list []Group
	for _, id := range t.texts("skipped") {
		if !isGroup(Group(id)) {
			t.fail("skipped", json.RawMessage(id), "a list of "+strings.Join(groupNames(), ", "))
		}
		if !slices.Contains(list, Group(id)) {
			list = append(list, Group(id))
		}
	}
	return list
}

func isGroup(g Group) bool { return slices.Contains(groupNames(), string(g)) }

func groupNames() []string {
	var names []string
	for _, g := range Groups() {
		names = append(names, string(g.ID))
	}
	return names
}

// requirements are what the rep can name as deciding.
var requirements = texts(rules.Requirements())

// texts are identifiers as they stand in a file.
func texts[T ~string](ids []T) []string {
	list := make([]string, len(ids))
	for i, id := range ids {
		list[i] = string(id)
	}
	return list
}

func takeOverrule(t *taker, v *Visit) []string {
	raw, ok := t.take("overrule")
	if !ok {
		return nil
	}
	fields, err := members(raw, nil)
	if err != nil {
		t.err = fmt.Errorf("overrule: %w", err)
		return nil
	}
	in := &taker{fields: fields}
	o := rules.Overrule{Requirement: rules.Requirement(in.line("requirement")), Reason: in.lines("reason")}
	if !slices.Contains(requirements, string(o.Requirement)) {
		in.fail("requirement", json.RawMessage(o.Requirement), "one of "+strings.Join(requirements, ", "))
	}
	if in.err != nil {
		t.err = fmt.Errorf("overrule: %w", in.err)
	}
	v.Overrule, v.overruleExtra = &o, in.leftOver()
	return named("overrule: field ", v.overruleExtra)
}

func takeAnswers(t *taker, v *Visit) []string {
	raw, ok := t.take("answers")
	if !ok {
		if t.err == nil {
			t.err = errors.New("the file has no answers; a list is accepted, which may be empty")
		}
		return nil
	}
	items := split(raw)
	if items == nil || len(items) > maxAnswers {
		t.fail("answers", raw, fmt.Sprintf("a list of at most %d answers", maxAnswers))
		return nil
	}
	var unknown []string
	seen := make(map[rules.Asked]bool, len(items))
	v.Answers = make([]Answer, 0, len(items))
	room := make([]field, 0, 8) // of one answer's fields after the other
	for i, item := range items {
		a, err := decodeAnswer(item, room)
		if err == nil && seen[a.Asked()] {
			err = errors.New("is answered twice; one answer is accepted")
		}
		if err != nil {
			t.err = fmt.Errorf("answer %d, question %s: %w", i+1, quote(string(a.Question)), err)
			return nil
		}
		seen[a.Asked()] = true
		v.Answers = append(v.Answers, a)
		unknown = append(unknown, a.unknown()...)
	}
	return unknown
}

// unknown lists what this program does not know of an answer.
func (a Answer) unknown() []string {
	_, known := Find(a.Question)
	if known && a.extra == nil {
		return nil
	}
	question := "question " + quote(string(a.Question))
	list := named(question+": field ", a.extra)
	if !known {
		list = append(list, question)
	}
	return list
}

func decodeAnswer(raw json.RawMessage, room []field) (Answer, error) {
	fields, err := members(raw, room)
	if err != nil {
		return Answer{}, err
	}
	t := &taker{fields: fields}
	a := Answer{Question: rules.Fact(t.line("question")), Metal: metal.ID(t.line("metal"))}
	a.Said, a.Unit, a.Chosen = t.text("said", isLong(a.Question)), t.line("unit"), t.texts("chosen")
	a.State, a.Note = State(t.line("state")), t.lines("note")
	if t.err == nil && a.Question == "" {
		t.err = errors.New("the answer names no question")
	}
	if a.State == "" {
		a.State = Told
	}
	a.extra = t.leftOver()
	if t.err != nil {
		return a, t.err
	}
	return a, a.check()
}

// isLong reports whether an answer may have several lines. That of a question
// this program does not know may.
func isLong(f rules.Fact) bool {
	q, known := Find(f)
	return !known || q.Form == FormLong
}

// states are all states, as saved.
var states = []string{string(Told), string(Measured), string(Assumed), string(Unknown)}

// check reports what is wrong with the shape of an answer.
func (a Answer) check() error {
	if !slices.Contains(states, string(a.State)) {
		return fmt.Errorf("state is %s; %s is accepted", quote(string(a.State)), strings.Join(states, ", "))
	}
	q, known := Find(a.Question)
	if !known {
		return nil
	}
	_, listed := metal.Find(a.Metal)
	switch {
	case q.PerMetal && !listed:
		return fmt.Errorf("metal is %s; %s is accepted", quote(string(a.Metal)), asSaved(metalOptions()))
	case !q.PerMetal && a.Metal != "":
		return fmt.Errorf("metal is %s; none is accepted, as this is asked once", quote(string(a.Metal)))
	case a.State != Unknown && a.Said == "" && len(a.Chosen) == 0:
		return fmt.Errorf("nothing is said; give %s, or the state %q", q.Example, Unknown)
	}
	return nil
}
