package report

import (
	"errors"
	"time"

	"cutbrief/assess"
	"cutbrief/rules/message"
	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// FollowUp is what comes after the last demonstration, in recorded facts alone.
// Its renderers are report/calendar and report/text.
type FollowUp struct {
	ID       string    // of the visit: stable
	Revision int       // of the visit: grows with every save
	Saved    time.Time // when the visit was last saved
	Demo     bool      // invented
	Customer string
	Contact  string
	Place    string
	Rep      string
	Shown    string // when, and with which system
	Held     time.Time
	Cuts     []Line // what was shown, how it went, and the time it took
	Words    string
	Answered []Line // objections with their answers
	Outcome  assess.Outcome
	Because  string
	Step     string
	Owner    string
	Due      time.Time // zero if no date was agreed

	Book *message.Catalog // the texts are worded by; nil for our own words
}

// ErrNotShown means that no demonstration is recorded.
var ErrNotShown = errors.New("no demonstration is recorded")

// Follow collects what follows the last demonstration of a visit. It fails with
// ErrNotShown if none is recorded.
func Follow(v *assess.Visit, offered system.Range, o Options) (FollowUp, error) {
	s := v.Latest()
	if s == nil {
		return FollowUp{}, ErrNotShown
	}
	b := newBuilder(v, &offered, o)
	f := FollowUp{
		ID: v.ID, Revision: v.Revision, Saved: v.Updated, Demo: v.Demo,
		Customer: b.words(assess.FactCompany), Contact: b.words(assess.FactContact), Place: b.words(assess.FactPlace), Rep: b.words(assess.FactRep),
		Shown: dayOf(s.Date) + b.shownWith(s.System), Words: plain(s.Words), Outcome: s.Outcome, Because: plain(s.Because),
		Step: plain(s.Next.Step), Owner: plain(s.Next.Owner),
	}
	f.Held, _ = time.Parse(time.DateOnly, s.Date) // zero for a day not noted
	f.Due, _ = time.Parse(time.DateOnly, s.Next.Date)
	for _, c := range s.Cuts {
		f.Cuts = append(f.Cuts, Line{Label: b.shownName(c), Value: resultWords[c.Result], Why: lengthIn(c, b.style)})
	}
	for _, obj := range s.Objections {
		f.Answered = append(f.Answered, Line{Label: plain(obj.Said), Value: plain(obj.Answer)})
	}
	f.Book = o.Words
	return said(f, o.Words), nil
}

// lengthIn words the time a cut took, "" if none was taken: "300 mm in 18 s".
func lengthIn(c assess.Shown, style unit.Style) string {
	took, timed := c.Took.Get()
	length, measured := c.Length.Get()
	if !timed || !measured {
		return ""
	}
	return unit.Show(millimetres(length), style, unit.Nearest) + " in " + unit.Show(secs(took), style, unit.Nearest)
}
