package assess

import (
	"cutbrief/rules"
	"cutbrief/rules/message"
	"cutbrief/rules/unit"
)

// Offer is an answer that one key takes, with why it is offered. It is no answer
// before that.
type Offer struct {
	Answer Answer
	Why    message.ID // "the same as the everyday thickness"
}

// Offered returns what a question of quantity offers, from what has been said at
// this visit; false if nothing.
func (v *Visit) Offered(s Step) (Offer, bool) {
	switch s.Question.ID {
	case rules.FactEveryday:
		return v.sameAs(s, rules.FactThickest, "the same as the thickest clean cut")
	case rules.FactThickest, rules.FactPierced, rules.FactBevelled:
		o, offered := v.sameAs(s, rules.FactEveryday, "the same as the everyday thickness")
		if !offered && s.Question.ID != rules.FactThickest {
			return v.sameAs(s, rules.FactThickest, "the same as the thickest clean cut")
		}
		return o, offered
	case rules.FactRarest:
		return v.offer(s, "none", "nothing is thicker than the clean cuts")
	case rules.FactCord:
		return v.offer(s, "none", "it plugs straight in")
	case rules.FactVolts:
		return v.usualVolts(s)
	}
	return Offer{}, false
}

// sameAs offers what was said to another question about the same metal.
func (v *Visit) sameAs(s Step, f rules.Fact, why message.ID) (Offer, bool) {
	a, told := v.Answer(rules.Asked{Fact: f, Metal: s.Metal})
	if !told || a.State == Unknown {
		return Offer{}, false
	}
	if _, err := understand(s, a, v.Style()); err != nil {
		return Offer{}, false
	}
	same := Answer{Question: s.Question.ID, Metal: s.Metal, Said: a.Said, Unit: a.Unit, State: Told}
	if a.State == Assumed { // a guess stays one
		same.State = Assumed
	}
	return Offer{same, why}, true
}

// offer offers a text of its own.
func (v *Visit) offer(s Step, said string, why message.ID) (Offer, bool) {
	a, _, err := v.Read(s, said)
	return Offer{a, why}, err == nil
}

// usualVolts offers the voltage that goes with the phase told, where there is one
// usual figure: 230 V and 400 V. Source: IEC 60038, Table 1, systems of 50 Hz.
// In a visit in inches there are several, and none is offered.
func (v *Visit) usualVolts(s Step) (Offer, bool) {
	if v.Style() == unit.Inch {
		return Offer{}, false
	}
	switch {
	case v.chose(rules.FactPhases, string(rules.SinglePhase)):
		return v.offer(s, "230 V", "usual for single-phase")
	case v.chose(rules.FactPhases, string(rules.ThreePhase)):
		return v.offer(s, "400 V", "usual for three-phase")
	}
	return Offer{}, false
}

// Text is the offered answer as it is said.
func (o Offer) Text() string {
	if o.Answer.Unit != "" {
		return o.Answer.Said + " " + o.Answer.Unit
	}
	return o.Answer.Said
}
