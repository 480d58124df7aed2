package text

import (
	"strconv"

	"cutbrief/report"
)

// Bench writes the demonstration as it is run at the bench, step by step, in
// lines of at most width cells; 0 takes 80.
func Bench(b report.Bench, width int) string {
	if width == 0 {
		width = DefaultWidth
	}
	p := &printer{width: max(width, leastWidth)}
	p.block("", joined("The demonstration of", b.System, forWhom(b.Customer)))
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
		p.block("   ", "(change the plate or the setting)")
	}
	p.block(strconv.Itoa(number)+". ", joined(s.Cut, bracket(s.Takes)))
	p.block("   Piece:    ", s.Piece)
	for i, t := range s.Torch {
		label := "             "
		if i == 0 {
			label = "   Torch:    "
		}
		p.block(label, t)
	}
	p.block("   Look for: ", s.See)
	p.block("   Because:  ", s.Because)
	p.block("   Can fail: ", s.Fails)
	p.block("   So:       ", s.Avoid)
	p.block("   Bring:    ", s.Bring)
}
