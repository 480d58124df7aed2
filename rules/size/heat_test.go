package size

import (
	"errors"
	"math"
	"testing"

	"cutbrief/rules/metal"
	"cutbrief/rules/unit"
)

// besselK0 is the modified Bessel function of the second kind, by its integral
// ∫exp(−z·cosh u)du from 0 on, for z above 0.02.
func besselK0(z float64) float64 {
	const pieces, end = 200, 8.0
	sum := 0.0
	for i := range pieces + 1 {
		weight := 2.0
		switch {
		case i == 0 || i == pieces:
			weight = 1
		case i%2 == 1:
			weight = 4
		}
		sum += weight * math.Exp(-z*math.Cosh(end*float64(i)/pieces))
	}
	return sum * end / pieces / 3
}

// The heated zone is from memory too: the temperature beside an instantaneous
// line of heat in a plate, T = H/(ρc·t·√(4πατ))·exp(−y²/4ατ), is highest at
// H/(√(2πe)·ρc·t·y), and √(2πe) is the 4.13 of the formula.
func TestHeatedZoneFactor(t *testing.T) {
	const y, alpha = 3.0, 9.1
	best := 0.0
	for s := 0.001; s < 5; s += 0.001 {
		best = max(best, math.Exp(-y*y/(4*alpha*s))/math.Sqrt(4*math.Pi*alpha*s))
	}
	if factor := 1 / (best * y); !near(factor, thinPlateFactor, 0.005) {
		t.Errorf("factor %v", factor)
	}
}

func TestAbsorbedRefuses(t *testing.T) {
	steel, copper := PropertiesOf(metal.MildSteel)[0], PropertiesOf(metal.Copper)[0]
	for _, bad := range []func() error{
		func() error { _, err := copper.Absorbed(6, 1.5, 500); return err }, // carries the heat away too fast
		func() error { _, err := steel.Absorbed(11, 1.5, 100); return err }, // too slow
		func() error { _, err := steel.Absorbed(0, 1.5, 500); return err },
		func() error { _, err := LeftInPlate(11, 1.5, 100); return err },
		func() error { _, err := HeatInput(20, 200, 0, 0.9); return err },
		func() error { _, err := HeatInput(20, 200, 300, 1.1); return err },
		func() error { _, err := HeatedZone(0, 5); return err },
		func() error { _, err := OxyFuelSpeed(5); return err },
		func() error { _, err := OxyFuelSpeed(101); return err },
	} {
		if err := bad(); !errors.Is(err, ErrRange) {
			t.Errorf("%v", err)
		}
	}
}

// The band worked out for a hand cut lies within the usual band.
func TestHeatedZoneIsInKeepingWithPractice(t *testing.T) {
	for _, thick := range []unit.Millimetre{6, 8, 11, 12} {
		left, err1 := LeftInPlate(thick, 1.5, 500)
		y, err2 := HeatedZone(left, thick)
		if err1 != nil || err2 != nil || y < PlasmaBand().Low || y > PlasmaBand().High {
			t.Errorf("%v mm: %v (%v, %v)", thick, y, err1, err2)
		}
	}
}
