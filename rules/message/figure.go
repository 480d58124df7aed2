package message

import (
	"strings"
	"unicode/utf8"
)

// figures say how a catalog writes numbers, and units that are words in English.
type figures struct {
	decimal, thousands string // "" leaves them as they are
	units              map[string]string
}

// write puts a figure, word by word, into the marks and unit names of a language.
func (f figures) write(text string) string {
	words := strings.Split(text, " ")
	for i, w := range words {
		body := strings.Trim(w, "()[].,;:~")
		if unit, ok := f.units[body]; ok {
			words[i] = strings.Replace(w, body, unit, 1)
			continue
		}
		words[i] = f.numbers(w)
	}
	return strings.Join(words, " ")
}

// numbers writes the numbers in a figure with the marks of the language: a comma
// before exactly three digits is ours between thousands, a point is ours for
// decimals.
func (f figures) numbers(w string) string {
	if f.decimal == "" {
		return w
	}
	var out strings.Builder
	for i, r := range w {
		_, size := utf8.DecodeRuneInString(w[i:]) // one where w is no UTF-8
		switch next := digitsAfter(w[i+size:]); {
		case r == '.' && digitBefore(w, i) && next > 0:
			out.WriteString(f.decimal)
		case r == ',' && digitBefore(w, i) && next == 3:
			out.WriteString(f.thousands)
		default:
			out.WriteRune(r)
		}
	}
	return out.String()
}

func digitBefore(w string, i int) bool { return i > 0 && w[i-1] >= '0' && w[i-1] <= '9' }

// digitsAfter counts the digits at the start of s.
func digitsAfter(s string) int { return len(s) - len(strings.TrimLeft(s, "0123456789")) }
