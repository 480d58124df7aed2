package unit

import (
	"math"
	"strconv"
	"strings"
)

// Round says which side a rounded number may fall on.
type Round int

// Nearest for what was told; Up for what is required; Down for what is
// available.
const (
	Nearest Round = iota
	Up
	Down
)

// minutesFrom is the time in s from which minutes are shown, to 0.1 min.
const minutesFrom = 2 * minute

// slack is the part of a display step within which a number counts as being on
// the step: 9.525 mm is 3/8 in though the division leaves a last digit over.
const slack = 1e-6

// Show writes q for a reader in style, rounded once in direction r, with its
// unit: "9.5 mm", "3/8 in", "20 in/min", "45 A", "35 %". Up never shows less
// than q and Down never more; Nearest is within half a step. The steps are
//
//	thickness      mm: 0.1, below 1 mm 0.01; inches: see showInches
//	length         1 m or ft, below 10 0.1, below 1 0.01
//	speed          50 mm/min, below 1000 10, below 100 1; in/min: 5, below 100 1, below 10 0.1
//	section        mm²: 1, below 100 0.1, below 1 0.01; inches: the AWG size
//	current, voltage, volume, weight, share   1, below 10 0.1
//	power, apparent power                     1, below 100 0.1, below 1 0.01
//	flow           5 l/min, below 100 1, below 10 0.1; cfm: 1, below 10 0.1
//	pressure       bar: 0.1, below 1 bar 0.01; psi: 1, below 10 0.1
//	angle          0.1°
//	temperature    1 °C
//	time           1 s, below 10 s 0.1; from 2 min on 0.1 min
//	price          1, below 100 0.01; thousands have a comma: 12,500
//	count          1
//
// A number that is none, such as NaN, is shown as "not known".
func Show(q Quantity, style Style, r Round) string {
	k := q.Kind.row()
	if len(k.measures) == 0 || math.IsNaN(q.Value) || math.IsInf(q.Value, 0) {
		return "not known"
	}
	m, steps := k.shownIn(style)
	switch {
	case q.Kind == Thickness && style == Inch:
		return showInches(q.Value*inchOver/inch, r) + " in"
	case q.Kind == Section && style == Inch:
		return showWire(q.Value, r)
	case q.Kind == Time && q.Value >= minutesFrom:
		m, steps = k.measure("min"), minutes
	}
	text := rounded(m.shown(q.Value), steps, r)
	if q.Kind == Price || q.Kind == Count {
		text = thousands(text)
	}
	if m.name == "" || m.name == "°" {
		return text + m.name
	}
	return text + " " + m.name
}

// stepOf is the step by which a figure of some size is shown.
func stepOf(v float64, steps []step) step {
	i := 0
	for steps[i].below != 0 && math.Abs(v) >= steps[i].below*(1-slack) {
		i++
	}
	return steps[i]
}

// Next is the next rounder figure above or below q, by which a reader in style
// tries another: a sixteenth of an inch for a thickness in inches, else the 1, 2 or
// 5 of the unit shown, and of its powers of ten, that is nearest below a sixteenth
// of the figure, but no finer than it is shown. Common practice, no source.
// Check: 10 mm → 10.5 mm; 32 A → 30 A; 1/2 in → 9/16 in.
func Next(q Quantity, style Style, up bool) Quantity {
	const parts = 16
	if q.Kind == Thickness && style == Inch {
		const sixteenth = float64(inch) / inchOver / parts // mm
		return Quantity{beside(q.Value, sixteenth, up), q.Kind}
	}
	m, steps := q.Kind.row().shownIn(style)
	v := m.shown(q.Value)
	shown := stepOf(v, steps)
	notch := math.Pow(10, math.Floor(math.Log10(math.Max(math.Abs(v), 1e-9)/parts)))
	switch most := math.Abs(v) / parts * (1 + slack); {
	case 5*notch <= most:
		notch *= 5
	case 2*notch <= most:
		notch *= 2
	}
	notch = math.Max(notch, shown.width/math.Pow10(shown.decimals))
	return Quantity{m.held(beside(v, notch, up)), q.Kind}
}

// beside is the next multiple of a notch above or below a figure.
func beside(v, notch float64, up bool) float64 {
	if up {
		return (math.Floor(v/notch+slack) + 1) * notch
	}
	return (math.Ceil(v/notch-slack) - 1) * notch
}

// shownIn is the unit a reader in style is shown a kind in, and how finely; in
// inches a thickness has a way of its own.
func (k *kind) shownIn(style Style) (*measure, []step) {
	if style == Inch && k.inchSteps != nil {
		return k.measure(k.inch), k.inchSteps
	}
	return &k.measures[0], k.steps
}

// rounded rounds v to the step of its size in direction r and writes it.
func rounded(v float64, steps []step, r Round) string {
	s := stepOf(v, steps)
	size := s.width / math.Pow10(s.decimals)
	text := strconv.FormatFloat(toStep(v/size, r)*s.width/math.Pow10(s.decimals), 'f', s.decimals, 64)
	if s.decimals > 0 {
		text = strings.TrimSuffix(strings.TrimRight(text, "0"), ".")
	}
	if text == "-0" {
		return "0"
	}
	return text
}

// toStep rounds a number of steps to a whole one in direction r.
func toStep(n float64, r Round) float64 {
	whole := math.Round(n)
	switch {
	case math.Abs(n-whole) < slack:
		return whole
	case r == Nearest && n > 0:
		return math.Floor(n + 0.5 + slack) // 6.35 mm is 6.4 mm, whatever its last bit
	case r == Nearest:
		return math.Ceil(n - 0.5 - slack)
	case r == Up:
		return math.Ceil(n)
	}
	return math.Floor(n)
}

// thousands puts a comma between groups of three digits, from 1,000 on.
func thousands(text string) string {
	end := strings.IndexByte(text+".", '.')
	for i := end - 3; i > 0 && text[i-1] != '-'; i -= 3 {
		text = text[:i] + "," + text[i:]
	}
	return text
}

// Bounds of the fractions shown, in inches. Common practice, no source: a steel
// rule is read to 1/64, a tape to 1/32, and thin sheet is said in thousandths.
const (
	sheetBelow = 0.25 // thinner than this is sheet
	tapeFrom   = 1.0  // from this on a tape is used
	near       = 0.01 // a fraction this near stands for the thickness itself
	sheetStep  = 1e3  // steps to an inch for sheet that no fraction fits
)

// showInches writes v inches without the unit: the coarsest fraction down to
// 1/64 that lies on the allowed side within 1 % of v. If there is none: below
// 1/4 in a decimal to 0.001, below 1 in the next 1/64, and the next 1/32 beyond.
// "3/8", "1 1/4", "0.075".
func showInches(v float64, r Round) string {
	if v < 0 {
		return "-" + showInches(-v, [...]Round{Nearest, Down, Up}[r])
	}
	for over := 1; over <= finest; over *= 2 {
		n := toStep(v*float64(over), r)
		if math.Abs(n/float64(over)-v) <= near*v {
			return fraction(n, over)
		}
	}
	switch {
	case v < sheetBelow:
		return strconv.FormatFloat(toStep(v*sheetStep, r)/sheetStep, 'f', 3, 64)
	case v < tapeFrom:
		return fraction(toStep(v*finest, r), finest)
	}
	return fraction(toStep(v*finest/2, r), finest/2)
}

// fraction writes n/over in lowest terms with the whole inches in front; over
// is a power of two.
func fraction(n float64, over int) string {
	whole := math.Floor(n / float64(over))
	rest := int(n - whole*float64(over))
	for rest != 0 && rest%2 == 0 {
		rest, over = rest/2, over/2
	}
	text := strconv.FormatFloat(whole, 'f', 0, 64)
	switch {
	case rest == 0:
		return text
	case whole == 0:
		text = ""
	default:
		text += " "
	}
	return text + strconv.Itoa(rest) + "/" + strconv.Itoa(over)
}

// soldWires are the American wire gauge sizes cords and cables are sold in,
// thinnest first; 1/0 is 0. Common practice, no source.
var soldWires = [...]int{18, 16, 14, 12, 10, 8, 6, 4, 3, 2, 1, 0, -1, -2, -3}

// showWire writes a conductor for a reader of AWG sizes: the next size up or
// down as sold; told sizes only if they are that size within 1 %. A section no
// size can stand for, or outside those sold, is written in mm².
func showWire(section float64, r Round) string {
	best := ""
	if thin, thick := area(soldWires[0]), area(soldWires[len(soldWires)-1]); section >= thin*(1-near) && section <= thick*(1+near) {
		for _, n := range soldWires {
			a := area(n)
			on := math.Abs(a-section) <= slack*section
			switch {
			case r == Up && (a >= section || on):
				return wireName(n)
			case r == Down && (a <= section || on), r == Nearest && math.Abs(a-section) <= near*section:
				best = wireName(n)
			}
		}
	}
	if best == "" {
		return Show(Quantity{section, Section}, Metric, r)
	}
	return best
}

func area(n int) float64 {
	a, _ := AWG(n)
	return float64(a)
}
