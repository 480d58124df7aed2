package report

import (
	"math"
	"slices"
	"strings"

	"cutbrief/assess"
	"cutbrief/rules"
	"cutbrief/rules/message"
	"cutbrief/rules/unit"
)

// changesSystem is the strength from which an open question comes before the
// supply: it could change the system.
const changesSystem = 3

// confirm lists what stands between the page and an order: open answers that
// could change the system, what was assumed, the supply, and the other open
// answers.
func (b *builder) confirm() []Line {
	list := mapped(b.problems, func(p *assess.Problem) Line { // answers that could not be understood count as not known
		return b.line(askedName(p.Asked).Capital(), msg("could not be understood"), p.Text.Sentence())
	})
	list = append(list, b.open(changesSystem, math.MaxInt)...)
	list = append(list, b.assumed()...)
	if b.recommended() {
		list = append(list, b.line(msg("Supply"), b.supply(), msg("To be confirmed by a licensed electrician: circuit, breaker, earth and cord.")))
	}
	return append(list, b.open(math.MinInt, changesSystem-1)...)
}

// open are the open answers from one strength to another.
func (b *builder) open(least, most int) []Line {
	var list []Line
	for i := range b.result.Open {
		if q := &b.result.Open[i]; q.Strength >= least && q.Strength <= most {
			sentence, _ := b.could(q)
			list = append(list, b.line(askedName(q.Asked).Capital(), b.state(q.Asked), sentence))
		}
	}
	return list
}

// state says how an open answer stands: asked in vain, or not asked yet.
func (b *builder) state(a rules.Asked) message.Message {
	answer, asked := b.visit.Answer(a)
	switch {
	case !asked:
		return msg("not asked yet")
	case a.Fact == rules.FactMetals && answer.State != assess.Unknown:
		return msg("to be tried") // no figures are held for one of them
	}
	return msg("not known")
}

// answers word what an answer could change: in a sentence, and for a narrow
// column. What is not in it is a sentence by itself.
var answers = map[message.ID][2]message.ID{
	"could change the system to {1}":               {"The answer could change the system to {1}.", "could mean {1}"},
	"could change what decides the sale":           {"The answer could change what decides the sale.", "could change what decides"},
	"could make the system borderline":             {"The answer could make the system borderline.", "could make the system borderline"},
	"could mean that no system of the range fits":  {"The answer could mean that no system fits.", "could mean that none fits"},
	"could mean that the site has to change first": {"The answer could mean that the site has to change first.", "could mean changing the site"},
}

// could words what an open answer could change, in a sentence or, for a narrow
// column, in a few words.
func (b *builder) could(q *rules.OpenQuestion) (sentence, briefly message.Message) {
	texts, ok := answers[q.Could.ID()]
	if !ok {
		return q.Could.Sentence(), q.Could
	}
	var to []any // the system it would change to, if it would to one
	if s, ok := b.offered.Find(q.FlipTo); ok {
		to = []any{outside(s.Name)}
	}
	return msg(texts[0], to...), msg(texts[1], to...)
}

// assumed lists the answers that were assumed, with what they bear.
func (b *builder) assumed() []Line {
	var list []Line
	for _, s := range b.visit.Steps() {
		a, ok := b.visit.Answer(s.Asked())
		if !ok || a.State != assess.Assumed {
			continue
		}
		given := assumption(s, a)
		list = append(list, b.line(s.Name().Capital(), when(!given.IsEmpty(), "assumed {1}", given).Or(msg("assumed")), b.bears(s)))
	}
	return list
}

// assumption is an answer as it was said or chosen.
func assumption(s assess.Step, a assess.Answer) message.Message {
	if a.Said == "" {
		var chosen []message.Message
		for _, o := range s.Question.Options {
			if slices.Contains(a.Chosen, o.ID) {
				chosen = append(chosen, worded(o.Text))
			}
		}
		return message.And(chosen...)
	}
	return s.Question.Said(strings.TrimSpace(a.Said + " " + a.Unit))
}

// bears says how far an assumed answer may be off before it matters, or why
// it was asked.
func (b *builder) bears(s assess.Step) message.Message {
	for _, m := range b.result.Margins {
		if m.Asked == s.Asked() && m.HoldsTo.Value >= m.Now.Value {
			return msg("The choice holds up to {1}; {2}", b.given(m.HoldsTo), b.beyond(m))
		}
	}
	return worded(s.Question.Why)
}

// phaseWords word how a supply is wired.
var phaseWords = map[rules.Phases]message.ID{
	rules.SinglePhase: "single-phase", rules.ThreePhase: "three-phase", rules.BothPhases: "single- and three-phase",
}

// supply says what is known of the electricity.
func (b *builder) supply() message.Message {
	p := &b.job.Power
	phases, _ := p.Phases.Get()
	volts, known := p.Volts.Get()
	breaker, told := p.Breaker.Get()
	return message.Join(", ", phaseWords[phases].Message(), when(known, "{1}", b.told(quantity(volts, unit.Voltage))),
		when(told, "breaker {1}", b.told(amperes(breaker)))).Or(msg("not known"))
}
