package report

import (
	"strings"

	"cutbrief/assess"
	"cutbrief/rules"
	"cutbrief/rules/system"
)

// Panel is the side panel's content, in short lines.
type Panel struct {
	Need     string   // "12.7 mm rated, mild steel"
	Because  string   // "6.35 mm in production × 2"
	Critical string   // "cutting speed", or "not clear yet"
	In       []string // systems still in, best first, with status
	Out      int      // how many fall short
	Ask      []string // open questions that matter, strongest first
	Flags    []string
	Result   rules.Result // for screens that show the derivation
}

// SoFar words what the answers already mean, for the interview's side panel:
// capacity needed, what decides it, systems still in, open questions that matter.
func SoFar(v *assess.Visit, offered system.Range) Panel {
	b := newBuilder(v, &offered, Options{})
	p := Panel{Result: b.result, Critical: "not clear yet", Flags: b.flags()}
	if need, ok := b.result.Need.Get(); ok {
		p.Need = b.needed(millimetres(need.Rated)) + " rated, in mild steel"
		p.Because = b.formula(need.Inputs)
	} else {
		p.Need = "not known yet"
	}
	if c := b.result.Critical; c.Requirement != "" {
		names := []string{requirementName(c.Requirement)}
		for _, r := range c.Tie {
			names = append(names, requirementName(r))
		}
		p.Critical = strings.Join(names, " or ")
	}
	for _, c := range b.result.Candidates {
		if c.Status == rules.FallsShort {
			p.Out++
			continue
		}
		p.In = append(p.In, plain(c.System.Name)+": "+b.inStatus(&c))
	}
	for _, q := range b.result.Open {
		p.Ask = append(p.Ask, askedName(q.Asked)+": "+q.Could)
	}
	return p
}

// inStatus words how a system stands while answers are still open.
func (b *builder) inStatus(c *rules.Candidate) string {
	if c.Open && c.Status == rules.Fits {
		return "fits so far"
	}
	return string(c.Status)
}
