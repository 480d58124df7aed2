package message

import (
	"fmt"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// typing is a way to type something, in small letters, and what is meant. It has
// one hole at most, which what is meant has too.
type typing struct{ before, hole, after, meant string }

// typings are rows turned round: what is typed, and what is meant.
func typings(rows []Row) []typing {
	var list []typing
	for _, r := range rows {
		switch parts := takeApart(r.ID); len(parts) {
		case 1:
			list = append(list, typing{before: r.ID, meant: r.Words})
		case 3:
			list = append(list, typing{parts[0].text, fmt.Sprintf("{%d}", parts[1].hole), parts[2].text, r.Words})
		}
	}
	return list
}

// Word is a line as the plain interview understands it: what is typed in the
// book's words for "back" comes out as "back". A line that is none of them comes
// out as it is, and so do our own words.
func (c *Catalog) Word(line string) string {
	if c == nil {
		return line
	}
	return heard(c.words, line)
}

// several is how many ways of typing may meet in one answer: about, a unit, a day.
const several = 3

// Answer is an answer as it is read: what is typed in the book's words for
// "none" or "about 40 m a day" comes out as that.
func (c *Catalog) Answer(line string) string {
	if c == nil {
		return line
	}
	for range several {
		line = heard(c.answers, line)
	}
	return line
}

// heard turns a line round by the first way of typing it that it fits. What
// fills a hole stays as typed.
func heard(list []typing, line string) string {
	trimmed := strings.TrimSpace(line)
	low := strings.ToLower(trimmed)
	if len(low) != len(trimmed) {
		return line // letters whose small form is longer: none of ours
	}
	for _, t := range list {
		typed, begins := strings.CutPrefix(low, t.before)
		typed, ends := strings.CutSuffix(typed, t.after)
		switch {
		case !begins || !ends:
		case t.hole == "" && typed == "":
			return t.meant
		case t.hole != "" && typed != "":
			typed = trimmed[len(t.before) : len(trimmed)-len(t.after)]
			return strings.ReplaceAll(t.meant, t.hole, typed)
		}
	}
	return line
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
	for i := 0; i+2 < len(s); i++ {
		if s[i] == '{' && s[i+1] >= '1' && s[i+1] <= '9' && s[i+2] == '}' {
			pieces = append(pieces, piece{text: s[:i]}, piece{hole: int(s[i+1] - '0')})
			s, i = s[i+3:], -1
		}
	}
	return append(pieces, piece{text: s})
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
