package unit

import (
	"math"
	"math/bits"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"cutbrief/rules/message"
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
	r := reader{kind: k, row: k.row(), style: style, sheet: sheet}
	if reading, ok := r.usual(text); ok {
		return reading, nil
	}
	clean, reason := tidy(text)
	r.reason, r.advice = reason, message.Message{}
	if reason.IsEmpty() && len(r.row.measures) > 0 {
		figures := spoken(clean, k)
		r.worded = figures != clean
		if reading, ok := r.read(figures); ok {
			return reading, nil
		}
	}
	return Reading{}, &ReadError{printable(text), k, r.reason, r.advice}
}

// usual reads the usual text, figures with a unit behind them as it is shown, at
// little cost. What it does not take is read with care.
func (r *reader) usual(text string) (Reading, bool) {
	end := 0
	for end < len(text) && (text[end] >= '0' && text[end] <= '9' || text[end] == '.') {
		end++
	}
	number, name := text[:end], strings.TrimPrefix(text[end:], " ")
	if len(number) > 15 {
		return Reading{}, false
	}
	list := r.row.measures
	for i := range list {
		if m := &list[i]; m.name == name && name != "" {
			v, err := strconv.ParseFloat(number, 64)
			if err != nil {
				return Reading{}, false
			}
			return r.checked(Reading{Quantity{m.held(v), r.kind}, false, m.name, m.note})
		}
	}
	return Reading{}, false
}

// reader carries what a reading depends on, and why it failed.
type reader struct {
	kind           Kind
	row            *kind
	style          Style
	sheet          Sheet
	worded         bool // said in words
	reason, advice message.Message
}

func (r *reader) fail(reason, advice message.ID) (Reading, bool) {
	r.reason, r.advice = reason.Message(), advice.Message()
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
	bare := name == ""
	m := r.row.bare(r.style)
	if !bare {
		m = r.row.measure(name)
	}
	if m == nil {
		return r.fail("", r.row.refusal(name))
	}
	a, ok := r.amount(number, r.kind == Count)
	if !ok {
		return Reading{}, false
	}
	if bare && a.over > 0 && r.kind == Thickness && r.style != Inch {
		if r.half(a) || a.over > finest || bits.OnesCount(uint(a.over)) != 1 || a.value > bareFraction {
			r.reason = message.New("a fraction without a unit could be mm or in")
			r.advice = message.New("write the unit behind it: {1} mm or {2} in", message.Name(number), message.Name(number))
			return Reading{}, false
		}
		m = r.row.measure("in")
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
		r.reason, r.advice = message.Of(err), message.New("give the thickness in mm or in, such as 1.5 mm or 1/16 in")
		return Reading{}, false
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
	case !reason.IsEmpty():
		r.reason = reason
		if reason.ID() == twoReadings {
			r.advice = message.New("write it without a thousands separator, and with a point for decimals")
		}
		return amount{}, false
	case negative && r.kind != Temperature:
		r.reason = message.New("it cannot be less than zero")
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
	case math.Abs(v) > most:
		return r.fail("the number is too large", "")
	case v == 0 && !r.row.zero:
		return r.fail("it must be more than zero", "")
	case math.Abs(v) < least && !r.row.zero:
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

// ReadError says why a text was not understood as a quantity, in two parts:
// Wrong is what went wrong, Hint is what to do about it.
type ReadError struct {
	Said   string          // the text as typed, made printable and shortened
	Kind   Kind            // what it should have been
	Reason message.Message // why not, empty if it simply is not one
	Advice message.Message // what to do, empty for the kind's usual examples
}

// Error says what went wrong, in English: `"thick" is not a thickness`.
func (e *ReadError) Error() string { return e.Message().String() }

// Message is the error, for every language.
func (e *ReadError) Message() message.Message {
	return message.New("{1} {2}", message.Name(`"`+e.Said+`"`), e.Wrong())
}

// Wrong is what is wrong with the text, to stand behind it: "is not a thickness".
func (e *ReadError) Wrong() message.Message {
	return message.Join(": ", e.Kind.row().wrong.Message(), e.Reason)
}

// Hint says what would be accepted: "give a number and a unit, such as 12 mm,
// 3/8 in or 14 ga".
func (e *ReadError) Hint() message.Message { return e.Advice.Or(e.Kind.row().example.Message()) }

// printable makes any text safe and short enough to repeat in a message.
func printable(text string) string {
	text = strings.Map(func(r rune) rune {
		if !unicode.IsPrint(r) {
			return unicode.ReplacementChar
		}
		return r
	}, strings.TrimSpace(text))
	if runes := []rune(text); len(runes) > maxRunes {
		return string(runes[:maxRunes-1]) + "…"
	}
	return text
}

// leadingUnitLast moves a sign or word that is said before the number behind
// it: #14, gauge 14, AWG 10, € 2500, EUR 2500.
func leadingUnitLast(s string, k Kind) string {
	start := strings.IndexAny(s, "0123456789.,-")
	if start <= 0 {
		return s
	}
	name := strings.TrimSpace(s[:start])
	number := strings.TrimSpace(s[start:])
	if strings.Trim(number, "0123456789., /-") != "" {
		return s
	}
	_, money := currency(name)
	switch {
	case k == Thickness && isGauge(name), k == Section && isWire(name), k == Price && money:
		return number + " " + name
	}
	return s
}

func isGauge(name string) bool {
	switch fold(name) {
	case "#", "ga", "gauge", "gage":
		return true
	}
	return false
}

func isWire(name string) bool {
	name = fold(name)
	return name == "#" || name == "awg"
}

// currency reads a currency as it will be printed: a sign, or a code of three
// capitals; the commonest codes may be typed small. "" is no currency.
func currency(name string) (string, bool) {
	switch name {
	case "", "$", "€", "£":
		return name, true
	case "eur", "usd", "gbp", "cad":
		return strings.ToUpper(name), true
	}
	return name, len(name) == 3 && strings.Trim(name, "ABCDEFGHIJKLMNOPQRSTUVWXYZ") == ""
}

// maxRunes caps what is read: no quantity takes this many characters.
const maxRunes = 64

// spellings makes one of the many ways to type the same sign. Fractions get a
// space in front, so that 1¼ becomes 1 1/4.
var spellings = strings.NewReplacer(
	"½", " 1/2", "⅓", " 1/3", "⅔", " 2/3", "¼", " 1/4", "¾", " 3/4",
	"⅕", " 1/5", "⅖", " 2/5", "⅗", " 3/5", "⅘", " 4/5", "⅙", " 1/6", "⅚", " 5/6",
	"⅛", " 1/8", "⅜", " 3/8", "⅝", " 5/8", "⅞", " 7/8",
	"⁄", "/", "∕", "/", "²", "2", "³", "3", "º", "°",
	"″", `"`, "”", `"`, "“", `"`, "''", `"`, "′′", `"`, "’’", `"`, "′", "'", "’", "'",
	"−", "-", "–", "-", "‐", "-", "‑", "-",
)

// tidy returns text with one spelling for each sign and single spaces. The
// reason is "" if the text is fit to be read.
func tidy(text string) (clean string, reason message.Message) {
	if isTidy(text) {
		return text, message.Message{}
	}
	if utf8.RuneCountInString(text) > maxRunes {
		return "", message.New("it is too long to be a single quantity")
	}
	if !utf8.ValidString(text) || strings.ContainsFunc(text, unreadable) {
		return "", message.New("it holds characters that cannot be read")
	}
	clean = strings.Join(strings.Fields(spellings.Replace(text)), " ")
	// A hyphen before a vulgar fraction, 1-¼, has become "1- 1/4".
	return strings.ReplaceAll(clean, "- ", "-"), message.Message{}
}

// isTidy reports a text of plain characters and single spaces, as nearly all are.
func isTidy(text string) bool {
	before := byte(' ')
	for i := range len(text) {
		c := text[i]
		if c < ' ' || c > '~' || c == '\'' || c == ' ' && (before == ' ' || before == '-') {
			return false
		}
		before = c
	}
	return before != ' ' && len(text) <= maxRunes
}

func unreadable(r rune) bool {
	return !unicode.IsPrint(r) && !unicode.IsSpace(r)
}

// split parts a tidy text into the number and the unit behind it, either of
// which may be "". A hyphen between them, as in 12-gauge, belongs to neither.
func split(s string) (number, name string) {
	end := strings.IndexFunc(s, func(r rune) bool {
		return !strings.ContainsRune("0123456789., /-", r)
	})
	if end < 0 {
		return strings.TrimSpace(s), ""
	}
	number = strings.TrimSpace(s[:end])
	if number != "-" {
		number = strings.TrimSpace(strings.TrimSuffix(number, "-"))
	}
	return number, strings.TrimSpace(s[end:])
}

// fold makes a unit's name comparable: lower case, no spaces about a slash, no
// closing full stop, "per" as a slash.
func fold(name string) string {
	name = strings.ToLower(name)
	name = strings.ReplaceAll(name, " per ", "/")
	name = strings.ReplaceAll(name, " / ", "/")
	return strings.TrimSuffix(name, ".")
}
