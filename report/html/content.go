package html

import (
	"fmt"
	"html"
	"slices"
	"strings"

	"cutbrief/report"
	"cutbrief/rules"
	"cutbrief/rules/message"
)

// markup is HTML already; any other text is escaped where it is put.
type markup string

// content is the page as it is written: the brief, and what is worked out of it.
type content struct {
	*report.Brief
	groups  []report.CautionGroup
	key     string
	confirm []report.Line // with the flags
	out     strings.Builder
}

// put writes a form with its texts: markup as it is, messages in the words of the
// brief, strings as they are, and the latter two escaped.
func (c *content) put(form string, texts ...any) {
	escaped := make([]any, len(texts))
	for i, t := range texts {
		switch t := t.(type) {
		case markup:
			escaped[i] = string(t)
		case message.ID:
			escaped[i] = html.EscapeString(c.say(t))
		case string:
			escaped[i] = html.EscapeString(t)
		}
	}
	fmt.Fprintf(&c.out, form, escaped...)
}

func (c *content) say(id message.ID) string { return c.Words.Print(id.Message()) }

// some puts a form with its text unless the text is empty.
func (c *content) some(form, text string) {
	if text != "" {
		c.put(form, text)
	}
}

// list puts a title and a line for each; nothing where there are no lines.
func (c *content) list(title message.ID, class string, lines []report.Line, item func(report.Line) markup) {
	if len(lines) == 0 {
		return
	}
	c.put("<h3>%s</h3>\n<ul%s>", title, markup(class))
	for _, l := range lines {
		c.put("<li>%s</li>", item(l))
	}
	c.put("</ul>\n")
}

func escape(s string) markup { return markup(html.EscapeString(s)) }

// strong is a label in bold before what it is about.
func strong(l report.Line) markup {
	return "<strong>" + escape(l.Label) + "</strong>: " + escape(l.Why)
}

func value(l report.Line) markup { return escape(l.Value) }

// head is everything before what we recommend.
func (c *content) head() {
	title := c.Title
	if len(c.Who) > 0 {
		title += " · " + c.Who[0].Value
	}
	size, dense := typeSize(c)
	class := ""
	if dense {
		class = ` class="dense"`
	}
	c.put(`<!DOCTYPE html>
<html lang="%s"%s style="%s">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
<title>%s</title>
<style>
%s</style>
</head>
<body>
<header>
<h1>%s</h1>
<dl>`, c.Words.Tag(), markup(class), fmt.Sprintf("--print:%.2fpt", size), title, markup(style), c.Title)
	for _, l := range c.Who {
		c.put("<div><dt>%s</dt><dd>%s</dd></div>", l.Label, l.Value)
	}
	c.put("</dl>\n")
	c.some(`<p class="demo">%s</p>`, c.Demo)
	c.put("\n</header>\n<main>\n")
}

// answer is what we recommend, and why.
func (c *content) answer() {
	c.put(`<section class="answer" aria-labelledby="answer">
<h2 id="answer">%s</h2>
<p class="head">%s</p>
`, c.Answer(), c.Headline)
	c.some("<p>%s</p>\n", c.Need)
	c.bullets(c.Because)
	c.some(`<p class="quiet">%s</p>`, c.Second)
	c.put("\n</section>\n")
}

// bullets are a list of texts, nothing for none.
func (c *content) bullets(texts []string) {
	if len(texts) == 0 {
		return
	}
	c.put("<ul>")
	for _, s := range texts {
		c.put("<li>%s</li>", s)
	}
	c.put("</ul>\n")
}

// proof is requirement against capability, one picture, what it costs, and what
// decides.
func (c *content) proof() {
	c.put(`<section aria-labelledby="proof">
<h2 id="proof">%s</h2>
<div class="two flow">
<div>
`, report.PageProof)
	if len(c.Bars) > 0 {
		heads := markup("")
		if !slices.ContainsFunc(c.Bars, func(b report.Bar) bool { return b.Verdict != c.say(message.ID(rules.Met)) }) {
			heads = ` class="off-paper"` // no row is printed below them
		}
		c.put(`<table><caption>%s</caption>
<thead%s><tr><th scope="col">%s</th><th scope="col">%s</th><th scope="col">%s</th><th scope="col">%s</th><td></td></tr></thead>
<tbody>`, report.PageGiven, heads, message.ID("Check"), message.ID("Needed"), message.ID("Given"), message.ID("Verdict"))
		var met []markup // which a printed page sums up
		for _, b := range c.Bars {
			class := markup(` class="unmet"`)
			if b.Verdict == c.say(message.ID(rules.Met)) {
				class = ` class="met"`
				met = append(met, escape(b.Label)+`<span class="spare"> (`+escape(b.Need+", "+b.Have)+`)</span>`)
			}
			c.put(`<tr%s><th scope="row">%s</th><td>%s</td><td>%s</td><td>%s</td><td>%s</td></tr>`, class, b.Label, b.Need, b.Have, b.Verdict, bars(b))
		}
		c.put("</tbody></table>")
		if len(met) > 0 {
			c.put(`<p class="on-paper"><strong>%s:</strong> %s</p>`, report.PageMet, joinedMarkup(met, " · "))
		}
	}
	c.put("\n%s\n</div>\n<div>\n", picture(c.Brief))
	if c.Cost != nil {
		title := report.PageCosts
		if c.Cost.Assumed {
			title = report.PageAssumed
		}
		c.put("<h3>%s</h3>\n", title)
		for i, l := range c.Cost.Lines {
			class := markup("")
			if i > 1 {
				class = ` class="off-paper"`
			}
			c.put("<p%s>%s</p>", class, l)
		}
		for i, b := range c.Cost.Bars {
			c.put("<p><strong>%s</strong> %s</p>%s", b.Label, b.Value, costRange(i, b))
		}
	}
	if c.Critical != "" {
		c.put("<h3>%s: %s</h3>\n", message.ID("What decides"), c.Critical)
	}
	var evidence []string
	for _, l := range c.Evidence {
		evidence = append(evidence, l.Value)
	}
	c.bullets(evidence)
	c.some(`<p class="quiet off-paper">%s</p>`, c.ShownBy)
	c.put("\n</div>\n</div>\n</section>\n")
}

// next is what happens now: the demonstration, and what is to be confirmed.
func (c *content) next() {
	c.put(`<section aria-labelledby="next">
<h2 id="next">%s</h2>
<div class="flow">
`, report.PageNext)
	if len(c.Plan) > 0 {
		c.put(`<table class="plan"><caption>%s</caption>
<thead><tr><th scope="col">%s</th><th scope="col">%s</th><th scope="col" class="off-paper">%s</th><th scope="col">%s</th></tr></thead>
<tbody>`, report.PageShows, message.ID("Cut"), message.ID("Metal and thickness"), message.ID("Setting"), message.ID("What to look for"))
		for _, r := range c.Plan {
			c.put(`<tr><th scope="row">%s</th><td>%s</td><td class="off-paper">%s</td><td class="spare">%s</td></tr>`, r.Cut, r.Piece, r.Setting, r.See)
		}
		c.put("</tbody></table>\n<p class=\"small\">%s</p><p class=\"small off-paper\">", c.Bring)
		for _, s := range c.PlanNote {
			c.put("%s ", s)
		}
		c.put("</p>")
	}
	title := report.PageOpen
	if rules.Outcome(c.Outcome) == rules.Recommended {
		title = report.PageConfirm
	}
	c.list(title, ` class="tick two"`, c.confirm, func(l report.Line) markup {
		if named := colon(l.Label, l.Value); named != "" {
			return "<strong>" + escape(named) + "</strong> " + escape(l.Why)
		}
		return " " + escape(l.Why)
	})
	c.put("\n</div>\n</section>\n")
}

// cautions are grouped by hazard, each beside its sign, with the key of sources.
func (c *content) cautions() {
	c.put(`<section aria-labelledby="cautions">
<h2 id="cautions">%s</h2>
<div class="groups">`, report.PageDangers)
	for _, g := range c.groups {
		c.put(`<div class="group">%s<ul>`, sign(g.Sign, c.say(g.Sign.Name)))
		for _, i := range g.Items {
			class := markup("")
			if i.Raised {
				class = ` class="raised"`
			}
			c.put("<li%s>%s", class, i.Text)
			c.some(` <span class="cite">[%s]</span>`, i.Letter)
			c.put("</li>")
		}
		c.put("</ul></div>")
	}
	c.put("</div>\n")
	c.some(`<p class="small">%s</p>`, c.key)
	c.put("\n</section>\n")
}

// behind is what a printed page leaves to other sheets.
func (c *content) behind() {
	if len(c.Excluded)+len(c.Notes) > 0 {
		c.put(`<section class="more two">`)
		c.box(func() { c.list(report.PageNotTaken, "", c.Excluded, strong) }, len(c.Excluded) > 0)
		c.box(func() {
			c.put("<h3>%s</h3><ul>", report.PageNotes)
			for _, s := range c.Notes {
				c.put("<li>%s</li>", s)
			}
			c.put("</ul>")
		}, len(c.Notes) > 0)
		c.put("</section>\n")
	}
	if len(c.Leaving)+len(c.OnSite) > 0 {
		c.put(`<section class="more two">`)
		c.box(func() { c.list("Before leaving", ` class="tick"`, c.Leaving, value) }, len(c.Leaving) > 0)
		c.box(func() { c.list("At the site, before the first arc", ` class="tick"`, c.OnSite, value) }, len(c.OnSite) > 0)
		c.put("</section>\n")
	}
	if c.Private {
		c.private()
	}
	if len(c.Working) > 0 {
		c.working()
	}
}

// box puts what is written into a division of its own, if it is there.
func (c *content) box(write func(), there bool) {
	if there {
		c.put("<div>")
		write()
		c.put("</div>\n")
	}
}

// private is for the representative alone.
func (c *content) private() {
	c.put(`<section class="private" aria-labelledby="private">
<h2 id="private">%s</h2>
<p><strong>%s</strong></p>
`, report.PageSheet, report.PagePrivate)
	if len(c.Objections) > 0 {
		c.put("<h3>%s</h3><dl>", report.PageObjections)
		for _, l := range c.Objections {
			c.put("<div><dt>%s</dt> <dd>%s</dd></div>", l.Label, l.Value)
		}
		c.put("</dl>\n")
	}
	c.list(report.PageLeftOut, "", c.LeftOut, strong)
	c.put("</section>\n")
}

// working is the derivation of every number.
func (c *content) working() {
	c.put(`<section class="more"><h2>%s</h2>`, message.ID("Working"))
	for _, r := range c.Working {
		c.put("<h3>%s</h3>", colon(r.Title, r.Value))
		c.some("<p>%s</p>", r.Formula)
		c.some("<p>%s</p>", r.Numbers)
		if r.Source != "" {
			c.put(`<p class="small">%s</p>`, r.Source)
		} else {
			c.some(`<p class="small">%s</p>`, r.Trust)
		}
		if len(r.Parts) > 0 {
			c.put("<ul>")
			for _, p := range r.Parts {
				c.put("<li>%s %s</li>", colon(p.Title, p.Value), p.Numbers)
			}
			c.put("</ul>")
		}
	}
	c.put("</section>\n")
}

// foot is the basis of the figures, and the lines to sign on.
func (c *content) foot() {
	c.put("</main>\n<footer>\n")
	if len(c.Footing) > 0 {
		c.put(`<p class="small">`)
		for _, s := range c.Footing {
			c.put("%s ", s)
		}
		c.put("</p>\n")
	}
	for _, s := range c.Dropped {
		c.put("<p><strong>%s</strong></p>", s)
	}
	c.put(`
<div class="sign-off"><p>%s</p><p>%s</p><p>%s</p><p>%s</p></div>
</footer>
</body>
</html>
`, report.PageCustomer, report.PageDate, report.PageSeller, report.PageDate)
}

// joinedMarkup is strings.Join of markup.
func joinedMarkup(list []markup, sep markup) (all markup) {
	for i, m := range list {
		if i > 0 {
			all += sep
		}
		all += m
	}
	return all
}

// colon joins a label and a value.
func colon(label, value string) string {
	if label == "" || value == "" {
		return label + value
	}
	return label + ": " + value
}
