package report

import (
	"strings"

	"cutbrief/assess/gate"
)

// plain passes a text from a visit or a file through the gate, on one line.
func plain(s string) string { return gate.Line(s) }

// plainLines does the same for a text of several lines, leaving out empty ones.
func plainLines(s string) []string {
	var list []string
	for l := range strings.SplitSeq(gate.Lines(s), "\n") {
		if l = strings.TrimSpace(l); l != "" {
			list = append(list, l)
		}
	}
	return list
}
