package assess

import (
	"bytes"
	"encoding/json"
	"errors"
	"io"
	"strconv"
	"strings"

	"cutbrief/rules/message"
)

// decoder reads a file in one pass. It keeps the first value that is wrong and
// goes on to the end, so that a text that is not well-formed is told before
// anything else. What it reads are parts of the file.
type decoder struct {
	scanner
	copy    string // the same text, of which what is read are parts
	version int    // of the format
	strange bool   // something was met that this program does not know
	place   int    // of the question of the last answer; 0 if it is unknown
	highest int    // of all places so far
	err     error  // the first value that is wrong
}

// maxFields is the most unknown fields of an object.
const maxFields = 1000

func (d *decoder) failWith(id message.ID, args ...any) {
	if d.err == nil {
		d.err = message.Errorf(id, args...)
	}
}

// fail reports a value and what is accepted in its place, a message or its ID.
func (d *decoder) fail(name, value string, accepted any) {
	if d.err == nil {
		d.err = message.Errorf("{1} is {2}; {3} is accepted", message.Name(name), quote(value), accepted)
	}
}

// within runs a part of the pass and names it in the error it brings.
func (d *decoder) within(read func(), title func() message.Message) {
	before := d.err
	read()
	if before == nil && d.err != nil {
		d.err = message.Errorf("{1}: {2}", title(), d.err)
	}
}

// text reads the text at hand, of one line or several, clean enough for a
// terminal and a page.
func (d *decoder) text(name string, long bool) string {
	s, raw, ok := d.said(name)
	if raw == nil || !ok || isPlain(s, long) {
		return s
	}
	if fits := room(s, long); !fits.IsEmpty() {
		d.fail(name, string(raw), message.New("a text of {1}", fits))
		return ""
	}
	return clean(s, long)
}

// said reads the text at hand as it stands. One that needs no cleaning has no raw.
func (d *decoder) said(name string) (s string, raw []byte, ok bool) {
	from := d.at
	if first, end, ok := d.plain(); ok && end-first <= maxLine && (first == end || d.data[first] != ' ' && d.data[end-1] != ' ') {
		return d.copy[first:end], nil, true
	}
	d.at = from
	if raw = d.value(); !bytes.HasPrefix(raw, []byte(`"`)) {
		d.fail(name, string(raw), message.ID("a text in quotes"))
		return "", raw, false
	}
	if s = d.copy[from+1 : d.at-1]; strings.IndexByte(s, '\\') >= 0 {
		s = d.unquoted(raw)
	}
	return s, raw, true
}

// unquoted is a text that may hold escapes.
func (d *decoder) unquoted(raw []byte) (s string) {
	inner := raw[1 : len(raw)-1]
	out := make([]byte, 0, len(inner))
	for i := 0; i < len(inner); i++ {
		if inner[i] != '\\' {
			out = append(out, inner[i])
			continue
		}
		i++
		short := strings.IndexByte(shortEscapes, inner[i])
		if short < 0 {
			return d.decoded(raw) // by its number
		}
		out = append(out, "\"\\/\b\f\n\r\t"[short])
	}
	return string(out)
}

// shortEscapes are the letters of escapes that are not by number.
const shortEscapes = `"\/bfnrt`

func (d *decoder) decoded(raw []byte) (s string) {
	if json.Unmarshal(raw, &s) != nil {
		d.broken = true // the scanner has seen it: cannot be
	}
	return s
}

// keep puts an unknown field away.
func (d *decoder) keep(extra *extras, name string) {
	d.strange = true
	from := d.at
	d.value()
	switch _, twice := (*extra)[name]; {
	case twice:
		d.failWith("field {1} is there twice", quote(name))
		return
	case len(*extra) == maxFields:
		d.failWith("an object of more than {1} fields; at most {1} are accepted", whole(maxFields))
		return
	case *extra == nil:
		*extra = extras{}
	}
	(*extra)[name] = json.RawMessage(d.copy[from:d.at])
}

// list goes through the list at hand and calls item for each value, which it must
// pass over. That it is too long is told before anything that is wrong in it.
func (d *decoder) list(name string, most int, item func(i int)) {
	from, before, n := d.at, d.err, 0
	if !d.enter('[') {
		d.fail(name, string(d.value()), message.New("a list of at most {1}", whole(most)))
		return
	}
	for ; d.more(']', n == 0); n++ {
		if n < most {
			item(n)
		} else {
			d.value()
		}
	}
	if n > most {
		d.err = before
		d.fail(name, d.copy[from:d.at], message.New("a list of at most {1}", whole(most)))
	}
}

// quote puts a value from a file into a message, in quotes.
func quote(s string) message.Name {
	s = brief(s)
	if !strings.HasPrefix(s, `"`) {
		return message.Name(`"` + s + `"`)
	}
	return message.Name(strings.Clone(s)) // the room of the file is used again
}

// whole is a number that programs read too: without marks between thousands.
func whole[N int | int64](n N) message.Figure { return message.Figure(strconv.FormatInt(int64(n), 10)) }

// wellFormed reports in plain words what is wrong with a JSON text.
func wellFormed(data []byte) error {
	d := json.NewDecoder(bytes.NewReader(data))
	var raw json.RawMessage
	var syntax *json.SyntaxError
	switch err := d.Decode(&raw); {
	case !shallow(data):
		return message.Errorf("nested too deeply")
	case errors.Is(err, io.EOF):
		return message.Errorf("the file is empty")
	case errors.Is(err, io.ErrUnexpectedEOF):
		return message.Errorf("the file ends too early")
	case errors.As(err, &syntax):
		return message.Errorf("not well-formed JSON at byte {1}", whole(syntax.Offset))
	}
	return message.Errorf("there is more after the end of the visit")
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
