package size

import (
	"errors"
	"fmt"
)

// What a formula refuses. They are returned as they are where a caller meets
// them at every key, so that refusing costs nothing.
var (
	ErrRange    = errors.New("outside the range the formula holds for")
	ErrTooThick = errors.New("thicker than the system severs at this output")
	ErrTooFast  = errors.New("faster than the torch can be led")
	ErrRow      = errors.New("the system's own figures contradict each other")
	ErrNoDuty   = errors.New("no duty cycle is given for the system")
	ErrNoFit    = errors.New("the work of the busiest ten minutes fits at no output")
	ErrVolts    = errors.New("the voltage lies outside the supply's range and its tolerance")
	ErrChokes   = errors.New("the hose loses more than half of the pressure")
	ErrKeepsUp  = errors.New("the compressor keeps up: the receiver does not run down")
	ErrNoRated  = errors.New("no rated thickness up to the clean maximum gives this speed")
)

// RangeError names the figure that lies outside the valid range, which runs
// from Low to High in Unit. errors.Is(err, ErrRange) holds for it.
type RangeError struct {
	What      string
	Value     float64
	Low, High float64
	Unit      string
}

// Error writes the figure and the range.
func (e *RangeError) Error() string {
	return fmt.Sprintf("%s %g %s is outside %g to %g %s", e.What, e.Value, e.Unit, e.Low, e.High, e.Unit)
}

// Is makes every RangeError an ErrRange.
func (e *RangeError) Is(target error) bool { return target == ErrRange }

// within returns nil if low ≤ v ≤ high; not-a-number is outside.
func within(what string, v, low, high float64, unit string) error {
	if v >= low && v <= high {
		return nil
	}
	return &RangeError{what, v, low, high, unit}
}
