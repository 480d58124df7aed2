package pdf

import (
	"fmt"
	"slices"
	"strings"
	"unicode"

	"cutbrief/report"

	"golang.org/x/text/unicode/norm"
)

// substitute stands for a rune the font cannot show.
const substitute = '?'

// cleaner makes every string of a brief printable, and remembers where it had
// to replace something.
type cleaner struct {
	faces faces
	lost  int      // runes replaced
	where []string // parts of the page they were in
}

// text returns s with nothing in it that cannot be printed: valid UTF-8, in
// composed form, no control and no direction mark, each rune with a glyph.
func (c *cleaner) text(part, s string) string {
	before := c.lost
	out := strings.Map(c.printable, norm.NFC.String(strings.ToValidUTF8(s, string(substitute))))
	if c.lost > before && !slices.Contains(c.where, part) {
		c.where = append(c.where, part)
	}
	return bind(out)
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

// brief returns a copy of b with every string made printable.
func (c *cleaner) brief(b report.Brief) report.Brief {
	out := report.Brief{
		Title: c.text("title", b.Title), Outcome: c.text("outcome", b.Outcome), Date: b.Date,
		Demo: c.text("banner", b.Demo), Who: c.lines("who and when", b.Who),
		Need: c.text("need", b.Need), Headline: c.text("recommendation", b.Headline),
		Because: c.list("recommendation", b.Because), Second: c.text("second choice", b.Second),
		Critical: c.text("what decides", b.Critical), Evidence: c.lines("what decides", b.Evidence),
		ShownBy: c.text("what decides", b.ShownBy), PlanNote: c.list("demonstration", b.PlanNote), Bring: c.text("demonstration", b.Bring),
		Confirm: c.lines("to confirm", b.Confirm), Flags: c.list("to confirm", b.Flags),
		Excluded: c.lines("systems not taken", b.Excluded), Cautions: c.lines("cautions", b.Cautions),
		Notes: c.list("notes", b.Notes), Footing: c.list("footing", b.Footing), Dropped: c.list("footing", b.Dropped),
	}
	out.Words = b.Words
	out.Leaving, out.OnSite = c.lines("checklists", b.Leaving), c.lines("checklists", b.OnSite)
	out.Working = c.reasons(b.Working)
	out.Cost, out.Speeds, out.Timeline, out.Pictures = c.cost(b.Cost), c.speeds(b.Speeds), c.timeline(b.Timeline), b.Pictures
	for _, x := range b.Bars {
		x.Label, x.Need, x.Have, x.Verdict = c.text("bars", x.Label), c.text("bars", x.Need), c.text("bars", x.Have), c.text("bars", x.Verdict)
		if strings.TrimSpace(x.Label+x.Need+x.Have) != "" {
			out.Bars = append(out.Bars, x)
		}
	}
	for _, r := range b.Plan {
		r = report.Row{
			Cut: c.text("demonstration", r.Cut), Piece: c.text("demonstration", r.Piece),
			Setting: c.text("demonstration", r.Setting), See: c.text("demonstration", r.See), Source: r.Source,
		}
		if strings.TrimSpace(r.Cut+r.Piece+r.Setting+r.See) != "" {
			out.Plan = append(out.Plan, r)
		}
	}
	return out
}

func (c *cleaner) reasons(list []report.Reason) []report.Reason {
	var out []report.Reason
	for _, r := range list {
		text := func(s string) string { return c.text("working", s) }
		out = append(out, report.Reason{
			Title: text(r.Title), Value: text(r.Value), Formula: text(r.Formula), Numbers: text(r.Numbers),
			Source: text(r.Source), Trust: text(r.Trust), Parts: c.reasons(r.Parts),
		})
	}
	return out
}

// cost cleans a copy: the brief's own stays as it is.
func (c *cleaner) cost(old *report.Cost) *report.Cost {
	if old == nil {
		return nil
	}
	clean := *old
	clean.Lines = c.list("cost", old.Lines)
	clean.Bars = slices.Clone(old.Bars)
	for i := range clean.Bars {
		clean.Bars[i].Label = c.text("cost", clean.Bars[i].Label)
		clean.Bars[i].Brief = c.text("cost", clean.Bars[i].Brief)
	}
	clean.Curves = c.curves(old.Curves)
	return &clean
}

func (c *cleaner) list(part string, texts []string) []string {
	var out []string
	for _, t := range texts {
		if t = c.text(part, t); strings.TrimSpace(t) != "" {
			out = append(out, t)
		}
	}
	return out
}

func (c *cleaner) lines(part string, lines []report.Line) []report.Line {
	var out []report.Line
	for _, l := range lines {
		l = report.Line{
			Label: c.text(part, l.Label), Value: c.text(part, l.Value), Why: c.text(part, l.Why),
			Source: c.text(part, l.Source), Trust: c.text(part, l.Trust),
		}
		if strings.TrimSpace(l.Label+l.Value+l.Why) != "" {
			out = append(out, l)
		}
	}
	return out
}

// said tells the reader what was replaced, "" if nothing was.
func (c *cleaner) said() string {
	if c.lost == 0 {
		return ""
	}
	return fmt.Sprintf("%d characters that this page's font cannot show are printed as “?” in: %s.", c.lost, strings.Join(c.where, ", "))
}
