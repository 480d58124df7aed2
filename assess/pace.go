package assess

import "strings"

// Periods that a cut length can be told for.
const (
	perDay  = "day"
	perWeek = "week"
)

// paceWords are the words of the periods, and pers those that may stand before
// them. They are only ever read.
var (
	paceWords = []string{"daily", "day", "d", "weekly", "week", "wk", "w"}
	pers      = []string{"a", "per", "each", "every"}
)

// blank are the characters between words.
const blank = " \t\n\f\r"

// splitPace takes the period off a cut length: "40 m a day", "200 m/week", "200w".
// Without one it is a day.
func splitPace(said string) (length, period string) {
	text := strings.TrimSpace(said)
	for _, word := range paceWords {
		from := len(text) - len(word)
		if from < 0 || !strings.EqualFold(text[from:], word) {
			continue
		}
		if rest, ended := cutPer(text[:from]); ended || len(word) == 1 && endsInDigit(rest) {
			period = perDay
			if word[0] == 'w' {
				period = perWeek
			}
			return rest, period
		}
	}
	return said, perDay
}

// cutPer takes what parts a length from its period off the end: a slash, a word
// such as "per", or nothing but space. ended reports whether there was any.
func cutPer(text string) (rest string, ended bool) {
	rest = strings.TrimRight(text, blank)
	if before, found := strings.CutSuffix(rest, "/"); found {
		return strings.TrimRight(before, blank), true
	}
	if rest == text {
		return text, false
	}
	for _, per := range pers {
		from := len(rest) - len(per)
		if from > 0 && strings.EqualFold(rest[from:], per) && strings.IndexByte(blank, rest[from-1]) >= 0 {
			return strings.TrimRight(rest[:from], blank), true
		}
	}
	return rest, true
}

func endsInDigit(s string) bool {
	return s != "" && s[len(s)-1] >= '0' && s[len(s)-1] <= '9'
}
