package system

import (
	"math"

	"cutbrief/rules/unit"
)

// supplies checks each supply by itself and against the others.
func (c *checker) supplies() {
	for i, p := range c.s.Supplies {
		if p.VoltMin > p.VoltMax {
			c.wrong(colSupplies, "%s to %s runs backwards", volts(p.VoltMin), volts(p.VoltMax))
		}
		if p.VoltMin < 90 || p.VoltMax > 700 {
			c.odd(colSupplies, "%s to %s is no usual supply voltage, about 100 V to 690 V", volts(p.VoltMin), volts(p.VoltMax))
		}
		c.supplyCurrents(p)
		for _, q := range c.s.Supplies[:i] {
			if p.Phases == q.Phases && p.VoltMin <= q.VoltMax && q.VoltMin <= p.VoltMax {
				c.odd(colSupplies, "gives %d phase twice at %s", p.Phases, volts(max(p.VoltMin, q.VoltMin)))
			}
		}
	}
}

// basis is printed with the arc power, which no copy of the standard was read for.
const basis = " (load voltage of IEC 60974-1, from memory)"

func volts(v unit.Volt) string { return unitful(float64(v), unit.Voltage) }

// supplyCurrents: the effective current is no more than the largest one, and
// the supply gives at least the power that the arc takes.
func (c *checker) supplyCurrents(p Supply) {
	if p.Effective > p.Input {
		c.wrong(colSupplies, "effective current %s is more than the largest, %s", amps(p.Effective), amps(p.Input))
	}
	// I1eff is I1max·√X, no-load current ignored (IEC 60974-1, from memory);
	// a tenth is let pass for the plate's rounding. Too small a value leads to
	// too thin a cord.
	if len(c.s.Duty) > 0 {
		expected := p.Input * unit.Ampere(math.Sqrt(float64(c.s.Duty[0].Duty)/100))
		if p.Effective < expected*0.9 {
			c.odd(colSupplies, "effective current %s is low: %s at %s gives about %.1f A",
				amps(p.Effective), amps(p.Input), unitful(float64(c.s.Duty[0].Duty), unit.Share), float64(expected))
		}
	}
	drawn, given := drawn(p), output(c.s.OutputMax)
	switch {
	case c.s.OutputMax <= 0:
	case drawn < given:
		c.odd(colSupplies, "%s at %s is %.1f kVA, but the arc alone takes %.1f kW at full output"+basis, amps(p.Input), volts(p.VoltMin), float64(drawn), float64(given))
	case drawn > 2.5*given:
		c.odd(colSupplies, "%s at %s is %.1f kVA for only %.1f kW of arc at full output"+basis, amps(p.Input), volts(p.VoltMin), float64(drawn), float64(given))
	}
}

// drawn is the apparent power at the lowest voltage: S = U·I, or √3·U·I with U
// line to line when three-phase. Check: 40 A at 230 V is 9.2 kVA.
func drawn(p Supply) unit.Kilowatt {
	s := float64(p.VoltMin) * float64(p.Input) / 1000
	if p.Phases == 3 {
		s *= math.Sqrt(3)
	}
	return unit.Kilowatt(s)
}

// output is the arc power P2 = U2·I2 at the conventional load voltage of a
// plasma cutting source: U2 = 80 + 0.4·I2 V up to 165 A and 130 + 0.1·I2 V
// above, I2 in A. IEC 60974-1 clause 11.2, from memory; later editions let the
// maker state another voltage, so it only ever raises a warning.
// Check: 45 A gives 98 V and 4.41 kW.
func output(a unit.Ampere) unit.Kilowatt {
	u := 80 + 0.4*float64(a)
	if a > 165 {
		u = 130 + 0.1*float64(a)
	}
	return unit.Kilowatt(u * float64(a) / 1000)
}
