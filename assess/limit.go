package assess

import (
	"fmt"

	"cutbrief/rules/message"
	"cutbrief/rules/unit"
)

// limit is the plausible range of a quantity, in its kind's unit. The ranges
// are common practice, no source: they catch a slip of the finger or of the
// unit and decide nothing.
type limit struct{ least, most float64 }

// cuttable is the range of thicknesses: 0.3 mm is thinner than any sheet cut by
// torch, 300 mm thicker than any plate.
var cuttable = limit{0.3, 300}

// within reports whether a value lies in the range; no range holds everything.
func (l limit) within(value float64) bool {
	return l == limit{} || (value >= l.least && value <= l.most)
}

// words says the range for a reader.
func (l limit) words(k unit.Kind, style unit.Style) message.Message {
	show := func(v float64) message.Figure {
		if k == unit.Length && v > 0 && v < 0.01 {
			return message.Figure(fmt.Sprintf("%g mm", 1000*v)) // metres would be rounded
		}
		return message.Figure(unit.Show(unit.Quantity{Value: v, Kind: k}, style, unit.Nearest))
	}
	return message.New("between {1} and {2}", show(l.least), show(l.most))
}

// Range says in words what a quantity may plausibly be, empty if anything.
func (q *Question) Range() message.Message {
	if q.limit == (limit{}) {
		return message.Message{}
	}
	if q.none {
		return message.New("{1}, or none", q.limit.words(q.Kind, unit.Metric))
	}
	return q.limit.words(q.Kind, unit.Metric)
}
