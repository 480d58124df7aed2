package unit

import (
	"strconv"
	"strings"

	"cutbrief/rules/message"
)

// amount is a number as it was written.
type amount struct {
	value float64
	over  int // denominator if written as a fraction, else 0
}

// notNumber is a text that is no number.
var notNumber = message.New("the number cannot be read")

// twoReadings is a number with one sign in it that may be for thousands or decimals.
const twoReadings message.ID = "it can be read as {1} or as {2}"

// readAmount reads 12, 3/8, 1 1/4, 1-1/4, .25, 3,5 and numbers with thousands
// separators. whole says that three digits behind a comma are thousands; see
// decimal. The reason is empty if the number was understood.
func readAmount(s string, whole bool) (a amount, reason message.Message) {
	if !strings.Contains(s, "/") {
		a.value, reason = decimal(s, whole)
		return a, reason
	}
	before, fraction := "", s
	if i := strings.LastIndexAny(s, " -"); i > 0 {
		before, fraction = s[:i], s[i+1:]
	}
	top, bottom, _ := strings.Cut(fraction, "/")
	n, okTop := natural(top)
	d, okBottom := natural(bottom)
	w, okWhole := 0, true
	if before != "" {
		w, okWhole = natural(before)
	}
	switch {
	case !okTop || !okBottom || !okWhole:
		return amount{}, notNumber
	case d == 0:
		return amount{}, message.New("a fraction cannot have 0 below the line")
	case before != "" && n >= d:
		return amount{}, message.New("the fraction behind a whole number must be less than 1")
	}
	return amount{float64(w) + float64(n)/float64(d), d}, message.Message{}
}

// natural reads up to six digits and nothing else.
func natural(s string) (int, bool) {
	if len(s) > 6 || !digits(s) {
		return 0, false
	}
	n, err := strconv.Atoi(s)
	return n, err == nil
}

func digits(s string) bool {
	for i := range len(s) {
		if s[i] < '0' || s[i] > '9' {
			return false
		}
	}
	return true
}

// decimal reads a number with a point or a comma and thousands separators.
//
// A space between groups of three digits is a thousands separator. With both
// signs present the last is the decimal sign. A sign that occurs more than once
// separates thousands. One sign followed by exactly three digits is the hard
// case: in a price or a count 12,000 is twelve thousand and 12.000 is refused
// because it is read both ways; in a measure 3.175 is a decimal and 3,175 is
// refused. In every other case one sign is the decimal sign.
func decimal(s string, whole bool) (float64, message.Message) {
	body, ok := joinSpaces(s)
	if !ok || strings.Trim(body, "0123456789.,") != "" {
		return 0, notNumber
	}
	plain, reason := body, message.Message{}
	points, commas := strings.Count(body, "."), strings.Count(body, ",")
	switch {
	case points+commas == 0:
	case points > 0 && commas > 0:
		plain, reason = bothSigns(body)
	case points+commas > 1:
		plain, reason = dropGroups(body, firstSign(body))
	default:
		plain, reason = oneSign(body, whole)
	}
	if !reason.IsEmpty() {
		return 0, reason
	}
	v, err := strconv.ParseFloat(plain, 64)
	if err != nil {
		return 0, notNumber
	}
	return v, message.Message{}
}

// joinSpaces closes up "12 000" and "1 234,5". What was closed up has four digits
// or more before the first sign, so that no sign in it is read as one for thousands.
func joinSpaces(s string) (joined string, ok bool) {
	if !strings.Contains(s, " ") {
		return s, true
	}
	front := s // of the decimal sign, if it stands in the last group
	if cut := strings.LastIndexAny(s, " ") + 1; strings.ContainsAny(s[cut:], ".,") {
		front = s[:cut+strings.IndexAny(s[cut:], ".,")]
	}
	return strings.ReplaceAll(s, " ", ""), grouped(front, " ")
}

// grouped reports one to three digits and groups of three after them.
func grouped(s, sign string) bool {
	for i, g := range strings.Split(s, sign) {
		if !digits(g) || (i == 0 && (g == "" || len(g) > 3)) || (i > 0 && len(g) != 3) {
			return false
		}
	}
	return true
}

// bothSigns reads 1,234.5 and 1.234,5.
func bothSigns(s string) (plain string, reason message.Message) {
	cut := strings.LastIndexAny(s, ".,")
	head, tail := s[:cut], s[cut+1:]
	head, reason = dropGroups(head, firstSign(head))
	return head + "." + tail, reason
}

// firstSign is the first point or comma.
func firstSign(s string) string {
	i := strings.IndexAny(s, ".,")
	return s[i : i+1]
}

// dropGroups removes thousands separators that stand where they should.
func dropGroups(s, sign string) (plain string, reason message.Message) {
	if !grouped(s, sign) {
		return "", notNumber
	}
	return strings.ReplaceAll(s, sign, ""), message.Message{}
}

// oneSign reads a body with a single point or comma.
func oneSign(s string, whole bool) (plain string, reason message.Message) {
	cut := strings.IndexAny(s, ".,")
	head, tail := s[:cut], s[cut+1:]
	thousands := len(tail) == 3 && head != "" && head[0] != '0' && len(head) <= 3
	comma := s[cut] == ','
	switch {
	case thousands && whole && comma:
		return head + tail, message.Message{}
	case thousands && whole != comma:
		return "", message.New(twoReadings, message.Name(head+"."+tail), message.Name(head+tail))
	}
	return head + "." + tail, message.Message{}
}

// numberWords are the numbers said as words, as far as thicknesses and lengths
// need them. They are only ever read.
var numberWords = map[string]int{
	"one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9, "ten": 10,
	"eleven": 11, "twelve": 12, "thirteen": 13, "fourteen": 14, "fifteen": 15, "sixteen": 16, "seventeen": 17,
	"eighteen": 18, "nineteen": 19, "twenty": 20, "thirty": 30, "forty": 40, "fifty": 50, "hundred": 100,
}

// partWords are the parts of an inch, a metre or an hour said as words.
var partWords = map[string]int{
	"half": 2, "third": 3, "thirds": 3, "quarter": 4, "quarters": 4, "eighth": 8, "eighths": 8,
	"sixteenth": 16, "sixteenths": 16, "thirtysecond": 32, "thirtyseconds": 32,
}

// thirtySeconds makes one word of a part that is said in two.
var thirtySeconds = strings.NewReplacer("thirty-second", "thirtysecond", "thirty second", "thirtysecond")

// saying is a quantity in words, as far as it has been heard.
type saying struct {
	number  int // heard, and not yet known to be whole or a part; 0 for none
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
	s, heard := saying{}, strings.ToLower(text)
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
		s.bad = s.bad || n == 0 || s.number > 0 || s.top > 0
		s.number = n
	case isPart:
		s.bad = s.bad || s.top > 0 || s.number >= part
		s.top, s.bottom, s.number = max(s.number, 1), part, 0
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
	if s.number > 0 {
		s.bad = s.bad || s.whole > 0
		s.whole, s.number = s.number, 0
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
	if !s.worded || s.bad || (s.whole == 0 && s.top == 0) || (s.implied && s.top == 0) {
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
