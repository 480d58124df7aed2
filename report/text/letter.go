package text

import (
	"strings"

	"cutbrief/assess"
	"cutbrief/report"
	"cutbrief/rules/message"
)

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

// outcomes say what was agreed.
var outcomes = map[assess.Outcome]message.ID{
	assess.Ordered:     "We are glad to have your order.",
	assess.Quote:       "You asked for a quote.",
	assess.SecondVisit: "You asked for a second visit.",
	assess.No:          "You decided against it, and we thank you for saying so plainly.",
}

// Letter writes a short letter to the customer after a demonstration, from
// recorded facts alone, in lines of at most width cells; 0 takes 80. The rep
// edits it: what was not recorded is not in it.
func Letter(f report.FollowUp, width int) string {
	d := newDocument(f.Book, width)
	if f.Demo {
		d.Block("*** ", d.say("Invented data: this customer does not exist."))
		d.Line("")
	}
	d.Block("", f.Customer)
	d.Block("", f.Place)
	if contact, _, _ := strings.Cut(f.Contact, ","); contact != "" { // without a role
		d.lead(d.say("Dear {1},", printed(contact)))
	} else {
		d.lead(d.say("Good day,"))
	}
	d.lead(d.say("Thank you for your time at the demonstration on {1}.", printed(f.Shown)))
	d.letterList("What you saw:", f.Cuts, func(l report.Line) string { return labelled(l.Label, joinedBy(", ", l.Value, l.Why)) })
	if f.Words != "" {
		d.lead(d.say("In your own words: “{1}”", printed(f.Words)))
	}
	d.letterList("What you asked, and what we answered:", f.Answered, func(l report.Line) string { return joined(l.Label, dash(l.Value)) })
	if id, ok := outcomes[f.Outcome]; ok {
		d.lead(d.say(id))
	}
	switch step := printed(joined(strings.TrimSuffix(f.Step, "."), bracket(f.Owner))); {
	case f.Step == "":
	case f.Due.IsZero():
		d.lead(d.say("The next step: {1}.", step))
	default:
		d.lead(d.say("The next step: {1}, by {2}.", step, report.Day(f.Due)))
	}
	d.lead(d.say("With kind regards"))
	if f.Rep != "" {
		d.lead(f.Rep)
	}
	return d.String()
}

func (d *document) letterList(title message.ID, lines []report.Line, word func(report.Line) string) {
	if len(lines) == 0 {
		return
	}
	d.lead(d.say(title))
	for _, l := range lines {
		d.item(word(l))
	}
}

// Bench writes the demonstration as it is run at the bench, step by step, in
// lines of at most width cells; 0 takes 80.
func Bench(b report.Bench, width int) string {
	d := newDocument(b.Words, width)
	if b.Customer != "" {
		d.Block("", d.say("The demonstration of {1} for {2}", printed(b.System), printed(b.Customer)))
	} else {
		d.Block("", d.say("The demonstration of {1}", printed(b.System)))
	}
	d.Block("", b.Takes)
	for i := range b.Steps {
		s := &b.Steps[i]
		d.Line("")
		if s.SetUp {
			d.Block("   ", bracket(d.say("change the plate or the setting")))
		}
		d.Block("", numbered(i+1, joined(s.Cut, bracket(s.Takes))))
		list, torch := []label{{"Piece:", s.Piece}}, message.ID("Torch:")
		for _, t := range s.Torch {
			list = append(list, label{torch, t})
			torch = "" // what follows stands below
		}
		d.labels("   ", append(list, label{"Look for:", s.See}, label{"Because:", s.Because}, label{"Can fail:", s.Fails}, label{"So:", s.Avoid}, label{"Bring:", s.Bring}))
	}
	d.facts("Before leaving", b.Leaving, d.tick, valueOf)
	d.facts("At the site, before the first arc", b.OnSite, d.tick, valueOf)
	return d.String()
}
