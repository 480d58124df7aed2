package rules

import (
	"math"
	"testing"

	"cutbrief/rules/metal"
	"cutbrief/rules/unit"
)

// What is plausible where nobody said, easiest first, and half-way by hand. Sizes
// and ratings are those a shop can buy: breakers from 15 A (NEC 240.6(A)) to 63 A
// (IEC 60898-1), conductors of 2.5 and 10 mm² (IEC 60228), pipe for air from 6 to
// 13 mm; the rest is common practice, no source. A thickness that is not told is
// taken from the regular cut, here 12 mm, where that is told.
func TestWhatIsPlausible(t *testing.T) {
	repair, plain, regular := mildSteel(12, Maintenance), mildSteel(12, Mixed), mildSteel(12, Mixed)
	repair.Pieces[0], plain.Pieces[0] = Piece{Metal: metal.MildSteel}, Piece{Metal: metal.MildSteel}
	for _, c := range []struct {
		fact                      Fact
		told                      Job
		kind                      unit.Kind
		easiest, halfway, hardest float64
	}{
		{FactThickest, plain, unit.Thickness, 1, 13, 25},
		{FactThickest, regular, unit.Thickness, 12, 18, 24}, // the regular cut to twice as thick
		{FactRarest, plain, unit.Thickness, 0, 25, 50},
		{FactRarest, regular, unit.Thickness, 0, 12, 24}, // none to twice as thick
		{FactPierced, plain, unit.Thickness, 0, 12.5, 25},
		{FactPierced, regular, unit.Thickness, 0, 6, 12}, // none to all that is cut
		{FactBevelled, plain, unit.Thickness, 0, 12.5, 25},
		{FactBevelled, regular, unit.Thickness, 0, 6, 12},
		{FactEveryday, plain, unit.Thickness, 1, 13, 25},
		{FactEveryday, regular, unit.Thickness, 4, 8, 12}, // a third of the thickest to all of it
		{FactBevelAngle, plain, unit.Angle, 15, 30, 45},
		{FactBusyCuts, plain, unit.Count, 1, 10.5, 20},
		{FactBusyCuts, repair, unit.Count, 1, 3, 5},
		{FactBusyLength, plain, unit.Length, 0.1, 0.3, 0.5},
		{FactBusyLength, repair, unit.Length, 0.1, 0.2, 0.3},
		{FactBreaker, plain, unit.Current, 63, 39, 15},
		{FactGenerator, plain, unit.ApparentPower, 40, 22.5, 5},
		{FactCord, plain, unit.Length, 0, 15, 30},
		{FactCordSection, plain, unit.Section, 10, 6.25, 2.5},
		{FactAirDelivery, plain, unit.Flow, 500, 300, 100},
		{FactAirPressure, plain, unit.Pressure, 10, 7, 4},
		{FactHoseBore, plain, unit.Thickness, 13, 9.5, 6},
		{FactHoseLength, plain, unit.Length, 5, 17.5, 30},
		{FactAltitude, plain, unit.Length, 0, 750, 1500},
	} {
		a := Asked{Fact: c.fact}
		if answerOf(c.fact).perMetal {
			a.Metal = metal.MildSteel
		}
		for i, want := range []float64{c.easiest, c.halfway, c.hardest} {
			j := c.told.clone()
			*thicknessOf(&j.Pieces[0], c.fact) = unit.Maybe[unit.Millimetre]{}
			answerOf(c.fact).put(&j, j.pieceOf(a), float64(i)/2)
			got, _ := j.Figure(a).Get()
			if got.Kind != c.kind || math.Abs(got.Value-want) > 1e-9 {
				t.Errorf("%s in %s, %d of 2 to the hardest: %g of kind %v, want %g of %v", c.fact, c.told.Use.Or(""), i, got.Value, got.Kind, want, c.kind)
			}
		}
	}
}
