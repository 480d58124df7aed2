package assess

import "cutbrief/rules/unit"

// visitQuestions say who and when.
var visitQuestions = []*Question{
	{ID: FactCompany, Name: "company", Group: GroupVisit, Form: FormText,
		Ask: "Which company is this for?", Why: "It stands at the top of the page and names the file.",
		Example: "Hillside Farm Services"},
	{ID: FactContact, Name: "contact", Group: GroupVisit, Form: FormText, Optional: true,
		Ask: "Who am I talking to?", Why: "So that the page reaches the right desk.",
		Example: "Marta Lind, workshop lead"},
	{ID: FactPlace, Name: "place", Group: GroupVisit, Form: FormText, Optional: true,
		Ask: "Where are we?", Why: "So that the demonstration goes to the right door.",
		Example: "Workshop 2, Mill Lane"},
	{ID: FactDate, Name: "date", Group: GroupVisit, Form: FormDate,
		Ask: "What is the date of the visit?", Why: "The page is dated, and so are its prices.",
		Example: "2026-11-25"},
	{ID: FactRep, Name: "rep", Group: GroupVisit, Form: FormText,
		Ask: "Who is making the visit?", Why: "The customer needs a name to ring.",
		Example: "Jon Aske"},
	{ID: FactUnits, Name: "units", Group: GroupVisit, Form: FormOne,
		Ask: "Do you work in millimetres or inches?", Why: "From here on, a number without a unit is read in this one.",
		Help:    "You can type either at any time: 3/8 in or 10 mm. Earlier answers do not change.",
		Example: "millimetres",
		Options: []Option{{string(unit.Metric), "millimetres"}, {string(unit.Inch), "inches"}}},
}
