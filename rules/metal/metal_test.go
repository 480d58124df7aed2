package metal_test

import (
	"testing"

	"cutbrief/rules/metal"
	"cutbrief/rules/unit"
)

func TestIdentifiersAreUnique(t *testing.T) {
	seen := map[metal.ID]bool{}
	for _, m := range metal.List() {
		if m.ID == "" || m.Name == "" || m.Note == "" || seen[m.ID] {
			t.Errorf("%+v is not whole or comes twice", m)
		}
		seen[m.ID] = true
		if found, ok := metal.Find(m.ID); !ok || found.Name != m.Name {
			t.Errorf("%q is not found", m.ID)
		}
	}
}

// Every metal but the unknown one has a factor with a basis that resolves;
// the unknown one has none, so that nothing is concluded for it.
func TestEquivalenceHasABasis(t *testing.T) {
	for _, m := range metal.List() {
		factor, known := m.Equivalence.Get()
		_, resolves := m.Basis.Find()
		if known != (m.ID != metal.Other) || resolves != known {
			t.Errorf("%q: factor known %t, basis %q resolves %t", m.ID, known, m.Basis, resolves)
		}
		// No metal held is easier than mild steel, which ratings are given in.
		if known && factor < 1 {
			t.Errorf("%q: factor %v would promise more than the rating", m.ID, factor)
		}
	}
}

// 14 gauge as each metal's sheet is sold; the values are those of
// testdata/reference/sheet_gauge.csv.
func TestSheetIsReadByItsOwnGauge(t *testing.T) {
	for id, want := range map[metal.ID]float64{
		metal.MildSteel: 1.898, metal.Galvanised: 1.993, metal.Stainless: 1.984, metal.Aluminium: 1.628, metal.Copper: 1.628,
	} {
		m, _ := metal.Find(id)
		r, err := unit.Read("14 ga", unit.Thickness, unit.Metric, m.Sheet)
		if d := r.Quantity.Value - want; err != nil || d > 0.0006 || d < -0.0006 {
			t.Errorf("14 ga %s = %v, %v; want %v mm", m.Name, r.Quantity.Value, err, want)
		}
	}
	for _, id := range []metal.ID{metal.CastIron, metal.Other} {
		m, _ := metal.Find(id)
		if _, err := unit.Read("14 ga", unit.Thickness, unit.Metric, m.Sheet); err == nil {
			t.Errorf("%s is not sold by gauge, but 14 ga was read", m.Name)
		}
	}
}

func TestListIsACopy(t *testing.T) {
	metal.List()[0].Name = "changed"
	if metal.List()[0].Name == "changed" {
		t.Error("the list can be changed from outside")
	}
	if _, ok := metal.Find("unobtainium"); ok {
		t.Error("an unknown identifier was found")
	}
}

// The factors of common practice, as a supplier's rule of thumb gives them: coated as
// mild steel, stainless 15 % more, aluminium and cast iron a quarter more, copper twice.
func TestFactorsOfPractice(t *testing.T) {
	for id, want := range map[metal.ID]float64{metal.MildSteel: 1, metal.Galvanised: 1, metal.Stainless: 1.15, metal.Aluminium: 1.25, metal.Copper: 2, metal.CastIron: 1.25} {
		if m, ok := metal.Find(id); !ok || m.Practice.Or(0) != want || m.Equivalence.Or(0) < want {
			t.Errorf("%s: %v and %v, want %g and no less", id, m.Practice, m.Equivalence, want)
		}
	}
}
