package demonstration

import (
	"math"
	"slices"

	"cutbrief/rules/message"
	"cutbrief/rules/metal"
	"cutbrief/rules/size"
	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// Pace is how a measured time compares with the predicted one.
type Pace string

// The paces.
const (
	OnTheMark Pace = "on the mark"
	Slow      Pace = "too slow"
	Fast      Pace = "too fast"
)

// paceBand is how far a hand-taken time may be off before it says something.
// Common practice, no source: starting and stopping a watch by hand costs about
// half a second at each end, which is a sixth of a cut of six seconds.
const paceBand = 0.15

// Compare tells how the time a straight cut took compares with the predicted
// one, both in seconds and above 0: too slow above 1.15 times the prediction,
// too fast below 1/1.15 of it. ok is false if either is no time.
// Check: 18 s predicted: 20.7 s is on the mark, 20.8 s is too slow; 15.7 s is on
// the mark, 15.6 s is too fast.
func Compare(took, predicted unit.Second) (p Pace, ok bool) {
	switch {
	case !(took > 0 && predicted > 0):
		return "", false
	case took > predicted*(1+paceBand)+tinyTime:
		return Slow, true
	case took*(1+paceBand)+tinyTime < predicted:
		return Fast, true
	}
	return OnTheMark, true
}

// tinyTime keeps the last bit of a time in s from deciding.
const tinyTime = 1e-9

// Change is what to do differently after a cut at this pace.
func (p Pace) Change() message.Message {
	switch p {
	case Slow:
		return message.New("Lead a little faster: {1}.", TooSlow)
	case Fast:
		return message.New("Lead a little slower: {1}.", TooFast)
	}
	return message.New("Keep this pace: the arc trails a little below.")
}

// Reached returns the travel speed in mm/min of a length in mm cut in a time in
// s, both above 0; not known otherwise. Check: 300 mm in 18 s is 1000 mm/min.
func Reached(length unit.Millimetre, took unit.Second) unit.Maybe[unit.MillimetrePerMinute] {
	if !(length > 0 && took > 0) {
		return unit.Maybe[unit.MillimetrePerMinute]{}
	}
	return unit.Known(unit.MillimetrePerMinute(float64(length) / float64(took) * 60))
}

// FewestCuts is how many timed cuts a conclusion needs. Our own rule: of fewer,
// one bad cut can move the median anywhere.
const FewestCuts = 5

// Timed is a cut whose time was taken and was predicted, both in s and above 0.
type Timed struct {
	Visit           string // which visit it belongs to
	Metal           metal.ID
	Thickness       unit.Maybe[unit.Millimetre]
	Output          unit.Maybe[unit.Ampere]
	Length          unit.Maybe[unit.Millimetre]
	Took, Predicted unit.Second
}

// Errors sums up how far measured speeds were from the predicted ones, as shares
// of these: −0.2 is 20 % slower.
type Errors struct {
	Cuts, Visits int
	Median       float64
	Low, High    float64 // the quartiles, or all there is of fewer than FewestCuts
}

// Accuracy is what the timed cuts of one system say: of the prediction, and of the
// system's row.
type Accuracy struct {
	All Errors
	// Row takes only the cuts that can speak of the row: in mild steel, not so thin
	// that the hand limits, and predicted as the row predicts today.
	Row Errors
	// Off is how those went on the whole; "" if they are too few to say.
	Off Pace
	// Rated is the rated thickness in mm that would fit them, where they were off;
	// not known if none from half to twice the row's would.
	Rated unit.Maybe[unit.Millimetre]
}

// AccuracyOf sums up the timed cuts of one system. A nil row is not known: then only
// the prediction is judged. Nothing is changed.
//
// A median speed more than the band of Compare off is too slow or too fast; then
// the median of the rated thicknesses by size.FitRated is what would fit: with it,
// half of the cuts are slower and half are faster than the row says.
// Source: as size.Speed; the band and the counts are common practice, no source.
// Check: five cuts in 6 mm, rated 12, clean 16 mm, at 700, 750, 780, 800 and
// 1000 mm/min against 1000: 22 % slower in the median, quartiles 25 % and 20 %,
// and a rated thickness of 9.36 mm fits.
func AccuracyOf(cuts []Timed, row *system.System) Accuracy {
	cuts = slices.DeleteFunc(slices.Clone(cuts), func(c Timed) bool { return !c.told() })
	t := Accuracy{All: errorsOf(cuts)}
	if row == nil {
		return t
	}
	cuts = slices.DeleteFunc(cuts, func(c Timed) bool { return !c.speaksOf(row) })
	if t.Row = errorsOf(cuts); t.Row.Cuts < FewestCuts {
		return t
	}
	if t.Off, _ = Compare(1, unit.Second(1+t.Row.Median)); t.Off != OnTheMark {
		t.Rated = fittingRated(cuts, row)
	}
	return t
}

// told reports times that can be compared.
func (c *Timed) told() bool {
	ratio := c.off()
	return c.Took > 0 && ratio > -1 && !math.IsInf(ratio, 1)
}

// off is how far the measured speed is from the predicted one, as a share of it.
func (c *Timed) off() float64 { return float64(c.Predicted/c.Took) - 1 }

// sameTime is how near a recorded prediction must be to today's to be the same:
// 1 %, for times written down rounded. Our own rule.
const sameTime = 0.01

// speaksOf reports whether the speed of a cut can tell anything of the rated
// thickness of a row. In another metal its factor may be what is off; a bevel's
// or an older row's prediction is not the row's of today.
func (c *Timed) speaksOf(row *system.System) bool {
	if c.Metal != metal.MildSteel {
		return false
	}
	thickness, _ := c.Thickness.Get() // what is not known is 0, which has no speed and takes no time
	output, _ := c.Output.Get()
	length, _ := c.Length.Get()
	v, err := size.Speed(row, output, thickness, size.AlongEdge)
	if err != nil || v >= size.AlongEdge {
		return false
	}
	today := float64(length) / float64(v) * 60
	return math.Abs(float64(c.Predicted)-today) <= sameTime*today
}

// fittingRated is the median of the rated thicknesses that fit the cuts one by one. A
// cut that no rated thickness fits counts as below or above all others, as it is
// slower or faster than the row says.
func fittingRated(cuts []Timed, row *system.System) unit.Maybe[unit.Millimetre] {
	fits := make([]float64, len(cuts))
	for i := range cuts {
		fits[i] = cuts[i].fit(row)
	}
	slices.Sort(fits)
	rated := unit.Millimetre(quantile(fits, 0.5))
	if most := min(2*row.Rated, row.CleanMax); !(rated >= row.Rated/2 && rated <= most) {
		return unit.Maybe[unit.Millimetre]{}
	}
	return unit.Known(rated)
}

// fit is the rated thickness in mm that fits one cut.
func (c *Timed) fit(row *system.System) float64 {
	output, _ := c.Output.Get() // known of all that speak of the row
	thickness, _ := c.Thickness.Get()
	v, _ := size.Speed(row, output, thickness, size.AlongEdge)
	rated, err := size.FitRated(row, output, thickness, v*unit.MillimetrePerMinute(1+c.off()), size.AlongEdge)
	if err != nil {
		return math.Copysign(math.MaxFloat64/4, c.off()) // two of them have a mean
	}
	return float64(rated)
}

// errorsOf sums up cuts.
func errorsOf(cuts []Timed) Errors {
	e := Errors{Cuts: len(cuts)}
	if e.Cuts == 0 {
		return e
	}
	visits, off := map[string]struct{}{}, make([]float64, e.Cuts)
	for i := range cuts {
		visits[cuts[i].Visit] = struct{}{}
		off[i] = cuts[i].off()
	}
	slices.Sort(off)
	e.Visits, e.Median = len(visits), quantile(off, 0.5)
	e.Low, e.High = off[0], off[e.Cuts-1]
	if e.Cuts >= FewestCuts {
		e.Low, e.High = quantile(off, 0.25), quantile(off, 0.75)
	}
	return e
}

// quantile is the value a share of the way through sorted values, straight
// between two of them: position share·(n − 1), counted from 0; one of several
// definitions in use, from memory. Check: of 1, 2, 4, 8 the median is 3, the lower quartile 1.75.
func quantile(sorted []float64, share float64) float64 {
	at := share * float64(len(sorted)-1)
	i := int(at)
	if i+1 >= len(sorted) {
		return sorted[len(sorted)-1]
	}
	return sorted[i] + (at-float64(i))*(sorted[i+1]-sorted[i])
}
