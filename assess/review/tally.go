package review

import "iter"

// Tally is what is counted over the rows a manager looks at.
type Tally struct {
	Files, Unread int    // rows, and those of them that could not be read
	First, Last   string // days of the earliest and the latest visit counted; "" if none has a day

	All          Pattern
	Raised       []Count   // flags over all rows, by identifier and gravest first: the base is Files
	Requirements []Pattern // the same visits by what decides
	Systems      []Pattern // and by system
	By           string    // and by the column asked for, "" if none is
	Groups       []Pattern
}

// TallyOf counts rows in one pass: Files is Unread and All.Visits together. It keeps no row, and names no rep and no customer unless by is such a
// column.
func TallyOf(rows iter.Seq[*Row], by *Field) Tally {
	t := Tally{}
	all := newCounter("")
	critical, _ := FindField("critical")
	system, _ := FindField("system")
	requirements, systems, asked := newGroups(critical), newGroups(system), &groups{}
	if by != nil {
		t.By, asked = by.ID, newGroups(*by)
	}
	var raised [flags]int
	for r := range rows {
		t.Files++
		for _, f := range r.Flags.list() {
			raised[f]++
		}
		if r.Stage == Unread {
			t.Unread++
			continue
		}
		t.span(r.Date)
		all.add(r)
		requirements.add(r)
		systems.add(r)
		if by != nil {
			asked.add(r)
		}
	}
	for f, n := range raised {
		if n > 0 {
			t.Raised = append(t.Raised, Count{kinds[f].ID, n})
		}
	}
	t.All, t.Requirements, t.Systems, t.Groups = all.pattern(), requirements.patterns(), systems.patterns(), asked.patterns()
	return t
}

// span widens the days that are covered.
func (t *Tally) span(day string) {
	if day == "" {
		return
	}
	if t.First == "" || day < t.First {
		t.First = day
	}
	t.Last = max(t.Last, day)
}
