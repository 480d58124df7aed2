package rules

// Pointers returns everything that can point to a requirement, as it stands in
// the tables: what the customer says first, then what is inferred.
func Pointers() []Evidence {
	var list []Evidence
	for _, a := range annoyances {
		list = append(list, Evidence{Requirement: a.requirement, Said: true, Weight: weightMost, Sentence: a.sentence, From: Asked{Fact: FactAnnoysMost}, Source: practice})
	}
	for _, e := range inferred {
		list = append(list, Evidence{Requirement: e.requirement, Weight: e.weight, Sentence: e.sentence, From: Asked{Fact: e.from}, Source: practice})
	}
	return list
}
