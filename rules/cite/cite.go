// Package cite is the register of what every value rests on: published
// sources, common practice, memory, or our own invention for the demo. A value
// without an entry here does not go on a page.
package cite

import (
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"cutbrief/rules/message"
)

// Trust says how a value is known.
type Trust string

// The kinds of trust, worded as they are printed. Given is no trust of ours:
// it marks what the customer said or a system's row says.
const (
	Published Trust = "published source"
	Practice  Trust = "common practice, no source"
	Memory    Trust = "from memory"
	Invented  Trust = "invented for the demo"
	Given     Trust = "as given" // an input: the customer's answer, or a row of the range
)

// Source is a document, or a kind of knowledge, that values rest on.
type Source struct {
	ID      string // stable, such as "nec-630-11"
	Title   string // title and edition as printed
	Edition string // edition or date, "" if it does not apply
	Trust   Trust
}

// Ref points at one place in a source.
type Ref struct {
	Source string // Source.ID
	Clause string // clause, table or page; may be ""
}

// Find returns the source a reference points at.
func (r Ref) Find() (Source, bool) {
	i := slices.IndexFunc(register, func(s Source) bool { return s.ID == r.Source })
	if i < 0 {
		return Source{}, false
	}
	return register[i], true
}

// Message is the reference for a reader: title, clause, edition and, where it is
// only remembered, that. What has no document is its trust.
func (r Ref) Message() message.Message {
	s, ok := r.Find()
	switch {
	case !ok:
		return message.New("unregistered source {1}", message.Name(strconv.Quote(r.Source)))
	case s.Trust == Practice || s.Trust == Invented:
		return message.ID(s.Trust).Message()
	}
	text := s.Titled()
	switch {
	case strings.HasPrefix(r.Clause, "("): // closed up to its section, as in 630.12(A)
		text = message.Join("", text, message.Text(r.Clause))
	case r.Clause != "":
		text = message.Join(", ", text, titled(r.Clause))
	}
	text = message.Join(", ", text, message.ID(s.Edition).Message())
	if s.Trust == Memory {
		return message.New("{1} (from memory)", text)
	}
	return text
}

// Titled is the title. That of a document is not ours to word; one of ours begins
// with a small letter.
func (s Source) Titled() message.Message { return titled(s.Title) }

// titled is the title or the clause of a document.
func titled(s string) message.Message {
	if number, ok := strings.CutPrefix(s, "clause "); ok {
		return message.New("clause {1}", message.Name(number))
	}
	if first, _ := utf8.DecodeRuneInString(s); unicode.IsLower(first) {
		return message.ID(s).Message()
	}
	return message.Text(s)
}

// All returns every registered source, in register order.
func All() []Source { return slices.Clone(register) }
