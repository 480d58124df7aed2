package report

import (
	"slices"
	"time"

	"cutbrief/assess"
	"cutbrief/rules"
	"cutbrief/rules/cite"
	"cutbrief/rules/demonstration"
	"cutbrief/rules/message"
	"cutbrief/rules/system"
)

// answer is what was said to one of the visit's own questions, "" if nothing
// was.
func (b *builder) answer(f rules.Fact) string {
	if a, ok := b.visit.Answer(rules.Asked{Fact: f}); ok && a.State != assess.Unknown {
		return a.Said
	}
	return ""
}

func (b *builder) answered(f rules.Fact) message.Message { return outside(b.answer(f)) }

// date is the day of the visit, or the day the record was started.
func (b *builder) date() time.Time {
	if day, err := time.Parse(time.DateOnly, b.answer(assess.FactDate)); err == nil {
		return day
	}
	y, m, d := b.visit.Created.Date()
	return time.Date(y, m, d, 0, 0, 0, 0, time.UTC)
}

// who lists who and when; a customer without a name is said so.
func (b *builder) who() []Line {
	decides := b.answered(assess.FactDecides)
	if !decides.IsEmpty() {
		decides = message.Join(", ", decides, b.answered(assess.FactWhen))
	}
	var list []Line
	for _, row := range []struct {
		label message.ID
		value message.Message
	}{
		{"Customer", b.answered(assess.FactCompany).Or(msg("not named"))}, {"Contact", b.answered(assess.FactContact)}, {"Place", b.answered(assess.FactPlace)},
		{"Date", Day(b.date())}, {"Representative", b.answered(assess.FactRep)}, {"Decides", decides},
	} {
		if !row.value.IsEmpty() {
			list = append(list, b.line(row.label.Message(), row.value))
		}
	}
	return list
}

// notes are the customer's own words, the rep's notes, and the notes beside
// single answers, line by line.
func (b *builder) notes() []string {
	var list []message.Message
	said := func(f rules.Fact) []message.Message { // also where it is not known
		a, _ := b.visit.Answer(rules.Asked{Fact: f})
		return outsideLines(a.Said)
	}
	for _, l := range said(assess.FactWords) {
		list = append(list, msg("“{1}”", l))
	}
	list = append(list, said(assess.FactNotes)...)
	for _, a := range b.visit.Answers {
		for _, l := range outsideLines(a.Note) {
			list = append(list, msg("{1}: {2}", askedName(a.Asked()).Capital(), l))
		}
	}
	return b.prints(list...)
}

// useWords are the sentence about the need, by what it is for.
var useWords = map[rules.Use]message.ID{
	rules.Maintenance: "You cut {1}, for repair work at irregular times.",
	rules.Mixed:       "You cut {1}, for repair work and light production.",
	rules.Production:  "You cut {1}, for production.",
}

// need says in one sentence what the customer cuts and for what.
func (b *builder) need() string {
	cut := message.Join("; ", mapped(b.job.Pieces, b.piece)...)
	use, ok := b.job.Use.Get()
	switch {
	case len(b.job.Pieces) == 0:
		return b.print(msg("What you cut is not known yet."))
	case ok:
		return b.print(msg(useWords[use], cut))
	}
	return b.print(message.Join(" ", msg("You cut {1}.", cut), msg("What it is for, repair or production, is not known yet.")))
}

// piece words one metal: "mild steel, 10 mm most days and 12 mm at most".
func (b *builder) piece(p *rules.Piece) message.Message {
	name := metalName(p.Metal)
	everyday, told1 := p.Everyday.Get()
	thickest, told2 := p.Thickest.Get()
	daily, most := b.told(millimetres(everyday)), b.told(millimetres(thickest))
	text := msg("{1} (how thick is not known)", name)
	switch {
	case told1 && told2 && everyday == thickest:
		text = msg("{1}, {2} most days and at most", name, most)
	case told1 && told2 && everyday > thickest:
		text = msg("{1}, {2} most days (though {3} was given as the thickest)", name, daily, most)
	case told1 && told2:
		text = msg("{1}, {2} most days and {3} at most", name, daily, most)
	case told2:
		text = msg("{1}, {2} at most", name, most)
	case told1:
		text = msg("{1}, {2} most days (how thick at most is not known)", name, daily)
	}
	if rare, ok := p.Rarest.Get(); ok && rare > 0 {
		return msg("{1}, and now and then a severance cut in {2} (the piece only has to come apart)", text, b.told(millimetres(rare)))
	}
	return text
}

// critical names the requirement that decides, and the evidence for it.
func (b *builder) critical() (string, []Line) {
	c := &b.result.Critical
	if c.Requirement == "" {
		return b.print(msg("Not clear yet")), []Line{b.line(msg("to ask"), msg("No answer so far points to one requirement. Ask what annoys them most about today's way."))}
	}
	names := b.deciding()
	text := names[0]
	if len(names) > 1 {
		text = msg("{1}, and as strongly {2}", text, message.And(names[1:]...))
	}
	var list []Line
	if c.Overruled {
		list = append(list, b.line(msg("the rep's choice"), msg("Chosen by the rep: {1}", outside(c.Reason)).Sentence()))
	}
	if c.Overruled && c.Instead != "" && c.Instead != c.Requirement {
		list = append(list, b.line(msg("the answers"), msg("The answers alone point to {1}.", RequirementName(c.Instead))))
	}
	ties := c.Tie
	if c.Overruled {
		ties = nil
	}
	for _, e := range c.Evidence { // that speaks for the requirements that stand
		if e.Requirement == c.Requirement || slices.Contains(ties, e.Requirement) {
			list = append(list, b.from(b.line(howKnown(&e), worded(e.Sentence), msg("evidence for {1}", RequirementName(e.Requirement))), e.Source))
		}
	}
	return b.print(text.Capital()), list
}

// howKnown says whether the customer said so.
func howKnown(e *rules.Evidence) message.Message {
	if e.Said {
		return msg("said")
	}
	return msg("inferred")
}

// sources says what the figures rest on, which range they come from, and of
// which day they are.
func (b *builder) sources() []string {
	name := outside(b.offered.Name)
	if b.offered.Name == system.DemoName { // it is ours to word
		name = worded(b.offered.Name)
	}
	return b.prints(
		message.Join(" ", msg("Systems list: {1}.", name), msg("Visit of {1}.", Day(b.date())), msg("Needs are rounded up, capabilities down.")),
		message.Join(" ", msg("Basis: {1}.", message.Join("; ", b.kinds()...)), msg("The text form gives each figure's own source.")),
	)
}

// kinds are the kinds of trust used, in the register's order.
func (b *builder) kinds() []message.Message {
	refs := slices.Concat(
		mapped(b.result.Critical.Evidence, func(e *rules.Evidence) cite.Ref { return e.Source }),
		mapped(b.plan, func(c *demonstration.Cut) cite.Ref { return c.Source }),
		mapped(b.warned, func(c *demonstration.Caution) cite.Ref { return c.Source }))
	for _, c := range b.result.Candidates {
		refs = append(refs, mapped(c.Checks, func(k *rules.Check) cite.Ref { return k.Source })...)
	}
	used := map[cite.Trust]bool{}
	for _, r := range refs {
		s, _ := r.Find()
		used[s.Trust] = true
	}
	costed := b.recommended() && b.job.Today.IsKnown()
	used[cite.Practice], used[cite.Memory] = used[cite.Practice] || costed, used[cite.Memory] || costed
	used[cite.Invented] = used[cite.Invented] || b.offered.Invented || b.visit.Demo || b.prices().Invented && costed
	var list []message.Message
	for _, t := range []cite.Trust{cite.Published, cite.Practice, cite.Memory, cite.Invented} {
		if used[t] {
			list = append(list, worded(t))
		}
	}
	return list
}
