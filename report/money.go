package report

import (
	"math"
	"strconv"
	"strings"

	"cutbrief/assess/sanitize"
	"cutbrief/rules/cost"
	"cutbrief/rules/message"
	"cutbrief/rules/unit"
)

// Amount is money as a range, rounded once: low down, high up, likely to the
// nearest.
type Amount struct {
	Low    float64   `json:"low"`
	Likely float64   `json:"likely"`
	High   float64   `json:"high"`
	Text   string    `json:"text"` // "EUR 4.98 (3.46 to 7.43)"
	Shown  [3]string `json:"-"`    // low, likely and high for a table
}

// perMetre rounds money a metre to two decimals. Its texts are for a foot where
// lengths are written in feet; its figures stay those of a metre.
func (b *builder) perMetre(s cost.Estimate) Amount {
	cents := func(float64) float64 { return 0.01 }
	a := b.amount(s, cents, 2)
	if b.style == unit.Inch {
		shown := b.amount(s.Times(foot), cents, 2)
		a.Text, a.Shown = shown.Text, shown.Shown
	}
	return a
}

// foot in m, exact (nist-sp-811).
const foot = 0.3048

// each is the length that texts give money for.
func (b *builder) each() message.ID { return byStyle(b, message.ID("a metre"), "a foot") }

// forEach is a sum for that length.
func (b *builder) forEach(sum message.Message) message.Message {
	return msg(byStyle(b, message.ID("{1} a metre"), "{1} a foot"), sum)
}

// perYear rounds money a year to three figures: more would not be true.
func (b *builder) perYear(s cost.Estimate) Amount {
	return b.amount(s, func(v float64) float64 {
		if v = math.Abs(v); v < 1000 {
			return 1
		}
		return math.Pow(10, math.Floor(math.Log10(v))-2)
	}, 0)
}

// perYearOf rounds money a year that may not be known.
func (b *builder) perYearOf(s unit.Maybe[cost.Estimate]) *Amount {
	if year, ok := s.Get(); ok {
		return new(b.perYear(year))
	}
	return nil
}

func (b *builder) amount(s cost.Estimate, step func(float64) float64, decimals int) Amount {
	round := func(v float64, how func(float64) float64) float64 {
		u := step(v)
		v = how(v/u) * u
		v, _ = strconv.ParseFloat(strconv.FormatFloat(v, 'f', decimals, 64), 64)
		return v + 0 // no minus zero
	}
	// A hair is taken off first, so that 2.00 does not become 2.01.
	const hair = 1e-9
	a := Amount{
		Low:    round(s.Low, func(v float64) float64 { return math.Floor(v + hair) }),
		Likely: round(s.Likely, math.Round),
		High:   round(s.High, func(v float64) float64 { return math.Ceil(v - hair) }),
	}
	low, likely, high := digits(a.Low, decimals), digits(a.Likely, decimals), digits(a.High, decimals)
	text := message.Join(" ", message.Text(b.currency()), message.Number(likely))
	if a.Low != a.High {
		text = msg("{1} ({2})", text, msg("{1} to {2}", message.Figure(low), message.Figure(high)))
	}
	a.Text = b.print(text)
	for i, figure := range []string{low, likely, high} {
		a.Shown[i] = b.print(message.Number(figure))
	}
	return a
}

// currency is that of the price list, "" if it names none.
func (b *builder) currency() string { return sanitize.Line(b.prices().Currency) }

// digits writes a number for a reader: thousands apart, and a true minus.
func digits(v float64, decimals int) string {
	text := strconv.FormatFloat(math.Abs(v), 'f', decimals, 64)
	whole, rest, _ := strings.Cut(text, ".")
	for i := len(whole) - 3; i > 0; i -= 3 {
		whole = whole[:i] + "," + whole[i:]
	}
	if rest != "" {
		whole += "." + rest
	}
	if v < 0 {
		return "−" + whole
	}
	return whole
}

// wait is a time until something has paid for itself, rounded up.
type wait struct {
	figure string
	unit   waitUnit
}

type waitUnit int

const (
	forEver waitUnit = iota
	oneMonth
	inMonths
	inYears
	manyYears
)

func waitFor(years unit.Maybe[float64]) wait {
	y, known := years.Get()
	months := math.Ceil(y*12 - 1e-9)
	switch {
	case !known:
		return wait{unit: forEver}
	case months <= 1:
		return wait{"1", oneMonth}
	case months <= 24:
		return wait{strconv.Itoa(int(months)), inMonths}
	case y > 50:
		return wait{"50", manyYears}
	}
	return wait{strconv.FormatFloat(math.Ceil(y*10-1e-9)/10, 'f', 1, 64), inYears}
}

func (w wait) message() message.Message {
	id := map[waitUnit]message.ID{forEver: "never", oneMonth: "1 month", inMonths: "{1} months", inYears: "{1} years", manyYears: "more than 50 years"}[w.unit]
	return msg(id, message.Figure(w.figure))
}

// waits are the sentences about three waits, by their units: the likely one,
// the soonest and the latest.
var waits = map[[3]waitUnit]message.ID{
	{oneMonth, oneMonth, inMonths}: "after {1} month ({2} month to {3} months)",
	{inMonths, oneMonth, inMonths}: "after {1} months ({2} month to {3} months)",
	{inMonths, inMonths, inMonths}: "after {1} months ({2} to {3} months)",
	{inYears, inYears, inYears}:    "after {1} years ({2} to {3} years)",
	{inMonths, inMonths, inYears}:  "after {1} months ({2} months to {3} years)",
	{inYears, inMonths, inYears}:   "after {1} years ({2} months to {3} years)",
}

// payback words when a system has paid for itself.
func payback(p cost.Payback) message.Message {
	soonest, likely, latest := waitFor(p.Soonest), waitFor(p.Likely), waitFor(p.Latest)
	switch {
	case likely.unit == forEver:
		return msg("never by cheaper cutting")
	case latest.unit == forEver:
		return msg("after {1}, perhaps never", likely.message())
	case soonest == latest:
		return msg("after {1}", likely.message())
	}
	if id, ok := waits[[3]waitUnit{likely.unit, soonest.unit, latest.unit}]; ok {
		return msg(id, message.Figure(likely.figure), message.Figure(soonest.figure), message.Figure(latest.figure))
	}
	from := soonest.message()
	if soonest.unit == inYears { // "30 to more than 50 years"
		from = message.Number(soonest.figure)
	}
	return msg("after {1} ({2} to {3})", likely.message(), from, latest.message())
}

// taken writes an input with its range and unit: "EUR 28 to 52 per h".
func (b *builder) taken(in cost.Input) message.Message {
	in = b.inUnits(in)
	s := in.Estimate
	text := message.Number(short(s.Low))
	if s.High != s.Low {
		text = msg("{1} to {2}", message.Figure(short(s.Low)), message.Figure(short(s.High)))
	}
	if in.Money {
		return msg("{1} per {2}", message.Join(" ", message.Text(b.currency()), text), worded(in.Unit))
	}
	return message.Join(" ", text, worded(in.Unit))
}

// short writes a number to three figures, without an exponent.
func short(v float64) string {
	if v != 0 && math.Abs(v) < 1e15 {
		u := math.Pow(10, math.Floor(math.Log10(math.Abs(v)))-2)
		v = math.Round(v/u) * u
	}
	text := strconv.FormatFloat(v, 'f', 4, 64)
	return strings.TrimSuffix(strings.TrimRight(text, "0"), ".")
}

const cubicFoot = foot * foot * foot // m³

// inInches are the units of inputs for a reader in inches, and how many of each
// are one of ours; money has units of its own. All are exact (nist-sp-811): an inch
// is 25.4 mm, a foot 0.3048 m.
var inInches = []struct {
	ours, theirs message.ID
	money        bool
	per          float64
}{
	{"mm/min", "in/min", false, 1 / 25.4}, {"m", "ft", false, 1 / foot}, {"min/m", "min/ft", false, foot}, {"l/min", "cfm", false, 1 / (1000 * cubicFoot)},
	{"kW per m3/min", "kW per 100 cfm", false, 100 * cubicFoot}, {"m", "ft", true, foot}, {"m3", "ft3", true, cubicFoot},
}

// inUnits is an input in the units of the visit; what has no unit of length in it
// stays as it is.
func (b *builder) inUnits(in cost.Input) cost.Input {
	for _, u := range inInches {
		if u.ours == in.Unit && u.money == in.Money && b.style == unit.Inch {
			in.Unit, in.Estimate = u.theirs, in.Estimate.Times(u.per)
			break
		}
	}
	return in
}
