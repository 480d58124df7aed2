package main

import (
	"slices"

	"cutbrief/assess"
	"cutbrief/assess/store"
	"cutbrief/rules"
)

// lookBack is how many of the last visits are asked for what is usual.
const lookBack = 5

// usual are the facts that a new visit offers as they were at the rep's last one.
// They are about the rep's own habit; nothing a customer said is ever among them.
var usual = []rules.Fact{assess.FactRep, assess.FactUnits}

// suggest is what is typed in beforehand: today's date and, where a person
// answers, from the newest visits in the folder who made them and in which units.
// Nothing of it is an answer before the rep accepts it, and invented visits are
// left out.
func (a *app) suggest(folder store.Folder, person bool) map[rules.Fact]string {
	list := map[rules.Fact]string{assess.FactDate: a.now().Format("2006-01-02")}
	if !person {
		return list // what a script says must not hang on what lies in a folder
	}
	last := folder.Newest(lookBack)
	for _, e := range last {
		for _, f := range usual {
			if old := habit(e.Visit, f); old != "" && list[f] == "" {
				list[f] = old
			}
		}
	}
	for _, e := range last { // in a folder of several reps, nobody's name is the usual one
		if other := habit(e.Visit, assess.FactRep); other != "" && other != list[assess.FactRep] {
			delete(list, assess.FactRep)
			break
		}
	}
	return list
}

// habit is what a visit says to one of these questions, "" if it does not, or if
// the question does not offer it.
func habit(v *assess.Visit, f rules.Fact) string {
	a, _ := v.Answer(rules.Asked{Fact: f})
	switch {
	case v.Demo:
		return ""
	case len(a.Chosen) == 0:
		return said(v, f)
	}
	q, _ := assess.Find(f)
	if slices.ContainsFunc(q.Options, func(o assess.Option) bool { return o.ID == a.Chosen[0] }) {
		return a.Chosen[0]
	}
	return ""
}
