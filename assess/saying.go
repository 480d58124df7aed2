package assess

import (
	"strings"

	"cutbrief/assess/sanitize"
	"cutbrief/rules/message"
)

// Shown is an answer to the question in one line, as said or as chosen.
func (q *Question) Shown(a Answer) message.Message {
	switch {
	case a.State == Unknown:
		return message.New("not known")
	case len(a.Chosen) == 0:
		return q.Said(strings.TrimSpace(a.Said + " " + a.Unit))
	}
	list := make([]message.Message, len(a.Chosen))
	for i, id := range a.Chosen {
		list[i] = q.option(id)
	}
	return message.Join(", ", list...)
}

// option is what an option is called.
func (q *Question) option(id string) message.Message {
	for _, o := range q.Options {
		if o.ID == id {
			return o.Text.Message()
		}
	}
	return message.Text(sanitize.Line(id))
}

// Said is a text said to the question in one line. In a quantity the words of ours are
// worded: none, about, a day, a week.
func (q *Question) Said(text string) message.Message {
	text = sanitize.Line(text)
	if q.Form != FormQuantity {
		return message.Text(text)
	}
	if strings.EqualFold(text, "none") {
		return message.New("none")
	}
	figure, about := strings.CutPrefix(text, "about ")
	m := message.Text(figure)
	if length, found := strings.CutSuffix(figure, " a day"); found {
		m = message.New("{1} a day", message.Name(length))
	} else if length, found := strings.CutSuffix(figure, " a week"); found {
		m = message.New("{1} a week", message.Name(length))
	}
	if about {
		return message.New("about {1}", m)
	}
	return m
}

// PlaceInGroup is the step's place among those of its group, counted from 1, and
// how many these are.
func (s Step) PlaceInGroup(steps []Step) (at, of int) {
	for _, other := range steps {
		if other.Question.Group == s.Question.Group {
			of++
			if other.Asked() == s.Asked() {
				at = of
			}
		}
	}
	return at, of
}
