package assess

import (
	"encoding/json"
	"fmt"
	"slices"
	"strings"

	"cutbrief/rules"
	"cutbrief/rules/unit"
)

// Recommendation is what was concluded when a visit was last saved, and by which
// rules and range: what the customer was told. It sizes nothing; a reader holds
// it against what would be concluded today.
type Recommendation struct {
	Outcome  rules.Outcome
	System   string            // its identifier; "" if none is recommended
	Firm     bool              // no plausible answer to an open question changes it
	Critical rules.Requirement // what decides; "" if nothing points anywhere
	Rated    unit.Millimetre   // rated thickness needed, mild steel; 0 if it is not known
	Rules    int               // rules.Edition
	Range    string            // system.Fingerprint

	extra map[string]json.RawMessage // unknown fields, kept
}

// outcomes are what a visit can end in.
var outcomes = []string{string(rules.Recommended), string(rules.NotYet), string(rules.NoneFits)}

// Conclude sums up a result for the record of the visit.
func Conclude(r rules.Result, fingerprint string) *Recommendation {
	c := &Recommendation{Outcome: r.Outcome, Firm: r.Firm, Critical: r.Critical.Requirement, Rules: rules.Edition, Range: fingerprint}
	if need, known := r.Need.Get(); known {
		c.Rated = need.Rated
	}
	if r.First != nil {
		c.System = r.First.System.ID
	}
	return c
}

// Record keeps what a result concludes in place of what was concluded before,
// with what this program does not know of it.
func (v *Visit) Record(r rules.Result, fingerprint string) {
	c := Conclude(r, fingerprint)
	if v.Recommended != nil {
		c.extra = v.Recommended.extra
	}
	v.Recommended = c
}

// takeRecommendation reads what was recommended, if it was saved.
func takeRecommendation(t *taker, v *Visit) []string {
	raw, ok := t.take("recommended")
	if !ok {
		return nil
	}
	fields, err := members(raw, nil)
	if err != nil {
		t.err = fmt.Errorf("recommended: %w", err)
		return nil
	}
	in := &taker{fields: fields}
	c := &Recommendation{Outcome: rules.Outcome(in.line("outcome")), System: in.line("system"), Firm: in.yes("firm"),
		Critical: rules.Requirement(in.line("critical")), Rated: unit.Millimetre(in.number("rated_mm")), Range: in.line("range")}
	c.Rules, _ = in.whole("rules")
	if !slices.Contains(outcomes, string(c.Outcome)) {
		in.fail("outcome", json.RawMessage(c.Outcome), "one of "+strings.Join(outcomes, ", "))
	}
	if c.Critical != "" && !slices.Contains(requirements, string(c.Critical)) {
		in.fail("critical", json.RawMessage(c.Critical), "one of "+strings.Join(requirements, ", "))
	}
	if in.err != nil {
		t.err = fmt.Errorf("recommended: %w", in.err)
	}
	c.extra = in.leftOver()
	v.Recommended = c
	return named("recommended: field ", c.extra)
}

// number takes a number of zero or more.
func (t *taker) number(name string) (n float64) {
	raw, ok := t.take(name)
	if ok && (raw[0] == 'n' || json.Unmarshal(raw, &n) != nil || n < 0) {
		t.fail(name, raw, "a number of zero or more")
	}
	return n
}

func (c *Recommendation) encode() member {
	var o object
	o.addText("outcome", string(c.Outcome))
	o.addText("system", c.System)
	if c.Outcome == rules.Recommended {
		o.add("firm", c.Firm)
	}
	o.addText("critical", string(c.Critical))
	if c.Rated > 0 {
		o.add("rated_mm", float64(c.Rated))
	}
	if c.Rules > 0 {
		o.add("rules", c.Rules)
	}
	o.addText("range", c.Range)
	o.addExtra(c.extra)
	raw, err := o.bytes()
	return member{raw: raw, err: err}
}

func recommendationSchema() node {
	return node{
		"type":        "object",
		"description": "What was concluded at the last save, and by which rules and range.",
		"required":    []string{"outcome"},
		"properties": node{
			"outcome":  node{"enum": outcomes, "description": "What it came to."},
			"system":   text(maxLine, "Identifier of the system recommended."),
			"firm":     node{"type": "boolean", "description": "No plausible answer to an open question changes it."},
			"critical": node{"enum": requirements, "description": "The requirement that decides."},
			"rated_mm": node{"type": "number", "minimum": 0, "description": "Rated thickness needed, mm of mild steel."},
			"rules":    node{"type": "integer", "minimum": 0, "description": "Edition of the rules."},
			"range":    text(maxLine, "Fingerprint of the range of systems."),
		},
	}
}
