// Package team words what is counted over a folder of visits, once for a terminal
// and for a page: counts with their base, the shares that bars are drawn by, and
// what each count rests on. It counts nothing and draws nothing.
package team

import (
	"fmt"
	"strings"
	"time"

	"cutbrief/assess"
	"cutbrief/assess/review"
	"cutbrief/report"
	"cutbrief/rules"
)

// Summary is what a manager is shown of a folder.
type Summary struct {
	Title  string
	Day    time.Time // today
	Lead   []string  // what was counted
	Parts  []Part
	By     string // what the groups share, such as "rep"; "" if there are none
	Groups []Group
	Notes  []string // how it was counted
}

// Part is one question about the visits, with its answer in bars or in a table.
type Part struct {
	Title string
	Bars  []Bar
	Table []Ending // in place of bars
	Note  string   // "" if there is nothing to add
}

// Bar is one count.
type Bar struct {
	Label string
	Count string  // with its base
	Share float64 // 0 to 1
}

// Ending is how the visits that share something ended. The rest has no outcome.
type Ending struct {
	Label                          string
	Visits, Ordered, Waiting, Lost int
}

// Group is the visits that share a word of the column asked for.
type Group struct {
	Ending
	Bars []Bar    // firm, flagged, and how they ended
	Open []Bar    // questions left open most
	Time string   // of an interview, "" if it is not known
	More []string // what weighed against it and how timed cuts went, where there is any

	Firm, Middle, Left string // firm, the time in brief and the question left open most: for a line of a table
}

// fewest is how many visits a share in per cent needs: of five or fewer, a
// percentage would say more than is known. Our own rule, common practice.
const fewest = 6

// Count writes a count with its base, and with a percentage where there are
// enough for one. Few of many are not none, and nearly all are not all.
func Count(n, base int) string {
	if base < fewest {
		return fmt.Sprintf("%d of %d", n, base)
	}
	percent := (200*n + base) / (2 * base)
	switch {
	case n > 0 && percent == 0:
		return fmt.Sprintf("%d of %d (under 1 %%)", n, base)
	case n < base && percent == 100:
		return fmt.Sprintf("%d of %d (over 99 %%)", n, base)
	}
	return fmt.Sprintf("%d of %d (%d %%)", n, base, percent)
}

func bar(label string, n, base int) Bar {
	b := Bar{Label: label, Count: Count(n, base)}
	if base > 0 {
		b.Share = float64(n) / float64(base)
	}
	return b
}

// Of words a tally of some rows of a folder, which holds totals. Today is what the
// flags were raised on.
func Of(t review.Tally, totals review.Totals, today time.Time) Summary {
	s := Summary{Title: "Visits of the team", Day: today, Lead: lead(t, totals, today), By: t.By}
	for _, p := range []Part{standing(t.All), ended(t.All), endings("How they ended, by what decides", t.Requirements, requirement), endings("How they ended, by system", t.Systems, orNone),
		lost(t.All), raised(t), open(t.All), took(t.All), cuts(t.All)} {
		if len(p.Bars)+len(p.Table) > 0 || p.Note != "" {
			s.Parts = append(s.Parts, p)
		}
	}
	s.Groups = Groups(t.Groups, t.By)
	s.Notes = []string{"A count has its base beside it, and no percentage of five or fewer. Rules and bands are our own, common practice, no source: they start a conversation and judge nobody."}
	if t.By != "rep" {
		s.Notes = append(s.Notes, "Nobody is named here.")
	}
	return s
}

// between words two days, or one.
func between(first, last string) string {
	if first == last {
		return "on " + first
	}
	return "from " + first + " to " + last
}

// lead says what was counted and what was not.
func lead(t review.Tally, totals review.Totals, today time.Time) []string {
	text := counted(t.All.Visits, "visit") + " counted on " + today.Format(days)
	if t.First != "" {
		text += ", made " + between(day(t.First), day(t.Last))
	}
	lines := []string{text + "."}
	if totals.Invented {
		lines = append(lines, "The range they are judged by is invented: how they stand says nothing of systems that can be ordered.")
	}
	if t.Files < totals.Files {
		lines = append(lines, fmt.Sprintf("A filter keeps %d of %s.", t.Files, counted(totals.Files, "file")))
	}
	if t.Unread > 0 {
		lines = append(lines, counted(t.Unread, "file")+" cannot be read as a visit: counted below among what needs a second look, and nowhere else.")
	}
	if t.Waiting > 0 {
		lines = append(lines, counted(t.Waiting, "file")+" not judged yet, and so not counted.")
	}
	return lines
}

func counted(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}

// day words a day; it stands as it is if it is none.
func day(text string) string {
	t, err := time.Parse(time.DateOnly, text)
	if err != nil {
		return text
	}
	return t.Format(days)
}

// days is how a day is written.
const days = "2 January 2006"

func standing(p review.Pattern) Part {
	return Part{Title: "How they stand by today's rules and range", Bars: []Bar{bar("firm", p.Firm, p.Visits), bar("open", p.Open, p.Visits),
		bar("falls short", p.FallsShort, p.Visits), bar("none fits", p.NoneFits, p.Visits), bar("not yet", p.NotYet, p.Visits)},
		Note: "Firm: no answer still missing could change the recommendation. Open: one could. Not yet: too little is known."}
}

func ended(p review.Pattern) Part {
	return Part{Title: "How they ended", Bars: []Bar{bar("order", p.Ordered, p.Visits), bar("quote wanted", p.Quoted, p.Visits),
		bar("second visit", p.Again, p.Visits), bar("no", p.Lost, p.Visits), bar("nothing recorded", p.NoOutcome, p.Visits)}}
}

func endings(title string, groups []review.Pattern, name func(string) string) Part {
	p := Part{Title: title}
	for _, g := range groups {
		p.Table = append(p.Table, ending(name(g.Of), g))
	}
	return p
}

func ending(label string, p review.Pattern) Ending {
	return Ending{Label: label, Visits: p.Visits, Ordered: p.Ordered, Waiting: p.Waiting(), Lost: p.Lost}
}

func requirement(id string) string {
	if id == "" {
		return notKnown
	}
	return report.RequirementName(rules.Requirement(id))
}

// notKnown stands where nothing is known.
const notKnown = "not known"

// orNone words the system of visits that have none.
func orNone(of string) string {
	if of == "" {
		return "none recommended"
	}
	return of
}

func orUnknown(of string) string {
	if of == "" {
		return notKnown
	}
	return of
}

// againstWords word what weighed most against it.
var againstWords = map[assess.Against]string{
	assess.AgainstPrice: "the price", assess.AgainstHabit: "they keep today's way", assess.AgainstCut: "the cuts did not convince",
	assess.AgainstSite: "supply, air or room", assess.AgainstElsewhere: "they buy something else", assess.AgainstLater: "no money or time now",
	assess.AgainstOther: "another reason", "": "not noted",
}

func lost(p review.Pattern) Part {
	part := Part{Title: "What weighed most where the answer was no"}
	if p.Lost == 0 {
		part.Note = "No visit ended with a no."
		return part
	}
	for _, c := range p.Against {
		part.Bars = append(part.Bars, bar(againstWords[assess.Against(c.What)], c.Visits, p.Lost))
	}
	if p.Poor > 0 {
		part.Note = "A cut went poorly in " + Count(p.Poor, p.Lost) + "."
	}
	return part
}

func raised(t review.Tally) Part {
	part := Part{Title: "What needs a second look"}
	for _, c := range t.Raised {
		part.Bars = append(part.Bars, bar(flagName(c.What), c.Visits, t.Files))
	}
	if len(part.Bars) == 0 {
		part.Note = "No flag is raised."
	}
	return part
}

func flagName(id string) string {
	for _, k := range review.FlagKinds() {
		if k.ID == id {
			return k.Name
		}
	}
	return id
}

func open(p review.Pattern) Part {
	part := Part{Title: "Questions left open most"}
	for _, c := range p.Unanswered {
		part.Bars = append(part.Bars, bar(c.What, c.Visits, p.Visits))
	}
	if len(part.Bars) == 0 {
		part.Note = "None is left without an answer; not known is one."
	}
	return part
}

func took(p review.Pattern) Part {
	part := Part{Title: "Time of an interview", Note: "Not known of any of these visits. An interview held with this program notes it."}
	if p.Took.Known == 0 {
		return part
	}
	spans, from := review.Spans(), 0
	for i, n := range p.Took.Within {
		label := fmt.Sprintf("over %d min", from)
		if i < len(spans) {
			label = fmt.Sprintf("over %d to %d min", from, spans[i])
			if i == 0 {
				label = fmt.Sprintf("up to %d min", spans[i])
			}
			from = spans[i]
		}
		part.Bars = append(part.Bars, bar(label, n, p.Took.Known))
	}
	part.Note = fmt.Sprintf("%s. Known of %s. A gap of more than %.0f min between two answers is a pause.", sentence(minutes(p.Took)), Count(p.Took.Known, p.Visits), assess.Pause.Minutes())
	return part
}

// minutes words times: the range of few, the median of more.
func minutes(t review.Took) string {
	switch {
	case t.Known == 0:
		return ""
	case t.Low == t.High:
		return fmt.Sprintf("%d min", t.Low)
	case t.Known < fewest:
		return fmt.Sprintf("from %d to %d min", t.Low, t.High)
	}
	return fmt.Sprintf("half took %d min or less, all from %d to %d min", t.Median, t.Low, t.High)
}

// more words what weighed against it and how timed cuts went, in one line each.
func more(p review.Pattern) []string {
	var list []string
	for _, part := range []struct {
		name string
		of   Part
	}{{"weighed most where the answer was no", lost(p)}, {"timed cuts", cuts(p)}} {
		var counts []string
		for _, b := range part.of.Bars {
			counts = append(counts, b.Label+" "+b.Count)
		}
		if len(counts) > 0 {
			list = append(list, part.name+": "+strings.Join(counts, ", "))
		}
	}
	return list
}

// middle words times in brief.
func middle(t review.Took) string {
	if t.Known < fewest {
		return minutes(t)
	}
	return fmt.Sprintf("median %d min, of %d", t.Median, t.Known)
}

func sentence(s string) string {
	if s == "" {
		return ""
	}
	return strings.ToUpper(s[:1]) + s[1:]
}

func cuts(p review.Pattern) Part {
	part := Part{Title: "Timed cuts against the prediction"}
	all := p.Cuts.All()
	if all == 0 {
		part.Note = "No cut with a prediction was timed."
		return part
	}
	part.Bars = []Bar{bar("slower", p.Cuts.Slow, all), bar("as predicted", p.Cuts.Fit, all), bar("faster", p.Cuts.Fast, all)}
	part.Note = "A cut is as predicted within 15 % of the time, as at the bench."
	return part
}

// Groups words patterns by a column.
func Groups(list []review.Pattern, by string) []Group {
	name := orUnknown
	switch by {
	case "critical":
		name = requirement
	case "system":
		name = orNone
	}
	var groups []Group
	for _, p := range list {
		g := Group{Ending: ending(name(p.Of), p), Firm: Count(p.Firm, p.Visits), Time: minutes(p.Took), Middle: middle(p.Took), Bars: []Bar{
			bar("firm", p.Firm, p.Visits), bar("flagged", p.Flagged, p.Visits), bar("ordered", p.Ordered, p.Visits), bar("waiting", p.Waiting(), p.Visits), bar("lost", p.Lost, p.Visits)}}
		g.More = more(p)
		for _, c := range p.Unanswered {
			g.Open = append(g.Open, bar(c.What, c.Visits, p.Visits))
		}
		if len(p.Unanswered) > 0 {
			first := p.Unanswered[0]
			g.Left = first.What + ", " + Count(first.Visits, p.Visits)
		}
		groups = append(groups, g)
	}
	return groups
}
