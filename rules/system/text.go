package system

import (
	"unicode"
	"unicode/utf8"

	"cutbrief/rules/csvfile"
)

// maxName and maxID are what still fits a line of the page.
const (
	maxName = 60
	maxID   = 40
)

// isID reports whether s is lower-case letters, digits and inner hyphens.
func isID(s string) bool {
	for i := range len(s) {
		letter := s[i] >= 'a' && s[i] <= 'z' || s[i] >= '0' && s[i] <= '9'
		hyphen := s[i] == '-' && i > 0 && i < len(s)-1
		if !letter && !hyphen {
			return false
		}
	}
	return s != "" && len(s) <= maxID
}

// isName reports whether s can be a name. It starts with a letter or digit, so
// that a spreadsheet never takes a name for a formula.
func isName(s string) bool {
	first, _ := utf8.DecodeRuneInString(s)
	return (unicode.IsLetter(first) || unicode.IsDigit(first)) &&
		csvfile.Flaw(s) == "" && utf8.RuneCountInString(s) <= maxName
}
