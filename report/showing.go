package report

import (
	"strings"
	"time"

	"cutbrief/assess"
	"cutbrief/rules/cite"
	"cutbrief/rules/demonstration"
	"cutbrief/rules/message"
	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// resultWords word how a cut went.
var resultWords = map[assess.Result]message.ID{assess.Good: "went well", assess.Fair: "went fairly", assess.Poor: "went poorly"}

// outcomeWords word how a demonstration ended.
var outcomeWords = map[assess.Outcome]message.ID{
	assess.Ordered: "an order", assess.Quote: "a quote is wanted", assess.SecondVisit: "a second visit is wanted", assess.No: "no",
}

// shown words every demonstration held, the last one last: how each cut went
// and its time against the prediction, what was said, and what comes next.
func (b *builder) shown() []Line {
	var list []Line
	for i := range b.visit.Demonstrations {
		s := &b.visit.Demonstrations[i]
		list = append(list, b.line(msg("Shown on"), b.shownWith(s)))
		for _, c := range s.Cuts {
			line := b.line(b.shownName(c), message.And(resultWords[c.Result].Message(), Measured(c, b.style)).Or(msg("shown")), outside(c.Why))
			if c.Took.IsKnown() && c.Predicted.IsKnown() {
				line.Source = b.cited(cite.Ref{Source: "practice-setting"}) // what the band rests on
			}
			list = append(list, line)
		}
		list = append(list, b.cameOfIt(s)...)
	}
	return list
}

// shownWith says when a demonstration was, and with which system.
func (b *builder) shownWith(s *assess.Demonstration) message.Message {
	on, with := savedDay(s.Date), msg("{1} (not in this range)", outside(s.System))
	if found, ok := b.offered.Find(s.System); ok {
		with = outside(found.Name)
	}
	return when(s.System != "", "{1}, with {2}", on, with).Or(on)
}

// cameOfIt words what was said and agreed.
func (b *builder) cameOfIt(s *assess.Demonstration) []Line {
	var list []Line
	add := func(label message.ID, value, why message.Message) {
		if !value.IsEmpty() {
			list = append(list, b.line(label.Message(), value, why))
		}
	}
	add("Customer said", outside(s.Words), message.Message{})
	for _, o := range s.Objections {
		add("Objection", outside(o.Said), when(o.Answer != "", "Answer: {1}", outside(o.Answer)))
	}
	add("Outcome", outcomeWords[s.Outcome].Message(), outside(s.Because))
	next := message.Join("; ", outside(strings.TrimSuffix(s.Next.Step, ".")), outside(s.Next.Owner))
	switch {
	case s.Next.Date == "":
	case next.IsEmpty():
		next = msg("due {1}", savedDay(s.Next.Date))
	default:
		next = msg("{1}; by {2}", next, savedDay(s.Next.Date))
	}
	add("Next", next, message.Message{})
	return list
}

// shownName is what a cut was called, with its piece where it was noted: one of
// our cuts in the words of the page.
func (b *builder) shownName(c assess.ShownCut) message.Message {
	name := outside(c.Name).Or(outside(c.Cut))
	for _, row := range demonstration.Cuts() {
		if row.ID == c.Cut && row.Name != "" && string(row.Name) == c.Name {
			name = row.Name.Message()
		}
	}
	if t, ok := c.Thickness.Get(); ok && c.Metal != "" {
		return message.Join(", ", name, b.pieceOf(c.Metal, t))
	}
	return name
}

// Measured words the time a cut took: its length and speed, the prediction, and
// how the two compare. It is empty if no time was taken.
func Measured(c assess.ShownCut, style unit.Style) message.Message {
	took, timed := c.Took.Get()
	if !timed {
		return message.Message{}
	}
	show := func(q unit.Quantity) message.Message { return message.Number(unit.Show(q, style, unit.Nearest)) }
	length, measured := c.Length.Get()
	v, reached := demonstration.Reached(length, took).Get()
	time, far := show(seconds(took)), show(millimetres(length))
	text := when(measured && reached, "took {1} for {2} ({3})", time, far, show(speed(v))).
		Or(when(measured, "took {1} for {2}", time, far)).Or(msg("took {1}", time))
	predicted, known := c.Predicted.Get()
	if pace, ok := demonstration.Compare(took, predicted); known && ok {
		return message.Join(", ", text, msg("{1} predicted: {2}", show(seconds(predicted)), worded(pace)))
	}
	return text
}

// FollowUp is what comes after the last demonstration, in recorded facts alone.
// Its renderers are report/calendar and report/text.
type FollowUp struct {
	ID       string    // of the visit: stable
	Revision int       // of the visit: grows with every save
	Saved    time.Time // when the visit was last saved
	Demo     bool      // invented
	Customer string
	Contact  string
	Place    string
	Rep      string
	Shown    string // when, and with which system
	Held     time.Time
	Cuts     []Line // what was shown, how it went, and the time it took
	Words    string
	Answered []Line // objections with their answers
	Outcome  assess.Outcome
	Because  string
	Step     string
	Owner    string
	Due      time.Time // zero if no date was agreed

	Book *message.Catalog // the texts are worded by; nil for our own words
}

// ErrNotShown means that no demonstration is recorded.
var ErrNotShown = message.Errorf("no demonstration is recorded")

// Follow collects what follows the last demonstration of a visit. It fails with
// ErrNotShown if none is recorded.
func Follow(v *assess.Visit, offered system.Range, o Options) (FollowUp, error) {
	s := v.Latest()
	if s == nil {
		return FollowUp{}, ErrNotShown
	}
	b := newBuilder(v, &offered, o)
	text := func(s string) string { return b.print(outside(s)) }
	f := FollowUp{
		ID: v.ID, Revision: v.Revision, Saved: v.Updated, Demo: v.Demo, Book: o.Words,
		Customer: text(b.answer(assess.FactCompany)), Contact: text(b.answer(assess.FactContact)),
		Place: text(b.answer(assess.FactPlace)), Rep: text(b.answer(assess.FactRep)),
		Shown: b.print(b.shownWith(s)), Words: text(s.Words), Outcome: s.Outcome, Because: text(s.Because),
		Step: text(s.Next.Step), Owner: text(s.Next.Owner),
	}
	f.Held, _ = time.Parse(time.DateOnly, s.Date) // zero for a day not noted
	f.Due, _ = time.Parse(time.DateOnly, s.Next.Date)
	for _, c := range s.Cuts {
		took, timed := c.Took.Get()
		length, measured := c.Length.Get()
		f.Cuts = append(f.Cuts, b.line(b.shownName(c), resultWords[c.Result].Message(), when(timed && measured, "{1}", b.lengthIn(length, took))))
	}
	f.Answered = mapped(s.Objections, func(o *assess.Objection) Line { return b.line(outside(o.Said), outside(o.Answer)) })
	return f, nil
}
