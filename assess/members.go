package assess

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"slices"

	"cutbrief/assess/gate"
)

// field is one field of an object that was read. The raw value is a part of
// the file's bytes.
type field struct {
	name string
	raw  json.RawMessage
}

// maxFields is the most fields of an object; it bounds the search for twins.
const maxFields = 1000

// wellFormed reports in plain words what is wrong with a JSON text. Everything
// below relies on it: splitting a well-formed text needs no further checks.
func wellFormed(data []byte) error {
	if json.Valid(data) {
		return nil
	}
	d := json.NewDecoder(bytes.NewReader(data))
	var raw json.RawMessage
	switch err := d.Decode(&raw); {
	case errors.Is(err, io.EOF):
		return errors.New("the file is empty")
	case errors.Is(err, io.ErrUnexpectedEOF):
		return errors.New("the file ends too early")
	case err != nil:
		return errors.New("not well-formed JSON: " + gate.Line(err.Error()))
	}
	return errors.New("there is more after the end of the visit")
}

// members splits a well-formed object into its fields, and refuses a field
// that is there twice: which of the two was meant cannot be known.
func members(data []byte) ([]field, error) {
	parts := split(data, '{')
	if parts == nil {
		return nil, errors.New("a JSON object is expected")
	}
	if len(parts) > 2*maxFields {
		return nil, fmt.Errorf("an object of %d fields; at most %d are accepted", len(parts)/2, maxFields)
	}
	fields := make([]field, 0, len(parts)/2)
	for i := 0; i+1 < len(parts); i += 2 {
		name := fieldName(parts[i])
		if slices.ContainsFunc(fields, func(f field) bool { return f.name == name }) {
			return nil, fmt.Errorf("field %s is there twice", quote(name))
		}
		fields = append(fields, field{name, parts[i+1]})
	}
	return fields, nil
}

// fieldName reads a name. The few names an answer has are not copied each time.
func fieldName(raw json.RawMessage) string {
	for _, name := range answerFields {
		if len(raw) == len(name)+2 && string(raw[1:len(raw)-1]) == name {
			return name
		}
	}
	name, _ := unquote(raw)
	return name
}

// answerFields are the fields of an answer, most common first.
var answerFields = [...]string{"question", "state", "said", "chosen", "metal", "unit", "note"}

// split cuts a well-formed object or list, told by its first character, into
// its values; those of an object are names and values in turn. It returns nil
// for anything else, and an empty list for an empty one.
func split(data []byte, first byte) []json.RawMessage {
	data = bytes.TrimSpace(data)
	if len(data) < 2 || data[0] != first {
		return nil
	}
	parts := make([]json.RawMessage, 0, 16)
	for i := 1; i < len(data)-1; {
		if bytes.IndexByte([]byte(" \t\r\n,:"), data[i]) >= 0 {
			i++
			continue
		}
		n := valueLen(data[i:])
		parts = append(parts, json.RawMessage(data[i:i+n:i+n]))
		i += n
	}
	return parts
}

// valueLen is the length of the well-formed value that data begins with.
func valueLen(data []byte) int {
	depth, inText := 0, false
	for i := 0; i < len(data); i++ {
		switch c := data[i]; {
		case inText && c == '\\':
			i++
		case inText:
			inText = c != '"'
			if !inText && depth == 0 {
				return i + 1
			}
		case c == '"':
			inText = true
		case c == '{' || c == '[':
			depth++
		case (c == '}' || c == ']') && depth == 1:
			return i + 1
		case c == '}' || c == ']':
			if depth == 0 {
				return i // a number or word before the end of what holds it
			}
			depth--
		case depth == 0 && (c == ',' || c == ' ' || c == '\t' || c == '\r' || c == '\n'):
			return i
		}
	}
	return len(data)
}

// unquote reads a JSON text; ok is false for any other value.
func unquote(raw json.RawMessage) (s string, ok bool) {
	if len(raw) < 2 || raw[0] != '"' {
		return "", false
	}
	if inner := raw[1 : len(raw)-1]; bytes.IndexByte(inner, '\\') < 0 {
		return string(inner), true
	}
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
