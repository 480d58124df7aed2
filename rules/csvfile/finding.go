// Package csvfile reads the lists a rep keeps as CSV files, line by line: what
// was found wrong and where, cells taken apart, texts that could disturb a
// terminal refused. What the lists hold is the business of the packages that
// import it.
package csvfile

import (
	"strconv"

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

// String is Message in English, for example:
// line 7, column duty: error: 60 A is above output_max_a; accepted: ...
func (f Finding) String() string { return f.Message().String() }

// Message is the finding on one line.
func (f Finding) Message() message.Message {
	m := message.ID("file").Message()
	if f.Line > 0 {
		m = message.New("line {1}", message.Name(strconv.Itoa(f.Line)))
	}
	if f.Column != "" {
		m = message.New("{1}, column {2}", m, message.Name(f.Column))
	}
	m = message.New("{1}: {2}: {3}", m, message.ID(f.Severity), f.Problem)
	if !f.Accepted.IsEmpty() {
		m = message.New("{1}; accepted: {2}", m, f.Accepted)
	}
	return m
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
