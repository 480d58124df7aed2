package cost

import (
	"cutbrief/rules"
	"cutbrief/rules/unit"
)

// OxyFuel is what oxy-fuel cutting by hand takes at one thickness. Cutting
// oxygen and the preheating flame are kept apart: the first flows while it
// cuts, the flame also while it preheats.
type OxyFuel struct {
	Speed   Estimate // mm/min
	Cutting Estimate // cutting oxygen, l/min
	Fuel    Estimate // fuel gas, l/min
	Flame   Estimate // volumes of oxygen the flame takes for one of fuel
	Preheat Estimate // s before the cut starts
}

// flameRow is one row of the handbook: mild steel, clean, not preheated.
type flameRow struct {
	t                  float64 // mm
	slow, fast         float64 // mm/min
	oxygen0, oxygen1   float64 // cutting oxygen, ft³/h
	acetylene0, acety1 float64 // ft³/h
	propane0, propane1 float64 // ft³/h
}

// flames is the table for hand cutting; propane stands in the table for hand
// and machine of the same handbook. Source: aws-oxyfuel, from memory.
var flames = []flameRow{
	{3.17, 508, 762, 45, 55, 7, 9, 3, 10},
	{6.35, 406, 660, 50, 93, 9, 11, 5, 12},
	{9.52, 381, 610, 60, 115, 10, 12, 5, 15},
	{12.7, 305, 559, 66, 125, 10, 13, 5, 15},
	{19.05, 305, 508, 117, 143, 12, 15, 6, 18},
	{25.4, 229, 457, 130, 160, 13, 16, 6, 18},
	{38.1, 152, 305, 143, 178, 15, 18, 8, 20},
	{50.8, 152, 330, 185, 231, 16, 20, 8, 20},
	{76.2, 102, 254, 240, 290, 19, 23, 9, 22},
	{101.6, 102, 203, 293, 388, 21, 26, 9, 24},
}

// Volumes of oxygen for one of fuel (aws-oxyfuel, from memory), and seconds of
// preheating before an edge start (common practice, no source: 5 to 20 s with
// acetylene, longer with propane).
var (
	flameOxygen = map[rules.Fuel]Estimate{rules.Acetylene: {Low: 1.1, Likely: 1.2, High: 1.3}, rules.Propane: {Low: 3.5, Likely: 3.9, High: 4.3}}
	preheating  = map[rules.Fuel]Estimate{rules.Acetylene: {Low: 5, Likely: 10, High: 20}, rules.Propane: {Low: 8, Likely: 20, High: 40}}
)

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
	fuel := between(r.acetylene0, r.acety1)
	if f == rules.Propane {
		fuel = between(r.propane0, r.propane1)
	}
	return OxyFuel{
		Speed: between(r.slow, r.fast), Flame: flame, Preheat: preheating[f],
		Cutting: between(r.oxygen0, r.oxygen1).Times(cubicFeetAnHour), Fuel: fuel.Times(cubicFeetAnHour),
	}, nil
}

func between(low, high float64) Estimate {
	return Estimate{Low: low, Likely: (low + high) / 2, High: high}
}

// flameAt reads the table straight between its rows; t lies within it.
func flameAt(t float64) flameRow {
	i := 1
	for i < len(flames)-1 && t > flames[i].t {
		i++
	}
	a, b := flames[i-1], flames[i]
	w := (t - a.t) / (b.t - a.t)
	on := func(x, y float64) float64 { return x + w*(y-x) }
	return flameRow{t, on(a.slow, b.slow), on(a.fast, b.fast), on(a.oxygen0, b.oxygen0), on(a.oxygen1, b.oxygen1),
		on(a.acetylene0, b.acetylene0), on(a.acety1, b.acety1), on(a.propane0, b.propane0), on(a.propane1, b.propane1)}
}
