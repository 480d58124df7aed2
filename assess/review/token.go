package review

import (
	"strings"
	"unicode/utf8"
)

// tokenKind says what a part of a filter is.
type tokenKind uint8

const (
	endToken tokenKind = iota
	wordToken
	quotedToken
	compareToken
	openToken
	closeToken
	unendedToken // a quote without its end
)

// token is one part of a filter.
type token struct {
	kind tokenKind
	text string
	at   int // its first byte
}

// is reports a word that is part of the language, not of a value in quotes.
func (t token) is(word string) bool { return t.kind == wordToken && strings.EqualFold(t.text, word) }

const (
	blanks    = " \t\r\n"
	compares  = "=!<>~"
	wordStops = blanks + compares + `()"`
)

// next reads the next token.
func (p *whereParser) next() {
	for p.at < len(p.text) && strings.IndexByte(blanks, p.text[p.at]) >= 0 {
		p.at++
	}
	from := p.at
	if from == len(p.text) {
		p.token = token{at: from}
		return
	}
	kind := wordToken
	switch c := p.text[from]; {
	case c == '"':
		p.quoted()
		return
	case c == '(':
		kind, p.at = openToken, from+1
	case c == ')':
		kind, p.at = closeToken, from+1
	case strings.IndexByte(compares, c) >= 0:
		kind, p.at = compareToken, from+compareLen(p.text[from:])
	default:
		for p.at < len(p.text) && strings.IndexByte(wordStops, p.text[p.at]) < 0 {
			p.at++
		}
	}
	p.token = token{kind, p.text[from:p.at], from}
}

// compareLen is the length of a comparison; "!" alone is none and is refused
// where it is used.
func compareLen(text string) int {
	for _, op := range []string{"!=", "<=", ">="} {
		if strings.HasPrefix(text, op) {
			return len(op)
		}
	}
	return 1
}

// quoted reads a text in double quotes; two of them inside stand for one.
func (p *whereParser) quoted() {
	from := p.at
	var b strings.Builder
	for p.at++; p.at < len(p.text); p.at++ {
		if p.text[p.at] != '"' {
			b.WriteByte(p.text[p.at])
			continue
		}
		if !strings.HasPrefix(p.text[p.at:], `""`) {
			p.at++
			p.token = token{quotedToken, b.String(), from}
			return
		}
		p.at++
		b.WriteByte('"')
	}
	p.token = token{unendedToken, p.text[from:], from}
}

// fail reports the token at hand.
func (p *whereParser) fail(accepted string) error {
	switch p.token.kind {
	case endToken:
		return p.failAt(p.token.at, "the filter ends too early", accepted)
	case unendedToken:
		return p.failAt(p.token.at, "a quote has no end", `close it with "`)
	}
	return p.failAt(p.token.at, "found "+inQuotes(p.token.text), accepted)
}

// inQuotes shortens what is quoted in a message.
func inQuotes(text string) string {
	const most = 40
	if r := []rune(text); len(r) > most {
		text = string(r[:most]) + "…"
	}
	return `"` + text + `"`
}

func (p *whereParser) failAt(at int, problem, accepted string) error {
	before := p.text[:min(at, len(p.text))]
	line := strings.Count(before, "\n") + 1
	column := utf8.RuneCountInString(before[strings.LastIndexByte(before, '\n')+1:]) + 1
	return &WhereError{Line: line, Column: column, Problem: problem, Accepted: accepted}
}
