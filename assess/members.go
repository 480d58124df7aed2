package assess

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"strings"
	"time"

	"cutbrief/assess/gate"
)

// members reads a JSON object into its fields, and refuses a field that is
// there twice: which of the two was meant cannot be known.
func members(data []byte) (map[string]json.RawMessage, error) {
	d := json.NewDecoder(bytes.NewReader(data))
	if t, err := d.Token(); err != nil || t != json.Delim('{') {
		return nil, notObject(err)
	}
	fields := map[string]json.RawMessage{}
	for d.More() {
		t, err := d.Token()
		if err != nil {
			return nil, syntax(err)
		}
		name, _ := t.(string)
		if _, twice := fields[name]; twice {
			return nil, fmt.Errorf("field %s is there twice", quote(name))
		}
		var raw json.RawMessage
		if err := d.Decode(&raw); err != nil {
			return nil, syntax(err)
		}
		fields[name] = raw
	}
	if _, err := d.Token(); err != nil {
		return nil, syntax(err)
	}
	if _, err := d.Token(); !errors.Is(err, io.EOF) {
		return nil, errors.New("there is more after the end of the visit")
	}
	return fields, nil
}

func notObject(err error) error {
	switch {
	case errors.Is(err, io.EOF):
		return errors.New("the file is empty")
	case err != nil:
		return syntax(err)
	}
	return errors.New("a JSON object is expected")
}

// syntax rewords an error of the JSON decoder so that it names no Go type.
func syntax(err error) error {
	if errors.Is(err, io.EOF) || errors.Is(err, io.ErrUnexpectedEOF) {
		return errors.New("the file ends too early")
	}
	return errors.New("not well-formed JSON: " + gate.Line(err.Error()))
}

// shallow reports whether the nesting of a JSON text stays within maxDepth.
func shallow(data []byte) bool {
	depth, inText := 0, false
	for i := 0; i < len(data); i++ {
		switch c := data[i]; {
		case inText && c == '\\':
			i++
		case c == '"':
			inText = !inText
		case inText:
		case c == '{' || c == '[':
			if depth++; depth > maxDepth {
				return false
			}
		case c == '}' || c == ']':
			depth--
		}
	}
	return true
}

// taker takes known fields out of an object, one after the other, and keeps
// the first error. What is left over is unknown.
type taker struct {
	fields map[string]json.RawMessage
	err    error
}

func (t *taker) take(name string) (json.RawMessage, bool) {
	raw, ok := t.fields[name]
	delete(t.fields, name)
	return raw, ok && t.err == nil
}

func (t *taker) fail(name string, raw json.RawMessage, accepted string) {
	if t.err == nil {
		t.err = fmt.Errorf("%s is %s; %s is accepted", name, quote(string(raw)), accepted)
	}
}

// line takes a text of one line, clean enough for a terminal and a page.
func (t *taker) line(name string) string { return t.text(name, false) }

// lines takes a text of several lines.
func (t *taker) lines(name string) string { return t.text(name, true) }

func (t *taker) text(name string, long bool) string {
	raw, ok := t.take(name)
	if !ok {
		return ""
	}
	return t.textOf(name, raw, long)
}

func (t *taker) textOf(name string, raw json.RawMessage, long bool) string {
	var s string
	if raw[0] != '"' || json.Unmarshal(raw, &s) != nil {
		t.fail(name, raw, "a text in quotes")
		return ""
	}
	if fits := room(s, long); fits != "" {
		t.fail(name, raw, "a text of "+fits)
		return ""
	}
	return clean(s, long)
}

// texts takes a list of lines.
func (t *taker) texts(name string) []string {
	raw, ok := t.take(name)
	if !ok {
		return nil
	}
	var items []json.RawMessage
	if raw[0] != '[' || json.Unmarshal(raw, &items) != nil || len(items) > maxChosen {
		t.fail(name, raw, fmt.Sprintf("a list of at most %d texts", maxChosen))
		return nil
	}
	var list []string
	for _, item := range items {
		list = append(list, t.textOf(name, item, false))
	}
	return list
}

func (t *taker) whole(name string) (n int, found bool) {
	raw, ok := t.take(name)
	if !ok {
		return 0, false
	}
	if raw[0] == 'n' || json.Unmarshal(raw, &n) != nil || n < 0 {
		t.fail(name, raw, "a whole number")
	}
	return n, true
}

func (t *taker) yes(name string) (b bool) {
	raw, ok := t.take(name)
	if ok && (raw[0] == 'n' || json.Unmarshal(raw, &b) != nil) {
		t.fail(name, raw, "true or false")
	}
	return b
}

func (t *taker) time(name string) time.Time {
	said := t.line(name)
	if said == "" {
		return time.Time{}
	}
	at, err := time.Parse(time.RFC3339, said)
	if err != nil || at.IsZero() {
		t.fail(name, json.RawMessage(said), "a time like 2026-11-25T09:30:00Z")
	}
	return at
}

// quote puts a value from a file into a message, in quotes.
func quote(s string) string {
	s = brief(s)
	if strings.HasPrefix(s, `"`) {
		return s
	}
	return `"` + s + `"`
}
