package report

import (
	"fmt"
	"slices"
	"strings"

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
// capacity needed, what decides it, systems still in, open questions that matter.
func SoFar(v *assess.Visit, offered system.Range) Panel { return SoFarIn(nil, v, offered) }

// SoFarIn is SoFar in the words of a book.
func SoFarIn(words *message.Catalog, v *assess.Visit, offered system.Range) Panel {
	b := newBuilder(v, &offered, Options{Prices: &cost.PriceList{}}) // nothing here has a price
	p := Panel{Result: b.result, Critical: "not clear yet", Flags: b.flags()}
	if need, ok := b.result.Need.Get(); ok {
		p.Need = b.needed(millimetres(need.Rated)) + " rated, in mild steel"
		p.Because = b.formula(need.Inputs)
	} else {
		p.Need = "not known yet"
	}
	if c := b.result.Critical; c.Requirement != "" {
		names := []string{RequirementName(c.Requirement)}
		for _, r := range c.Tie {
			names = append(names, RequirementName(r))
		}
		p.Critical = strings.Join(names, " or ")
	}
	p.In, p.Out = b.stillIn()
	for _, q := range b.result.Open {
		if slices.Contains(b.result.Missing, q.Asked) {
			p.First = append(p.First, askedName(q.Asked))
		}
		p.Ask = append(p.Ask, b.askNext(q))
	}
	return said(p, words)
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
		in = append(in, plain(c.System.Name)+": "+b.inStatus(c))
	}
	if out == 0 && b.result.Outcome == rules.NotYet && len(in) > 0 {
		return []string{fmt.Sprintf("all %d systems so far", len(in))}, 0
	}
	return in, out
}

// askNext words an open question for the panel.
func (b *builder) askNext(q rules.OpenQuestion) string {
	if slices.Contains(b.result.Missing, q.Asked) {
		return askedName(q.Asked) + ": needed first"
	}
	return askedName(q.Asked) + ": " + inBrief.Replace(b.could(q))
}

// inBrief words what an answer could change for a narrow column.
var inBrief = strings.NewReplacer(
	"could change the system to ", "could mean ",
	"could change what decides the sale", "could change what decides",
	"could mean that no system of the range fits", "could mean that none fits",
	"could mean that the site has to change first", "could mean changing the site",
)

// inStatus words how a system stands while answers are still open.
func (b *builder) inStatus(c *rules.Candidate) string {
	if c.Open && c.Status == rules.Fits {
		return "fits so far"
	}
	return string(c.Status)
}
