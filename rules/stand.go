package rules

import "cutbrief/rules/system"

// Firm reports whether what Judge concluded stands whatever the open answers are:
// what Evaluate says of it, without listing the questions, for readers of many
// visits.
func Firm(job Job, offered system.Range, o Outcome) bool {
	return o == Recommended && !anyPiece(&job, withoutFigures) && firm(&job, offered.Systems, leadOf(&job, offered.Systems))
}

// Open lists what Evaluate says is open of a job that Judge concluded something
// of, for readers who ask for no more.
func Open(job Job, offered system.Range, o Outcome) []OpenQuestion {
	inCurrency(&job, offered.Currency)
	d := newDemand(&job)
	list, _ := open(&d, offered.Systems, o)
	return list
}
