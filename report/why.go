package report

import (
	"fmt"
	"strings"

	"cutbrief/assess"
	"cutbrief/rules"
	"cutbrief/rules/cite"
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
	return said(newBuilder(v, &offered, o).derivation(), o.Words)
}

func (b *builder) derivation() []Reason {
	list := []Reason{b.whyOutcome()}
	if need, ok := b.result.Need.Get(); ok {
		list = append(list, b.whyNeed(need))
	}
	list = append(list, b.whyMetals(), b.whyCritical())
	if c := b.leading(); c != nil {
		for i := range c.Checks {
			list = append(list, b.whyCheckOf(c, &c.Checks[i]))
		}
	}
	if b.recommended() {
		list = append(list, b.whyMargins())
	}
	return append(list, b.whyCost(), b.whyExcluded(), b.whyOpen())
}

// Next lists the open questions that matter, strongest first, with what each
// could change.
func Next(v *assess.Visit, offered system.Range) []Line { return NextIn(nil, v, offered) }

// NextIn is Next in the words of a book.
func NextIn(words *message.Catalog, v *assess.Visit, offered system.Range) []Line {
	b := newBuilder(v, &offered, Options{})
	return said(append(b.open(func(rules.OpenQuestion) bool { return true }), b.priceOpen()...), words)
}

func (b *builder) whyOutcome() Reason {
	r := Reason{Topic: "recommendation", Title: "The recommendation", Value: b.headline(), Trust: string(cite.Practice),
		Formula: "of the systems that fit the work and the site, the one with the smallest rated thickness; those that need the site changed come after, borderline ones last"}
	if b.recommended() {
		r.Numbers = "open: some answers still missing could change it"
		if b.result.Firm {
			r.Numbers = "firm: no plausible answer to an open question changes it"
		}
	}
	for i := range b.result.Candidates {
		c := &b.result.Candidates[i]
		r.Parts = append(r.Parts, Reason{Title: plain(c.System.Name), Value: string(c.Status)})
	}
	return r
}

func (b *builder) whyNeed(n rules.Need) Reason {
	rule, _ := n.Rule.Find()
	r := Reason{Topic: "need", Title: "Rated thickness needed", Formula: string(rule.Words), Source: cited(n.Source), Trust: trusted(n.Source), Parts: b.inputs(n.Inputs)}
	r.Value = b.needed(millimetres(n.Rated)) + " in mild steel"
	if n.Comfort > n.Rated {
		r.Value += ", comfortable at " + b.needed(millimetres(n.Comfort))
	}
	r.Numbers = b.sum(n.Inputs, millimetres(n.Rated))
	return r
}

func (b *builder) whyCritical() Reason {
	c := b.result.Critical
	r := Reason{Topic: "critical", Title: "What decides the sale", Value: "not clear yet", Trust: string(cite.Practice),
		Formula: "what the customer says outranks what we infer; among what we infer, the heavier evidence; a difference of one is a tie"}
	if c.Requirement != "" {
		names := []string{RequirementName(c.Requirement)}
		for _, tie := range c.Tie {
			names = append(names, RequirementName(tie))
		}
		r.Value = strings.Join(names, " or ")
	}
	if c.Overruled {
		r.Numbers = "the representative's own choice: " + plain(c.Reason)
		if c.Instead != "" {
			r.Numbers += "; the answers point to " + RequirementName(c.Instead)
		}
	}
	for _, e := range c.Evidence {
		how := "inferred"
		if e.Said {
			how = "said"
		}
		r.Parts = append(r.Parts, Reason{Title: strings.TrimSuffix(string(e.Sentence), "."), Value: fmt.Sprintf("%s, %s, weight %d", RequirementName(e.Requirement), how, e.Weight), Trust: trusted(e.Source)})
	}
	return r
}

// whyMetals says what each metal counts for, and how the factor is derived.
func (b *builder) whyMetals() Reason {
	r := Reason{Topic: "metals", Title: "What each metal counts for", Source: cited(cite.Ref{Source: "wells-1952"}),
		Formula: "the system's own rating in that metal; else common practice and an energy balance blended, never below common practice"}
	for _, p := range b.job.Pieces {
		m, _ := metal.Find(p.Metal)
		part := Reason{Title: metalName(p.Metal), Value: "no figures held", Trust: trusted(m.Basis)}
		if factor, ok := m.Equivalence.Get(); ok {
			part.Value = fmt.Sprintf("counts %.2f times as thick in mild steel", factor)
		}
		r.Parts = append(r.Parts, part)
		for _, d := range size.Derive(p.Metal) {
			r.Parts = append(r.Parts, Reason{Title: d.Message().String(), Trust: string(cite.Memory)})
		}
	}
	return r
}

// whyCheck derives one verdict: inputs as told, formula, numbers, margin.
// whyCheckOf derives a check of a system, and names the system where it is not
// the one recommended.
func (b *builder) whyCheckOf(s *rules.Candidate, c *rules.Check) Reason {
	r := b.whyCheck(c)
	if !b.recommended() {
		r.Parts = append([]Reason{{Title: "checked with the nearest system", Value: plain(s.System.Name)}}, r.Parts...)
	}
	return r
}

func (b *builder) whyCheck(c *rules.Check) Reason {
	rule, _ := c.Rule.Find()
	r := Reason{Topic: string(c.Rule), Title: capital(string(rule.Title)), Value: string(c.Verdict), Formula: string(rule.Words), Source: cited(c.Source), Trust: trusted(c.Source), Parts: b.inputs(c.Inputs)}
	if numeric(c) {
		r.Value = b.against(c) + ": " + string(c.Verdict)
		r.Numbers = b.sum(c.Inputs, c.Need)
	}
	if m, ok := c.Margin.Get(); ok && c.Verdict != rules.NotKnown {
		r.Parts = append(r.Parts, Reason{Title: "margin", Value: fmt.Sprintf("%+.0f %%", 100*m)})
	}
	for _, a := range c.Missing {
		r.Parts = append(r.Parts, Reason{Title: askedName(a), Value: b.stands(a)})
	}
	return r
}

// sum writes a formula with its numbers, "6.4 mm × 2 × 1.15 = 14.7 mm"; "" if
// the inputs do not form one by themselves.
func (b *builder) sum(inputs []rules.Input, result unit.Quantity) string {
	text := ""
	for i, in := range inputs {
		if in.Word != "" || (i > 0) != (in.Op != "") {
			return ""
		}
		if i > 0 {
			text += " " + in.Op + " "
		}
		text += b.told(in.Value)
	}
	if text == "" {
		return ""
	}
	return text + " = " + b.needed(result)
}

// inputs lists what a conclusion used, with how the customer put it.
func (b *builder) inputs(list []rules.Input) []Reason {
	var parts []Reason
	for _, in := range list {
		part := Reason{Title: in.Name.String(), Value: string(in.Word)}
		if in.Word == "" {
			part.Value = b.told(in.Value)
		}
		if a, ok := b.visit.Answer(in.From); ok {
			part.Trust = string(a.State)
			if a.Said != "" {
				part.Numbers = "as said: " + plain(a.Said)
			}
		}
		parts = append(parts, part)
	}
	return parts
}

func (b *builder) whyMargins() Reason {
	r := Reason{Topic: "margins", Title: "How far it holds", Formula: "each thickness is moved until another system would be right", Trust: string(cite.Practice)}
	for _, m := range b.result.Margins {
		then := "no system of this range"
		if m.Then != nil {
			then = plain(m.Then.Name) + ", " + string(m.ThenStatus)
		}
		text := fmt.Sprintf("now %s, holds up to %s, then %s", b.told(m.Now), b.given(m.HoldsTo), then)
		if down, ok := m.DownTo.Get(); ok {
			text += fmt.Sprintf("; at %s or less, %s", b.given(down), plain(m.Smaller.Name))
		}
		r.Parts = append(r.Parts, Reason{Title: capital(askedName(m.Asked)), Value: text})
	}
	return r
}

func (b *builder) whyExcluded() Reason {
	r := Reason{Topic: "excluded", Title: "Why not the others"}
	for _, l := range b.excluded() {
		r.Parts = append(r.Parts, Reason{Title: l.Label, Value: l.Why, Source: l.Source, Trust: l.Trust})
	}
	return r
}

func (b *builder) whyOpen() Reason {
	r := Reason{Topic: "open", Title: "What is still open", Trust: string(cite.Practice),
		Formula: "every plausible answer is tried, alone and beside the hardest of the others"}
	for _, l := range b.open(func(rules.OpenQuestion) bool { return true }) {
		r.Parts = append(r.Parts, Reason{Title: l.Label, Value: l.Why})
	}
	if len(r.Parts) == 0 {
		r.Value = "nothing that could change the recommendation"
	}
	return r
}
