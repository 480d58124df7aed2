package report

import (
	"slices"

	"cutbrief/assess"
	"cutbrief/rules"
	"cutbrief/rules/cost"
	"cutbrief/rules/message"
	"cutbrief/rules/system"
)

// Panel is the side panel's content, in short lines.
type Panel struct {
	Need     string   // "12.7 mm rated, mild steel"
	Because  string   // "6.35 mm in production × 2"
	Critical string   // "cutting speed", or "not clear yet"
	In       []string // systems still in, best first, with status
	Out      int      // how many fall short
	First    []string // what has to be told before anything can be sized
	Ask      []string // open questions that matter, strongest first
	Flags    []string
	Result   rules.Result // for screens that show the derivation
}

// SoFar words what the answers already mean, for the interview's side panel:
// capacity needed, what decides it, systems still in, open questions that matter;
// in the words of a catalog, nil for English.
func SoFar(words *message.Catalog, v *assess.Visit, offered system.Range) Panel {
	b := newBuilder(v, &offered, Options{Prices: &cost.PriceList{}, Words: words}) // nothing here has a price
	p := Panel{Result: b.result, Need: b.print(msg("not known yet")), Critical: b.print(b.decides()), Flags: b.flags()}
	if need, ok := b.result.Need.Get(); ok {
		p.Need = b.print(msg("{1} rated, in mild steel", b.needed(millimetres(need.Rated))))
		p.Because = b.print(b.formula(need.Inputs))
	}
	p.In, p.Out = b.stillIn()
	for i := range b.result.Open {
		q := &b.result.Open[i]
		_, could := b.could(q)
		if slices.Contains(b.result.Missing, q.Asked) {
			p.First = append(p.First, b.print(askedName(q.Asked)))
			could = msg("ask first")
		}
		p.Ask = append(p.Ask, b.print(msg("{1}: {2}", askedName(q.Asked), could)))
	}
	return p
}

// stillIn lists the systems that do not fall short, and counts the others.
// While nothing can be told apart, that is said in one line.
func (b *builder) stillIn() (in []string, out int) {
	for i := range b.result.Candidates {
		c := &b.result.Candidates[i]
		if c.Status == rules.FallsShort {
			out++
			continue
		}
		status := when(c.Open && c.Status == rules.Fits, "fits so far").Or(worded(c.Status))
		in = append(in, b.print(msg("{1}: {2}", outside(c.System.Name), status)))
	}
	if out == 0 && b.result.Outcome == rules.NotYet && len(in) > 0 {
		return b.prints(message.Counted(len(in), "all {1} systems so far", "all {1} systems so far")), 0
	}
	return in, out
}
