package assess

import "cutbrief/rules"

// The visit's own questions: kept and printed, but nothing is sized by them.
// Once in a saved file they are never renamed.
const (
	FactCompany  rules.Fact = "company"
	FactContact  rules.Fact = "contact"
	FactPlace    rules.Fact = "place"
	FactDate     rules.Fact = "date"
	FactRep      rules.Fact = "rep"
	FactUnits    rules.Fact = "units"
	FactWords    rules.Fact = "annoys-words" // what annoys them, in their own words
	FactDecides  rules.Fact = "decides"
	FactWhen     rules.Fact = "when"
	FactOperator rules.Fact = "operator"
	FactNotes    rules.Fact = "notes"
)
