package cost

import (
	"math"
	"testing"

	"cutbrief/rules"
	"cutbrief/rules/metal"
	"cutbrief/rules/unit"
)

// What is assumed where the customer told nothing: common practice, no source, as
// it was settled. What the reference tables hold too is tied to them in
// TestMechanicalIsTheTable and TestFlamesAreTheHandbook.
func TestFiguresOfPractice(t *testing.T) {
	want := map[string]Estimate{
		"share of the cutting time that really cuts": {0.5, 0.7, 0.9},
		"length of a cut":                               {0.3, 0.5, 1.5},
		"weeks worked in a year":                        {44, 46, 48},
		"how well a length is known":                    {0.8, 1, 1.2},
		"how well a sum is known":                       {0.9, 1, 1.1},
		"speed of a hand against the row of the system": {0.75, 1, 1.15},
		"air after a cut":                               {5, 12, 25},
		"power between cuts":                            {0.03, 0.1, 0.3},
		"arc's power over what the source takes":        {0.75, 0.85, 0.9},
		"flame, below 6 mm: straightening":              {0.5, 2, 5},
		"flame, from 6 mm: straightening":               {0, 0.3, 1},
		"plasma, below 3 mm: straightening":             {0, 0.4, 1.5},
		"plasma, from 3 mm: straightening":              {0, 0.1, 0.4},
		"another plasma system: speed":                  {250, 350, 500}, // of clean maximum and rated thickness
		"another plasma system: air flow":               {100, 150, 220},
		"shear: speed":                                  {2000, 4000, 6000}, // mechanical.csv: 2 to 6 m/min
		"nibbler: speed":                                {1000, 1500, 2000}, // mechanical.csv: 1 to 2 m/min
		"acetylene: oxygen in the flame":                {1.1, 1.2, 1.3},    // oxyfuel.csv: about 1.1 to 1.3
		"propane: oxygen in the flame":                  {3.5, 3.9, 4.3},    // oxyfuel.csv: about 3.5 to 4.3
		"oxy-fuel, 12.7 mm: cutting oxygen":             {66, 95.5, 125},    // oxyfuel.csv, as the other rows
	}
	for name, h := range map[string][5]Estimate{ // set-up in s, preheat or pierce in s, cleaning in min/m, standing by, kW
		"oxy-acetylene": {{5, 15, 40}, {5, 10, 20}, {1, 2, 4}, {1, 1, 1}},
		"oxy-propane":   {{5, 15, 40}, {8, 20, 40}, {1, 2, 4}, {1, 1, 1}},
		"abrasive disc": {{3, 10, 30}, {}, {0.2, 0.7, 2}, {1, 1, 1}, {0.7, 1.1, 2.2}},
		"band saw":      {{30, 90, 240}, {}, {0.1, 0.4, 1}, {0.2, 0.5, 1}, {0.7, 1.5, 3}},
		"shear":         {{3, 8, 20}, {}, {0.05, 0.2, 0.5}, {1, 1, 1}, {0.3, 0.5, 0.8}},
		"nibbler":       {{3, 8, 20}, {}, {0.1, 0.4, 1}, {1, 1, 1}, {0.4, 0.7, 1.2}},
		"plasma":        {{2, 5, 15}, {0.3, 0.7, 2}, {0.3, 1, 2}, {1, 1, 1}},
	} {
		for i, what := range []string{"set-up", "preheat or pierce", "cleaning the edge", "time somebody stands by", "power while cutting"} {
			if h[i] != (Estimate{}) {
				want[name+": "+what] = h[i]
			}
		}
	}
	// Of discs and saws by the metal: 70 to 80 % of a disc's speed in stainless.
	for _, name := range []string{"mild steel", "coated or galvanised steel", "aluminium", "stainless"} {
		low, likely, high := 1.0, 1.0, 1.0
		if name == "stainless" {
			low, likely, high = 0.7, 0.75, 0.8
		}
		for at, v := range map[string]Estimate{"3": {300, math.Sqrt(300 * 600), 600}, "6": {150, math.Sqrt(150 * 300), 300}, "11": {70, math.Sqrt(70 * 150), 150}} {
			want["abrasive disc: speed in "+at+" mm "+name] = Estimate{v.Low * low, v.Likely * likely, v.High * high}
		}
	}
	want["band saw: rate in mild steel"] = Estimate{800, 3200, 7700}
	want["band saw: rate in coated or galvanised steel"] = Estimate{800, 3200, 7700}
	want["band saw: rate in stainless"] = Estimate{325, 1300, 2600}
	want["band saw: rate in aluminium"] = Estimate{2425, 9700, 26000}
	got := map[string]Estimate{}
	for _, f := range Figures() {
		name := f.Name.String()
		if f.Unit == "" || f.Trust == "" || got[name] != (Estimate{}) {
			t.Errorf("%+v is not whole, or comes twice", f)
		}
		got[name] = f.Estimate
	}
	for name, w := range want {
		g := got[name]
		if math.Abs(g.Low-w.Low)+math.Abs(g.Likely-w.Likely)+math.Abs(g.High-w.High) > 1e-9 {
			t.Errorf("%s: %v, want %v", name, g, w)
		}
	}
	if n := len(want) + 4*len(flames) - 1; len(got) != n {
		t.Errorf("%d figures, want %d", len(got), n)
	}
}

// Discs by hand: below 3 mm as fast as there, likely the middle in logarithms, and
// 12 mm and a nominal step of 6 % are the end. Halfway between 3 and 6 mm in
// logarithms, at √18 = 4.243 mm, it is √(300·150) = 212.1 to √(600·300) = 424.3; at
// 12.72 mm 150·(70/150)^(ln 2.12/ln 1.8333) = 58.31 to 300·0.5^1.2397 = 127.04.
func TestDiscSpeedByHand(t *testing.T) {
	for mm, want := range map[unit.Millimetre][2]float64{
		0.5: {300, 600}, 3: {300, 600}, 4.2426407: {212.132, 424.264}, 6: {150, 300}, 11: {70, 150}, 12.72: {58.31, 127.04},
	} {
		v, err := DiscSpeed(mm, metal.MildSteel)
		near(t, "slow", v.Low, want[0], 0.01, err)
		near(t, "fast", v.High, want[1], 0.01, err)
	}
	for _, mm := range []unit.Millimetre{0, -1, 12.73} {
		if _, err := DiscSpeed(mm, metal.MildSteel); err == nil {
			t.Errorf("%v mm is not refused", mm)
		}
	}
	v, err := SawSpeed(0.8, metal.Galvanised) // 3200/0.8
	near(t, "saw in coated sheet", v.Likely, 4000, 1e-9, err)
	if _, err := SawSpeed(0, metal.MildSteel); err == nil {
		t.Error("no thickness is sawn")
	}
}

// The ends of the oxy-fuel table, and halfway between its first rows: 4.76 mm, low
// (508 + 406)/2. A nominal step of 6 % below 3.17 mm is 2.98 mm.
func TestOxyFuelBetweenAndAtTheEnds(t *testing.T) {
	for mm, want := range map[unit.Millimetre][2]float64{2.98: {508, 762}, 3.17: {508, 762}, 4.76: {457, 711}, 101.6: {102, 203}} {
		f, err := OxyFuelAt(mm, rules.Acetylene)
		near(t, "slow", f.Speed.Low, want[0], 1e-6, err)
		near(t, "fast", f.Speed.High, want[1], 1e-6, err)
	}
	if _, err := OxyFuelAt(2.97, rules.Acetylene); err == nil {
		t.Error("2.97 mm is not refused")
	}
}
