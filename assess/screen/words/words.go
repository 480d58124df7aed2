// Package words is the wording that the full-screen and the plain interview
// share, so that both say the same. It needs no terminal.
package words

import (
	"errors"
	"strconv"
	"strings"

	"cutbrief/assess"
	"cutbrief/assess/sanitize"
	"cutbrief/report"
	"cutbrief/rules"
	"cutbrief/rules/message"
)

// GroupTitle is a group's title.
func GroupTitle(id assess.Group) string {
	for _, g := range assess.Groups() {
		if g.ID == id {
			return string(g.Title)
		}
	}
	return string(id)
}

// Place is the step's place in its group, counted from 1, and how many of the
// steps are in that group.
func Place(steps []assess.Step, s assess.Step) (at, of int) {
	for _, other := range steps {
		if other.Question.Group != s.Question.Group {
			continue
		}
		of++
		if other.Asked() == s.Asked() {
			at = of
		}
	}
	return at, of
}

// Said is an answer in one line, as said or as chosen.
func Said(q *assess.Question, a assess.Answer) string { return message.Bare(Marked(q, a)) }

// Marked is Said, with what is not ours to word marked for a book of phrases.
func Marked(q *assess.Question, a assess.Answer) string {
	switch {
	case a.State == assess.Unknown:
		return "not known"
	case len(a.Chosen) == 0:
		return SaidSo(q, strings.TrimSpace(a.Said+" "+a.Unit))
	}
	var words []string
	for _, id := range a.Chosen {
		words = append(words, optionText(q, id))
	}
	return strings.Join(words, ", ")
}

// SaidSo is what was said to a question, marked for a book of phrases but for the
// words of ours that a quantity may hold: none, about, a day, a week.
func SaidSo(q *assess.Question, said string) string {
	said = sanitize.Line(said)
	if q.Form != assess.FormQuantity {
		return message.Keep(said)
	}
	if strings.EqualFold(said, "none") {
		return "none"
	}
	figure, about := strings.CutPrefix(said, "about ")
	for _, period := range []string{" a day", " a week"} {
		if rest, found := strings.CutSuffix(figure, period); found {
			return hedged(about, message.Keep(rest)+period)
		}
	}
	return hedged(about, message.Keep(figure))
}

func hedged(about bool, figure string) string {
	if about {
		return "about " + figure
	}
	return figure
}

func optionText(q *assess.Question, id string) string {
	for _, o := range q.Options {
		if o.ID == id {
			return string(o.Text)
		}
	}
	return message.Keep(sanitize.Line(id))
}

// Complaint is an error in two lines: what is wrong, and what would be taken.
func Complaint(err error) []string {
	var lines []string
	for _, l := range Complained(err) {
		lines = append(lines, message.Bare(l))
	}
	return lines
}

// Complained is Complaint, with what was typed marked for a book of phrases.
func Complained(err error) []string {
	var mistake *assess.Mistake
	if !errors.As(err, &mistake) {
		return []string{message.Keep(sanitize.Line(err.Error()))}
	}
	what := sanitize.Line(mistake.What().String())
	if mistake.Value != "" {
		quoted := sanitize.Line(strconv.Quote(mistake.Value))
		what = strings.Replace(what, quoted, message.Keep(quoted), 1)
	}
	return []string{what, sanitize.Line(mistake.Hint.String())}
}

// Requirements are what can decide a sale, in the words used to a customer.
func Requirements() []assess.Option {
	var list []assess.Option
	for _, r := range rules.Requirements() {
		list = append(list, assess.Option{ID: string(r), Text: message.ID(report.RequirementName(r))})
	}
	return list
}
