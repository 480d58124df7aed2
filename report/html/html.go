// Package html writes a brief as a web page: one file that needs nothing else,
// no script and no network, readable on a telephone and with a screen reader,
// printed on one sheet. It words nothing and computes no figure.
package html

import (
	_ "embed" // the style lies beside the code
	"math"
	"reflect"
	"strings"
	"unicode"

	"cutbrief/report"
	"cutbrief/rules"
	"cutbrief/rules/message"
)

//go:embed page.css
var style string

// Render writes the page. The same brief gives the same bytes; whatever the
// texts hold, they stay texts.
func Render(b report.Brief) ([]byte, error) {
	groups, key := report.GroupCautions(b.Cautions)
	c := content{Brief: &b, groups: groups, key: report.SourceKey(b.Words, key), confirm: b.Confirm}
	for _, f := range b.Flags {
		c.confirm = append(c.confirm[:len(c.confirm):len(c.confirm)], report.Line{Why: f})
	}
	c.head()
	c.answer()
	c.proof()
	c.next()
	c.cautions()
	c.behind()
	c.foot()
	return []byte(strings.Map(printable, strings.ToValidUTF8(c.out.String(), "\uFFFD"))), nil
}

// printable takes out what no page may hold: controls, and marks that turn the
// direction of what follows.
func printable(r rune) rune {
	switch {
	case r == '\n':
		return r
	case unicode.IsControl(r):
		return ' '
	case unicode.Is(unicode.Cf, r):
		return -1
	}
	return r
}

// typeSize is the size of body type, in pt, with which what is printed takes one
// sheet of either paper: the area of a text grows with the square of its size. A
// page that would come out too small to read is dense: figures of what is met and
// what to look for stay on the screen. The factors were found by printing with a
// browser.
func typeSize(c *content) (size float64, dense bool) {
	const area, largest, readable, least = 567_000.0, 9.5, 8.0, 5.5
	for _, dense = range []bool{false, true} {
		if size = min(max(math.Sqrt(area/c.printed(dense)), least), largest); size >= readable {
			break
		}
	}
	return size, dense
}

// printed is how much is printed, in characters of body type.
func (c *content) printed(dense bool) float64 {
	b := c.Brief
	n := 1200.0 // titles, rules and margins
	for _, part := range []any{b.Who, b.Demo, b.Need, b.Headline, b.Because, b.Because, b.Second, b.Critical, b.Evidence, b.Bring, c.confirm, b.Footing, c.key} {
		n += length(reflect.ValueOf(part))
	}
	for _, x := range b.Bars {
		switch figures := float64(len(x.Label) + len(x.Need) + len(x.Have) + 6); {
		case x.Verdict != c.say(message.ID(rules.Met)):
			n += figures + 60
		case dense:
			n += float64(len(x.Label) + 3)
		default:
			n += figures
		}
	}
	for _, r := range b.Plan {
		if n += float64(len(r.Cut) + len(r.Piece) + 30); !dense {
			n += float64(len(r.See))
		}
	}
	if b.Cost != nil {
		n += length(reflect.ValueOf(b.Cost.Lines[:min(2, len(b.Cost.Lines))])) + 300
	}
	for _, g := range c.groups {
		for _, i := range g.Items {
			n += float64(len(i.Text) + 60)
		}
		n += 80
	}
	return n
}

// length is how many characters the texts of a value have.
func length(v reflect.Value) float64 {
	n := 0.0
	switch v.Kind() {
	case reflect.String:
		return float64(v.Len())
	case reflect.Slice:
		for i := range v.Len() {
			n += length(v.Index(i))
		}
	case reflect.Struct:
		if v.Type().PkgPath() != reflect.TypeFor[report.Brief]().PkgPath() {
			return 0
		}
		for i := range v.NumField() {
			if v.Type().Field(i).IsExported() {
				n += length(v.Field(i))
			}
		}
	}
	return n
}
