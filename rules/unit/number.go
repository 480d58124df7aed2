package unit

import (
	"strconv"
	"strings"
)

// amount is a number as it was written.
type amount struct {
	value float64
	over  int // denominator if written as a fraction, else 0
}

const notNumber = "the number cannot be read"

// readAmount reads 12, 3/8, 1 1/4, 1-1/4, .25, 3,5 and numbers with thousands
// separators. whole says that three digits behind a comma are thousands; see
// decimal. The reason is "" if the number was understood.
func readAmount(s string, whole bool) (a amount, reason string) {
	if !strings.Contains(s, "/") {
		a.value, reason = decimal(s, whole)
		return a, reason
	}
	before, fraction := "", s
	if i := strings.LastIndexAny(s, " -"); i >= 0 {
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
		return amount{}, "a fraction cannot have 0 below the line"
	case before != "" && n >= d:
		return amount{}, "the fraction behind a whole number must be less than 1"
	}
	return amount{float64(w) + float64(n)/float64(d), d}, ""
}

// natural reads up to six digits and nothing else.
func natural(s string) (int, bool) {
	if s == "" || len(s) > 6 || !digits(s) {
		return 0, false
	}
	n, err := strconv.Atoi(s)
	return n, err == nil
}

func digits(s string) bool {
	return strings.Trim(s, "0123456789") == ""
}

// decimal reads a number with a point or a comma and thousands separators.
//
// A space between groups of three digits is a thousands separator. With both
// signs present the last is the decimal sign. A sign that occurs more than once
// separates thousands. One sign followed by exactly three digits is the hard
// case: in a price or a count 12,000 is twelve thousand and 12.000 is refused
// because it is read both ways; in a measure 3.175 is a decimal and 3,175 is
// refused. In every other case one sign is the decimal sign.
func decimal(s string, whole bool) (float64, string) {
	body, spaced, ok := joinSpaces(s)
	if !ok || body == "" || strings.Trim(body, "0123456789.,") != "" {
		return 0, notNumber
	}
	plain, reason := body, ""
	points, commas := strings.Count(body, "."), strings.Count(body, ",")
	switch {
	case points+commas == 0:
	case points > 0 && commas > 0 && !spaced:
		plain, reason = bothSigns(body)
	case points+commas > 1:
		plain, reason = dropGroups(body, body[strings.IndexAny(body, ".,")])
		if spaced {
			reason = notNumber
		}
	default:
		plain, reason = oneSign(body, whole, spaced)
	}
	if reason != "" {
		return 0, reason
	}
	v, err := strconv.ParseFloat(plain, 64)
	if err != nil {
		return 0, notNumber
	}
	return v, ""
}

// joinSpaces closes up "12 000" and "1 234,5"; spaced tells that it did.
func joinSpaces(s string) (joined string, spaced, ok bool) {
	groups := strings.Split(s, " ")
	if len(groups) == 1 {
		return s, false, true
	}
	for i, g := range groups {
		if i == len(groups)-1 {
			if cut := strings.IndexAny(g, ".,"); cut >= 0 {
				g = g[:cut]
			}
		}
		if !digits(g) || (i == 0 && (g == "" || len(g) > 3)) || (i > 0 && len(g) != 3) {
			return "", true, false
		}
	}
	return strings.Join(groups, ""), true, true
}

// bothSigns reads 1,234.5 and 1.234,5.
func bothSigns(s string) (plain, reason string) {
	cut := strings.LastIndexAny(s, ".,")
	head, tail := s[:cut], s[cut+1:]
	if strings.IndexByte(head, s[cut]) >= 0 {
		return "", notNumber
	}
	head, reason = dropGroups(head, head[strings.IndexAny(head, ".,")])
	return head + "." + tail, reason
}

// dropGroups removes thousands separators that stand where they should.
func dropGroups(s string, sign byte) (plain, reason string) {
	groups := strings.Split(s, string(sign))
	for i, g := range groups {
		if !digits(g) || (i == 0 && (g == "" || len(g) > 3)) || (i > 0 && len(g) != 3) {
			return "", notNumber
		}
	}
	return strings.Join(groups, ""), ""
}

// oneSign reads a body with a single point or comma.
func oneSign(s string, whole, spaced bool) (plain, reason string) {
	cut := strings.IndexAny(s, ".,")
	head, tail := s[:cut], s[cut+1:]
	thousands := len(tail) == 3 && head != "" && head[0] != '0' && len(head) <= 3 && !spaced
	comma := s[cut] == ','
	switch {
	case thousands && whole && comma:
		return head + tail, ""
	case thousands && whole != comma:
		return "", "it can be read as " + head + "." + tail + " or as " + head + tail
	}
	return head + "." + tail, ""
}
