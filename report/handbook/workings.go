package handbook

import (
	"cutbrief/rules"
	"cutbrief/rules/message"
)

// working says how a rule comes to its figures.
type working struct {
	rule rules.RuleID
	says string
}

// workings say how a rule comes to its figures, so that somebody with this page,
// the lists and a pencil gets the same. A test asks for every rule, and
// testdata/secondopinion was written from them.
var workings = []working{
	{rules.RuleMaintenance, "The factor for use multiplies the thickest regular cut. While the use is not given it may be anything from 1 to 2: a check is met or falls short only where both ends agree."},
	{rules.RuleMixed, "As for maintenance."},
	{rules.RuleProduction, "As for maintenance."},
	{rules.RuleSpeed, "Stands in place of a smaller factor where cutting speed decides and is sure enough: said, chosen by the rep, or with hints of a weight of 2 or more. A heavy section that alone outweighs speed by inference takes nothing from it."},
	{rules.RuleClean, "Per metal the thicker of everyday and thickest clean cut, times the factor for the metal; of all metals the heaviest, times the factor for use. A metal that is not given, or has no factor, can only make the need larger: then a check that would be met is not known."},
	{rules.RuleSever, "The rare thickest of each metal times its factor; of all metals the heaviest. None in every metal: no check. Not given for some metal: as for the clean cut."},
	{rules.RulePierce, "As for the rare thickest piece; no check where every cut starts at an edge."},
	{rules.RuleBevel, "As for the rare thickest piece; no check without bevels. An angle above 60° falls short whatever the system. With the angle not given the plate itself is the least there can be."},
	{rules.RuleGaps, "Asked for where gaps are cut, and where cutting across gaps is what decides. While the kinds of cut are not given, only a system without it is not known."},
	{rules.RuleGouging, "As for gaps, where gouging is given."},
	{rules.RuleMechanised, "As for gaps, where a carriage or table is given."},
	{rules.RuleSupply, "Nominal voltages meet within 0.5 % of the plate's range. Three phases of U volts also give one phase of U, line to line, and of U/√3, to neutral; where both phases are available, the voltage given may also be that of the single phase, and three phases have √3·U. Of supplies that are met the one with more phases is used, else the first of the row; one within 10 % only where none is met. Phase or voltage not given: not known, but a system with three phases only falls short in a single-phase shop."},
	{rules.RuleDuty, "The heaviest everyday cut in mild steel, t; the speed in it at full output; the share takes = cuts × length ÷ speed ÷ 10 min. If the plate allows less than that at full output, the output is turned down to the largest at which both are the same (met), as far as the smallest output and the severance thickness go; if there is none, the check stands at full output. No cuts in a row, or t beyond severance: no check. Everyday cut of some metal not given: a check that would be met is not known."},
	{rules.RuleBreaker, "Working output: largest output × the largest share used of rated thickness (by the clean cut), severance (by the rare cut) and pierce thickness, each as far as given; never below the smallest output. Current while cutting: largest supply current × (arc power at working output ÷ at full output) × (lowest voltage of the plate's range ÷ voltage there), arc power = (80 V + 0.4 V/A × I) × I, above 165 A (130 V + 0.1 V/A × I) × I. Effective: that × the root of the duty cycle allowed at the working output. Below it: falls short. Borderline: below the current while cutting, below the plate's own effective current, or above 200 % of the plate's largest current, rounded up to the next of 15, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100 A. No check on a generator alone, or where no supply suits."},
	{rules.RuleCord, "Current while cutting as for the breaker; copper at 70 °C, 1 + 0.00393/K × 50 K times the resistance at 20 °C in Ω/km: 0.75 mm² 26.0, 1 19.5, 1.5 13.3, 2.5 7.98, 4 4.95, 6 3.30, 10 1.91, 16 1.21, 25 0.780, 35 0.554, 50 0.386; between two the product of both runs straight, outside it is not known. Two conductors on one phase, √3 on three. No check without a cord, or where no supply suits."},
	{rules.RuleCordLoad, "Effective current as for the breaker. Copper carries at 60 and 75 °C: 2.081 mm² 15 and 20 A, 3.309 20 and 25, 5.261 30 and 35, 8.367 40 and 50, 13.30 55 and 65, 21.15 70 and 85, 26.67 85 and 100, 33.63 95 and 115; between two straight, below the first in proportion, above the last as the last; below 0.75 mm² it falls short. No check while cord or section are not given."},
	{rules.RuleGenerator, "Apparent power = voltage × current while cutting, on three phases × √3. Above 1000 m the rating counts times the air's density over that at the sea, (1 − 0.0065·H/288.15)^4.25588 with H = r·h/(r + h), r = 6356766 m. Altitude not given: the verdict at 0 m, if that at 1500 m is the same, else not known. No check without a generator, or where no supply suits."},
	{rules.RuleAirFlow, "Delivery × air pressure there ÷ 100 kPa, and never more than the delivery; air pressure = 101.325 kPa × (1 − 0.0065·H/288.15)^5.25588. Altitude not given: as for the generator. No compressor: falls short."},
	{rules.RuleAirPress, "Loss in the hose: p1² − p2² = f·(L/D)·G²·R·T with absolute pressures, f = 0.25/lg²(ε/(3.7·D) + 5.74/Re^0.9), Re = G·D/μ, R 287.05 J/kg·K, T 293.15 K, ε 0.0015 mm, μ 1.82·10⁻⁵ Pa·s, G from the system's flow at 100 kPa and 20 °C; twice that with couplings. Below Re 5000 nothing; where p2 would be less than half of p1 it falls short, and half of the pressure is said. Altitude not given: at the sea. Bore or length not given: 6 mm and 30 m must give the same verdict as no hose at all, else it is not known. No compressor: no check."},
	{rules.RuleAirDry, "No dryer falls short, a separator is borderline, a refrigerated or desiccant dryer is met. No compressor: no check."},
	{rules.RuleEdge, "Ranges a torch can promise, squareness and roughness: by hand 5 and 4, along an edge or template 4 and 3, on a carriage 3 and 2. Needed: 4 and 4 to be welded, 3 and 3 to be seen; none for scrap and to be machined. Held for 0.5 to 150 mm."},
	{rules.RuleHeat, "A shear, nibbler or band saw among today's ways is cold: borderline. Else oxy-fuel on mild or galvanised steel: met. Any other way: no check."},
	{rules.RuleBudget, "No check where the budget or the price is not given, or where they are in two currencies."},
}

// workings is how every rule comes to its figures, and what all of them share.
func (w writer) workings() Section {
	return table(w, "How a check is worked out", w.worded(
		"Met: what is given is no less than what is needed. Borderline: no more than 6 % less, unless the rule says otherwise. A check with an answer missing is not known, and never met.",
		"Speed in t mm of mild steel at full output: straight in logarithms between rated thickness at 500 mm/min, clean maximum at 250 and severance at 125; below the rated thickness the first line goes on, but no steeper than 500 × rated ÷ t; never faster than 1500 mm/min free hand, 2500 along an edge or template, 7620 on a carriage. With less output the three thicknesses shrink in proportion.",
		"Duty cycle allowed at an output: straight in logarithms between two points of the plate; beyond them current² × duty cycle stays the same, up to 100 %.",
		"A system that a rule about the work rules out falls short; else it is borderline if such a rule is, else fits once the site is changed if a rule about the site falls short, else fits. The first choice is the best of these, and among equals the smallest rated thickness, then the lightest."),
		[]message.ID{"Rule", "Worked out"}, workings, func(one working) []any {
			r, _ := one.rule.Find()
			return []any{r.Title, one.says}
		})
}
