package report

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"cutbrief/rules/cost"
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
func (b *builder) each() string {
	if b.style == unit.Inch {
		return "a foot"
	}
	return "a metre"
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
	a.Shown = [3]string{digits(a.Low, decimals), digits(a.Likely, decimals), digits(a.High, decimals)}
	a.Text = b.money(a.Likely, decimals)
	if a.Low != a.High {
		a.Text += fmt.Sprintf(" (%s to %s)", digits(a.Low, decimals), digits(a.High, decimals))
	}
	return a
}

// money writes a sum with the currency of the price list.
func (b *builder) money(v float64, decimals int) string {
	return strings.TrimSpace(clean(b.prices.Currency) + " " + digits(v, decimals))
}

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

// after words a time until something has paid for itself, rounded up.
func after(years unit.Maybe[float64]) string {
	y, known := years.Get()
	months := math.Ceil(y*12 - 1e-9)
	switch {
	case !known:
		return "never"
	case months <= 1:
		return "1 month"
	case months <= 24:
		return fmt.Sprintf("%.0f months", months)
	case y > 50:
		return "more than 50 years"
	}
	return fmt.Sprintf("%.1f years", math.Ceil(y*10-1e-9)/10)
}

// payback words when a system has paid for itself.
func payback(p cost.Payback) string {
	soonest, likely, latest := after(p.Soonest), after(p.Likely), after(p.Latest)
	switch {
	case !p.Likely.IsKnown():
		return "never by cheaper cutting"
	case !p.Latest.IsKnown():
		return "after " + likely + ", perhaps never"
	case soonest == latest:
		return "after " + likely
	}
	if number, unit, ok := strings.Cut(soonest, " "); ok && strings.HasSuffix(latest, unit) {
		soonest = number // "6 to 19 months"
	}
	return "after " + likely + " (" + soonest + " to " + latest + ")"
}

// taken writes an input with its range and unit: "EUR 28 to 52 per h".
func (b *builder) taken(in cost.Input) string {
	in = b.inUnits(in)
	s := in.Estimate
	text := short(s.Low)
	if s.High != s.Low {
		text += " to " + short(s.High)
	}
	if !in.Money {
		return text + " " + string(in.Unit)
	}
	return strings.TrimSpace(clean(b.prices.Currency)+" "+text) + " per " + string(in.Unit)
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
