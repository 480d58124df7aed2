package unit_test

import (
	"testing"

	"cutbrief/rules/unit"
)

// Not known is a value of its own: a known zero is not it.
func TestMaybe(t *testing.T) {
	var missing unit.Maybe[unit.Millimetre]
	if v, ok := missing.Get(); ok || v != 0 || missing.IsKnown() || missing.Or(7) != 7 {
		t.Error("the zero value must be not known")
	}
	zero := unit.Known(unit.Millimetre(0))
	if v, ok := zero.Get(); !ok || v != 0 || !zero.IsKnown() || zero.Or(7) != 0 {
		t.Error("a known zero must stay known")
	}
}
