package assess

import (
	"bytes"
	"encoding/json"
	"maps"
	"slices"
	"strconv"
	"strings"
	"time"

	"cutbrief/rules/message"
	"cutbrief/rules/unit"
)

// node is one part of a JSON Schema.
type node = map[string]any

// scalar is a kind of single values. Its zero says nothing.
type scalar[T any, V comparable] struct {
	at     func(*T) *V
	shape  node
	decode func(d *decoder, name string) V
	encode func(out []byte, v V) []byte
}

func (k scalar[T, V]) read(d *decoder, name string, t *T)      { *k.at(t) = k.decode(d, name) }
func (k scalar[T, V]) empty(t *T) bool                         { return *k.at(t) == *new(V) }
func (k scalar[T, V]) share(to, from *T)                       { *k.at(to) = *k.at(from) }
func (k scalar[T, V]) schema() node                            { return maps.Clone(k.shape) }
func (k scalar[T, V]) append(out []byte, t *T) ([]byte, error) { return k.encode(out, *k.at(t)), nil }

// text is a kind of texts that decode reads.
func text[T any, S ~string](at func(*T) *S, shape node, decode func(*decoder, string) S) kind[T] {
	return scalar[T, S]{at, shape, decode, func(out []byte, s S) []byte { return appendText(out, string(s)) }}
}

// line is a text of one line.
func line[T any, S ~string](at func(*T) *S) kind[T] {
	return text(at, node{"type": "string", "maxLength": maxLine}, func(d *decoder, name string) S { return S(d.text(name, false)) })
}

// lines is a text of several lines.
func lines[T any, S ~string](at func(*T) *S) kind[T] {
	return text(at, node{"type": "string", "maxLength": maxLong}, func(d *decoder, name string) S { return S(d.text(name, true)) })
}

// uncleaned is a text as it stands: how it is cleaned, other fields say.
func uncleaned[T any](at func(*T) *string) kind[T] {
	return text(at, node{"type": "string", "maxLength": maxLong}, func(d *decoder, name string) string {
		s, _, _ := d.said(name)
		return s
	})
}

// anyOf is a line that should be one of some words. Which, other fields say too:
// it is checked with them.
func anyOf[T any, S ~string](at func(*T) *S, accepted []S) kind[T] {
	return text(at, node{"enum": accepted}, func(d *decoder, name string) S { return S(d.text(name, false)) })
}

// oneOf is one of some words, or none.
func oneOf[T any, S ~string](at func(*T) *S, accepted []S) kind[T] {
	return text(at, node{"enum": accepted}, func(d *decoder, name string) S {
		s := S(d.text(name, false))
		if s != "" && !slices.Contains(accepted, s) {
			d.fail(name, string(s), message.New("one of {1}", message.Name(joined(accepted))))
		}
		return s
	})
}

// date is a day as year-month-day, or none.
func date[T any](at func(*T) *string) kind[T] {
	return text(at, node{"type": "string", "format": "date"}, func(d *decoder, name string) string {
		s := d.text(name, false)
		if _, err := time.Parse(time.DateOnly, s); s != "" && err != nil {
			d.fail(name, s, message.ID("a date like 2026-11-25"))
		}
		return s
	})
}

// moment is a time to the second, with its zone.
func moment[T any](at func(*T) *time.Time) kind[T] {
	return scalar[T, time.Time]{at, node{"type": "string", "format": "date-time"}, func(d *decoder, name string) time.Time {
		s := d.text(name, false)
		at, err := time.Parse(time.RFC3339, s)
		if s != "" && (err != nil || at.IsZero()) {
			d.fail(name, s, message.ID("a time like 2026-11-25T09:30:00Z"))
		}
		return at
	}, func(out []byte, at time.Time) []byte { return appendText(out, at.Format(time.RFC3339)) }}
}

// boolean is true or false.
func boolean[T any](at func(*T) *bool) kind[T] {
	return scalar[T, bool]{at, node{"type": "boolean"}, func(d *decoder, name string) bool {
		raw := string(d.value())
		if raw != "true" && raw != "false" {
			d.fail(name, raw, message.ID("true or false"))
		}
		return raw == "true"
	}, strconv.AppendBool}
}

// count is a whole number from zero to a most.
func count[T any](at func(*T) *int, most int) kind[T] {
	shape := node{"type": "integer", "minimum": 0}
	if most < anyNumber {
		shape["maximum"] = most
	}
	return scalar[T, int]{at, shape, func(d *decoder, name string) int {
		raw := string(d.value())
		n, err := strconv.Atoi(raw)
		switch {
		case err != nil || n < 0:
			d.fail(name, raw, message.ID("a whole number"))
		case n > most:
			d.fail(name, raw, message.New("at most {1}", whole(most)))
		}
		return n
	}, func(out []byte, n int) []byte { return strconv.AppendInt(out, int64(n), 10) }}
}

// anyNumber is the most of what is not limited.
const anyNumber = 1 << 31

// figure is a quantity from zero to a most, in the unit that its field's name
// says.
func figure[T any, Q ~float64](at func(*T) *unit.Maybe[Q], most float64) kind[T] {
	shape, accepted := node{"type": "number", "minimum": 0}, message.New("a number of zero or more")
	if most < anyNumber {
		shape["maximum"], accepted = most, message.New("a number from {1} to {2}", message.Figure("0"), whole(int(most)))
	}
	return quantity(at, shape, accepted, func(v float64) bool { return v >= 0 && v <= most })
}

// positive is a quantity above zero.
func positive[T any, Q ~float64](at func(*T) *unit.Maybe[Q]) kind[T] {
	return quantity(at, node{"type": "number", "exclusiveMinimum": 0, "maximum": FigureMost},
		message.New("a number above 0 and at most {1}", whole(int(FigureMost))), func(v float64) bool { return v > 0 && v <= FigureMost })
}

func quantity[T any, Q ~float64](at func(*T) *unit.Maybe[Q], shape node, accepted message.Message, holds func(float64) bool) kind[T] {
	return scalar[T, unit.Maybe[Q]]{at, shape, func(d *decoder, name string) unit.Maybe[Q] {
		raw := string(d.value())
		v, err := strconv.ParseFloat(raw, 64)
		if err != nil || !holds(v) {
			d.fail(name, raw, accepted)
		}
		return unit.Known(Q(v))
	}, func(out []byte, m unit.Maybe[Q]) []byte { return appendNumber(out, float64(m.Or(0))) }}
}

// appendNumber writes a number as the standard library does. Of what is no number
// it makes what nobody reads, so that it is never saved.
func appendNumber(out []byte, v float64) []byte {
	raw, err := json.Marshal(v)
	if err != nil {
		return strconv.AppendFloat(out, v, 'g', -1, 64)
	}
	return append(out, raw...)
}

// texts is a list of lines, each one of some words if there are any.
type texts[T any, S ~string] struct {
	at       func(*T) *[]S
	accepted []S
}

func (k texts[T, S]) read(d *decoder, name string, t *T) {
	list := *k.at(t)
	d.list(name, maxChosen, func(int) {
		s := S(d.text(name, false))
		if k.accepted != nil && !slices.Contains(k.accepted, s) {
			d.fail(name, string(s), message.New("a list of {1}", message.Name(joined(k.accepted))))
		}
		if k.accepted == nil || !slices.Contains(list, s) {
			list = append(list, s)
		}
	})
	*k.at(t) = list
}

func (k texts[T, S]) empty(t *T) bool   { return len(*k.at(t)) == 0 }
func (k texts[T, S]) share(to, from *T) { *k.at(to) = slices.Clone(*k.at(from)) }
func (k texts[T, S]) schema() node {
	items := node{"enum": k.accepted}
	if k.accepted == nil {
		items = node{"type": "string", "maxLength": maxLine, "description": "An option."}
	}
	return node{"type": "array", "items": items, "maxItems": maxChosen}
}

func (k texts[T, S]) append(out []byte, t *T) ([]byte, error) {
	return appendList(out, *k.at(t), func(out []byte, s *S) ([]byte, error) { return appendText(out, string(*s)), nil })
}

// constant is the same in every file, and was looked at before the others.
type constant[T any] struct {
	value  string // as JSON
	allows node
}

func (k constant[T]) read(d *decoder, _ string, _ *T)         { d.value() }
func (k constant[T]) empty(*T) bool                           { return false }
func (k constant[T]) share(_, _ *T)                           {}
func (k constant[T]) schema() node                            { return k.allows }
func (k constant[T]) append(out []byte, _ *T) ([]byte, error) { return append(out, k.value...), nil }

// part is an object within another. at returns what holds it, nil if there is
// none and none is to be begun.
type part[T, P any] struct {
	of *object[P]
	at func(t *T, begin bool) *P
}

func (k part[T, P]) read(d *decoder, name string, t *T) {
	d.within(func() { k.of.read(d, k.at(t, true)) }, func() message.Message { return message.Text(name) })
}

func (k part[T, P]) empty(t *T) bool                         { return k.at(t, false) == nil }
func (k part[T, P]) schema() node                            { return k.of.describe() }
func (k part[T, P]) append(out []byte, t *T) ([]byte, error) { return k.of.append(out, k.at(t, false)) }
func (k part[T, P]) share(to, from *T) {
	if p := k.at(from, false); p != nil {
		k.of.share(k.at(to, true), p)
	}
}

func (k part[T, P]) unknown(t *T, within string) []string {
	if p := k.at(t, false); p != nil {
		return k.of.unknown(p, within)
	}
	return nil
}

// list is a list of objects.
type list[T, I any] struct {
	of    *object[I]
	at    func(*T) *[]I
	most  int
	usual int                                               // how many there mostly are
	title func(name string, i int, item *I) message.Message // in an error; nil is name and number
	twin  func(d *decoder, before []I, item *I) error       // what is wrong with an item beside the others
	order func(*T) []I                                      // as written; nil is as they are
	reuse func(*I)                                          // empties an item whose room is used again; nil clears it
}

func (k list[T, I]) read(d *decoder, name string, t *T) {
	items := slices.Grow((*k.at(t))[:0], k.usual)
	d.list(name, k.most, func(i int) {
		if i == cap(items) {
			items = append(items, *new(I))
		}
		items = items[:i+1]
		item := &items[i]
		if k.reuse == nil {
			*item = *new(I)
		} else {
			k.reuse(item)
		}
		d.within(func() {
			k.of.read(d, item)
			if k.twin != nil && d.err == nil {
				d.err = k.twin(d, items[:i], item)
			}
		}, func() message.Message {
			if k.title != nil {
				return k.title(name, i, item)
			}
			return message.New("{1}, item {2}", message.Name(name), whole(i+1))
		})
	})
	*k.at(t) = items
}

func (k list[T, I]) empty(t *T) bool { return len(*k.at(t)) == 0 }
func (k list[T, I]) schema() node {
	return node{"type": "array", "items": k.of.describe(), "maxItems": k.most}
}

func (k list[T, I]) share(to, from *T) {
	for i := range *k.at(from) {
		var item I
		k.of.share(&item, &(*k.at(from))[i])
		*k.at(to) = append(*k.at(to), item)
	}
}

func (k list[T, I]) append(out []byte, t *T) ([]byte, error) {
	items := *k.at(t)
	if k.order != nil {
		items = k.order(t)
	}
	if len(items) > k.most {
		return nil, ErrTooMany
	}
	return appendList(out, items, k.of.append)
}

func (k list[T, I]) unknown(t *T, within string) []string {
	var found []string
	for i := range *k.at(t) {
		found = append(found, k.of.unknown(&(*k.at(t))[i], within)...)
	}
	return found
}

func appendList[I any](out []byte, items []I, one func([]byte, *I) ([]byte, error)) (_ []byte, err error) {
	out = append(out, '[')
	for i := range items {
		if i > 0 {
			out = append(out, ',')
		}
		if out, err = one(out, &items[i]); err != nil {
			return nil, message.Errorf("item {1}: {2}", whole(i+1), err)
		}
	}
	return append(out, ']'), nil
}

// appendText writes a text as JSON, with <, > and & as they are.
func appendText(out []byte, s string) []byte {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	_ = e.Encode(s) // a text cannot fail
	return append(out, bytes.TrimSuffix(b.Bytes(), []byte("\n"))...)
}

// joined lists words with a comma between.
func joined[S ~string](words []S) string {
	list := make([]string, len(words))
	for i, w := range words {
		list[i] = string(w)
	}
	return strings.Join(list, ", ")
}
