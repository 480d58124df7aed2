package rules

import (
	"slices"

	"cutbrief/rules/cite"
	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// The rules every system is judged by.
const (
	RuleClean      RuleID = "clean-cut"
	RuleSever      RuleID = "severance"
	RulePierce     RuleID = "pierce"
	RuleBevel      RuleID = "bevel"
	RuleGaps       RuleID = "gaps"
	RuleGouging    RuleID = "gouging"
	RuleMechanised RuleID = "mechanised"
	RuleSupply     RuleID = "supply"
	RuleBreaker    RuleID = "breaker"
	RuleCord       RuleID = "cord"
	RuleCordLoad   RuleID = "cord-load"
	RuleGenerator  RuleID = "generator"
	RuleAirFlow    RuleID = "air-flow"
	RuleAirPress   RuleID = "air-pressure"
	RuleAirDry     RuleID = "air-dryness"
	RuleDuty       RuleID = "duty"
	RuleEdge       RuleID = "edge"
	RuleHeat       RuleID = "heat"
	RuleBudget     RuleID = "budget"
)

// row is a rule with the functions that apply it. judge does the arithmetic
// and builds no text; inputs and needs name the answers behind it.
type row struct {
	Rule
	kind   unit.Kind
	judge  func(*demand, *system.System) mark
	inputs func(*demand, *system.System) []Input
	needs  []Fact // what has to be told to judge it
	gate   bool   // while the first of needs is not told, the others are not asked for
}

// missing lists what has to be told to judge a rule that is not known.
func (r *row) missing(j *Job) []Asked {
	if r.gate {
		if first := j.missing(r.needs[0]); len(first) > 0 {
			return first
		}
	}
	if r.ID == RuleEdge { // told or not: without a thickness it is judged by nothing else
		return []Asked{{Fact: FactEdgeNext}}
	}
	return j.missing(r.needs...)
}

// rows is the table, in the order checks are shown. It is a function of no
// state; the two that name the factor are explained by needOf.
var rows = []row{
	{Rule{ID: RuleClean, Title: "clean cut", Hard: true, Source: practice,
		Words: "rated thickness ≥ thickest regular clean cut × factor for use × factor for the metal",
		Cure:  "a larger system, or mechanised cutting"},
		unit.Thickness, judgeClean, cleanInputs, []Fact{FactMetals, FactThickest, FactUse}, false},
	{Rule{ID: RuleSever, Title: "rare thickest cut", Hard: true, Source: practice,
		Words: "severance thickness ≥ rare thickest piece × factor for the metal",
		Cure:  "a larger system, or another process for the rare piece"},
		unit.Thickness, judgeSever, pieceInputs(FactRarest), []Fact{FactRarest}, false},
	{Rule{ID: RulePierce, Title: "pierce", Hard: true, Source: practice,
		Words: "pierce thickness (half the clean maximum where none is given) ≥ thickest piece started in the middle × factor for the metal",
		Cure:  "a larger system, or starting from the edge or a drilled hole"},
		unit.Thickness, judgePierce, pieceInputs(FactPierced), []Fact{FactStart, FactPierced}, true},
	{Rule{ID: RuleBevel, Title: "bevel", Hard: true, Source: practice,
		Words: "clean maximum ≥ plate thickness ÷ cos(angle from square) × factor for the metal",
		Cure:  "a larger system, or a smaller bevel"},
		unit.Thickness, judgeBevel, bevelInputs, []Fact{FactFeatures, FactBevelled, FactBevelAngle}, true},
	{Rule{ID: RuleGaps, Title: "cutting across gaps", Hard: true, Source: practice,
		Words: "grating and mesh need a system that holds or relights its arc across gaps",
		Cure:  "a system that holds or relights its arc"},
		unit.None, judgeGaps, featureInput("gaps"), []Fact{FactFeatures}, false},
	{Rule{ID: RuleGouging, Title: "gouging", Hard: true, Source: practice,
		Words: "gouging needs a system whose manual allows it",
		Cure:  "a system made for gouging"},
		unit.None, judgeGouging, featureInput("gouging"), []Fact{FactFeatures}, false},
	{Rule{ID: RuleMechanised, Title: "carriage or table", Hard: true, Source: practice,
		Words: "a carriage or table needs a system with a torch made for it",
		Cure:  "a system with a torch for guided travel"},
		unit.None, judgeMechanised, nil, []Fact{FactGuidance}, false},
	{Rule{ID: RuleSupply, Title: "supply", Hard: true, Source: cite.Ref{Source: "rating-plate"},
		Words:  "the site has a phase and a voltage that the rating plate names",
		Almost: "the voltage lies outside the plate's range but within 10 % of it: the manual decides",
		Cure:   "another supply laid by a licensed electrician, or a system for this supply"},
		unit.None, judgeSupply, supplyInputs, []Fact{FactPhases, FactVolts}, false},
	{Rule{ID: RuleDuty, Title: "duty cycle", Hard: true, Source: cite.Ref{Source: "rating-plate", Clause: "duty at 40 °C"},
		Words: "arc-on share of the busiest ten minutes (cuts × length ÷ speed) ≤ duty cycle of the plate at that output",
		Cure:  "a system with a higher duty cycle, or fewer cuts in a row", Asks: "takes {1}", Gives: "allows {1}"},
		unit.Share, judgeDuty, dutyInputs, []Fact{FactBusyCuts, FactBusyLength, FactEveryday}, false},
	{Rule{ID: RuleBreaker, Title: "breaker", Site: true, Source: cite.Ref{Source: "nec-630-12", Clause: "(A)"},
		Words:  "breaker ≥ effective supply current at the working output (the root of the duty cycle, as in the table of 630.11(A)), and no more than 200 % of the plate's largest current (630.12(A)); a licensed electrician confirms it",
		Almost: "a licensed electrician decides",
		Cure:   "a larger circuit laid by a licensed electrician", Asks: "effective draw {1}", Gives: "breaker {1}"},
		unit.Current, judgeBreaker, breakerInputs, []Fact{FactPhases, FactVolts, FactBreaker}, false},
	{Rule{ID: RuleCord, Title: "extension cord", Site: true, Source: cite.Ref{Source: "nec-210-19"},
		Words: "voltage lost on the cord (2 or √3 × current × resistance × length) ≤ 5 % of the supply voltage; a licensed electrician confirms it",
		Cure:  "a shorter cord, or one with thicker conductors", Asks: "loses {1}", Gives: "may lose {1}"},
		unit.Share, judgeCord, cordInputs, []Fact{FactPhases, FactVolts, FactCord, FactCordSection}, false},
	{Rule{ID: RuleCordLoad, Title: "current in the cord", Site: true, Source: cite.Ref{Source: "nec-310-16"},
		Words:  "what the cord's conductors carry all the time ≥ effective supply current at the working output; a licensed electrician confirms it by the table for cords, 400.5",
		Almost: "the conductors would pass 60 °C but not 75 °C: a licensed electrician decides",
		Cure:   "a cord with thicker conductors", Gives: "cord carries {1}"},
		unit.Current, judgeCordLoad, cordInputs, []Fact{FactPhases, FactVolts, FactCord, FactCordSection}, false},
	{Rule{ID: RuleGenerator, Title: "generator", Site: true, Source: practice,
		Words: "continuous rating at this altitude ≥ 1.25 × apparent power at the working output",
		Cure:  "a larger generator"},
		unit.ApparentPower, judgeGenerator, drawInputs, []Fact{FactPhases, FactVolts, FactGenerator, FactAltitude}, false},
	{Rule{ID: RuleAirFlow, Title: "air flow", Site: true, Source: cite.Ref{Source: "rating-plate"},
		Words: "free air delivered at this altitude ≥ what the torch takes at full output",
		Cure:  "a compressor that delivers as much; a receiver only bridges short cuts"},
		unit.Flow, judgeAirFlow, airInputs, []Fact{FactAirDelivery, FactAltitude}, false},
	{Rule{ID: RuleAirPress, Title: "air pressure", Site: true, Source: cite.Ref{Source: "rating-plate"},
		Words: "pressure while air flows ≥ inlet pressure of the system + loss in hose and couplings",
		Cure:  "a higher setting, or a shorter or wider hose"},
		unit.Pressure, judgeAirPressure, hoseInputs, []Fact{FactAirPressure, FactHoseBore, FactHoseLength}, false},
	{Rule{ID: RuleAirDry, Title: "dry air", Site: true, Source: practice,
		Words:  "a dryer keeps water out of the torch; a separator takes out drops only",
		Almost: "a separator takes out drops, not vapour",
		Cure:   "a dryer in the air line"},
		unit.None, judgeAirDry, drierInputs, []Fact{FactDrier}, false},
	{Rule{ID: RuleEdge, Title: "edge for what comes next", Source: cite.Ref{Source: "iso-9013", Clause: "ranges of squareness and roughness"},
		Words:  "the ISO 9013 range the next operation needs against what a torch guided this way can promise (common practice, no source)",
		Almost: "only with grinding or dressing after the cut",
		Cure:   "leading the torch along an edge or template, or dressing the edge"},
		unit.None, judgeEdge, edgeInputs, []Fact{FactEdgeNext}, false},
	{Rule{ID: RuleHeat, Title: "heat left in the work", Source: practice,
		Words:  "usual heated band of hand plasma on mild steel, 0.5 to 2 mm, against that of today's way",
		Almost: "a cold cut leaves no heat at all: nothing that melts can match that",
		Cure:   "keeping the cut moving, and cooling between cuts"},
		unit.None, judgeHeat, heatInputs, []Fact{FactToday}, false},
	{Rule{ID: RuleBudget, Title: "budget", Source: cite.Ref{Source: "rating-plate", Clause: "price"},
		Words: "price ≤ budget; it is shown, and decides nothing", Asks: "costs {1}", Gives: "budget {1}"},
		unit.Price, judgeBudget, nil, nil, false},
}

// Table returns the rules in the order they are checked, the factor rules
// first.
func Table() []Rule {
	var list []Rule
	for i := range factorRows {
		list = append(list, factorRows[i].Rule)
	}
	for i := range rows {
		list = append(list, rows[i].Rule)
	}
	return list
}

// Find returns the rule with this identifier.
func (id RuleID) Find() (Rule, bool) {
	if i := slices.IndexFunc(rows, func(r row) bool { return r.ID == id }); i >= 0 {
		return rows[i].Rule, true
	}
	if i := slices.IndexFunc(factorRows[:], func(r factorRow) bool { return r.ID == id }); i >= 0 {
		return factorRows[i].Rule, true
	}
	return Rule{}, false
}

// needOf says what the work asks of any system, with the metal that decides.
func needOf(d *demand, how detail) unit.Maybe[Need] {
	none := &system.System{}
	piece, most, known, _ := heaviest(d, none, (*Piece).regular)
	if !known || !d.job.Use.IsKnown() {
		return unit.Maybe[Need]{}
	}
	t, _, _ := piece.regular()
	n := Need{
		Metal: piece.Metal, Thickness: t, Rule: d.multiple.ID, Factor: d.multiple.Floor,
		Rated:   unit.Millimetre(most * d.multiple.Floor),
		Comfort: unit.Millimetre(most * d.multiple.Comfort),
		Source:  practice,
	}
	if how != summary {
		n.Inputs = cleanInputs(d, none)
	}
	n.Severed = largest(d, none, func(p *Piece) unit.Maybe[unit.Millimetre] { return p.Rarest })
	n.Pierced = largest(d, none, func(p *Piece) unit.Maybe[unit.Millimetre] { return p.Pierced })
	return unit.Known(n)
}

// largest is the largest mild-steel equivalent told, not known if none is.
func largest(d *demand, s *system.System, pick func(*Piece) unit.Maybe[unit.Millimetre]) unit.Maybe[unit.Millimetre] {
	_, most, known, _ := heaviest(d, s, func(p *Piece) (unit.Millimetre, bool, bool) { return told(pick(p)) })
	if !known {
		return unit.Maybe[unit.Millimetre]{}
	}
	return unit.Known(unit.Millimetre(most))
}
