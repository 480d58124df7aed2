// Package unit holds the named quantities of the trade, reads them as people
// write them ("3/8 in", "10 mm", "14 ga") and writes them back rounded to the
// safe side. It refuses to guess: a text it cannot read is an error that says
// what would be accepted, and "not known" is a value of its own, never zero.
// Any package may import it; it imports the standard library only.
package unit

// Quantities used across package borders. Each is a float64 in the unit its
// name says; pressures are gauge unless the name says otherwise.
type (
	Millimetre          float64 // thickness, kerf, bore
	Metre               float64 // cut length, cord, hose, altitude
	MillimetrePerMinute float64 // travel speed
	SquareMillimetre    float64 // conductor cross-section
	Ampere              float64 // output, supply and breaker current
	Volt                float64 // supply (line to line when three-phase) or arc voltage
	Kilowatt            float64 // real power
	KilovoltAmpere      float64 // apparent power
	LitrePerMinute      float64 // free air, at the reference of ISO 8778 unless said otherwise
	Bar                 float64 // gauge pressure
	Litre               float64 // air receiver
	Kilogram            float64 // weight of a system
	Percent             float64 // duty cycle, share; 35 means 35 %
	Degree              float64 // plane angle
	Celsius             float64 // temperature
	Second              float64 // time of a cut
	Money               float64 // in the currency of the price list or visit
)

// Maybe is an answer that can be missing. The zero value is "not known".
type Maybe[T any] struct {
	value T
	known bool
}

// Known returns a Maybe that holds v.
func Known[T any](v T) Maybe[T] { return Maybe[T]{v, true} }

// Get returns the value and whether it is known.
func (m Maybe[T]) Get() (T, bool) { return m.value, m.known }

// IsKnown reports whether there is a value.
func (m Maybe[T]) IsKnown() bool { return m.known }

// Or returns the value, or fallback if it is not known. Use it only where the
// fallback is itself an honest answer; a missing number is never zero.
func (m Maybe[T]) Or(fallback T) T {
	if m.known {
		return m.value
	}
	return fallback
}
