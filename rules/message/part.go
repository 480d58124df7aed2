package message

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// bySentences says a text sentence by sentence, if it has several.
func (t *teller) bySentences(text string, depth int) (told, bool) {
	return t.joined(text, sentenceEnds(text), depth)
}

// sentenceEnds are the places behind a sentence that another one follows.
func sentenceEnds(text string) []int {
	inside := shielded(text)
	var ends []int
	for i := 0; i+2 < len(text); i++ {
		if strings.IndexByte(".!?", text[i]) < 0 || text[i+1] != ' ' || inside[i] {
			continue
		}
		if r, _ := utf8.DecodeRuneInString(text[i+2:]); unicode.IsUpper(r) || r == opening || unicode.IsDigit(r) {
			ends = append(ends, i+1)
		}
	}
	return ends
}

// joined says the parts of a text that is cut at some places.
func (t *teller) joined(text string, cuts []int, depth int) (told, bool) {
	if len(cuts) == 0 {
		return told{}, false
	}
	var out told
	from := 0
	for _, to := range append(cuts[:len(cuts):len(cuts)], len(text)) {
		got := t.say(text[from:to], depth+1)
		out.words += got.words
		out.missing = append(out.missing, got.missing...)
		from = to
	}
	return out, true
}

// byClauses says a text clause by clause.
func (t *teller) byClauses(text string, depth int) (told, bool) { return t.apart(text, "; ", depth) }

// separators part what has no row of its own, those that bind least first.
var separators = []string{" · ", "; ", " – ", ": ", ", ", " / ", " → ", " = "}

// byBrackets says what stands around and in the first bracket.
func (t *teller) byBrackets(text string, depth int) (told, bool) {
	best, found := t.around(text, "()", depth)
	if found && best.full() {
		return best, true
	}
	if other, ok := t.around(text, "[]", depth); ok && (!found || other.gap() < best.gap()) {
		return other, true
	}
	return best, found
}

// byParts says a text part by part: at a separator, or behind a figure.
func (t *teller) byParts(text string, depth int) (told, bool) {
	best, found := told{}, false
	keep := func(got told, ok bool) bool {
		if ok && (!found || got.gap() < best.gap()) {
			best, found = got, true
		}
		return found && best.full()
	}
	for _, sep := range separators {
		if keep(t.apart(text, sep, depth)) {
			return best, true
		}
	}
	keep(t.behindFigure(text, depth))
	return best, found
}

// apart says what stands on both sides of a separator that is in no bracket.
func (t *teller) apart(text, sep string, depth int) (told, bool) {
	inside := bracketed(text)
	best, found := told{}, false
	for i := 0; i < len(text) && t.left > 0; i++ {
		at := strings.Index(text[i:], sep)
		if at < 0 {
			break
		}
		i += at
		if i == 0 || inside[i] || i+len(sep) >= len(text) {
			continue
		}
		t.left--
		left, right := t.say(text[:i], depth+1), t.say(text[i+len(sep):], depth+1)
		got := told{left.words + sep + right.words, append(left.missing[:len(left.missing):len(left.missing)], right.missing...)}
		if !found || got.gap() < best.gap() {
			best, found = got, true
		}
		if got.full() {
			break
		}
	}
	return best, found
}

// around says what stands before, in and behind the first bracket.
func (t *teller) around(text, pair string, depth int) (told, bool) {
	inside := shielded(text)
	from := indexOutside(text, pair[0], inside, 0)
	if from < 0 {
		return told{}, false
	}
	to, open := -1, 0
	for i := from; i < len(text) && to < 0; i++ {
		switch {
		case inside[i]:
		case text[i] == pair[0]:
			open++
		case text[i] == pair[1]:
			if open--; open == 0 {
				to = i
			}
		}
	}
	if to < 0 {
		return told{}, false
	}
	before, within, after := t.say(text[:from], depth+1), t.say(text[from+1:to], depth+1), t.say(text[to+1:], depth+1)
	missing := append(append(before.missing[:len(before.missing):len(before.missing)], within.missing...), after.missing...)
	return told{before.words + pair[:1] + within.words + pair[1:] + after.words, missing}, true
}

// bracketed reports for every byte of a text whether it stands in a bracket or is
// not ours.
func bracketed(text string) []bool {
	inside, open := shielded(text), 0
	for i := range len(text) {
		switch {
		case inside[i]:
		case text[i] == '(' || text[i] == '[':
			open++
		case text[i] == ')' || text[i] == ']':
			open = max(0, open-1)
		}
		inside[i] = inside[i] || open > 0
	}
	return inside
}

func indexOutside(text string, c byte, inside []bool, from int) int {
	for i := from; i < len(text); i++ {
		if text[i] == c && !inside[i] {
			return i
		}
	}
	return -1
}

// behindFigure says what stands behind the figures at the start, such as a
// metal behind its thickness.
func (t *teller) behindFigure(text string, depth int) (told, bool) {
	best, found := told{}, false
	for at := strings.LastIndexByte(text, ' '); at > 0; at = strings.LastIndexByte(text[:at], ' ') {
		figure, ok := t.book.figures.data(text[:at])
		if !ok {
			continue
		}
		rest := t.say(text[at+1:], depth+1)
		if got := (told{figure + " " + rest.words, rest.missing}); !found || got.gap() < best.gap() {
			best, found = got, true
		}
		if best.full() {
			break
		}
	}
	return best, found
}
