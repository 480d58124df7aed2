package unit

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

// measures lists the units of each kind. The first is the one it is held in.
var measures = map[Kind][]measure{
	None: {{factor: 1}},
	Thickness: {
		{name: "mm", factor: 1, spelled: []string{"millimetre", "millimetres", "millimeter", "millimeters"}},
		{name: "cm", factor: 10, spelled: []string{"centimetre", "centimetres", "centimeter", "centimeters"}},
		{name: "m", factor: 1000, spelled: []string{"metre", "metres", "meter", "meters"}},
		{name: "in", factor: inch, over: inchOver, spelled: []string{`"`, "inch", "inches"}},
		{name: "thou", factor: inch, over: inchOver * 1000},
	},
	Length: {
		{name: "m", factor: 1, spelled: []string{"metre", "metres", "meter", "meters"}},
		{name: "km", factor: 1000, spelled: []string{"kilometre", "kilometres", "kilometer", "kilometers"}},
		{name: "cm", factor: 0.01, spelled: []string{"centimetre", "centimetres", "centimeter", "centimeters"}},
		{name: "mm", factor: 0.001, spelled: []string{"millimetre", "millimetres", "millimeter", "millimeters"}},
		{name: "ft", factor: foot, over: footOver, spelled: []string{"'", "foot", "feet"}},
		{name: "yd", factor: 3 * foot, over: footOver, spelled: []string{"yard", "yards"}},
		{name: "in", factor: inch, over: inchOver * 1000, spelled: []string{`"`, "inch", "inches"}},
	},
	Speed: {
		{name: "mm/min", factor: 1},
		{name: "m/min", factor: 1000},
		{name: "mm/s", factor: minute},
		{name: "in/min", factor: inch, over: inchOver, spelled: []string{"ipm", `"/min`, "inches/minute", "in/minute"}},
	},
	Section: {{name: "mm²", factor: 1, spelled: []string{"mm2", "sq mm", "sqmm"}}},
	Current: {{name: "A", factor: 1, spelled: []string{"a", "amp", "amps", "ampere", "amperes"}}},
	Voltage: {
		{name: "V", factor: 1, spelled: []string{"v", "volt", "volts", "vac"}},
		{name: "kV", factor: 1000, spelled: []string{"kv"}},
	},
	Power: {
		{name: "kW", factor: 1, spelled: []string{"kw", "kilowatt", "kilowatts"}},
		{name: "W", factor: 0.001, spelled: []string{"w", "watt", "watts"}},
		{name: "hp", factor: horsepower, note: "hp is read as 550 ft·lbf/s; a metric horsepower (PS) is 1.4 % less"},
		{name: "PS", factor: metricHorsepower, spelled: []string{"ps", "cv"}, note: "PS is the metric horsepower, 0.735 kW"},
	},
	ApparentPower: {
		{name: "kVA", factor: 1, spelled: []string{"kva"}},
		{name: "VA", factor: 0.001, spelled: []string{"va"}},
	},
	Flow: {
		{name: "l/min", factor: 1, spelled: []string{"lpm", "litres/minute", "liters/minute", "litre/minute", "l/minute"}},
		{name: "l/s", factor: minute},
		{name: "m³/min", factor: 1000, spelled: []string{"m3/min"}},
		{name: "m³/h", factor: 1000, over: minute, spelled: []string{"m3/h", "m3/hr"}},
		{name: "cfm", factor: cubicFoot, spelled: []string{"ft3/min", "cubic feet/minute"}},
		{name: "scfm", factor: cubicFoot, note: "scfm is read as free air; ask at which temperature and pressure it is stated"},
	},
	Pressure: {
		{name: "bar", factor: 1, spelled: []string{"barg", "bar g", "bar(g)"}},
		{name: "kPa", factor: 0.01, spelled: []string{"kpa"}},
		{name: "MPa", factor: 10, spelled: []string{"mpa"}},
		{name: "psi", factor: psi, spelled: []string{"psig"}},
	},
	Volume: {
		{name: "l", factor: 1, spelled: []string{"litre", "litres", "liter", "liters"}},
		{name: "m³", factor: 1000, spelled: []string{"m3"}},
		{name: "gal", factor: gallon, spelled: []string{"gallon", "gallons", "us gal", "gal us", "us gallon", "us gallons"}, note: "gal is read as the US gallon, 3.785 l"},
	},
	Weight: {
		{name: "kg", factor: 1, spelled: []string{"kilo", "kilos", "kilogram", "kilograms"}},
		{name: "lb", factor: pound, spelled: []string{"lbs", "pound", "pounds"}},
	},
	Share: {{name: "%", factor: 1, spelled: []string{"percent", "per cent", "pct"}}},
	Angle: {{name: "°", factor: 1, spelled: []string{"deg", "degree", "degrees"}}},
	Temperature: {
		{name: "°C", factor: 1, spelled: []string{"°c", "c", "deg c", "celsius"}},
		{name: "°F", factor: 1, over: 1.8, offset: -32, spelled: []string{"°f", "f", "deg f", "fahrenheit"}},
	},
	Time: {
		{name: "s", factor: 1, spelled: []string{"sec", "second", "seconds"}},
		{name: "min", factor: minute, spelled: []string{"minute", "minutes"}},
		{name: "h", factor: 60 * minute, spelled: []string{"hr", "hour", "hours"}},
	},
	Price: {{factor: 1}},
	Count: {{factor: 1}},
}

// inchUnits is what a bare number means to a reader in inches, where that
// differs from the unit held.
var inchUnits = map[Kind]string{
	Thickness: "in", Length: "ft", Speed: "in/min", Flow: "cfm",
	Pressure: "psi", Volume: "gal", Weight: "lb",
}

// refusals are units that are not read on purpose, with what to give instead.
var refusals = []struct {
	kind    Kind
	spelled []string
	advice  string
}{
	{Thickness, []string{"mil", "mils"}, "mil is said for a millimetre and for a thousandth of an inch: write mm, or thou"},
	{Thickness, []string{"swg", "bwg"}, "only the gauges sheet is sold by in North America are held: give mm or in"},
	{ApparentPower, []string{"kw", "w", "hp"}, "look for the kVA on the plate; kW is kVA times the power factor, which is not known here"},
	{Power, []string{"kva", "va"}, "look for the kW on the plate; kVA is more than kW unless the power factor is 1"},
	{Pressure, []string{"psia", "bara", "bar a", "bar(a)", "bar abs", "kpa abs", "kpaa", "kpa(a)", "mpa abs", "psi abs", "atm"},
		"give the pressure the gauge shows, such as 6 bar or 90 psi; an absolute pressure is about 1 bar (14.7 psi) more"},
	{Flow, []string{"nl/min", "nm3/h", "nm3/min", "sl/min", "slpm"}, "give free air, such as 190 l/min or 6.7 cfm; normal and standard litres are counted at other conditions"},
	{Volume, []string{"uk gal", "gal uk", "imperial gallon", "imperial gallons"}, "give litres or US gallons, such as 200 l or 60 gal"},
}

// held turns x of this unit into the unit held.
func (m measure) held(x float64) float64 {
	if m.over == 0 {
		return (x + m.offset) * m.factor
	}
	return (x + m.offset) * m.factor / m.over
}

// shown turns a value in the unit held into this unit.
func (m measure) shown(held float64) float64 {
	if m.over == 0 {
		return held/m.factor - m.offset
	}
	return held*m.over/m.factor - m.offset
}

// findMeasure looks a typed unit up among those of a kind.
func findMeasure(k Kind, typed string) (measure, bool) {
	typed = fold(typed)
	for _, m := range measures[k] {
		if m.name == typed {
			return m, true
		}
		for _, s := range m.spelled {
			if s == typed {
				return m, true
			}
		}
	}
	return measure{}, false
}

// bareMeasure is the unit a number without one is given in.
func bareMeasure(k Kind, style Style) measure {
	if style == Inch {
		if m, ok := findMeasure(k, inchUnits[k]); ok && inchUnits[k] != "" {
			return m
		}
	}
	return measures[k][0]
}

// refusal says why a unit is not read on purpose, or "".
func refusal(k Kind, typed string) string {
	typed = fold(typed)
	for _, r := range refusals {
		if r.kind != k {
			continue
		}
		for _, s := range r.spelled {
			if s == typed {
				return r.advice
			}
		}
	}
	return ""
}
