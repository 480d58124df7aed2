package text

import (
	"strconv"

	"cutbrief/report"
	"cutbrief/rules/message"
)

// Bench writes the demonstration as it is run at the bench, step by step, in
// lines of at most width cells; 0 takes 80.
func Bench(b report.Bench, width int) string {
	if width == 0 {
		width = DefaultWidth
	}
	p := &printer{width: max(width, leastWidth), words: b.Words}
	p.block("", p.words.Say(joined("The demonstration of", message.Keep(b.System), forWhom(message.Keep(b.Customer)))))
	p.block("", b.Takes)
	for i := range b.Steps {
		p.step(i+1, &b.Steps[i])
	}
	p.ticks("Before leaving", b.Leaving)
	p.ticks("At the site, before the first arc", b.OnSite)
	return p.out.String()
}

func forWhom(customer string) string {
	if customer == "" {
		return ""
	}
	return "for " + customer
}

func (p *printer) step(number int, s *report.Step) {
	p.line("")
	if s.SetUp {
		p.block("   ", bracket(p.words.Say("change the plate or the setting")))
	}
	p.block(strconv.Itoa(number)+". ", joined(s.Cut, bracket(s.Takes)))
	p.row("   ", "Piece:", s.Piece)
	for i, t := range s.Torch {
		if i == 0 {
			p.row("   ", "Torch:", t)
			continue
		}
		p.block("             ", t)
	}
	p.row("   ", "Look for:", s.See)
	p.row("   ", "Because:", s.Because)
	p.row("   ", "Can fail:", s.Fails)
	p.row("   ", "So:", s.Avoid)
	p.row("   ", "Bring:", s.Bring)
}
