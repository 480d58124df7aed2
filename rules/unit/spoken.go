package unit

import (
	"strconv"
	"strings"
)

// numberWords are the numbers said as words, as far as thicknesses and lengths
// need them. They are only ever read.
var numberWords = map[string]int{
	"one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9, "ten": 10,
	"eleven": 11, "twelve": 12, "thirteen": 13, "fourteen": 14, "fifteen": 15, "sixteen": 16, "seventeen": 17,
	"eighteen": 18, "nineteen": 19, "twenty": 20, "thirty": 30, "forty": 40, "fifty": 50, "hundred": 100,
}

// partWords are the parts of an inch, a metre or an hour said as words.
var partWords = map[string]int{
	"half": 2, "halves": 2, "third": 3, "thirds": 3, "quarter": 4, "quarters": 4, "eighth": 8, "eighths": 8,
	"sixteenth": 16, "sixteenths": 16, "thirtysecond": 32, "thirtyseconds": 32,
}

// thirtySeconds makes one word of a part that is said in two.
var thirtySeconds = strings.NewReplacer("thirty-second", "thirtysecond", "thirty second", "thirtysecond")

// saying is a quantity in words, as far as it has been heard.
type saying struct {
	number  int // heard, and not yet known to be whole or a part; −1 for none
	article bool
	whole   int
	top     int // of the fraction, 0 for none
	bottom  int
	unit    []string
	worded  bool // some of it was in words
	implied bool // the whole is a one that nobody said
	bad     bool
}

// spoken turns a quantity said in words into one in figures: "an inch and a
// quarter" into "1 1/4 inch". A text without such words, or one that is not
// understood, stays as it is.
// A part said in two words is no part of a time: thirty seconds are seconds.
func spoken(text string, k Kind) string {
	if inFigures(text) {
		return text
	}
	s, heard := saying{number: -1}, strings.ToLower(text)
	if k != Time {
		heard = thirtySeconds.Replace(heard)
	}
	for _, w := range strings.Fields(heard) {
		for _, part := range hyphened(w) {
			s.hear(part)
		}
	}
	return s.written(text)
}

// inFigures reports the usual text, a number and a unit, at little cost.
func inFigures(text string) bool {
	if text == "" || text[0] < '0' || text[0] > '9' {
		return false
	}
	_, behind, _ := strings.Cut(text, " ")
	next, _, _ := strings.Cut(behind, " ")
	next = strings.ToLower(next)
	_, part := partWords[next]
	return !part && next != "and" && next != "thirty-seconds" && next != "thirty"
}

// hyphened parts "three-eighths", and leaves "12-gauge" and "1-1/4" together.
func hyphened(w string) []string {
	if strings.ContainsAny(w, "0123456789") {
		return []string{w}
	}
	return strings.Split(w, "-")
}

func (s *saying) hear(w string) {
	n, isNumber := numberWords[w]
	part, isPart := partWords[w]
	if figure, ok := natural(w); ok {
		n, isNumber = figure, true
	} else if isNumber || isPart {
		s.worded = true
	}
	switch {
	case isNumber:
		s.bad = s.bad || s.number >= 0 || s.top > 0 || len(s.unit) > 0 && s.whole == 0
		s.number = n
	case isPart:
		s.bad = s.bad || s.top > 0
		s.top, s.bottom, s.number, s.article = max(s.number, 1), part, -1, false
	case w == "a" || w == "an":
		s.article = true
	case w == "and" || w == "of" || w == "":
		s.settle()
	default:
		s.settle()
		s.name(w)
	}
}

// settle takes the number heard as whole.
func (s *saying) settle() {
	if s.number >= 0 {
		s.bad = s.bad || s.whole > 0
		s.whole, s.number = s.number, -1
	}
}

// name hears a unit. One inch is also said without its one: "an inch", "inch and
// a half".
func (s *saying) name(w string) {
	if s.whole == 0 && s.top == 0 {
		s.whole, s.worded, s.implied = 1, true, !s.article
		s.bad = s.bad || s.implied && !strings.HasPrefix(w, "inch")
	}
	s.unit = append(s.unit, w)
}

// written is what was heard in figures, else the text as it was.
func (s *saying) written(text string) string {
	s.settle()
	if !s.worded || s.bad || (s.top > 0 && s.top >= s.bottom) || (s.whole == 0 && s.top == 0) || (s.implied && s.top == 0) {
		return text
	}
	var out []string
	if s.whole > 0 {
		out = append(out, strconv.Itoa(s.whole))
	}
	if s.top > 0 {
		out = append(out, strconv.Itoa(s.top)+"/"+strconv.Itoa(s.bottom))
	}
	return strings.Join(append(out, s.unit...), " ")
}
