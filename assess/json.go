package assess

import (
	"bytes"
	"encoding/binary"
	"math/bits"
)

// scanner goes through a JSON text in one pass that checks the grammar (RFC 8259)
// as it goes. It copies nothing. TestScannerAgreesWithTheStandardLibrary holds it
// to encoding/json.
type scanner struct {
	data   []byte
	at     int  // the next byte to look at; at the start of a value after more
	depth  int  // of objects and lists begun
	broken bool // the text is not well-formed from at on, or nested too deeply
}

// enter begins the object or list at hand; false if the value is another.
func (s *scanner) enter(opens byte) bool {
	if s.at >= len(s.data) || s.data[s.at] != opens {
		return false
	}
	s.at++
	s.depth++
	s.broken = s.broken || s.depth > maxDepth
	return true
}

// more goes on to the next value of the object or list begun, the first if
// there was none yet, and reports whether there is one.
func (s *scanner) more(closes byte, first bool) bool {
	if s.broken {
		return false
	}
	s.at = skipSpace(s.data, s.at)
	switch {
	case s.at >= len(s.data):
		return s.fail()
	case s.data[s.at] == closes:
		s.at++
		s.depth--
		return false
	case first:
		return true
	case s.data[s.at] != ',':
		return s.fail()
	}
	s.at = skipSpace(s.data, s.at+1)
	return true
}

// name passes over the name of the member at hand, which it returns in its quotes.
func (s *scanner) name() (name []byte, ok bool) {
	from, end := s.at, -1
	if from < len(s.data) && s.data[from] == '"' {
		end = skipText(s.data, from)
	}
	if end < 0 {
		return nil, s.fail()
	}
	s.at = skipSpace(s.data, end)
	if s.at >= len(s.data) || s.data[s.at] != ':' {
		return nil, s.fail()
	}
	s.at = skipSpace(s.data, s.at+1)
	return s.data[from:end:end], true
}

// value passes over the value at hand and returns it, nil if it is broken.
func (s *scanner) value() []byte {
	end := skipValue(s.data, s.at, s.depth)
	if end < 0 {
		s.fail()
		return nil
	}
	raw := s.data[s.at:end:end]
	s.at = end
	return raw
}

func (s *scanner) fail() bool {
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
		return skipInside(text, at, depth)
	case 't':
		return skipWord(text, at, "true")
	case 'f':
		return skipWord(text, at, "false")
	case 'n':
		return skipWord(text, at, "null")
	}
	return skipNumber(text, at)
}

// skipInside passes over an object or a list.
func skipInside(text []byte, at, depth int) int {
	s := scanner{data: text, at: at, depth: depth}
	object := s.enter('{')
	if !object {
		s.enter('[')
	}
	for first := true; s.another(object, first); first = false {
		if s.at = skipValue(text, s.at, s.depth); s.at < 0 {
			return -1
		}
	}
	if s.broken {
		return -1
	}
	return s.at
}

// another goes on to the next value of an object or a list.
func (s *scanner) another(object, first bool) bool {
	if !object {
		return s.more(']', first)
	}
	if !s.more('}', first) {
		return false
	}
	_, ok := s.name()
	return ok
}

// passes passes over a name and its colon if that is what stands here.
func (s *scanner) passes(name string) bool {
	end := s.at + len(name) + 2
	if end >= len(s.data) || s.data[s.at] != '"' || s.data[end-1] != '"' || s.data[end] != ':' || string(s.data[s.at+1:end-1]) != name {
		return false
	}
	s.at = skipSpace(s.data, end+1)
	return true
}

// plain passes over a text in quotes if it is one that needs no closer look:
// printable ASCII with no escape. It returns where it begins and ends within its
// quotes.
func (s *scanner) plain() (from, to int, ok bool) {
	if s.at >= len(s.data) || s.data[s.at] != '"' {
		return 0, 0, false
	}
	from = s.at + 1
	for to = from; len(s.data)-to >= 8; to += 8 {
		x := binary.LittleEndian.Uint64(s.data[to:])
		q, b := x^quotes, x^slants
		if stop := ((q-ones)&^q | (b-ones)&^b | (x-spaces)&^x | x | (x&^highs + ones)) & highs; stop != 0 {
			if to += bits.TrailingZeros64(stop) / 8; s.data[to] != '"' {
				return 0, 0, false
			}
			s.at = to + 1
			return from, to, true
		}
	}
	return 0, 0, false
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
