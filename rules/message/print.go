package message

import (
	"fmt"
	"strings"
	"sync"
	"unicode/utf8"

	"golang.org/x/text/feature/plural"
	"golang.org/x/text/language"
	xmessage "golang.org/x/text/message"
	"golang.org/x/text/message/catalog"
)

// printer prints messages in one language. It hands a wording to the library
// when it is first asked for, so that a program that says little compiles little.
// It may be used by several goroutines at once.
type printer struct {
	tag     language.Tag
	builder *catalog.Builder
	lib     *xmessage.Printer

	mu   sync.Mutex
	have map[ID]bool
}

func newPrinter(tag language.Tag) *printer {
	b := catalog.NewBuilder()
	return &printer{tag: tag, builder: b, lib: xmessage.NewPrinter(tag, xmessage.Catalog(b)), have: map[ID]bool{}}
}

// english prints messages as they are identified.
var english = sync.OnceValue(func() *Catalog { return &Catalog{to: newPrinter(language.English)} })

// Tag is the tag of the language the catalog prints, by BCP 47: "en", "de".
func (c *Catalog) Tag() string {
	if c == nil {
		c = english()
	}
	return c.to.tag.String()
}

// Print puts a message into the words of the catalog; the nil catalog has the
// English ones. A message without a row stays English.
func (c *Catalog) Print(m Message) string {
	if c == nil {
		c = english()
	}
	return m.form.shaped(c.phrase(m))
}

// phrase is the words of a message without the form asked for.
func (c *Catalog) phrase(m Message) string {
	switch {
	case m.list != nil:
		return c.listed(m)
	case m.id == "":
		return ""
	case c.wording(m.id) != "":
		return c.to.print(m, c.wording, c.arguments(m.args))
	case c.Lacking != nil:
		c.Lacking(m.id)
	}
	return c.to.print(m, english().wording, c.arguments(m.args))
}

// wording is the row of a message, "" if there is none. English needs no rows.
func (c *Catalog) wording(id ID) string {
	switch {
	case strings.HasPrefix(string(id), "@"):
		return c.wordings[id].words
	case c.wordings == nil || id.IsNeutral():
		return string(id)
	}
	if e, ok := c.wordings[id]; ok {
		return e.words
	}
	if e, ok := c.wordings[ID(folded(string(id)))]; ok {
		return dressed(e.words, string(id), e.english)
	}
	return ""
}

// listed prints a list.
func (c *Catalog) listed(m Message) string {
	var parts []string
	for _, part := range m.list {
		if words := c.Print(part); words != "" {
			parts = append(parts, words)
		}
	}
	n := len(parts)
	if n < 2 || m.last == "" {
		return strings.Join(parts, m.sep)
	}
	return c.Print(New(m.last, Name(strings.Join(parts[:n-1], m.sep)), Name(parts[n-1])))
}

// arguments prints what fills the holes.
func (c *Catalog) arguments(args []any) []any {
	printed := make([]any, len(args))
	for i, arg := range args {
		switch a := arg.(type) {
		case Message:
			printed[i] = c.Print(a)
		case ID:
			printed[i] = c.Print(a.Message())
		case Name:
			printed[i] = string(a)
		case Figure:
			printed[i] = c.figure(string(a))
		case error:
			printed[i] = c.Print(Of(a))
		case Count:
			printed[i] = int(a)
		default:
			printed[i] = fmt.Sprintf("(%T is no argument of a message)", arg)
		}
	}
	return printed
}

// print has the library print one message. wording is where its words are.
func (p *printer) print(m Message, wording func(ID) string, args []any) string {
	p.prepare(m, wording)
	return p.lib.Sprintf(string(m.id), args...)
}

// prepare hands the wordings of a message to the library.
func (p *printer) prepare(m Message, wording func(ID) string) {
	p.mu.Lock()
	defer p.mu.Unlock()
	if p.have[m.id] {
		return
	}
	p.have[m.id] = true
	several := layout(wording(m.id))
	if m.one == "" {
		p.builder.SetString(p.tag, string(m.id), several) // never fails: it holds no macro
		return
	}
	cases := []any{plural.One, layout(wording(m.one))}
	for _, f := range forms {
		if words := wording(PluralForm(f.name) + m.id); words != "" {
			cases = append(cases, f.form, layout(words))
		}
	}
	cases = append(cases, plural.Other, several)
	p.builder.Set(p.tag, string(m.id), plural.Selectf(1, "%d", cases...))
}

// forms are the plural forms of the Unicode CLDR besides one and other, which
// the two wordings of a counted message are.
var forms = []struct {
	name string
	form plural.Form
}{{"zero", plural.Zero}, {"two", plural.Two}, {"few", plural.Few}, {"many", plural.Many}}

// PluralForm begins the row of a plural form: zero, two, few or many.
func PluralForm(name string) ID { return ID("@" + name + " ") }

// IsPluralForm reports whether a row is the wording of a plural form.
func IsPluralForm(row string) bool {
	for _, f := range forms {
		if strings.HasPrefix(row, string(PluralForm(f.name))) {
			return true
		}
	}
	return false
}

// layout is a wording as the library reads it: {1} becomes %[1]v.
func layout(words string) string {
	var out strings.Builder
	for _, part := range takeApart(strings.NewReplacer("%", "%%", "${", "$\u200b{").Replace(words)) {
		if part.hole > 0 {
			fmt.Fprintf(&out, "%%[%d]v", part.hole)
		} else {
			out.WriteString(part.text)
		}
	}
	return out.String()
}

// Has reports whether the catalog has words for a message.
func (c *Catalog) Has(id ID) bool { return c == nil || c.wording(id) != "" }

// figure puts a number, word by word, into the marks and unit names of the language.
func (c *Catalog) figure(text string) string {
	words := strings.Split(text, " ")
	for i, w := range words {
		body := strings.Trim(w, "()[].,;:~")
		if unit, ok := c.Units[body]; ok {
			words[i] = strings.Replace(w, body, unit, 1)
			continue
		}
		words[i] = c.numbers(w)
	}
	return strings.Join(words, " ")
}

// numbers writes the numbers in a figure with the marks of the language: a comma
// before exactly three digits is ours between thousands, a point is ours for
// decimals.
func (c *Catalog) numbers(w string) string {
	if c.Decimal == "" {
		return w
	}
	var out strings.Builder
	for i, r := range w {
		_, size := utf8.DecodeRuneInString(w[i:]) // one where w is no UTF-8
		switch next := digitsAfter(w[i+size:]); {
		case r == '.' && digitBefore(w, i) && next > 0:
			out.WriteString(c.Decimal)
		case r == ',' && digitBefore(w, i) && next == 3:
			out.WriteString(c.Thousands)
		default:
			out.WriteRune(r)
		}
	}
	return out.String()
}

func digitBefore(w string, i int) bool { return i > 0 && w[i-1] >= '0' && w[i-1] <= '9' }

// digitsAfter counts the digits at the start of s.
func digitsAfter(s string) int { return len(s) - len(strings.TrimLeft(s, "0123456789")) }
