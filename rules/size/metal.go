package size

import (
	"math"
	"slices"
	"strconv"

	"cutbrief/rules/cite"
	"cutbrief/rules/message"
	"cutbrief/rules/metal"
	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// Equivalence returns what a millimetre of a metal counts for in mild steel on
// a system: the row's own rating in that metal takes precedence over the list
// of metals. It is not known for a metal no figures are held for.
//
// Valid for a row with a rated thickness above 0. Source: rating-plate where
// the row rates the metal, else the metal's own basis.
// Check: rated 12 mm, stainless rated 10 mm → 1.2; not rated → 1.15.
func Equivalence(s *system.System, id metal.ID) (unit.Maybe[float64], cite.Ref) {
	if own, ok := s.PerMetal[id]; ok && own > 0 && s.Rated > 0 {
		return unit.Known(float64(s.Rated / own)), cite.Ref{Source: "rating-plate"}
	}
	m, _ := metal.Find(id)
	return m.Equivalence, m.Basis
}

// Properties are what the energy balance needs to know of a metal. All are from
// memory: property-tables for density, heat capacity, melting and latent heat,
// kou for hot conductivity and diffusivity of mild steel and stainless.
type Properties struct {
	Name         message.ID
	Density      float64 // kg/m³
	Heat         float64 // mean heat capacity from 20 °C to melting, J/kg·K
	Melting      unit.Celsius
	Latent       float64 // J/kg
	Conductivity float64 // hot, W/m·K
	Diffusivity  float64 // hot, m²/s
}

// properties by metal. Brass stands beside copper because the list of metals
// holds the two in one row. Source: property-tables and kou.
var properties = map[metal.ID][]Properties{
	metal.MildSteel:  {{"mild steel", 7850, 700, 1510, 250e3, 41, 9.1e-6}},
	metal.Galvanised: {{"galvanised steel, as mild steel", 7850, 700, 1510, 250e3, 41, 9.1e-6}},
	metal.Stainless:  {{"stainless 304", 7930, 600, 1454, 260e3, 24.9, 5.3e-6}},
	metal.Aluminium:  {{"aluminium", 2700, 1030, 652, 390e3, 229, 8.5e-5}},
	metal.Copper: {
		{"copper", 8940, 440, 1085, 205e3, 384, 384 / (8940 * 440.0)},
		{"brass 70/30", 8530, 420, 955, 168e3, 120, 120 / (8530 * 420.0)},
	},
}

// room is the temperature in °C the metal starts from.
const room = 20

// MeltEnergy returns what it takes to heat and melt a metal, in J/mm³:
// ρ·(c·(Tm − 20) + L)·10⁻⁹.
//
// Valid for the metals of Properties. Source: physics, with the figures of
// property-tables, from memory. Check: mild steel → 7850·(700·1490 + 250000) =
// 10.15 J/mm³ (handbook rule (Tm + 273)²/300000: 10.6).
func (p Properties) MeltEnergy() float64 {
	return p.Density * (p.Heat*(float64(p.Melting)-room) + p.Latent) * 1e-9
}

// Carried returns the ratio v·w/(4·α) of a cut: how much of the heat goes into
// the kerf before it can flow away. v in mm/min, w the kerf in mm.
// Valid for v, w > 0. Source: wells-1952. Check: mild steel, 500 mm/min,
// 1.5 mm → 8.333·1.5/(4·9.1) = 0.343.
func (p Properties) Carried(v unit.MillimetrePerMinute, kerf unit.Millimetre) float64 {
	return float64(v) / 60e3 * float64(kerf) / 1e3 / (4 * p.Diffusivity)
}

// leastCarried is where the line-source balance stops to hold.
const leastCarried = 0.2

// Absorbed returns the power in kW a moving line of heat must put into a plate
// to melt a kerf w mm wide through t mm at v mm/min, conduction included:
// q = t·k·(Tm − 20)·8·(0.2 + v·w/(4·α)).
//
// Valid for v·w/(4·α) ≥ 0.2, else ErrRange: metals that carry heat away fast
// and slow cuts lie outside. Source: wells-1952, from memory.
// Check: mild steel, 11 mm, 1.5 mm kerf, 500 mm/min → 2.92 kW.
func (p Properties) Absorbed(t, kerf unit.Millimetre, v unit.MillimetrePerMinute) (unit.Kilowatt, error) {
	if !(t > 0 && kerf > 0 && v > 0) || p.Carried(v, kerf) < leastCarried {
		return 0, ErrRange
	}
	perMetre := p.Conductivity * (float64(p.Melting) - room) * 8 * (leastCarried + p.Carried(v, kerf))
	return unit.Kilowatt(float64(t) / 1e3 * perMetre / 1e3), nil
}

// PropertiesOf returns the figures held for a metal; two for copper and brass, none
// for cast iron and other metals.
func PropertiesOf(id metal.ID) []Properties { return slices.Clone(properties[id]) }

// Derivation shows where the factor of one metal comes from, against mild steel
// at the rated speed and a kerf of 1.5 mm.
type Derivation struct {
	Metal    message.ID
	Melt     float64             // melt energy over that of mild steel: the least it can be
	Balance  float64             // power per mm over that of mild steel, conduction included
	Practice unit.Maybe[float64] // the factor of the list of metals
	Blended  unit.Maybe[float64] // what the blend gives
}

// Message is the derivation in one sentence.
func (d Derivation) Message() message.Message {
	practice, ok := d.Practice.Get()
	blended, _ := d.Blended.Get()
	if !ok {
		return message.New("{1}: there is no factor", d.Metal)
	}
	figure := func(v float64) message.Figure { return message.Figure(strconv.FormatFloat(v, 'f', 2, 64)) }
	return message.New("{1}: melting takes {2} times the heat of mild steel, and {3} times the power with what flows away; common practice says {4}, together {5}",
		d.Metal, figure(d.Melt), figure(d.Balance), figure(practice), figure(blended))
}

// kerfAtRating is the kerf in mm of a 40 A class hand torch. Source: practice.
const kerfAtRating unit.Millimetre = 1.5

// Derive compares the factor of a metal in the list with an energy balance. At
// equal power and speed the thickness cut is inverse to the power a millimetre
// takes, so the balance's factor is that power, by ByLine, over mild steel's.
// Blended is the root of practice times balance, never below practice: a factor
// that is too small sells too small a system.
//
// Valid for metals with figures; none are held for cast iron and others, which
// give an empty list. Source: rosenthal and property-tables, from memory, with
// practice. Check: stainless, balance 0.82, practice 1.15 → 1.15; copper,
// balance 2.6, practice 2 → 2.3.
func Derive(id metal.ID) []Derivation {
	steel := properties[metal.MildSteel][0]
	unity := perMillimetre(steel)
	m, _ := metal.Find(id)
	var list []Derivation
	for _, p := range properties[id] {
		d := Derivation{Metal: p.Name, Practice: m.Practice,
			Melt:    p.MeltEnergy() / steel.MeltEnergy(),
			Balance: perMillimetre(p) / unity,
		}
		if practice, ok := d.Practice.Get(); ok {
			d.Blended = unit.Known(max(practice, math.Sqrt(practice*d.Balance)))
		}
		list = append(list, d)
	}
	return list
}

// perMillimetre is the power in kW a millimetre of thickness takes at the rated
// speed. Every metal of the table lies in range there; see its test.
func perMillimetre(p Properties) float64 {
	q, err := p.ByLine(1, kerfAtRating, RatedSpeed)
	if err != nil {
		return math.NaN()
	}
	return float64(q)
}
