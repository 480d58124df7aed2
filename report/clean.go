package report

import (
	"strings"

	"cutbrief/assess/sanitize"
	"cutbrief/rules/message"
)

// plain passes a text from a visit or a file through the gate, on one line, and
// marks it as not ours to word. The marks go when the text leaves the package.
func plain(s string) string { return message.Keep(sanitize.Line(s)) }

// clean passes a text of our own that may hold something from outside through
// the gate, on one line.
func clean(s string) string { return sanitize.Line(s) }

// plainLines does the same for a text of several lines, leaving out empty ones.
func plainLines(s string) []string {
	var list []string
	for l := range strings.SplitSeq(sanitize.Lines(s), "\n") {
		if l = strings.TrimSpace(l); l != "" {
			list = append(list, message.Keep(l))
		}
	}
	return list
}
