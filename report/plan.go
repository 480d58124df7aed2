package report

import (
	"math"
	"strconv"
	"strings"

	"cutbrief/rules"
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
	return when(len(cuts) > 0, "The demonstration shows it first: {1}.", message.Join("; ", cuts...)).Or(msg("No cut in this plan can show it: talk it through."))
}

func (b *builder) rows() []Row {
	return mapped(b.plan, func(c *demonstration.Cut) Row {
		because := worded(c.Chosen)
		if c.Proves != "" {
			because = msg("{1}: {2}", RequirementName(c.Proves).Message().Capital(), because.Within())
		}
		return Row{
			Cut: b.print(c.Name), Piece: b.print(b.pieceOf(c.Metal, c.Thickness)), Setting: b.print(b.setting(&c.Setting)), See: b.print(worded(c.See)),
			Because: b.print(because), Beware: b.print(msg("It can fail like this: {1}; so {2}.", worded(c.Fails), worded(c.Avoid))),
			Takes: b.print(minutes(c.Takes)), Source: b.cited(c.Source),
		}
	})
}

// pieceOf words a piece, the thickness first: it is what may not be cut off.
func (b *builder) pieceOf(id metal.ID, t unit.Millimetre) message.Message {
	return msg("{1} {2}", b.told(millimetres(t)), metalName(id))
}

// setting words how the torch is set: "40 A, tip on the work".
func (b *builder) setting(s *demonstration.OperatingPoint) message.Message {
	v, known := s.Speed.Get()
	t, timed := s.Seconds.Get()
	text := message.Join(", ", message.Number(unit.Show(amperes(s.Output), b.style, unit.Down)), b.tip(s), when(known, "{1}", b.given(speed(v))))
	return message.Join(": ", text, when(timed, "{1}", b.lengthIn(s.Length, t)))
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

// timeNote says how the plan fits the time there is.
func (b *builder) timeNote() message.Message {
	takes, given := minutes(b.showing.Takes), minutes(b.showing.Given)
	return when(b.showing.Told, "Takes about {1} of the {2} given.", takes, given).Or(msg("Takes about {1} of the usual {2}.", takes, given))
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

func degrees(r [2]unit.Degree) message.Message {
	show := func(d unit.Degree) string { return unit.Show(quantity(d, unit.Angle), unit.Metric, unit.Nearest) }
	return message.Number(strings.TrimSuffix(show(r[0]), "°") + "–" + show(r[1]))
}

// cautions are labelled by their identifiers.
func (b *builder) cautions() []Line {
	return mapped(b.warned, func(c *demonstration.Caution) Line {
		l := b.from(b.line(outside(strings.ReplaceAll(c.ID, "-", " ")), worded(c.Text)), c.Source)
		l.Hazard, l.Raised = c.Hazard, c.Raised()
		return l
	})
}

func (b *builder) flags() []string {
	return b.prints(mapped(b.result.Flags, func(f *rules.Flag) message.Message { return worded(f.Sentence) })...)
}

// checklists are the checks before leaving, with the plates to cut, and those at the
// site, with the pressure the system asks for.
func (b *builder) checklists() (leaving, onSite []Line) {
	return b.checklist(demonstration.BeforeLeaving(b.job, b.result, b.showing)), b.checklist(demonstration.AtSite(b.job, b.result, b.showing))
}

func (b *builder) checklist(items []demonstration.Item) []Line {
	return mapped(items, func(i *demonstration.Item) Line {
		text := message.Join(" ", worded(i.Text), b.ofThisVisit(i.ID))
		return b.from(b.line(outside(strings.ReplaceAll(i.ID, "-", " ")), text), i.Source)
	})
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
