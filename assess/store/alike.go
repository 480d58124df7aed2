package store

import (
	"strings"

	"golang.org/x/text/unicode/norm"
)

// Alike is the same for two file names that some system takes for one: those
// that differ in capitals, in how an accent is written, or in dots and spaces at
// the end.
func Alike(name string) string {
	name = norm.NFKC.String(strings.ToLower(norm.NFKC.String(name)))
	return strings.TrimRight(name, ". ")
}
