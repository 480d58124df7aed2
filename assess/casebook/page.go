package casebook

import (
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"

	"cutbrief/assess"
	"cutbrief/assess/sanitize"
)

// Page is the mark as plain text in lines of at most width characters, 80 if it
// is 0.
func (m *Mark) Page(width int) string {
	p := &page{width: max(40, orWidth(width))}
	p.head(m)
	p.part("The system", m.System)
	p.part("What decides", m.Decides)
	p.list("The demonstration", m.Showing)
	p.costs(m)
	p.part("Asked and right", []string{m.counted(Right)})
	p.list("Cleared up", m.Caught)
	p.list("Not cleared up", m.Let)
	p.part("Order", m.Order)
	p.safety(m)
	p.skills(m)
	p.part("To practise next", []string{m.advice()})
	return p.out.String()
}

// Summary is the mark in one sentence, for a line of its own.
func (m *Mark) Summary() string {
	yes := func(ok bool) string {
		if ok {
			return "right"
		}
		return "not right"
	}
	shown := "not shown"
	if m.Proven {
		shown = "shown"
	}
	return fmt.Sprintf("System %s, what decides %s and %s, %d of %d minutes used.", yes(m.RightSystem), yes(m.RightDecides), shown, m.Used, m.Customer.Minutes)
}

// page is text under way.
type page struct {
	out   strings.Builder
	width int
}

func orWidth(w int) int {
	if w == 0 {
		return 80
	}
	return w
}

func (p *page) head(m *Mark) {
	c := m.Customer
	p.line("HOW IT WENT")
	p.block("", "", said(c.Facts, assess.FactCompany)+". This customer "+c.Manner.Words()+".")
	p.block("", "", m.Summary())
	p.block("", "", "Invented for practice: the customer, the systems if they are the built-in ones, and every figure.")
}

// costs lists the misses that could have changed something, dearest first.
func (p *page) costs(m *Mark) {
	p.line("")
	p.line("WHAT EACH MISS COULD HAVE COST")
	grouped := m.grouped()
	for _, g := range grouped {
		p.block("- ", "  ", capital(strings.Join(g.names, "; "))+" ("+string(g.State)+"). "+g.sentence())
	}
	if len(grouped) == 0 {
		p.line("Nothing you missed would have changed anything.")
	}
	if quiet := m.quiet(); quiet != "" {
		p.block("", "", quiet)
	}
}

// group is several misses that would have cost the same.
type group struct {
	Item
	names []string
}

func (g group) sentence() string {
	if len(g.names) > 1 {
		return strings.Replace(g.Cost, withoutIt, "Without any one of them", 1)
	}
	return g.Cost
}

// grouped lists the misses that would have cost something, dearest first, those
// with the same cost together.
func (m *Mark) grouped() []group {
	var list []group
	for costs := costsSystem; costs >= costsVerdict; costs-- {
		for _, i := range m.Items {
			if i.Costs != costs || i.State == Right {
				continue
			}
			at := slices.IndexFunc(list, func(g group) bool { return g.Cost == i.Cost && g.State == i.State })
			if at < 0 {
				at, list = len(list), append(list, group{Item: i})
			}
			list[at].names = append(list[at].names, i.Name)
		}
	}
	return list
}

// quiet names the facts that were missed and cost nothing.
func (m *Mark) quiet() string {
	var wrong []string
	missed := 0
	for _, i := range m.Items {
		switch {
		case i.Costs != costsNothing || i.State == Right:
		case i.State == WrongFact:
			wrong = append(wrong, i.Name+" ("+i.Noted+", in truth "+i.Truth+")")
		default:
			missed++
		}
	}
	text := ""
	if len(wrong) > 0 {
		text = "Noted otherwise than it is, without harm this time: " + strings.Join(wrong, "; ") + ". "
	}
	if missed > 0 {
		text += fmt.Sprintf("Not asked or left open, without harm this time: %d.", missed)
	}
	return strings.TrimSpace(text)
}

func (m *Mark) counted(s State) string {
	n := 0
	for _, i := range m.Items {
		if i.State == s {
			n++
		}
	}
	return fmt.Sprintf("%d of %d facts, with %d questions and other steps in %d of %d minutes.", n, len(m.Items), m.Acts, m.Used, m.Customer.Minutes)
}

func (p *page) safety(m *Mark) {
	if len(m.Safety) == 0 {
		p.part("Safety", []string{"Eye protection, fume and hot work were all asked about."})
		return
	}
	p.list("Safety questions forgotten", m.Safety)
	p.block("", "", "Nobody cuts or watches before these are settled; the manual, the site's rules and its permit decide.")
}

// skills says how each skill did in this practice.
func (p *page) skills(m *Mark) {
	p.line("")
	p.line("BY SKILL")
	for _, s := range Skills() {
		if t := m.Skills[s]; t.Of > 0 {
			p.line(bar(s, t))
		}
	}
}

func (m *Mark) advice() string {
	if m.Next == "" {
		return "Nothing stood out. Take a harder customer."
	}
	return capital(m.Next.Name()) + ". " + m.Next.advice()
}

// part is a heading and sentences that run on.
func (p *page) part(title string, sentences []string) {
	p.line("")
	p.line(strings.ToUpper(title))
	p.block("", "", strings.Join(sentences, " "))
}

// list is a heading and a line each; nothing if there is none.
func (p *page) list(title string, items []string) {
	if len(items) == 0 {
		return
	}
	p.line("")
	p.line(strings.ToUpper(title))
	for _, i := range items {
		p.block("- ", "  ", i)
	}
}

func (p *page) line(s string) { p.out.WriteString(s + "\n") }

// block wraps a text behind a first indent, with another before later lines.
func (p *page) block(first, later, text string) {
	line := first
	begun := false
	for _, word := range strings.Fields(sanitize.Lines(text)) {
		if begun && utf8.RuneCountInString(line)+1+utf8.RuneCountInString(word) > p.width {
			p.line(line)
			line, begun = later, false
		}
		if begun {
			line += " "
		}
		line, begun = line+word, true
	}
	if begun {
		p.line(line)
	}
}

// bars are ten marks wide.
const bars = 10

// bar is one line of a chart: name, bar, numbers.
func bar(s Skill, t Tally) string {
	full := int(t.share()*bars + 0.5)
	return fmt.Sprintf("%-20s %s%s  %d of %d", s.Name(), strings.Repeat("#", full), strings.Repeat(".", bars-full), t.Right, t.Of)
}
