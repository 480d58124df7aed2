package assess

import (
	"bytes"
	"encoding/binary"
	"math/bits"
)

// steps walks through the members of a JSON object, or the items of a list, in
// one pass that checks the grammar (RFC 8259) as it goes. It copies nothing.
// TestStepsAgreeWithTheStandardLibrary holds it to encoding/json.
type steps struct {
	text   []byte
	at     int // the next byte to look at; at the start of a value after more
	depth  int
	closes byte
	begun  bool
	broken bool // the text is not well-formed from at on, or nested too deeply
}

// into starts walking at the object or list at a place of a text; ok is false if
// there is none.
func into(text []byte, at, depth int, opens byte) (s steps, ok bool) {
	if at < 0 || at >= len(text) || text[at] != opens {
		return steps{}, false
	}
	return steps{text: text, at: at + 1, depth: depth, closes: opens + 2, broken: depth > maxDepth}, true // '{' + 2 is '}', '[' + 2 is ']'
}

// more goes on to the next value and reports whether there is one. Of a member
// it returns the name, in its quotes.
func (s *steps) more() (name []byte, ok bool) {
	if s.broken {
		return nil, false
	}
	s.at = skipSpace(s.text, s.at)
	switch {
	case s.at >= len(s.text):
		return nil, s.fail()
	case s.text[s.at] == s.closes:
		s.at++
		return nil, false
	case s.begun && s.text[s.at] != ',':
		return nil, s.fail()
	case s.begun:
		s.at = skipSpace(s.text, s.at+1)
	}
	s.begun = true
	if s.closes == ']' {
		return nil, true
	}
	return s.name()
}

// name passes over the name of a member and its colon.
func (s *steps) name() ([]byte, bool) {
	from := s.at
	end := -1
	if from < len(s.text) && s.text[from] == '"' {
		end = skipText(s.text, from)
	}
	if end < 0 {
		return nil, s.fail()
	}
	s.at = skipSpace(s.text, end)
	if s.at >= len(s.text) || s.text[s.at] != ':' {
		return nil, s.fail()
	}
	s.at = skipSpace(s.text, s.at+1)
	return s.text[from:end:end], true
}

// value passes over the value at hand and returns it, nil if it is broken.
func (s *steps) value() []byte {
	end := skipValue(s.text, s.at, s.depth)
	if end < 0 {
		s.fail()
		return nil
	}
	raw := s.text[s.at:end:end]
	s.at = end
	return raw
}

// enter walks into the value at hand; leave goes on behind it.
func (s *steps) enter(opens byte) (steps, bool) { return into(s.text, s.at, s.depth+1, opens) }

func (s *steps) leave(inner steps) { s.at, s.broken = inner.at, inner.broken }

func (s *steps) fail() bool {
	s.broken = true
	return false
}

// skipValue returns where the value that begins at a place ends, or −1 if it is
// not well-formed or nested too deeply. depth is that of what holds it.
func skipValue(text []byte, at, depth int) int {
	if at >= len(text) {
		return -1
	}
	switch text[at] {
	case '"':
		return skipText(text, at)
	case '{', '[':
		s, _ := into(text, at, depth+1, text[at])
		for {
			if _, ok := s.more(); !ok {
				break
			}
			if s.at = skipValue(text, s.at, s.depth); s.at < 0 {
				return -1
			}
		}
		if s.broken {
			return -1
		}
		return s.at
	case 't':
		return skipWord(text, at, "true")
	case 'f':
		return skipWord(text, at, "false")
	case 'n':
		return skipWord(text, at, "null")
	}
	return skipNumber(text, at)
}

func skipWord(text []byte, at int, word string) int {
	if len(text)-at < len(word) || string(text[at:at+len(word)]) != word {
		return -1
	}
	return at + len(word)
}

// Eight bytes at once: each byte of a word holds the same.
const (
	ones   = 0x0101010101010101
	highs  = 0x80 * ones
	spaces = ' ' * ones
	quotes = '"' * ones
	slants = '\\' * ones
)

// skipSpace passes over white space: eight spaces at a time, as a saved visit is
// a third indentation.
func skipSpace(text []byte, at int) int {
	for at < len(text) && text[at] <= ' ' {
		if len(text)-at > 8 && text[at] == '\n' {
			at++
			differ := binary.LittleEndian.Uint64(text[at:]) ^ spaces
			at += bits.TrailingZeros64(differ) / 8
			continue
		}
		if !isSpace(text[at]) {
			return at
		}
		at++
	}
	return at
}

func isSpace(c byte) bool { return c == ' ' || c == '\n' || c == '\r' || c == '\t' }

// skipText returns the place behind the text in quotes that begins at a place.
func skipText(text []byte, at int) int {
	for at++; at < len(text); at++ {
		if at = skipPlain(text, at); at == len(text) {
			return -1
		}
		switch text[at] {
		case '"':
			return at + 1
		case '\\':
			if at = skipEscape(text, at); at < 0 {
				return -1
			}
		default:
			return -1
		}
	}
	return -1
}

// skipPlain passes over the part of a text up to a quote, a backslash or a
// control character. In a word of eight bytes, a byte less one sets its high bit
// if it was zero, and a byte less 0x20 if it was a control character; the lowest
// byte so marked is marked rightly.
func skipPlain(text []byte, at int) int {
	for ; len(text)-at >= 8; at += 8 {
		x := binary.LittleEndian.Uint64(text[at:])
		q, s := x^quotes, x^slants
		stop := ((q-ones)&^q | (s-ones)&^s | (x-spaces)&^x) & highs
		if stop != 0 {
			return at + bits.TrailingZeros64(stop)/8
		}
	}
	for at < len(text) && text[at] >= ' ' && text[at] != '"' && text[at] != '\\' {
		at++
	}
	return at
}

// skipEscape returns the last byte of an escape.
func skipEscape(text []byte, at int) int {
	if at+1 >= len(text) {
		return -1
	}
	if bytes.IndexByte([]byte(`"\/bfnrt`), text[at+1]) >= 0 {
		return at + 1
	}
	if text[at+1] != 'u' || at+5 >= len(text) {
		return -1
	}
	for _, c := range text[at+2 : at+6] {
		if (c < '0' || c > '9') && (c|0x20 < 'a' || c|0x20 > 'f') {
			return -1
		}
	}
	return at + 5
}

func skipNumber(text []byte, at int) int {
	if at < len(text) && text[at] == '-' {
		at++
	}
	first := at
	if at = skipDigits(text, at); at < 0 || (text[first] == '0' && at > first+1) {
		return -1
	}
	if at < len(text) && text[at] == '.' {
		if at = skipDigits(text, at+1); at < 0 {
			return -1
		}
	}
	if at < len(text) && text[at]|0x20 == 'e' {
		at++
		if at < len(text) && (text[at] == '+' || text[at] == '-') {
			at++
		}
		at = skipDigits(text, at)
	}
	return at
}

// skipDigits passes over at least one digit.
func skipDigits(text []byte, at int) int {
	from := at
	for at < len(text) && text[at] >= '0' && text[at] <= '9' {
		at++
	}
	if at == from {
		return -1
	}
	return at
}

// isWellFormed reports whether a text is one JSON value, nested no deeper than
// is accepted, with nothing but white space around it.
func isWellFormed(text []byte) bool {
	end := skipValue(text, skipSpace(text, 0), 0)
	return end >= 0 && skipSpace(text, end) == len(text)
}
