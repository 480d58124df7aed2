package message

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// figures say how a book writes numbers, and units that are words in English.
type figures struct {
	decimal, thousands string // "" leaves them as they are
	units              map[string]string
}

// symbols are the units that are the same in every language: they are symbols,
// not words.
var symbols = map[string]bool{
	"mm": true, "m": true, "m/min": true, "mm/min": true, "mm²": true, "A": true, "V": true, "kW": true, "kVA": true, "l/min": true,
	"bar": true, "l": true, "kg": true, "%": true, "°": true, "°C": true, "s": true, "min": true, "h": true, "kWh": true, "J": true, "Ω": true,
	"in": true, "ft": true, "in/min": true, "cfm": true, "psi": true, "gal": true, "lb": true, "AWG": true, "ga": true, "ft/min": true, "m³": true, "kg/m³": true,
	"×": true, "÷": true, "=": true, "+": true, "–": true, "−": true, "-": true, "→": true, "≥": true, "≤": true, "/": true, "·": true, "≈": true, "√3": true, "√": true, "…": true,
}

// data writes a text that is nothing but figures, units, signs and kept texts,
// and reports whether it is that.
func (f figures) data(text string) (string, bool) {
	words := strings.Split(text, " ")
	for i := 0; i < len(words); i++ {
		w := words[i]
		if strings.IndexByte(w, byte(opening)) >= 0 || strings.IndexByte(w, '"') >= 0 {
			rest := strings.Join(words[i:], " ")
			end := shieldEnd(rest)
			if end == 0 {
				return "", false
			}
			after, ok := f.after(rest[end:])
			if !ok {
				return "", false
			}
			return strings.Join(append(words[:i:i], rest[:end]+after), " "), true
		}
		said, ok := f.word(w)
		if !ok {
			return "", false
		}
		words[i] = said
	}
	return strings.Join(words, " "), true
}

// after writes what stands behind a kept text: nothing, a stop or bracket, or
// more of what data writes.
func (f figures) after(text string) (string, bool) {
	switch {
	case strings.Trim(text, ".,:;)]") == "":
		return text, true
	case text[0] == byte(opening):
		return f.data(text)
	case text[0] == ' ':
		said, ok := f.data(text[1:])
		return " " + said, ok
	}
	return "", false
}

// shieldEnd is where the kept or quoted text at the start of s ends, 0 if it
// does not begin with one.
func shieldEnd(s string) int {
	switch {
	case s == "":
		return 0
	case s[0] == byte(opening):
		return strings.IndexByte(s, byte(closing)) + 1
	case s[0] == '"':
		for i := 1; i < len(s); i++ {
			switch s[i] {
			case '"':
				return i + 1
			case '\\':
				i++ // a quote within quotes ends nothing
			}
		}
	}
	return 0
}

// word writes one figure, unit or sign.
func (f figures) word(w string) (string, bool) {
	body := strings.Trim(w, "()[].,;:~")
	if said, ok := f.units[body]; ok {
		return strings.Replace(w, body, said, 1), true
	}
	if w == "" || body == "" || symbols[body] || isCurrency(body) {
		return w, true
	}
	if !strings.ContainsAny(body, "0123456789") || strings.IndexFunc(body, isLetter) >= 0 && !symbols[strings.TrimLeft(body, "0123456789.,–-/")] {
		return "", false
	}
	return f.numbers(w), true
}

func isLetter(r rune) bool { return unicode.IsLetter(r) && r != '×' }

// numbers writes the numbers in a figure with the book's marks: a comma before
// exactly three digits is ours between thousands, a point is ours for decimals.
func (f figures) numbers(w string) string {
	if f.decimal == "" {
		return w
	}
	var out strings.Builder
	for i, r := range w {
		_, size := utf8.DecodeRuneInString(w[i:]) // one where w is no UTF-8
		switch next, digits := digitsAfter(w[i+size:]); {
		case r == '.' && digitBefore(w, i) && next > 0:
			out.WriteString(f.decimal)
		case r == ',' && digitBefore(w, i) && next == 3 && digits:
			out.WriteString(f.thousands)
		default:
			out.WriteRune(r)
		}
	}
	return out.String()
}

func digitBefore(w string, i int) bool { return i > 0 && w[i-1] >= '0' && w[i-1] <= '9' }

// digitsAfter counts the digits at the start of s.
func digitsAfter(s string) (n int, any bool) {
	for n < len(s) && s[n] >= '0' && s[n] <= '9' {
		n++
	}
	return n, n > 0
}

// isCurrency reports whether s has the form of a currency code of ISO 4217.
func isCurrency(s string) bool {
	return len(s) == 3 && strings.Trim(s, "ABCDEFGHIJKLMNOPQRSTUVWXYZ") == ""
}
