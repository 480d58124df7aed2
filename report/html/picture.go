package html

import (
	"fmt"
	"html"
	"slices"
	"strings"

	"cutbrief/report"
)

// svg is a drawing with its name for those who do not see it.
func svg(class, name string, wide, high float64, inside string) markup {
	return markup(fmt.Sprintf(`<svg class="%s" viewBox="0 0 %g %g"%s role="img" aria-label="%s">%s</svg>`, class, wide, high, map[bool]string{true: ` preserveAspectRatio="none"`}[class == "bar"], html.EscapeString(name), inside))
}

// sign draws a safety sign.
func sign(s *report.Sign, name string) markup {
	var b strings.Builder
	for i := range s.Shapes {
		shape := &s.Shapes[i]
		paint := fmt.Sprintf(`fill="rgb(%d,%d,%d)"`, shape.Ink.R, shape.Ink.G, shape.Ink.B)
		if shape.Line > 0 {
			paint = fmt.Sprintf(`fill="none" stroke="rgb(%d,%d,%d)" stroke-width="%g" stroke-linejoin="round"`, shape.Ink.R, shape.Ink.G, shape.Ink.B, shape.Line)
		}
		if at := shape.Steps[0].At; shape.Path[0] == 'O' {
			fmt.Fprintf(&b, `<circle cx="%g" cy="%g" r="%g" %s/>`, at[0], at[1], at[2], paint)
		} else {
			fmt.Fprintf(&b, `<path d="%s" %s/>`, shape.Path, paint)
		}
	}
	return svg("sign", name, report.SignSide, report.SignSide, b.String())
}

// hatching is the pattern of what is needed, or of today.
const hatching = `<defs><pattern id="h" width="4" height="4" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><path d="M0 0V4" stroke="#000" stroke-width="1.4"/></pattern></defs>`

// bars draws need against capability.
func bars(b report.Bar) markup {
	return svg("bar", colon(b.Label, b.Need+", "+b.Have), 100, 14, hatching+
		fmt.Sprintf(`<rect x="0" y="1" width="%.1f" height="5" fill="url(#h)" stroke="#000" stroke-width=".5"/><rect x="0" y="8" width="%.1f" height="5" fill="#1c3e50"/>`, 100*report.AxisShare(b.NeedShare), 100*report.AxisShare(b.HaveShare)))
}

// costRange draws what a length costs as a range, with a stroke at the likely
// figure; the first is today's.
func costRange(i int, b report.CostBar) markup {
	fill := "url(#h)"
	if i > 0 {
		fill = "#1c3e50"
	}
	low, mid, high := report.AxisShare(b.Low), report.AxisShare(b.Mid), report.AxisShare(b.High)
	return svg("bar", colon(b.Label, b.Value), 100, 8, hatching+fmt.Sprintf(`<path d="M0 4H100" stroke="#888" stroke-width=".5"/><rect x="%.1f" y="1.5" width="%.1f" height="5" fill="%s" stroke="#000" stroke-width=".4"/><rect x="%.1f" y="0" width="1" height="8"/>`,
		100*low, max(100*(high-low), 0.5), fill, min(100*mid, 99)))
}

// The box of a picture, and of the plot in it.
const (
	wide, high = 320.0, 150.0
	plotX      = 42.0
	plotY      = 10.0
	plotWide   = 262.0
	plotHigh   = 112.0
)

// picture draws the one picture that tells most, "" where there is none: a solid
// line and one in dashes with their axes, and what is said of them below.
func picture(brief *report.Brief) markup {
	p := report.PictureOf(brief)
	if p == nil {
		return ""
	}
	var b strings.Builder
	x := func(share float64) float64 { return plotX + plotWide*report.AxisShare(share) }
	y := func(share float64) float64 { return plotY + plotHigh*(1-report.AxisShare(share)) }
	text := func(at, down float64, anchor, words string) {
		fmt.Fprintf(&b, `<text x="%.1f" y="%.1f" text-anchor="%s">%s</text>`, at, down, anchor, html.EscapeString(words))
	}
	fmt.Fprintf(&b, `<path d="M%g %gV%gH%g" fill="none" stroke="#000"/>`, plotX, plotY, plotY+plotHigh, plotX+plotWide)
	for _, t := range p.Ticks {
		text(x(t.At), plotY+plotHigh+12, "middle", t.Label)
	}
	for _, t := range p.UpTicks {
		text(plotX-4, y(t.At)+3, "end", t.Label)
	}
	for i, l := range p.Lines {
		path := ""
		for k, at := range l.Points {
			path += fmt.Sprintf("%c%.1f %.1f", "ML"[min(k, 1)], x(at[0]), y(at[1]))
		}
		fmt.Fprintf(&b, `<path d="%s" fill="none" stroke="#1c3e50" stroke-width="2"%s/>`, path, []string{"", ` stroke-dasharray="6 4"`}[i])
	}
	says := append([]string{}, p.Crossing.Label, p.Rests)
	if p.Everyday != nil {
		fmt.Fprintf(&b, `<path d="M%.1f %gV%g" stroke="#000"/>`, x(p.Everyday.At), plotY, plotY+plotHigh)
		says = append([]string{p.Everyday.Label}, says...)
	}
	for i := len(p.Marks) - 1; i >= 0; i-- {
		m := p.Marks[i]
		fmt.Fprintf(&b, `<rect x="%.1f" y="%.1f" width="5" height="5"/>`, x(m.At)-2.5, y(m.Share)-2.5)
		says = append([]string{m.Label}, says...)
	}
	text(plotX+plotWide, high-4, "end", p.Across)
	esc := html.EscapeString
	said := strings.Join(slices.DeleteFunc(says, func(s string) bool { return s == "" }), "; ")
	return markup(`<figure><figcaption>`+esc(p.Title)+`, `+esc(p.Up)+` (— `+esc(p.Lines[0].Name)+`; - - `+esc(p.Lines[1].Name)+`)</figcaption>`) +
		svg("plot", p.Title, wide, high, b.String()) + markup(`<p class="small">`+esc(said)+`</p></figure>`)
}
