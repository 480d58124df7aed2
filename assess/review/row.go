// Package review turns a folder of visits into rows for a manager: what was
// recommended, what the rules make of it today, and what needs a second look. It
// reads files through assess/store/scan, keeps an index of what it worked out,
// filters, sorts and counts rows. It draws nothing and writes no page.
package review

import (
	"cutbrief/rules"
	"cutbrief/rules/unit"
)

// Verdict is how a recommendation stands today, in the words a list shows.
type Verdict string

// The verdicts.
const (
	Firm       Verdict = "firm"        // no plausible answer changes the system
	Open       Verdict = "open"        // some would
	FallsShort Verdict = "falls short" // the system recommended falls short of the need
	NoneFits   Verdict = "none fits"   // no system of the range fits
	NotYet     Verdict = "not yet"     // too much is unknown to recommend anything
)

// Stage says how much is known of a file.
type Stage uint8

// The stages.
const (
	Unread   Stage = iota // it cannot be read; Why says why
	Recorded              // what the file says; no rule has run
	Judged                // the rules have run on it
)

// Row is one file. Its texts passed the gate, the path did not. A row is small, as very many are held.
type Row struct {
	Path       string // below the folder, with slashes, as the disk has it: see ShownPath
	Date       string // of the visit, year-month-day; "" if it is not known
	Company    string
	Rep        string
	Metals     string          // identifiers, with a comma between
	Thickest   unit.Millimetre // thickest regular clean cut; 0 if it is not known
	Critical   rules.Requirement
	System     string // identifier: recorded as recommended, or else today's
	Verdict    Verdict
	Outcome    string // of the sale, if recorded
	Due        string // day of the next step, if recorded
	Why        string // reasons of the flags, a line each, in the order of the flags
	Unanswered string // questions that matter and have no answer, with a comma between
	Flags      FlagSet
	Noted      Noted // for counting; only where Judged
	Stage      Stage
}

// ShownPath is the path of the file, fit to be shown.
func (r *Row) ShownPath() string { return shownPath(r.Path) }
