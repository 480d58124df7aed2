package unit

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"cutbrief/rules/message"
)

// Kind says what a number measures, so that one number type can carry any
// conclusion from the rules to the page without losing its unit.
type Kind int

// The kinds, each with the unit a Quantity of it is held in.
const (
	None          Kind = iota // plain number, no unit
	Thickness                 // mm
	Length                    // m: cut length, cord, hose, altitude
	Speed                     // mm/min
	Section                   // mm²
	Current                   // A
	Voltage                   // V
	Power                     // kW
	ApparentPower             // kVA
	Flow                      // l/min free air
	Pressure                  // bar, gauge
	Volume                    // l
	Weight                    // kg
	Share                     // %
	Angle                     // °
	Temperature               // °C
	Time                      // s
	Price                     // currency units
	Count                     // whole things: cuts, days
)

// Quantity is a number with its kind, in that kind's unit.
type Quantity struct {
	Value float64
	Kind  Kind
}

// Style is how lengths are written for a reader: millimetres or inches.
type Style string

// The two styles. Only lengths, speeds, flows, pressures, volumes, weights and
// conductor sizes differ.
const (
	Metric Style = "mm"
	Inch   Style = "in"
)

// ParseStyle reads the name of a style, such as a flag or a choice: "mm",
// "metric", "millimetres", "in", "inch" or "inches".
func ParseStyle(text string) (Style, error) {
	switch strings.ToLower(strings.TrimSpace(text)) {
	case "mm", "metric", "millimetre", "millimetres", "millimeter", "millimeters":
		return Metric, nil
	case "in", "inch", "inches", `"`:
		return Inch, nil
	}
	return "", fmt.Errorf(`"%s" is not a style of units: mm or in would be`, printable(text))
}

// kind is all there is to know of a Kind.
type kind struct {
	wrong     message.ID // what a text is that is none of it
	example   message.ID // texts Read accepts, for a hint
	zero      bool       // zero is an honest answer: sea level, no cuts, free
	steps     []step     // how finely it is shown, in the unit held
	inch      string     // what a bare number means to a reader in inches, where that differs
	inchSteps []step     // how finely that is shown; none for thicknesses, which have a way of their own
	measures  []measure  // its units, that it is held in first
	refused   []refusal
}

// refusal is units that are not read on purpose, with what to give instead.
type refusal struct {
	advice  message.ID
	spelled []string
}

// measure is one unit a kind can be given or shown in. One of it is factor/over
// of the unit held; the two are kept apart so that 3/8 in is 9.525 mm to the
// last digit.
type measure struct {
	name    string // as shown
	factor  float64
	over    float64  // 0 stands for 1
	offset  float64  // added before the factor; 0 but for °F
	spelled []string // other spellings, folded; see fold
	note    string   // what the reader should know about this reading
}

// Factors, exact or from exact ones. Source: nist-sp-811, Appendix B.
const (
	inch, inchOver   = 127, 5                                // 25.4 mm
	foot, footOver   = 381, 1250                             // 0.3048 m
	pound            = 0.45359237                            // kg
	cubicFoot        = 28.316846592                          // l
	gallon           = 3.785411784                           // l, US, 231 in³
	psi              = 4.4482216152605 / 0.00064516 / 1e5    // bar
	horsepower       = 550 * 0.3048 * 4.4482216152605 / 1000 // kW, 550 ft·lbf/s
	metricHorsepower = 0.73549875                            // kW, 75 m·kgf/s
	minute           = 60                                    // s
)

// step is how finely numbers below a size are shown: to size 10^-decimals times
// width.
type step struct {
	below    float64 // in the shown unit; 0 for no limit
	width    float64 // 1, 5 or 50 units of the last decimal shown
	decimals int
}

// Display steps, chosen to be no finer than a gauge, a tape or a rating plate
// is read. Common practice, no source.
var (
	tenths  = []step{{10, 1, 1}, {0, 1, 0}}              // 0.1 below 10, then 1
	fine    = []step{{1, 1, 2}, {10, 1, 1}, {0, 1, 0}}   // 0.01 below 1, 0.1 below 10, then 1
	sheets  = []step{{1, 1, 2}, {0, 1, 1}}               // 0.01 below 1, then 0.1
	flows   = []step{{10, 1, 1}, {100, 1, 0}, {0, 5, 0}} // 0.1 below 10, 1 below 100, then 5
	travels = []step{{10, 1, 1}, {100, 1, 0}, {1000, 10, 0}, {0, 50, 0}}
	hundred = []step{{1, 1, 2}, {100, 1, 1}, {0, 1, 0}} // 0.01 below 1, 0.1 below 100, then 1
	prices  = []step{{100, 1, 2}, {0, 1, 0}}            // 0.01 below 100, then 1
	ones    = []step{{0, 1, 0}}
	minutes = []step{{0, 1, 1}}
)

// The spellings that thicknesses and lengths share.
var (
	millimetres = []string{"millimetre", "millimetres", "millimeter", "millimeters"}
	centimetres = []string{"centimetre", "centimetres", "centimeter", "centimeters"}
	metres      = []string{"metre", "metres", "meter", "meters"}
	inches      = []string{`"`, "inch", "inches"}
)

// kinds holds a row for each Kind.
var kinds = [...]kind{
	None: {wrong: "is not a number", example: "give a number, such as 3 or 0.5", zero: true, steps: hundred, measures: []measure{{factor: 1}}},
	Thickness: {wrong: "is not a thickness", example: "give a number and a unit, such as 12 mm, 3/8 in or 14 ga", steps: sheets, inch: "in",
		measures: []measure{
			{name: "mm", factor: 1, spelled: millimetres},
			{name: "cm", factor: 10, spelled: centimetres},
			{name: "m", factor: 1000, spelled: metres},
			{name: "in", factor: inch, over: inchOver, spelled: inches},
			{name: "thou", factor: inch, over: inchOver * 1000},
		},
		refused: []refusal{
			{"mil is said for a millimetre and for a thousandth of an inch: write mm, or thou", []string{"mil", "mils"}},
			{"only the gauges sheet is sold by in North America are held: give mm or in", []string{"swg", "bwg"}},
		}},
	Length: {wrong: "is not a length", example: "give a number and a unit, such as 15 m or 50 ft", zero: true, steps: fine, inch: "ft", inchSteps: fine,
		measures: []measure{
			{name: "m", factor: 1, spelled: metres},
			{name: "km", factor: 1000, spelled: []string{"kilometre", "kilometres", "kilometer", "kilometers"}},
			{name: "cm", factor: 0.01, spelled: centimetres},
			{name: "mm", factor: 0.001, spelled: millimetres},
			{name: "ft", factor: foot, over: footOver, spelled: []string{"'", "foot", "feet"}},
			{name: "yd", factor: 3 * foot, over: footOver, spelled: []string{"yard", "yards"}},
			{name: "in", factor: inch, over: inchOver * 1000, spelled: inches},
		}},
	Speed: {wrong: "is not a speed", example: "give a number and a unit, such as 500 mm/min or 20 in/min", steps: travels, inch: "in/min", inchSteps: flows,
		measures: []measure{
			{name: "mm/min", factor: 1},
			{name: "m/min", factor: 1000},
			{name: "mm/s", factor: minute},
			{name: "in/min", factor: inch, over: inchOver, spelled: []string{"ipm", `"/min`, "inches/minute", "in/minute"}},
		}},
	Section: {wrong: "is not a conductor size", example: "give a number and a unit, such as 4 mm² or AWG 10", steps: hundred,
		measures: []measure{{name: "mm²", factor: 1, spelled: []string{"mm2", "sq mm", "sqmm"}}}},
	Current: {wrong: "is not a current", example: "give a number of amperes, such as 32 A", steps: tenths,
		measures: []measure{{name: "A", factor: 1, spelled: []string{"a", "amp", "amps", "ampere", "amperes"}}}},
	Voltage: {wrong: "is not a voltage", example: "give a number of volts, such as 230 V", steps: tenths,
		measures: []measure{
			{name: "V", factor: 1, spelled: []string{"v", "volt", "volts", "vac"}},
			{name: "kV", factor: 1000, spelled: []string{"kv"}},
		}},
	Power: {wrong: "is not a power", example: "give a number and a unit, such as 7.5 kW or 10 hp", steps: hundred,
		measures: []measure{
			{name: "kW", factor: 1, spelled: []string{"kw", "kilowatt", "kilowatts"}},
			{name: "W", factor: 0.001, spelled: []string{"w", "watt", "watts"}},
			{name: "hp", factor: horsepower, note: "hp is read as 550 ft·lbf/s; a metric horsepower (PS) is 1.4 % less"},
			{name: "PS", factor: metricHorsepower, spelled: []string{"ps", "cv"}, note: "PS is the metric horsepower, 0.735 kW"},
		},
		refused: []refusal{{"look for the kW on the plate; kVA is more than kW unless the power factor is 1", []string{"kva", "va"}}}},
	ApparentPower: {wrong: "is not an apparent power", example: "give a number of kilovolt-amperes, such as 15 kVA", steps: hundred,
		measures: []measure{
			{name: "kVA", factor: 1, spelled: []string{"kva"}},
			{name: "VA", factor: 0.001, spelled: []string{"va"}},
		},
		refused: []refusal{{"look for the kVA on the plate; kW is kVA times the power factor, which is not known here", []string{"kw", "w", "hp"}}}},
	Flow: {wrong: "is not an air flow", example: "give a number and a unit, such as 190 l/min or 6.7 cfm", steps: flows, inch: "cfm", inchSteps: tenths,
		measures: []measure{
			{name: "l/min", factor: 1, spelled: []string{"lpm", "litres/minute", "liters/minute", "litre/minute", "l/minute"}},
			{name: "l/s", factor: minute},
			{name: "m³/min", factor: 1000, spelled: []string{"m3/min"}},
			{name: "m³/h", factor: 1000, over: minute, spelled: []string{"m3/h", "m3/hr"}},
			{name: "cfm", factor: cubicFoot, spelled: []string{"ft3/min", "cubic feet/minute"}},
			{name: "scfm", factor: cubicFoot, note: "scfm is read as free air; ask at which temperature and pressure it is stated"},
		},
		refused: []refusal{{"give free air, such as 190 l/min or 6.7 cfm; normal and standard litres are counted at other conditions",
			[]string{"nl/min", "nm3/h", "nm3/min", "sl/min", "slpm"}}}},
	Pressure: {wrong: "is not a pressure", example: "give the gauge reading and its unit, such as 6 bar or 90 psi", steps: sheets, inch: "psi", inchSteps: tenths,
		measures: []measure{
			{name: "bar", factor: 1, spelled: []string{"barg", "bar g", "bar(g)"}},
			{name: "kPa", factor: 0.01, spelled: []string{"kpa"}},
			{name: "MPa", factor: 10, spelled: []string{"mpa"}},
			{name: "psi", factor: psi, spelled: []string{"psig"}},
		},
		refused: []refusal{{"give the pressure the gauge shows, such as 6 bar or 90 psi; an absolute pressure is about 1 bar (14.7 psi) more",
			[]string{"psia", "bara", "bar a", "bar(a)", "bar abs", "kpa abs", "kpaa", "kpa(a)", "mpa abs", "psi abs", "atm"}}}},
	Volume: {wrong: "is not a volume", example: "give a number and a unit, such as 200 l or 60 gal", steps: tenths, inch: "gal", inchSteps: tenths,
		measures: []measure{
			{name: "l", factor: 1, spelled: []string{"litre", "litres", "liter", "liters"}},
			{name: "m³", factor: 1000, spelled: []string{"m3"}},
			{name: "gal", factor: gallon, spelled: []string{"gallon", "gallons", "us gal", "gal us", "us gallon", "us gallons"}, note: "gal is read as the US gallon, 3.785 l"},
		},
		refused: []refusal{{"give litres or US gallons, such as 200 l or 60 gal", []string{"uk gal", "gal uk", "imperial gallon", "imperial gallons"}}}},
	Weight: {wrong: "is not a weight", example: "give a number and a unit, such as 15 kg or 33 lb", steps: tenths, inch: "lb", inchSteps: tenths,
		measures: []measure{
			{name: "kg", factor: 1, spelled: []string{"kilo", "kilos", "kilogram", "kilograms"}},
			{name: "lb", factor: pound, spelled: []string{"lbs", "pound", "pounds"}},
		}},
	Share: {wrong: "is not a share", example: "give a number from 0 to 100, such as 35 %", zero: true, steps: tenths,
		measures: []measure{{name: "%", factor: 1, spelled: []string{"percent", "per cent", "pct"}}}},
	Angle: {wrong: "is not an angle", example: "give a number of degrees, such as 45°", zero: true, steps: sheets,
		measures: []measure{{name: "°", factor: 1, spelled: []string{"deg", "degree", "degrees"}}}},
	Temperature: {wrong: "is not a temperature", example: "give a number of degrees, such as 20 °C", zero: true, steps: ones,
		measures: []measure{
			{name: "°C", factor: 1, spelled: []string{"°c", "c", "deg c", "celsius"}},
			{name: "°F", factor: 1, over: 1.8, offset: -32, spelled: []string{"°f", "f", "deg f", "fahrenheit"}},
		}},
	Time: {wrong: "is not a time", example: "give a number and a unit, such as 30 s or 5 min", steps: tenths,
		measures: []measure{
			{name: "s", factor: 1, spelled: []string{"sec", "second", "seconds"}},
			{name: "min", factor: minute, spelled: []string{"minute", "minutes"}},
			{name: "h", factor: 60 * minute, spelled: []string{"hr", "hour", "hours"}},
		}},
	Price: {wrong: "is not a price", example: "give a number, such as 2500, 2,500.00 or 2500 EUR", zero: true, steps: prices, measures: []measure{{factor: 1}}},
	Count: {wrong: "is not a count", example: "give a whole number, such as 12", zero: true, steps: ones, measures: []measure{{factor: 1}}},
}

// row is the row of a kind; it knows no units where k is none of ours.
func (k Kind) row() *kind {
	if k < 0 || int(k) >= len(kinds) {
		return &kind{wrong: "is not a known kind of quantity"}
	}
	return &kinds[k]
}

// held turns x of this unit into the unit held.
func (m *measure) held(x float64) float64 {
	return (x + m.offset) * m.factor / cmp.Or(m.over, 1)
}

// shown turns a value in the unit held into this unit.
func (m *measure) shown(held float64) float64 {
	return held*cmp.Or(m.over, 1)/m.factor - m.offset
}

// measure looks a typed unit up; nil if it is none of the kind's.
func (k *kind) measure(typed string) *measure {
	typed = fold(typed)
	for i := range k.measures {
		if m := &k.measures[i]; m.name == typed || slices.Contains(m.spelled, typed) {
			return m
		}
	}
	return nil
}

// bare is the unit a number without one is given in.
func (k *kind) bare(style Style) *measure {
	if style == Inch && k.inch != "" {
		return k.measure(k.inch)
	}
	return &k.measures[0]
}

// refusal says why a unit is not read on purpose, or "".
func (k *kind) refusal(typed string) message.ID {
	typed = fold(typed)
	for _, r := range k.refused {
		if slices.Contains(r.spelled, typed) {
			return r.advice
		}
	}
	return ""
}
