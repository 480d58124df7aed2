package assess

import (
	"bytes"
	"encoding/json"
	"fmt"

	"cutbrief/rules/unit"
)

// showings writes the records of demonstrations in the order they were held.
func (v *Visit) showings() member {
	return listOf(v.Showings, func(s Showing) ([]byte, error) { return s.encode() })
}

// listOf writes a list, each item as encode does; one that is longer than what
// is read again fails with ErrTooMany.
func listOf[T any](items []T, encode func(T) ([]byte, error)) member {
	if len(items) > maxShown {
		return member{err: ErrTooMany}
	}
	var out bytes.Buffer
	out.WriteByte('[')
	for i, item := range items {
		if i > 0 {
			out.WriteByte(',')
		}
		raw, err := encode(item)
		if err != nil {
			return member{err: fmt.Errorf("item %d: %w", i+1, err)}
		}
		out.Write(raw)
	}
	out.WriteByte(']')
	return member{raw: out.Bytes()}
}

func (s Showing) encode() ([]byte, error) {
	var o object
	o.addText("date", s.Date)
	o.addText("system", s.System)
	if len(s.Cuts) > 0 {
		o.addRaw("cuts", listOf(s.Cuts, Shown.encode))
	}
	o.addText("words", s.Words)
	if len(s.Objections) > 0 {
		o.addRaw("objections", listOf(s.Objections, Objection.encode))
	}
	o.addText("outcome", string(s.Outcome))
	o.addText("because", s.Because)
	o.addText("against", string(s.Against))
	if s.Next != (Next{}) || len(s.nextExtra) > 0 {
		raw, err := s.Next.encode(s.nextExtra)
		o.addRaw("next", member{"", raw, err})
	}
	o.addExtra(s.extra)
	return o.bytes()
}

func (c Shown) encode() ([]byte, error) {
	var o object
	o.addText("cut", c.Cut)
	o.addText("name", c.Name)
	o.addText("metal", string(c.Metal))
	addNumber(&o, "thickness_mm", c.Thickness)
	addNumber(&o, "output_a", c.Output)
	addNumber(&o, "length_mm", c.Length)
	addNumber(&o, "took_s", c.Took)
	addNumber(&o, "predicted_s", c.Predicted)
	o.addText("result", string(c.Result))
	o.addText("why", c.Why)
	o.addExtra(c.extra)
	return o.bytes()
}

func (b Objection) encode() ([]byte, error) {
	var o object
	o.addText("said", b.Said)
	o.addText("answer", b.Answer)
	o.addExtra(b.extra)
	return o.bytes()
}

func (n Next) encode(extra map[string]json.RawMessage) ([]byte, error) {
	var o object
	o.addText("step", n.Step)
	o.addText("owner", n.Owner)
	o.addText("date", n.Date)
	o.addExtra(extra)
	return o.bytes()
}

// addNumber writes a known quantity; the field's name says its unit.
func addNumber[T ~float64](o *object, name string, m unit.Maybe[T]) {
	if value, known := m.Get(); known {
		o.add(name, float64(value))
	}
}
