package system

import (
	"fmt"
	"slices"
	"strings"
)

// Severity says how much a finding matters.
type Severity string

// The severities. A row with an Error is left out of the range; one with a
// Warning is kept but should be looked at; a Note says what was assumed.
const (
	Error   Severity = "error"
	Warning Severity = "warning"
	Note    Severity = "note"
)

// Finding is one thing to know about one place in a file.
type Finding struct {
	Line     int    // counted from 1; 0 for the file as a whole
	Column   string // as in the header; "" for the whole line
	System   string // ID of the row's system, "" if it could not be read
	Severity Severity
	Problem  string // what is wrong, without a full stop
	Accepted string // what would be accepted; "" if the problem says it
}

// String writes the finding on one line, for example:
// line 7, column duty: error: 60 A is above output_max_a; accepted: ...
func (f Finding) String() string {
	var b strings.Builder
	if f.Line > 0 {
		fmt.Fprintf(&b, "line %d", f.Line)
	} else {
		b.WriteString("file")
	}
	if f.Column != "" {
		fmt.Fprintf(&b, ", column %s", f.Column)
	}
	fmt.Fprintf(&b, ": %s: %s", f.Severity, f.Problem)
	if f.Accepted != "" {
		fmt.Fprintf(&b, "; accepted: %s", f.Accepted)
	}
	return b.String()
}

// Count returns how many findings have this severity.
func Count(findings []Finding, severity Severity) int {
	n := 0
	for _, f := range findings {
		if f.Severity == severity {
			n++
		}
	}
	return n
}

// Merge joins lists of findings about r in the order of its file. A finding
// from outside this package need only name its System: its line is looked up.
func (r Range) Merge(lists ...[]Finding) []Finding {
	all := slices.Concat(lists...)
	for i := range all {
		if all[i].Line == 0 && all[i].System != "" {
			all[i].Line = r.LineOf(all[i].System)
		}
	}
	slices.SortStableFunc(all, func(a, b Finding) int { return a.Line - b.Line })
	return all
}
