package assess

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"unicode/utf8"

	"cutbrief/rules"
	"cutbrief/rules/metal"
	"cutbrief/rules/unit"
)

// Glance is the little of a visit that a list of very many shows.
type Glance struct {
	Date        string // year-month-day; "" if it is not known
	Company     string
	Rep         string
	Metals      []metal.ID
	Thickest    unit.Maybe[unit.Millimetre] // thickest regular clean cut of any metal
	Answers     int
	Recommended Recommendation // its outcome is "" if none was saved
	Outcome     Outcome        // of the latest demonstration
	Due         string         // day of what is to be done next, by its record

	kept *kept
}

// kept is what one look keeps for the next: very many files say few things.
type kept struct {
	words   map[string]string                      // texts, by how they stand in a file
	lengths map[string]unit.Maybe[unit.Millimetre] // thicknesses, by metal, text, unit and style
	key     []byte
}

// mostKept bounds what is kept.
const mostKept = 2000

// word reads a text through the gate, once for all files.
func (k *kept) word(raw []byte) string {
	if s, ok := k.words[string(raw)]; ok {
		return s
	}
	s := plainText(raw)
	if len(k.words) < mostKept {
		k.words[string(raw)] = s
	}
	return s
}

// length understands a thickness, once for all files; not known if it cannot be.
func (k *kept) length(a *quantityAnswer, style unit.Style) unit.Maybe[unit.Millimetre] {
	k.key = append(append(append(append(append(append(k.key[:0], a.metal...), 0), a.said...), 0), a.unit...), style...)
	if t, ok := k.lengths[string(k.key)]; ok {
		return t
	}
	q, _ := Find(rules.FactThickest)
	said := Answer{Question: q.ID, Metal: metal.ID(plainText(a.metal)), Said: plainText(a.said), Unit: plainText(a.unit)}
	var t unit.Maybe[unit.Millimetre]
	if m, err := understand(Step{q, said.Metal}, said, style); err == nil {
		t = unit.Known(unit.Millimetre(m.reading.Quantity.Value))
	}
	if len(k.lengths) < mostKept {
		k.lengths[string(k.key)] = t
	}
	return t
}

// Look reads into g the little that a list shows. It takes one pass over the
// bytes, and tells a foreign, newer or damaged file as Decode does; but it does
// not check every answer: what Decode would refuse for the sake of one may pass
// here. Room in g is used again.
func (g *Glance) Look(data []byte) error {
	*g = Glance{Metals: g.Metals[:0], kept: g.kept}
	if g.kept == nil {
		g.kept = &kept{words: map[string]string{}, lengths: map[string]unit.Maybe[unit.Millimetre]{}}
	}
	data = bytes.TrimPrefix(data, []byte("\uFEFF"))
	s, ok := into(data, skipSpace(data, 0), 1, '{')
	switch {
	case len(data) > MaxSize:
		return fmt.Errorf("read visit: %d bytes: %w", len(data), ErrTooLarge)
	case !utf8.Valid(data):
		return errors.New("read visit: the file is not UTF-8 text")
	case !ok:
		return g.refuse(data)
	}
	var l look
	for {
		name, more := s.more()
		if !more {
			break
		}
		l.member(g, name, &s)
	}
	if s.broken || skipSpace(data, s.at) != len(data) || !l.sound() {
		return g.refuse(data)
	}
	if string(l.version) == "1" {
		g.Outcome, g.Due = "", ""
	}
	g.understand(&l)
	return nil
}

// look is what a glance keeps until it has seen everything.
type look struct {
	format, version []byte
	answers, odd    bool
	inch            bool
	thickest        []quantityAnswer
	room            [4]quantityAnswer
}

// quantityAnswer is an answer by its parts in the file's bytes.
type quantityAnswer struct{ metal, said, unit []byte }

// sound reports whether nothing was seen that Decode would have to word.
func (l *look) sound() bool {
	return string(l.format) == `"`+formatName+`"` && isVersion(l.version) && l.answers && !l.odd
}

// refuse words what is wrong, as Decode does.
func (g *Glance) refuse(data []byte) error {
	v, _, err := Decode(data)
	if err != nil {
		return err
	}
	*g = v.Glance() // odd, such as a name written in escapes, and fine
	return nil
}

// isVersion reports a version that this program reads, written plainly.
func isVersion(raw []byte) bool {
	return len(raw) == 1 && raw[0] >= '1' && raw[0] <= '0'+formatVersion
}

// escaped reports a name or word written in escapes, which the glance does not
// compare.
func escaped(raw []byte) bool { return bytes.IndexByte(raw, '\\') >= 0 }

func (l *look) member(g *Glance, name []byte, s *steps) {
	switch string(name) {
	case `"format"`:
		l.format = s.value()
	case `"version"`:
		l.version = s.value()
	case `"recommended"`:
		l.recommended(g, s)
	case `"answers"`:
		l.list(g, s)
	case `"showings"`:
		l.showings(g, s)
	default:
		l.odd = l.odd || escaped(name)
		s.value()
	}
}

func (l *look) list(g *Glance, s *steps) {
	items, ok := s.enter('[')
	if !ok || l.answers {
		l.odd = true
		s.value()
		return
	}
	l.answers, l.thickest = true, l.room[:0]
	for {
		if _, more := items.more(); !more {
			break
		}
		l.answer(g, &items)
		g.Answers++
	}
	s.leave(items)
}

// answer looks at one answer; its parts are gathered before its question is
// known for sure.
func (l *look) answer(g *Glance, items *steps) {
	s, ok := l.enter(items, '{')
	if !ok {
		return
	}
	var question, chosen, state []byte
	var a quantityAnswer
	for {
		name, more := s.more()
		if !more {
			break
		}
		value := s.value()
		switch string(name) {
		case `"question"`:
			question = value
		case `"said"`:
			a.said = value
		case `"metal"`:
			a.metal = value
		case `"unit"`:
			a.unit = value
		case `"chosen"`:
			chosen = value
		case `"state"`:
			state = value
		default:
			l.odd = l.odd || escaped(name)
		}
	}
	items.leave(s)
	l.odd = l.odd || escaped(question) || escaped(state) || escaped(chosen)
	if string(state) != `"not-known"` {
		l.keep(g, question, chosen, a)
	}
}

// keep takes from an answer what the list shows.
func (l *look) keep(g *Glance, question, chosen []byte, a quantityAnswer) {
	switch string(question) {
	case `"company"`:
		g.Company = plainText(a.said)
	case `"rep"`:
		g.Rep = g.kept.word(a.said)
	case `"date"`:
		g.Date = g.kept.word(a.said)
	case `"units"`:
		l.inch = bytes.Contains(chosen, []byte(`"in"`))
	case `"metals"`:
		g.takeMetals(chosen)
	case `"thickest-clean"`:
		l.thickest = append(l.thickest, a)
	}
}

func (g *Glance) takeMetals(chosen []byte) {
	s, ok := into(chosen, 0, 1, '[')
	for ok {
		if _, more := s.more(); !more {
			return
		}
		if m, known := metal.Find(metal.ID(g.kept.word(s.value()))); known {
			g.Metals = append(g.Metals, m.ID)
		}
	}
}

// plainText reads a text through the gate.
func plainText(raw []byte) string {
	s, _ := unquote(json.RawMessage(raw))
	return clean(s, false)
}

// enter walks into the value at hand. One of another kind is odd, and passed
// over.
func (l *look) enter(s *steps, opens byte) (in steps, ok bool) {
	if in, ok = s.enter(opens); !ok {
		l.odd = true
		s.value()
	}
	return in, ok
}

// recommended looks at what was recommended.
func (l *look) recommended(g *Glance, s *steps) {
	in, ok := l.enter(s, '{')
	if !ok {
		return
	}
	c := &g.Recommended
	for {
		name, more := in.more()
		if !more {
			break
		}
		value := in.value()
		switch string(name) {
		case `"outcome"`:
			c.Outcome = rules.Outcome(g.kept.word(value))
		case `"system"`:
			c.System = g.kept.word(value)
		case `"firm"`:
			c.Firm = string(value) == "true"
		case `"critical"`:
			c.Critical = rules.Requirement(g.kept.word(value))
		case `"range"`:
			c.Range = g.kept.word(value)
		case `"rules"`:
			c.Rules = count(value)
			l.odd = l.odd || c.Rules < 0
		default:
			l.odd = l.odd || escaped(name)
		}
	}
	s.leave(in)
}

// showings looks at the latest demonstration. Version 1 knew of none.
func (l *look) showings(g *Glance, s *steps) {
	items, ok := l.enter(s, '[')
	if !ok {
		return
	}
	for {
		if _, more := items.more(); !more {
			break
		}
		g.Outcome, g.Due = "", ""
		l.showing(g, &items)
	}
	s.leave(items)
}

func (l *look) showing(g *Glance, items *steps) {
	s, ok := l.enter(items, '{')
	if !ok {
		return
	}
	for {
		name, more := s.more()
		if !more {
			break
		}
		value := s.value()
		switch string(name) {
		case `"outcome"`:
			g.Outcome = Outcome(plainText(value))
		case `"next"`:
			g.Due = l.dueIn(value)
		default:
			l.odd = l.odd || escaped(name)
		}
	}
	items.leave(s)
}

// dueIn is the day in what is to be done next.
func (l *look) dueIn(next []byte) (day string) {
	s, ok := into(next, 0, 1, '{')
	for ok {
		name, more := s.more()
		if !more {
			break
		}
		l.odd = l.odd || escaped(name)
		if value := s.value(); string(name) == `"date"` {
			day = plainText(value)
		}
	}
	return day
}

// count reads a small whole number, −1 for anything else.
func count(raw []byte) int {
	n := 0
	for _, c := range raw {
		if c < '0' || c > '9' || len(raw) > 6 {
			return -1
		}
		n = 10*n + int(c-'0')
	}
	return n
}

// understand reads the thicknesses, now that the units are known.
func (g *Glance) understand(l *look) {
	style := unit.Metric
	if l.inch {
		style = unit.Inch
	}
	for i := range l.thickest {
		if t, known := g.kept.length(&l.thickest[i], style).Get(); known {
			g.thicker(t)
		}
	}
}

func (g *Glance) thicker(t unit.Millimetre) {
	if now, known := g.Thickest.Get(); !known || t > now {
		g.Thickest = unit.Known(t)
	}
}

// Glance returns the little of a visit that a list of very many shows.
func (v *Visit) Glance() Glance {
	g := Glance{Date: v.said(FactDate), Company: v.said(FactCompany), Rep: v.said(FactRep), Metals: v.Metals(), Answers: len(v.Answers)}
	q, _ := Find(rules.FactThickest)
	for _, a := range v.Answers {
		if a.Question != q.ID || a.State == Unknown {
			continue
		}
		if m, err := understand(Step{q, a.Metal}, a, v.Style()); err == nil {
			g.thicker(unit.Millimetre(m.reading.Quantity.Value))
		}
	}
	if v.Recommended != nil {
		g.Recommended = *v.Recommended
	}
	if s := v.Latest(); s != nil {
		g.Outcome, g.Due = s.Outcome, s.Next.Date
	}
	return g
}

// said is what was said to a question asked once.
func (v *Visit) said(f rules.Fact) string {
	a, _ := v.Answer(rules.Asked{Fact: f})
	if a.State == Unknown {
		return ""
	}
	return a.Said
}
