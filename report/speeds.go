package report

import (
	"cmp"
	"math"
	"slices"

	"cutbrief/rules"
	"cutbrief/rules/message"
	"cutbrief/rules/metal"
	"cutbrief/rules/size"
	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// Speeds are how fast the recommended system cuts the metal that decides, by
// thickness, with this customer's own thicknesses. Places are shares of the
// axes, which begin at nothing: across they end where the system severs no
// more.
type Speeds struct {
	Title   string       `json:"title"`    // "How fast Demo 45 cuts mild steel"
	Up      string       `json:"up"`       // what the upright axis counts: "mm/min"
	Across  string       `json:"across"`   // what the other does: "mm thick"
	Line    []SpeedPoint `json:"line"`     // by thickness, rising
	UpTicks []CurveTick  `json:"up_ticks"` // rising
	Ticks   []CurveTick  `json:"ticks"`    // rising
	Marks   []SpeedMark  `json:"marks"`    // thicknesses worth saying, rising
	CleanAt float64      `json:"clean_at"` // 0..1, up to where the edge comes out clean
	Clean   string       `json:"clean"`    // "clean up to 16 mm"
	Severed string       `json:"severed"`  // "apart up to 22 mm"
	Rests   string       `json:"rests"`    // how it is led, and what the speeds rest on
}

// SpeedPoint is a thickness and its speed as shares of their axes.
type SpeedPoint struct {
	At    float64 `json:"at"`    // 0..1
	Share float64 `json:"share"` // 0..1
}

// SpeedMark is a thickness worth saying.
type SpeedMark struct {
	SpeedPoint
	Thickness string `json:"thickness"`       // "6 mm"
	Speed     string `json:"speed"`           // "1000 mm/min"
	Says      string `json:"says,omitempty"`  // what it is to them or to the system: "most days"
	Yours     bool   `json:"yours,omitempty"` // the customer cuts it
	Label     string `json:"label,omitempty"` // of theirs: "most days, 6 mm: 1000 mm/min"
}

// speedCurve is what the picture of speeds is made from.
type speedCurve struct {
	*builder
	system *system.System
	metal  metal.ID
	factor unit.Millimetre // what 1 mm of the metal counts for in mild steel
	limit  unit.MillimetrePerMinute
	end    unit.Millimetre // of the metal, where it severs no more
	top    float64         // of the upright axis, in its unit
	marks  []SpeedMark
}

// speeds are the picture's figures, nil without a recommendation or where the
// speed model says nothing of the metal.
func (b *builder) speeds() *Speeds {
	piece := b.decidingPiece()
	if b.result.First == nil || piece == nil {
		return nil
	}
	s := b.result.First.System
	equivalence, _ := size.Equivalence(s, piece.Metal)
	factor, ok := equivalence.Get()
	if !ok || !(factor > 0 && s.Severance > 0) {
		return nil
	}
	k := unit.Millimetre(factor)
	c := speedCurve{builder: b, system: s, metal: piece.Metal, factor: k, limit: rules.LedAt(&b.job), end: s.Severance / k}
	return c.picture(piece)
}

// decidingPiece is the piece whose metal decided the size, nil if not known.
func (b *builder) decidingPiece() *rules.Piece {
	need, known := b.result.Need.Get()
	i := slices.IndexFunc(b.job.Pieces, func(p rules.Piece) bool { return known && p.Metal == need.Metal })
	if i < 0 {
		return nil
	}
	return &b.job.Pieces[i]
}

// picture puts the line, both ends and the marks on their axes.
func (c *speedCurve) picture(p *rules.Piece) *Speeds {
	clean := c.system.CleanMax / c.factor
	thinnest := c.end / 20
	if t, ok := p.Everyday.Get(); ok && t > 0 {
		thinnest = min(thinnest, t)
	}
	fastest, ok := c.at(thinnest)
	if !ok {
		return nil
	}
	out := Speeds{
		Title: c.print(msg("How fast {1} cuts {2}", outside(c.system.Name), metalName(c.metal))),
		Up:    c.print(message.Number(byStyle(c.builder, "mm/min", "in/min"))), Across: c.thicknessAxis(),
		Ticks: c.thicknessTicks(c.end), CleanAt: share(clean, c.end),
		Clean: c.print(msg("clean up to {1}", c.given(millimetres(clean)))), Severed: c.print(msg("severs up to {1}", c.given(millimetres(c.end)))),
		Rests: c.print(message.Join(" ",
			msg(guidance[c.limit], c.given(amperes(c.system.OutputMax)), c.given(speed(c.limit))),
			msg("Modelled from the system's own thicknesses; common practice, no source."))),
	}
	out.UpTicks, c.top = c.upTicks(c.inUnit(fastest))
	for _, t := range c.bends(thinnest) {
		if v, ok := c.at(t); ok {
			out.Line = append(out.Line, c.point(t, v))
		}
	}
	c.markAll(p, thinnest)
	out.Marks = c.marks
	return &out
}

// at is the speed at a thickness of the metal; false beyond what severs.
func (c *speedCurve) at(t unit.Millimetre) (unit.MillimetrePerMinute, bool) {
	v, err := size.Speed(c.system, c.system.OutputMax, t*c.factor, c.limit)
	return v, err == nil
}

// inUnit is a speed in the unit of the axis; an inch is 25.4 mm, exact
// (nist-sp-811).
func (c *speedCurve) inUnit(v unit.MillimetrePerMinute) float64 {
	return float64(v) / byStyle(c.builder, 1, 25.4)
}

func (c *speedCurve) point(t unit.Millimetre, v unit.MillimetrePerMinute) SpeedPoint {
	return SpeedPoint{share(t, c.end), c.inUnit(v) / c.top}
}

// bends are the thicknesses the line is drawn through: where it bends, and even
// steps between them.
func (c *speedCurve) bends(from unit.Millimetre) []unit.Millimetre {
	const steps = 40
	list := []unit.Millimetre{from, c.system.Rated / c.factor, c.system.CleanMax / c.factor, c.end}
	if t, err := size.Reach(c.system, c.system.OutputMax, c.limit, c.limit); err == nil {
		list = append(list, t/c.factor)
	}
	for i := 1; i < steps; i++ {
		list = append(list, c.end*unit.Millimetre(i)/steps)
	}
	list = slices.DeleteFunc(list, func(t unit.Millimetre) bool { return t < from })
	slices.Sort(list)
	return slices.Compact(list)
}

// markAll marks the customer's thicknesses, both ends of the system, and
// between them the even steps of the axis, each thickness once.
func (c *speedCurve) markAll(p *rules.Piece, from unit.Millimetre) {
	if t, ok := p.Everyday.Get(); ok {
		c.mark(t, unit.Nearest, "most days", true)
	}
	if t, ok := p.Thickest.Get(); ok {
		c.mark(t, unit.Nearest, "thickest clean cut", true)
	}
	c.mark(c.system.CleanMax/c.factor, unit.Down, "clean up to here", false)
	c.mark(c.end, unit.Down, "severs up to here", false)
	const near = 0.04 // of the axis: a mark is as good as one there
	for _, t := range c.thicknessSteps(c.end) {
		crowded := slices.ContainsFunc(c.marks, func(m SpeedMark) bool { return math.Abs(m.At-share(t, c.end)) < near })
		if t >= from && !crowded {
			c.mark(t, unit.Nearest, "", false)
		}
	}
	for i := range c.marks {
		if m := &c.marks[i]; m.Yours {
			m.Label = m.Says + ", " + m.Thickness + ": " + m.Speed
		}
	}
	slices.SortStableFunc(c.marks, func(x, y SpeedMark) int { return cmp.Compare(x.At, y.At) })
}

// mark puts a mark, or what it says to one that is there.
func (c *speedCurve) mark(t unit.Millimetre, r unit.Round, says message.ID, yours bool) {
	v, ok := c.at(t)
	if !ok {
		return
	}
	at := c.point(t, v)
	for i := range c.marks {
		if old := &c.marks[i]; math.Abs(old.At-at.At) < 1e-6 {
			old.Says, old.Yours = old.Says+", "+c.print(says.Message()), old.Yours || yours
			return
		}
	}
	c.marks = append(c.marks, SpeedMark{
		SpeedPoint: at, Thickness: c.print(c.show(millimetres(t), r)), Speed: c.print(c.given(speed(v))), Says: c.print(says.Message()), Yours: yours,
	})
}

// guidance says how the torch is guided, by the speed that allows.
var guidance = map[unit.MillimetrePerMinute]message.ID{
	size.FreeHand:   "At full output, {1}, guided free hand, {2} at most.",
	size.AlongEdge:  "At full output, {1}, guided by hand along an edge, {2} at most.",
	size.OnCarriage: "At full output, {1}, guided by a carriage, {2} at most.",
}
