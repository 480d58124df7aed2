package report

import (
	"math"
	"strconv"
	"strings"

	"cutbrief/rules/demonstration"
	"cutbrief/rules/message"
	"cutbrief/rules/metal"
	"cutbrief/rules/unit"
)

// shownBy says how the demonstration shows what decides.
func (b *builder) shownBy() message.Message {
	decides := b.result.Critical.Requirement
	if len(b.plan) == 0 || decides == "" {
		return message.Message{}
	}
	var cuts []message.Message
	for _, c := range b.plan {
		if c.Proves == decides {
			cuts = append(cuts, c.Name.Within())
		}
	}
	if len(cuts) == 0 {
		return msg("No cut in this plan can show it: talk it through.")
	}
	return msg("The demonstration shows it first: {1}.", message.Join("; ", cuts...))
}

func (b *builder) rows() []Row {
	var list []Row
	for i := range b.plan {
		c := &b.plan[i]
		because := worded(c.Chosen)
		if c.Proves != "" {
			because = msg("{1}: {2}", RequirementName(c.Proves).Message().Capital(), because.Within())
		}
		list = append(list, Row{
			Cut: b.print(c.Name), Piece: b.print(b.pieceOf(c.Metal, c.Thickness)), Setting: b.print(b.setting(&c.Setting)), See: b.print(worded(c.See)),
			Because: b.print(because), Beware: b.print(msg("It can fail like this: {1}; so {2}.", worded(c.Fails), worded(c.Avoid))),
			Takes: b.print(minutes(c.Takes)), Source: b.cited(c.Source),
		})
	}
	return list
}

// pieceOf words a piece, the thickness first: it is what may not be cut off.
func (b *builder) pieceOf(id metal.ID, t unit.Millimetre) message.Message {
	return msg("{1} {2}", b.told(millimetres(t)), metalName(id))
}

// setting words how the torch is set: "40 A, tip on the work".
func (b *builder) setting(s *demonstration.OperatingPoint) message.Message {
	text := message.Join(", ", message.Number(unit.Show(amperes(s.Output), b.style, unit.Down)), b.tip(s))
	if v, ok := s.Speed.Get(); ok {
		text = message.Join(", ", text, b.given(speed(v)))
	}
	if t, ok := s.Seconds.Get(); ok {
		text = message.Join(": ", text, b.lengthIn(s.Length, t))
	}
	return text
}

// lengthIn words a length and the time it takes: "300 mm in 18 s".
func (b *builder) lengthIn(length unit.Millimetre, t unit.Second) message.Message {
	return msg("{1} in {2}", b.told(millimetres(length)), b.told(seconds(t)))
}

// tip says how the tip is held.
func (b *builder) tip(s *demonstration.OperatingPoint) message.Message {
	switch {
	case s.Shielded:
		return msg("shielded tip on the work")
	case s.OnWork:
		return msg("tip on the work")
	}
	return msg("stand-off {1}", b.between(s.StandOff))
}

// between words a range of stand-offs with the unit once. In inches they are
// rounded to a sixteenth, as fine as a stand-off is kept by eye.
func (b *builder) between(r [2]unit.Millimetre) message.Message {
	shown := func(t unit.Millimetre) string { return b.figure(millimetres(t), unit.Nearest) }
	if b.style == unit.Metric {
		return message.Number(strings.TrimSuffix(shown(r[0]), " mm") + "–" + shown(r[1]))
	}
	low, high := shown(sixteenth(r[0])), shown(sixteenth(r[1]))
	return msg("{1} to {2}", message.Figure(strings.TrimSuffix(low, " in")), message.Figure(high))
}

// sixteenth rounds a length to the nearest 1/16 in, 1.5875 mm. Check: 3 mm is
// 1/8 in, 6 mm 1/4 in, 10 mm 3/8 in.
func sixteenth(t unit.Millimetre) unit.Millimetre {
	const step = 25.4 / 16
	return unit.Millimetre(math.Round(float64(t)/step) * step)
}

// wholeMinutes counts a time of the plan in minutes, rounded up.
func wholeMinutes(t unit.Second) string {
	return strconv.Itoa(int(max(math.Ceil(float64(t)/60-1e-9), 0)))
}

func minutes(t unit.Second) message.Message { return message.Number(wholeMinutes(t) + " min") }

// leftOut lists the cuts that are not in the plan, each with its reason.
func (b *builder) leftOut() []Line {
	var list []Line
	for _, l := range b.showing.LeftOut {
		list = append(list, b.line(l.Name, message.Message{}, l.Reason))
	}
	return list
}

// timeNote says how the plan fits the time there is.
func (b *builder) timeNote() message.Message {
	id := message.ID("Takes about {1} of the usual {2}.")
	if b.showing.Told {
		id = "Takes about {1} of the {2} given."
	}
	return msg(id, minutes(b.showing.Takes), minutes(b.showing.Given))
}

// planNotes say how long it takes, and how the bench and the torch are made
// ready.
func (b *builder) planNotes() []string {
	if len(b.plan) == 0 {
		return nil
	}
	s := &b.plan[0].Setting
	return b.prints(
		b.timeNote(),
		msg("Fit new consumables and make one test cut before the customer looks, on a steady bench at waist height."),
		message.Join(" ", msg("Pull the torch, do not push it: lead angle {1}, arc trailing {2} below.", degrees(s.Lead), degrees(s.Trailing)), msg("The manual decides.")),
	)
}

// props are the things to bring for some cuts, each once, "" for none.
func (b *builder) props(cuts ...demonstration.Cut) string {
	var list []string
	for _, c := range cuts {
		for _, prop := range c.Props {
			list = append(list, b.print(prop.Message()))
		}
	}
	return strings.Join(unique(list), ", ")
}

// bring lists what the plan needs, "" without one.
func (b *builder) bring() string {
	props := b.props(b.plan...)
	return b.print(when(props != "", "Bring: {1}.", message.Name(props)))
}

func degrees(r [2]unit.Degree) message.Message {
	show := func(d unit.Degree) string { return unit.Show(quantity(d, unit.Angle), unit.Metric, unit.Nearest) }
	return message.Number(strings.TrimSuffix(show(r[0]), "°") + "–" + show(r[1]))
}

// cautions are labelled by their identifiers.
func (b *builder) cautions() []Line {
	var list []Line
	for _, c := range b.warned {
		l := b.from(b.line(outside(strings.ReplaceAll(c.ID, "-", " ")), worded(c.Text)), c.Source)
		l.Hazard, l.Raised = c.Hazard, c.Raised
		list = append(list, l)
	}
	return list
}

func (b *builder) flags() []string {
	var list []message.Message
	for _, f := range b.result.Flags {
		list = append(list, worded(f.Sentence))
	}
	return b.prints(list...)
}

// leaving words the checks before leaving, with the plates to cut.
func (b *builder) leaving() []Line {
	return b.checklist(demonstration.BeforeLeaving(b.job, b.result, b.showing))
}

// onSite words the checks at the site, with the pressure the system asks for.
func (b *builder) onSite() []Line {
	return b.checklist(demonstration.AtSite(b.job, b.result, b.showing))
}

func (b *builder) checklist(items []demonstration.Item) []Line {
	var list []Line
	for _, i := range items {
		text := message.Join(" ", worded(i.Text), b.ofThisVisit(i.ID))
		list = append(list, b.from(b.line(outside(strings.ReplaceAll(i.ID, "-", " ")), text), i.Source))
	}
	return list
}

// ofThisVisit adds to a check what is this visit's own: the plates to cut to
// size, each once, and the pressure the system asks for.
func (b *builder) ofThisVisit(id string) message.Message {
	var plates []string
	switch {
	case id == "air" && b.recommended() && b.result.First.System.AirPressure > 0:
		return msg("The system asks for {1} at its inlet.", b.needed(quantity(b.result.First.System.AirPressure, unit.Pressure)))
	case id == "plates":
		for _, c := range b.plan {
			if c.ID != "own-piece" {
				plates = append(plates, b.print(b.pieceOf(c.Metal, c.Thickness)))
			}
		}
	}
	return when(len(plates) > 0, "Here: {1}.", message.Name(strings.Join(unique(plates), ", ")))
}
