package assess

import (
	"bytes"
	"encoding/json"
	"fmt"
	"maps"
	"slices"
	"sort"
	"time"

	"cutbrief/rules/metal"
)

// Encode writes the visit, indented by two spaces, in stable order: the same
// visit gives the same bytes. Fields this program did not know when it read
// the visit come after those it knows. It fails with ErrTooLarge or
// ErrTooMany rather than write what Decode would refuse.
func (v *Visit) Encode() ([]byte, error) {
	var o object
	o.add("format", formatName)
	o.add("version", formatVersion)
	o.addText("id", v.ID)
	o.addTime("created", v.Created)
	o.addTime("updated", v.Updated)
	if v.Revision > 0 {
		o.add("revision", v.Revision)
	}
	if v.Demo {
		o.add("demo", true)
	}
	if len(v.Skipped) > 0 {
		o.add("skipped", v.Skipped)
	}
	if v.Overrule != nil {
		o.addRaw("overrule", v.overrule())
	}
	if v.Recommended != nil {
		o.addRaw("recommended", v.Recommended.encode())
	}
	if v.Spent != nil {
		o.addRaw("spent", v.Spent.encode())
	}
	o.addRaw("answers", v.answers())
	if len(v.Showings) > 0 {
		o.addRaw("showings", v.showings())
	}
	o.addExtra(v.extra)
	return indent(o)
}

func indent(o object) ([]byte, error) {
	compact, err := o.bytes()
	if err != nil {
		return nil, fmt.Errorf("write visit: %w", err)
	}
	var out bytes.Buffer
	if err := json.Indent(&out, compact, "", "  "); err != nil {
		return nil, fmt.Errorf("write visit: %w", err)
	}
	out.WriteByte('\n')
	if out.Len() > MaxSize {
		return nil, fmt.Errorf("write visit: %d bytes: %w", out.Len(), ErrTooLarge)
	}
	return out.Bytes(), nil
}

func (v *Visit) overrule() member {
	var o object
	o.addText("requirement", string(v.Overrule.Requirement))
	o.addText("reason", v.Overrule.Reason)
	o.addExtra(v.overruleExtra)
	raw, err := o.bytes()
	return member{"", raw, err}
}

// answers writes the answers in catalogue order.
func (v *Visit) answers() member {
	var out bytes.Buffer
	out.WriteByte('[')
	for i, a := range v.inOrder() {
		if i > 0 {
			out.WriteByte(',')
		}
		raw, err := a.encode()
		if err != nil {
			return member{err: fmt.Errorf("answer %q: %w", a.Question, err)}
		}
		out.Write(raw)
	}
	out.WriteByte(']')
	return member{raw: out.Bytes()}
}

// inOrder returns the answers by question, then by metal: chosen metals first,
// as chosen. Questions this program does not know come last, as they came.
func (v *Visit) inOrder() []Answer {
	metals := v.Metals()
	for _, m := range metal.List() {
		if !slices.Contains(metals, m.ID) {
			metals = append(metals, m.ID)
		}
	}
	sorted := slices.Clone(v.Answers)
	sort.SliceStable(sorted, func(i, j int) bool {
		a, b := sorted[i], sorted[j]
		if placeOf(a) != placeOf(b) {
			return placeOf(a) < placeOf(b)
		}
		return placeOf(a) < len(catalogue) && slices.Index(metals, a.Metal) < slices.Index(metals, b.Metal)
	})
	return sorted
}

func placeOf(a Answer) int {
	if i, ok := places[a.Question]; ok {
		return i
	}
	return len(catalogue)
}

func (a Answer) encode() ([]byte, error) {
	var o object
	o.addText("question", string(a.Question))
	o.addText("metal", string(a.Metal))
	o.addText("said", a.Said)
	o.addText("unit", a.Unit)
	if len(a.Chosen) > 0 {
		o.add("chosen", a.Chosen)
	}
	o.addText("state", string(a.State))
	o.addText("note", a.Note)
	o.addExtra(a.extra)
	return o.bytes()
}

// member is one field of an object being written.
type member struct {
	name string
	raw  json.RawMessage
	err  error
}

// object is a JSON object that keeps the order of its fields.
type object []member

func (o *object) add(name string, value any) {
	var out bytes.Buffer
	e := json.NewEncoder(&out)
	e.SetEscapeHTML(false)
	err := e.Encode(value)
	*o = append(*o, member{name, bytes.TrimSpace(out.Bytes()), err})
}

func (o *object) addRaw(name string, m member) { *o = append(*o, member{name, m.raw, m.err}) }

func (o *object) addText(name, value string) {
	if value != "" {
		o.add(name, value)
	}
}

func (o *object) addTime(name string, t time.Time) {
	if !t.IsZero() {
		o.add(name, t.Format(time.RFC3339))
	}
}

func (o *object) addExtra(extra map[string]json.RawMessage) {
	for _, name := range slices.Sorted(maps.Keys(extra)) {
		*o = append(*o, member{name: name, raw: extra[name]})
	}
}

func (o object) bytes() ([]byte, error) {
	var out bytes.Buffer
	out.WriteByte('{')
	for i, m := range o {
		if m.err != nil {
			return nil, fmt.Errorf("field %q: %w", m.name, m.err)
		}
		if i > 0 {
			out.WriteByte(',')
		}
		name, err := json.Marshal(m.name)
		if err != nil {
			return nil, err
		}
		out.Write(name)
		out.WriteByte(':')
		out.Write(m.raw)
	}
	out.WriteByte('}')
	return out.Bytes(), nil
}
