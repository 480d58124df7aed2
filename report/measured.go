package report

import (
	"strings"
	"time"

	"cutbrief/assess"
	"cutbrief/rules/cite"
	"cutbrief/rules/demonstration"
	"cutbrief/rules/unit"
)

// resultWords word how a cut went.
var resultWords = map[assess.Result]string{assess.Good: "went well", assess.Fair: "went fairly", assess.Poor: "went poorly"}

// outcomeWords word how a demonstration ended.
var outcomeWords = map[assess.Outcome]string{
	assess.Ordered: "an order", assess.Quote: "a quote is wanted", assess.SecondVisit: "a second visit is wanted", assess.No: "no",
}

// shown words every demonstration held, the last one last: how each cut went
// and its time against the prediction, what was said, and what comes next.
func (b *builder) shown() []Line {
	var list []Line
	for i := range b.visit.Showings {
		s := &b.visit.Showings[i]
		list = append(list, Line{Label: "Shown on", Value: dayOf(s.Date) + b.shownWith(s.System)})
		for _, c := range s.Cuts {
			list = append(list, b.shownCut(c))
		}
		list = append(list, saidThen(s)...)
	}
	return list
}

// shownCut words one cut; a time that was compared says what the band rests on.
func (b *builder) shownCut(c assess.Shown) Line {
	line := Line{Label: b.shownName(c), Value: b.wentHow(c), Why: plain(c.Why)}
	if c.Took.IsKnown() && c.Predicted.IsKnown() {
		line.Source = cited(cite.Ref{Source: "practice-setting"})
	}
	return line
}

// shownWith names the system shown.
func (b *builder) shownWith(id string) string {
	if id == "" {
		return ""
	}
	if s, ok := b.offered.Find(id); ok {
		return ", with " + plain(s.Name)
	}
	return ", with " + plain(id) + " (not in this range)"
}

// saidThen words what was said and agreed.
func saidThen(s *assess.Showing) []Line {
	list := addLine(nil, "They said", plain(s.Words))
	for _, o := range s.Objections {
		line := Line{Label: "Spoke against it", Value: plain(o.Said)}
		if answer := plain(o.Answer); answer != "" {
			line.Why = "Answered: " + answer
		}
		list = append(list, line)
	}
	if words := outcomeWords[s.Outcome]; words != "" {
		list = append(list, Line{Label: "It ended with", Value: words, Why: plain(s.Because)})
	}
	return addLine(list, "Next", nextWords(s.Next))
}

// nextWords is the next step with its owner and date.
func nextWords(n assess.Next) string {
	var parts []string
	for _, part := range []string{plain(strings.TrimSuffix(clean(n.Step), ".")), plain(n.Owner)} {
		if part != "" {
			parts = append(parts, part)
		}
	}
	if n.Date != "" {
		parts = append(parts, "by "+dayOf(n.Date))
	}
	return strings.Join(parts, "; ")
}

// dayOf words a saved date; one that is missing is said so.
func dayOf(date string) string {
	t, err := time.Parse(time.DateOnly, date)
	if err != nil {
		return "a day not noted"
	}
	return day(t)
}

// shownName is what a cut was called, with its piece where it was noted.
func (b *builder) shownName(c assess.Shown) string {
	name := plain(c.Name)
	if name == "" {
		name = plain(c.Cut)
	}
	if t, ok := c.Thickness.Get(); ok && c.Metal != "" {
		return name + ", " + b.pieceOf(c.Metal, t)
	}
	return name
}

// wentHow words a cut's result and its time.
func (b *builder) wentHow(c assess.Shown) string {
	var parts []string
	if words := resultWords[c.Result]; words != "" {
		parts = append(parts, words)
	}
	if text := Measured(c, b.style); text != "" {
		parts = append(parts, text)
	}
	if len(parts) == 0 {
		return "shown"
	}
	return series(parts)
}

// Measured words the time a cut took: its length and speed, the prediction, and
// how the two compare. It is "" if no time was taken.
func Measured(c assess.Shown, style unit.Style) string {
	took, timed := c.Took.Get()
	if !timed {
		return ""
	}
	show := func(q unit.Quantity) string { return unit.Show(q, style, unit.Nearest) }
	text := "took " + show(secs(took))
	if length, ok := c.Length.Get(); ok {
		text += " for " + show(millimetres(length))
		if v, ok := demonstration.Reached(length, took).Get(); ok {
			text += " (" + show(unit.Quantity{Value: float64(v), Kind: unit.Speed}) + ")"
		}
	}
	predicted, known := c.Predicted.Get()
	if pace, ok := demonstration.Compare(took, predicted); known && ok {
		text += ", " + show(secs(predicted)) + " predicted: " + string(pace)
	}
	return text
}
