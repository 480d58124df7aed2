package review

import (
	"cmp"
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"sync"
	"time"
	"unicode/utf8"

	"cutbrief/rules/message"
)

// The limits of a filter: far above what anybody types.
const (
	longestWhere = 2000 // characters
	deepestWhere = 20   // parentheses and "not" inside each other
)

// Where is a filter: it says of a row whether to keep it.
type Where func(*Row) bool

// WhereError says what is wrong with a filter and where.
type WhereError struct {
	Line, Column int // from 1; columns count characters
	Problem      message.Message
	Accepted     message.Message
}

func (e *WhereError) Error() string { return e.Message().String() }

// Message is the error, for every language.
func (e *WhereError) Message() message.Message {
	return message.New("line {1}, column {2}: {3}; {4}", message.Count(e.Line), message.Count(e.Column), e.Problem, e.Accepted)
}

// ParseWhere reads a filter such as
//
//	verdict = open and rep = "Runa Feltham" and thickest > 10 mm
//
// An empty one keeps every row. today is the day that "today" stands for. The
// language is our own:
//
//	either    = all { "or" all }
//	all       = one { "and" one }
//	one       = "not" one | "(" either ")" | field compare value
//	compare   = "=" | "!=" | "<" | "<=" | ">" | ">=" | "~"
//	value     = text in double quotes | words up to the next and, or, ) | "?"
//
// "~" means "holds the text". "?" means not known: what is not known is never
// less or more than anything. Of a list, "=" asks whether one of its words is the
// value. Capitals do not matter.
func ParseWhere(text string, today time.Time) (Where, error) {
	p := &whereParser{text: text, today: today.Format(time.DateOnly)}
	if len(text) > longestWhere {
		return nil, p.failAt(0, message.New("a filter of {1} characters", message.Count(len(text))), message.New("at most {1} are accepted", message.Figure(strconv.Itoa(longestWhere))))
	}
	if p.next(); p.token.text == "" {
		return func(*Row) bool { return true }, nil
	}
	keep, err := p.either(0)
	if err == nil && p.token.text != "" {
		err = p.fail(message.New("and, or, or the end is expected here"))
	}
	return keep, err
}

// token is one part of a filter; its text is empty at the end.
type token struct {
	text string
	at   int // its first byte
}

// tokens matches a part: a text in double quotes, where two of them inside stand
// for one; a comparison; a parenthesis; a word; a quote without its end.
var tokens = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`^(?s:"(?:[^"]|"")*"|[!<>]=|[=!<>~()]|[^ \t\r\n=!<>~()"]+|".*)`)
})

// comparisons are the operators.
const comparisons = " = != < <= > >= ~ "

func (t token) quoted() bool { return strings.HasPrefix(t.text, `"`) }

func (t token) word() bool { return t.text != "" && !strings.ContainsAny(t.text[:1], `=!<>~()"`) }

// is reports a word that is part of the language, not of a value in quotes.
func (t token) is(word string) bool { return strings.EqualFold(t.text, word) }

// whereParser reads a filter token by token.
type whereParser struct {
	text  string
	at    int // behind the token at hand
	token token
	today string
}

// next reads the next token.
func (p *whereParser) next() {
	rest := strings.TrimLeft(p.text[p.at:], " \t\r\n")
	p.token = token{tokens().FindString(rest), len(p.text) - len(rest)}
	p.at = p.token.at + len(p.token.text)
}

func (p *whereParser) either(depth int) (Where, error) {
	left, err := p.all(depth)
	for err == nil && p.token.is("or") {
		p.next()
		var right Where
		first := left
		right, err = p.all(depth)
		left = func(r *Row) bool { return first(r) || right(r) }
	}
	return left, err
}

func (p *whereParser) all(depth int) (Where, error) {
	left, err := p.one(depth)
	for err == nil && p.token.is("and") {
		p.next()
		var right Where
		first := left
		right, err = p.one(depth)
		left = func(r *Row) bool { return first(r) && right(r) }
	}
	return left, err
}

func (p *whereParser) one(depth int) (Where, error) {
	switch {
	case depth > deepestWhere:
		return nil, p.fail(message.New("at most {1} inside each other are accepted", message.Count(deepestWhere)))
	case p.token.is("not"):
		p.next()
		inner, err := p.one(depth + 1)
		return func(r *Row) bool { return !inner(r) }, err
	case p.token.is("("):
		p.next()
		inner, err := p.either(depth + 1)
		if err == nil && !p.token.is(")") {
			err = p.fail(message.New("a closing ) is expected here"))
		}
		p.next()
		return inner, err
	}
	return p.comparison()
}

func (p *whereParser) comparison() (Where, error) {
	field, known := FindField(p.token.text)
	if !known {
		return nil, p.fail(message.New("a field is expected here: {1}", message.Name(strings.Join(FieldIDs(), ", "))))
	}
	p.next()
	op := p.token.text
	if op == "" || !strings.Contains(comparisons, " "+op+" ") {
		return nil, p.fail(message.New("a comparison is expected here: {1}", message.Name(strings.TrimSpace(comparisons))))
	}
	p.next()
	from := p.token
	value, err := p.value()
	if err != nil {
		return nil, err
	}
	keep, accepted := field.compare(op, value, from.quoted(), p.today)
	if keep == nil {
		return nil, p.failAt(from.at, message.New("{1} cannot be compared", message.Name(fmt.Sprintf("%s %s %q", field.ID, op, value))), accepted)
	}
	return keep, nil
}

// value reads a quoted text, or words up to the next and, or, closing
// parenthesis or end.
func (p *whereParser) value() (string, error) {
	if t := p.token.text; p.token.quoted() && p.ended() {
		p.next()
		return strings.ReplaceAll(t[1:len(t)-1], `""`, `"`), nil
	}
	var words []string
	for p.token.word() && !p.token.is("and") && !p.token.is("or") {
		words = append(words, p.token.text)
		p.next()
	}
	if len(words) == 0 {
		return "", p.fail(message.New("a value is expected here, such as open, 10 mm or \"a text\""))
	}
	return strings.Join(words, " "), nil
}

// ended reports whether the quote at hand has its end.
func (p *whereParser) ended() bool { return strings.Count(p.token.text, `"`)%2 == 0 }

// fail reports the token at hand.
func (p *whereParser) fail(accepted message.Message) error {
	const most = 40
	switch text := p.token.text; {
	case text == "":
		return p.failAt(p.token.at, message.New("the filter ends too early"), accepted)
	case p.token.quoted() && !p.ended():
		return p.failAt(p.token.at, message.New("a quote has no end"), message.New(`close it with "`))
	case p.token.quoted():
		text = text[1 : len(text)-1]
		fallthrough
	default:
		if r := []rune(text); len(r) > most {
			text = string(r[:most]) + "…"
		}
		return p.failAt(p.token.at, message.New("found {1}", message.Name(`"`+text+`"`)), accepted)
	}
}

func (p *whereParser) failAt(at int, problem, accepted message.Message) error {
	before := p.text[:min(at, len(p.text))]
	line := strings.Count(before, "\n") + 1
	column := utf8.RuneCountInString(before[strings.LastIndexByte(before, '\n')+1:]) + 1
	return &WhereError{Line: line, Column: column, Problem: problem, Accepted: accepted}
}

// compare builds the comparison of a field with a value; nil if it makes no
// sense, with what would.
func (f Field) compare(op, value string, quoted bool, today string) (Where, message.Message) {
	none, ordered := message.Message{}, op != "=" && op != "!=" && op != "~"
	switch {
	case value == "?" && !quoted && ordered || value == "?" && !quoted && op == "~":
		return nil, message.New("not known is compared with = or !=")
	case value == "?" && !quoted:
		return func(r *Row) bool { return (f.text(r) == "") == (op == "=") }, none
	case ordered && f.num == nil && f.Shape != Date:
		return nil, message.New("this field is compared with =, != or ~")
	case f.num != nil && op != "~":
		n, accepted := f.parse(value)
		if !accepted.IsEmpty() {
			return nil, accepted
		}
		return f.measures(op, n), none
	case f.Shape == Date && op != "~":
		if strings.EqualFold(value, "today") {
			value = today
		}
		if day(value) == "" {
			return nil, message.New("give a day such as 2026-11-25, or today")
		}
		return func(r *Row) bool {
			text := f.text(r)
			return (text != "" || op == "!=") && holds(op, strings.Compare(text, value))
		}, none
	}
	if accepted := f.misspelt(op, value); !accepted.IsEmpty() {
		return nil, accepted
	}
	return f.says(op, strings.ToLower(value)), none
}

// measures compares numbers; two that are shown alike are the same.
func (f Field) measures(op string, value float64) Where {
	const alike = 0.005
	return func(r *Row) bool {
		n, known := f.Number(r)
		switch {
		case !known:
			return op == "!="
		case n-value < alike && value-n < alike:
			return holds(op, 0)
		}
		return holds(op, cmp.Compare(n, value))
	}
}

// says compares texts in small letters, word by word in a list.
func (f Field) says(op, value string) Where {
	is := func(text string) bool { return strings.ToLower(text) == value }
	if op == "~" {
		is = func(text string) bool { return strings.Contains(strings.ToLower(text), value) }
	}
	return func(r *Row) bool {
		found := false
		if f.Shape == List {
			for _, item := range f.Items(r) {
				found = found || is(item)
			}
		} else {
			found = is(f.text(r))
		}
		return found == (op != "!=")
	}
}

// holds reports whether a comparison's outcome satisfies an operator.
func holds(op string, outcome int) bool {
	switch op {
	case "=":
		return outcome == 0
	case "!=":
		return outcome != 0
	case "<":
		return outcome < 0
	case "<=":
		return outcome <= 0
	case ">":
		return outcome > 0
	}
	return outcome >= 0
}
