package report

import (
	"cmp"
	"slices"
	"strings"

	"cutbrief/rules"
	"cutbrief/rules/cite"
	"cutbrief/rules/message"
	"cutbrief/rules/unit"
)

// title is what a rule is called.
func title(id rules.RuleID) message.Message {
	if r, ok := id.Find(); ok {
		return worded(r.Title)
	}
	return outside(string(id))
}

// numeric reports whether a check compares two numbers that are worth showing.
func numeric(c *rules.Check) bool { return c.Need.Value > 0 && c.Have.Value > 0 }

// shortfall words a check that is not met: the numbers, or the rule itself.
func (b *builder) shortfall(c *rules.Check) message.Message {
	if r, _ := c.Rule.Find(); !numeric(c) && c.Verdict == rules.Short && r.Cure != "" {
		return msg("{1}: it would take {2}", title(c.Rule), worded(r.Cure))
	}
	return msg("{1}: {2}", title(c.Rule), b.detail(c))
}

// detail is the numbers of a check, "needs 12.7 mm, gives 16 mm", or its rule in
// words.
func (b *builder) detail(c *rules.Check) message.Message {
	if numeric(c) {
		return message.Join(", ", b.pair(c)...)
	}
	r, _ := c.Rule.Find()
	return worded(r.Words)
}

// pair words need and capability apart.
func (b *builder) pair(c *rules.Check) []message.Message {
	rule, _ := c.Rule.Find()
	need, have := b.figures(c)
	return []message.Message{msg(cmp.Or(rule.Asks, "needs {1}"), need), msg(cmp.Or(rule.Gives, "gives {1}"), have)}
}

// figures writes need and capability, each rounded to its safe side. Where a
// need is met but both lie within one step of the display, that would show more
// needed than there is; then both are shown to the nearest.
func (b *builder) figures(c *rules.Check) (need, have message.Message) {
	const lastBit = 1e-9 // how far two numbers that meet may differ by calculation alone
	within := func(r unit.Round) bool { return b.figure(c.Need, r) == b.figure(c.Have, r) }
	if within(unit.Up) && within(unit.Down) && c.Need.Value <= c.Have.Value*(1+lastBit) {
		return b.told(c.Need), b.told(c.Have)
	}
	return b.needed(c.Need), b.given(c.Have)
}

// factors are the inputs without factors of 1, which change nothing.
func factors(inputs []rules.Input) []rules.Input {
	var list []rules.Input
	for i, in := range inputs {
		if i == 0 || in.Word != "" || in.Value != (unit.Quantity{Value: 1}) {
			list = append(list, in)
		}
	}
	return list
}

// value is what an input is, a word or a number.
func (b *builder) value(in *rules.Input) message.Message {
	if in.Word != "" {
		return worded(in.Word)
	}
	return b.told(in.Value)
}

// formula words where a need comes from: "12 mm (thickest regular clean cut,
// mild steel) × 1.5 (factor for use)".
func (b *builder) formula(inputs []rules.Input) message.Message {
	var text message.Message
	for _, in := range factors(inputs) {
		op := ", "
		if in.Op != "" {
			op = " " + in.Op + " "
		}
		text = message.Join(op, text, msg("{1} ({2})", b.value(&in), in.Name))
	}
	return text
}

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

// leading is the first choice or, where none fits, the one that comes nearest; nil
// while too little is known, or if the range is empty.
func (b *builder) leading() *rules.Candidate {
	if list := b.nearestFirst(); b.result.Outcome == rules.NoneFits && len(list) > 0 {
		return list[0]
	}
	return b.result.First
}

func (b *builder) bar(c *rules.Check) Bar {
	longer := max(c.Need.Value, c.Have.Value)
	r, _ := c.Rule.Find()
	said := b.prints(b.pair(c)...)
	return Bar{
		Label: b.print(title(c.Rule).Capital()), Verdict: b.print(worded(c.Verdict)), Need: said[0], Have: said[1],
		NeedShare: c.Need.Value / longer, HaveShare: c.Have.Value / longer,
		Why: b.print(message.Join("; ", worded(r.Words), b.formula(c.Inputs))), Source: b.cited(c.Source), Trust: b.trusted(c.Source),
	}
}

// excluded lists every system not taken, with its reason.
func (b *builder) excluded() []Line {
	if b.result.Outcome == rules.NotYet {
		return nil
	}
	var list []Line
	for _, c := range b.nearestFirst() {
		if b.result.First == nil || c.System != b.result.First.System {
			list = append(list, b.notTaken(c))
		}
	}
	return list
}

// notTaken says why one system is not taken: by the checks that gave it its
// status or, where it stands as well as the first choice, that it is more than
// is needed.
func (b *builder) notTaken(c *rules.Candidate) Line {
	var why []message.Message
	var on []cite.Ref
	for i := range c.Checks {
		if check := &c.Checks[i]; counts(c.Status, check) {
			why, on = append(why, b.shortfall(check)), append(on, check.Source)
		}
	}
	if first := b.result.First; len(why) == 0 || (first != nil && c.Status == first.Status) {
		why, on = []message.Message{msg("stands as well, with more to spare: rated for {1}", b.given(millimetres(c.System.Rated)))}, nil
	}
	l := b.line(outside(c.System.Name), worded(c.Status), message.Join("; ", why...).Stop())
	l.Source = strings.Join(unique(mapped(on, func(r *cite.Ref) string { return b.cited(*r) })), "; ")
	l.Trust = strings.Join(unique(mapped(on, func(r *cite.Ref) string { return b.trusted(*r) })), "; ")
	return l
}

// counts reports whether a check gave a system its status.
func counts(s rules.Status, c *rules.Check) bool {
	r, _ := c.Rule.Find()
	switch s {
	case rules.FallsShort:
		return r.Hard && c.Verdict == rules.Short
	case rules.FitsAfterSite:
		return r.Site && c.Verdict == rules.Short
	case rules.FitsNearly:
		return r.Hard && c.Verdict == rules.Borderline
	}
	return false
}

// nearestFirst orders the systems for the list of those not taken. Where one
// is recommended they stay as ranked; where none fits, those that come nearest
// lead.
func (b *builder) nearestFirst() []*rules.Candidate {
	list := mapped(b.result.Candidates, func(c *rules.Candidate) *rules.Candidate { return c })
	if b.result.Outcome == rules.NoneFits {
		slices.SortStableFunc(list, nearer)
	}
	return list
}

// nearer compares how far two systems are from fitting: one that only another
// supply keeps out comes first; then by what they cannot do at all, then by the
// worst shortfall in numbers.
func nearer(x, y *rules.Candidate) int {
	rank := func(c *rules.Candidate) int {
		if failsOn(c, rules.RuleSupply) {
			return 0
		}
		return 1
	}
	cannotX, worstX := distance(x)
	cannotY, worstY := distance(y)
	return cmp.Or(rank(x)-rank(y), cannotX-cannotY, cmp.Compare(worstY, worstX))
}

// distance counts the hard checks a system fails without a number, and returns
// the smallest share of a need that it gives.
func distance(c *rules.Candidate) (cannot int, worst float64) {
	worst = 1
	for i := range c.Checks {
		check := &c.Checks[i]
		r, _ := check.Rule.Find()
		switch {
		case !r.Hard || check.Verdict != rules.Short:
		case numeric(check):
			worst = min(worst, check.Have.Value/check.Need.Value)
		default:
			cannot++
		}
	}
	return cannot, worst
}

// onlySupply reports whether some system would do the work and only the supply
// keeps it out: then the work is not what has to change.
func (b *builder) onlySupply() bool {
	return slices.ContainsFunc(b.result.Candidates, func(c rules.Candidate) bool {
		return c.Status == rules.FallsShort && failsOn(&c, rules.RuleSupply)
	})
}

// failsOn reports whether one rule alone gives a system its shortfall.
func failsOn(c *rules.Candidate, only rules.RuleID) bool {
	return !slices.ContainsFunc(c.Checks, func(check rules.Check) bool {
		return check.Rule != only && counts(c.Status, &check)
	})
}
