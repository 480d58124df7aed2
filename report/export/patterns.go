package export

import (
	"encoding/json"
	"fmt"
	"io"
	"iter"
	"strings"
	"time"

	"cutbrief/assess"
	"cutbrief/assess/review"
	"cutbrief/assess/sanitize"
	"cutbrief/assess/store"
	"cutbrief/report/text"
	"cutbrief/rules/message"
)

// Patterns is what is counted over the rows: as a whole, and by a column if the
// tally has groups.
type Patterns struct {
	Tally  review.Tally
	Totals review.Totals
	Whole  bool // not only the groups
	Width  int  // cells a line may take; 0 is 80
	Today  time.Time
	Quotes []string // lines of what was noted, behind the counts
	Words  *message.Catalog
}

// Widths in cells: the least a line is laid out for, and the most a label and a bar
// take.
const (
	leastWidth = 40
	mostLabel  = 30
	mostBar    = 30
	leastBar   = 6
)

// Text writes a part for each question, its answer in bars, and a part for each
// group.
func (p Patterns) Text(w io.Writer) error {
	s := p.Summary()
	if !p.Whole {
		s.Parts = nil
	}
	c := newChart(p.Width, s, p.Words)
	if p.Whole {
		c.title(s.Title)
		for _, l := range s.Lead {
			c.Block("", l)
		}
		for _, part := range s.Parts {
			c.part(part)
		}
	}
	for i, g := range s.Groups {
		if p.Whole || i > 0 {
			c.Line("")
		}
		c.group(s.By, g)
	}
	if !p.Whole {
		if len(s.Groups) > 0 {
			c.Line("")
		}
		c.Block("", c.words.Print(p.kept()))
		_, err := io.WriteString(w, c.String())
		return err
	}
	c.Line("")
	for _, n := range s.Notes {
		c.Block("", n)
	}
	for _, q := range p.Quotes {
		c.Line(q)
	}
	_, err := io.WriteString(w, c.String())
	return err
}

// kept counts the files, and says how many of them a filter keeps.
func (p Patterns) kept() message.Message {
	if p.Tally.Files == p.Totals.Files {
		return all(p.Totals)
	}
	return message.New("{1} kept of {2}", message.Count(p.Tally.Files), all(p.Totals))
}

// all counts every file, whatever is shown.
func all(t review.Totals) message.Message {
	if t.Unread == 0 {
		return files(t.Files)
	}
	return message.New("{1}; {2} of all not read as a visit, and so not counted", files(t.Files), message.Count(t.Unread))
}

// Quotes are the words noted where the answer was no: why, and what spoke against
// it. They are read from the files of the rows, as no row holds them.
func (j *Job) Quotes(rows iter.Seq[*review.Row]) []string {
	words := j.Words
	list := []string{"", words.Print(message.ID("Noted where the answer was no").Message())}
	none := len(list)
	for r := range rows {
		if r.Stage != review.Judged || r.Outcome != string(assess.No) {
			continue
		}
		v, _, err := store.Load(j.below(r.Path))
		if err != nil {
			list = append(list, "  "+r.ShownPath()+": "+sanitize.Line(words.Print(message.Of(err))))
			none++
			continue
		}
		if latest := v.Latest(); latest != nil {
			for _, m := range noted(latest) {
				list = append(list, "  "+r.ShownPath()+": "+words.Print(m))
			}
		}
	}
	if len(list) == none {
		list = append(list, "  "+words.Print(message.ID("Nothing is noted in words.").Message()))
	}
	return list
}

// noted are the words noted of a demonstration, each in quotes.
func noted(s *assess.Demonstration) []message.Message {
	quoted := func(text string) message.Name { return message.Name("“" + sanitize.Line(text) + "”") }
	var list []message.Message
	if strings.TrimSpace(s.Because) != "" {
		list = append(list, message.New("{1}", quoted(s.Because)))
	}
	for _, o := range s.Objections {
		said := message.New("spoke against it: {1}", quoted(o.Said))
		if strings.TrimSpace(o.Answer) != "" {
			said = message.New("{1}, answered: {2}", said, quoted(o.Answer))
		}
		list = append(list, said)
	}
	return list
}

// chart writes bars in text. All of its bars stand in the same columns.
type chart struct {
	text.Lines
	words             *message.Catalog
	label, bar, count int // widths of the columns
}

func newChart(width int, s Summary, words *message.Catalog) *chart {
	if width <= 0 {
		width = text.DefaultWidth
	}
	c := &chart{Lines: text.Lines{Width: max(width, leastWidth)}, words: words}
	for _, p := range s.Parts {
		c.measure(p.Bars)
	}
	for _, g := range s.Groups {
		c.measure(g.Bars)
		c.measure(g.Open)
	}
	c.label = min(c.label, mostLabel, c.Width-len(indent)-2*len(between)-leastBar-c.count)
	c.label = max(c.label, 8)
	c.bar = min(mostBar, c.Width-len(indent)-c.label-2*len(between)-c.count)
	if c.bar < leastBar {
		c.bar = 0 // the count says it all
	}
	return c
}

// What stands before a line and between its columns.
const (
	indent  = "  "
	between = " "
)

func (c *chart) measure(bars []Bar) {
	for _, b := range bars {
		c.label = max(c.label, cells.StringWidth(b.Label))
		c.count = max(c.count, cells.StringWidth(b.Count))
	}
}

func (c *chart) say(id message.ID, args ...any) string {
	return c.words.Print(message.New(id, args...))
}

func (c *chart) title(title string) {
	c.Line(title)
	c.Line(text.Rule(title, "="))
}

func (c *chart) part(p Part) {
	c.Line("")
	c.Block("", p.Title)
	for _, b := range p.Bars {
		c.row(b)
	}
	c.endings(p.Table)
	if p.Note != "" {
		c.Block(indent, p.Note)
	}
}

// row writes one bar, its label in as many lines as it takes.
func (c *chart) row(b Bar) {
	for i, l := range lines(b.Label, c.label) {
		if i > 0 {
			c.Line(indent + l)
			continue
		}
		c.Line(indent + padded(l, c.label) + between + blocks(b.Share, c.bar) + between + b.Count)
	}
}

// blocks draws a share. Some of many is not nothing, and nearly all is not all.
func blocks(share float64, room int) string {
	n := int(share*float64(room) + 0.5)
	switch {
	case share <= 0 || room <= 0:
		n, room = 0, max(0, room)
	case share >= 1:
		n = room
	default:
		n = max(1, min(n, room-1))
	}
	return strings.Repeat("█", n) + strings.Repeat("·", room-n)
}

// columns are those of a table of endings.
var columns = []message.ID{"visits", "ordered", "waiting", "lost"}

// endings writes how the visits of each group ended, and the same as a bar that
// is as long as the group.
func (c *chart) endings(list []Ending) {
	if len(list) == 0 {
		return
	}
	heads, label := "", 0
	var widths []int
	for _, id := range columns {
		head := " " + c.words.Print(id.Message())
		if len(widths) == len(columns)-1 {
			head = " " + head
		}
		heads, widths = heads+head, append(widths, cells.StringWidth(head))
	}
	for _, e := range list {
		label = max(label, cells.StringWidth(e.Label))
	}
	used := len(indent) + cells.StringWidth(heads) + 2
	label = max(8, min(label, c.Width-used-leastBar))
	room := min(mostBar, c.Width-used-label)
	if room >= leastBar {
		c.Block(indent, c.words.Print(message.ID("█ ordered  ▒ waiting  ░ lost  · no outcome recorded").Message()))
	}
	c.Line(indent + padded("", label) + heads)
	for _, e := range list {
		line := ""
		for i, n := range []int{e.Visits, e.Ordered, e.Waiting, e.Lost} {
			line += fmt.Sprintf("%*d", widths[i], n)
		}
		if room >= leastBar {
			line += "  " + stacked(e, room)
		}
		for _, l := range lines(e.Label, label) {
			c.Line(indent + padded(l, label) + line)
			line = ""
		}
	}
}

// stacked draws the endings of a group one after the other.
func stacked(e Ending, room int) string {
	var b strings.Builder
	sum, done := 0, 0
	for _, part := range []struct {
		n    int
		mark string
	}{{e.Ordered, "█"}, {e.Waiting, "▒"}, {e.Lost, "░"}, {e.Visits - e.Ordered - e.Waiting - e.Lost, "·"}} {
		sum += part.n
		end := 0
		if e.Visits > 0 {
			end = (2*sum*room + e.Visits) / (2 * e.Visits)
		}
		if part.n > 0 && end == done && done < room {
			end++
		}
		b.WriteString(strings.Repeat(part.mark, max(0, end-done)))
		done = max(done, end)
	}
	return b.String()
}

// group writes one group with its bars.
func (c *chart) group(by string, g Group) {
	c.Block("", c.say("{1}: {2}", message.Name(by), message.Name(g.Label)))
	for _, b := range g.Bars {
		c.row(b)
	}
	if g.Time != "" {
		c.Block(indent, c.say("time: {1}", message.Name(g.Time)))
	}
	for _, l := range g.More {
		c.Block(indent, l)
	}
	if len(g.Open) > 0 {
		c.Line(indent + c.say("most often not answered:"))
	}
	for _, b := range g.Open {
		c.row(b)
	}
}

// lines breaks a text into lines of at most width cells. There is at least one.
func lines(s string, width int) []string {
	if list := text.Wrap(s, width); len(list) > 0 {
		return list
	}
	return []string{""}
}

// padded fills a text with blanks.
func padded(s string, width int) string {
	return s + strings.Repeat(" ", max(0, width-cells.StringWidth(s)))
}

// JSON writes the counts; shares are left to the reader, who has the base.
func (p Patterns) JSON(w io.Writer) error {
	doc := object{{"files", p.Totals.Files}, {"unread", p.Totals.Unread}, {"kept", p.Tally.Files}, {"kept_unread", p.Tally.Unread}} // kept by the filter
	if p.Tally.By != "" {
		doc = append(object{{"by", p.Tally.By}}, doc...)
	}
	if p.Whole {
		some := object{{"first", p.Tally.First}, {"last", p.Tally.Last}, {"all", counts(p.Tally.All)}, {"flags", pairs("flag", "files", p.Tally.Raised)},
			{"requirements", list(p.Tally.Requirements, counts)}, {"systems", list(p.Tally.Systems, counts)}}
		for _, v := range some {
			if v.is != "" && fmt.Sprint(v.is) != "[]" {
				doc = append(doc, v)
			}
		}
	}
	data, err := json.MarshalIndent(append(doc, value{"groups", list(p.Tally.Groups, counts)}), "", "  ")
	if err != nil {
		return err
	}
	_, err = w.Write(append(data, '\n'))
	return err
}

func list[T any](from []T, to func(T) object) []object {
	all := []object{}
	for _, one := range from {
		all = append(all, to(one))
	}
	return all
}

// pairs are counts of visits or files; what is not noted is null.
func pairs(what, of string, from []review.Count) []object {
	return list(from, func(c review.Count) object { return object{{what, known(c.What, c.What != "")}, {of, c.Visits}} })
}

// counts is what is said of a group of visits.
func counts(p review.Pattern) object {
	t := p.Took
	minutes := object{{"known_visits", t.Known}, {"low", t.Low}, {"median", t.Median}, {"high", t.High}}
	return object{
		{"of", p.Of}, {"visits", p.Visits},
		{"firm", p.Firm}, {"open", p.Open}, {"falls_short", p.FallsShort}, {"none_fits", p.NoneFits}, {"not_yet", p.NotYet}, {"flagged", p.Flagged},
		{"ordered", p.Ordered}, {"waiting", p.Waiting()}, {"quote", p.Quoted}, {"second_visit", p.Again}, {"lost", p.Lost}, {"no_outcome", p.NoOutcome},
		{"lost_against", pairs("what", "visits", p.Against)}, {"lost_with_a_poor_cut", p.Poor}, {"unanswered", pairs("question", "visits", p.Unanswered)},
		{"interview_minutes", known(minutes, t.Known > 0)}, {"timed_cuts", object{{"slower", p.Cuts.Slow}, {"as_predicted", p.Cuts.Fit}, {"faster", p.Cuts.Fast}}},
	}
}
