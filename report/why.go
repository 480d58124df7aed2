package report

import (
	"fmt"
	"math"

	"cutbrief/assess"
	"cutbrief/rules"
	"cutbrief/rules/cite"
	"cutbrief/rules/cost"
	"cutbrief/rules/message"
	"cutbrief/rules/metal"
	"cutbrief/rules/size"
	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// Reason is one step of a derivation: what is concluded, from what, by which
// formula, and what it rests on. Parts are the steps below it.
type Reason struct {
	Topic   string   `json:"topic,omitempty"` // its name, for asking about it alone
	Title   string   `json:"title"`
	Value   string   `json:"value,omitempty"`
	Formula string   `json:"formula,omitempty"` // in words
	Numbers string   `json:"numbers,omitempty"` // the formula with the numbers put in
	Source  string   `json:"source,omitempty"`
	Trust   string   `json:"trust,omitempty"`
	Parts   []Reason `json:"parts,omitempty"`
}

// Why derives everything on the page as short trees, one a topic, in reading
// order.
func Why(v *assess.Visit, offered system.Range, o Options) []Reason {
	return newBuilder(v, &offered, o).derivation()
}

func (b *builder) derivation() []Reason {
	return mapped(b.topics(), func(t *topic) Reason { return t.derive() })
}

// About derives one topic, none if the visit has none of that name, and lists those
// that it has.
func About(v *assess.Visit, offered system.Range, o Options, name string) (one []Reason, topics []string) {
	for _, t := range newBuilder(v, &offered, o).topics() {
		if t.name == name {
			one = []Reason{t.derive()}
		}
		topics = append(topics, t.name)
	}
	return one, topics
}

// topic is a part of the derivation, not derived yet.
type topic struct {
	name   string
	derive func() Reason
}

func (b *builder) topics() []topic {
	list := []topic{{"recommendation", b.whyOutcome}}
	if need, ok := b.result.Need.Get(); ok {
		list = append(list, topic{"need", func() Reason { return b.whyNeed(need) }})
	}
	list = append(list, topic{"metals", b.whyMetals}, topic{"critical", b.whyCritical})
	if c := b.leading(); c != nil {
		for i := range c.Checks {
			check := &c.Checks[i]
			list = append(list, topic{string(check.Rule), func() Reason { return b.whyCheck(c, check) }})
		}
	}
	if b.recommended() {
		list = append(list, topic{"margins", b.whyMargins})
	}
	return append(list, topic{"cost", b.whyCost}, topic{"excluded", b.whyExcluded}, topic{"open", b.whyOpen})
}

// Next lists the open questions that matter, strongest first, with what each
// could change; in the words of a catalog, nil for English.
func Next(words *message.Catalog, v *assess.Visit, offered system.Range) []Line {
	b := newBuilder(v, &offered, Options{Words: words})
	return append(b.open(math.MinInt, math.MaxInt), b.priceOpen()...)
}

// topic begins a derivation that rests on common practice.
func (b *builder) topic(name string, title, formula message.Message) Reason {
	r := Reason{Topic: name, Title: b.print(title), Formula: b.print(formula)}
	if r.Formula != "" {
		r.Trust = b.print(worded(cite.Practice))
	}
	return r
}

// step is a title with a value.
func (b *builder) step(title, value message.Message) Reason {
	return Reason{Title: b.print(title), Value: b.print(value)}
}

// trust says how a step is known.
func (r Reason) trust(how string) Reason {
	r.Trust = how
	return r
}

// restsOn puts in what a step rests on.
func (b *builder) restsOn(r Reason, ref cite.Ref) Reason {
	r.Source, r.Trust = b.cited(ref), b.trusted(ref)
	return r
}

func (b *builder) whyOutcome() Reason {
	r := b.topic("recommendation", msg("The recommendation"), msg("of the systems that fit the work and the site, the one with the smallest rated thickness; those that need the site changed come after, borderline ones last"))
	r.Value = b.print(b.headline())
	switch {
	case b.recommended() && b.result.Firm:
		r.Numbers = b.print(msg("firm: no plausible answer to an open question changes it"))
	case b.recommended():
		r.Numbers = b.print(msg("open: some answers still missing or assumed could change it"))
	}
	r.Parts = mapped(b.result.Candidates, func(c *rules.Candidate) Reason { return b.step(outside(c.System.Name), worded(c.Status)) })
	r.Parts = append(r.Parts, mapped(b.job.Doubts, b.doubted)...)
	return r
}

// doubted says between what an answer that is a range or assumed is taken to lie.
func (b *builder) doubted(d *rules.Doubt) Reason {
	name := askedName(d.Asked).Capital()
	now, figure := b.job.Figure(d.Asked).Get()
	if !figure {
		return b.step(name, msg("assumed: any of its choices may be true")).trust(b.print(worded(cite.Practice)))
	}
	end := func(v float64) message.Message { return b.told(unit.Quantity{Value: v, Kind: now.Kind}) }
	return b.step(name, msg("may lie anywhere from {1} to {2}", end(d.Low), end(d.High))).trust(b.print(worded(cite.Practice)))
}

func (b *builder) whyNeed(n rules.Need) Reason {
	rule, _ := n.Rule.Find()
	rated, comfort := b.needed(millimetres(n.Rated)), b.needed(millimetres(n.Comfort))
	value := when(n.Comfort > n.Rated, "{1} in mild steel, comfortable at {2}", rated, comfort).Or(msg("{1} in mild steel", rated))
	r := b.restsOn(b.step(msg("Rated thickness needed"), value), n.Source)
	r.Topic, r.Formula, r.Numbers, r.Parts = "need", b.print(worded(rule.Words)), b.print(b.sum(n.Inputs, millimetres(n.Rated))), b.inputs(n.Inputs)
	return r
}

func (b *builder) whyCritical() Reason {
	c := &b.result.Critical
	r := b.topic("critical", msg("Deciding requirement"), msg("what the customer says outranks what we infer; among what we infer, the heavier evidence; a difference of one is a tie"))
	r.Value = b.print(b.decides())
	if c.Overruled {
		r.Numbers = b.print(message.Join("; ", msg("the representative's own choice: {1}", outside(c.Reason)), when(c.Instead != "", "the answers point to {1}", RequirementName(c.Instead))))
	}
	r.Parts = mapped(c.Evidence, func(e *rules.Evidence) Reason {
		value := msg("{1}, {2}, weight {3}", RequirementName(e.Requirement), howKnown(e), message.Count(e.Weight))
		return b.step(worded(e.Sentence).Unstopped(), value).trust(b.trusted(e.Source))
	})
	return r
}

// whyMetals says what each metal counts for, and how the factor is derived.
func (b *builder) whyMetals() Reason {
	r := b.topic("metals", msg("How each metal compares with mild steel"), msg("the system's own rating in that metal; else common practice and an energy balance blended, never below common practice"))
	r.Source, r.Trust = b.cited(cite.Ref{Source: "wells-1952"}), ""
	for _, p := range b.job.Pieces {
		m, _ := metal.Find(p.Metal)
		value := msg("no figures")
		if factor, ok := m.Equivalence.Get(); ok {
			value = msg("counts {1} times as thick in mild steel", message.Figure(fmt.Sprintf("%.2f", factor)))
		}
		r.Parts = append(r.Parts, b.step(metalName(p.Metal), value).trust(b.trusted(m.Basis)))
		for _, d := range size.Derive(p.Metal) {
			r.Parts = append(r.Parts, Reason{Title: b.print(d.Message()), Trust: b.print(worded(cite.Memory))})
		}
	}
	return r
}

// whyCheck derives one verdict: inputs as told, formula, numbers, margin. It
// names the system where it is not the one recommended.
func (b *builder) whyCheck(s *rules.Candidate, c *rules.Check) Reason {
	rule, _ := c.Rule.Find()
	verdict := worded(c.Verdict)
	r := b.restsOn(b.step(worded(rule.Title).Capital(), verdict), c.Source)
	r.Topic, r.Formula = string(c.Rule), b.print(worded(rule.Words))
	if !b.recommended() {
		r.Parts = append(r.Parts, b.step(msg("checked with the nearest system"), outside(s.System.Name)))
	}
	r.Parts = append(r.Parts, b.inputs(c.Inputs)...)
	if numeric(c) {
		r.Value, r.Numbers = b.print(msg("{1}: {2}", b.detail(c), verdict)), b.print(b.sum(c.Inputs, c.Need))
	}
	if m, ok := c.Margin.Get(); ok && c.Verdict != rules.NotKnown {
		r.Parts = append(r.Parts, b.step(msg("margin"), message.Number(fmt.Sprintf("%+.0f %%", 100*m))))
	}
	for _, a := range c.Missing {
		r.Parts = append(r.Parts, b.step(askedName(a), b.state(a)))
	}
	return r
}

// sum writes a formula with its numbers, "6.4 mm × 2 × 1.15 = 14.7 mm"; empty if
// the inputs do not form one by themselves.
func (b *builder) sum(inputs []rules.Input, result unit.Quantity) message.Message {
	var text message.Message
	for i, in := range inputs {
		if in.Word != "" || (i > 0) != (in.Op != "") {
			return message.Message{}
		}
		text = message.Join(" "+in.Op+" ", text, b.told(in.Value))
	}
	if text.IsEmpty() {
		return text
	}
	return message.Join(" = ", text, b.needed(result))
}

// inputs lists what a conclusion used, with how the customer put it.
func (b *builder) inputs(list []rules.Input) []Reason {
	return mapped(list, func(in *rules.Input) Reason {
		part := b.step(in.Name, b.value(in))
		if a, ok := b.visit.Answer(in.From); ok {
			part.Trust, part.Numbers = b.print(worded(a.State)), b.print(when(a.Said != "", "customer said: {1}", outside(a.Said)))
		}
		return part
	})
}

func (b *builder) whyMargins() Reason {
	r := b.topic("margins", msg("How far the choice holds"), msg("each thickness is moved until another system would be right"))
	for _, m := range b.result.Margins {
		then := msg("no system in this list")
		if m.Then != nil {
			then = message.Join(", ", outside(m.Then.Name), worded(m.ThenStatus))
		}
		now, holds := b.told(m.Now), b.given(m.HoldsTo)
		text := msg("now {1}, holds up to {2}, then {3}", now, holds, then)
		if down, ok := m.DownTo.Get(); ok {
			text = msg("now {1}, holds up to {2}, then {3}; at {4} or less, {5}", now, holds, then, b.given(down), outside(m.Smaller.Name))
		}
		r.Parts = append(r.Parts, b.step(askedName(m.Asked).Capital(), text))
	}
	return r
}

func (b *builder) whyExcluded() Reason {
	r := b.topic("excluded", msg("Other systems, and why not"), message.Message{})
	r.Parts = mapped(b.excluded(), func(l *Line) Reason { return Reason{Title: l.Label, Value: l.Why, Source: l.Source, Trust: l.Trust} })
	return r
}

func (b *builder) whyOpen() Reason {
	r := b.topic("open", msg("What is still open"), msg("every plausible answer is tried, alone and beside the hardest of the others"))
	r.Parts = mapped(b.open(math.MinInt, math.MaxInt), func(l *Line) Reason { return Reason{Title: l.Label, Value: l.Why} })
	if len(r.Parts) == 0 {
		r.Value = b.print(msg("nothing that could change the recommendation"))
	}
	return r
}

// whyCost derives the cost of a metre, today and with the system recommended.
func (b *builder) whyCost() Reason {
	r := b.restsOn(b.step(msg("What {1} costs", b.each()), msg("not calculated")), cite.Ref{Source: "gum", Clause: "5.1.2"})
	r.Topic, r.Formula = "cost", b.print(msg("work, gas, electricity, air, consumables, blades and what is bought, each for {1}; the saving is today's cost less the system's; ranges by moving one input at a time", b.each()))
	var systems []*system.System
	if b.result.First != nil {
		systems = append(systems, b.result.First.System)
	}
	a := b.account(systems...)
	r.Numbers = b.print(a.Why)
	for i := range a.Methods {
		r.Parts = append(r.Parts, b.wayReasons(msg("today, {1}", worded(a.Methods[i].Process.Name())), &a.Methods[i])...)
	}
	for i := range a.Offers {
		o := &a.Offers[i]
		r.Parts = append(r.Parts, b.wayReasons(outside(o.System.Name), &o.Method)...)
		if s, ok := o.Saving.Get(); ok {
			r.Value = b.print(worded(s.Verdict))
			r.Numbers = b.print(message.Join(" ", b.savingLine(&a.Methods[a.Against], s), b.paybackLine(s)))
			const most = 6 // inputs that move the saving, the strongest first
			r.Parts = append(r.Parts, mapped(s.Movers[:min(most, len(s.Movers))], func(m *cost.Mover) Reason {
				return b.step(msg("depends on {1}", m.Name), b.taken(m.Input)).trust(b.print(worded(m.Basis)))
			})...)
		}
	}
	if c := b.crossing(); c != nil {
		r.Parts = append(r.Parts, b.restsOn(b.step(msg("where oxy-fuel is cheaper"), b.crossingSays(c)), cite.Ref{Source: "aws-oxyfuel"}))
	}
	if text := b.priceDoubt(&a); !text.IsEmpty() {
		r.Parts = append(r.Parts, b.step(msg("prices"), text))
	}
	return r
}

// wayReasons are the parts of one way's cost.
func (b *builder) wayReasons(name message.Message, w *cost.Method) []Reason {
	if !w.Why.IsEmpty() {
		reason := b.step(name, w.Why)
		if w.Process == cost.OxyAcetylene || w.Process == cost.OxyPropane {
			reason = b.restsOn(reason, cite.Ref{Source: "navy-steelworker"})
		}
		return []Reason{reason}
	}
	sum := func(e cost.Estimate) message.Message { return message.Text(b.perMetre(e).Text) }
	return append([]Reason{b.step(message.Join(", ", name, b.cutOf(w)), b.forEach(sum(w.PerMetre)))}, mapped(w.Lines, func(l *cost.Line) Reason {
		return b.step(msg("{1}: {2}", name, worded(l.Part.Name())), sum(l.Cost))
	})...)
}

// priceOpen lists the price questions whose answer would settle what moves the
// saving most: asked of this customer, not answered, and among the four that
// move it most.
func (b *builder) priceOpen() []Line {
	if b.result.First == nil {
		return nil
	}
	a := b.account(b.result.First.System)
	if len(a.Offers) == 0 {
		return nil
	}
	s, ok := a.Offers[0].Saving.Get()
	if !ok {
		return nil
	}
	asked := map[rules.Fact]bool{} // and not answered
	for _, step := range b.visit.Steps() {
		_, answered := b.visit.Answer(step.Asked())
		asked[step.Question.ID] = !answered
	}
	var list []Line
	for _, m := range s.Movers[:min(4, len(s.Movers))] {
		if q, ok := assess.Find(m.Fact); ok && asked[m.Fact] {
			list = append(list, b.line(worded(q.Name).Capital(), msg("not given"), msg("It changes only the savings, but those as much as anything; {1} is assumed.", b.taken(m.Input))))
			asked[m.Fact] = false
		}
	}
	return list
}
