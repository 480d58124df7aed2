package report

import (
	"strings"

	"cutbrief/assess"
	"cutbrief/rules"
	"cutbrief/rules/unit"
)

// Strength from which an open question comes before the supply: it could
// change the system.
const changesSystem = 3

// confirm lists what stands between the page and an order: open answers that
// could change the system, what was assumed, the supply, and the other open
// answers.
func (b *builder) confirm() []Line {
	list := b.unread()
	list = append(list, b.open(func(q rules.OpenQuestion) bool { return q.Strength >= changesSystem })...)
	list = append(list, b.assumed()...)
	if b.recommended() {
		list = append(list, Line{Label: "Supply", Value: b.supply(), Why: "To be confirmed by a licensed electrician: circuit, breaker, earth and cord."})
	}
	return append(list, b.open(func(q rules.OpenQuestion) bool { return q.Strength < changesSystem })...)
}

// unread are answers that could not be understood; they count as not known.
func (b *builder) unread() []Line {
	var list []Line
	for _, p := range b.problems {
		list = append(list, Line{Label: capital(askedName(p.Asked)), Value: "could not be understood", Why: stop(capital(clean(p.Text)))})
	}
	return list
}

func (b *builder) open(which func(rules.OpenQuestion) bool) []Line {
	var list []Line
	for _, q := range b.result.Open {
		if which(q) {
			list = append(list, Line{Label: capital(askedName(q.Asked)), Value: b.stands(q.Asked), Why: stop(b.answerCould(q))})
		}
	}
	return list
}

// stands says how an open answer stands: asked in vain, or not asked yet.
func (b *builder) stands(a rules.Asked) string {
	answer, asked := b.visit.Answer(a)
	switch {
	case !asked:
		return "not asked yet"
	case a.Fact == rules.FactMetals && answer.State != assess.Unknown:
		return "to be tried" // no figures are held for one of them
	}
	return "not known"
}

// answerCould words what an open answer could change.
func (b *builder) answerCould(q rules.OpenQuestion) string {
	if text := b.could(q); strings.HasPrefix(text, "could ") {
		return "The answer " + text
	}
	return capital(q.Could.String())
}

// could is what an open answer could change, the name of a system marked as not
// ours to word.
func (b *builder) could(q rules.OpenQuestion) string {
	s, ok := b.offered.Find(q.FlipTo)
	if !ok {
		return q.Could.String()
	}
	return strings.Replace(q.Could.String(), s.Name, plain(s.Name), 1)
}

// assumed lists the answers that were assumed, with what they bear.
func (b *builder) assumed() []Line {
	var list []Line
	for _, s := range b.visit.Steps() {
		a, ok := b.visit.Answer(s.Asked())
		if !ok || a.State != assess.Assumed {
			continue
		}
		l := Line{Label: capital(s.Name().String()), Value: "assumed"}
		if said := b.said(s, a); said != "" {
			l.Value += " " + said
		}
		l.Why = b.bears(s)
		list = append(list, l)
	}
	return list
}

// said is an answer as it was said or chosen.
func (b *builder) said(s assess.Step, a assess.Answer) string {
	if a.Said != "" {
		figure, guess := a.Said, false
		if s.Question.Form == assess.FormQuantity { // "about" is then a word of ours
			figure, guess = strings.CutPrefix(a.Said, "about ")
		}
		text := plain(figure)
		if a.Unit != "" {
			text += " " + plain(a.Unit)
		}
		if guess {
			return "about " + text
		}
		return text
	}
	var chosen []string
	for _, id := range a.Chosen {
		for _, o := range s.Question.Options {
			if o.ID == id {
				chosen = append(chosen, string(o.Text))
			}
		}
	}
	return series(chosen)
}

// bears says how far an assumed answer may be off before it matters, or why
// it was asked.
func (b *builder) bears(s assess.Step) string {
	for _, m := range b.result.Margins {
		if m.Asked != s.Asked() || m.HoldsTo.Value < m.Now.Value {
			continue
		}
		return "The choice holds up to " + b.given(m.HoldsTo) + "; " + b.beyond(m)
	}
	return string(s.Question.Why)
}

// supply says what is known of the electricity.
func (b *builder) supply() string {
	var parts []string
	p := &b.job.Power
	if phases, ok := p.Phases.Get(); ok {
		parts = append(parts, map[rules.Phases]string{rules.SinglePhase: "single-phase", rules.ThreePhase: "three-phase", rules.BothPhases: "single- and three-phase"}[phases])
	}
	if volts, ok := p.Volts.Get(); ok {
		parts = append(parts, b.told(unit.Quantity{Value: float64(volts), Kind: unit.Voltage}))
	}
	if breaker, ok := p.Breaker.Get(); ok {
		parts = append(parts, "breaker "+b.told(amperes(breaker)))
	}
	if len(parts) == 0 {
		return "not known"
	}
	return strings.Join(parts, ", ")
}
