package message

import (
	"cmp"
	"fmt"
	"strings"
	"sync"
	"unicode/utf8"

	"golang.org/x/text/feature/plural"
	"golang.org/x/text/language"
)

// english prints messages as they are identified.
var english = sync.OnceValue(func() *Catalog {
	return &Catalog{Source: Source{Tag: language.English}, count: counting(language.English)}
})

// Tag is the tag of the language the catalog prints, by BCP 47: "en", "de".
func (c *Catalog) Tag() string {
	if c == nil {
		c = english()
	}
	return c.Source.Tag.String()
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
		return c.filled(m, c.wording)
	case c.Lacking != nil:
		c.Lacking(m.id)
	}
	return c.filled(m, english().wording)
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

// filled is the words of a message with its arguments in the holes.
func (c *Catalog) filled(m Message, wording func(ID) string) string {
	words := wording(m.id)
	if m.one != "" {
		words = cmp.Or(c.counted(m, wording), words)
	}
	if !strings.Contains(words, "{") {
		return words
	}
	var out strings.Builder
	for _, part := range takeApart(words) {
		switch {
		case part.hole == 0:
			out.WriteString(part.text)
		case part.hole <= len(m.args):
			out.WriteString(c.argument(m.args[part.hole-1]))
		default:
			fmt.Fprintf(&out, "{%d}", part.hole)
		}
	}
	return out.String()
}

// argument prints what fills a hole.
func (c *Catalog) argument(arg any) string {
	switch a := arg.(type) {
	case Message:
		return c.Print(a)
	case ID:
		return c.Print(a.Message())
	case Name:
		return string(a)
	case Figure:
		return c.figure(string(a))
	case error:
		return c.Print(Of(a))
	case Count:
		return c.count(int(a))
	}
	return fmt.Sprintf("(%T is no argument of a message)", arg)
}

// counted is the wording of a plural form for so many, as the language of the
// catalog counts; "" for the form that the identifier is.
func (c *Catalog) counted(m Message, wording func(ID) string) string {
	n, _ := m.args[0].(Count)
	form := plural.Cardinal.MatchPlural(c.Source.Tag, max(int(n), -int(n)), 0, 0, 0, 0)
	if form == plural.One {
		return wording(m.one)
	}
	for _, f := range forms {
		if f.form == form {
			return wording(PluralForm(f.name) + m.id)
		}
	}
	return ""
}

// forms are the plural forms of the Unicode CLDR besides one and other, which
// the two wordings of a counted message are.
var forms = [...]struct {
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
