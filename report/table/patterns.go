package table

import (
	"bufio"
	"fmt"
	"io"
	"strings"
	"time"

	"cutbrief/assess/review"
	"cutbrief/report/team"
)

// Patterns is what is counted over the rows: as a whole, and by a column if the
// tally has groups.
type Patterns struct {
	Tally  review.Tally
	Totals review.Totals
	Whole  bool // not only the groups
	Width  int  // cells a line may take; 0 is 80
	Today  time.Time
}

// Widths in cells: what a line takes where nobody says, the least it is laid out
// for, and the most a label and a bar take.
const (
	usualWidth = 80
	leastWidth = 40
	mostLabel  = 30
	mostBar    = 30
	leastBar   = 6
)

// Text writes a part for each question, its answer in bars, and a part for each
// group.
func (p Patterns) Text(w io.Writer) error {
	s := team.Of(p.Tally, p.Totals, p.Today)
	if !p.Whole {
		s.Parts = nil
	}
	c := newChart(bufio.NewWriter(w), p.Width, s)
	if p.Whole {
		c.title(s.Title)
		for _, l := range s.Lead {
			c.block("", l)
		}
		for _, part := range s.Parts {
			c.part(part)
		}
	}
	for i, g := range s.Groups {
		if p.Whole || i > 0 {
			c.line("")
		}
		c.group(s.By, g)
	}
	if !p.Whole {
		if len(s.Groups) > 0 {
			c.line("")
		}
		c.block("", p.kept()+Sheet{Totals: p.Totals}.all())
		return c.out.Flush()
	}
	c.line("")
	for _, n := range s.Notes {
		c.block("", n)
	}
	return c.out.Flush()
}

// kept says how many files a filter keeps, "" if it keeps all.
func (p Patterns) kept() string {
	if p.Tally.Files == p.Totals.Files {
		return ""
	}
	return fmt.Sprintf("%d kept of ", p.Tally.Files)
}

// all counts every file, whatever is shown.
func (s Sheet) all() string {
	text := files(s.Totals.Files)
	if s.Totals.Unread > 0 {
		text += fmt.Sprintf("; %d of all not read as a visit, and so not counted", s.Totals.Unread)
	}
	return text
}

// chart writes bars in text. All of its bars stand in the same columns.
type chart struct {
	out               *bufio.Writer
	width             int
	label, bar, count int // widths of the columns
}

func newChart(out *bufio.Writer, width int, s team.Summary) *chart {
	if width <= 0 {
		width = usualWidth
	}
	c := &chart{out: out, width: max(width, leastWidth)}
	for _, p := range s.Parts {
		c.measure(p.Bars)
	}
	for _, g := range s.Groups {
		c.measure(g.Bars)
		c.measure(g.Open)
	}
	c.label = min(c.label, mostLabel, c.width-len(indent)-2*len(between)-leastBar-c.count)
	c.label = max(c.label, 8)
	c.bar = min(mostBar, c.width-len(indent)-c.label-2*len(between)-c.count)
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

func (c *chart) measure(bars []team.Bar) {
	for _, b := range bars {
		c.label = max(c.label, cells.StringWidth(b.Label))
		c.count = max(c.count, cells.StringWidth(b.Count))
	}
}

func (c *chart) line(text string) { c.out.WriteString(strings.TrimRight(text, " ") + "\n") }

func (c *chart) title(text string) {
	c.line(text)
	c.line(strings.Repeat("=", cells.StringWidth(text)))
}

// block writes a text in as many lines as it takes, later ones set in.
func (c *chart) block(before, text string) {
	for i, l := range wrapped(text, c.width-len(before)) {
		if i > 0 {
			before = strings.Repeat(" ", len(before))
		}
		c.line(before + l)
	}
}

func (c *chart) part(p team.Part) {
	c.line("")
	c.block("", p.Title)
	for _, b := range p.Bars {
		c.row(b)
	}
	c.endings(p.Table)
	if p.Note != "" {
		c.block(indent, p.Note)
	}
}

// row writes one bar, its label in as many lines as it takes.
func (c *chart) row(b team.Bar) {
	for i, l := range wrapped(b.Label, c.label) {
		if i > 0 {
			c.line(indent + l)
			continue
		}
		c.line(indent + padded(l, c.label) + between + blocks(b.Share, c.bar) + between + b.Count)
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

// heads are the columns of a table of endings.
const heads = " visits ordered waiting  lost"

// endings writes how the visits of each group ended, and the same as a bar that
// is as long as the group.
func (c *chart) endings(list []team.Ending) {
	if len(list) == 0 {
		return
	}
	label := 0
	for _, e := range list {
		label = max(label, cells.StringWidth(e.Label))
	}
	label = max(8, min(label, c.width-len(indent)-len(heads)-2-leastBar))
	room := min(mostBar, c.width-len(indent)-label-len(heads)-2)
	if room >= leastBar {
		c.block(indent, "█ ordered  ▒ waiting  ░ lost  · no outcome recorded")
	}
	c.line(indent + padded("", label) + heads)
	for _, e := range list {
		for i, l := range wrapped(e.Label, label) {
			text := indent + padded(l, label)
			if i == 0 {
				text += fmt.Sprintf("%7d%8d%8d%6d  ", e.Visits, e.Ordered, e.Waiting, e.Lost)
				if room >= leastBar {
					text += stacked(e, room)
				}
			}
			c.line(text)
		}
	}
}

// stacked draws the endings of a group one after the other.
func stacked(e team.Ending, room int) string {
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
func (c *chart) group(by string, g team.Group) {
	c.block("", by+": "+g.Label)
	for _, b := range g.Bars {
		c.row(b)
	}
	if g.Time != "" {
		c.block(indent, "time: "+g.Time)
	}
	for _, l := range g.More {
		c.block(indent, l)
	}
	if len(g.Open) > 0 {
		c.line(indent + "left open most:")
	}
	for _, b := range g.Open {
		c.row(b)
	}
}

// padded fills a text with blanks.
func padded(s string, width int) string {
	return s + strings.Repeat(" ", max(0, width-cells.StringWidth(s)))
}

// wrapped breaks a text at blanks into lines of at most width cells; a word that
// is longer is cut across lines. There is at least one line.
func wrapped(text string, width int) []string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(text) {
		if line != "" && cells.StringWidth(line)+1+cells.StringWidth(word) <= width {
			line += " " + word
			continue
		}
		if line != "" {
			lines = append(lines, line)
		}
		for cells.StringWidth(word) > width {
			head := cells.Truncate(word, width, "")
			if head == "" {
				break // not one character fits
			}
			lines, word = append(lines, head), word[len(head):]
		}
		line = word
	}
	return append(lines, line)
}
