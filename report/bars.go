package report

import "cutbrief/rules"

// bars puts need against capability for every check of the leading system that
// compares two numbers.
func (b *builder) bars() []Bar {
	c := b.leading()
	if c == nil {
		return nil
	}
	var list []Bar
	for i := range c.Checks {
		if check := &c.Checks[i]; numeric(check) && check.Verdict != rules.NotKnown {
			list = append(list, b.bar(check))
		}
	}
	return list
}

// leading is the first choice or, where none fits, the one that comes nearest.
func (b *builder) leading() *rules.Candidate {
	switch {
	case b.result.First != nil:
		return b.result.First
	case b.result.Outcome == rules.NoneFits:
		return b.nearest()
	}
	return nil
}

func (b *builder) bar(c *rules.Check) Bar {
	longer := max(c.Need.Value, c.Have.Value)
	r, _ := c.Rule.Find()
	why := string(r.Words)
	if text := b.formula(c.Inputs); text != "" {
		why += "; " + text
	}
	need, have := b.pair(c)
	return Bar{
		Label: capital(title(c.Rule)), Verdict: string(c.Verdict), Need: need, Have: have,
		NeedShare: c.Need.Value / longer, HaveShare: c.Have.Value / longer,
		Why: why, Source: cited(c.Source), Trust: trusted(c.Source),
	}
}
