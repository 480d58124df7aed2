package unit

import (
	"math"
	"strconv"
)

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
		return "-" + showInches(-v, opposite(r))
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

// opposite is the direction for a number whose sign was taken off.
func opposite(r Round) Round {
	switch r {
	case Up:
		return Down
	case Down:
		return Up
	}
	return r
}

// fraction writes n/over in lowest terms with the whole inches in front; over
// is a power of two.
func fraction(n float64, over int) string {
	whole := math.Floor(n / float64(over))
	rest := int(n - whole*float64(over))
	for rest > 0 && rest%2 == 0 {
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
