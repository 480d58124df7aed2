package rules

import (
	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// Stretch is a part of a scale of one figure in which one system leads.
type Stretch struct {
	From, To unit.Quantity
	System   *system.System // nil: none of the range fits
	Status   Status
}

// Figure is a figure that a job tells and a recommendation may hang on; not known
// for any other answer.
func (j *Job) Figure(a Asked) unit.Maybe[unit.Quantity] {
	row, p := answerOf(a.Fact), j.pieceOf(a)
	if row == nil || row.value == nil || row.perMetal && p == nil || !row.known(j, p) {
		return unit.Maybe[unit.Quantity]{}
	}
	return unit.Known(row.input(j, p).Value)
}

// Scale says which system would lead as one figure that a job tells moves, all
// other answers as they are: from a third of some figure to three times as much,
// and as far as is plausible around zero. The stretches follow one another; there
// is none for an answer that is no such figure.
func Scale(job Job, a Asked, around float64, offered system.Range) []Stretch {
	inCurrency(&job, offered.Currency)
	now, known := job.Figure(a).Get()
	if !known {
		return nil
	}
	row := answerOf(a.Fact)
	low, high := around/3, around*3
	if around == 0 {
		high = max(row.ends[easiest], row.ends[hardest])
	}
	var room copied
	lead := func(v float64) conclusion {
		moved := room.of(&job)
		row.value(moved, moved.pieceOf(a), v)
		c := conclude(moved, offered.Systems)
		c.decide = ""
		return c
	}
	var list []Stretch
	for _, s := range stretches(low, high, lead) {
		item := Stretch{unit.Quantity{Value: s.from, Kind: now.Kind}, unit.Quantity{Value: s.to, Kind: now.Kind}, nil, standing[s.is.status]}
		if s.is.first >= 0 {
			item.System = &offered.Systems[s.is.first]
		}
		list = append(list, item)
	}
	return list
}
