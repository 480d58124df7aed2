package unit

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// maxRunes caps what is read: no quantity takes this many characters.
const maxRunes = 64

// spellings makes one of the many ways to type the same sign. Fractions get a
// space in front, so that 1¼ becomes 1 1/4.
var spellings = strings.NewReplacer(
	"½", " 1/2", "⅓", " 1/3", "⅔", " 2/3", "¼", " 1/4", "¾", " 3/4",
	"⅕", " 1/5", "⅖", " 2/5", "⅗", " 3/5", "⅘", " 4/5", "⅙", " 1/6", "⅚", " 5/6",
	"⅛", " 1/8", "⅜", " 3/8", "⅝", " 5/8", "⅞", " 7/8",
	"⁄", "/", "∕", "/", "²", "2", "³", "3", "º", "°",
	"″", `"`, "”", `"`, "“", `"`, "''", `"`, "′′", `"`, "’’", `"`, "′", "'", "’", "'",
	"−", "-", "–", "-", "‐", "-", "‑", "-",
)

// tidy returns text with one spelling for each sign and single spaces. The
// reason is "" if the text is fit to be read.
func tidy(text string) (clean, reason string) {
	if len(text) > maxRunes*utf8.UTFMax || utf8.RuneCountInString(text) > maxRunes {
		return "", "it is too long to be a single quantity"
	}
	if !utf8.ValidString(text) || strings.ContainsFunc(text, unreadable) {
		return "", "it holds characters that cannot be read"
	}
	clean = strings.Join(strings.Fields(spellings.Replace(text)), " ")
	// A hyphen before a vulgar fraction, 1-¼, has become "1- 1/4".
	return strings.ReplaceAll(clean, "- ", "-"), ""
}

func unreadable(r rune) bool {
	return !unicode.IsPrint(r) && !unicode.IsSpace(r)
}

// split parts a tidy text into the number and the unit behind it, either of
// which may be "". A hyphen between them, as in 12-gauge, belongs to neither.
func split(s string) (number, name string) {
	end := strings.IndexFunc(s, func(r rune) bool {
		return !strings.ContainsRune("0123456789., /-", r)
	})
	if end < 0 {
		return strings.TrimSpace(s), ""
	}
	number = strings.TrimSpace(s[:end])
	if number != "-" {
		number = strings.TrimSpace(strings.TrimSuffix(number, "-"))
	}
	return number, strings.TrimSpace(s[end:])
}

// fold makes a unit's name comparable: lower case, no spaces about a slash, no
// closing full stop, "per" as a slash.
func fold(name string) string {
	name = strings.ToLower(name)
	name = strings.ReplaceAll(name, " per ", "/")
	name = strings.ReplaceAll(name, " / ", "/")
	return strings.TrimSuffix(name, ".")
}
