package report

import (
	"math"
	"slices"
	"strconv"

	"cutbrief/rules"
	"cutbrief/rules/message"
	"cutbrief/rules/unit"
)

// recommended reports whether the page recommends a system.
func (b *builder) recommended() bool { return b.result.Outcome == rules.Recommended }

// headline names the recommended system, or why there is none.
func (b *builder) headline() message.Message {
	switch b.result.Outcome {
	case rules.Recommended:
		return reserved(outside(b.result.First.System.Name), b.result.First.Status)
	case rules.NoneFits:
		if b.onlySupply() {
			return msg("No system in this list that does this work can run on this supply")
		}
		return msg("No system in this list does this work by hand")
	}
	return msg("Not enough is known yet to recommend a system")
}

// because says why this system, or what would fit, or what must be told first.
func (b *builder) because() []string {
	switch b.result.Outcome {
	case rules.Recommended:
		return b.prints(b.reasons(b.result.First)...)
	case rules.NoneFits:
		return unique(b.prints(b.instead()...))
	}
	return b.prints(b.missing()...)
}

// reasons say what the site has to change before the first choice can be used,
// why it is right, what is nearly too little, how sure that is, and what else it
// needs. The most important come first: a page that is full drops the last.
func (b *builder) reasons(c *rules.Candidate) []message.Message {
	changes, nearly, others := b.reservations(c)
	var rated message.Message
	if i := slices.IndexFunc(c.Checks, func(k rules.Check) bool { return k.Rule == rules.RuleClean && numeric(&k) }); i >= 0 {
		rated = b.rated(&c.Checks[i])
	}
	weight := b.needed(quantity(c.System.Weight, unit.Weight))
	weighs := msg("Weighs {1} without leads; the list gives no price.", weight)
	if price, ok := c.System.Price.Get(); ok {
		weighs = msg("Weighs {1} without leads; list price {2}.", weight, b.told(quantity(price, unit.Price)))
	}
	return slices.Concat(changes, []message.Message{rated}, nearly, []message.Message{b.certainty()}, others, []message.Message{weighs})
}

// rated says what the system is rated for and where the need comes from.
func (b *builder) rated(c *rules.Check) message.Message {
	need, have := b.figures(c)
	if terms := factors(c.Inputs); len(terms) == 1 && b.print(b.value(&terms[0])) == b.print(need) {
		return msg("Rated for {1} by hand in mild steel; the work needs {2} ({3}).", have, need, terms[0].Name)
	}
	return msg("Rated for {1} by hand in mild steel; the work needs {2}: {3}.", have, need, b.formula(c.Inputs))
}

// certainty says whether open answers could change the choice, and how far it
// holds.
func (b *builder) certainty() message.Message {
	text := msg("Open answers could still change this choice: see what to confirm.")
	if b.settled() {
		text = msg("No answer still open could change this choice.")
	}
	return message.Join(" ", text, b.holdsIn(), b.holds())
}

// settled reports that no open answer can change the choice, doubts of those that
// are given apart.
func (b *builder) settled() bool {
	if h, unsure := b.holding.Get(); unsure && !h.All() {
		told := b.job
		told.Doubts = nil
		r := rules.Summarise(told, *b.offered)
		return r.Firm
	}
	return b.result.Firm
}

// holdsIn says in how many of the cases that ranges and assumed answers allow the
// choice stands, and what to measure first; nothing where all is told as it is.
func (b *builder) holdsIn() message.Message {
	h, unsure := b.holding.Get()
	percent := func(share float64, round func(float64) float64) message.Figure {
		return message.Figure(strconv.Itoa(int(round(100 * share))))
	}
	switch {
	case !unsure:
		return message.Message{}
	case h.All():
		return msg("It stands in every case that the assumed answers allow.")
	}
	share := msg("It stands in {1} % of the cases that the assumed answers allow", percent(h.Share, math.Floor))
	if h.Tried > 0 {
		share = msg("It stands in about {1} % of the cases that the assumed answers allow ({2} tried, {3} % either way)", percent(h.Share, math.Round), message.Count(h.Tried), percent(h.Error, math.Ceil))
	}
	return msg("{1}: measure first {2}.", share, askedName(h.First).Within())
}

// reservations are the checks that wait for the site, the hard ones that are
// borderline, and what else is to be said openly.
func (b *builder) reservations(c *rules.Candidate) (changes, nearly, others []message.Message) {
	for i := range c.Checks {
		check := &c.Checks[i]
		r, _ := check.Rule.Find()
		switch {
		case check.Verdict == rules.Short && r.Site:
			// A shortfall without numbers says itself what it would take.
			cure := when(numeric(check) && r.Cure != "", "What would do: {1}", worded(r.Cure)).Sentence()
			changes = append(changes, message.Join(" ", msg("The site has to change first: {1}", b.shortfall(check)).Sentence(), cure))
		case check.Verdict == rules.Borderline && (r.Hard || r.Site):
			nearly = append(nearly, b.borderline(check, r))
		case check.Verdict == rules.Borderline:
			others = append(others, b.borderline(check, r))
		case check.Verdict == rules.Short && !r.Hard:
			others = append(others, msg("Please note: {1}", b.shortfall(check)).Sentence())
		}
	}
	return changes, nearly, others
}

// borderline words a check that is nearly met, and what that means for it.
func (b *builder) borderline(c *rules.Check, r rules.Rule) message.Message {
	almost := worded(r.Almost)
	on := msg("Borderline on {1}: {2}", title(c.Rule), b.detail(c)).Sentence()
	switch {
	case !r.Hard && !r.Site:
		return msg("{1}: {2}", title(c.Rule).Capital(), almost).Sentence()
	case almost.IsEmpty() && c.Need.Kind != unit.Thickness:
		return message.Join(" ", on, msg("That is short by no more than 6 %."))
	case almost.IsEmpty():
		return message.Join(" ", on, msg("That is within 6 %, one step between nominal sizes."))
	case c.Almost != "":
		return msg("Borderline on {1}: {2}", title(c.Rule), msg("{1}: {2}; {3}", b.detail(c), worded(c.Almost), almost)).Sentence()
	case numeric(c):
		return message.Join(" ", on, almost.Sentence())
	}
	return msg("Borderline on {1}: {2}", title(c.Rule), almost).Sentence()
}

// holds says how far the thickest regular cut of the deciding metal may move.
func (b *builder) holds() message.Message {
	need, _ := b.result.Need.Get()
	for _, m := range b.result.Margins {
		if m.Asked.Fact == rules.FactThickest && m.Asked.Metal == need.Metal && m.HoldsTo.Value >= m.Now.Value {
			return msg("It holds up to {1} of {2}; {3}", b.given(m.HoldsTo), metalName(m.Asked.Metal), b.beyond(m))
		}
	}
	return message.Message{}
}

// beyond says what is right once an answer is more than the choice holds.
func (b *builder) beyond(m rules.Margin) message.Message {
	switch {
	case m.Then == nil:
		return msg("above that, no system fits.")
	case b.result.First == nil || m.Then.ID != b.result.First.System.ID:
		return msg("above that, {1} is next.", outside(m.Then.Name))
	case m.ThenStatus == rules.FitsAfterSite:
		return msg("above that, the site has to change first.")
	}
	return msg("above that, it is borderline.")
}

// missing lists what must be told before anything can be recommended.
func (b *builder) missing() []message.Message {
	list := []message.Message{msg("This page is not a recommendation. It lists what is needed for one.")}
	for _, a := range b.result.Missing {
		if a.Fact == rules.FactMetals && len(b.job.Pieces) > 0 {
			list = append(list, msg("There are no figures for this metal: only a trial cut on the customer's own piece can tell."))
			continue
		}
		list = append(list, msg("To ask first: {1}.", askedName(a)))
	}
	return list
}

// second names the second choice and how it stands, where it does not fit.
func (b *builder) second() message.Message {
	c := b.result.Second
	if c == nil {
		return message.Message{}
	}
	name := outside(c.System.Name)
	if c.Status != rules.Fits {
		name = msg("{1} ({2})", name, worded(c.Status))
	}
	return msg("Alternative: {1}.", name)
}

// instead says what would do the work if no system of the range does.
func (b *builder) instead() []message.Message {
	c := b.leading()
	if c == nil {
		return []message.Message{msg("The systems list is empty.")}
	}
	var list, cures []message.Message
	if b.onlySupply() {
		list = append(list, msg("The supply here, as given: {1}.", b.supply()))
	}
	for i := range c.Checks {
		check := &c.Checks[i]
		r, _ := check.Rule.Find()
		if check.Verdict != rules.Short || !r.Hard {
			continue
		}
		list = append(list, msg("Nearest is {1}, but {2}", outside(c.System.Name), b.shortfall(check)).Sentence())
		cures = append(cures, when(r.Cure != "", "What would do: {1}", worded(r.Cure)).Sentence())
	}
	return append(append(list, cures...), when(!b.onlySupply(), "Another process may be the honest answer: oxy-fuel for heavy mild steel, a saw for heavy section, or work sent out."))
}
