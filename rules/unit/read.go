package unit

import (
	"math"
	"math/bits"
	"strings"
)

// Reading is what a text was understood to mean.
type Reading struct {
	Quantity Quantity
	Bare     bool   // the text had no unit; the default was taken
	Unit     string // the unit read or taken, such as "mm", "in", "ga"; the currency of a price
	Note     string // what to know about this reading of the unit, or ""
}

// Sheet says which gauge table a metal's sheet is sold by.
type Sheet string

// The gauge tables. NoGauge metals are not sold by gauge.
const (
	NoGauge       Sheet = ""
	SteelGauge    Sheet = "steel"      // manufacturers' standard gauge: 41.82 lb/ft² per inch
	GalvanGauge   Sheet = "galvanised" // the same with 2.5 oz/ft² of zinc
	StainGauge    Sheet = "stainless"  // 15 USC 206
	AluminumGauge Sheet = "aluminium"  // ASTM B258 (also brass and copper sheet)
)

// The bounds of what is read, in the unit held: nothing in the trade is
// measured beyond them, so a number outside is a slip of the keys.
const (
	least = 1e-3
	most  = 1e9
)

// bareFraction is the thickest bare fraction taken as inches by a reader in
// millimetres: 4 in, in 1/64ths at the finest.
const (
	bareFraction = 4.0
	finest       = 64
)

// Read understands text as a quantity of kind k. A number without a unit takes
// style's unit for k: mm, m, mm/min, mm², l/min, bar, l and kg, or in, ft,
// in/min, AWG, cfm, psi, gal and lb; A, V, kW, kVA, %, °, °C and s in both. A
// bare fraction of a thickness, such as 3/8, is inches in both. Numbers and parts
// may be said in words: half an inch, three eighths. Sheet is used
// for thicknesses given as gauge. An error is a *ReadError.
func Read(text string, k Kind, style Style, sheet Sheet) (Reading, error) {
	r := reader{kind: k, style: style, sheet: sheet}
	fail := &ReadError{Said: printable(text), Kind: k}
	clean, reason := tidy(text)
	if reason != "" {
		fail.Reason = reason
		return Reading{}, fail
	}
	if _, ok := measures[k]; !ok {
		return Reading{}, fail
	}
	figures := spoken(clean, k)
	r.worded = figures != clean
	reading, ok := r.read(figures)
	if ok {
		return reading, nil
	}
	fail.Reason, fail.Advice = r.reason, r.advice
	return Reading{}, fail
}

// reader carries what a reading depends on, and why it failed.
type reader struct {
	kind           Kind
	style          Style
	sheet          Sheet
	worded         bool // said in words
	reason, advice string
}

func (r *reader) fail(reason, advice string) (Reading, bool) {
	r.reason, r.advice = reason, advice
	return Reading{}, false
}

func (r *reader) read(s string) (Reading, bool) {
	number, name := split(leadingUnitLast(s, r.kind))
	switch {
	case number == "":
		return r.fail("", "")
	case r.kind == Thickness && isGauge(name):
		return r.gauge(number)
	case r.kind == Section && (isWire(name) || name == "" && (r.style == Inch || strings.HasSuffix(number, "/0"))):
		return r.wire(number, name == "")
	case r.kind == Price:
		return r.price(number, name)
	}
	return r.measured(number, name)
}

// measured reads a number with an ordinary unit or none.
func (r *reader) measured(number, name string) (Reading, bool) {
	m, ok := findMeasure(r.kind, name)
	bare := name == ""
	if bare {
		m, ok = bareMeasure(r.kind, r.style), true
	}
	if !ok {
		return r.fail("", refusal(r.kind, name))
	}
	a, ok := r.amount(number, r.kind == Count)
	if !ok {
		return Reading{}, false
	}
	if bare && a.over > 0 && r.kind == Thickness && r.style != Inch {
		if r.half(a) || a.over > finest || bits.OnesCount(uint(a.over)) != 1 || a.value > bareFraction {
			return r.fail("a fraction without a unit could be mm or in", "write the unit behind it: "+number+" mm or "+number+" in")
		}
		m, _ = findMeasure(Thickness, "in")
	}
	return r.checked(Reading{Quantity{m.held(a.value), r.kind}, bare, m.name, m.note})
}

// half reports "two and a half" without a unit: people who think in millimetres
// say that of millimetres, as they never say an eighth of one.
func (r *reader) half(a amount) bool { return r.worded && a.over == 2 && a.value > 1 }

// gauge reads the number of a sheet gauge.
func (r *reader) gauge(number string) (Reading, bool) {
	n, ok := natural(number)
	if !ok {
		return r.fail("a gauge is a whole number", "")
	}
	t, err := Gauge(n, r.sheet)
	if err != nil {
		return r.fail(err.Error(), "give the thickness in mm or in, such as 1.5 mm or 1/16 in")
	}
	return Reading{Quantity: Quantity{float64(t), Thickness}, Unit: "ga"}, true
}

// wire reads a conductor size by American wire gauge.
func (r *reader) wire(number string, bare bool) (Reading, bool) {
	n, ok := wireNumber(number)
	if !ok {
		return r.fail("AWG is a whole number, or 1/0 to 4/0", "")
	}
	a, ok := AWG(n)
	if !ok {
		return r.fail("only AWG 4/0 to AWG 30 are held", "")
	}
	return Reading{Quantity{float64(a), Section}, bare, "AWG", ""}, true
}

// price reads a number with a currency or none. Thousands separators are read
// as told at decimal.
func (r *reader) price(number, name string) (Reading, bool) {
	code, ok := currency(name)
	if !ok || strings.Contains(number, "/") {
		return r.fail("", "")
	}
	a, ok := r.amount(number, true)
	if !ok {
		return Reading{}, false
	}
	return r.checked(Reading{Quantity{a.value, Price}, name == "", code, ""})
}

// amount reads the number itself with its sign.
func (r *reader) amount(number string, whole bool) (amount, bool) {
	body, negative := strings.CutPrefix(number, "-")
	a, reason := readAmount(body, whole)
	switch {
	case reason != "":
		r.reason = reason
		if strings.HasPrefix(reason, "it can be read") {
			r.advice = "write it without a thousands separator, and with a point for decimals"
		}
		return amount{}, false
	case negative && r.kind != Temperature:
		r.reason = "it cannot be less than zero"
		return amount{}, false
	case negative:
		a.value = -a.value
	}
	return a, true
}

// checked refuses numbers no quantity of the kind can have.
func (r *reader) checked(x Reading) (Reading, bool) {
	v := x.Quantity.Value
	switch {
	case math.IsNaN(v) || math.IsInf(v, 0) || math.Abs(v) > most:
		return r.fail("the number is too large", "")
	case v == 0 && !namings[r.kind].zero:
		return r.fail("it must be more than zero", "")
	case math.Abs(v) < least && !namings[r.kind].zero:
		return r.fail("the number is too small", "")
	case r.kind == Share && v > 100:
		return r.fail("a share ends at 100 %", "")
	case r.kind == Angle && v > 360:
		return r.fail("a full turn is 360°", "")
	case r.kind == Temperature && v < -273.15:
		return r.fail("nothing is colder than -273 °C", "")
	case r.kind == Count && v != math.Trunc(v):
		return r.fail("it must be a whole number", "")
	}
	return x, true
}
