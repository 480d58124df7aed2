package report

import (
	"cmp"
	"math"
	"slices"
	"strconv"
	"strings"
	"time"

	"cutbrief/assess"
	"cutbrief/assess/sanitize"
	"cutbrief/rules"
	"cutbrief/rules/cite"
	"cutbrief/rules/message"
	"cutbrief/rules/metal"
	"cutbrief/rules/unit"
)

// msg is a message with its arguments.
func msg(id message.ID, args ...any) message.Message { return message.New(id, args...) }

// when is a message where a condition holds, and nothing elsewhere.
func when(ok bool, id message.ID, args ...any) message.Message {
	if !ok {
		return message.Message{}
	}
	return message.New(id, args...)
}

// worded is a text of one of the program's tables, or the identifier of a status
// or a kind, as a message.
func worded[T ~string](text T) message.Message { return message.ID(text).Message() }

// outside is a text from a visit or a file on one line, fit for a terminal.
func outside(s string) message.Message { return message.Text(sanitize.Line(s)) }

// outsideLines are the lines of a text from outside, without empty ones.
func outsideLines(s string) []message.Message {
	var list []message.Message
	for l := range strings.SplitSeq(sanitize.Lines(s), "\n") {
		if l = strings.TrimSpace(l); l != "" {
			list = append(list, message.Text(l))
		}
	}
	return list
}

// print puts a message into the words of the options. Every text that leaves the
// package comes from here, and is printed when it is put into its field.
func (b *builder) print(m message.Message) string { return b.words.Print(m) }

// prints are messages printed one by one, without empty ones.
func (b *builder) prints(list ...message.Message) []string {
	var texts []string
	for _, m := range list {
		if text := b.print(m); text != "" {
			texts = append(texts, text)
		}
	}
	return texts
}

// line is a labelled fact.
func (b *builder) line(label, value message.Message, why ...message.Message) Line {
	return Line{Label: b.print(label), Value: b.print(value), Why: b.print(message.Join(" ", why...))}
}

// from adds what a line rests on.
func (b *builder) from(l Line, r cite.Ref) Line {
	l.Source, l.Trust = b.cited(r), b.trusted(r)
	return l
}

// requirementNames word the requirements for a customer.
var requirementNames = map[rules.Requirement]message.ID{
	rules.Speed:       "cutting speed",
	rules.Distortion:  "low distortion",
	rules.EdgeQuality: "edge quality",
	rules.Ease:        "ease of use",
	rules.RunningCost: "running cost",
	rules.Portability: "portability",
	rules.Reach:       "reach in heavy section",
	rules.AcrossGaps:  "cutting across gaps",
}

// RequirementName is what a requirement is called on screens and pages.
func RequirementName(r rules.Requirement) message.ID {
	return cmp.Or(requirementNames[r], message.ID(r))
}

// deciding are the requirements that decide, the first and those as strong; none
// while it is not clear.
func (b *builder) deciding() []message.Message {
	c := &b.result.Critical
	if c.Requirement == "" {
		return nil
	}
	return mapped(append([]rules.Requirement{c.Requirement}, c.Tie...), func(r *rules.Requirement) message.Message { return RequirementName(*r).Message() })
}

// decides names what decides, or says that it is not clear yet.
func (b *builder) decides() message.Message {
	return message.Or(b.deciding()...).Or(msg("not clear yet"))
}

func metalName(id metal.ID) message.Message {
	if m, ok := metal.Find(id); ok {
		return m.Name.Message()
	}
	return outside(string(id))
}

// askedName is what a step is called in lists: "thickest clean cut, stainless".
func askedName(a rules.Asked) message.Message {
	q, ok := assess.Find(a.Fact)
	if !ok {
		return outside(string(a.Fact))
	}
	return assess.Step{Question: q, Metal: a.Metal}.Name()
}

// told, requirements and capabilities write a number rounded to its safe side.
func (b *builder) told(q unit.Quantity) message.Message   { return b.show(q, unit.Nearest) }
func (b *builder) needed(q unit.Quantity) message.Message { return b.show(q, unit.Up) }
func (b *builder) given(q unit.Quantity) message.Message  { return b.show(q, unit.Down) }

func (b *builder) show(q unit.Quantity, r unit.Round) message.Message {
	return message.Number(b.figure(q, r))
}

// figure adds what the range knows, the currency, and keeps two decimals of a
// plain factor: 1.25 is not 1.3.
func (b *builder) figure(q unit.Quantity, r unit.Round) string {
	if q.Kind == unit.Thickness && b.style == unit.Inch {
		q, r = inchFraction(q, r)
	}
	switch {
	case q.Kind == unit.None:
		return strconv.FormatFloat(math.Round(q.Value*100)/100, 'f', -1, 64)
	case q.Kind == unit.Price && b.offered.Currency != "":
		return sanitize.Line(b.offered.Currency) + " " + unit.Show(q, b.style, r)
	}
	return unit.Show(q, b.style, r)
}

// quantity gives a value of a rule its kind.
func quantity[T ~float64](v T, kind unit.Kind) unit.Quantity {
	return unit.Quantity{Value: float64(v), Kind: kind}
}

func millimetres(t unit.Millimetre) unit.Quantity { return quantity(t, unit.Thickness) }
func amperes(a unit.Ampere) unit.Quantity         { return quantity(a, unit.Current) }
func seconds(t unit.Second) unit.Quantity         { return quantity(t, unit.Time) }
func speed(v unit.MillimetrePerMinute) unit.Quantity {
	return quantity(v, unit.Speed)
}

// Bounds in inches of how finely a thickness is said aloud. Common practice, no
// source: sheet goes by gauge or thousandths, thin plate by thirty-seconds, and
// plate by sixteenths.
const (
	plateFrom = 0.25
	heavyFrom = 0.5
)

// inchFraction rounds a thickness as a rep says it in inches: to 1/32 from 1/4
// in on and to 1/16 from 1/2 in on, up for a need and down for a capability. The
// direction it returns is what is left to do. Sheet, and what was told as a
// 64th, stay as they are.
// Check: 16 mm needed is 11/16 in, given is 5/8 in; 10 mm told is 13/32 in.
func inchFraction(q unit.Quantity, r unit.Round) (unit.Quantity, unit.Round) {
	const inch, finest, lastDigit = 25.4, 64, 1e-6
	onStep := func(n float64) bool { return math.Abs(n-math.Round(n)) < lastDigit }
	v, steps := q.Value/inch, 32.0
	if v >= heavyFrom {
		steps = 16
	}
	if !(v >= plateFrom) || onStep(v*steps) || r == unit.Nearest && onStep(v*finest) {
		return q, r
	}
	n := math.Round(v * steps)
	switch r {
	case unit.Up:
		n = math.Ceil(v * steps)
	case unit.Down:
		n = math.Floor(v * steps)
	}
	return millimetres(unit.Millimetre(n / steps * inch)), unit.Nearest
}

// cited writes a reference for a reader.
func (b *builder) cited(r cite.Ref) string { return b.print(r.Message()) }

// trusted is the kind of trust behind a reference.
func (b *builder) trusted(r cite.Ref) string {
	s, _ := r.Find()
	return b.print(worded(s.Trust))
}

// months are dates by month: a day, and a year.
var months = [...]message.ID{
	"{1} January {2}", "{1} February {2}", "{1} March {2}", "{1} April {2}", "{1} May {2}", "{1} June {2}",
	"{1} July {2}", "{1} August {2}", "{1} September {2}", "{1} October {2}", "{1} November {2}", "{1} December {2}",
}

// Day writes a date so that no reader takes a month for a day.
func Day(t time.Time) message.Message {
	if t.IsZero() {
		return msg("not known")
	}
	return msg(months[t.Month()-1], message.Name(strconv.Itoa(t.Day())), message.Name(strconv.Itoa(t.Year())))
}

// savedDay is a date as it is saved; one that is missing is said so.
func savedDay(date string) message.Message {
	t, err := time.Parse(time.DateOnly, date)
	if err != nil {
		return msg("no date yet")
	}
	return Day(t)
}

// mapped is a list with every item in another form.
func mapped[T, U any](list []T, of func(*T) U) []U {
	var others []U
	for i := range list {
		others = append(others, of(&list[i]))
	}
	return others
}

// unique drops repeated texts, keeping the first.
func unique(texts []string) []string {
	var list []string
	for _, t := range texts {
		if !slices.Contains(list, t) {
			list = append(list, t)
		}
	}
	return list
}
