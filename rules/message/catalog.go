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
	"slices"
	"strings"
	"sync"

	"golang.org/x/text/language"
)

// Catalog is the words of one language, or a firm's own. The nil Catalog prints
// English. A Catalog may be used by several goroutines at once.
type Catalog struct {
	Name     string // "de", or the base name of the file
	Language string // as the file calls it, such as "Deutsch"; "" if it does not

	rows    []string             // the identifiers, in their order
	whole   map[string]entry     // rows without holes, by folded sentence
	holed   map[string][]pattern // rows with holes, by the first word, "" if a hole is first
	figures figures
	answers []pattern // what may be typed, turned round: their words to ours
	words   []pattern

	wordings map[ID]entry // all rows, as they are and folded
	to       *printer
	keeping  bool // names are printed between marks
	exact    bool // a text without a row of its own stays English

	mu     sync.Mutex
	known  map[string]told
	listen func(english, words string, missing []string)
}

// Source is what a Catalog is made of.
type Source struct {
	Name, Language     string
	Tag                language.Tag // chooses plurals and the marks of counts
	Decimal, Thousands string       // marks of figures; "" leaves them as they are
	Units              map[string]string
	Rows               []Row // in the order of the file
	Exact              bool  // a text without a row stays English, and is not looked for part by part
	Forms              []Row // wordings of plural forms besides one and other, as PluralForm writes them
	Words, Answers     []Row // ways of typing, small letters, and what is meant
}

// Row is one line of a Catalog: an identifier and the words for it.
type Row struct{ ID, Words string }

// NewCatalog makes a Catalog.
func NewCatalog(s Source) *Catalog {
	c := &Catalog{
		Name: s.Name, Language: s.Language, figures: figures{s.Decimal, s.Thousands, s.Units}, to: newPrinter(s.Tag),
		wordings: map[ID]entry{}, exact: s.Exact, whole: map[string]entry{}, holed: map[string][]pattern{}, known: map[string]told{},
		words: waysOfTyping(s.Words), answers: waysOfTyping(s.Answers),
	}
	for _, r := range s.Rows {
		c.add(r)
	}
	for _, r := range s.Forms {
		c.wordings[ID(r.ID)] = entry{r.ID, r.Words}
	}
	c.sort()
	return c
}

// add takes a row. Where a row begins with a capital and another does not, each
// is found as it is written, and any other spelling by the one with the small
// letter.
func (b *Catalog) add(r Row) {
	e := entry{r.ID, r.Words}
	b.rows = append(b.rows, r.ID)
	b.wordings[ID(r.ID)] = e
	low := folded(r.ID)
	if !startsCapital(r.ID) || b.wordings[ID(low)].english == "" {
		b.wordings[ID(low)] = e
	}
	if len(Holes(r.ID)) > 0 {
		p := newPattern(r.ID, r.Words)
		b.holed[p.first()] = append(b.holed[p.first()], p)
		return
	}
	b.whole[r.ID] = e
	if !startsCapital(r.ID) || b.whole[low].english == "" {
		b.whole[low] = e
	}
}

// sort puts the rows that say most of a sentence first.
func (b *Catalog) sort() {
	for _, list := range b.holed {
		slices.SortStableFunc(list, func(a, c pattern) int { return c.weight - a.weight })
	}
}

// Code is the language in two or three letters, such as "de"; the nil Catalog is
// in "en", and so is one that does not say.
func (c *Catalog) Code() string {
	if c == nil {
		return "en"
	}
	base, _ := c.to.tag.Base()
	return base.String()
}

// IDs are the identifiers a Catalog has rows for, in the order of its file.
func (b *Catalog) IDs() []string { return b.rows }

// Rows counts the rows of a Catalog.
func (b *Catalog) Rows() int { return len(b.rows) }

// Listen has every text told that the book is asked for the first time, with
// what it has no words for. Tests find with it what nobody put into words.
func (b *Catalog) Listen(hear func(english, words string, missing []string)) { b.listen = hear }

// entry is a row without holes.
type entry struct{ english, words string }

// told is a text in the book's words, and the parts of it that the book has no
// words for.
type told struct {
	words   string
	missing []string
}

// remembered is how many texts a book keeps the words of. A screen shows a
// hundred, a page some hundreds; a book that is full forgets them all.
const remembered = 4096

// Say puts a text into the book's words. What the book does not have stays as
// it is. Marks set by Keep are taken out.
func (b *Catalog) Say(english string) string {
	words, _ := b.Told(english)
	return words
}

// Told is Say, and says which parts of the text the book has no words for.
func (b *Catalog) Told(english string) (words string, missing []string) {
	if b == nil || b.empty() {
		return bare(english), nil
	}
	if b.exact {
		if words, ok := b.row(english); ok {
			return words, nil
		}
		return bare(english), []string{bare(english)}
	}
	b.mu.Lock()
	defer b.mu.Unlock()
	if t, ok := b.known[english]; ok {
		return t.words, t.missing
	}
	if len(b.known) >= remembered {
		clear(b.known)
	}
	t := newTeller(b).lines(english)
	t.words = bare(t.words)
	for i := range t.missing {
		t.missing[i] = bare(t.missing[i])
	}
	b.known[english] = t
	if b.listen != nil {
		b.listen(english, t.words, t.missing)
	}
	return t.words, t.missing
}

func (b *Catalog) empty() bool {
	return len(b.whole) == 0 && len(b.holed) == 0
}

// Each says a list of texts.
func (b *Catalog) Each(english []string) []string {
	words := make([]string, len(english))
	for i, e := range english {
		words[i] = b.Say(e)
	}
	return words
}

// lines says a text line by line.
func (t *teller) lines(english string) told {
	if !strings.Contains(english, "\n") {
		return t.say(english, 0)
	}
	var out told
	rows := strings.Split(english, "\n")
	for i, row := range rows {
		line := t.say(row, 0)
		rows[i], out.missing = line.words, append(out.missing, line.missing...)
	}
	out.words = strings.Join(rows, "\n")
	return out
}
