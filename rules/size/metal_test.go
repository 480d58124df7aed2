package size

import (
	"errors"
	"math"
	"testing"

	"cutbrief/rules/metal"
	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// meltedWidth is the full width of the melted band behind a moving line of heat
// in a plate, by the exact solution: T = q/(2πkt)·exp(−v·x/2α)·K0(v·r/2α).
// Everything is in units of 2α/v; power is q/(t·k·ΔT).
func meltedWidth(power float64) float64 {
	hottest := func(y float64) float64 {
		best := 0.0
		for i := range 80 {
			x := -4 * (y + y*y) * float64(i) / 80
			best = max(best, power/(2*math.Pi)*math.Exp(-x)*besselK0(math.Hypot(x, y)))
		}
		return best
	}
	low, high := 0.01, 6.0
	for range 16 {
		if mid := (low + high) / 2; hottest(mid) > 1 {
			low = mid
		} else {
			high = mid
		}
	}
	return 2 * low
}

// The line-source balance is from memory, so it is held against the exact
// solution it abridges: the band melted by its power has the kerf's width to
// within a tenth, and a sixth at the very end of its range.
func TestAbsorbedMeltsTheKerf(t *testing.T) {
	steel := PropertiesOf(metal.MildSteel)[0]
	for _, carried := range []float64{0.2, 0.343, 0.6, 1, 1.5} {
		kerf := unit.Millimetre(1.5)
		v := unit.MillimetrePerMinute(carried * 4 * steel.Diffusivity / float64(kerf) * 1e3 * 60e3)
		q, err := steel.Absorbed(10, kerf, v*(1+1e-9))
		if err != nil {
			t.Fatal(err)
		}
		power := float64(q) * 1000 / (0.010 * steel.Conductivity * 1490)
		width := meltedWidth(power) * 2 * steel.Diffusivity / (float64(v) / 60e3) * 1e3
		if math.Abs(width/float64(kerf)-1) > 0.1 && (carried > 0.2 || width < 5.0/6*float64(kerf)) {
			t.Errorf("v·w/4α %.3f: melts %.3f mm for a kerf of %v mm", carried, width, kerf)
		}
	}
}

func TestEquivalence(t *testing.T) {
	s := &system.System{Rated: 12, PerMetal: map[metal.ID]unit.Millimetre{metal.Stainless: 10}}
	own, from := Equivalence(s, metal.Stainless)
	if f, ok := own.Get(); !ok || !near(f, 1.2, 1e-12) || from.Source != "rating-plate" {
		t.Errorf("%v from %v", own, from)
	}
	listed, from := Equivalence(s, metal.Aluminium)
	m, _ := metal.Find(metal.Aluminium)
	if listed != m.Equivalence || from != m.Basis {
		t.Errorf("%v from %v", listed, from)
	}
	for _, id := range []metal.ID{metal.Other, "unobtainium"} {
		if f, _ := Equivalence(s, id); f.IsKnown() {
			t.Errorf("%s: %v", id, f)
		}
	}
}

// A plate of half a millimetre counts as any other: rated 0.6 mm, 0.4 mm of a metal of
// its own are a factor of 1.5; a plate without figures leaves the list its say.
func TestEquivalenceOfSmallFigures(t *testing.T) {
	s := &system.System{Rated: 0.6, PerMetal: map[metal.ID]unit.Millimetre{metal.Aluminium: 0.4, metal.Copper: 0}}
	if f, ref := Equivalence(s, metal.Aluminium); math.Abs(f.Or(0)-1.5) > 1e-9 || ref.Source != "rating-plate" {
		t.Errorf("%v, %v", f, ref)
	}
	listed, _ := metal.Find(metal.Copper)
	if f, ref := Equivalence(s, metal.Copper); f != listed.Equivalence || ref.Source == "rating-plate" {
		t.Errorf("%v, %v", f, ref)
	}
	s.Rated = 0
	listed, _ = metal.Find(metal.Aluminium)
	if f, _ := Equivalence(s, metal.Aluminium); f != listed.Equivalence {
		t.Errorf("%v", f)
	}
}

// The balance by another route (the power whose melted band is as wide as the
// kerf, solved separately to two digits): stainless 0.82, aluminium 0.95, copper
// 2.57, brass 1.00. Melt energies by hand: 8.92/10.15 = 0.88 for stainless. The
// blend for copper: √(2·2.57) = 2.27.
func TestDerive(t *testing.T) {
	steel := Derive(metal.MildSteel)[0]
	if steel.Melt != 1 || steel.Balance != 1 {
		t.Errorf("%+v", steel)
	}
	var all []Derivation
	for _, id := range []metal.ID{metal.Stainless, metal.Aluminium, metal.Copper} {
		all = append(all, Derive(id)...)
	}
	for i, want := range []float64{0.82, 0.95, 2.57, 1.00} {
		if !near(all[i].Balance, want, 0.01) || all[i].Message().String() == "" {
			t.Errorf("%s, want %v", all[i].Message(), want)
		}
	}
	if !near(all[0].Melt, 0.88, 0.005) {
		t.Errorf("%s", all[0].Message())
	}
	if b, _ := all[2].Blended.Get(); !near(b, 2.27, 0.01) {
		t.Errorf("%s", all[2].Message())
	}
	if len(Derive(metal.CastIron)) != 0 || len(Derive(metal.Other)) != 0 || len(Derive(metal.Copper)) != 2 {
		t.Error("figures are held for mild steel, stainless, aluminium, copper and brass only")
	}
}

// The list's factor is the largest blend of a metal's figures, rounded up to two
// places, so that the factor in use is the one derived.
func TestTheListHoldsTheBlend(t *testing.T) {
	for _, m := range metal.List() {
		most := m.Practice.Or(0)
		for _, d := range Derive(m.ID) {
			most = max(most, d.Blended.Or(0))
		}
		if want := math.Ceil(most*100-1e-6) / 100; m.Equivalence.Or(0) != want {
			t.Errorf("%s: listed %v, blended %v", m.ID, m.Equivalence.Or(0), want)
		}
	}
}

// K0 at 0.1, 1 and 2 is 2.4270690, 0.4210244 and 0.1138939 in the handbooks of
// mathematical functions (from memory); warmth at x = 0 is K0.
func TestWarmth(t *testing.T) {
	for z, want := range map[float64]float64{0.1: 2.4270690, 1: 0.4210244, 2: 0.1138939} {
		if got := warmth(0, z); !near(got, want, 1e-7) {
			t.Errorf("K0(%v) = %v, want %v", z, got, want)
		}
	}
}

// The exact power, put back into the separately solved melted width, gives the
// kerf again, for slow and for fast metals.
func TestByLineMeltsTheKerf(t *testing.T) {
	for _, id := range []metal.ID{metal.MildSteel, metal.Stainless, metal.Aluminium, metal.Copper} {
		for _, p := range PropertiesOf(id) {
			q, err := p.ByLine(10, 1.5, 500)
			power := float64(q) * 1000 / (0.010 * p.Conductivity * (float64(p.Melting) - 20))
			width := meltedWidth(power) * 2 * p.Diffusivity / (500.0 / 60e3) * 1e3
			if err != nil || !near(width, 1.5, 0.03) {
				t.Errorf("%s: melts %v mm (%v)", p.Name, width, err)
			}
		}
	}
	steel := PropertiesOf(metal.MildSteel)[0]
	if q, err := steel.ByLine(11, 1.5, 500); err != nil || !near(float64(q), 3.09, 0.005) {
		t.Errorf("%v, %v", q, err)
	}
	for _, v := range []unit.MillimetrePerMinute{0, 5, 10000} {
		if _, err := steel.ByLine(10, 1.5, v); !errors.Is(err, ErrRange) {
			t.Errorf("%v mm/min: %v", v, err)
		}
	}
}

// A factor in the list is never below what melting alone asks for, nor does the
// blend lower it.
func TestFactorsAreOnTheSafeSide(t *testing.T) {
	for _, m := range metal.List() {
		for _, d := range Derive(m.ID) {
			practice, ok := d.Practice.Get()
			blended, _ := d.Blended.Get()
			if !ok || practice < d.Melt || blended < practice {
				t.Errorf("%+v", d)
			}
		}
	}
}
