package report

import (
	"cmp"
	"math"
	"slices"

	"cutbrief/rules"
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
	system *system.System
	metal  metal.ID
	factor unit.Millimetre // what 1 mm of the metal counts for in mild steel
	limit  unit.MillimetrePerMinute
	end    unit.Millimetre // of the metal, where it severs no more
	top    float64         // of the upright axis, in its unit
}

// speeds are the picture's figures, nil without a recommendation or where the
// speed model says nothing of the metal.
func (b *builder) speeds() *Speeds {
	piece := b.deciding()
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
	c := speedCurve{system: s, metal: piece.Metal, factor: k, limit: rules.LedAt(&b.job), end: s.Severance / k}
	return b.speedPicture(&c, piece)
}

// deciding is the piece whose metal decided the size, nil if not known.
func (b *builder) deciding() *rules.Piece {
	need, known := b.result.Need.Get()
	for i := range b.job.Pieces {
		if p := &b.job.Pieces[i]; known && p.Metal == need.Metal {
			return p
		}
	}
	return nil
}

// speedPicture puts the line, both ends and the marks on their axes.
func (b *builder) speedPicture(c *speedCurve, p *rules.Piece) *Speeds {
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
		Title: "How fast " + plain(c.system.Name) + " cuts " + metalName(c.metal), Up: b.speedUnit(), Across: b.thick(),
		Ticks: b.acrossTicks(c.end), CleanAt: along(clean, c.end),
		Clean: "clean up to " + b.given(millimetres(clean)), Severed: "apart up to " + b.given(millimetres(c.end)),
		Rests: b.speedRests(c),
	}
	out.UpTicks, c.top = upAxis(b.speedIn(fastest))
	for _, t := range c.bends(thinnest) {
		if v, ok := c.at(t); ok {
			out.Line = append(out.Line, b.speedPoint(c, t, v))
		}
	}
	out.Marks = b.speedMarks(c, p, thinnest)
	return &out
}

// at is the speed at a thickness of the metal; false beyond what severs.
func (c *speedCurve) at(t unit.Millimetre) (unit.MillimetrePerMinute, bool) {
	v, err := size.Speed(c.system, c.system.OutputMax, t*c.factor, c.limit)
	return v, err == nil
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

func (b *builder) speedPoint(c *speedCurve, t unit.Millimetre, v unit.MillimetrePerMinute) SpeedPoint {
	return SpeedPoint{along(t, c.end), b.speedIn(v) / c.top}
}

// speedMarks are the customer's thicknesses, both ends of the system, and
// between them the even steps of the axis, each thickness once.
func (b *builder) speedMarks(c *speedCurve, p *rules.Piece, from unit.Millimetre) []SpeedMark {
	m := marking{b: b, curve: c}
	everyday, ok1 := p.Everyday.Get()
	thickest, ok2 := p.Thickest.Get()
	if ok1 {
		m.add(everyday, unit.Nearest, "most days", true)
	}
	if ok2 {
		m.add(thickest, unit.Nearest, "thickest clean cut", true)
	}
	m.add(c.system.CleanMax/c.factor, unit.Down, "clean up to here", false)
	m.add(c.end, unit.Down, "apart up to here", false)
	for _, t := range b.acrossSteps(c.end) {
		if t >= from {
			m.between(t)
		}
	}
	for i := range m.list {
		if mark := &m.list[i]; mark.Yours {
			mark.Label = mark.Says + ", " + mark.Thickness + ": " + mark.Speed
		}
	}
	slices.SortStableFunc(m.list, func(x, y SpeedMark) int { return cmp.Compare(x.At, y.At) })
	return m.list
}

// marking collects marks.
type marking struct {
	b     *builder
	curve *speedCurve
	list  []SpeedMark
}

// add puts a mark, or what it says to one that is there.
func (m *marking) add(t unit.Millimetre, r unit.Round, says string, yours bool) {
	v, ok := m.curve.at(t)
	if !ok {
		return
	}
	at := m.b.speedPoint(m.curve, t, v)
	for i := range m.list {
		if old := &m.list[i]; math.Abs(old.At-at.At) < 1e-6 {
			old.Says, old.Yours = old.Says+", "+says, old.Yours || yours
			return
		}
	}
	m.list = append(m.list, SpeedMark{
		SpeedPoint: at, Thickness: m.b.show(millimetres(t), r), Speed: m.b.given(speedOf(v)), Says: says, Yours: yours,
	})
}

// between puts an even step unless a mark lies near it.
func (m *marking) between(t unit.Millimetre) {
	const near = 0.04 // of the axis
	at := along(t, m.curve.end)
	if !slices.ContainsFunc(m.list, func(o SpeedMark) bool { return math.Abs(o.At-at) < near }) {
		m.add(t, unit.Nearest, "", false)
	}
}

// speedRests says at what setting, how it is led, and what that rests on.
func (b *builder) speedRests(c *speedCurve) string {
	how := map[unit.MillimetrePerMinute]string{size.FreeHand: "led free hand", size.AlongEdge: "led by hand along an edge", size.OnCarriage: "led by a carriage"}
	return "At full output, " + b.given(amperes(c.system.OutputMax)) + ", " + how[c.limit] + ", " + b.given(speedOf(c.limit)) +
		" at most. Modelled from the system's own thicknesses; common practice, no source."
}

func speedOf(v unit.MillimetrePerMinute) unit.Quantity {
	return unit.Quantity{Value: float64(v), Kind: unit.Speed}
}

// speedIn is a speed in the unit of the axis.
func (b *builder) speedIn(v unit.MillimetrePerMinute) float64 {
	if b.style == unit.Inch {
		return float64(v) / 25.4 // mm in an inch, exact (nist-sp-811)
	}
	return float64(v)
}

func (b *builder) speedUnit() string {
	if b.style == unit.Inch {
		return "in/min"
	}
	return "mm/min"
}
