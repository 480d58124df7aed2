package assess

import (
	"cutbrief/rules"
	"cutbrief/rules/unit"
)

// howQuestions say how the torch is used and what becomes of the edge.
var howQuestions = []*Question{
	{ID: rules.FactStart, Name: "where cuts start", Group: GroupHow, Form: FormOne,
		Ask: "Do your cuts start at an edge, or in the middle of the plate?", Why: "Starting in the middle takes about twice the capacity of an edge start.",
		Help:    "A start in the middle is called a pierce: the arc has to blow a hole before it can cut. A drilled start hole counts as an edge.",
		Example: "both",
		Options: []Option{
			{string(rules.AtEdge), "at the edge"},
			{string(rules.InPlate), "in the middle of the plate"},
			{string(rules.Anywhere), "both"}}},
	{ID: rules.FactPierced, Name: "thickest pierced", Group: GroupHow, Form: FormQuantity, PerMetal: true, Kind: unit.Thickness, limit: cuttable, none: true, applies: pierces,
		Ask: "What is the thickest {1} you pierce in the middle of the plate?", Why: "Molten metal blows back until the hole is through, so this has its own limit.",
		Help:    "To pierce is to blow a hole to start from. Type none if you always start this metal at an edge.",
		Example: "6 mm, 1/4 in or none"},
	{ID: rules.FactFeatures, Name: "kinds of cut", Group: GroupHow, Form: FormSeveral,
		Ask: "What kinds of cut do you make?", Why: "Bevels, gouging and gaps each need something that a plain system may not have.",
		Help:    "A bevel is an edge cut at a slant, ready for welding. Gouging melts a groove or an old weld away without cutting through. Gaps means grating, mesh or expanded metal, where the arc has to jump.",
		Example: "straight cuts and holes",
		Options: []Option{
			{string(rules.Straight), "straight cuts"},
			{string(rules.Shapes), "shapes"},
			{string(rules.Circles), "circles"},
			{string(rules.Holes), "holes"},
			{string(rules.Bevels), "bevels"},
			{string(rules.Gouging), "gouging"},
			{string(rules.Gaps), "grating, mesh or expanded metal"}}},
	{ID: rules.FactBevelled, Name: "thickest bevelled", Group: GroupHow, Form: FormQuantity, PerMetal: true, Kind: unit.Thickness, limit: cuttable, none: true, applies: bevels,
		Ask: "What is the thickest {1} plate you bevel?", Why: "A slanted cut goes through more metal than the plate is thick.",
		Help:    "Give the thickness of the plate, not the length of the slant. Type none if you do not bevel this metal.",
		Example: "10 mm, 3/8 in or none"},
	{ID: rules.FactBevelAngle, Name: "bevel angle", Group: GroupHow, Form: FormQuantity, Kind: unit.Angle, limit: limit{1, 70}, applies: bevels,
		Ask: "How steep is the bevel, measured from a square cut?", Why: "At 45 degrees the cut is 1.4 times as deep as the plate.",
		Help:    "A square cut is 0 degrees. Two edges at 30 degrees make a 60 degree groove.",
		Example: "30 degrees"},
	{ID: rules.FactEdgeNext, Name: "what happens to the edge next", Group: GroupHow, Form: FormSeveral,
		Ask: "What happens to the edge after the cut?", Why: "It says how good the edge has to be as it comes off the torch.",
		Example: "welded",
		Options: []Option{
			{string(rules.Welded), "it is welded"},
			{string(rules.Machined), "it is machined"},
			{string(rules.Seen), "it is painted or stays in view"},
			{string(rules.Scrap), "nothing, it is scrap"}}},
	{ID: rules.FactGuidance, Name: "how the torch is guided", Group: GroupHow, Form: FormOne,
		Ask: "How is the torch guided?", Why: "A steady hand or a guide makes a good edge; a carriage needs a different torch.",
		Example: "along a straight edge or template",
		Options: []Option{
			{string(rules.FreeHand), "by hand"},
			{string(rules.Guided), "by hand along a straight edge, template or radius guide"},
			{string(rules.Mechanised), "on a carriage or table"}}},
	{ID: rules.FactPlaces, Name: "where the work is done", Group: GroupHow, Form: FormSeveral,
		Ask: "Where is the cutting done?", Why: "It decides weight, leads, and how power and air get there.",
		Example: "at a bench and in place",
		Options: []Option{
			{string(rules.Bench), "at a bench"},
			{string(rules.InPlace), "in place, where the piece stands"},
			{string(rules.UpHigh), "up high"},
			{string(rules.Field), "out in the field"}}},
}
