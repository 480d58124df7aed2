package report

import (
	"cmp"
	"slices"
	"strings"

	"cutbrief/rules/cost"
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

// CurveTick is a place on an axis.
type CurveTick struct {
	At    float64 `json:"at"` // 0..1
	Label string  `json:"label"`
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
func (b *builder) curves(today *cost.Way, c *cost.Crossing) *Curves {
	if c == nil || today.Metal != metal.MildSteel {
		return nil
	}
	end := c.System.Severance
	out := Curves{
		Title: "What cutting mild steel costs, by thickness",
		Up:    strings.TrimSpace(clean(b.prices.Currency) + " " + b.each()), Across: b.thick(),
		Plasma: plain(c.System.Name), Flame: string(c.Fuel.Name()), Ticks: b.acrossTicks(end), Crossing: b.crossingRange(c, end),
	}
	out.Points, out.UpTicks = b.curvePoints(c, end)
	if at := along(today.T, end); at <= 1 {
		out.Everyday = &CurveTick{at, "yours, " + b.told(millimetres(today.T))}
	}
	return &out
}

// curvePoints rounds each sum once, and finds an upright axis they fit on.
func (b *builder) curvePoints(c *cost.Crossing, end unit.Millimetre) ([]CurvePoint, []CurveTick) {
	per := 1.0 // m in the length that the axis gives money for
	if b.style == unit.Inch {
		per = foot
	}
	points := throughCrossing(c)
	most := 0.0
	for _, p := range points {
		most = max(most, p.Plasma.Likely*per, p.Flame.Likely*per)
	}
	ticks, top := upAxis(most)
	var list []CurvePoint
	for _, p := range points {
		list = append(list, CurvePoint{along(p.T, end), CostPoint{
			Thickness: b.told(millimetres(p.T)), Plasma: b.perMetre(p.Plasma), Flame: b.perMetre(p.Flame),
			PlasmaShare: p.Plasma.Likely * per / top, FlameShare: p.Flame.Likely * per / top,
		}})
	}
	return list, ticks
}

// throughCrossing are the thicknesses compared and, in its place, the one at
// which the lines meet: it may lie beyond them.
func throughCrossing(c *cost.Crossing) []cost.Point {
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
	place := func(m unit.Maybe[unit.Millimetre]) (*float64, string) {
		t, ok := m.Get()
		if !ok {
			return nil, ""
		}
		at := along(t, end)
		return &at, b.told(whole(t))
	}
	r := CurveRange{Here: "crossing"}
	var from, likely, to string
	r.From, from = place(c.From)
	r.Likely, likely = place(c.Likely)
	r.To, to = place(c.Surely)
	switch {
	case r.From == nil:
		r.Label = "no crossing up to " + b.given(millimetres(end))
	case r.Likely == nil:
		r.Label = "crossing perhaps from " + from
	case r.To == nil:
		r.Label = "crossing at about " + likely + " (from " + from + ", perhaps never)"
	default:
		r.Label = "crossing at about " + likely + " (" + from + " to " + to + ")"
	}
	return r
}
