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
	if !(min(t, kerf) > 0 && p.Carried(v, kerf) >= leastCarried) {
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

// ByLine returns the power in kW that a moving line of heat must put into a
// plate to bring a band as wide as the kerf to melting, through t mm at v
// mm/min, by the exact solution for a wide plate:
//
//	T − T0 = q/(2π·k·t)·exp(−v·x/2α)·K0(v·r/2α),
//
// with x along the cut, ahead of the line, and r the distance from it; the
// power is the one whose hottest point, half a kerf beside the cut, just melts.
// It holds for metals that carry heat away fast, where Absorbed does not; the
// latent heat is left out of both.
//
// Valid for 0.01 ≤ v·w/4α ≤ 5, t > 0. Source: rosenthal, from memory; the tests
// solve it a second way. Check: mild steel, 11 mm, 1.5 mm kerf, 500 mm/min →
// 3.09 kW, Absorbed there 2.92 kW.
func (p Properties) ByLine(t, kerf unit.Millimetre, v unit.MillimetrePerMinute) (unit.Kilowatt, error) {
	if !(min(t, kerf) > 0) {
		return 0, ErrRange
	}
	side := p.Carried(v, kerf) // half a kerf in units of 2α/v
	if err := within("v·w/4α", side, 0.01, 5, ""); err != nil {
		return 0, err
	}
	watts := 2 * math.Pi * p.Conductivity * float64(t) / 1e3 * (float64(p.Melting) - room) / hottest(side)
	return unit.Kilowatt(watts / 1e3), nil
}

// hottest is the largest value of exp(−x)·K0(√(x² + y²)) along x, which lies
// behind the line; found by golden section.
func hottest(y float64) float64 {
	const golden = 0.6180339887498949
	back, front := -10*(y+y*y), 0.0
	a, b := front-golden*(front-back), back+golden*(front-back)
	atA, atB := warmth(a, y), warmth(b, y)
	for range 40 {
		if atA > atB {
			front, b, atB = b, a, atA
			a = front - golden*(front-back)
			atA = warmth(a, y)
		} else {
			back, a, atA = a, b, atB
			b = back + golden*(front-back)
			atB = warmth(b, y)
		}
	}
	return max(atA, atB)
}

// warmth is exp(−x)·K0(r), r = √(x² + y²), with K0(r) = ∫exp(−r·cosh u)du from 0
// on, up to where nothing is left, by the middles of equal pieces: the best rule for
// what is even and ends in nothing.
func warmth(x, y float64) float64 {
	const pieces = 64
	r := math.Hypot(x, y)
	piece := math.Acosh(1+40/r) / pieces
	sum := 0.0
	for i := range pieces {
		sum += math.Exp(-x - r*math.Cosh((float64(i)+0.5)*piece))
	}
	return sum * piece
}

// JoulePerMillimetre is heat per length of cut or weld.
type JoulePerMillimetre float64

// The temperatures and the heat capacity of steel in the published example.
// Source: aws-wh-1, from memory.
const (
	steelMelting    = 1510   // °C
	steelHeat       = 0.0044 // J/mm³·K
	exampleStart    = 25     // °C
	changesAt       = 730    // °C, above which the structure of steel changes
	thinPlateFactor = 4.13   // √(2·π·e)
)

// HeatedZone returns how far beside the molten edge, in mm, steel reaches
// 730 °C and changes its structure: Y from
// 1/(Tp − T0) = 4.13·ρC·t·Y/H + 1/(Tm − T0), with Tp 730, Tm 1510, T0 25 °C and
// ρC 0.0044 J/mm³·K; heat in J/mm, t in mm.
//
// Valid for a plate heated through its whole thickness, as by a cut, and
// heat, t > 0. Source: aws-wh-1, from memory. Check: 720 J/mm in 5 mm → 5.9 mm.
func HeatedZone(heat JoulePerMillimetre, t unit.Millimetre) (unit.Millimetre, error) {
	if !(heat > 0 && t > 0) {
		return 0, ErrRange
	}
	span := 1.0/(changesAt-exampleStart) - 1.0/(steelMelting-exampleStart)
	return unit.Millimetre(span * float64(heat) / (thinPlateFactor * steelHeat * float64(t))), nil
}

// LeftInPlate returns the heat in J/mm that a cut leaves in mild steel t mm
// thick: what the line-source balance says is absorbed, less the melt that is
// blown out, for a kerf in mm at v mm/min. It counts heat only, not whether a
// flame or an arc gives it. The plate absorbs more than the melt takes at any speed:
// 2·k/α·(Tm − 20) = 13.4 J/mm³ at the least, of which melting takes 10.15.
//
// Valid where Absorbed is. Source: wells-1952 and property-tables, from memory.
// Check: 11 mm, 1.5 mm kerf, 500 mm/min: 351 − 168 = 183 J/mm.
func LeftInPlate(t, kerf unit.Millimetre, v unit.MillimetrePerMinute) (JoulePerMillimetre, error) {
	steel := properties[metal.MildSteel][0]
	q, err := steel.Absorbed(t, kerf, v)
	if err != nil {
		return 0, err
	}
	absorbed := float64(q) * 1000 * 60 / float64(v)
	return JoulePerMillimetre(absorbed - float64(kerf)*float64(t)*steel.MeltEnergy()), nil
}

// Band is a usual range in mm.
type Band struct{ Low, High unit.Millimetre }

// PlasmaBand is the usual heated band of hand plasma on mild steel.
// Source: practice; the plasma figures agree with HeatedZone of LeftInPlate.
func PlasmaBand() Band { return Band{0.5, 2} }

// OxyFuelBand is the usual heated band of oxy-fuel on 12 to 25 mm mild steel.
// Source: practice.
func OxyFuelBand() Band { return Band{1.5, 4} }

// ColdBand is the heated band of shear, nibbler, band saw and hand saw: none.
// Source: practice.
func ColdBand() Band { return Band{0, 0} }

// Plausibility is what the heat balance makes of a row.
type Plausibility int

// The bands, best first.
const (
	Normal Plausibility = iota
	Suspicious
	Impossible
)

// The bands of the share of the arc's power that melts the kerf, at the rated
// point and the conventional load voltage.
//
// The plasma cutting conditions of the AWS Welding Handbook give 0.24 to 0.47
// for carbon steel (from memory) and 0.22 to 0.38 for stainless (aws-pac),
// there at a nominal 200 V and with the kerf taken as 1 to 1.5 times the
// orifice. A hand torch's arc runs up to a quarter above the conventional
// voltage, so up to 0.6 is normal; 0.15 leaves as much room below. More than
// the whole arc is against the conservation of energy.
const (
	leastMelt unit.Percent = 15
	mostMelt  unit.Percent = 60
	allOfArc  unit.Percent = 100
)

// Kerf returns the usual width in mm of a cut by hand at an output in A:
// 1.5 mm at 40 A, 2.0 at 70 A, 2.5 at 100 A, straight between and on.
//
// Valid for 15 to 200 A. Source: practice (1.2–1.8 mm at 40 A, 1.5–2.5 at 60 to
// 80 A, 2–3 at 100 A). Check: 70 A → 2.0 mm.
func Kerf(output unit.Ampere) (unit.Millimetre, error) {
	if err := within("output", float64(output), 15, 200, "A"); err != nil {
		return 0, err
	}
	return unit.Millimetre(1.5 + float64(output-40)/60), nil
}

// MeltShare returns the share in % of the arc's power that melts the kerf of
// mild steel t mm thick at v mm/min and an output in A: kerf·t·v·10.15 J/mm³
// over output times the conventional load voltage.
//
// Valid for t, v > 0 and 15 to 200 A. Source: physics, with property-tables,
// iec-60974-1 and practice for the kerf, all from memory.
// Check: 40 A, 11 mm, 500 mm/min: 1.5·11·8.333·10.15 = 1.396 kW of 3.84 → 36 %.
func MeltShare(output unit.Ampere, t unit.Millimetre, v unit.MillimetrePerMinute) (unit.Percent, error) {
	kerf, err := Kerf(output)
	if err != nil {
		return 0, err
	}
	if !(t > 0 && v > 0) {
		return 0, ErrRange
	}
	arc, err := ArcPower(output)
	melted := float64(kerf) * float64(t) * float64(v) / 60 * properties[metal.MildSteel][0].MeltEnergy() / 1000
	return unit.Percent(100 * melted / float64(arc)), err
}

// Plausible judges the rated thickness of a row against the power of its arc,
// and says why in a sentence.
//
// Valid for a row with a rated thickness and 15 to 200 A. Source as for
// MeltShare, bands as stated there.
// Check: 40 A rated 11 mm is normal (36 %), 20 mm suspicious (66 %), 40 mm
// impossible (132 %), 3 mm suspicious (10 %).
func Plausible(s *system.System) (Plausibility, message.ID, error) {
	share, err := MeltShare(s.OutputMax, s.Rated, RatedSpeed)
	switch {
	case err != nil:
		return Normal, "", err
	case share > allOfArc:
		return Impossible, "the rated thickness needs more heat than the whole arc gives", nil
	case share > mostMelt:
		return Suspicious, "the rated thickness needs an unusually large part of the arc's heat; check it against the data sheet", nil
	case share < leastMelt:
		return Suspicious, "the rated thickness uses little of the arc's heat; it may be given too low, or the output too high", nil
	}
	return Normal, "the rated thickness is in keeping with the arc's heat", nil
}
