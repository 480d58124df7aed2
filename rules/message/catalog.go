// Package message holds what the program says to people, apart from the words.
//
// A Message is an identifier, which is its English wording, and typed arguments:
// names, figures, counts, other messages. Code passes messages on and joins them;
// a Catalog prints them, once, at the edge. The nil Catalog prints English; others
// are CSV files of two columns, the English wording and the words to say instead,
// with {1}, {2} for the arguments in both: built in, or a firm's own.
//
// What a customer said or what a file calls something is a Name, and comes out as
// it went in.
package message

import (
	"strings"
	"sync"

	"golang.org/x/text/language"
	"golang.org/x/text/message"
)

// Catalog is the words of one language, or a firm's own. The nil Catalog prints
// English. A Catalog may be used by several goroutines at once.
type Catalog struct {
	Source

	wordings       map[ID]entry     // all rows, as they are and folded
	answers, words []typing         // what may be typed: their words to ours
	count          func(int) string // with the marks of the language
}

// entry is a row.
type entry struct{ english, words string }

// Source is what a Catalog is made of.
type Source struct {
	Name               string            // "de", or the base name of the file
	Language           string            // as the file calls it, such as "Deutsch"; "" if it does not
	Tag                language.Tag      // chooses plurals and the marks of counts
	Decimal, Thousands string            // marks of figures; "" leaves them as they are
	Units              map[string]string // that are words in English
	Rows               []Row             // in the order of the file
	Forms              []Row             // wordings of plural forms besides one and other, as PluralForm writes them
	Words, Answers     []Row             // ways of typing, small letters, and what is meant
	Lacking            func(ID)          // told every message printed that has no row; nil tells nobody
}

// Row is one line of a Catalog: an identifier and the words for it.
type Row struct{ ID, Words string }

// NewCatalog makes a Catalog.
func NewCatalog(s Source) *Catalog {
	c := &Catalog{Source: s, count: counting(s.Tag), wordings: map[ID]entry{}, words: typings(s.Words), answers: typings(s.Answers)}
	for _, r := range s.Rows {
		c.add(r)
	}
	for _, r := range s.Forms {
		c.wordings[ID(r.ID)] = entry{r.ID, r.Words}
	}
	return c
}

// counting writes whole numbers as a language does. What knows how is made when
// the first is written.
func counting(tag language.Tag) func(int) string {
	printer := sync.OnceValue(func() *message.Printer { return message.NewPrinter(tag) })
	return func(n int) string { return printer().Sprint(n) }
}

// add takes a row. Where a row begins with a capital and another does not, each
// is found as it is written, and any other spelling by the one with the small
// letter.
func (c *Catalog) add(r Row) {
	e := entry{r.ID, r.Words}
	c.wordings[ID(r.ID)] = e
	if low := ID(folded(r.ID)); !startsCapital(r.ID) || c.wordings[low].english == "" {
		c.wordings[low] = e
	}
}

// Code is the language in two or three letters, such as "de"; the nil Catalog is
// in "en", and so is one that does not say.
func (c *Catalog) Code() string {
	if c == nil {
		return "en"
	}
	base, _ := c.Source.Tag.Base()
	return base.String()
}

// IDs are the identifiers a Catalog has rows for, in the order of its file.
func (c *Catalog) IDs() []string {
	var ids []string
	for _, r := range c.Rows {
		ids = append(ids, r.ID)
	}
	return ids
}

// folded is an identifier without what a row does not ask about: whether it
// begins with a capital and ends with a full stop.
func folded(text string) string { return lowFirst(strings.TrimSuffix(text, ".")) }

// dressed gives words the capital and the full stop that the text has and the
// row has not. A small letter is not made: a noun keeps its capital.
func dressed(words, text, english string) string {
	if startsCapital(text) && !startsCapital(english) {
		words = capFirst(words)
	}
	switch textStops, rowStops := strings.HasSuffix(text, "."), strings.HasSuffix(english, "."); {
	case textStops && !rowStops && !strings.HasSuffix(words, "."):
		words += "."
	case !textStops && rowStops:
		words = strings.TrimSuffix(words, ".")
	}
	return words
}
