package unit_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"cutbrief/rules/unit"
)

// Expected values worked by hand from 25.4 mm to the inch and 0.3048 m to the
// foot, or from the definition named beside them.
func TestRead(t *testing.T) {
	for _, c := range []struct {
		text  string
		kind  unit.Kind
		style unit.Style
		want  float64
		unit  string
		bare  bool
	}{
		{"12", unit.Thickness, unit.Metric, 12, "mm", true},
		{"12", unit.Thickness, unit.Inch, 304.8, "in", true},
		{"12 mm", unit.Thickness, unit.Inch, 12, "mm", false},
		{"12MM", unit.Thickness, unit.Metric, 12, "mm", false},
		{"1.2 cm", unit.Thickness, unit.Metric, 12, "cm", false},
		{"3/8", unit.Thickness, unit.Metric, 9.525, "in", true},
		{"3/8", unit.Thickness, unit.Inch, 9.525, "in", true},
		{"3/8 in", unit.Thickness, unit.Metric, 9.525, "in", false},
		{`3/8"`, unit.Thickness, unit.Metric, 9.525, "in", false},
		{"3/8″", unit.Thickness, unit.Metric, 9.525, "in", false},
		{"3⁄8 in.", unit.Thickness, unit.Metric, 9.525, "in", false},
		{"3/8''", unit.Thickness, unit.Metric, 9.525, "in", false},
		{`1-1/4"`, unit.Thickness, unit.Metric, 31.75, "in", false},
		{"1 1/4 in", unit.Thickness, unit.Metric, 31.75, "in", false},
		{"1–1/4 in", unit.Thickness, unit.Metric, 31.75, "in", false},
		{"1-1/2 in", unit.Thickness, unit.Metric, 38.1, "in", false}, // not 1/2
		{"5/16-in", unit.Thickness, unit.Metric, 7.9375, "in", false},
		{"5/16 - inch", unit.Thickness, unit.Metric, 7.9375, "in", false},
		{"½", unit.Thickness, unit.Metric, 12.7, "in", true},
		{"1¼", unit.Thickness, unit.Inch, 31.75, "in", true},
		{"1-¼ in", unit.Thickness, unit.Inch, 31.75, "in", false},
		{`.25"`, unit.Thickness, unit.Metric, 6.35, "in", false},
		{"3,5 mm", unit.Thickness, unit.Metric, 3.5, "mm", false},
		{"0,125 in", unit.Thickness, unit.Metric, 3.175, "in", false},
		{"3.175 mm", unit.Thickness, unit.Metric, 3.175, "mm", false},
		{"250 thou", unit.Thickness, unit.Metric, 6.35, "thou", false},
		{"20 mm", unit.Length, unit.Metric, 0.02, "mm", false},
		{"1 500 m", unit.Length, unit.Metric, 1500, "m", false},
		{"50", unit.Length, unit.Inch, 15.24, "ft", true},
		{"50'", unit.Length, unit.Metric, 15.24, "ft", false},
		{"1 yd", unit.Length, unit.Metric, 0.9144, "yd", false},
		{"0", unit.Length, unit.Metric, 0, "m", true}, // sea level
		{"20 ipm", unit.Speed, unit.Metric, 508, "in/min", false},
		{"20", unit.Speed, unit.Inch, 508, "in/min", true},
		{"0.5 m / min", unit.Speed, unit.Metric, 500, "m/min", false},
		{"10 mm/s", unit.Speed, unit.Metric, 600, "mm/s", false},
		{"20 inches per minute", unit.Speed, unit.Metric, 508, "in/min", false},
		{"4 mm²", unit.Section, unit.Metric, 4, "mm²", false},
		{"2.5", unit.Section, unit.Metric, 2.5, "mm²", true},
		{"16mm2", unit.Section, unit.Inch, 16, "mm²", false},
		{"32 amps", unit.Current, unit.Metric, 32, "A", false},
		{"45A", unit.Current, unit.Inch, 45, "A", false},
		{"0.4 kV", unit.Voltage, unit.Metric, 400, "kV", false},
		{"10 hp", unit.Power, unit.Metric, 7.4569987158, "hp", false}, // NIST SP 811
		{"1 PS", unit.Power, unit.Metric, 0.73549875, "PS", false},    // 75 m·kgf/s
		{"15 kVA", unit.ApparentPower, unit.Metric, 15, "kVA", false},
		{"6.7", unit.Flow, unit.Inch, 189.7228, "cfm", true}, // 6.7 · 28.316847
		{"1 m³/h", unit.Flow, unit.Metric, 1000.0 / 60, "m³/h", false},
		{"190 L/min", unit.Flow, unit.Metric, 190, "l/min", false},
		{"90 psig", unit.Pressure, unit.Metric, 6.205282, "psi", false}, // 90 · 0.06894757
		{"6 bar g", unit.Pressure, unit.Metric, 6, "bar", false},
		{"60 gal", unit.Volume, unit.Metric, 227.12471, "gal", false}, // 60 · 231 in³
		{"33 lb", unit.Weight, unit.Metric, 14.968548, "lb", false},
		{"35", unit.Share, unit.Inch, 35, "%", true},
		{"35%", unit.Share, unit.Metric, 35, "%", false},
		{"22.5 deg", unit.Angle, unit.Metric, 22.5, "°", false},
		{"45º", unit.Angle, unit.Metric, 45, "°", false},
		{"2 min", unit.Time, unit.Metric, 120, "min", false},
		{"12,000", unit.Price, unit.Metric, 12000, "", true},
		{"12 000", unit.Price, unit.Metric, 12000, "", true},
		{"1,234,567.50", unit.Price, unit.Metric, 1234567.5, "", true},
		{"1.234,50 €", unit.Price, unit.Metric, 1234.5, "€", false},
		{"$ 2,500", unit.Price, unit.Metric, 2500, "$", false},
		{"EUR 2500", unit.Price, unit.Metric, 2500, "EUR", false},
		{"2500,50 eur", unit.Price, unit.Metric, 2500.5, "EUR", false},
		{"0", unit.Price, unit.Metric, 0, "", true},
		{"12", unit.Count, unit.Metric, 12, "", true},
		{"12,000", unit.Count, unit.Metric, 12000, "", true},
		{"0.5", unit.None, unit.Metric, 0.5, "", true},
		{"0", unit.None, unit.Metric, 0, "", true},
		{"0", unit.Share, unit.Metric, 0, "%", true},
		{"0", unit.Angle, unit.Metric, 0, "°", true},
		{"0", unit.Count, unit.Metric, 0, "", true},
		{"0.012 m", unit.Thickness, unit.Metric, 12, "m", false},
		{"150 cm", unit.Length, unit.Metric, 1.5, "cm", false},
		{"100 in", unit.Length, unit.Metric, 2.54, "in", false},
		{"230 V", unit.Voltage, unit.Metric, 230, "V", false},
		{"500 VA", unit.ApparentPower, unit.Metric, 0.5, "VA", false},
		{"0.2 m³", unit.Volume, unit.Metric, 200, "m³", false},
		{"123456 1/2 in", unit.Thickness, unit.Metric, 3135794.9, "in", false}, // 123456.5 · 25.4
		{"1,234,567", unit.Price, unit.Metric, 1234567, "", true},
		{"1.234.567", unit.Price, unit.Metric, 1234567, "", true},
		{"123,456", unit.Count, unit.Metric, 123456, "", true},
		{"1234,567", unit.Price, unit.Metric, 1234.567, "", true}, // no groups of three: a decimal
		{"1 234,5 mm", unit.Thickness, unit.Metric, 1234.5, "mm", false},
		{"1 234,567", unit.Price, unit.Metric, 1234.567, "", true}, // the space was for thousands
		{"12 000.5", unit.Price, unit.Metric, 12000.5, "", true},
		{"123 456 mm", unit.Thickness, unit.Metric, 123456, "mm", false},
		{"1000000000 mm", unit.Thickness, unit.Metric, 1e9, "mm", false}, // the most that is read
		{"100 %", unit.Share, unit.Metric, 100, "%", false},
		{"360°", unit.Angle, unit.Metric, 360, "°", false},
		{"8/2", unit.Thickness, unit.Metric, 101.6, "in", true},     // 4 in, the thickest bare fraction
		{"3/1", unit.Thickness, unit.Metric, 76.2, "in", true},      // 3 · 25.4
		{"1/64", unit.Thickness, unit.Metric, 0.396875, "in", true}, // the finest
		{"1 1/4", unit.Thickness, unit.Metric, 31.75, "in", true},
		{"1 1/2", unit.Thickness, unit.Metric, 38.1, "in", true},
		{"gauge 14", unit.Thickness, unit.Metric, 1.8980153, "ga", false},                     // 3.125 / 41.82 · 25.4
		{"12" + strings.Repeat(" ", 60) + "mm", unit.Thickness, unit.Metric, 12, "mm", false}, // 64 signs
	} {
		r, err := unit.Read(c.text, c.kind, c.style, unit.SteelGauge)
		if err != nil {
			t.Errorf("Read(%q): %v", c.text, err)
			continue
		}
		if math.Abs(r.Quantity.Value-c.want) > 1e-6*c.want || r.Unit != c.unit || r.Bare != c.bare || r.Quantity.Kind != c.kind {
			t.Errorf("Read(%q, %s) = %+v, want %v %s bare %t", c.text, c.style, r, c.want, c.unit, c.bare)
		}
	}
}

// Every text is refused, and the refusal says what to do.
func TestReadRefuses(t *testing.T) {
	for _, c := range []struct {
		text      string
		kind      unit.Kind
		inMessage string
		inHint    string
	}{
		{"thick", unit.Thickness, `"thick" is not a thickness`, "12 mm, 3/8 in or 14 ga"},
		{"mm", unit.Thickness, `"mm" is not a thickness`, "12 mm"},
		{"mm 12", unit.Thickness, `"mm 12" is not a thickness`, "12 mm"}, // only a gauge, a wire and a currency stand before
		{"sqmm 4", unit.Section, `"sqmm 4" is not a conductor size`, "4 mm²"},
		{"VAC 230", unit.Voltage, `"VAC 230" is not a voltage`, "230 V"},
		{"1050000000 mm", unit.Thickness, "too large", "12 mm"},
		{"1/128", unit.Thickness, "could be mm or in", "1/128 mm or 1/128 in"},
		{"4 1/8", unit.Thickness, "could be mm or in", "4 1/8 mm or 4 1/8 in"},
		{"a third", unit.Thickness, "could be mm or in", "write the unit behind it: 1/3 mm or 1/3 in"},
		{"1 2/2 in", unit.Thickness, "less than 1", "12 mm"},
		{"1.5/2 m", unit.Length, "cannot be read", "15 m"},
		{"1/2.5 m", unit.Length, "cannot be read", "15 m"},
		{"1.5 1/2 m", unit.Length, "cannot be read", "15 m"},
		{"1234567 1/2 in", unit.Thickness, "cannot be read", "12 mm"},
		{"1.5 000 mm", unit.Thickness, "cannot be read", "12 mm"},
		{"12. 345 mm", unit.Thickness, "cannot be read", "12 mm"},
		{"1234 567 mm", unit.Thickness, "cannot be read", "12 mm"},
		{",234,567", unit.Price, "cannot be read", "2500"},
		{"1.234,567.8", unit.Price, "cannot be read", "2500"},
		{"--5 °C", unit.Temperature, "cannot be read", "20 °C"},
		{"--1/2 °C", unit.Temperature, "cannot be read", "20 °C"},
		{"--1-1/4 °C", unit.Temperature, "cannot be read", "20 °C"},
		{"0/0 AWG", unit.Section, "1/0 to 4/0", "AWG 10"},
		{"1.5/0 AWG", unit.Section, "1/0 to 4/0", "AWG 10"},
		{"AWG 31", unit.Section, "AWG 4/0 to AWG 30", "AWG 10"},
		{"100.5 %", unit.Share, "100 %", "35 %"},
		{"360.5°", unit.Angle, "a full turn", "45°"},
		{"12" + strings.Repeat(" ", 61) + "mm", unit.Thickness, "too long", "12 mm"},
		{strings.Repeat("𝟏", 64), unit.Thickness, "is not a thickness", "12 mm"},
		{"10 mm plate", unit.Thickness, `"10 mm plate" is not a thickness`, "12 mm"},
		{"", unit.Thickness, "not a thickness", "12 mm"},
		{"0", unit.Thickness, "more than zero", "12 mm"},
		{"0 mm", unit.Thickness, "more than zero", "12 mm"},
		{"0/8 in", unit.Thickness, "more than zero", "12 mm"},
		{"3/0 in", unit.Thickness, "0 below the line", "12 mm"},
		{"1 9/8 in", unit.Thickness, "less than 1", "12 mm"},
		{"-3 mm", unit.Thickness, "less than zero", "12 mm"},
		{"−3 mm", unit.Thickness, "less than zero", "12 mm"},
		{"-1/4 in", unit.Thickness, "less than zero", "12 mm"},
		{"NaN", unit.Thickness, "not a thickness", "12 mm"},
		{"Inf mm", unit.Thickness, "not a thickness", "12 mm"},
		{"1e3 mm", unit.Thickness, "not a thickness", "12 mm"},
		{"999999999999999999999999999999 mm", unit.Thickness, "too large", "12 mm"},
		{"0.0000001 mm", unit.Thickness, "too small", "12 mm"},
		{strings.Repeat("1", 65), unit.Thickness, "too long", "12 mm"},
		{"12\x00mm", unit.Thickness, "cannot be read", "12 mm"},
		{"12\xffmm", unit.Thickness, "cannot be read", "12 mm"},
		{"12 1/2", unit.Thickness, "could be mm or in", "12 1/2 mm or 12 1/2 in"},
		{"3,175 mm", unit.Thickness, "3.175 or as 3175", "without a thousands separator"},
		{"10-12 mm", unit.Thickness, "cannot be read", "12 mm"},
		{"1/2-3/4 in", unit.Thickness, "cannot be read", "12 mm"},
		{"1 2 mm", unit.Thickness, "cannot be read", "12 mm"},
		{"1.2.3 mm", unit.Thickness, "cannot be read", "12 mm"},
		{"10 mil", unit.Thickness, "not a thickness", "thou"},
		{"14 swg", unit.Thickness, "not a thickness", "mm or in"},
		{"14 ga", unit.Thickness, "not sold by gauge", "mm or in"},
		{"20 kW", unit.ApparentPower, "not an apparent power", "power factor"},
		{"20 kVA", unit.Power, "not a power", "power factor"},
		{"7 bara", unit.Pressure, "not a pressure", "the gauge shows"},
		{"100 psia", unit.Pressure, "not a pressure", "the gauge shows"},
		{"0 bar", unit.Pressure, "more than zero", "6 bar"},
		{"190 Nl/min", unit.Flow, "not an air flow", "free air"},
		{"60 uk gal", unit.Volume, "not a volume", "litres"},
		{"5/0 AWG", unit.Section, "1/0 to 4/0", "AWG 10"},
		{"AWG 50", unit.Section, "AWG", "AWG 10"},
		{"1,23,456.5", unit.Price, "cannot be read", "2500"},
		{"1,2.3,4", unit.Price, "cannot be read", "2500"},
		{"400°", unit.Angle, "a full turn", "45°"},
		{"-300 °C", unit.Temperature, "colder", "20 °C"},
		{"x AWG", unit.Section, "not a conductor size", "AWG 10"},
		{"120 %", unit.Share, "100 %", "35 %"},
		{"12.000", unit.Price, "12.000 or as 12000", "without a thousands separator"},
		{"12 ton", unit.Price, "not a price", "2500 EUR"},
		{"1/2", unit.Price, "not a price", "2500"},
		{"1.5", unit.Count, "whole number", "12"},
		{"3 m", unit.Count, "not a count", "12"},
		{"3 kg", unit.Length, "not a length", "15 m"},
		{"3", unit.Kind(99), "not a known kind", ""},
	} {
		_, err := unit.Read(c.text, c.kind, unit.Metric, unit.NoGauge)
		var refused *unit.ReadError
		if !errors.As(err, &refused) {
			t.Errorf("Read(%q) = %v, want a ReadError", c.text, err)
			continue
		}
		whole := strings.HasPrefix(c.inMessage, `"`) // the message says no more
		if !strings.Contains(refused.Error(), c.inMessage) || whole && refused.Error() != c.inMessage || !strings.Contains(refused.Hint().String(), c.inHint) {
			t.Errorf("Read(%q): %s / %s", c.text, refused, refused.Hint().String())
		}
	}
}

// What a hint offers must itself be accepted.
func TestHintsAreTrue(t *testing.T) {
	for k, texts := range map[unit.Kind][]string{
		unit.Thickness: {"12 mm", "3/8 in", "14 ga"}, unit.Length: {"15 m", "50 ft"},
		unit.Speed: {"500 mm/min", "20 in/min"}, unit.Section: {"4 mm²", "AWG 10"},
		unit.Current: {"32 A"}, unit.Voltage: {"230 V"}, unit.Power: {"7.5 kW", "10 hp"},
		unit.ApparentPower: {"15 kVA"}, unit.Flow: {"190 l/min", "6.7 cfm"},
		unit.Pressure: {"6 bar", "90 psi"}, unit.Volume: {"200 l", "60 gal"},
		unit.Weight: {"15 kg", "33 lb"}, unit.Share: {"35 %"}, unit.Angle: {"45°"},
		unit.Temperature: {"20 °C"}, unit.Time: {"30 s", "5 min"},
		unit.Price: {"2500", "2,500.00", "2500 EUR"}, unit.Count: {"12"}, unit.None: {"3", "0.5"},
	} {
		_, err := unit.Read("no number", k, unit.Metric, unit.SteelGauge)
		hint := err.(*unit.ReadError).Hint().String()
		for _, text := range texts {
			if !strings.Contains(hint, text) {
				t.Errorf("hint %q does not offer %q", hint, text)
			}
			if _, err := unit.Read(text, k, unit.Metric, unit.SteelGauge); err != nil {
				t.Errorf("%q is offered but refused: %v", text, err)
			}
		}
	}
}

// A message repeats what was typed, but never a control character of it.
func TestMessageIsPrintable(t *testing.T) {
	_, err := unit.Read("\x1b[31mred\u202e"+strings.Repeat("x", 200), unit.Thickness, unit.Metric, "")
	if text := err.Error(); strings.ContainsAny(text, "\x1b\u202e") || len(text) > 200 {
		t.Errorf("message is %q", text)
	}
	// 64 signs are repeated, of more 63 and an ellipsis.
	for long, said := range map[int]string{64: strings.Repeat("x", 64), 65: strings.Repeat("x", 63) + "…"} {
		_, err := unit.Read(strings.Repeat("x", long), unit.Thickness, unit.Metric, "")
		if !strings.HasPrefix(err.Error(), `"`+said+`"`) {
			t.Errorf("%d signs are repeated as %q", long, err)
		}
	}
}

// A bare number is in the units of the reader's trade: American sizes of wire
// and of receiver for a reader in inches.
func TestBareInInches(t *testing.T) {
	for _, c := range []struct {
		kind unit.Kind
		want float64
		unit string
	}{
		{unit.Section, 5.261, "AWG"},   // NEC Chapter 9 Table 8, from memory
		{unit.Volume, 37.85412, "gal"}, // 10 · 231 in³
		{unit.Weight, 4.5359237, "lb"},
		{unit.Pressure, 0.6894757, "psi"},
		{unit.Current, 10, "A"},
		{unit.ApparentPower, 10, "kVA"},
	} {
		r, err := unit.Read("10", c.kind, unit.Inch, "")
		if err != nil || math.Abs(r.Quantity.Value/c.want-1) > 1e-4 || r.Unit != c.unit || !r.Bare {
			t.Errorf("10 of kind %d in inches = %+v, %v; want %v", c.kind, r, err, c.want)
		}
	}
}

// The reader is told what a unit with two meanings was taken for.
func TestNotes(t *testing.T) {
	for text, k := range map[string]unit.Kind{"10 hp": unit.Power, "60 gal": unit.Volume, "7 scfm": unit.Flow} {
		if r, err := unit.Read(text, k, unit.Metric, ""); err != nil || r.Note == "" {
			t.Errorf("Read(%q) = %+v, %v: want a note", text, r, err)
		}
	}
}

func TestParseStyle(t *testing.T) {
	for text, want := range map[string]unit.Style{"mm": unit.Metric, " Metric ": unit.Metric, "IN": unit.Inch, "inches": unit.Inch} {
		if got, err := unit.ParseStyle(text); err != nil || got != want {
			t.Errorf("ParseStyle(%q) = %q, %v", text, got, err)
		}
	}
	if _, err := unit.ParseStyle("cubits"); err == nil {
		t.Error("cubits are no style")
	}
}

// Quantities said in words. Worked by hand from 25.4 mm to the inch and 0.3048 m
// to the foot.
func TestReadInWords(t *testing.T) {
	for _, c := range []struct {
		text  string
		kind  unit.Kind
		style unit.Style
		want  float64
		unit  string
	}{
		{"half inch", unit.Thickness, unit.Metric, 12.7, "in"},                        // 1/2 × 25.4
		{"half an inch", unit.Thickness, unit.Metric, 12.7, "in"},                     //
		{"Half-inch", unit.Thickness, unit.Inch, 12.7, "in"},                          //
		{"a half inch", unit.Thickness, unit.Metric, 12.7, "in"},                      //
		{"half", unit.Thickness, unit.Inch, 12.7, "in"},                               //
		{"three eighths", unit.Thickness, unit.Metric, 9.525, "in"},                   // 3/8 × 25.4
		{"three-eighths of an inch", unit.Thickness, unit.Inch, 9.525, "in"},          //
		{"3 eighths", unit.Thickness, unit.Metric, 9.525, "in"},                       //
		{"quarter inch", unit.Thickness, unit.Metric, 6.35, "in"},                     // 1/4 × 25.4
		{"quarter of an inch", unit.Thickness, unit.Metric, 6.35, "in"},               //
		{"a quarter", unit.Thickness, unit.Metric, 6.35, "in"},                        //
		{"three quarters", unit.Thickness, unit.Metric, 19.05, "in"},                  // 3/4 × 25.4
		{"five sixteenths", unit.Thickness, unit.Metric, 7.9375, "in"},                // 5/16 × 25.4
		{"three thirty-seconds", unit.Thickness, unit.Metric, 2.38125, "in"},          // 3/32 × 25.4
		{"three thirty seconds of an inch", unit.Thickness, unit.Inch, 2.38125, "in"}, //
		{"an inch", unit.Thickness, unit.Metric, 25.4, "in"},                          //
		{"an inch and a quarter", unit.Thickness, unit.Metric, 31.75, "in"},           // 5/4 × 25.4
		{"inch and a half", unit.Thickness, unit.Metric, 38.1, "in"},                  // 3/2 × 25.4
		{"one and a half inches", unit.Thickness, unit.Metric, 38.1, "in"},            //
		{"2 and a half inches", unit.Thickness, unit.Metric, 63.5, "in"},              // 5/2 × 25.4
		{"two inches", unit.Thickness, unit.Metric, 50.8, "in"},                       //
		{"six mm", unit.Thickness, unit.Inch, 6, "mm"},                                //
		{"twelve millimetres", unit.Thickness, unit.Inch, 12, "mm"},                   //
		{"two and a half millimetres", unit.Thickness, unit.Metric, 2.5, "mm"},        //
		{"six", unit.Thickness, unit.Metric, 6, "mm"},                                 //
		{"half a metre", unit.Length, unit.Metric, 0.5, "m"},                          //
		{"three feet", unit.Length, unit.Metric, 0.9144, "ft"},                        // 3 × 0.3048
		{"half an hour", unit.Time, unit.Metric, 1800, "h"},                           // 30 × 60
		{"thirty seconds", unit.Time, unit.Metric, 30, "s"},                           // as said, no part of one
		{"3 thirty-seconds", unit.Thickness, unit.Metric, 2.38125, "in"},              // 3/32 × 25.4
		{"3 thirty seconds", unit.Thickness, unit.Metric, 2.38125, "in"},              //
		{"a thirty-second", unit.Thickness, unit.Metric, 0.79375, "in"},               // 1/32 × 25.4
		{"a third of an inch", unit.Thickness, unit.Metric, 8.466667, "in"},           // 1/3 × 25.4
		{"two thirds of an inch", unit.Thickness, unit.Metric, 16.933333, "in"},       //
		{"an eighth", unit.Thickness, unit.Metric, 3.175, "in"},                       //
		{"a sixteenth", unit.Thickness, unit.Metric, 1.5875, "in"},                    //
		{"one and a quarter", unit.Thickness, unit.Metric, 31.75, "in"},               // nobody says a quarter of a millimetre
		{"12,5", unit.Thickness, unit.Metric, 12.5, "mm"},                             // not words, and as ever
		{"1-1/4 in", unit.Thickness, unit.Metric, 31.75, "in"},                        //
		{"sixteen gauge", unit.Thickness, unit.Metric, 1.5184, "ga"},                  // msg, 16: 2.5/41.82 × 25.4
	} {
		sheet := unit.SteelGauge
		got, err := unit.Read(c.text, c.kind, c.style, sheet)
		if err != nil || math.Abs(got.Quantity.Value-c.want) > 5e-4 || got.Unit != c.unit {
			t.Errorf("Read(%q) = %+v, %v; want %v in %s", c.text, got, err, c.want, c.unit)
		}
	}
}

// What is said in words and is no quantity is refused, and repeated as it was.
func TestReadRefusesWords(t *testing.T) {
	for _, text := range []string{
		"half a thumb", "half six", "an", "a", "and", "inch", "a thumb", "three eighths quarters", "nine eighths", "two two",
		"six and seven mm", "one inch two", "half half inch", "two and a half", "quarter past", "hundred hundred mm", "zero inches",
		"one and a half", "0 two mm", "0 and six mm", "one two mm", "quarter six mm", "three thirds", "four quarters", "mm and a half",
	} {
		got, err := unit.Read(text, unit.Thickness, unit.Metric, unit.SteelGauge)
		if err == nil {
			t.Errorf("Read(%q) = %+v", text, got)
			continue
		}
		if !strings.HasPrefix(err.Error(), `"`+text+`" is not a thickness`) {
			t.Errorf("Read(%q): %v", text, err)
		}
	}
}

// Every number word is read as itself.
func TestNumberWords(t *testing.T) {
	words := map[float64]string{20: "twenty", 30: "thirty", 40: "forty", 50: "fifty", 100: "hundred"}
	for i, word := range strings.Fields("one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen") {
		words[float64(i+1)] = word
	}
	for want, word := range words {
		if got := read(t, word+" mm", unit.Thickness, ""); got != want {
			t.Errorf("%s mm is read as %v", word, got)
		}
	}
}
