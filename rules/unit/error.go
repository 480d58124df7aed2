package unit

import (
	"strings"
	"unicode"
)

// ReadError says why a text was not understood as a quantity, in two parts:
// Error is what went wrong, Hint is what to do about it.
type ReadError struct {
	Said   string // the text as typed, made printable and shortened
	Kind   Kind   // what it should have been
	Reason string // why not, "" if it simply is not one
	Advice string // what to do, "" for the kind's usual examples
}

// Error says what went wrong: `"thick" is not a thickness`.
func (e *ReadError) Error() string {
	text := `"` + e.Said + `" is not ` + e.Kind.article()
	if e.Reason != "" {
		text += ": " + e.Reason
	}
	return text
}

// Hint says what would be accepted: "give a number and a unit, such as 12 mm,
// 3/8 in or 14 ga".
func (e *ReadError) Hint() string {
	if e.Advice != "" {
		return e.Advice
	}
	return e.Kind.advice()
}

// printable makes any text safe and short enough to repeat in a message.
func printable(text string) string {
	text = strings.Map(func(r rune) rune {
		if !unicode.IsPrint(r) {
			return unicode.ReplacementChar
		}
		return r
	}, strings.TrimSpace(text))
	if runes := []rune(text); len(runes) > maxRunes {
		return string(runes[:maxRunes-1]) + "…"
	}
	return text
}
