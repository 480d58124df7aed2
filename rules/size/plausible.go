package size

import (
	"cutbrief/rules/message"
	"cutbrief/rules/metal"
	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

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
