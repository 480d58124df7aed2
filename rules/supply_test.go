package rules

import (
	"strings"
	"testing"

	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// The voltages at the very limits of a plate, by hand: half a per cent beyond its
// range is still the nominal voltage, ten per cent beyond is the manual's to
// decide. 415 V and half a per cent is 417.075 V, which no binary fraction is.
func TestSupplyAtItsLimits(t *testing.T) {
	for _, c := range []struct {
		low, high unit.Volt
		volts     string // within, then within a tenth, then beyond
	}{
		{380, 415, "378.1 417.075, 342 456.5 378.099 417.076, 341.999 456.501"},
		{200, 240, "199 241.2, 180 264 198.999 241.201, 179.999 264.001"},
		{220, 240, "218.9 241.2, 198 264 218.899 241.201, 197.999 264.001"},
		{110, 120, "109.45 120.6, 99 132 109.449 120.601, 98.999 132.001"},
		{380, 480, "378.1 482.4, 342 528 378.099 482.401, 341.999 528.001"},
	} {
		plate := system.Supply{Phases: 3, VoltMin: c.low, VoltMax: c.high}
		for i, group := range strings.Split(c.volts, ", ") {
			want := []Verdict{Met, Borderline, Short}[i]
			for _, said := range strings.Fields(group) {
				read, err := unit.Read(said+" V", unit.Voltage, unit.Metric, unit.NoGauge)
				if err != nil {
					t.Fatal(err)
				}
				if got := suits(&plate, offer{3, read.Quantity.Value}); got != want {
					t.Errorf("%s V on %g to %g V: %s, want %s", said, c.low, c.high, got, want)
				}
			}
		}
	}
}
