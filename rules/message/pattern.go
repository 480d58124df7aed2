package message

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// pattern is a row with holes, to be fitted to a line that was typed.
type pattern struct {
	english string
	literal []string // around the holes: one more than there are holes
	holes   []int    // which hole stands between literal i and i+1
	words   []piece  // what is said
}

// piece is a part of what is said: a text, or a hole if hole is above zero.
type piece struct {
	text string
	hole int
}

// Holes are the holes of a wording, each once, rising.
func Holes(s string) []int {
	var holes []int
	for _, p := range takeApart(s) {
		if p.hole > 0 && !slices.Contains(holes, p.hole) {
			holes = append(holes, p.hole)
		}
	}
	slices.Sort(holes)
	return holes
}

// takeApart cuts a sentence at its holes {1} to {9}.
func takeApart(s string) (pieces []piece) {
	for {
		i := nextHole(s)
		if i < 0 {
			break
		}
		pieces = append(pieces, piece{text: s[:i]}, piece{hole: int(s[i+1] - '0')})
		s = s[i+3:]
	}
	return append(pieces, piece{text: s})
}

func nextHole(s string) int {
	for i := 0; i+2 < len(s); i++ {
		if s[i] == '{' && s[i+1] >= '1' && s[i+1] <= '9' && s[i+2] == '}' {
			return i
		}
	}
	return -1
}

// newPattern builds the pattern of a row with holes.
func newPattern(english, words string) pattern {
	p := pattern{english: english, words: takeApart(words)}
	for _, part := range takeApart(english) {
		if part.hole > 0 {
			p.holes = append(p.holes, part.hole)
			continue
		}
		p.literal = append(p.literal, part.text)
	}
	p.literal[0] = lowFirst(p.literal[0])
	return p
}

// fill puts what fills the holes into the words.
func (p *pattern) fill(holes map[int]string) string {
	var out strings.Builder
	for _, part := range p.words {
		if part.hole > 0 {
			out.WriteString(holes[part.hole])
		} else {
			out.WriteString(part.text)
		}
	}
	return out.String()
}

// could reports cheaply whether a text, its first letter small, can fit.
func (p *pattern) could(text string) bool {
	last := p.literal[len(p.literal)-1]
	if !strings.HasPrefix(text, p.literal[0]) || !strings.HasSuffix(text, last) || len(text) < len(p.literal[0])+len(last)+len(p.holes) {
		return false
	}
	for _, l := range p.literal[1 : len(p.literal)-1] {
		if !strings.Contains(text, l) {
			return false
		}
	}
	return true
}

// lowFirst writes the first letter small.
func lowFirst(s string) string {
	r, n := utf8.DecodeRuneInString(s)
	if n == 0 || !unicode.IsUpper(r) {
		return s
	}
	return string(unicode.ToLower(r)) + s[n:]
}

// capFirst writes the first letter as a capital.
func capFirst(s string) string {
	r, n := utf8.DecodeRuneInString(s)
	if n == 0 || !unicode.IsLower(r) {
		return s
	}
	return string(unicode.ToUpper(r)) + s[n:]
}

func startsCapital(s string) bool {
	r, _ := utf8.DecodeRuneInString(s)
	return unicode.IsUpper(r)
}
