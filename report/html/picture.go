package html

import (
	"fmt"
	"html"
	"strings"

	"cutbrief/report"
	"cutbrief/report/page"
)

// svg is a drawing with its name for those who do not see it.
func svg(class, name string, wide, high float64, inside string) markup {
	return markup(fmt.Sprintf(`<svg class="%s" viewBox="0 0 %g %g"%s role="img" aria-label="%s">%s</svg>`, class, wide, high, map[bool]string{true: ` preserveAspectRatio="none"`}[class == "bar"], html.EscapeString(name), inside))
}

// sign draws a safety sign.
func sign(s *page.Sign, name string) markup {
	var b strings.Builder
	for i := range s.Shapes {
		shape := &s.Shapes[i]
		paint := fmt.Sprintf(`fill="rgb(%d,%d,%d)"`, shape.Ink.R, shape.Ink.G, shape.Ink.B)
		if shape.Line > 0 {
			paint = fmt.Sprintf(`fill="none" stroke="rgb(%d,%d,%d)" stroke-width="%g" stroke-linejoin="round"`, shape.Ink.R, shape.Ink.G, shape.Ink.B, shape.Line)
		}
		if at := shape.Steps()[0].At; shape.Path[0] == 'O' {
			fmt.Fprintf(&b, `<circle cx="%g" cy="%g" r="%g" %s/>`, at[0], at[1], at[2], paint)
		} else {
			fmt.Fprintf(&b, `<path d="%s" %s/>`, shape.Path, paint)
		}
	}
	return svg("sign", name, page.Side, page.Side, b.String())
}

// hatching is the pattern of what is needed, or of today.
const hatching = `<defs><pattern id="h" width="4" height="4" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><path d="M0 0V4" stroke="#000" stroke-width="1.4"/></pattern></defs>`

// bars draws need against capability.
func bars(b report.Bar) markup {
	return svg("bar", colon(b.Label, b.Need+", "+b.Have), 100, 14, hatching+
		fmt.Sprintf(`<rect x="0" y="1" width="%.1f" height="5" fill="url(#h)" stroke="#000" stroke-width=".5"/><rect x="0" y="8" width="%.1f" height="5" fill="#1c3e50"/>`, 100*inside(b.NeedShare), 100*inside(b.HaveShare)))
}

// costRange draws what a length costs as a range, with a stroke at the likely
// figure; the first is today's.
func costRange(i int, b report.CostBar) markup {
	fill := "url(#h)"
	if i > 0 {
		fill = "#1c3e50"
	}
	low, mid, high := inside(b.Low), inside(b.Mid), inside(b.High)
	return svg("bar", colon(b.Label, b.Value), 100, 8, hatching+fmt.Sprintf(`<path d="M0 4H100" stroke="#888" stroke-width=".5"/><rect x="%.1f" y="1.5" width="%.1f" height="5" fill="%s" stroke="#000" stroke-width=".4"/><rect x="%.1f" y="0" width="1" height="8"/>`,
		100*low, max(100*(high-low), 0.5), fill, min(100*mid, 99)))
}

func inside(share float64) float64 {
	if !(share > 0) {
		return 0
	}
	return min(share, 1)
}

// The box of a picture, and of the plot in it.
const (
	wide, high = 320.0, 150.0
	plotX      = 42.0
	plotY      = 10.0
	plotWide   = 262.0
	plotHigh   = 112.0
)

// picture draws the one picture that tells most, "" where there is none: what
// cutting costs by thickness where a flame cuts today, else how fast the system
// cuts.
func picture(b *report.Brief) markup {
	if b.Cost != nil && b.Cost.Curves != nil && len(b.Cost.Curves.Points) > 1 {
		c := b.Cost.Curves
		var one, other [][2]float64
		for _, p := range c.Points {
			one, other = append(one, [2]float64{p.At, p.PlasmaShare}), append(other, [2]float64{p.At, p.FlameShare})
		}
		return figure(c.Title, c.Up, c.Across, c.Plasma, c.Flame, c.Ticks, c.UpTicks, one, other, c.Crossing.Label)
	}
	s := b.Speeds
	if s == nil || len(s.Line) < 2 {
		return ""
	}
	var one, other [][2]float64
	for _, p := range s.Line {
		if p.At <= s.CleanAt {
			one = append(one, [2]float64{p.At, p.Share})
		}
		if p.At >= s.CleanAt {
			other = append(other, [2]float64{p.At, p.Share})
		}
	}
	var says []string
	for _, m := range s.Marks {
		if m.Yours {
			says = append(says, m.Label)
		}
	}
	return figure(s.Title, s.Up, s.Across, s.Clean, s.Severed, s.Ticks, s.UpTicks, one, other, strings.Join(append(says, s.Rests), "; "))
}

// figure is two lines, one solid and one in dashes, with their axes, and what is
// said of them below.
func figure(title, up, across, solid, dashed string, ticks, upTicks []report.CurveTick, one, other [][2]float64, says string) markup {
	var b strings.Builder
	x := func(share float64) float64 { return plotX + plotWide*inside(share) }
	y := func(share float64) float64 { return plotY + plotHigh*(1-inside(share)) }
	text := func(at, down float64, anchor, words string) {
		fmt.Fprintf(&b, `<text x="%.1f" y="%.1f" text-anchor="%s">%s</text>`, at, down, anchor, html.EscapeString(words))
	}
	fmt.Fprintf(&b, `<path d="M%g %gV%gH%g" fill="none" stroke="#000"/>`, plotX, plotY, plotY+plotHigh, plotX+plotWide)
	for _, t := range ticks {
		text(x(t.At), plotY+plotHigh+12, "middle", t.Label)
	}
	for _, t := range upTicks {
		text(plotX-4, y(t.At)+3, "end", t.Label)
	}
	for i, points := range [][][2]float64{one, other} {
		path := ""
		for k, p := range points {
			path += fmt.Sprintf("%c%.1f %.1f", "ML"[min(k, 1)], x(p[0]), y(p[1]))
		}
		fmt.Fprintf(&b, `<path d="%s" fill="none" stroke="#1c3e50" stroke-width="2"%s/>`, path, []string{"", ` stroke-dasharray="6 4"`}[i])
	}
	text(plotX+plotWide, high-4, "end", across)
	esc := html.EscapeString
	return markup(`<figure><figcaption>`+esc(title)+`, `+esc(up)+` (— `+esc(solid)+`; - - `+esc(dashed)+`)</figcaption>`) +
		svg("plot", title, wide, high, b.String()) + markup(`<p class="small">`+esc(says)+`</p></figure>`)
}
