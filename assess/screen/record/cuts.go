package record

import (
	"errors"

	"cutbrief/assess"
	"cutbrief/assess/sanitize"
	"cutbrief/report"
	"cutbrief/rules/unit"
)

var resultChoices = []choice{{"good", "good"}, {"fair", "fair"}, {"poor", "poor"}, {"not", "not shown"}}

// cuts asks after each cut of the plan.
func (s *session) cuts() {
	if s.Bench.SystemID != "" && len(s.showing.Cuts) == 0 {
		s.showing.System = s.Bench.SystemID
	}
	for i := range s.Bench.Steps {
		if s.over {
			return
		}
		s.cut(i+1, &s.Bench.Steps[i])
	}
}

func (s *session) cut(number int, step *report.Step) {
	c, known := s.showing.Find(step.ID)
	now := "not shown"
	if known {
		now = string(c.Result)
	}
	s.say("\n%d of %d. %s: %s", number, len(s.Bench.Steps), step.Cut, step.Piece)
	typed := s.choose("  How did it go? 1 good, 2 fair, 3 poor or 4 not shown", now, resultChoices)
	if typed == "not" && known {
		s.showing.Drop(step.ID)
		s.changed = true
	}
	if typed == "not" || typed == "" && !known {
		return
	}
	if !known {
		c = step.Shown()
	}
	if typed != "" {
		c.Result = assess.Result(typed)
	}
	s.shown(c)
	s.keep(&c.Why, s.ask("  Why? In a few words", c.Why))
	s.shown(c)
	if step.Timed {
		s.time(&c, step)
	}
}

// shown puts a cut into the record.
func (s *session) shown(c assess.ShownCut) {
	s.showing.Keep(c)
	s.changed = true
}

// time asks for the length and the seconds, and says at once how they compare.
func (s *session) time(c *assess.ShownCut, step *report.Step) {
	if v, ok := s.quantity("  How long was the cut?", figureOf(c.Length, unit.Thickness, s.Bench.Style), unit.Thickness); ok {
		c.Length = unit.Known(unit.Millimetre(v))
		c.Predicted = step.For(unit.Millimetre(v))
		s.shown(*c)
	}
	if v, ok := s.quantity("  How many seconds did it take?", figureOf(c.Took, unit.Time, s.Bench.Style), unit.Time); ok {
		c.Took = unit.Known(unit.Second(v))
		s.shown(*c)
	}
	if text := report.Measured(*c, s.Bench.Style); !text.IsEmpty() {
		s.say("  It %s.", text)
	}
}

// figureOf writes what stands there now, "" if nothing does.
func figureOf[T ~float64](m unit.Maybe[T], k unit.Kind, style unit.Style) string {
	v, known := m.Get()
	if !known {
		return ""
	}
	return unit.Show(unit.Quantity{Value: float64(v), Kind: k}, style, unit.Nearest)
}

// quantity asks until a figure above 0 is typed; false leaves it as it is.
func (s *session) quantity(question, now string, k unit.Kind) (float64, bool) {
	for {
		typed := s.ask(question, now)
		if typed == "" {
			return 0, false
		}
		read, err := unit.Read(typed, k, s.Bench.Style, "")
		if err == nil && read.Quantity.Value > 0 && read.Quantity.Value <= assess.FigureMost {
			return read.Quantity.Value, true
		}
		s.say("  %s", refusal(err))
	}
}

// refusal words why a figure was not taken.
func refusal(err error) string {
	var e *unit.ReadError
	if errors.As(err, &e) && e.Advice != "" {
		return sanitize.Line(e.Error()+"; "+e.Advice) + "."
	}
	if err != nil {
		return sanitize.Line(err.Error()) + "."
	}
	return "A figure above 0 is needed."
}
