package assess

import (
	"cutbrief/rules"
	"cutbrief/rules/unit"
)

// decisionQuestions say who decides, and who will hold the torch.
var decisionQuestions = []*Question{
	{ID: FactDecides, Name: "who decides", Group: GroupDecision, Form: FormText,
		Ask: "Who decides about buying?", Why: "The demonstration is best held when that person can watch.",
		Example: "the owner and the foreman together"},
	{ID: FactWhen, Name: "when they decide", Group: GroupDecision, Form: FormText,
		Ask: "When do you want to decide?", Why: "It sets the day of the demonstration.",
		Example: "before the spring season"},
	{ID: rules.FactBudget, Name: "budget", Group: GroupDecision, Form: FormQuantity, Kind: unit.Price, limit: limit{1, 10000000},
		Ask: "Have you set a budget for it?", Why: "It is fairer to say early if it will not be enough.",
		Help:    "A sum without a currency is taken in that of the price list.",
		Example: "4000 or 4000 EUR"},
	{ID: FactOperator, Name: "operator", Group: GroupDecision, Form: FormText, Optional: true,
		Ask: "Who will do most of the cutting?", Why: "That person should try the torch at the demonstration.",
		Example: "Pia, second year"},
	{ID: rules.FactExperience, Name: "experience", Group: GroupDecision, Form: FormOne,
		Ask: "How much cutting has the operator done?", Why: "It decides how much guidance the demonstration and the first week need.",
		Example: "has used plasma a little",
		Options: []Option{
			{string(rules.Novice), "new to cutting"},
			{string(rules.SomePlasma), "has cut with plasma a little"},
			{string(rules.Experienced), "cuts with plasma or gas every week"}}},
	{ID: rules.FactEyes, Name: "eye protection", Group: GroupDecision, Form: FormOne,
		Ask: "What eye protection do you have for cutting?", Why: "The arc harms eyes, those of onlookers too.",
		Help:    "Cutting needs filter lenses of the right shade for the current. Sun glasses and clear glasses do not protect from the arc.",
		Example: "the right shade for the operator",
		Options: []Option{
			{string(rules.EyesNone), "none"},
			{string(rules.EyesSun), "clear or sun glasses only"},
			{string(rules.EyesOne), "the right shade for the operator"},
			{string(rules.EyesAll), "the right shade for everyone near"}}},
	{ID: rules.FactVentilation, Name: "ventilation", Group: GroupDecision, Form: FormOne,
		Ask: "How do you take away the fume where you cut?", Why: "Cutting makes fume; stainless and coated steel make harmful fume.",
		Example: "extraction at the bench",
		Options: []Option{
			{string(rules.VentNone), "nothing takes it away"},
			{string(rules.VentGeneral), "doors, windows or roof fans"},
			{string(rules.VentExtract), "extraction at the cut"},
			{string(rules.VentOutside), "the cutting is done outdoors"}}},
	{ID: rules.FactShowing, Name: "time for the demonstration", Group: GroupDecision, Form: FormQuantity, Kind: unit.Time, limit: limit{300, 14400}, Optional: true,
		Ask: "How long can you spare for a demonstration?", Why: "The cuts that matter most are chosen to fit; half an hour is taken if nobody says.",
		Example: "30 min"},
	{ID: FactNotes, Name: "notes", Group: GroupDecision, Form: FormLong, Optional: true,
		Ask: "Anything else worth writing down?", Why: "What does not fit a question still matters.",
		Example: "Loading bay is narrow: bring the small trolley."},
}
