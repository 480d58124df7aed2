package message

import "strings"

// teller puts one text into the book's words. It remembers the parts, and
// gives up on a text that takes too long to match.
type teller struct {
	book *Catalog
	seen map[string]told
	left int // tries
}

const (
	tries   = 20000 // to match a row, for one text
	deepest = 40    // parts within parts
	ways    = 12    // in which a text may fit one row
)

func newTeller(b *Catalog) *teller { return &teller{b, map[string]told{}, tries} }

// full reports whether the book had words for all of it.
func (t told) full() bool { return len(t.missing) == 0 }

// gap is how much of a text had no words.
func (t told) gap() int {
	n := 0
	for _, m := range t.missing {
		n += len(m)
	}
	return n
}

// say puts a text into words: the whole of it, or sentence by sentence, or by
// the row that fits it best, or part by part.
func (t *teller) say(text string, depth int) told {
	lead, body, trail := trimmed(text)
	switch {
	case body == "":
		return told{words: text}
	case depth > deepest || t.left < 0:
		return told{text, []string{body}}
	}
	out, ok := t.seen[body]
	if !ok {
		t.seen[body] = told{body, []string{body}} // what it is while it is looked for
		out = t.find(body, depth)
		t.seen[body] = out
	}
	return told{lead + out.words + trail, out.missing}
}

// trimmed parts a text from the spaces around it.
func trimmed(text string) (lead, body, trail string) {
	body = strings.TrimLeft(text, " ")
	lead = text[:len(text)-len(body)]
	rest := strings.TrimRight(body, " ")
	return lead, rest, body[len(rest):]
}

func (t *teller) find(text string, depth int) told {
	if words, ok := t.book.row(text); ok {
		return told{words: words}
	}
	if words, ok := t.book.figures.data(text); ok {
		return told{words: words}
	}
	best := told{text, []string{text}}
	for _, way := range []func(string, int) (told, bool){t.bySentences, t.byHeavyRows, t.byClauses, t.byBrackets, t.byLightRows, t.byParts} {
		got, ok := way(text, depth)
		if !ok {
			continue
		}
		if got.full() {
			return got
		}
		if got.gap() < best.gap() {
			best = got
		}
	}
	return best
}

// row looks up a row without holes. A row serves for a text with a capital and
// for one with a full stop too.
func (b *Catalog) row(text string) (string, bool) {
	if e, ok := b.whole[text]; ok {
		return e.words, true
	}
	e, ok := b.whole[folded(text)]
	if !ok {
		return "", false
	}
	return dressed(e.words, text, e.english), true
}

// folded is a sentence without what a row does not ask about: whether it begins
// with a capital and ends with a full stop.
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

// heavy is how many letters a row has that is tried before a text is parted at
// semicolons and brackets: a row such as "{1} and {2}" would reach across them.
const heavy = 8

func (t *teller) byHeavyRows(text string, depth int) (told, bool) {
	return t.byRows(text, depth, func(p *pattern) bool { return p.weight >= heavy })
}

func (t *teller) byLightRows(text string, depth int) (told, bool) {
	return t.byRows(text, depth, func(p *pattern) bool { return p.weight < heavy })
}

// byRows says a text by the row that fits it: of those whose holes can all be
// said, the one with the most text of its own.
func (t *teller) byRows(text string, depth int, which func(*pattern) bool) (told, bool) {
	low := lowFirst(text)
	word, _, _ := strings.Cut(low, " ")
	best, found := told{}, false
	for _, p := range merged(t.book.holed[word], t.book.holed[""]) {
		if !which(p) {
			continue
		}
		fitted := low
		if p.literal[0] == "" {
			fitted = text // a hole is first: what fills it keeps its capital
		}
		got, ok := t.byRow(p, fitted, text, depth)
		if !ok {
			continue
		}
		if got.full() {
			return got, true
		}
		if !found || got.gap() < best.gap() {
			best, found = got, true
		}
	}
	return best, found
}

// merged are two lists by weight, the heaviest first.
func merged(a, b []pattern) []*pattern {
	list := make([]*pattern, 0, len(a)+len(b))
	for len(a)+len(b) > 0 {
		if len(b) == 0 || len(a) > 0 && a[0].weight >= b[0].weight {
			list, a = append(list, &a[0]), a[1:]
		} else {
			list, b = append(list, &b[0]), b[1:]
		}
	}
	return list
}

// byRow tries the ways in which a text fits a row, with and without the row's
// full stop; low is the text as the row begins.
func (t *teller) byRow(p *pattern, low, text string, depth int) (told, bool) {
	rowStops, textStops := strings.HasSuffix(p.english, "."), strings.HasSuffix(text, ".")
	switch {
	case rowStops && !textStops:
		low += "."
	case textStops && !rowStops:
		low = strings.TrimSuffix(low, ".")
	}
	if !p.could(low) {
		return told{}, false
	}
	m := &match{teller: t, row: p, depth: depth, inside: shielded(low), left: ways}
	m.try(low, len(p.literal[0]), 0, map[int]string{}, nil)
	if !m.found {
		return told{}, false
	}
	return told{dressed(m.best.words, text, p.english), m.best.missing}, true
}

// match is one row being fitted to one text.
type match struct {
	*teller
	row    *pattern
	depth  int
	inside []bool
	left   int
	best   told
	found  bool
}

// try fills hole i, which begins at from, in every way, the shortest first.
func (m *match) try(text string, from, i int, holes map[int]string, missing []string) {
	m.teller.left--
	if m.teller.left < 0 || m.left <= 0 || m.found && m.best.full() {
		return
	}
	if i == len(m.row.holes) {
		m.left--
		got := told{m.row.fill(holes), missing}
		if !m.found || got.gap() < m.best.gap() {
			m.best, m.found = got, true
		}
		return
	}
	literal := m.row.literal[i+1]
	if i == len(m.row.holes)-1 { // the last literal ends the text
		m.hole(text, from, len(text)-len(literal), len(text), i, holes, missing)
		return
	}
	for at := from + 1; at <= len(text)-len(literal) && m.left > 0; at++ {
		next := strings.Index(text[at:], literal)
		if next < 0 {
			return
		}
		at += next
		if literal == "" || !m.inside[at] {
			m.hole(text, from, at, at+len(literal), i, holes, missing)
		}
	}
}

// hole says what fills hole i and goes on behind it. A hole that stands twice
// is filled alike.
func (m *match) hole(text string, from, to, then, i int, holes map[int]string, missing []string) {
	if to <= from || then > to && m.inside[to] || m.within(text, from) {
		return
	}
	number := m.row.holes[i]
	got := m.say(text[from:to], m.depth+1)
	if had, twice := holes[number]; twice && had != got.words {
		return
	}
	filled := make(map[int]string, len(holes)+1)
	for k, v := range holes {
		filled[k] = v
	}
	filled[number] = got.words
	m.try(text, then, i+1, filled, append(missing[:len(missing):len(missing)], got.missing...))
}

// within reports whether a place lies within a text that is not ours, and not
// at its start.
func (m *match) within(text string, at int) bool {
	return at > 0 && m.inside[at-1] && m.inside[at] && text[at] != byte(opening)
}
