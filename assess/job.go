package assess

import (
	"slices"
	"strconv"
	"strings"

	"cutbrief/rules"
	"cutbrief/rules/message"
	"cutbrief/rules/metal"
	"cutbrief/rules/unit"
)

// Problem is one answer that could not be understood, with what would be.
type Problem struct {
	Asked rules.Asked
	Text  message.Message // names the question, the value and what is accepted
}

// Job turns the answers into what the rules need. Answers that cannot be
// understood become problems and stay not known. Answers to questions that no
// longer apply, such as the generator's rating without a generator, are left
// alone; so are those of a metal no longer chosen.
func (v *Visit) Job() (j rules.Job, problems []Problem) {
	problems = v.JobInto(&j)
	return j, problems
}

// JobInto is Job for readers of very many visits: it takes the room of a job that
// there was, which is gone.
func (v *Visit) JobInto(j *rules.Job) (problems []Problem) {
	*j = rules.Job{Overrule: v.Overrule, Pieces: j.Pieces[:0], Doubts: j.Doubts[:0]}
	for _, id := range v.Metals() {
		j.Pieces = append(j.Pieces, rules.Piece{Metal: id})
	}
	week, c, style, place, m := weekly{}, v.circumstances(), v.Style(), 0, meaning{}
	for i := range v.Answers {
		a := &v.Answers[i]
		if place = placeNear(a.Question, place); place == len(catalogue) || a.State == Unknown || !catalogue[place].matters(c) {
			continue
		}
		if err := enter(j, &week, place, a, style, &m); err != nil {
			problems = append(problems, Problem{a.Asked(), message.Of(err)})
		}
	}
	j.CutPerWeek = week.perWeek(j.DaysAWeek)
	j.Annoys = v.annoys(c)
	return problems
}

// enter puts the answer to the question at a place into the job; m is room for
// what it means.
func enter(j *rules.Job, week *weekly, place int, a *Answer, style unit.Style, m *meaning) error {
	q := catalogue[place]
	p := pieceOf(j, a.Metal)
	if q.PerMetal && p == nil {
		return nil
	}
	var err error
	if *m, err = meaningOf(Step{q, a.Metal}, a, style); err != nil {
		return err
	}
	if q.ID == rules.FactCutLength {
		*week = weekly{unit.Known(unit.Metre(m.reading.Quantity.Value)), m.period}
	}
	if put := fields()[place]; put != nil {
		put(j, p, m)
	}
	if d, unsure := doubtOf(q, a, m); unsure {
		j.Doubts = append(j.Doubts, d)
	}
	return nil
}

// How far off an assumed answer may be, as a share of it: a guess by a fifth,
// common practice, no source; a voltage by a tenth about its nominal value, IEC
// 60038 Table 1, note.
const (
	offGuess   = 0.2
	offVoltage = 0.1
)

// doubtOf is what an answer may be instead, where it is a range or is assumed: of
// an assumed choice any of its options, of an assumed figure a share more or less.
// A known zero is in no doubt.
func doubtOf(q *Question, a *Answer, m *meaning) (d rules.Doubt, unsure bool) {
	value := m.reading.Quantity.Value
	if unsure = a.State == Assumed; !unsure && m.least == 0 || !rules.CanBeDoubted(q.ID) {
		return d, false
	}
	d = rules.Doubt{Asked: a.Asked(), Low: m.least, High: value}
	switch off := offGuess; {
	case q.Form == FormOne:
		d.Options = optionNames(q.Options)
	case value == 0:
		return d, false
	case m.least == 0:
		if q.ID == rules.FactVolts {
			off = offVoltage
		}
		d.Low, d.High = value*(1-off), value*(1+off)
	}
	return d, true
}

// meaningOf reads an answer in the form of its question.
func meaningOf(s Step, a *Answer, style unit.Style) (meaning, error) {
	switch s.Question.Form {
	case FormQuantity:
		return understand(s, *a, style)
	case FormOne, FormSeveral:
		return meaning{chosen: a.Chosen}, checkChosen(s, a.Chosen, s.Question.Options, asSaved)
	case FormDate:
		return meaning{}, checkDate(s, a.Said)
	}
	return meaning{}, nil
}

func pieceOf(j *rules.Job, id metal.ID) *rules.Piece {
	if id == "" {
		return nil
	}
	for i := range j.Pieces {
		if j.Pieces[i].Metal == id {
			return &j.Pieces[i]
		}
	}
	return nil
}

// weekly is a cut length with its period.
type weekly struct {
	length unit.Maybe[unit.Metre]
	period string
}

// perWeek turns a day's length into a week's by the days told; without them it
// stays not known.
func (p weekly) perWeek(days unit.Maybe[float64]) unit.Maybe[unit.Metre] {
	length, told := p.length.Get()
	if !told || p.period == perWeek {
		return p.length
	}
	n, told := days.Get()
	if !told {
		return unit.Maybe[unit.Metre]{}
	}
	return unit.Known(length * unit.Metre(n))
}

// annoys lists the complaints in order of weight, each once.
func (v *Visit) annoys(c *circumstances) []rules.Annoyance {
	var list []rules.Annoyance
	for _, f := range [...]rules.Fact{rules.FactAnnoysMost, rules.FactAnnoysNext} {
		i := v.index(rules.Asked{Fact: f})
		if i < 0 {
			continue
		}
		q, a := catalogue[placeOf(f)], &v.Answers[i]
		again := f == rules.FactAnnoysNext && slices.ContainsFunc(a.Chosen, c.annoys.chose)
		if a.State != Unknown && q.matters(c) && !again && checkChosen(Step{Question: q}, a.Chosen, q.Options, asSaved) == nil {
			list = append(list, rules.Annoyance(a.Chosen[0]))
		}
	}
	return list
}

// Quantity is what an answer comes to beside the others of the visit, in the unit
// of its kind: a cut length for a week, by the days told. It is not known where
// the answer is none, or cannot be understood.
func (v *Visit) Quantity(a Answer) unit.Maybe[unit.Quantity] {
	q, known := Find(a.Question)
	if !known || a.State == Unknown || q.Form != FormQuantity {
		return unit.Maybe[unit.Quantity]{}
	}
	m, err := meaningOf(Step{q, a.Metal}, &a, v.Style())
	if err != nil {
		return unit.Maybe[unit.Quantity]{}
	}
	value := m.reading.Quantity
	if q.ID == rules.FactCutLength {
		j, _ := v.Job()
		length, told := weekly{unit.Known(unit.Metre(value.Value)), m.period}.perWeek(j.DaysAWeek).Get()
		if !told {
			return unit.Maybe[unit.Quantity]{}
		}
		value.Value = float64(length)
	}
	return unit.Known(value)
}

// AppendBasis appends all that Job and Steps depend on, and which steps have an
// answer. Visits for which it is the same are judged alike.
func (v *Visit) AppendBasis(out []byte) []byte {
	place := 0
	for i := range v.Answers {
		a := &v.Answers[i]
		if place = placeNear(a.Question, place); place == len(catalogue) {
			continue
		}
		q := catalogue[place]
		out = append(out, byte(place)+3) // no mark that stands below
		if said := q.Form == FormText || q.Form == FormLong; said || q.Form == FormDate && checkDate(Step{Question: q}, a.Said) == nil {
			continue // nothing is worked out from it
		}
		for _, part := range [...]string{string(a.Metal), string(a.State), a.Said, a.Unit} {
			out = append(append(out, part...), 0)
		}
		for _, id := range a.Chosen {
			out = append(append(out, id...), 1)
		}
		out = append(out, 0)
	}
	for _, g := range v.Skipped {
		out = append(append(out, 1), g...)
	}
	if o := v.Overrule; o != nil {
		out = append(append(out, 2), o.Requirement...)
		out = strconv.AppendBool(out, strings.TrimSpace(o.Reason) != "")
	}
	return out
}
