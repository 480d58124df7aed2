package report

import (
	"time"

	"cutbrief/assess"
	"cutbrief/rules"
	"cutbrief/rules/message"
)

// words is what was said to one of the visit's own questions, cleaned; "" if
// nothing was.
func (b *builder) words(f rules.Fact) string {
	a, ok := b.visit.Answer(rules.Asked{Fact: f})
	if !ok || a.State == assess.Unknown {
		return ""
	}
	return plain(a.Said)
}

// date is the day of the visit, or the day the record was started.
func (b *builder) date() time.Time {
	if day, err := time.Parse(time.DateOnly, message.Bare(b.words(assess.FactDate))); err == nil {
		return day
	}
	y, m, d := b.visit.Created.Date()
	return time.Date(y, m, d, 0, 0, 0, 0, time.UTC)
}

// day writes a date so that no reader takes a month for a day.
func day(t time.Time) string {
	if t.IsZero() {
		return "not known"
	}
	return t.Format("2 January 2006")
}

// who lists who and when; a customer without a name is said so.
func (b *builder) who() []Line {
	list := []Line{{Label: "Customer", Value: b.words(assess.FactCompany)}}
	if list[0].Value == "" {
		list[0].Value = "not named"
	}
	list = addLine(list, "Contact", b.words(assess.FactContact))
	list = addLine(list, "Place", b.words(assess.FactPlace))
	list = append(list, Line{Label: "Date", Value: day(b.date())})
	list = addLine(list, "Representative", b.words(assess.FactRep))
	decides := b.words(assess.FactDecides)
	if when := b.words(assess.FactWhen); when != "" && decides != "" {
		decides += ", " + when
	}
	return addLine(list, "Decides", decides)
}

func addLine(list []Line, label, value string) []Line {
	if value == "" {
		return list
	}
	return append(list, Line{Label: label, Value: value})
}

// notes are the customer's own words, the rep's notes, and the notes beside
// single answers, line by line.
func (b *builder) notes() []string {
	var list []string
	if a, ok := b.visit.Answer(rules.Asked{Fact: assess.FactWords}); ok {
		for _, l := range plainLines(a.Said) {
			list = append(list, "“"+l+"”")
		}
	}
	if a, ok := b.visit.Answer(rules.Asked{Fact: assess.FactNotes}); ok {
		list = append(list, plainLines(a.Said)...)
	}
	for _, a := range b.visit.Answers {
		for _, l := range plainLines(a.Note) {
			list = append(list, capital(askedName(a.Asked()))+": "+l)
		}
	}
	return list
}
