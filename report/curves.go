package report

import (
	"cmp"
	"slices"

	"cutbrief/rules/cost"
	"cutbrief/rules/message"
	"cutbrief/rules/metal"
	"cutbrief/rules/unit"
)

// Curves are what cutting mild steel costs by thickness, for two lines on the
// page: the system and oxy-fuel. Places are shares of the axes, which begin at
// nothing: across they end where the system severs no more.
type Curves struct {
	Title    string       `json:"title"`  // "What cutting mild steel costs, by thickness"
	Up       string       `json:"up"`     // what the upright axis says: "EUR a metre"
	Across   string       `json:"across"` // what the other says: "mm thick"
	Plasma   string       `json:"plasma"` // the name of each line
	Flame    string       `json:"oxy_fuel"`
	Points   []CurvePoint `json:"points"` // by thickness, rising
	UpTicks  []CurveTick  `json:"up_ticks"`
	Ticks    []CurveTick  `json:"ticks"`
	Everyday *CurveTick   `json:"everyday,omitempty"` // what this customer cuts most days; nil beyond the axis
	Crossing CurveRange   `json:"crossing"`
}

// CurvePoint is one thickness; its shares are those of the upright axis.
type CurvePoint struct {
	At float64 `json:"at"` // 0..1
	CostPoint
}

// CurveRange is where the lines cross, or may.
type CurveRange struct {
	Label  string   `json:"label"`            // "crossing at about 16 mm (12 to 21 mm)"
	Here   string   `json:"here"`             // the same in a word, beside the place itself
	From   *float64 `json:"from,omitempty"`   // 0..1, where oxy-fuel may become cheaper; nil if nowhere
	Likely *float64 `json:"likely,omitempty"` // where it likely does
	To     *float64 `json:"to,omitempty"`     // from where it surely is; nil if that is beyond the axis
}

// curves are the two lines for the page, nil where there is no crossing for it
// or they do not cut mild steel.
func (b *builder) curves(today *cost.Method, c *cost.Crossing) *Curves {
	if c == nil || today.Metal != metal.MildSteel {
		return nil
	}
	end := c.System.Severance
	out := Curves{
		Title: b.print(msg("What cutting mild steel costs, by thickness")), Up: b.print(b.forEach(message.Text(b.currency()))), Across: b.thicknessAxis(),
		Plasma: b.print(outside(c.System.Name)), Flame: b.print(worded(c.Fuel.Name())), Ticks: b.thicknessTicks(end), Crossing: b.crossingRange(c, end),
	}
	out.Points, out.UpTicks = b.curvePoints(c, end)
	if at := share(today.T, end); at <= 1 {
		out.Everyday = &CurveTick{at, b.print(msg("yours, {1}", b.told(millimetres(today.T))))}
	}
	return &out
}

// curvePoints rounds each sum once, and finds an upright axis they fit on.
func (b *builder) curvePoints(c *cost.Crossing, end unit.Millimetre) ([]CurvePoint, []CurveTick) {
	per := byStyle(b, 1, foot) // m in the length that the axis gives money for
	points := withMeeting(c)
	ticks, top := b.upTicks(dearest(points) * per)
	return mapped(points, func(p *cost.Point) CurvePoint { return CurvePoint{share(p.T, end), b.costPoint(p, per, top)} }), ticks
}

// dearest is the most that a metre likely costs at some thicknesses.
func dearest(points []cost.Point) (most float64) {
	for _, p := range points {
		most = max(most, p.Plasma.Likely, p.Flame.Likely)
	}
	return most
}

// costPoint is one thickness, its bars as shares of top. per is the length in m
// that money is given for.
func (b *builder) costPoint(p *cost.Point, per, top float64) CostPoint {
	return CostPoint{
		Thickness: b.print(b.told(millimetres(p.T))), Plasma: b.perMetre(p.Plasma), Flame: b.perMetre(p.Flame),
		PlasmaShare: p.Plasma.Likely * per / top, FlameShare: p.Flame.Likely * per / top,
	}
}

// withMeeting are the thicknesses compared and, in its place, the one at
// which the lines meet: it may lie beyond them.
func withMeeting(c *cost.Crossing) []cost.Point {
	meets, ok := c.Meets.Get()
	if !ok {
		return c.Points
	}
	i, found := slices.BinarySearchFunc(c.Points, meets.T, func(p cost.Point, t unit.Millimetre) int { return cmp.Compare(p.T, t) })
	if found {
		return c.Points
	}
	return slices.Insert(slices.Clone(c.Points), i, meets)
}

// crossingRange words where the lines cross as closely as it is known.
func (b *builder) crossingRange(c *cost.Crossing, end unit.Millimetre) CurveRange {
	place := func(m unit.Maybe[unit.Millimetre]) (*float64, message.Message) {
		t, ok := m.Get()
		if !ok {
			return nil, message.Message{}
		}
		at := share(t, end)
		return &at, b.wholeMillimetres(t)
	}
	r := CurveRange{Here: b.print(msg("crossing"))}
	var from, likely, to message.Message
	r.From, from = place(c.From)
	r.Likely, likely = place(c.Likely)
	r.To, to = place(c.Surely)
	label := msg("crossing at about {1} ({2} to {3})", likely, from, to)
	switch {
	case r.From == nil:
		label = msg("no crossing up to {1}", b.given(millimetres(end)))
	case r.Likely == nil:
		label = msg("crossing perhaps from {1}", from)
	case r.To == nil:
		label = msg("crossing at about {1} (from {2}, perhaps never)", likely, from)
	}
	r.Label = b.print(label)
	return r
}

// wholeMillimetres is a thickness to a whole millimetre: the crossing is no
// sharper.
func (b *builder) wholeMillimetres(t unit.Millimetre) message.Message {
	return b.told(millimetres(unit.Millimetre(int(t + 0.5))))
}

// crossing compares the first choice with oxy-fuel, nil where that means
// nothing.
func (b *builder) crossing() *cost.Crossing {
	if b.result.First == nil || !cost.Comparable(&b.job, b.result.First.System) {
		return nil
	}
	c := cost.Cross(b.job, b.prices(), b.result.First.System)
	if !c.Why.IsEmpty() {
		return nil
	}
	return &c
}

// crossingSays words where oxy-fuel becomes cheaper.
func (b *builder) crossingSays(c *cost.Crossing) message.Message {
	from, ok := c.From.Get()
	fuel, practice := worded(c.Fuel.Name()), b.told(millimetres(16))
	if !ok {
		return msg("On mild steel it stays cheaper than {1} up to all it severs.", fuel)
	}
	earliest := b.wholeMillimetres(from)
	likely, ok := c.Likely.Get()
	surely, sure := c.Surely.Get()
	switch {
	case !ok:
		return msg("On mild steel {1} may be cheaper from about {2}; common practice says about {3} for a small system.", fuel, earliest, practice)
	case !sure:
		return msg("On mild steel {1} is likely cheaper above about {2} (it may be from {3}); common practice says about {4} for a small system.",
			fuel, b.wholeMillimetres(likely), earliest, practice)
	}
	return msg("On mild steel {1} is likely cheaper above about {2} (it may be from {3}, it is from {4}); common practice says about {5} for a small system.",
		fuel, b.wholeMillimetres(likely), earliest, b.wholeMillimetres(surely), practice)
}
