package cost

import (
	"math"
	"testing"

	"cutbrief/rules/metal"
	"cutbrief/rules/unit"
)

// near reports whether two numbers agree to the digits shown.
func near(t *testing.T, what string, got, want, within float64, err error) {
	t.Helper()
	if err != nil || !(math.Abs(got-want) <= within) {
		t.Errorf("%s: %v (%v), want %v", what, got, err, want)
	}
}

// The check values beside the formulas, each worked by hand there.
func TestFormulas(t *testing.T) {
	h, err := CutHours(500, 0.5)
	near(t, "cutting time", float64(h), 0.06667, 5e-6, err)
	h, err = StartHours(10, 0.5)
	near(t, "starting time", float64(h), 0.005556, 5e-7, err)
	m, err := Labour(0.06667, 60)
	near(t, "labour", float64(m), 4.00, 5e-3, err)
	v, err := GasUsed(45, 2.0/60)
	near(t, "gas", float64(v), 0.09, 1e-9, err)
	p, err := SupplyPower(120, 40, 0.85)
	near(t, "supply power", float64(p), 5.647, 5e-4, err)
	p, err = AirPower(200, 7)
	near(t, "air power", float64(p), 1.4, 1e-9, err)
	m, err = Energy(1.4, 1, 0.128)
	near(t, "energy for air", float64(m), 0.1792, 1e-9, err)
	s, err := Worn(60, 300, 1, 2)
	near(t, "wear", s, 0.7, 1e-9, err)
	m, err = Bladed(6, 50, 2)
	near(t, "discs", float64(m), 2.40, 1e-9, err)
	m, err = Shared(50, 30)
	near(t, "trips", float64(m), 1.667, 5e-4, err)
}

func TestFormulasRefuse(t *testing.T) {
	nan := math.NaN()
	var errs []error
	add := func(_ any, err error) { errs = append(errs, err) }
	add(CutHours(0, 0.5))
	add(CutHours(500, 0))
	add(CutHours(500, 1.1))
	add(CutHours(unit.MillimetrePerMinute(nan), 0.5))
	add(StartHours(10, 0))
	add(StartHours(-1, 1))
	add(Labour(-1, 1))
	add(GasUsed(-1, 1))
	add(SupplyPower(120, 40, 0))
	add(AirPower(-1, 7))
	add(Energy(-1, 1, 1))
	add(Worn(1, 0, 1, 1))
	add(Bladed(0, 50, 2))
	add(Shared(50, 0))
	add(SinglePresent(-1, 5))
	add(UniformPresent(-0.1, 5))
	add(OxyFuelAt(2, "acetylene"))
	add(OxyFuelAt(102, "acetylene"))
	add(OxyFuelAt(10, "hydrogen"))
	add(DiscSpeed(13, metal.MildSteel))
	add(DiscSpeed(6, metal.Copper))
	add(SawSpeed(6, metal.Copper))
	for i, err := range errs {
		if err == nil {
			t.Errorf("call %d is not refused", i)
		}
	}
}
