package message

import "strings"

// The marks around a text that is not ours. No text from outside holds them:
// they are control characters, which the gate shows as words.
const (
	opening = '\x02'
	closing = '\x03'
)

var unmark = strings.NewReplacer("\x02", "", "\x03", "")

// Keep marks a text as not ours to word: a name, a number somebody typed, what
// a customer said. Say leaves it as it is, whatever it holds.
func Keep(text string) string {
	if text == "" {
		return ""
	}
	return string(opening) + unmark.Replace(text) + string(closing)
}

// bare takes the marks out.
func bare(text string) string {
	if strings.IndexByte(text, opening) < 0 && strings.IndexByte(text, closing) < 0 {
		return text
	}
	return unmark.Replace(text)
}

// Bare takes the marks out of a text that is shown without a book.
func Bare(text string) string { return bare(text) }

// shielded reports for every byte of a text whether it stands between marks or
// straight quotes, where nothing is ours.
func shielded(text string) []bool {
	inside := make([]bool, len(text))
	kept, quoted, escaped := false, false, false
	for i := range len(text) {
		switch c := text[i]; {
		case c == byte(opening):
			kept, escaped = true, false
		case escaped:
			escaped = false
		case c == '\\' && quoted && !kept: // a quote within quotes ends nothing
			escaped = true
		case c == '"' && !kept:
			quoted = !quoted
			inside[i] = true
			continue
		}
		inside[i] = kept || quoted
		if text[i] == byte(closing) {
			kept = false
		}
	}
	if quoted { // a quote that is not closed, such as that of inches, quotes nothing
		return shieldedByMarks(text)
	}
	return inside
}

func shieldedByMarks(text string) []bool {
	inside := make([]bool, len(text))
	kept := false
	for i := range len(text) {
		kept = kept || text[i] == byte(opening)
		inside[i] = kept
		kept = kept && text[i] != byte(closing)
	}
	return inside
}
