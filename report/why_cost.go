package report

import (
	"cutbrief/assess"
	"cutbrief/rules"
	"cutbrief/rules/cite"
	"cutbrief/rules/cost"
	"cutbrief/rules/system"
)

// whyCost derives the cost of a metre, today and with the system recommended.
func (b *builder) whyCost() Reason {
	ranges := cite.Ref{Source: "gum", Clause: "5.1.2"}
	r := Reason{Topic: "cost", Title: "What " + b.each() + " costs", Value: "not worked out", Source: cited(ranges), Trust: trusted(ranges),
		Formula: "work, gas, electricity, air, consumables, blades and what is bought, each for " + b.each() + "; the saving is today's cost less the system's; ranges by moving one input at a time"}
	var systems []*system.System
	if b.result.First != nil {
		systems = append(systems, b.result.First.System)
	}
	a := b.account(systems)
	if !a.Why.IsEmpty() {
		r.Numbers = clean(a.Why.String())
	}
	for i := range a.Ways {
		r.Parts = append(r.Parts, b.wayReasons("today, "+string(a.Ways[i].Process.Name()), &a.Ways[i])...)
	}
	for i := range a.Offers {
		o := &a.Offers[i]
		r.Parts = append(r.Parts, b.wayReasons(plain(o.System.Name), &o.Way)...)
		if s, ok := o.Saving.Get(); ok {
			r.Value = string(s.Verdict)
			r.Numbers = b.savingLine(&a.Ways[a.Against], s) + " " + b.paybackLine(s)
			r.Parts = append(r.Parts, b.moverReasons(s)...)
		}
	}
	if c := b.crossing(); c != nil {
		r.Parts = append(r.Parts, Reason{Title: "where oxy-fuel is cheaper", Value: b.crossingSays(c), Source: cited(cite.Ref{Source: "aws-oxyfuel"}), Trust: string(cite.Memory)})
	}
	if text := b.resting(&a); text != "" {
		r.Parts = append(r.Parts, Reason{Title: "prices", Value: text})
	}
	return r
}

// wayReasons are the parts of one way's cost.
func (b *builder) wayReasons(name string, w *cost.Way) []Reason {
	if !w.Why.IsEmpty() {
		said := Reason{Title: name, Value: clean(w.Why.String())}
		if w.Process == cost.OxyAcetylene || w.Process == cost.OxyPropane {
			source := cite.Ref{Source: "navy-steelworker"}
			said.Source, said.Trust = cited(source), trusted(source)
		}
		return []Reason{said}
	}
	list := []Reason{{Title: name + ", " + b.cutOf(w), Value: b.perMetre(w.PerMetre).Text + " " + b.each()}}
	for _, l := range w.Lines {
		list = append(list, Reason{Title: name + ": " + string(l.Part.Name()), Value: b.perMetre(l.Cost).Text})
	}
	return list
}

// moverReasons are the inputs that move the saving, the strongest first.
func (b *builder) moverReasons(s cost.Saving) []Reason {
	const most = 6
	var list []Reason
	for _, m := range s.Movers[:min(most, len(s.Movers))] {
		list = append(list, Reason{Title: "moved by " + clean(m.Name.String()), Value: b.taken(m.Input), Trust: m.Basis})
	}
	return list
}

// priceOpen lists the price questions whose answer would settle what moves the
// saving most: asked of this customer, not answered, and among the four that
// move it most.
func (b *builder) priceOpen() []Line {
	if b.result.First == nil {
		return nil
	}
	a := b.account([]*system.System{b.result.First.System})
	if len(a.Offers) == 0 {
		return nil
	}
	s, ok := a.Offers[0].Saving.Get()
	if !ok {
		return nil
	}
	asked := map[rules.Fact]bool{}
	for _, step := range b.visit.Steps() {
		_, answered := b.visit.Answer(step.Asked())
		asked[step.Question.ID] = !answered
	}
	var list []Line
	for _, m := range s.Movers[:min(4, len(s.Movers))] {
		if q, ok := assess.Find(m.Fact); ok && asked[m.Fact] {
			list = append(list, Line{Label: capital(string(q.Name)), Value: "not told", Why: "It could change only what is saved, but that as much as anything; " + b.taken(m.Input) + " is taken."})
			asked[m.Fact] = false
		}
	}
	return list
}
