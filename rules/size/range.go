// Package size holds one function per formula: what a system can cut and how
// fast, how long it may cut, what it draws from the supply and the compressor,
// and what it does to the metal. Every function says its formula, units, valid
// range, source and a check value; outside its range it returns an error and
// never extrapolates. It reads no job and gives no verdict: rules does.
//
// Thickness handed to a function together with a system is the mild-steel
// equivalent, unless its comment says otherwise.
package size

import (
	"errors"
	"fmt"

	"cutbrief/rules/system"
	"cutbrief/rules/unit"
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

// tiny keeps rounding in the last bit from turning a limit into a refusal.
const tiny = 1e-9

// reaches reports whether a figure is at least another, but for rounding.
func reaches[T ~float64](have, need T) bool { return have >= need*(1-tiny) }

// usable refuses an output the system cannot be set to.
func usable(s *system.System, output unit.Ampere) error {
	if output > 0 && reaches(output, s.OutputMin) && reaches(s.OutputMax, output) {
		return nil
	}
	return &RangeError{"output", float64(output), float64(s.OutputMin), float64(s.OutputMax), "A"}
}
