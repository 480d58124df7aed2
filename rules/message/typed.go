package message

import "strings"

// waysOfTyping are rows turned round: what is typed, and what is meant.
func waysOfTyping(rows []Row) []pattern {
	var list []pattern
	for _, r := range rows {
		list = append(list, newPattern(r.ID, r.Words))
	}
	return list
}

// Word is a line as the plain interview understands it: what is typed in the
// book's words for "back" comes out as "back". A line that is none of them comes
// out as it is, and so do our own words.
func (b *Catalog) Word(line string) string {
	if b == nil {
		return line
	}
	return heard(b.words, line)
}

// several is how many ways of typing may meet in one answer: about, a unit, a day.
const several = 3

// Answer is an answer as it is read: what is typed in the book's words for
// "none" or "about 40 m a day" comes out as that.
func (b *Catalog) Answer(line string) string {
	if b == nil {
		return line
	}
	for range several {
		line = heard(b.answers, line)
	}
	return line
}

// heard turns a line round by the first way of typing it that it fits. What
// fills a hole stays as typed.
func heard(list []pattern, line string) string {
	trimmed := strings.TrimSpace(line)
	low := strings.ToLower(trimmed)
	if len(low) != len(trimmed) {
		return line // letters whose small form is longer: none of ours
	}
	for i := range list {
		p := &list[i]
		if len(p.holes) == 0 && low == p.literal[0] {
			return p.words[0].text
		}
		if len(p.holes) != 1 || !p.could(low) {
			continue
		}
		typed := trimmed[len(p.literal[0]) : len(trimmed)-len(p.literal[1])]
		return p.fill(map[int]string{p.holes[0]: typed})
	}
	return line
}
