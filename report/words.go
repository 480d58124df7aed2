package report

import (
	"math"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"cutbrief/assess"
	"cutbrief/rules"
	"cutbrief/rules/cite"
	"cutbrief/rules/message"
	"cutbrief/rules/metal"
	"cutbrief/rules/unit"
)

// requirementNames word the requirements for a customer.
var requirementNames = map[rules.Requirement]string{
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
func RequirementName(r rules.Requirement) string {
	if name, ok := requirementNames[r]; ok {
		return name
	}
	return string(r)
}

func metalName(id metal.ID) string {
	if m, ok := metal.Find(id); ok {
		return string(m.Name)
	}
	return string(id)
}

// askedName is what a step is called in lists: "thickest clean cut, stainless".
func askedName(a rules.Asked) string {
	q, ok := assess.Find(a.Fact)
	if !ok {
		return string(a.Fact)
	}
	return assess.Step{Question: q, Metal: a.Metal}.Name().String()
}

// told, needed and given write a number rounded to its safe side.
func (b *builder) told(q unit.Quantity) string   { return b.show(q, unit.Nearest) }
func (b *builder) needed(q unit.Quantity) string { return b.show(q, unit.Up) }
func (b *builder) given(q unit.Quantity) string  { return b.show(q, unit.Down) }

// show adds what the range knows, the currency, and keeps two decimals of a
// plain factor: 1.25 is not 1.3.
func (b *builder) show(q unit.Quantity, r unit.Round) string {
	if q.Kind == unit.Thickness && b.style == unit.Inch {
		q, r = inSixteenths(q, r)
	}
	switch text := unit.Show(q, b.style, r); {
	case q.Kind == unit.None:
		return strconv.FormatFloat(math.Round(q.Value*100)/100, 'f', -1, 64)
	case q.Kind == unit.Price && b.offered.Currency != "":
		return clean(b.offered.Currency) + " " + text
	default:
		return text
	}
}

func millimetres(t unit.Millimetre) unit.Quantity {
	return unit.Quantity{Value: float64(t), Kind: unit.Thickness}
}

func amperes(a unit.Ampere) unit.Quantity {
	return unit.Quantity{Value: float64(a), Kind: unit.Current}
}

// capital starts a text with a capital letter.
func capital(s string) string {
	r, n := utf8.DecodeRuneInString(s)
	if n == 0 {
		return s
	}
	return string(unicode.ToUpper(r)) + s[n:]
}

// stop ends a sentence with a full stop.
func stop(s string) string {
	if end := message.Bare(s); end == "" || strings.ContainsAny(end[len(end)-1:], ".!?") {
		return s
	}
	return s + "."
}

// series joins words as a sentence does: "a, b and c".
func series(words []string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:len(words)-1], ", ") + " and " + words[len(words)-1]
}

// cited writes a reference for a reader, a clause in brackets closed up as the
// rules themselves print it. The title of a document is not ours to word.
func cited(r cite.Ref) string {
	text := strings.ReplaceAll(r.String(), ", (", "(")
	s, _ := r.Find()
	for _, name := range []string{s.Title, r.Clause} {
		if first, _ := utf8.DecodeRuneInString(name); name != "" && !unicode.IsLower(first) {
			text = strings.Replace(text, name, message.Keep(name), 1)
		}
	}
	return text
}

// trusted is the kind of trust behind a reference.
func trusted(r cite.Ref) string {
	s, ok := r.Find()
	if !ok {
		return ""
	}
	return string(s.Trust)
}
