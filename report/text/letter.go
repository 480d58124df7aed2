package text

import (
	"strings"

	"cutbrief/assess"
	"cutbrief/report"
	"cutbrief/rules/message"
)

// Letter writes a short letter to the customer after a demonstration, from
// recorded facts alone, in lines of at most width cells; 0 takes 80. The rep
// edits it: what was not recorded is not in it.
func Letter(f report.FollowUp, width int) string {
	if width == 0 {
		width = DefaultWidth
	}
	p := &printer{width: max(width, leastWidth), words: f.Book}
	if f.Demo {
		p.block("*** ", p.words.Say("Invented data: this customer does not exist."))
		p.line("")
	}
	for _, l := range []string{f.Customer, f.Place} {
		if l != "" {
			p.block("", l)
		}
	}
	p.line("")
	p.block("", p.words.Say(greeting(f.Contact)))
	p.line("")
	p.block("", p.words.Say("Thank you for your time at the demonstration on "+message.Keep(f.Shown)+"."))
	p.seen(f.Cuts)
	if f.Words != "" {
		p.line("")
		p.block("", p.words.Say("In your own words: “"+message.Keep(f.Words)+"”"))
	}
	p.answered(f.Answered)
	p.agreed(&f)
	p.line("")
	p.block("", p.words.Say("With kind regards"))
	if f.Rep != "" {
		p.line("")
		p.block("", f.Rep)
	}
	return p.out.String()
}

// greeting greets the person, without what stands behind a comma: a role.
func greeting(contact string) string {
	contact, _, _ = strings.Cut(contact, ",")
	if contact == "" {
		return "Good day,"
	}
	return "Dear " + message.Keep(contact) + ","
}

// seen lists what was shown.
func (p *printer) seen(cuts []report.Line) {
	if len(cuts) == 0 {
		return
	}
	p.line("")
	p.block("", p.words.Say("What you saw:"))
	for _, c := range cuts {
		p.block("  - ", labelled(c.Label, strings.Join(present(c.Value, c.Why), ", ")))
	}
}

// answered lists what spoke against it with the answers given.
func (p *printer) answered(list []report.Line) {
	if len(list) == 0 {
		return
	}
	p.line("")
	p.block("", p.words.Say("What you asked, and what we answered:"))
	for _, l := range list {
		p.block("  - ", joined(l.Label, dash(l.Value)))
	}
}

// outcomes say what was agreed.
var outcomes = map[assess.Outcome]string{
	assess.Ordered:     "We are glad to have your order.",
	assess.Quote:       "You asked for a quote.",
	assess.SecondVisit: "You asked for a second visit.",
	assess.No:          "You decided against it, and we thank you for saying so plainly.",
}

func (p *printer) agreed(f *report.FollowUp) {
	if words := outcomes[f.Outcome]; words != "" {
		p.line("")
		p.block("", p.words.Say(words))
	}
	if f.Step == "" {
		return
	}
	next := "The next step: " + message.Keep(strings.TrimSuffix(f.Step, "."))
	if f.Owner != "" {
		next += " (" + message.Keep(f.Owner) + ")"
	}
	if !f.Due.IsZero() {
		next += ", by " + f.Due.Format("2 January 2006")
	}
	p.line("")
	p.block("", p.words.Say(next+"."))
}

// present leaves out what is empty.
func present(parts ...string) []string {
	var list []string
	for _, part := range parts {
		if part != "" {
			list = append(list, part)
		}
	}
	return list
}

// Break parts documents that stand one after the other.
const Break = "\n---\n\n"

// Letters writes a letter for each follow-up.
func Letters(list []report.FollowUp, width int) string {
	var parts []string
	for _, f := range list {
		parts = append(parts, Letter(f, width))
	}
	return strings.Join(parts, Break)
}
