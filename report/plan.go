package report

import (
	"fmt"
	"math"
	"strings"

	"cutbrief/rules"
	"cutbrief/rules/demonstration"
	"cutbrief/rules/metal"
	"cutbrief/rules/unit"
)

// shownBy says how the demonstration shows what decides.
func (b *builder) shownBy() string {
	decides := b.result.Critical.Requirement
	if len(b.plan) == 0 || decides == "" {
		return ""
	}
	var cuts []string
	for _, c := range b.plan {
		if c.Proves == decides {
			cuts = append(cuts, lower(c.Name.String()))
		}
	}
	if len(cuts) == 0 {
		return "No cut of this plan can show it: it has to be talked through."
	}
	return "The demonstration shows it first: " + strings.Join(cuts, "; ") + "."
}

// lower starts a name as it stands inside a sentence.
func lower(s string) string { return strings.ToLower(s[:1]) + s[1:] }

func (b *builder) rows() []Row {
	var list []Row
	for _, c := range b.plan {
		list = append(list, Row{
			Cut: c.Name.String(), Piece: b.pieceOf(c.Metal, c.Thickness), Setting: b.setting(&c.Setting), See: string(c.See),
			Because: because(&c), Beware: "It can fail like this: " + string(c.Fails) + "; so " + string(c.Avoid) + ".", Takes: minutes(c.Takes), Source: cited(c.Source),
		})
	}
	return list
}

// pieceOf words a piece, the thickness first: it is what may not be cut off.
func (b *builder) pieceOf(id metal.ID, t unit.Millimetre) string {
	return b.told(millimetres(t)) + " " + metalName(id)
}

// setting words how the torch is set: "40 A, tip on the work".
func (b *builder) setting(s *demonstration.Setting) string {
	text := unit.Show(amperes(s.Output), b.style, unit.Down) + ", " + b.tip(s)
	if speed, ok := s.Speed.Get(); ok {
		text += ", " + b.given(unit.Quantity{Value: float64(speed), Kind: unit.Speed})
	}
	if seconds, ok := s.Seconds.Get(); ok {
		text += ": " + b.told(millimetres(s.Length)) + " in " + b.told(secs(seconds))
	}
	return text
}

// tip says how the tip is held.
func (b *builder) tip(s *demonstration.Setting) string {
	switch {
	case s.Shielded:
		return "shielded tip on the work"
	case s.OnWork:
		return "tip on the work"
	}
	return "stand-off " + b.between(s.StandOff)
}

// because says what a cut proves and why it is in the plan.
func because(c *demonstration.Cut) string {
	if c.Proves == "" {
		return string(c.Chosen)
	}
	return capital(RequirementName(c.Proves)) + ": " + lower(string(c.Chosen))
}

// minutes writes a time of the plan in whole minutes.
func minutes(t unit.Second) string {
	return fmt.Sprintf("%.0f min", max(math.Ceil(float64(t)/60-1e-9), 0)) // never -0
}

// leftOut lists the cuts that are not in the plan, each with its reason.
func (b *builder) leftOut() []Line {
	var list []Line
	for _, l := range b.showing.LeftOut {
		list = append(list, Line{Label: l.Name.String(), Why: l.Reason.String()})
	}
	return list
}

// timeNote says how the plan fits the time there is.
func (b *builder) timeNote() string {
	text := "Takes about " + minutes(b.showing.Takes) + " of "
	if b.showing.Told {
		return text + "the " + minutes(b.showing.Given) + " given."
	}
	return text + "the usual " + minutes(b.showing.Given) + "."
}

// between words a range of stand-offs with the unit once. In inches they are
// rounded to a sixteenth, as fine as a stand-off is kept by eye.
func (b *builder) between(r [2]unit.Millimetre) string {
	if b.style == unit.Metric {
		return strings.TrimSuffix(b.told(millimetres(r[0])), " mm") + "–" + b.told(millimetres(r[1]))
	}
	return strings.TrimSuffix(b.told(sixteenth(r[0])), " in") + " to " + b.told(sixteenth(r[1]))
}

// sixteenth rounds a length to the nearest 1/16 in, 1.5875 mm. Check: 3 mm is
// 1/8 in, 6 mm 1/4 in, 10 mm 3/8 in.
func sixteenth(t unit.Millimetre) unit.Quantity {
	const step = 25.4 / 16
	return millimetres(unit.Millimetre(math.Round(float64(t)/step) * step))
}

// planNotes say how long it takes, and how the bench and the torch are made
// ready.
func (b *builder) planNotes() []string {
	if len(b.plan) == 0 {
		return nil
	}
	s := &b.plan[0].Setting
	return []string{
		b.timeNote(),
		"Fit new consumables and make one test cut before the customer looks, on a steady bench at waist height.",
		"Pull the torch, do not push it: lead angle " + degrees(s.Lead) + ", arc trailing " + degrees(s.Trailing) + " below. The manual decides.",
	}
}

// propsOf are the things to bring for one cut.
func propsOf(c *demonstration.Cut) []string {
	var list []string
	for _, prop := range c.Props {
		list = append(list, string(prop))
	}
	return list
}

// bring lists what the plan needs, "" without one.
func (b *builder) bring() string {
	var props []string
	for i := range b.plan {
		props = append(props, propsOf(&b.plan[i])...)
	}
	if len(props) == 0 {
		return ""
	}
	return "Bring: " + strings.Join(unique(props), ", ") + "."
}

func degrees(r [2]unit.Degree) string {
	show := func(d unit.Degree) string {
		return unit.Show(unit.Quantity{Value: float64(d), Kind: unit.Angle}, unit.Metric, unit.Nearest)
	}
	return strings.TrimSuffix(show(r[0]), "°") + "–" + show(r[1])
}

func (b *builder) cautions() []Line {
	var list []Line
	for _, c := range b.warned {
		list = append(list, Line{Label: plain(strings.ReplaceAll(c.ID, "-", " ")), Value: string(c.Text), Source: cited(c.Source), Trust: trusted(c.Source), Hazard: c.Hazard, Raised: c.Raised})
	}
	return list
}

func (b *builder) flags() []string {
	var list []string
	for _, f := range b.result.Flags {
		list = append(list, string(f.Sentence))
	}
	return list
}

// recommended reports whether the page recommends a system.
func (b *builder) recommended() bool { return b.result.Outcome == rules.Recommended }
