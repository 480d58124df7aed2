package assess

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"slices"

	"cutbrief/assess/sanitize"
)

// field is one field of an object that was read. The raw value is a part of
// the file's bytes.
type field struct {
	name string
	raw  json.RawMessage
}

// maxFields is the most fields of an object; it bounds the search for twins.
const maxFields = 1000

// wellFormed reports in plain words what is wrong with a JSON text.
func wellFormed(data []byte) error {
	d := json.NewDecoder(bytes.NewReader(data))
	var raw json.RawMessage
	switch err := d.Decode(&raw); {
	case errors.Is(err, io.EOF):
		return errors.New("the file is empty")
	case errors.Is(err, io.ErrUnexpectedEOF):
		return errors.New("the file ends too early")
	case err != nil:
		return errors.New("not well-formed JSON: " + sanitize.Line(err.Error()))
	}
	return errors.New("there is more after the end of the visit")
}

// members splits a well-formed object into its fields, in the room of fields
// read before if there is enough. It refuses a field that is there twice: which
// of the two was meant cannot be known.
func members(data []byte, fields []field) ([]field, error) {
	s, ok := into(data, skipSpace(data, 0), 1, '{')
	if !ok {
		return nil, errors.New("a JSON object is expected")
	}
	for {
		raw, more := s.more()
		if !more {
			return fields, nil
		}
		if len(fields) == maxFields {
			return nil, fmt.Errorf("an object of more than %d fields; at most %d are accepted", maxFields, maxFields)
		}
		name, _ := unquote(raw)
		if slices.ContainsFunc(fields, func(f field) bool { return f.name == name }) {
			return nil, fmt.Errorf("field %s is there twice", quote(name))
		}
		fields = append(fields, field{name, s.value()})
	}
}

// split cuts a well-formed list into its items. It returns nil for anything
// else, and an empty list for an empty one.
func split(data []byte) []json.RawMessage {
	s, ok := into(data, skipSpace(data, 0), 1, '[')
	if !ok {
		return nil
	}
	parts := make([]json.RawMessage, 0, 4)
	for {
		if _, more := s.more(); !more {
			return parts
		}
		parts = append(parts, s.value())
	}
}

// unquote reads a JSON text, and makes no copy of one that is in the
// vocabulary; ok is false for any other value.
func unquote(raw json.RawMessage) (s string, ok bool) {
	if len(raw) < 2 || raw[0] != '"' {
		return "", false
	}
	inner := raw[1 : len(raw)-1]
	if bytes.IndexByte(inner, '\\') >= 0 {
		return unescape(raw)
	}
	if word, ok := vocabulary[string(inner)]; ok {
		return word, true
	}
	return string(inner), true
}

func unescape(raw json.RawMessage) (s string, ok bool) {
	return s, json.Unmarshal(raw, &s) == nil
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
