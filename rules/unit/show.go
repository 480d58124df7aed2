package unit

import (
	"math"
	"strconv"
	"strings"
)

// step is how finely numbers below a size are shown: to size 10^-decimals times
// width.
type step struct {
	below    float64 // in the shown unit; 0 for no limit
	width    float64 // 1, 5 or 50 units of the last decimal shown
	decimals int
}

// ladder is the display of one kind: its unit and its steps, finest first.
type ladder struct {
	unit  string // a measure of the kind
	steps []step
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
)

// ladders holds the display of each kind in its own unit.
var ladders = map[Kind]ladder{
	None:          {"", hundred},
	Thickness:     {"mm", sheets},
	Length:        {"m", fine},
	Speed:         {"mm/min", travels},
	Section:       {"mm²", hundred},
	Current:       {"A", tenths},
	Voltage:       {"V", tenths},
	Power:         {"kW", hundred},
	ApparentPower: {"kVA", hundred},
	Flow:          {"l/min", flows},
	Pressure:      {"bar", sheets},
	Volume:        {"l", tenths},
	Weight:        {"kg", tenths},
	Share:         {"%", tenths},
	Angle:         {"°", sheets},
	Temperature:   {"°C", []step{{0, 1, 0}}},
	Time:          {"s", tenths},
	Price:         {"", prices},
	Count:         {"", []step{{0, 1, 0}}},
}

// inchLadders holds the display for a reader in inches where it differs;
// thicknesses and conductors have ways of their own.
var inchLadders = map[Kind]ladder{
	Length:   {"ft", fine},
	Speed:    {"in/min", flows},
	Flow:     {"cfm", tenths},
	Pressure: {"psi", tenths},
	Volume:   {"gal", tenths},
	Weight:   {"lb", tenths},
}

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
	l, ok := ladders[q.Kind]
	switch {
	case !ok || math.IsNaN(q.Value) || math.IsInf(q.Value, 0):
		return "not known"
	case q.Kind == Thickness && style == Inch:
		return showInches(q.Value*inchOver/inch, r) + " in"
	case q.Kind == Section && style == Inch:
		return showWire(q.Value, r)
	case q.Kind == Time && q.Value >= minutesFrom:
		l = ladder{"min", []step{{0, 1, 1}}}
	case style == Inch:
		if other, ok := inchLadders[q.Kind]; ok {
			l = other
		}
	}
	m, _ := findMeasure(q.Kind, l.unit)
	text := l.number(m.shown(q.Value), r)
	if q.Kind == Price || q.Kind == Count {
		text = thousands(text)
	}
	return withUnit(text, l.unit)
}

func withUnit(number, unit string) string {
	if unit == "" || unit == "°" {
		return number + unit
	}
	return number + " " + unit
}

// number rounds v to the ladder's step in direction r and writes it.
func (l ladder) number(v float64, r Round) string {
	i := 0
	for l.steps[i].below != 0 && math.Abs(v) >= l.steps[i].below*(1-slack) {
		i++
	}
	s := l.steps[i]
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
	whole, rest, _ := strings.Cut(text, ".")
	sign := ""
	if strings.HasPrefix(whole, "-") {
		sign, whole = "-", whole[1:]
	}
	for i := len(whole) - 3; i > 0; i -= 3 {
		whole = whole[:i] + "," + whole[i:]
	}
	if rest != "" {
		rest = "." + rest
	}
	return sign + whole + rest
}
