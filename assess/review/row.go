// Package review turns a folder of visits into rows for a manager: what was
// recommended, what the rules make of it today, and what needs a second look. It
// finds and reads every file below the folder and hides none, keeps an index of
// what it worked out, filters, sorts and counts rows. It draws nothing and writes
// no page.
package review

import (
	"math"
	"slices"

	"cutbrief/assess"
	"cutbrief/assess/sanitize"
	"cutbrief/rules"
	"cutbrief/rules/demonstration"
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
	Unread Stage = iota // it cannot be read; Why says why
	Judged              // the rules have run on it
)

// Row is one file. Its texts are sanitized, the path is not. A row is small, as
// very many are held. Whoever adds a field adds it to columns or unlisted.
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
	Why        string // reasons of the flags, packed messages, a line each, in the order of the flags
	Unanswered string // questions that matter and have no answer, with a semicolon between
	Flags      FlagSet
	Noted      Noted // for counting; only where Judged
	Stage      Stage
}

// ShownPath is the path of the file, fit to be shown. Nearly every one is as it
// stands.
func (r *Row) ShownPath() string {
	for i := range len(r.Path) {
		if r.Path[i] <= ' ' || r.Path[i] > '~' {
			return sanitize.Line(r.Path)
		}
	}
	return r.Path
}

// Noted is what a visit adds to the patterns and no flag shows. It is small, as
// very many are held.
type Noted struct {
	Minutes         uint16 // that the interview took; 0 if it is not known
	Against         uint8  // what weighed most against a no: its place in assess.AllAgainst from 1; 0 if it is not noted
	Poor            bool   // a cut of the latest demonstration went poorly
	Slow, Fit, Fast uint8  // timed cuts of all demonstrations, held against their predictions as at the bench
}

// noted looks at the records of a visit.
func noted(v *assess.Visit) Noted {
	n := Noted{Minutes: minutes(v.InterviewTime)}
	for i := range v.Demonstrations {
		for _, c := range v.Demonstrations[i].Cuts {
			n.time(c)
		}
	}
	s := v.Latest()
	if s == nil {
		return n
	}
	n.Poor = slices.ContainsFunc(s.Cuts, func(c assess.ShownCut) bool { return c.Result == assess.Poor })
	if s.Outcome == assess.No {
		n.Against = uint8(1 + slices.Index(assess.AllAgainst(), s.Against))
	}
	return n
}

// minutes is the time an interview took, to the nearest minute and at least one.
// Less than a second is no time at a keyboard: it was fed by a pipe.
func minutes(s *assess.InterviewTime) uint16 {
	if s == nil {
		return 0
	}
	seconds, known := s.Seconds.Get()
	if !known || seconds < 1 {
		return 0
	}
	return uint16(min(max(1, math.Round(float64(seconds)/60)), math.MaxUint16))
}

// time counts a timed cut that was predicted.
func (n *Noted) time(c assess.ShownCut) {
	predicted, known := c.Predicted.Get()
	pace, ok := demonstration.Compare(c.Took.Or(unit.Second(0)), predicted)
	if !known || !ok {
		return
	}
	of := map[demonstration.Pace]*uint8{demonstration.Slow: &n.Slow, demonstration.OnTheMark: &n.Fit, demonstration.Fast: &n.Fast}[pace]
	if of != nil && *of < math.MaxUint8 {
		*of++
	}
}

// Because is what weighed most against a no; "" if it is not noted.
func (n Noted) Because() assess.Against {
	if all := assess.AllAgainst(); n.Against > 0 && int(n.Against) <= len(all) {
		return all[n.Against-1]
	}
	return ""
}

// packed is all of it as one number, for the index: what there mostly is in its
// low bits.
func (n Noted) packed() uint64 {
	poor := uint64(0)
	if n.Poor {
		poor = 1
	}
	return uint64(n.Minutes) | uint64(n.Against)<<16 | poor<<48 | uint64(n.Fit)<<24 | uint64(n.Slow)<<32 | uint64(n.Fast)<<40
}

func unpacked(p uint64) Noted {
	return Noted{Minutes: uint16(p), Against: uint8(p >> 16), Poor: p>>48&1 == 1, Fit: uint8(p >> 24), Slow: uint8(p >> 32), Fast: uint8(p >> 40)}
}
