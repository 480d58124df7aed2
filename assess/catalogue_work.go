package assess

import (
	"cutbrief/rules"
	"cutbrief/rules/metal"
	"cutbrief/rules/unit"
)

// workQuestions say what is cut, how thick and how often.
var workQuestions = []*Question{
	{ID: rules.FactMetals, Name: "metals", Group: GroupWork, Form: FormSeveral,
		Ask: "Which metals do you cut?", Why: "Some metals are harder to cut than others, and a gauge number means a different thickness in each.",
		Help:    "Choose all the metals you cut, the most common first. Coated means painted, primed or galvanised steel.",
		Example: "mild steel, stainless",
		Options: metalOptions()},
	{ID: rules.FactEveryday, Name: "everyday thickness", Group: GroupWork, Form: FormQuantity, PerMetal: true, Kind: unit.Thickness, limit: cuttable,
		Ask: "How thick is the {1} you cut most days?", Why: "Most cuts are this thick, so it sets the pace of the work.",
		Help:    "You can give a gauge for sheet, such as 14 ga. How thick that is depends on the metal.",
		Example: "6 mm or 1/4 in"},
	{ID: rules.FactThickest, Name: "thickest clean cut", Group: GroupWork, Form: FormQuantity, PerMetal: true, Kind: unit.Thickness, limit: cuttable,
		Ask: "What is the thickest {1} you cut often that must come out clean?", Why: "This sets the size of the system more than anything else.",
		Help:    "Clean means ready to weld or use after light grinding. Often means most weeks. The next question is about the rare, thick piece.",
		Example: "12 mm or 1/2 in"},
	{ID: rules.FactRarest, Name: "rare thickest cut", Group: GroupWork, Form: FormQuantity, PerMetal: true, Kind: unit.Thickness, limit: cuttable, none: true,
		Ask: "Now and then, what is the thickest {1} you only need to sever?", Why: "A system severs more than it cuts clean, but slowly and with a rough edge.",
		Help:    "This is a severance cut: the piece only has to come apart, and the edge is ground or thrown away. Type none if nothing is thicker than your clean cuts.",
		Example: "25 mm, 1 in or none"},
	{ID: rules.FactCutLength, Name: "length cut", Group: GroupWork, Form: FormQuantity, Kind: unit.Length, limit: limit{0.01, 20000},
		Ask: "How much do you cut, in metres or feet, a day or a week?", Why: "It tells repair work from production, and what running costs matter.",
		Help:    "A rough figure is fine: the number of cuts times their length. Without a day or a week it counts for a day.",
		Example: "40 m a day, 200 m a week or 130 ft a day"},
	{ID: rules.FactDays, Name: "days a week", Group: GroupWork, Form: FormQuantity, Kind: unit.None, limit: limit{0.1, 7},
		Ask: "On how many days a week do you cut?", Why: "It turns a day's cutting into a week's, or a week's into a day's.",
		Example: "5"},
	{ID: rules.FactBusyCuts, Name: "cuts in the busiest ten minutes", Group: GroupWork, Form: FormQuantity, Kind: unit.Count, limit: limit{1, 1000}, none: true,
		Ask: "In your busiest ten minutes, how many cuts do you make?", Why: "A system may cut for only part of any ten minutes before it has to cool.",
		Help:    "The rating plate says for how much of ten minutes a system may cut at a given current. This is its duty cycle.",
		Example: "8"},
	{ID: rules.FactBusyLength, Name: "length of each busy cut", Group: GroupWork, Form: FormQuantity, Kind: unit.Length, limit: limit{0.005, 100}, applies: busy,
		Ask: "How long is each cut in your busiest ten minutes?", Why: "Number and length together give the time the arc burns.",
		Example: "0.6 m, 400 mm or 2 ft"},
	{ID: rules.FactUse, Name: "repair or production", Group: GroupWork, Form: FormOne,
		Ask: "Is this repair work, production, or some of both?", Why: "Production needs two to three times the capacity, so that work does not wait for the cut.",
		Help:    "Production: the same cuts most days, and the next job waits for them. Maintenance: repairs and odd jobs at irregular times, where a slower cut holds nobody up. Some of both, or short runs now and then, is light production.",
		Example: "repair and odd jobs",
		Options: []Option{
			{string(rules.Maintenance), "maintenance: repair and odd jobs"},
			{string(rules.Mixed), "some of both, or light production"},
			{string(rules.Production), "production: the same cuts most days"}}},
}

// metalOptions offers the metals in the order of their list.
func metalOptions() []Option {
	var options []Option
	for _, m := range metal.List() {
		options = append(options, Option{string(m.ID), m.Name})
	}
	return options
}
