package pdf

import (
	"reflect"
	"slices"
	"strings"
	"unicode"

	"cutbrief/rules/message"

	"golang.org/x/text/unicode/norm"
)

// substitute stands for a rune the font cannot show.
const substitute = '?'

// cleaner makes every string of a brief printable, and remembers where it had
// to replace something.
type cleaner struct {
	faces faces
	lost  int          // runes replaced
	part  message.ID   // of the page, being cleaned
	where []message.ID // parts of the page that lost some
}

// parts are what the fields of a brief or a summary are called where something
// in them had to be replaced.
var parts = map[string]message.ID{
	"Title": "title", "Demo": "banner", "Who": "who and when", "Need": "need", "Headline": "recommendation", "Because": "reasons", "Bars": "requirements and capabilities",
	"Speeds": "speed by thickness", "Cost": "cost", "Second": "second choice", "Critical": "what decides", "Evidence": "evidence", "ShownBy": "what decides",
	"Plan": "demonstration", "PlanNote": "notes on the demonstration", "Bring": "what to bring", "Timeline": "the demonstration in minutes", "Confirm": "to confirm",
	"Flags": "to confirm", "Excluded": "other systems", "Cautions": "cautions", "Notes": "notes", "Footing": "what the figures rest on", "Dropped": "what could not be shown",
	"Leaving": "checklists", "OnSite": "checklists", "Working": "working", "Lead": "what was counted", "By": "groups", "Parts": "tables", "Groups": "groups",
}

// cleaned returns a copy of a brief or a summary with every string made
// printable, and without the entries of lists that then say nothing. The
// original stays as it is.
func cleaned[T any](c *cleaner, original T) T {
	v := reflect.ValueOf(&original).Elem()
	for i := range v.NumField() {
		if c.part = parts[v.Type().Field(i).Name]; c.part != "" {
			c.in(v.Field(i))
		}
	}
	return original
}

// in cleans one value. Named strings are keys, not texts.
func (c *cleaner) in(v reflect.Value) {
	switch v.Kind() {
	case reflect.String:
		if v.Type() == reflect.TypeFor[string]() {
			v.SetString(c.text(v.String()))
		}
	case reflect.Pointer:
		if !v.IsNil() {
			fresh := reflect.New(v.Type().Elem())
			fresh.Elem().Set(v.Elem())
			v.Set(fresh)
			c.in(fresh.Elem())
		}
	case reflect.Slice:
		c.inList(v)
	case reflect.Struct:
		for i := range v.NumField() {
			c.in(v.Field(i))
		}
	}
}

func (c *cleaner) inList(v reflect.Value) {
	fresh := reflect.MakeSlice(v.Type(), 0, v.Len())
	for i := range v.Len() {
		entry := reflect.New(v.Type().Elem()).Elem()
		entry.Set(v.Index(i))
		c.in(entry)
		if !blank(entry) {
			fresh = reflect.Append(fresh, entry)
		}
	}
	v.Set(fresh)
}

// blank reports whether an entry of a list has texts and none of them says
// anything; a source alone says nothing.
func blank(v reflect.Value) bool {
	if v.Kind() == reflect.String {
		return strings.TrimSpace(v.String()) == ""
	}
	texts := 0
	for i := 0; v.Kind() == reflect.Struct && i < v.NumField(); i++ {
		switch f := v.Field(i); {
		case f.Kind() != reflect.String:
			if f.Kind() == reflect.Float64 || f.Kind() == reflect.Slice && f.Len() > 0 {
				return false // drawn
			}
		case strings.TrimSpace(f.String()) != "" && v.Type().Field(i).Name != "Source":
			return false
		default:
			texts++
		}
	}
	return texts > 0
}

// text returns s with nothing in it that cannot be printed: valid UTF-8, in
// composed form, no control and no direction mark, each rune with a glyph.
func (c *cleaner) text(s string) string {
	if plain(s) {
		return strings.TrimSpace(bind(s))
	}
	before := c.lost
	out := strings.Map(c.printable, norm.NFC.String(strings.ToValidUTF8(s, string(substitute))))
	if c.lost > before && !slices.Contains(c.where, c.part) {
		c.where = append(c.where, c.part)
	}
	return strings.TrimSpace(bind(out))
}

// plain reports whether a text is printable ASCII.
func plain(s string) bool {
	for i := range len(s) {
		if s[i] < ' ' || s[i] > '~' {
			return false
		}
	}
	return true
}

func (c *cleaner) printable(r rune) rune {
	switch {
	case r == '\u00a0':
		return r
	case unicode.IsSpace(r) || unicode.IsControl(r):
		return ' '
	case unicode.Is(unicode.Cf, r):
		return -1
	case !c.faces.shows(r):
		c.lost++
		return substitute
	}
	return r
}

// units are not left alone at the start of a line.
var units = []string{"mm", "m", "in", "ft", "A", "V", "kg", "lb", "%", "min", "h", "s", "l/min", "bar", "psi", "kVA", "kW", "mm/min", "in/min", "dB(A)", "mg/m³", "µg/m³", "cfm"}

// bind joins a number to its unit with a space that does not break.
func bind(s string) string {
	bound := false
	for i := 1; i < len(s) && !bound; i++ {
		bound = s[i] == ' ' && s[i-1] >= '0' && s[i-1] <= '9'
	}
	if !bound {
		return s
	}
	words := strings.Split(s, " ")
	var b strings.Builder
	for i, w := range words {
		if i > 0 {
			if endsInDigit(words[i-1]) && slices.Contains(units, strings.TrimRight(w, ".,;:)")) {
				b.WriteRune('\u00a0')
			} else {
				b.WriteByte(' ')
			}
		}
		b.WriteString(w)
	}
	return b.String()
}

func endsInDigit(w string) bool {
	return w != "" && w[len(w)-1] >= '0' && w[len(w)-1] <= '9'
}

// said tells the reader what was replaced; it says nothing if nothing was.
func (c *cleaner) said() message.Message {
	if c.lost == 0 {
		return message.Message{}
	}
	var where []message.Message
	for _, part := range c.where {
		where = append(where, part.Message())
	}
	return message.New("{1} characters that this page's font cannot show are printed as “?” in: {2}.", message.Count(c.lost), message.Join(", ", where...))
}
