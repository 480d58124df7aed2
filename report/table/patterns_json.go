package table

import (
	"encoding/json"
	"io"

	"cutbrief/assess/review"
)

// counted is what JSON says of a group of visits; the sums are left to the reader.
type counted struct {
	Of         string `json:"of"`
	Visits     int    `json:"visits"`
	Firm       int    `json:"firm"`
	Open       int    `json:"open"`
	FallsShort int    `json:"falls_short"`
	NoneFits   int    `json:"none_fits"`
	NotYet     int    `json:"not_yet"`
	Flagged    int    `json:"flagged"`
	Ordered    int    `json:"ordered"`
	Waiting    int    `json:"waiting"`
	Quote      int    `json:"quote"`
	Again      int    `json:"second_visit"`
	Lost       int    `json:"lost"`
	NoOutcome  int    `json:"no_outcome"`

	Against    []against `json:"lost_against"`
	PoorCut    int       `json:"lost_with_a_poor_cut"`
	Unanswered []left    `json:"unanswered"`
	Time       *span     `json:"interview_minutes"`
	Cuts       pace      `json:"timed_cuts"`
}

type (
	against struct {
		What   *string `json:"what"` // null where it is not noted
		Visits int     `json:"visits"`
	}
	left struct {
		Question string `json:"question"`
		Visits   int    `json:"visits"`
	}
	flagged struct {
		Flag  string `json:"flag"`
		Files int    `json:"files"`
	}
	span struct {
		Known  int `json:"known_visits"`
		Low    int `json:"low"`
		Median int `json:"median"`
		High   int `json:"high"`
	}
	pace struct {
		Slow int `json:"slower"`
		Fit  int `json:"as_predicted"`
		Fast int `json:"faster"`
	}
)

// JSON writes the counts; shares are left to the reader, who has the base.
func (p Patterns) JSON(w io.Writer) error {
	doc := struct {
		By           string    `json:"by,omitempty"`
		Files        int       `json:"files"`
		Unread       int       `json:"unread"`
		Kept         int       `json:"kept"`        // files that the filter keeps
		KeptUnread   int       `json:"kept_unread"` // of them, those that are no visit
		First        string    `json:"first,omitempty"`
		Last         string    `json:"last,omitempty"`
		All          *counted  `json:"all,omitempty"`
		Flags        []flagged `json:"flags,omitempty"`
		Requirements []counted `json:"requirements,omitempty"`
		Systems      []counted `json:"systems,omitempty"`
		Groups       []counted `json:"groups"`
	}{By: p.Tally.By, Files: p.Totals.Files, Unread: p.Totals.Unread, Kept: p.Tally.Files, KeptUnread: p.Tally.Unread, Groups: countedList(p.Tally.Groups)}
	if p.Whole {
		all := countedOf(p.Tally.All)
		doc.All, doc.First, doc.Last = &all, p.Tally.First, p.Tally.Last
		doc.Requirements, doc.Systems = countedList(p.Tally.Requirements), countedList(p.Tally.Systems)
		for _, c := range p.Tally.Raised {
			doc.Flags = append(doc.Flags, flagged{c.What, c.Visits})
		}
	}
	data, err := json.MarshalIndent(doc, "", "  ")
	if err != nil {
		return err
	}
	_, err = w.Write(append(data, '\n'))
	return err
}

func countedList(list []review.Pattern) []counted {
	all := []counted{}
	for _, p := range list {
		all = append(all, countedOf(p))
	}
	return all
}

func countedOf(p review.Pattern) counted {
	c := counted{Of: p.Of, Visits: p.Visits, Firm: p.Firm, Open: p.Open, FallsShort: p.FallsShort, NoneFits: p.NoneFits, NotYet: p.NotYet, Flagged: p.Flagged,
		Ordered: p.Ordered, Waiting: p.Waiting(), Quote: p.Quoted, Again: p.Again, Lost: p.Lost, NoOutcome: p.NoOutcome,
		Against: []against{}, PoorCut: p.Poor, Unanswered: []left{}, Cuts: pace{p.Cuts.Slow, p.Cuts.Fit, p.Cuts.Fast}}
	for _, a := range p.Against {
		one := against{Visits: a.Visits}
		if a.What != "" {
			one.What = &a.What
		}
		c.Against = append(c.Against, one)
	}
	for _, q := range p.Unanswered {
		c.Unanswered = append(c.Unanswered, left{q.What, q.Visits})
	}
	if t := p.Took; t.Known > 0 {
		c.Time = &span{t.Known, t.Low, t.Median, t.High}
	}
	return c
}
