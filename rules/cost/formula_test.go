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
	p, err = SupplyPower(120, 40, 1)
	near(t, "supply power without losses", float64(p), 4.8, 1e-9, err)
	s, err = SinglePresent(0.03, 0)
	near(t, "today", s, 1, 0, err)
	if years, ok := Pays(0.5, 1).Get(); !ok || years != 0.5 {
		t.Errorf("0.5 at 1 a year pays back in %v years", years)
	}
	for _, sum := range []unit.Money{1e-200, 1e200} { // however small or large the money is
		if years, ok := Pays(sum, sum).Get(); !ok || years != 1 {
			t.Errorf("%v at as much a year pays back in %v years", sum, years)
		}
	}
	if years, ok := Pays(0, 900).Get(); !ok || years != 0 {
		t.Errorf("what costs nothing pays back in %v years", years)
	}
	for _, never := range [][2]unit.Money{{-1, 900}, {0, 0}, {1e300, 1e-300}} {
		if years, ok := Pays(never[0], never[1]).Get(); ok {
			t.Errorf("%v pays back in %v years", never, years)
		}
	}
}

// Nothing costs nothing: zero is allowed of all that is multiplied.
func TestFormulasOfNothing(t *testing.T) {
	nothing := func(v float64, err error) { t.Helper(); near(t, "nothing", v, 0, 0, err) }
	money := func(m unit.Money, err error) { t.Helper(); nothing(float64(m), err) }
	money(Labour(0, 60))
	money(Labour(1, 0))
	money(Energy(0, 1, 1))
	money(Energy(1, 0, 1))
	money(Energy(1, 1, 0))
	money(Bladed(6, 50, 0))
	money(Shared(0, 30))
	nothing(Worn(0, 300, 0, 2))
	nothing(UniformPresent(0.03, 0))
	nothing(UniformPresent(0, 0))
	for _, v := range [][2]float64{{0, 1}, {1, 0}} {
		gas, err := GasUsed(unit.LitrePerMinute(v[0]), Hour(v[1]))
		nothing(float64(gas), err)
		kw, err := AirPower(unit.LitrePerMinute(v[0]), v[1])
		nothing(float64(kw), err)
	}
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
	add(Worn(-1, 300, 1, 2))
	add(Worn(1, 300, -1, 2))
	add(Labour(1, -1))
	add(GasUsed(1, -1))
	add(AirPower(1, -1))
	add(Energy(1, -1, 1))
	add(Energy(1, 1, -1))
	add(Bladed(6, 50, -1))
	add(Shared(-1, 30))
	add(SupplyPower(120, 40, 1.01))
	add(UniformPresent(0.1, -1))
	add(SinglePresent(0.1, -1))
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
