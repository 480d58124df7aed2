package export

import (
	"strconv"
	"strings"
	"time"

	"cutbrief/assess"
	"cutbrief/assess/review"
	"cutbrief/report"
	"cutbrief/rules"
	"cutbrief/rules/message"
)

// Summary is what a manager is shown of a folder, in the words asked for: counts
// with their base, the shares that bars are drawn by, and what each count rests
// on.
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

// share is a count with its base, and with a percentage where there are enough
// for one. Few of many are not none, and nearly all are not all.
func share(n, base int) message.Message {
	of := func(id message.ID, args ...any) message.Message {
		return message.New(id, append([]any{plain(n), plain(base)}, args...)...)
	}
	if base < fewest {
		return of("{1} of {2}")
	}
	percent := (200*n + base) / (2 * base)
	switch {
	case n > 0 && percent == 0:
		return of("{1} of {2} (under 1 %)")
	case n < base && percent == 100:
		return of("{1} of {2} (over 99 %)")
	}
	return of("{1} of {2} ({3} %)", message.Count(percent))
}

// plain is a number without marks between its thousands: it stands in a column.
func plain(n int) message.Name { return message.Name(strconv.Itoa(n)) }

// count is one bar before it is put into words.
type count struct {
	label message.ID
	n     int
}

// summarizer puts a summary into words.
type summarizer struct{ words *message.Catalog }

func (s summarizer) say(id message.ID, args ...any) string {
	return s.words.Print(message.New(id, args...))
}

func (s summarizer) share(n, base int) string { return s.words.Print(share(n, base)) }

func (s summarizer) bar(label string, n, base int) Bar {
	b := Bar{Label: label, Count: s.share(n, base)}
	if base > 0 {
		b.Share = float64(n) / float64(base)
	}
	return b
}

// bars are counts of one base.
func (s summarizer) bars(base int, list ...count) []Bar {
	var bars []Bar
	for _, c := range list {
		bars = append(bars, s.bar(s.say(c.label), c.n, base))
	}
	return bars
}

// Summary is the same for a page.
func (p Patterns) Summary() Summary { return Summarize(p.Tally, p.Totals, p.Today, p.Words) }

// Summarize words a tally of some rows of a folder, which holds totals. Today is
// what the flags were raised on.
func Summarize(t review.Tally, totals review.Totals, today time.Time, words *message.Catalog) Summary {
	s := summarizer{words}
	all := t.All
	sum := Summary{Title: s.say("Visits of the team"), Day: today, Lead: s.lead(t, totals, today), By: t.By, Groups: s.groups(t.Groups, t.By)}
	for _, p := range []Part{
		{Title: s.say("Where they stand by today's rules and range"), Note: s.say("Firm: no missing answer can change the recommendation. Open: one can. Not yet: too little is known."),
			Bars: s.bars(all.Visits, count{"firm", all.Firm}, count{"open", all.Open}, count{"falls short", all.FallsShort}, count{"none fits", all.NoneFits}, count{"not yet", all.NotYet})},
		{Title: s.say("How they ended"),
			Bars: s.bars(all.Visits, count{"order", all.Ordered}, count{"quote wanted", all.Quoted}, count{"second visit", all.Again}, count{"no", all.Lost}, count{"nothing recorded", all.NoOutcome})},
		{Title: s.say("How they ended, by what decides"), Table: s.endings(t.Requirements, "critical")},
		{Title: s.say("How they ended, by system"), Table: s.endings(t.Systems, "system")},
		s.lost(all), s.raised(t), s.open(all), s.took(all), s.cuts(all),
	} {
		if len(p.Bars)+len(p.Table) > 0 || p.Note != "" {
			sum.Parts = append(sum.Parts, p)
		}
	}
	sum.Notes = []string{s.say("A count has its base beside it, and no percentage of five or fewer. Rules and bands are our own, common practice, no source: they start a conversation and judge nobody.")}
	if t.By != "rep" {
		sum.Notes = append(sum.Notes, s.say("Nobody is named here."))
	}
	return sum
}

// lead says what was counted and what was not.
func (s summarizer) lead(t review.Tally, totals review.Totals, today time.Time) []string {
	counted := message.Counted(t.All.Visits, "{1} visit counted on {2}", "{1} visits counted on {2}", day(today.Format(time.DateOnly)))
	if t.First != "" && t.First == t.Last {
		counted = message.New("{1}, made on {2}", counted, day(t.First))
	} else if t.First != "" {
		counted = message.New("{1}, made from {2} to {3}", counted, day(t.First), day(t.Last))
	}
	lines := []message.Message{counted.Sentence()}
	if totals.Invented {
		lines = append(lines, message.ID("The range they are judged by is invented: it says nothing about systems that can be ordered.").Message())
	}
	if t.Files < totals.Files {
		lines = append(lines, message.New("A filter keeps {1} of {2}.", message.Count(t.Files), files(totals.Files)))
	}
	if t.Unread > 0 {
		lines = append(lines, message.New("{1} cannot be read as a visit: counted only below, under what needs a second look.", files(t.Unread)))
	}
	var printed []string
	for _, l := range lines {
		printed = append(printed, s.words.Print(l))
	}
	return printed
}

// files counts files.
func files(n int) message.Message { return message.Counted(n, "{1} file", "{1} files") }

// day words a day; it stands as it is if it is none.
func day(text string) message.Message {
	t, err := time.Parse(time.DateOnly, text)
	if err != nil {
		return message.Text(text)
	}
	return message.New(message.ID("{1} "+t.Month().String()+" {2}"), message.Name(strconv.Itoa(t.Day())), message.Name(strconv.Itoa(t.Year())))
}

// called words what the visits of a group share.
func (s summarizer) called(of, by string) string {
	switch {
	case of == "" && by == "system":
		return s.say("none recommended")
	case of == "":
		return s.say("not known")
	case by == "critical":
		return s.say(report.RequirementName(rules.Requirement(of)))
	}
	field, _ := review.FindField(by)
	return field.Worded(s.words, of)
}

func (s summarizer) endings(groups []review.Pattern, by string) []Ending {
	var list []Ending
	for _, g := range groups {
		list = append(list, s.ending(g, by))
	}
	return list
}

func (s summarizer) ending(p review.Pattern, by string) Ending {
	return Ending{Label: s.called(p.Of, by), Visits: p.Visits, Ordered: p.Ordered, Waiting: p.Waiting(), Lost: p.Lost}
}

// againstWords word what weighed most against it.
var againstWords = map[assess.Against]message.ID{
	assess.AgainstPrice: "the price", assess.AgainstHabit: "they keep today's way", assess.AgainstCut: "the cuts did not convince",
	assess.AgainstSite: "supply, air or room", assess.AgainstElsewhere: "they buy something else", assess.AgainstLater: "no money or time now",
	assess.AgainstOther: "another reason", "": "not noted",
}

func (s summarizer) lost(p review.Pattern) Part {
	part := Part{Title: s.say("Main reason where the answer was no")}
	if p.Lost == 0 {
		part.Note = s.say("No visit ended with a no.")
		return part
	}
	for _, c := range p.Against {
		part.Bars = append(part.Bars, s.bar(s.say(againstWords[assess.Against(c.What)]), c.Visits, p.Lost))
	}
	if p.Poor > 0 {
		part.Note = s.say("A cut went poorly in {1}.", share(p.Poor, p.Lost))
	}
	return part
}

func (s summarizer) raised(t review.Tally) Part {
	part := Part{Title: s.say("What needs a second look")}
	for _, c := range t.Raised {
		label := c.What
		for _, k := range review.FlagKinds() {
			if k.ID == c.What {
				label = s.say(message.ID(k.Name))
			}
		}
		part.Bars = append(part.Bars, s.bar(label, c.Visits, t.Files))
	}
	if len(part.Bars) == 0 {
		part.Note = s.say("No flag is raised.")
	}
	return part
}

func (s summarizer) open(p review.Pattern) Part {
	part := Part{Title: s.say("Questions most often not answered"), Bars: s.questions(p)}
	if len(part.Bars) == 0 {
		part.Note = s.say("Every question has an answer; not known is one.")
	}
	return part
}

// questions are those left open most.
func (s summarizer) questions(p review.Pattern) []Bar {
	var bars []Bar
	for _, c := range p.Unanswered {
		bars = append(bars, s.bar(s.say(message.ID(c.What)), c.Visits, p.Visits))
	}
	return bars
}

func (s summarizer) took(p review.Pattern) Part {
	part := Part{Title: s.say("Time of an interview"), Note: s.say("Not known of any of these visits. An interview held with this program notes it.")}
	if p.Took.Known == 0 {
		return part
	}
	spans, from := review.Spans(), 0
	for i, n := range p.Took.Within {
		label := s.say("over {1} min", message.Count(from))
		switch {
		case i == 0:
			label = s.say("up to {1} min", message.Count(spans[i]))
		case i < len(spans):
			label = s.say("over {1} to {2} min", message.Count(from), message.Count(spans[i]))
		}
		if i < len(spans) {
			from = spans[i]
		}
		part.Bars = append(part.Bars, s.bar(label, n, p.Took.Known))
	}
	part.Note = s.say("{1}. Known of {2}. A gap of more than {3} min between two answers is a pause.", minutes(p.Took).Capital(), share(p.Took.Known, p.Visits), message.Count(assess.Pause.Minutes()))
	return part
}

// minutes words times: the range of few, the median of more.
func minutes(t review.Took) message.Message {
	low, high := message.Count(t.Low), message.Count(t.High)
	switch {
	case t.Known == 0:
		return message.Message{}
	case t.Low == t.High:
		return message.New("{1} min", low)
	case t.Known < fewest:
		return message.New("from {1} to {2} min", low, high)
	}
	return message.New("half took {1} min or less, all from {2} to {3} min", message.Count(t.Median), low, high)
}

// middle words times in brief.
func middle(t review.Took) message.Message {
	if t.Known < fewest {
		return minutes(t)
	}
	return message.New("median {1} min, of {2}", message.Count(t.Median), message.Count(t.Known))
}

func (s summarizer) cuts(p review.Pattern) Part {
	part := Part{Title: s.say("Timed cuts against the prediction"), Note: s.say("No cut with a prediction was timed.")}
	if all := p.Cuts.All(); all > 0 {
		part.Bars = s.bars(all, count{"slower", p.Cuts.Slow}, count{"as predicted", p.Cuts.Fit}, count{"faster", p.Cuts.Fast})
		part.Note = s.say("As predicted: within 15 % of the time, as at the bench.")
	}
	return part
}

// groups words patterns by a column.
func (s summarizer) groups(list []review.Pattern, by string) []Group {
	var groups []Group
	for _, p := range list {
		g := Group{Ending: s.ending(p, by), Firm: s.share(p.Firm, p.Visits), Time: s.words.Print(minutes(p.Took)), Middle: s.words.Print(middle(p.Took)), Open: s.questions(p),
			Bars: s.bars(p.Visits, count{"firm", p.Firm}, count{"flagged", p.Flagged}, count{"ordered", p.Ordered}, count{"waiting", p.Waiting()}, count{"lost", p.Lost})}
		if counts := s.inLine(s.lost(p).Bars); counts != "" {
			g.More = append(g.More, s.say("main reason where the answer was no: {1}", message.Name(counts)))
		}
		if counts := s.inLine(s.cuts(p).Bars); counts != "" {
			g.More = append(g.More, s.say("timed cuts: {1}", message.Name(counts)))
		}
		if len(g.Open) > 0 {
			g.Left = g.Open[0].Label + ", " + g.Open[0].Count
		}
		groups = append(groups, g)
	}
	return groups
}

// inLine are bars in one line.
func (summarizer) inLine(bars []Bar) string {
	var counts []string
	for _, b := range bars {
		counts = append(counts, b.Label+" "+b.Count)
	}
	return strings.Join(counts, ", ")
}
