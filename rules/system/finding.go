package system

import (
	"slices"

	"cutbrief/rules/csvfile"
)

// Finding is one thing to know about one place in a file; its Row is the ID of
// the system.
type Finding = csvfile.Finding

// Severity says how much a finding matters.
type Severity = csvfile.Severity

// The severities, as in lines.
const (
	Error   = csvfile.Error
	Warning = csvfile.Warning
	Note    = csvfile.Note
)

// Count returns how many findings have this severity.
func Count(findings []Finding, severity Severity) int { return csvfile.Count(findings, severity) }

// Merge joins lists of findings about r in the order of its file. A finding
// from outside this package need only name its Row: its line is looked up.
func (r Range) Merge(lists ...[]Finding) []Finding {
	all := slices.Concat(lists...)
	for i := range all {
		if all[i].Line == 0 && all[i].Row != "" {
			all[i].Line = r.LineOf(all[i].Row)
		}
	}
	slices.SortStableFunc(all, func(a, b Finding) int { return a.Line - b.Line })
	return all
}
