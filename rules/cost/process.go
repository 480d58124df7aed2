package cost

import (
	"math"

	"cutbrief/rules"
	"cutbrief/rules/message"
	"cutbrief/rules/metal"
	"cutbrief/rules/unit"
)

// Process is a method of cutting an account can be made for.
type Process string

// The processes. Unknown is a method nobody named.
const (
	OxyAcetylene Process = "oxy-acetylene"
	OxyPropane   Process = "oxy-propane"
	Disc         Process = "abrasive-disc"
	BandSaw      Process = "band-saw"
	Shear        Process = "shear"
	Nibbler      Process = "nibbler"
	SentOut      Process = "sent-out"
	OtherPlasma  Process = "other-plasma"
	Unknown      Process = "other"
	Plasma       Process = "plasma" // a system of the range
)

// processNames are what the processes are called.
var processNames = map[Process]message.ID{
	OxyAcetylene: "oxy-acetylene", OxyPropane: "oxy-propane", Disc: "abrasive disc", BandSaw: "band saw", Shear: "shear",
	Nibbler: "nibbler", SentOut: "sent out", OtherPlasma: "another plasma system", Unknown: "another way", Plasma: "plasma",
}

// Name is what a process is called.
func (p Process) Name() message.ID { return processNames[p] }

// flame reports whether the process burns gas.
func (p Process) flame() bool { return p == OxyAcetylene || p == OxyPropane }

// habits are what a method of cutting asks of the operator besides the cut itself.
// All are common practice, no source.
type habits [locals]Estimate

var (
	plasmaHabits = habits{setup: {2, 5, 15}, starting: {0.3, 0.7, 2}, grinding: {0.3, 1, 2}, tended: {1, 1, 1}}

	// habitsOf holds them by process. Flames preheat 5 to 20 s before an edge start
	// with acetylene, longer with propane.
	habitsOf = map[Process]habits{
		OxyAcetylene: {setup: {5, 15, 40}, starting: {5, 10, 20}, grinding: {1, 2, 4}, tended: {1, 1, 1}},
		OxyPropane:   {setup: {5, 15, 40}, starting: {8, 20, 40}, grinding: {1, 2, 4}, tended: {1, 1, 1}},
		Disc:         {setup: {3, 10, 30}, grinding: {0.2, 0.7, 2}, tended: {1, 1, 1}, power: {0.7, 1.1, 2.2}},
		BandSaw:      {setup: {30, 90, 240}, grinding: {0.1, 0.4, 1}, tended: {0.2, 0.5, 1}, power: {0.7, 1.5, 3}},
		Shear:        {setup: {3, 8, 20}, grinding: {0.05, 0.2, 0.5}, tended: {1, 1, 1}, power: {0.3, 0.5, 0.8}},
		Nibbler:      {setup: {3, 8, 20}, grinding: {0.1, 0.4, 1}, tended: {1, 1, 1}, power: {0.4, 0.7, 1.2}},
		OtherPlasma:  plasmaHabits,
		Plasma:       plasmaHabits,
	}
)

// Straightening in min a metre, by process and thickness: sheet warps, plate
// hardly does, and cold ways leave no heat. Common practice, no source.
func straightening(p Process, t unit.Millimetre) Estimate {
	switch {
	case p.flame() && t < 6:
		return Estimate{0.5, 2, 5}
	case p.flame():
		return Estimate{0, 0.3, 1}
	case (p == Plasma || p == OtherPlasma) && t < 3:
		return Estimate{0, 0.4, 1.5}
	case p == Plasma || p == OtherPlasma:
		return Estimate{0, 0.1, 0.4}
	}
	return Exact(0)
}

// tools are the processes that wear discs, blades or knives.
var tools = map[Process]struct {
	price, life ItemID
	speed       func(unit.Millimetre, metal.ID) (Estimate, error)
}{
	Disc:    {ItemDisc, ItemDiscLife, DiscSpeed},
	BandSaw: {ItemBlade, ItemBladeLife, SawSpeed},
	Shear:   {ItemKnives, ItemKnivesLife, func(unit.Millimetre, metal.ID) (Estimate, error) { return shearSpeed.Estimate, nil }},
	Nibbler: {ItemKnives, ItemKnivesLife, func(unit.Millimetre, metal.ID) (Estimate, error) { return nibblerSpeed.Estimate, nil }},
}

// discEnds is the thickest plate a hand-held disc is used for in regular work,
// in mm. Source: practice.
const discEnds unit.Millimetre = 12

// discs are the speeds of a hand-held disc in mild steel, slow and fast.
// Source: practice.
var discs = []struct{ t, slow, fast float64 }{{3, 300, 600}, {6, 150, 300}, {11, 70, 150}}

// discFactor is the speed of a disc against mild steel. Source: practice.
var discFactor = map[metal.ID]Estimate{
	metal.MildSteel: Exact(1), metal.Galvanised: Exact(1), metal.Aluminium: Exact(1), metal.Stainless: {0.7, 0.75, 0.8},
}

// DiscSpeed returns how fast a hand-held abrasive disc cuts t mm of a metal in
// mm/min, straight in logarithms between the figures held; thinner than 3 mm it
// is no faster than there, thicker than 11 mm the last line goes on.
//
// Valid for 0 < t ≤ 12 mm of mild and galvanised steel, stainless and aluminium,
// else ErrRange. Source: practice.
// Check: 6 mm mild steel → 150 to 300, likely √(150·300) = 212 mm/min.
func DiscSpeed(t unit.Millimetre, id metal.ID) (Estimate, error) {
	f, held := discFactor[id]
	if !held || !(t > 0 && t <= discEnds*(1+nominal)) {
		return Estimate{}, ErrRange
	}
	at := max(float64(t), discs[0].t)
	i := 1
	for i < len(discs)-1 && at > discs[i].t {
		i++
	}
	a, b := discs[i-1], discs[i]
	w := math.Log(at/a.t) / math.Log(b.t/a.t)
	on := func(x, y float64) float64 { return x * math.Pow(y/x, w) }
	slow, fast := on(a.slow, b.slow), on(a.fast, b.fast)
	return Estimate{slow * f.Low, math.Sqrt(slow*fast) * f.Likely, fast * f.High}, nil
}

// sawRate is the area a band saw cuts in mm²/min: high is a stationary saw with
// coolant, low a quarter of such a saw's slow end, which is a portable one; we
// do not know which they have. Source: practice.
var sawRate = map[metal.ID]Estimate{
	metal.MildSteel:  {800, 3200, 7700},
	metal.Galvanised: {800, 3200, 7700},
	metal.Stainless:  {325, 1300, 2600},
	metal.Aluminium:  {2425, 9700, 26000},
}

// SawSpeed returns how fast a band saw cuts t mm of a metal in mm/min: the area
// it cuts a minute over the thickness.
//
// Valid for t > 0 and the metals of DiscSpeed, else ErrRange. Source: practice.
// Check: 10 mm mild steel → 80 to 770, likely 320 mm/min.
func SawSpeed(t unit.Millimetre, id metal.ID) (Estimate, error) {
	rate, held := sawRate[id]
	if !held || !(t > 0) {
		return Estimate{}, ErrRange
	}
	return rate.Times(1 / float64(t)), nil
}

// OxyFuel is what oxy-fuel cutting by hand takes at one thickness. Cutting
// oxygen and the preheating flame are kept apart: the first flows while it
// cuts, the flame also while it preheats.
type OxyFuel struct {
	Speed   Estimate // mm/min
	Cutting Estimate // cutting oxygen, l/min
	Fuel    Estimate // fuel gas, l/min
	Flame   Estimate // volumes of oxygen the flame takes for one of fuel
}

// span is the low and the high end of a printed range.
type span [2]float64

func (s span) estimate() Estimate { return Estimate{s[0], (s[0] + s[1]) / 2, s[1]} }

// flameRow is one row of the handbook: mild steel, clean, not preheated.
type flameRow struct {
	t                          float64 // mm
	speed                      span    // mm/min
	oxygen, acetylene, propane span    // ft³/h; oxygen for cutting alone
}

// flames is the table for hand cutting; propane stands in the table for hand
// and machine of the same handbook. Source: aws-oxyfuel, from memory.
var flames = []flameRow{
	{3.17, span{508, 762}, span{45, 55}, span{7, 9}, span{3, 10}},
	{6.35, span{406, 660}, span{50, 93}, span{9, 11}, span{5, 12}},
	{9.52, span{381, 610}, span{60, 115}, span{10, 12}, span{5, 15}},
	{12.7, span{305, 559}, span{66, 125}, span{10, 13}, span{5, 15}},
	{19.05, span{305, 508}, span{117, 143}, span{12, 15}, span{6, 18}},
	{25.4, span{229, 457}, span{130, 160}, span{13, 16}, span{6, 18}},
	{38.1, span{152, 305}, span{143, 178}, span{15, 18}, span{8, 20}},
	{50.8, span{152, 330}, span{185, 231}, span{16, 20}, span{8, 20}},
	{76.2, span{102, 254}, span{240, 290}, span{19, 23}, span{9, 22}},
	{101.6, span{102, 203}, span{293, 388}, span{21, 26}, span{9, 24}},
}

// flameOxygen is the volumes of oxygen for one of fuel. Source: aws-oxyfuel, from
// memory.
var flameOxygen = map[rules.Fuel]Estimate{rules.Acetylene: {1.1, 1.2, 1.3}, rules.Propane: {3.5, 3.9, 4.3}}

// cubicFeetAnHour in l/min, exact (nist-sp-811).
const cubicFeetAnHour = 0.4719474432

// nominal lets 3 mm stand for the 1/8 in of the table.
const nominal = 0.06

// OxyFuelAt returns what oxy-fuel cutting of mild steel takes at t mm, straight
// between the rows of the table; likely is the middle of low and high.
//
// Valid for 3 to 101.6 mm of mild steel and a fuel of the table, else ErrRange.
// Source: aws-oxyfuel, from memory; speeds agree with carvill.
// Check: 12.7 mm → 305 to 559 mm/min, cutting oxygen 66 to 125 ft³/h = 31.1 to
// 59.0 l/min, acetylene 10 to 13 ft³/h = 4.72 to 6.14 l/min.
func OxyFuelAt(t unit.Millimetre, f rules.Fuel) (OxyFuel, error) {
	flame, known := flameOxygen[f]
	first, last := flames[0].t, flames[len(flames)-1].t
	at := float64(t)
	if !known || !(at >= first*(1-nominal) && at <= last*(1+1e-9)) {
		return OxyFuel{}, ErrRange
	}
	r := flameAt(min(max(at, first), last))
	fuel := r.acetylene
	if f == rules.Propane {
		fuel = r.propane
	}
	return OxyFuel{
		Speed: r.speed.estimate(), Flame: flame,
		Cutting: r.oxygen.estimate().Times(cubicFeetAnHour), Fuel: fuel.estimate().Times(cubicFeetAnHour),
	}, nil
}

// flameAt reads the table straight between its rows; t lies within it.
func flameAt(t float64) flameRow {
	i := 1
	for t > flames[i].t {
		i++
	}
	a, b := flames[i-1], flames[i]
	w := (t - a.t) / (b.t - a.t)
	on := func(x, y span) span { return span{x[0] + w*(y[0]-x[0]), x[1] + w*(y[1]-x[1])} }
	return flameRow{t, on(a.speed, b.speed), on(a.oxygen, b.oxygen), on(a.acetylene, b.acetylene), on(a.propane, b.propane)}
}

// cannot says in a plain sentence why an account cannot be made for a process
// in a metal and thickness, "" where it can.
func cannot(p Process, id metal.ID, t unit.Millimetre) message.Message {
	name := id.Name()
	switch {
	case p == Unknown:
		return message.New("What this method costs is not known, so it is not calculated.")
	case p.flame() && (id == metal.Stainless || id == metal.Aluminium || id == metal.Copper):
		return message.New("Oxy-fuel does not cut {1}, so it is not an option there.", name)
	case p.flame() && id != metal.MildSteel && id != metal.Galvanised:
		return message.New("There are no figures for oxy-fuel in {1}.", name)
	case p.flame():
		if _, err := OxyFuelAt(t, rules.Acetylene); err != nil {
			return message.New("There are oxy-fuel figures for 3 to 100 mm only.")
		}
	case p == Shear:
		return ends("There are no figures for hand-held and bench shears in {1}.", "Hand-held and bench shears cut up to about {1} in {2}, so they are not an option for this cut.", p, id, t)
	case p == Nibbler:
		return ends("There are no figures for hand-held nibblers in {1}.", "Hand-held nibblers cut up to about {1} in {2}, so they are not an option for this cut.", p, id, t)
	case p == Disc:
		if _, held := discFactor[id]; !held {
			return message.New("There are no figures for abrasive discs in {1}.", name)
		}
		if _, err := DiscSpeed(t, id); err != nil {
			return message.New("Abrasive discs do not cut plate above 12 mm day after day, so it is not calculated.")
		}
	case p == BandSaw:
		if _, err := SawSpeed(t, id); err != nil {
			return message.New("There are no figures for band saws in {1}.", name)
		}
	}
	return message.Message{}
}

// ends says why a tool is no alternative in a metal: in the words of unheld
// where no figure is held, in those of beyond where the cut is too thick for it.
func ends(unheld, beyond message.ID, p Process, id metal.ID, t unit.Millimetre) message.Message {
	limit, held := rules.ToolLimit(rules.Process(p), id)
	switch {
	case !held:
		return message.New(unheld, id.Name())
	case t > limit*(1+nominal):
		return message.New(beyond, shown(limit), id.Name())
	}
	return message.Message{}
}
