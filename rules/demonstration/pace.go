package demonstration

import (
	"cutbrief/rules/message"
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
