package cite

// register lists the sources by room. Each room keeps its list in a file of
// its own, so that a list can be read beside the formulas that use it.
var register = [][]Source{general, unitSources, metalSources, sizeSources, safetySources, practiceSources, costSources}

// general is the knowledge that has no document.
var general = []Source{
	{ID: "practice", Title: "common practice in the cutting trade", Trust: Practice},
	{ID: "invented", Title: "invented for the demo", Trust: Invented},
	{ID: "rating-plate", Title: "the system's own row in the range", Trust: Given},
	{ID: "customer", Title: "the customer's own answer", Trust: Given},
}
