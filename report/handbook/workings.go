package handbook

import (
	"cutbrief/rules"
	"cutbrief/rules/message"
)

// working says how a rule comes to its figures, sentence by sentence.
type working struct {
	rule rules.RuleID
	says []message.ID
}

// workings say how a rule comes to its figures, so that somebody with this page,
// the lists and a pencil gets the same. A test asks for every rule, and
// testdata/secondopinion was written from them.
var workings = []working{
	{rules.RuleMaintenance, []message.ID{
		"The factor for use multiplies the thickest regular cut.",
		"While the use is not given it may be anything from 1 to 2: a check is met or not met only where both ends agree."}},
	{rules.RuleMixed, []message.ID{"As for maintenance."}},
	{rules.RuleProduction, []message.ID{"As for maintenance."}},
	{rules.RuleSpeed, []message.ID{
		"Takes the place of a smaller factor where cutting speed decides and is sure enough: the customer said so, the rep chose it, or its hints have a weight of 2 or more.",
		"A heavy section that alone outweighs speed by inference takes nothing from it."}},
	{rules.RuleClean, []message.ID{
		"For each metal: the thicker of everyday and thickest clean cut, times the factor for the metal.",
		"The heaviest of all metals counts, times the factor for use.",
		"A metal that is not given, or has no factor, can only make the need larger: a check that would be met is then not known."}},
	{rules.RuleSever, []message.ID{
		"The rare thickest piece of each metal, times its factor; the heaviest of all metals counts.",
		"None in every metal: no check.",
		"Not given for some metal: as for the clean cut."}},
	{rules.RulePierce, []message.ID{asRare, "No check where every cut starts at an edge."}},
	{rules.RuleBevel, []message.ID{asRare,
		"No check without bevels.",
		"An angle above 60° is not met, whatever the system.",
		"With the angle not given the plate itself is the least there can be."}},
	{rules.RuleGaps, []message.ID{
		"Needed where gaps are cut, and where cutting across gaps is what decides.",
		"While the kinds of cut are not given, only a system without it is not known."}},
	{rules.RuleGouging, []message.ID{"As for gaps, where gouging is given."}},
	{rules.RuleMechanised, []message.ID{"As for gaps, where a carriage or table is given."}},
	{rules.RuleSupply, []message.ID{
		"A nominal voltage fits within 0.5 % of the plate's range.",
		"Three phases of U volts also give one phase of U, line to line, and of U/√3, to neutral.",
		"Where both are available, one phase and three, the voltage given may also be that of the single phase; three phases then have √3·U.",
		"Of the supplies that are met the one with more phases is used, else the first of the row; one within 10 % only where none is met.",
		"Phase or voltage not given: not known. But a system with three phases only is not met in a single-phase shop."}},
	{rules.RuleDuty, []message.ID{
		"What counts is the heaviest everyday cut in mild steel, t, and its speed at full output.",
		"The share takes = cuts × length ÷ speed ÷ 10 min.",
		"If the plate allows less than that at full output, the output is turned down to the largest at which both are the same: met. It goes down as far as the smallest output and the severance thickness allow.",
		"If there is no such output, the check is the one at full output.",
		"No cuts in a row, or t beyond severance: no check.",
		"Everyday cut of some metal not given: a check that would be met is not known."}},
	{rules.RuleBreaker, []message.ID{
		"Working output = largest output × the largest share used of rated thickness (by the clean cut), severance (by the rare cut) and pierce thickness, each as far as given; never below the smallest output.",
		"Current while cutting = largest supply current × (arc power at working output ÷ at full output) × (lowest voltage of the plate's range ÷ voltage there).",
		"Arc power = (80 V + 0.4 V/A × I) × I, above 165 A (130 V + 0.1 V/A × I) × I.",
		"Effective current = current while cutting × the root of the duty cycle allowed at the working output.",
		"Below the effective current: not met.",
		"Borderline: below the current while cutting, below the plate's own effective current, or above 200 % of the plate's largest current, rounded up to the next of 15, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100 A.",
		"No check on a generator alone, or where no supply suits."}},
	{rules.RuleCord, []message.ID{
		"Current while cutting as for the breaker.",
		"Copper at 70 °C: 1 + 0.00393/K × 50 K times the resistance at 20 °C.",
		"That is, in Ω/km: 0.75 mm² 26.0, 1 mm² 19.5, 1.5 mm² 13.3, 2.5 mm² 7.98, 4 mm² 4.95, 6 mm² 3.30, 10 mm² 1.91, 16 mm² 1.21, 25 mm² 0.780, 35 mm² 0.554, 50 mm² 0.386.",
		"Between two sections the product of section and resistance runs straight; outside the list it is not known.",
		"Two conductors on one phase, √3 on three.",
		"No check without a cord, or where no supply suits."}},
	{rules.RuleCordLoad, []message.ID{
		"Effective current as for the breaker.",
		"Copper carries at 60 and 75 °C: 2.081 mm² 15 and 20 A, 3.309 mm² 20 and 25 A, 5.261 mm² 30 and 35 A, 8.367 mm² 40 and 50 A, 13.30 mm² 55 and 65 A, 21.15 mm² 70 and 85 A, 26.67 mm² 85 and 100 A, 33.63 mm² 95 and 115 A.",
		"Between two sections straight, below the first in proportion, above the last as the last; below 0.75 mm² it is not met.",
		"No check while cord or section are not given."}},
	{rules.RuleGenerator, []message.ID{
		"Apparent power = voltage × current while cutting, on three phases × √3.",
		"Above 1000 m the rating counts times the air's density over that at sea level, (1 − 0.0065·H/288.15)^4.25588 with H = r·h/(r + h), r = 6356766 m.",
		"Altitude not given: the verdict at 0 m, if that at 1500 m is the same, else not known.",
		"No check without a generator, or where no supply suits."}},
	{rules.RuleAirFlow, []message.ID{
		"Delivery × air pressure there ÷ 100 kPa, and never more than the delivery.",
		"Air pressure = 101.325 kPa × (1 − 0.0065·H/288.15)^5.25588.",
		"Altitude not given: as for the generator.",
		"No compressor: not met."}},
	{rules.RuleAirPress, []message.ID{
		"Loss in the hose: p1² − p2² = f·(L/D)·G²·R·T with absolute pressures, f = 0.25/lg²(ε/(3.7·D) + 5.74/Re^0.9), Re = G·D/μ; twice that with couplings.",
		"R 287.05 J/kg·K, T 293.15 K, ε 0.0015 mm, μ 1.82·10⁻⁵ Pa·s, G from the system's flow at 100 kPa and 20 °C.",
		"Below Re 5000 nothing is lost. Where p2 would be less than half of p1 the check is not met, and half of the pressure is given.",
		"Altitude not given: at sea level.",
		"Bore or length not given: 6 mm and 30 m must give the same verdict as no hose at all, else it is not known.",
		noCompressor}},
	{rules.RuleAirDry, []message.ID{"No dryer: not met. A separator: borderline. A refrigerated or desiccant dryer: met.", noCompressor}},
	{rules.RuleEdge, []message.ID{
		"Ranges a torch can promise, squareness and roughness: by hand 5 and 4, along an edge or template 4 and 3, on a carriage 3 and 2.",
		"Needed: 4 and 4 to be welded, 3 and 3 to be seen; none for scrap and to be machined.",
		"This holds for 0.5 to 150 mm."}},
	{rules.RuleHeat, []message.ID{
		"A shear, nibbler or band saw among today's ways is cold: borderline.",
		"Else oxy-fuel on mild or galvanised steel: met.",
		"Any other way: no check."}},
	{rules.RuleBudget, []message.ID{"No check where the budget or the price is not given, or where they are in two currencies."}},
}

// What several rules share.
const (
	asRare       message.ID = "As for the rare thickest piece."
	noCompressor message.ID = "No compressor: no check."
)

// workings is how every rule comes to its figures, and what all of them share.
func (w writer) workings() Section {
	return table(w, "How a check is worked out", w.paragraphs(
		"Met: what is given is no less than what is needed. Borderline: no more than 6 % less, unless the rule says otherwise. A check with an answer missing is not known, and never met.",
		"Speed in t mm of mild steel at full output: straight in logarithms between rated thickness at 500 mm/min, clean maximum at 250 mm/min and severance at 125 mm/min; below the rated thickness the first line goes on, but no steeper than 500 × rated ÷ t.",
		"It is never faster than 1500 mm/min free hand, 2500 mm/min along an edge or template, 7620 mm/min on a carriage. With less output the three thicknesses shrink in proportion.",
		"Duty cycle allowed at an output: straight in logarithms between two points of the plate; beyond them current² × duty cycle stays the same, up to 100 %.",
		"A rule about the work that is not met rules a system out. Else the system is borderline if such a rule is; else it fits once the site is changed, if a rule about the site is not met; else it fits.",
		"The first choice is the best of these, and among equals the smallest rated thickness, then the lightest."),
		[]message.ID{"Rule", "Worked out"}, workings, func(one working) []any {
			r, _ := one.rule.Find()
			return []any{r.Title, message.Join(" ", message.Each(one.says, message.ID.Message)...)}
		})
}
