package store

import (
	"slices"

	"cutbrief/assess"
	"cutbrief/rules"
	"cutbrief/rules/message"
)

// lookBack is how many of the last visits are asked for what is usual.
const lookBack = 5

// usual are the facts that a new visit offers as they were at the rep's last one.
// They are about the rep's own habit; nothing a customer said is ever among them.
var usual = []rules.Fact{assess.FactRep, assess.FactUnits}

// Usual is what a new visit offers of the newest ones in the folder: who made
// them and in which units. In a folder of several reps nobody's name is the usual
// one, and invented visits are left out.
func (f Folder) Usual() map[rules.Fact]string {
	list := map[rules.Fact]string{}
	last := f.Newest(lookBack)
	for _, e := range last {
		for _, fact := range usual {
			if old := habit(e.Visit, fact); old != "" && list[fact] == "" {
				list[fact] = old
			}
		}
	}
	if slices.ContainsFunc(last, func(e Entry) bool {
		other := habit(e.Visit, assess.FactRep)
		return other != "" && other != list[assess.FactRep]
	}) {
		delete(list, assess.FactRep)
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
		return string(shown(a.Said))
	}
	q, _ := assess.Find(f)
	if slices.ContainsFunc(q.Options, func(o assess.Option) bool { return o.ID == a.Chosen[0] }) {
		return a.Chosen[0]
	}
	return ""
}

// Learn counts the answers of the visits in a folder and below, which then order
// the questions; learned says so. Invented visits are left out.
func Learn(dir string) (usual assess.Priors, learned message.Message, err error) {
	files, err := Visits(dir)
	if err != nil {
		return nil, learned, message.WithHint(message.Errorf("learn from {1}: {2}", shown(dir), err), "name a folder of saved visits")
	}
	visits := 0
	usual, questions := assess.Learn(func(yield func(*assess.Visit) bool) {
		for _, file := range files {
			if v, _, err := Load(file); err == nil && !v.Demo {
				if visits++; !yield(v) {
					return
				}
			}
		}
	})
	if questions == 0 {
		return nil, message.New("Nothing is learned from {1}: no question is answered often enough in its {2} visits. Invented ones are left out.",
			shown(dir), message.Count(visits)), nil
	}
	return usual, message.New("The order of questions follows the answers of {1} visits in {2}, counted for {3} questions; nothing else is taken from them.",
		message.Count(visits), shown(dir), message.Count(questions)), nil
}
