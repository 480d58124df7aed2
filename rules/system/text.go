package system

import (
	"strconv"
	"unicode"
	"unicode/utf8"
)

// maxCell is the longest cell accepted, in characters; maxName and maxID are
// what still fits a line of the page.
const (
	maxCell = 300
	maxName = 60
	maxID   = 40
)

// flaw says what keeps a cell from being plain text, or "". Control, format
// (which includes the bidirectional overrides), private and separator
// characters could disturb a terminal or hide what is read.
func flaw(s string) string {
	if !utf8.ValidString(s) {
		return "is not valid UTF-8"
	}
	if utf8.RuneCountInString(s) > maxCell {
		return "is longer than " + strconv.Itoa(maxCell) + " characters"
	}
	for _, r := range s {
		if unicode.In(r, unicode.Cc, unicode.Cf, unicode.Co, unicode.Zl, unicode.Zp) {
			return "holds the invisible character " + strconv.QuoteRuneToASCII(r)
		}
	}
	return ""
}

// quoted writes text from a file for a finding: escaped and shortened.
func quoted(s string) string {
	const most = 40
	if r := []rune(s); len(r) > most {
		s = string(r[:most-1]) + "…"
	}
	return strconv.Quote(s)
}

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
		flaw(s) == "" && utf8.RuneCountInString(s) <= maxName
}
