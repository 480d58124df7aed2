package html

import (
	"bytes"
	"strings"
	"testing"

	"cutbrief/report"

	"golang.org/x/net/html"
)

// walk visits every element.
func walk(n *html.Node, visit func(*html.Node)) {
	if n.Type == html.ElementNode {
		visit(n)
	}
	for c := n.FirstChild; c != nil; c = c.NextSibling {
		walk(c, visit)
	}
}

func attribute(n *html.Node, name string) string {
	for _, a := range n.Attr {
		if a.Key == name || a.Namespace != "" && a.Namespace+":"+a.Key == name {
			return a.Val
		}
	}
	return ""
}

// words are all texts below a node.
func words(n *html.Node) string {
	if n.Type == html.TextNode {
		return n.Data
	}
	text := ""
	for c := n.FirstChild; c != nil; c = c.NextSibling {
		text += words(c)
	}
	return text
}

// Every page says its language, has one heading of the first order and no gap in
// the others, headers to each table, a text for each drawing, and nothing that
// runs or is fetched.
func TestRulesOfThePage(t *testing.T) {
	for name, text := range pages(t) {
		doc, err := html.Parse(strings.NewReader(text))
		if err != nil {
			t.Fatal(err)
		}
		level, first := 0, 0
		seen := map[string]bool{}
		walk(doc, func(n *html.Node) {
			switch n.Data {
			case "html":
				if want := name[strings.LastIndex(name, "-")+1:]; attribute(n, "lang") != want {
					t.Errorf("%s: lang %q", name, attribute(n, "lang"))
				}
			case "h1", "h2", "h3":
				now := int(n.Data[1] - '0')
				if now > level+1 || strings.TrimSpace(words(n)) == "" {
					t.Errorf("%s: heading %q of order %d after %d", name, words(n), now, level)
				}
				if level = now; now == 1 {
					first++
				}
			case "table":
				heads := map[string]int{}
				walk(n, func(n *html.Node) { heads[n.Data+attribute(n, "scope")]++ })
				if heads["caption"] != 1 || heads["thcol"] == 0 || heads["throw"] == 0 {
					t.Errorf("%s: a table without headers: %v", name, heads)
				}
			case "svg":
				if attribute(n, "role") != "img" || attribute(n, "aria-label") == "" {
					t.Errorf("%s: a drawing without a text", name)
				}
			case "script", "link", "img", "iframe", "form", "object", "embed":
				t.Errorf("%s: holds <%s>", name, n.Data)
			}
			for _, a := range n.Attr {
				if strings.HasPrefix(a.Key, "on") || a.Key == "src" || a.Key == "href" {
					t.Errorf("%s: <%s> has %s", name, n.Data, a.Key)
				}
			}
			if id := attribute(n, "id"); id != "" {
				if seen[id] && id != "h" { // the pattern of hatching is the same each time
					t.Errorf("%s: two of %s", name, id)
				}
				seen[id] = true
			}
		})
		if first != 1 {
			t.Errorf("%s: %d headings of the first order", name, first)
		}
		if strings.Contains(text, "http") && strings.Contains(strings.ReplaceAll(text, "http-equiv", ""), "http") {
			t.Errorf("%s: names an address", name)
		}
	}
}

// What a customer or a rep typed stays a text, and the same brief gives the same
// bytes.
func TestTextsStayTexts(t *testing.T) {
	evil := "</style><script>alert(1)</script>\x00\x1b[31m\u202e\" onload=\"x"
	b := report.Brief{Title: evil, Headline: evil, Need: evil, Who: []report.Line{{Label: evil, Value: evil}}, Because: []string{evil},
		Bars: []report.Bar{{Label: evil, Need: evil, Have: evil, Verdict: evil}}, Cautions: []report.Line{{Value: evil, Source: evil}}, Notes: []string{evil}}
	one, err := Render(b)
	if err != nil {
		t.Fatal(err)
	}
	two, _ := Render(b)
	if !bytes.Equal(one, two) || bytes.ContainsAny(one, "\x00\x1b\u202e") {
		t.Error("other bytes the next time, or a control among them")
	}
	doc, err := html.Parse(bytes.NewReader(one))
	if err != nil {
		t.Fatal(err)
	}
	walk(doc, func(n *html.Node) {
		if n.Data == "script" || attribute(n, "onload") != "" {
			t.Errorf("<%s> came out of a text", n.Data)
		}
	})
	if _, err := Render(report.Brief{}); err != nil {
		t.Error("an empty brief:", err)
	}
}
