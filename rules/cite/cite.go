// Package cite is the register of what every value rests on: published
// sources, common practice, memory, or our own invention for the demo. A value
// without an entry here does not go on a page. It imports nothing of ours.
package cite

import (
	"fmt"
	"slices"
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

// String writes the reference for a reader: title, clause, edition and, where
// it is only remembered, that.
func (r Ref) String() string {
	s, ok := r.Find()
	if !ok {
		return fmt.Sprintf("unregistered source %q", r.Source)
	}
	text := s.Title
	if s.Trust == Practice || s.Trust == Invented {
		return string(s.Trust)
	}
	if r.Clause != "" {
		text += separator(r.Clause) + r.Clause
	}
	if s.Edition != "" {
		text += ", " + s.Edition
	}
	if s.Trust == Memory {
		text += " (from memory)"
	}
	return text
}

// separator closes up a paragraph to its section, as in 630.12(A).
func separator(clause string) string {
	if clause[0] == '(' {
		return ""
	}
	return ", "
}

// All returns every registered source, in register order.
func All() []Source { return slices.Clone(register) }
