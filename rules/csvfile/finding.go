// Package csvfile reads the lists a rep keeps as CSV files, line by line: what
// was found wrong and where, cells taken apart, texts that could disturb a
// terminal refused. What the lists hold is the business of the packages that
// import it.
package csvfile

import (
	"fmt"
	"strings"

	"cutbrief/rules/message"
)

// Severity says how much a finding matters.
type Severity string

// The severities. A row with an Error is left out of the list; one with a
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
	Row      string // what the row is called, "" if it could not be read
	Severity Severity
	Problem  message.Message // what is wrong, without a full stop
	Accepted message.Message // what would be accepted; empty if the problem says it
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
	if !f.Accepted.IsEmpty() {
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
