package casebook

import (
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"

	"cutbrief/report/text"
	"cutbrief/rules/message"
)

// Page is the mark as plain text in the words of a catalog, in lines of at most
// width characters, 80 if it is 0.
func (m *Mark) Page(words *message.Catalog, width int) string {
	if width == 0 {
		width = 80
	}
	p := &page{text.Lines{Width: max(40, width)}, words}
	p.heading("How it went")
	p.block("", message.New("{1}. This customer {2}.", message.Name(m.Customer.Company()), m.Customer.Manner.row().words))
	p.block("", m.Summary())
	p.block("", message.New("Invented for practice: the customer, the systems if they are the built-in ones, and every figure."))
	p.run("The system", m.System...)
	p.run("The deciding requirement", m.Decides...)
	p.list("The demonstration", m.Showing)
	p.heading("What each miss could have cost")
	misses := m.misses()
	for _, miss := range misses {
		p.block("- ", miss)
	}
	if len(misses) == 0 {
		p.block("", message.New("Nothing you missed would have changed anything."))
	}
	p.block("", m.harmless())
	right := 0
	for _, i := range m.Items {
		if i.State == Right {
			right++
		}
	}
	p.run("Asked and right", message.New("{1} of {2} facts, with {3} questions and other steps in {4} of {5} minutes.",
		number(right), number(len(m.Items)), number(m.Acts), number(m.Used), number(m.Customer.Minutes)))
	p.list("Cleared up", m.Caught)
	p.list("Not cleared up", m.Let)
	p.run("Order", m.Order...)
	p.list("Safety questions forgotten", m.Safety)
	if len(m.Safety) == 0 {
		p.run("Safety", message.New("Eye protection, fume and hot work were all asked about."))
	} else {
		p.block("", message.New("Nobody cuts or watches before these are settled; the manual, the site's rules and its permit decide."))
	}
	p.heading("By skill")
	for _, s := range Skills() {
		if t := m.Skills[s]; t.Of > 0 {
			p.Line(bar(words, s, t))
		}
	}
	advice := message.New("Nothing stood out. Take a harder customer.")
	if m.Next != "" {
		advice = message.New("{1}. {2}", m.Next.Name().Message().Capital(), m.Next.row().advice)
	}
	p.run("To practise next", advice)
	return strings.TrimPrefix(p.String(), "\n")
}

// Summary is the mark in one sentence, for a line of its own.
func (m *Mark) Summary() message.Message {
	right := map[bool]message.ID{true: "right", false: "not right"}
	shown := map[bool]message.ID{true: "shown", false: "not shown"}
	return message.New("System {1}, deciding requirement {2} and {3}, {4} of {5} minutes used.",
		right[m.RightSystem], right[m.RightDecides], shown[m.Proven], number(m.Used), number(m.Customer.Minutes))
}

// misses lists the misses that would have cost something, dearest first, those
// with the same cost together.
func (m *Mark) misses() []message.Message {
	var list []Item
	names := map[int][]message.Message{} // by place in the list
	for level := ChangesSystem; level >= ChangesVerdict; level-- {
		for _, i := range m.Items {
			if i.Effect.Level != level {
				continue
			}
			at := slices.IndexFunc(list, func(o Item) bool {
				return o.State == i.State && o.Effect.Sentence().String() == i.Effect.Sentence().String()
			})
			if at < 0 {
				at, list = len(list), append(list, i)
			}
			names[at] = append(names[at], i.Name)
		}
	}
	var misses []message.Message
	for at, i := range list {
		if len(names[at]) > 1 && i.Effect.why.ID() == withoutIt {
			i.Effect.why = withoutAnyOne.Message()
		}
		misses = append(misses, message.New("{1} ({2}). {3}", message.Join("; ", names[at]...).Capital(), message.ID(i.State), i.Effect.Sentence()))
	}
	return misses
}

// harmless names the facts that were missed and cost nothing.
func (m *Mark) harmless() message.Message {
	var wrong []message.Message
	missed := 0
	for _, i := range m.Items {
		switch {
		case i.Effect.Level != ChangesNothing || i.State == Right:
		case i.State == WrongFact:
			wrong = append(wrong, message.New("{1} ({2}, in truth {3})", i.Name, i.Noted, i.Truth))
		default:
			missed++
		}
	}
	var said []message.Message
	if len(wrong) > 0 {
		said = append(said, message.New("Noted otherwise than it is, without harm this time: {1}.", message.Join("; ", wrong...)))
	}
	if missed > 0 {
		said = append(said, message.New("Not asked or not answered, without harm this time: {1}.", number(missed)))
	}
	return message.Join(" ", said...)
}

// page is text under way.
type page struct {
	text.Lines
	words *message.Catalog
}

func (p *page) heading(title message.ID) {
	p.Line("\n" + strings.ToUpper(p.words.Print(title.Message())))
}

// run is a heading and sentences that run on.
func (p *page) run(title message.ID, sentences ...message.Message) {
	p.heading(title)
	p.block("", message.Join(" ", sentences...))
}

// list is a heading and a line each; nothing if there is none.
func (p *page) list(title message.ID, items []message.Message) {
	if len(items) == 0 {
		return
	}
	p.heading(title)
	for _, i := range items {
		p.block("- ", i)
	}
}

// block wraps a text behind a mark, and later lines below its text.
func (p *page) block(mark string, m message.Message) { p.Block(mark, p.words.Print(m)) }

// nameOf is the name of a skill, as wide as the longest of them.
func nameOf(words *message.Catalog, s Skill) string {
	wide := 0
	for _, other := range Skills() {
		wide = max(wide, utf8.RuneCountInString(words.Print(other.Name().Message())))
	}
	return fmt.Sprintf("%-*s", wide, words.Print(s.Name().Message()))
}

// bars are ten marks wide.
const bars = 10

// bar is one line of a chart: name, bar, numbers.
func bar(words *message.Catalog, s Skill, t Tally) string {
	full := int(t.share()*bars + 0.5)
	marks := strings.Repeat("#", full) + strings.Repeat(".", bars-full)
	return fmt.Sprintf("%s %s  %s", nameOf(words, s), marks, words.Print(message.New("{1} of {2}", number(t.Right), number(t.Of))))
}
