// Package html writes a brief as a web page: one file that needs nothing else,
// no script and no network, readable on a telephone and with a screen reader,
// printed on one sheet. It words nothing and computes no figure.
package html

import (
	"bytes"
	_ "embed"
	"fmt"
	"html/template"
	"math"
	"reflect"
	"strings"
	"unicode"

	"cutbrief/report"
	"cutbrief/report/page"
	"cutbrief/rules"
	"cutbrief/rules/message"
)

//go:embed page.tmpl
var source string

// content is what the template shows: the brief, and what is worked out of it.
type content struct {
	*report.Brief
	Lang    string
	Groups  []page.Group
	Key     string
	Confirm []report.Line // with the flags
	Private bool
	Print   template.CSS // the size of the type on paper
}

// Render writes the page. The same brief gives the same bytes; whatever the
// texts hold, they stay texts.
func Render(b report.Brief) ([]byte, error) {
	groups, key := page.Cautions(b.Cautions)
	c := content{Brief: &b, Lang: b.Words.Tag(), Groups: groups, Key: page.Key(b.Words, key), Confirm: b.Confirm, Private: b.Private}
	for _, f := range b.Flags {
		c.Confirm = append(c.Confirm[:len(c.Confirm):len(c.Confirm)], report.Line{Why: f})
	}
	c.Print = template.CSS(fmt.Sprintf("--print:%.2fpt", typeSize(&c)))
	t, err := template.New("page").Funcs(template.FuncMap{
		"say":     func(id string) string { return b.Words.Print(message.ID(id).Message()) },
		"answer":  func() string { return b.Words.Print(b.Answer().Message()) },
		"confirm": func() string { return b.Words.Print(confirmTitle(b.Outcome).Message()) },
		"met":     func(x report.Bar) bool { return x.Verdict == b.Words.Print(message.ID(rules.Met).Message()) },
		"sign":    func(s *page.Sign) template.HTML { return sign(s, b.Words.Print(s.Name.Message())) },
		"bars":    bars,
		"costbar": costRange,
		"picture": picture,
		"colon":   colon,
	}).Parse(source)
	if err != nil {
		return nil, fmt.Errorf("read the form of the web page: %w", err)
	}
	var out bytes.Buffer
	if err := t.Execute(&out, c); err != nil {
		return nil, fmt.Errorf("write the web page: %w", err)
	}
	return []byte(strings.Map(printable, strings.ToValidUTF8(out.String(), "\uFFFD"))), nil
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

func confirmTitle(outcome string) message.ID {
	if rules.Outcome(outcome) == rules.Recommended {
		return page.Confirm
	}
	return page.Open
}

// colon joins a label and a value.
func colon(label, value string) string {
	if label == "" || value == "" {
		return label + value
	}
	return label + ": " + value
}

// typeSize is the size of body type, in pt, with which what is printed takes one
// sheet of either paper: the area of a text grows with the square of its size.
// The factor was found by printing with a browser.
func typeSize(c *content) float64 {
	const area, largest, least = 470_000.0, 9.5, 5.5
	b := c.Brief
	n := 0.0
	for _, part := range []any{b.Who, b.Demo, b.Need, b.Headline, b.Because, b.Because, b.Second, b.Critical, b.Evidence, b.Bring, c.Confirm, b.Footing, c.Key} {
		n += length(reflect.ValueOf(part))
	}
	for _, x := range b.Bars {
		n += float64(max(2*len(x.Label), len(x.Need)+len(x.Have)) + 60)
	}
	for _, r := range b.Plan {
		n += float64(len(r.Cut) + len(r.Piece) + len(r.See) + 60)
	}
	if b.Cost != nil {
		n += length(reflect.ValueOf(b.Cost.Lines[:min(2, len(b.Cost.Lines))])) + 300
	}
	for _, g := range c.Groups {
		for _, i := range g.Items {
			n += float64(len(i.Text) + 40)
		}
		n += 60
	}
	return min(max(math.Sqrt(area/(n+1200)), least), largest)
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
