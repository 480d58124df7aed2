package assess

import (
	"bytes"
	"encoding/json"
	"fmt"
	"slices"
	"strings"
	"time"
)

// taker takes known fields out of an object, one after the other, and keeps
// the first error. What is left over is unknown.
type taker struct {
	fields []field
	err    error
}

func (t *taker) take(name string) (json.RawMessage, bool) {
	i := slices.IndexFunc(t.fields, func(f field) bool { return f.name == name })
	if i < 0 {
		return nil, false
	}
	raw := t.fields[i].raw
	t.fields = slices.Delete(t.fields, i, i+1)
	return raw, t.err == nil
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
	s, ok := unquote(raw)
	if !ok {
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
	items := split(raw)
	if items == nil || len(items) > maxChosen {
		t.fail(name, raw, fmt.Sprintf("a list of at most %d texts", maxChosen))
		return nil
	}
	if len(items) == 0 {
		return nil
	}
	list := make([]string, 0, len(items))
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

// leftOver is what nobody took, or nil. It is copied: it outlives the file's
// bytes.
func (t *taker) leftOver() map[string]json.RawMessage {
	if len(t.fields) == 0 {
		return nil
	}
	extra := make(map[string]json.RawMessage, len(t.fields))
	for _, f := range t.fields {
		extra[f.name] = bytes.Clone(f.raw)
	}
	return extra
}
