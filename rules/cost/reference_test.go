package cost

import (
	"fmt"
	"math"
	"os"
	"strings"
	"testing"

	"cutbrief/rules"
	"cutbrief/rules/cite/reference"
	"cutbrief/rules/metal"
	"cutbrief/rules/size"
	"cutbrief/rules/unit"
)

// table reads a file of testdata/reference by column name.
func table(t *testing.T, name string) reference.Table {
	t.Helper()
	return reference.Read(t, os.DirFS("../../testdata/reference"), name)
}

// The oxy-fuel table in the code is that of the handbook, row by row.
func TestFlamesAreTheHandbook(t *testing.T) {
	hand, both := map[float64]map[string]string{}, map[float64]map[string]string{}
	for _, row := range table(t, "oxyfuel.csv") {
		switch {
		case row["mode"] == "hand" && row["speed_mm_min_low"] != "":
			hand[reference.Number(t, row["thickness_mm"])] = row
		case row["mode"] == "manual and machine":
			both[reference.Number(t, row["thickness_mm"])] = row
		}
	}
	if len(hand) != len(flames) {
		t.Errorf("%d rows, the handbook has %d", len(flames), len(hand))
	}
	for _, f := range flames {
		row, propane := hand[f.t], both[f.t]["propane_cfh"]
		got := fmt.Sprint(f.speed[0], f.speed[1], f.oxygen[0], f.oxygen[1], f.acetylene[0], f.acetylene[1], fmt.Sprintf("%g-%g", f.propane[0], f.propane[1]))
		want := fmt.Sprint(reference.Number(t, row["speed_mm_min_low"]), reference.Number(t, row["speed_mm_min_high"]), reference.Number(t, row["oxygen_cfh_low"]),
			reference.Number(t, row["oxygen_cfh_high"]), reference.Number(t, row["fuel_cfh_low"]), reference.Number(t, row["fuel_cfh_high"]), propane)
		if got != want {
			t.Errorf("%g mm: %s, the handbook says %s", f.t, got, want)
		}
	}
}

// The one oxy-fuel table that was read at its source lies within the
// remembered one.
func TestFlamesAgreeWithWhatWasRead(t *testing.T) {
	n := 0
	for _, row := range table(t, "oxyfuel.csv") {
		if !strings.HasPrefix(row["source"], "Carvill") {
			continue
		}
		f, err := OxyFuelAt(unit.Millimetre(reference.Number(t, row["thickness_mm"])), rules.Acetylene)
		if v := reference.Number(t, row["speed_mm_min_low"]); err != nil || v < f.Speed.Low || v > f.Speed.High {
			t.Errorf("%s mm: %v is not within %v (%v)", row["thickness_mm"], v, f.Speed, err)
		}
		n++
	}
	if n < 6 {
		t.Errorf("%d rows", n)
	}
}

// 12.7 mm by hand: 305 to 559 mm/min; 66 to 125 ft³/h is 31.15 to 58.99 l/min;
// 10 to 13 ft³/h is 4.72 to 6.14 l/min.
func TestOxyFuelAtARow(t *testing.T) {
	f, err := OxyFuelAt(12.7, rules.Acetylene)
	near(t, "slow", f.Speed.Low, 305, 1e-9, err)
	near(t, "likely", f.Speed.Likely, 432, 1e-9, err)
	near(t, "oxygen", f.Cutting.Low, 31.15, 0.005, err)
	near(t, "oxygen", f.Cutting.High, 58.99, 0.005, err)
	near(t, "fuel", f.Fuel.High, 6.14, 0.006, err)
}

// What the code holds of discs, saws, shears and nibblers is what the table says.
func TestMechanicalIsTheTable(t *testing.T) {
	held := map[string]string{}
	for _, row := range table(t, "mechanical.csv") {
		held[row["method"]+"/"+row["material"]+"/"+row["quantity"]] = row["value"]
	}
	for key, want := range map[string]string{
		"abrasive cut-off, hand-held grinder/mild steel 3 mm/cut speed":     fmt.Sprintf("%g-%g", discs[0].slow, discs[0].fast),
		"abrasive cut-off, hand-held grinder/mild steel 6 mm/cut speed":     fmt.Sprintf("%g-%g", discs[1].slow, discs[1].fast),
		"abrasive cut-off, hand-held grinder/mild steel 10-12 mm/cut speed": fmt.Sprintf("%g-%g", discs[2].slow, discs[2].fast),
		"abrasive cut-off, hand-held grinder/stainless/cut speed factor":    "0.7-0.8 of mild steel",
		"hand-held electric shear/mild steel/max thickness":                 "16-14 ga (1.5-2.0 mm); speed 2-6",
		"throatless shear/mild steel/max thickness":                         "10 ga MSG (3.4 mm)",
		"throatless shear/stainless/max thickness":                          "12 ga (2.8 mm)",
		"hand-held nibbler/mild steel/max thickness":                        "1.6-3.2 by size; speed 1-2",
		"band saw (bimetal, coolant)/low-carbon steel/cutting rate":         "5-12 (3200-7700 mm2/min)",
		"band saw (bimetal, coolant)/stainless 304/cutting rate":            "2-4 (1300-2600 mm2/min)",
		"band saw (bimetal, coolant)/aluminium/cutting rate":                "15-40 (9700-26000 mm2/min)",
	} {
		if held[key] != want {
			t.Errorf("%s: %q, the table says %q", key, want, held[key])
		}
	}
	if s := sawRate[metal.MildSteel]; s.Likely != 3200 || s.High != 7700 || s.Low != 3200/4 {
		t.Error(s)
	}
	if s := sawRate[metal.Stainless]; s.Likely != 1300 || s.High != 2600 || s.Low != 1300.0/4 {
		t.Error(s)
	}
	if s := sawRate[metal.Aluminium]; s.Likely != 9700 || s.High != 26000 || s.Low != 9700.0/4 {
		t.Error(s)
	}
}

// Discount factors as printed, and what they were computed from.
func TestDiscountFactors(t *testing.T) {
	n := 0
	for _, row := range table(t, "economics.csv") {
		var d, years float64
		name, _, _ := strings.Cut(row["item"], " ")
		if row["topic"] != "discount_factor" {
			continue
		}
		if _, err := fmt.Sscanf(row["item"][strings.Index(row["item"], name)+len(name):], "%g%% %g yr", &d, &years); err != nil {
			continue
		}
		n++
		want := reference.Number(t, row["value"])
		switch name {
		case "SPV":
			got, err := SinglePresent(d/100, years)
			near(t, row["item"], got, want, 5e-7, err)
		case "UPV":
			got, err := UniformPresent(d/100, years)
			near(t, row["item"], got, want, 5e-7, err)
		}
	}
	if n < 12 {
		t.Errorf("%d factors read", n)
	}
	flat, err := UniformPresent(0, 5)
	near(t, "no interest, five years", flat, 5, 0, err)
}

// Published worked examples, to the digits they print: 15000 paid first, 3500 a
// year to run, 1000 returned after six years at 15 % is −27813; 18000, 3100 and
// 6000 is −27138. The third is −25000, 500 a year to run and 2000 returned after
// ten years at 8 %, −27429 from factors of four digits (−27428.65 exactly).
func TestPublishedPresentWorth(t *testing.T) {
	for _, c := range []struct{ cost, saving, left, rate, years, want, within float64 }{
		{15000, -3500, 1000, 15, 6, -27813, 0.5},
		{18000, -3100, 6000, 15, 6, -27138, 0.5},
		{25000, -500, 2000, 8, 10, -27429, 0.5},
		{2500, 900, 200, 3, 5, 1794.26, 0.005},
	} {
		got, err := NetPresent(unit.Money(c.cost), unit.Money(c.saving), unit.Money(c.left), c.rate/100, c.years)
		near(t, fmt.Sprint(c), float64(got), c.want, c.within, err)
	}
	years, ok := Pays(2500, 900).Get()
	if !ok || math.Abs(years-2.778) > 5e-4 { // economics.csv
		t.Error(years, ok)
	}
	for _, never := range []unit.Money{0, -900} {
		if Pays(2500, never).IsKnown() {
			t.Errorf("%v a year pays back", never)
		}
	}
}

// base is one line of cost_crossing.csv: prices in US dollars, of gas per cubic
// foot, as its arithmetic took them.
type base struct {
	oxygen, acetylene, labour, preheat, length, energy, consumables, share float64
	pace                                                                   float64 // of the handbook's middle speed
}

var theBase = base{oxygen: 0.20, acetylene: 0.70, labour: 60, preheat: 10, length: 0.5, energy: 0.15, consumables: 6, pace: 1}

// flameMetre is what the reference takes for a metre of oxy-fuel cut.
func (b base) flameMetre(t *testing.T, mm unit.Millimetre) float64 {
	t.Helper()
	const foot = 0.028316846592 // m³
	f, err := OxyFuelAt(mm, rules.Acetylene)
	if err != nil {
		t.Fatal(err)
	}
	cutting, _ := CutHours(unit.MillimetrePerMinute(f.Speed.Likely*b.pace), 1)
	heating, _ := StartHours(unit.Second(b.preheat), unit.Metre(b.length))
	work, _ := Labour(cutting+heating, unit.Money(b.labour))
	oxygen, _ := GasUsed(unit.LitrePerMinute(f.Cutting.Likely), cutting)
	fuel, _ := GasUsed(unit.LitrePerMinute(f.Fuel.Likely), cutting+heating)
	return float64(work) + float64(oxygen)*b.oxygen/foot + float64(fuel)*b.acetylene/foot
}

// plasmaMetre is the same for plasma: a heat balance that gives 500 mm/min in
// 11 mm at 40 A and 120 V, and other speeds by the power absorbed.
func (b base) plasmaMetre(t *testing.T, mm unit.Millimetre, amps float64) float64 {
	t.Helper()
	steel := size.PropertiesOf(metal.MildSteel)[0]
	share := b.share
	if share == 0 {
		q, err := steel.Absorbed(11, 1.5, 500)
		if err != nil {
			t.Fatal(err)
		}
		share = float64(q) / 4.8
	}
	// q = t·k·ΔT·8·(0.2 + v·w/4α) solved for v: the balance is straight in v.
	at := func(v unit.MillimetrePerMinute) float64 { q, _ := steel.Absorbed(mm, 1.5, v); return float64(q) }
	slope := (at(1500) - at(1000)) / 500
	v := 1000 + (amps*120/1000*share-at(1000))/slope
	if v <= 1 {
		return math.Inf(1)
	}
	hours, _ := CutHours(unit.MillimetrePerMinute(v), 1)
	kw, _ := SupplyPower(120, unit.Ampere(amps), 0.85)
	power, _ := Energy(kw, hours, unit.Money(b.energy))
	return float64(hours)*(b.labour+b.consumables) + float64(power)
}

// crossed is the thickness above which the reference finds oxy-fuel cheaper.
func (b base) crossed(t *testing.T, amps float64) float64 {
	for mm := 3.2; mm <= 38; mm += 0.05 {
		if b.plasmaMetre(t, unit.Millimetre(mm), amps) > b.flameMetre(t, unit.Millimetre(mm)) {
			return mm
		}
	}
	return math.Inf(1)
}

// The base case and what moves it, by the formulas of this package and the same
// heat balance. 6 %: the table does not say how it reads the handbook between
// rows, nor whether its flame's oxygen counts.
func TestCrossingOfTheReference(t *testing.T) {
	change := map[string]func(*base){
		"base":                          func(*base) {},
		"no labour":                     func(b *base) { b.labour = 0 },
		"labour 30":                     func(b *base) { b.labour = 30 },
		"labour 100":                    func(b *base) { b.labour = 100 },
		"bulk gas O2 .05":               func(b *base) { b.oxygen, b.acetylene = 0.05, 0.40 },
		"bulk gas and":                  func(b *base) { b.oxygen, b.acetylene, b.labour = 0.05, 0.40, 0 },
		"small cylinders":               func(b *base) { b.oxygen, b.acetylene = 0.35, 1.20 },
		"no preheat":                    func(b *base) { b.preheat = 0 },
		"20 s preheat":                  func(b *base) { b.preheat = 20 },
		"long cuts":                     func(b *base) { b.length = 3 },
		"short cuts":                    func(b *base) { b.length = 0.2 },
		"consumables 3/h":               func(b *base) { b.consumables = 3 },
		"consumables 15/h":              func(b *base) { b.consumables = 15 },
		"eta .50":                       func(b *base) { b.share = 0.50 },
		"eta .70":                       func(b *base) { b.share = 0.70 },
		"oxy-fuel at 0.75 of table mid": func(b *base) { b.pace = 0.75 },
		"oxy-fuel at 1.3 of table mid":  func(b *base) { b.pace = 1.3 },
	}
	met := 0
	for _, row := range table(t, "cost_crossing.csv") {
		for name, apply := range change {
			if !strings.HasPrefix(row["assumption_changed_from_base"], name) {
				continue
			}
			b := theBase
			apply(&b)
			for _, class := range []struct {
				column string
				amps   float64
			}{{"crossing_mm_40A_class", 40}, {"crossing_mm_60A_class", 60}, {"crossing_mm_80A_class", 80}} {
				got, printed := b.crossed(t, class.amps), row[class.column]
				if printed == ">38" {
					if got < 38*0.94 {
						t.Errorf("%s, %v A: %v mm, want above 38", name, class.amps, got)
					}
				} else if want := reference.Number(t, printed); math.Abs(got/want-1) > 0.06 {
					t.Errorf("%s, %v A: %v mm, want %v", name, class.amps, got, want)
				}
				met++
			}
		}
	}
	if met < 3*len(change) {
		t.Errorf("%d of %d figures met", met, 3*len(change))
	}
}

// Why trade practice may say 16 mm and the base case 15.4: what moves it most
// for the small class, the share of the arc that heats the plate and the price
// of gas, spreads it from 12 to 18 mm, with 16 inside.
func TestSixteenMillimetresLiesInTheSpread(t *testing.T) {
	weak, strong := theBase, theBase
	weak.share, strong.share = 0.50, 0.70
	if low, high := weak.crossed(t, 40), strong.crossed(t, 40); !(low < 13 && 16 < high && high < 19) {
		t.Errorf("%v to %v mm", low, high)
	}
}

// sure is a list of prices without ranges.
func sure(prices map[ItemID]float64) PriceList {
	l := PriceList{Name: "by hand", Currency: "EUR"}
	for id, v := range prices {
		l = l.With(id, Price{Estimate: Exact(v), Basis: BasisOwn})
	}
	return l
}
