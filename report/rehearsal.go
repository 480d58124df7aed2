package report

import (
	"cutbrief/assess"
	"cutbrief/rules/demonstration"
	"cutbrief/rules/message"
	"cutbrief/rules/metal"
	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// Bench is the demonstration as it is run at the bench: the plan step by step,
// and both checklists.
type Bench struct {
	Customer string // "" if not told
	System   string // name of the system shown; "" if none is recommended
	SystemID string
	Headline string // why there is no system, where there is none
	Takes    string // how the plan fits the time
	Steps    []Step
	Leaving  []Line
	OnSite   []Line
	Style    unit.Style

	Words *message.Catalog // the texts are worded by; nil for our own words
}

// Step is one cut at the bench, worded, with the figures a measured time is
// held against.
type Step struct {
	Row
	ID        string // of the cut
	Metal     metal.ID
	Thickness unit.Millimetre
	Output    unit.Ampere
	Length    unit.Millimetre // 0 where it depends on the piece
	Predicted unit.Maybe[unit.Second]
	Timed     bool     // a straight cut whose time is taken
	SetUp     bool     // another plate or setting than the step before
	Torch     []string // how the torch is set, a few words each
	Fails     string
	Avoid     string
	Bring     string

	name string // of the cut in our own words, for the record
}

// AtBench words the demonstration of a visit for the bench.
func AtBench(v *assess.Visit, offered system.Range, o Options) Bench {
	b := newBuilder(v, &offered, o)
	b.plans()
	bench := Bench{Words: o.Words, Customer: b.print(b.answered(assess.FactCompany)), Headline: b.print(b.headline()), Style: b.style}
	bench.Leaving, bench.OnSite = b.checklists()
	if b.result.First == nil {
		return bench
	}
	s := b.result.First.System
	bench.System, bench.SystemID, bench.Takes = b.print(outside(s.Name)), s.ID, b.print(b.timeNote())
	for i, row := range b.rows() {
		c := &b.plan[i]
		bench.Steps = append(bench.Steps, Step{
			Row: row, ID: c.ID, Metal: c.Metal, Thickness: c.Thickness, Output: c.Setting.Output, Length: c.Setting.Length,
			Predicted: c.Setting.Seconds, Timed: c.Timed, SetUp: c.SetUp, Torch: b.torch(c), Fails: b.print(worded(c.Fails)),
			Avoid: b.print(worded(c.Avoid)), Bring: b.props(*c), name: c.Name.String(),
		})
	}
	return bench
}

// torch says how the torch is set, in the order it is done.
func (b *builder) torch(c *demonstration.Cut) []string {
	s := &c.Setting
	t, timed := s.Seconds.Get()
	return b.prints(
		message.Join(", ", b.told(amperes(s.Output)), b.tip(s)),
		when(s.Pressure > 0, "air {1} while it flows", b.needed(quantity(s.Pressure, unit.Pressure))),
		msg("pull, lead {1}, arc trailing {2}", degrees(s.Lead), degrees(s.Trailing)),
		when(s.Through > c.Thickness, "{1} of metal along the slant", b.needed(millimetres(s.Through))),
		when(timed, "{1}", b.lengthIn(s.Length, t)),
	)
}

// Shown is the record of the cut as planned, before anything is noted.
func (s *Step) Shown() assess.ShownCut {
	return assess.ShownCut{
		Cut: s.ID, Name: s.name, Metal: s.Metal, Predicted: s.Predicted,
		Thickness: positive(s.Thickness), Output: positive(s.Output), Length: positive(s.Length),
	}
}

// For is the predicted time for another length than the planned one, at the
// same speed: seconds grow with the length. Not known without a prediction.
// Check: 300 mm in 18 s are 200 mm in 12 s.
func (s *Step) For(length unit.Millimetre) unit.Maybe[unit.Second] {
	planned, ok := s.Predicted.Get()
	if !ok || !(s.Length > 0) {
		return unit.Maybe[unit.Second]{}
	}
	return unit.Known(planned * unit.Second(length/s.Length))
}

// positive takes what is not above 0 for not known.
func positive[T ~float64](v T) unit.Maybe[T] {
	if v > 0 {
		return unit.Known(v)
	}
	return unit.Maybe[T]{}
}
