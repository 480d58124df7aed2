package cost

import (
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"cutbrief/rules"
	"cutbrief/rules/message"
	"cutbrief/rules/metal"
	"cutbrief/rules/system"
	"cutbrief/rules/unit"
)

// handPrices are round prices for working by hand: an hour 60, a kWh 0.20, gas
// in m³, discs for 50 cm², blades for 8000 cm², knives for 1500 m.
func handPrices() PriceList {
	return sure(map[ItemID]float64{
		ItemLabour: 60, ItemElectricity: 0.20, ItemOxygen: 7, ItemAcetylene: 25, ItemPropane: 8, ItemCylinders: 300,
		ItemAirPower: 8, ItemSet: 12, ItemSetStarts: 300, ItemSetHours: 2, ItemDisc: 2, ItemDiscLife: 50,
		ItemBlade: 40, ItemBladeLife: 8000, ItemKnives: 100, ItemKnivesLife: 1500,
		ItemSentOut: 6, ItemTransport: 50, ItemTransportLoad: 30, ItemInterest: 3, ItemYears: 5,
	})
}

// job cuts one thickness of one metal, 60 m a week, which is 2760 m in a
// year of 46 weeks.
func job(id metal.ID, t unit.Millimetre, ways ...rules.Process) rules.Job {
	return rules.Job{
		Pieces:     []rules.Piece{{Metal: id, Everyday: unit.Known(t)}},
		CutPerWeek: unit.Known(unit.Metre(60)), Today: unit.Known(ways),
	}
}

// Each process worked by hand at the likely figures: an hour costs 60, a cut is
// 0.5 m, 0.7 of the cutting time really cuts.
func TestEveryProcessByHand(t *testing.T) {
	propane := job(metal.MildSteel, 12.7, rules.OxyFuel)
	propane.Prices.Fuel = unit.Known(rules.Propane)
	for _, c := range []struct {
		name string
		job  rules.Job
		want float64
	}{
		// 432 mm/min: 0.03858 h burning, 0.05512 h with pauses → 3.307; set-up 15 s
		// → 0.5; preheat 10 s → 0.333; cleaning 2 min → 2; straightening 0.3 min →
		// 0.3; oxygen 45.07 l/min → 0.1043 m³ → 0.730; flame 5.427 l/min for 0.04414 h
		// → 0.01437 m³ at 25 + 1.2·7 → 0.480; rental 300/2760 = 0.109.
		{"oxy-acetylene", job(metal.MildSteel, 12.7, rules.OxyFuel), 7.759},
		// As above with preheat 20 s → 0.667; flame 4.719 l/min for 0.04969 h →
		// 0.01407 m³ at 8 + 3.9·7 → 0.497.
		{"oxy-propane", propane, 8.109},
		// √(150·300) = 212.1 mm/min: 0.1122 h with pauses → 6.734; set-up 10 s →
		// 0.333; cleaning 0.7 min → 0.7; discs 60/50·2 = 2.4; 1.1 kW → 0.017.
		{"disc", job(metal.MildSteel, 6, rules.Abrasive), 10.185},
		// 320 mm/min: 0.0744 h, half of it attended → 2.232; set-up 90 s → 3;
		// cleaning 0.4 min → 0.4; blade 100/8000·40 = 0.5; 1.5 kW → 0.016.
		{"band saw", job(metal.MildSteel, 10, rules.BandSaw), 6.148},
		// 4000 mm/min: 0.00595 h → 0.357; set-up 8 s → 0.267; cleaning 0.2 min →
		// 0.2; knives 100/1500 = 0.067; power 0.0004.
		{"shear", job(metal.MildSteel, 2, rules.Shear), 0.891},
		// 1500 mm/min: 0.01587 h → 0.952; 0.267; cleaning 0.4 min → 0.4; 0.067;
		// power 0.0016.
		{"nibbler", job(metal.MildSteel, 2, rules.Nibbler), 1.687},
		// 6 a metre, 50/30 for the trip.
		{"sent out", job(metal.MildSteel, 20, rules.SentOut), 7.667},
		// 350 mm/min: 0.06803 h → 4.082; set-up 5 s → 0.167; pierce 0.7 s → 0.023;
		// cleaning 1 min → 1; straightening 0.1 min → 0.1; 40 A at 96 V and 0.85 is
		// 4.518 kW for 0.04801 h, 0.1 kW between → 0.044; 150 l/min is 1.2 kW for
		// 0.05467 h → 0.013; consumables 12·(2/300 + 0.04762/2) = 0.366.
		{"other plasma", job(metal.MildSteel, 10, rules.OtherPlasma), 5.794},
	} {
		a := Reckon(c.job, handPrices(), nil)
		if len(a.Methods) != 1 || !a.Methods[0].Why.IsEmpty() || math.Abs(a.Methods[0].PerMetre.Likely-c.want) > 0.0015 {
			t.Errorf("%s: %+v, want %v a metre", c.name, a.Methods, c.want)
		}
	}
}

func demo45(t testing.TB) *system.System {
	s, ok := system.Demo().Find("demo-45")
	if !ok {
		t.Fatal("no such system")
	}
	return &s
}

// Demo 45 is rated 12 mm at 500 mm/min: 0.04762 h with pauses → 2.857; set-up
// 5 s → 0.167; pierce → 0.023; cleaning → 1; straightening 0.1 min → 0.1; 45 A at
// 98 V and 0.85 is 5.188 kW → 0.035 with idling; 140 l/min is 1.12 kW → 0.009;
// consumables 12·(2/300 + 0.03333/2) = 0.28; together 4.4715. Held against
// sending out, 7.667: 3.195 a metre, 8819 a year; 1950 pays back in 0.221 years;
// five years at 3 % are worth 8819·4.5797 − 1950 = 38439.
func TestASystemByHand(t *testing.T) {
	a := Reckon(job(metal.MildSteel, 12, rules.SentOut), handPrices(), []*system.System{demo45(t)})
	o := a.Offers[0]
	near(t, "a metre", o.Method.PerMetre.Likely, 4.4715, 5e-4, nil)
	s, _ := o.Saving.Get()
	near(t, "saving a metre", s.PerMetre.Likely, 3.195, 1e-3, nil)
	year, _ := s.PerYear.Get()
	near(t, "saving a year", year.Likely, 8819, 1, nil)
	p, _ := s.Pays.Get()
	years, _ := p.Likely.Get()
	near(t, "payback", years, 0.221, 5e-4, nil)
	near(t, "worth", p.Worth.Likely, 38439, 5, nil)
	if s.Verdict != Saves || len(s.Movers) < 2 {
		t.Errorf("%s, %d movers", s.Verdict, len(s.Movers))
	}
	near(t, "worth of that year", p.Worth.Likely, year.Likely*4.579707-1950, 0.01, nil) // economics.csv: UPV of 5 years at 3 %
	own, _ := o.Method.PerYear.Get()
	near(t, "a year", own.Likely, 2760*o.Method.PerMetre.Likely, 1e-6, nil)
	near(t, "low metres, 60·44·0.8", a.Metres.Or(Estimate{}).Low, 2112, 1e-9, nil)
	near(t, "high metres, 60·48·1.2", a.Metres.Or(Estimate{}).High, 3456, 1e-9, nil)
	// 98 V · 45 A / 0.85 = 5.18824 kW for 1/30 + 0.7/1800 h, 0.1 kW for 0.0170635 h
	// between, at 0.20; 1.12 kW of air for 1/30 + 0.7/1800 + 12/1800 h.
	lines := linesOf(o.Method)
	near(t, "electricity", lines[Power], 0.0353331, 1e-6, nil)
	near(t, "air", lines[Air], 0.00904711, 1e-7, nil)
}

// linesOf are the likely figures of a method by its parts.
func linesOf(w Method) map[Part]float64 {
	lines := map[Part]float64{}
	for _, l := range w.Lines {
		lines[l.Part] = l.Cost.Likely
	}
	return lines
}

// Demo 45 says of itself that 10 mm of stainless count as its rated 12 mm: 500 mm/min.
func TestASystemInAnotherMetal(t *testing.T) {
	o := Reckon(job(metal.Stainless, 10), handPrices(), []*system.System{demo45(t)}).Offers[0]
	i := slices.IndexFunc(o.Method.Inputs, func(in Input) bool { return strings.HasPrefix(in.Name.String(), "speed") })
	if i < 0 {
		t.Fatalf("no speed in %v", o.Method.Inputs)
	}
	near(t, "speed", o.Method.Inputs[i].Estimate.Likely, 500, 1e-6, nil)
}

// Another plasma system takes an ampere for each 0.25 mm, from 20 to 125 A. Its arc
// burns at 80 V + 0.4 V a ampere (IEC 60974-1 as for cutting): 20 A at 88 V and 0.85 is
// 2.0706 kW, 125 A at 130 V 19.118 kW, 18.056 at 0.9 and 21.667 at 0.75.
func TestAnotherPlasmaSystem(t *testing.T) {
	for mm, want := range map[unit.Millimetre]Estimate{2: {1.9556, 2.0706, 2.3467}, 40: {18.0556, 19.1176, 21.6667}} {
		w := Reckon(job(metal.MildSteel, mm, rules.OtherPlasma), handPrices(), nil).Methods[0]
		i := slices.IndexFunc(w.Inputs, func(in Input) bool { return strings.HasPrefix(in.Name.String(), "power while cutting") })
		if i < 0 {
			t.Fatalf("no power in %v", w.Inputs)
		}
		got := w.Inputs[i].Estimate
		near(t, "low", got.Low, want.Low, 1e-4, nil)
		near(t, "likely", got.Likely, want.Likely, 1e-4, nil)
		near(t, "high", got.High, want.High, 1e-4, nil)
	}
}

// The systems are held against the first way of today that can be worked out, and a
// method names the prices it rests on, also those of one value.
func TestAgainstTheFirstWay(t *testing.T) {
	a := Reckon(job(metal.MildSteel, 10, rules.OtherWay, rules.SentOut, rules.BandSaw), handPrices(), []*system.System{demo45(t)})
	if a.Against != 1 || len(a.Methods) != 3 {
		t.Errorf("against %d of %d", a.Against, len(a.Methods))
	}
	if a := Reckon(job(metal.MildSteel, 10, rules.SentOut, rules.BandSaw), handPrices(), nil); a.Against != 0 {
		t.Errorf("against %d", a.Against)
	}
	var names []string
	for _, in := range a.Methods[1].Inputs {
		names = append(names, in.Name.String())
	}
	if got := strings.Join(names, ", "); got != "cutting sent out, a trip with the pieces" {
		t.Errorf("sending out rests on %s", got)
	}
}

// Zero told is no thickness, no length and no wage; little is one.
func TestLittleAndNothing(t *testing.T) {
	for mm, worked := range map[unit.Millimetre]bool{0: false, 0.8: true} {
		if a := Reckon(job(metal.MildSteel, mm, rules.SentOut), handPrices(), nil); a.Why.IsEmpty() != worked {
			t.Errorf("%v mm: %s", mm, a.Why)
		}
	}
	if a := Reckon(rules.Job{Pieces: []rules.Piece{{Metal: metal.MildSteel}}}, handPrices(), nil); a.Why.IsEmpty() {
		t.Error("a piece without a thickness is worked out")
	}
	setUp := func(length unit.Metre, wage unit.Money) float64 {
		j := job(metal.MildSteel, 12.7, rules.OxyFuel)
		j.BusyLength, j.Prices.Labour = unit.Known(length), unit.Known(wage)
		return linesOf(Reckon(j, handPrices(), nil).Methods[0])[Setup]
	}
	near(t, "15 s for 0.25 m at 60", setUp(0.25, 0), 1, 1e-9, nil)
	near(t, "15 s for 0.5 m at 60", setUp(0, 0), 0.5, 1e-9, nil)
	near(t, "15 s for 0.5 m at 0.60", setUp(0, 0.6), 0.005, 1e-9, nil)
	for week, known := range map[unit.Metre]bool{0: false, 0.5: true} {
		j := job(metal.MildSteel, 12.7, rules.OxyFuel)
		j.CutPerWeek = unit.Known(week)
		a := Reckon(j, handPrices(), nil)
		if m, told := a.Metres.Get(); !told || m.Likely != 46*float64(week) || a.Methods[0].PerYear.IsKnown() != known || !a.Methods[0].Why.IsEmpty() {
			t.Errorf("%v m a week: %v a year, %v", week, m, a.Methods[0].PerYear)
		}
	}
}

// Bills of 5520 a year over 2760 m are 2.00 a metre. Rental is listed however small
// it is, and so is the power of a shear.
func TestBillsAndSmallParts(t *testing.T) {
	j := job(metal.MildSteel, 10, rules.SentOut)
	j.Prices.SentOutYear = unit.Known(unit.Money(5520))
	w := Reckon(j, handPrices(), nil).Methods[0]
	if lines := linesOf(w); len(lines) != 1 || math.Abs(lines[Bought]-2) > 1e-9 {
		t.Errorf("%v, want 2.00 as billed", lines)
	}
	if i := slices.IndexFunc(w.Inputs, func(in Input) bool { return in.Name.String() == "cutting sent out" && in.Money }); i < 0 {
		t.Errorf("it does not rest on the bill: %v", w.Inputs)
	}
	if w := Reckon(job(metal.MildSteel, 3.6, rules.Shear), handPrices(), nil).Methods[0]; !w.Why.IsEmpty() { // 3.4 mm and a nominal step
		t.Errorf("a shear in 3.6 mm: %s", w.Why)
	}
	shear := linesOf(Reckon(job(metal.MildSteel, 2, rules.Shear), handPrices(), nil).Methods[0])
	near(t, "a shear's electricity, 0.5 kW for 1/240 h at 0.20", shear[Power], 0.5/240*0.20, 1e-9, nil)
	small := handPrices().With(ItemCylinders, Price{Exact(0.5), BasisOwn, ""})
	flame := linesOf(Reckon(job(metal.MildSteel, 10, rules.OxyFuel), small, nil).Methods[0])
	near(t, "rental", flame[Rental], 0.5/2760, 1e-9, nil)
	// A flame takes no electricity, so no price of it is missed.
	gas := sure(map[ItemID]float64{ItemLabour: 60, ItemOxygen: 7, ItemAcetylene: 25})
	if w := Reckon(job(metal.MildSteel, 10, rules.OxyFuel), gas, nil).Methods[0]; !w.Why.IsEmpty() {
		t.Errorf("%s", w.Why)
	}
}

// A method with a figure that a formula refuses is not worked out.
func TestAFigureThatIsRefused(t *testing.T) {
	j, prices := job(metal.MildSteel, 10, rules.OxyFuel), handPrices()
	s := newScenario(&j, &prices)
	w := s.method(OxyAcetylene, cut{metal.MildSteel, 10})
	s.in[today+at(speed)].Estimate = Estimate{}
	if out := s.worked(w, cut{metal.MildSteel, 10}); out.Why.IsEmpty() || out.PerMetre != (Estimate{}) {
		t.Errorf("%+v", out)
	}
}

// When a system pays back: money that is saved by the metre does it, also when it is
// little; a rental alone never does, though the year saves. What it is worth over the
// years needs both years and interest.
func TestWhatPaysBack(t *testing.T) {
	pays := func(j rules.Job, l PriceList) (Saving, Payback) {
		t.Helper()
		s, _ := Reckon(j, l, []*system.System{demo45(t)}).Offers[0].Saving.Get()
		p, ok := s.Pays.Get()
		if !ok {
			t.Fatal("nothing is said of paying back")
		}
		return s, p
	}
	rented := job(metal.MildSteel, 15.5, rules.OxyFuel)
	rented.CutPerWeek = unit.Known(unit.Metre(1))
	l := handPrices().With(ItemCylinders, Price{Exact(30000), BasisOwn, ""}).With(ItemOxygen, Price{Exact(0.01), BasisOwn, ""}).
		With(ItemAcetylene, Price{Exact(0.01), BasisOwn, ""}).With(ItemSet, Price{Exact(500), BasisOwn, ""})
	if s, p := pays(rented, l); !(s.PerYear.Or(Estimate{}).Likely > 0) || p.Soonest.IsKnown() || p.Likely.IsKnown() {
		t.Errorf("a rental pays for a system: %+v, %+v", s, p)
	}
	cheap := handPrices().With(ItemSentOut, Price{Exact(3.3), BasisOwn, ""})
	s, p := pays(job(metal.MildSteel, 12, rules.SentOut), cheap)
	if year := s.PerYear.Or(Estimate{}).Likely; !(s.PerMetre.Likely > 0 && s.PerMetre.Likely < 1) || math.Abs(p.Likely.Or(0)-1950/year) > 1e-9 {
		t.Errorf("%+v, %+v", s, p)
	}
	one := handPrices().With(ItemYears, Price{Exact(1), BasisOwn, ""})
	if _, p := pays(job(metal.MildSteel, 12, rules.SentOut), one); p.Years != 1 || p.Interest != 3 {
		t.Errorf("over a year: %+v", p)
	}
	for _, id := range []ItemID{ItemYears, ItemInterest} {
		l := handPrices()
		delete(l.prices, id)
		if _, p := pays(job(metal.MildSteel, 12, rules.SentOut), l); p.Years != 0 || p.Interest != 0 || p.Worth != (Estimate{}) {
			t.Errorf("without %s: %+v", id, p)
		}
	}
}

// Where the two cross, found again by steps of 0.05 mm in the accounts of either. A
// point of the chart is what an account says of that thickness, without the rental.
func TestCrossingAgainstTheAccounts(t *testing.T) {
	for _, wage := range []float64{60, 3} { // at the lower one oxy-fuel is nowhere cheaper, though less than 1 dearer
		prices := handPrices().With(ItemLabour, Price{Exact(wage), BasisOwn, ""})
		at := func(mm unit.Millimetre) (flame, plasma float64) {
			a := Reckon(job(metal.MildSteel, mm, rules.OxyFuel), prices, []*system.System{demo45(t)})
			return a.Methods[0].PerMetre.Likely - linesOf(a.Methods[0])[Rental], a.Offers[0].Method.PerMetre.Likely
		}
		c := Cross(job(metal.MildSteel, 10, rules.OxyFuel), prices, demo45(t))
		for _, p := range c.Points {
			flame, plasma := at(p.T)
			near(t, "flame", p.Flame.Likely, flame, 1e-9, nil)
			near(t, "plasma", p.Plasma.Likely, plasma, 1e-9, nil)
		}
		want := unit.Millimetre(4)
		for flame, plasma := at(want); want < 22 && flame >= plasma; flame, plasma = at(want) { // 22 mm is severed
			want += 0.05
		}
		if got, ok := c.Likely.Get(); ok != (want < 22) || ok && (got < want-0.06 || got > want+0.26) {
			t.Errorf("at %v an hour they cross at %v, by steps at %v", wage, got, want)
		}
	}
	dear := handPrices().With(ItemSet, Price{Exact(9000), BasisOwn, ""})
	if c := Cross(job(metal.MildSteel, 10, rules.OxyFuel), dear, demo45(t)); c.Likely.Or(0) != 4 {
		t.Errorf("a system that is never cheaper: oxy-fuel is from %v on", c.Likely)
	}
}

// The thicknesses compared: common steps of plate (common practice, no source), up to
// what the system severs, and at least two.
func TestThicknessesCompared(t *testing.T) {
	for severance, want := range map[unit.Millimetre][]unit.Millimetre{
		60: {4, 6, 8, 10, 12, 16, 20, 25, 32, 40, 50}, 20: {4, 6, 8, 10, 12, 16}, 7: {4, 6}, 6: nil,
	} {
		s := *demo45(t)
		s.Rated, s.CleanMax, s.Severance = severance*0.6, severance*0.8, severance
		c := Cross(job(metal.MildSteel, 10, rules.OxyFuel), handPrices(), &s)
		var got []unit.Millimetre
		for _, p := range c.Points {
			got = append(got, p.T)
		}
		if !slices.Equal(got, want) || c.Why.IsEmpty() != (want != nil) {
			t.Errorf("severing %v mm: %v (%s), want %v", severance, got, c.Why, want)
		}
	}
}

// The comparison means something where steel is cut by a system that cuts 4 mm.
func TestComparable(t *testing.T) {
	thin := *demo45(t)
	thin.Rated, thin.CleanMax, thin.Severance = 3, 4, 5
	for id, want := range map[metal.ID]bool{metal.MildSteel: true, metal.Galvanised: true, metal.Stainless: false} {
		j := job(id, 3)
		if Comparable(&j, &thin) != want || Comparable(&j, &system.System{}) {
			t.Errorf("%s: comparable is not %t", id, want)
		}
	}
}

// Oxy-fuel is no alternative on these metals, nor shears beyond their reach:
// it is said, and nothing is computed.
func TestNoAlternativeIsSaid(t *testing.T) {
	for _, c := range []struct {
		job  rules.Job
		want string
	}{
		{job(metal.Stainless, 6, rules.OxyFuel), "Oxy-fuel does not cut stainless, so it is not an option there."},
		{job(metal.Aluminium, 6, rules.OxyFuel), "Oxy-fuel does not cut aluminium, so it is not an option there."},
		{job(metal.Copper, 6, rules.OxyFuel), "Oxy-fuel does not cut copper or brass, so it is not an option there."},
		{job(metal.CastIron, 6, rules.OxyFuel), "There are no figures for oxy-fuel in cast iron."},
		{job(metal.MildSteel, 2, rules.OxyFuel), "There are oxy-fuel figures for 3 to 100 mm only."},
		{job(metal.MildSteel, 6, rules.Shear), "Hand-held and bench shears cut up to about 3.4 mm in mild steel, so they are not an option for this cut."},
		{job(metal.Stainless, 3, rules.Nibbler), "Hand-held nibblers cut up to about 2.1 mm in stainless, so they are not an option for this cut."},
		{job(metal.MildSteel, 20, rules.Abrasive), "Abrasive discs do not cut plate above 12 mm day after day, so it is not calculated."},
		{job(metal.Copper, 6, rules.BandSaw), "There are no figures for band saws in copper or brass."},
		{job(metal.MildSteel, 3.61, rules.Shear), "Hand-held and bench shears cut up to about 3.4 mm in mild steel, so they are not an option for this cut."},
		{job(metal.MildSteel, 6, rules.OtherWay), "What this method costs is not known, so it is not calculated."},
	} {
		a := Reckon(c.job, DemoPrices(), []*system.System{demo45(t)})
		w := a.Methods[0]
		if w.Why.String() != c.want || w.PerMetre != (Estimate{}) || a.Against != -1 || a.Offers[0].Saving.IsKnown() {
			t.Errorf("%q, %v; want %q", w.Why, w.PerMetre, c.want)
		}
	}
}

// A method that cannot cut the first metal is worked out for one it can.
func TestTheCutIsOneTheWayCanMake(t *testing.T) {
	j := job(metal.Stainless, 3, rules.OxyFuel)
	j.Pieces = append(j.Pieces, rules.Piece{Metal: metal.MildSteel, Everyday: unit.Known(unit.Millimetre(10))})
	a := Reckon(j, DemoPrices(), []*system.System{demo45(t)})
	if a.Metal != metal.MildSteel || !a.Methods[0].Why.IsEmpty() || a.Offers[0].Method.Metal != metal.MildSteel {
		t.Errorf("%+v", a)
	}
}

// A price that is not in the list keeps a cost from being worked out, by name.
func TestAMissingPriceIsNamed(t *testing.T) {
	l := sure(map[ItemID]float64{ItemLabour: 60, ItemElectricity: 0.2})
	a := Reckon(job(metal.MildSteel, 10, rules.OxyFuel), l, []*system.System{demo45(t)})
	if want := "The price list has no price for oxygen, acetylene."; a.Methods[0].Why.String() != want {
		t.Errorf("%q, want %q", a.Methods[0].Why, want)
	}
	if !strings.Contains(a.Offers[0].Method.Why.String(), "consumables") {
		t.Errorf("%q", a.Offers[0].Method.Why)
	}
}

// What the customer pays stands before the list: 40 an hour, and a gas bill of
// 5520 a year over 2760 m, which is 2.00 a metre.
func TestTheCustomersOwnFigures(t *testing.T) {
	j := job(metal.MildSteel, 12.7, rules.OxyFuel)
	j.Prices = rules.Prices{Labour: unit.Known(unit.Money(40)), GasYear: unit.Known(unit.Money(5520))}
	w := Reckon(j, handPrices(), nil).Methods[0]
	lines := map[Part]float64{}
	for _, l := range w.Lines {
		lines[l.Part] = l.Cost.Likely
	}
	near(t, "gas", lines[Gas], 2.00, 1e-9, nil)
	near(t, "cleaning, 2 min at 40", lines[Grinding], 40.0/30, 1e-9, nil)
	if lines[Oxygen] != 0 || lines[Flame] != 0 || lines[Rental] != 0 {
		t.Errorf("gas is counted twice: %v", lines)
	}
	j.CutPerWeek = unit.Maybe[unit.Metre]{}
	if w := Reckon(j, handPrices(), nil).Methods[0]; w.PerYear.IsKnown() || !w.Why.IsEmpty() {
		t.Errorf("without metres: %+v", w)
	}
}

// Scrap is not cleaned, but an edge that may be welded as well is.
func TestScrapIsNotCleaned(t *testing.T) {
	j := job(metal.MildSteel, 10, rules.OxyFuel)
	j.EdgeNext = unit.Known([]rules.EdgeUse{rules.Scrap})
	for _, l := range Reckon(j, DemoPrices(), nil).Methods[0].Lines {
		if l.Part == Grinding {
			t.Error("scrap is cleaned")
		}
	}
	j.EdgeNext = unit.Known([]rules.EdgeUse{rules.Scrap, rules.Welded})
	if linesOf(Reckon(j, handPrices(), nil).Methods[0])[Grinding] == 0 {
		t.Error("what is not only scrap is not cleaned")
	}
}

// By hand: a − b, a from 8 to 14 likely 10, b from 3 to 7 likely 4, is 6 less
// √(2² + 3²) and plus √(4² + 1²).
func TestSpreadByHand(t *testing.T) {
	var m model
	m.in[wage] = Input{Name: message.New("a"), Estimate: Estimate{Low: 8, Likely: 10, High: 14}, known: true}
	m.in[rental] = Input{Name: message.New("b"), Estimate: Estimate{Low: 3, Likely: 4, High: 7}, known: true}
	s, movers := m.spread(func(x *values) float64 { return x[wage] - x[rental] })
	near(t, "low", s.Low, 6-math.Sqrt(13), 1e-12, nil)
	near(t, "likely", s.Likely, 6, 0, nil)
	near(t, "high", s.High, 6+math.Sqrt(17), 1e-12, nil)
	if movers[0].Name.String() != "a" || movers[1].Name.String() != "b" {
		t.Error(movers)
	}
	// c moves nothing and is no mover. Both ends of a raise (a − 10)², to 4 and 16, so
	// that nothing is lower.
	m.in[sentPrice] = Input{Name: message.New("c"), Estimate: Estimate{Low: 1, Likely: 2, High: 3}, known: true}
	s, movers = m.spread(func(x *values) float64 { return (x[wage] - 10) * (x[wage] - 10) })
	if s != (Estimate{0, 0, 16}) || len(movers) != 1 {
		t.Errorf("%v, %v", s, movers)
	}
	// By the whole way they go: a from 4 down to 8 up is 12, b from 30 down to 10 up 40.
	_, movers = m.spread(func(x *values) float64 { return 2*x[wage] - 10*x[rental] })
	if len(movers) != 2 || movers[0].Name.String() != "b" {
		t.Error(movers)
	}
}

// The range is what is to be expected: of inputs drawn evenly on either side of
// their likely figure, at least nine in ten savings fall within.
func TestSamplesFallWithin(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for _, ways := range []rules.Process{rules.OxyFuel, rules.Abrasive, rules.SentOut, rules.BandSaw} {
		j, prices := job(metal.MildSteel, 8, ways), DemoPrices()
		s := newScenario(&j, &prices)
		c := cut{metal.MildSteel, 8}
		old := s.method(processes(&j)[0], c)
		w, why := s.system(demo45(t), c)
		if !why.IsEmpty() {
			t.Fatal(why)
		}
		saved := func(x *values) float64 { a, b := old.metre(x), w.metre(x); return a.sum() - b.sum() }
		want, _ := s.spread(saved)
		in := 0
		const draws = 4000
		for range draws {
			x := s.likely()
			for i := range s.in {
				d := s.in[i].Estimate
				if r.IntN(2) == 0 {
					x[i] = d.Low + r.Float64()*(d.Likely-d.Low)
				} else {
					x[i] = d.Likely + r.Float64()*(d.High-d.Likely)
				}
			}
			if v := saved(&x); v >= want.Low && v <= want.High {
				in++
			}
		}
		if in < draws*9/10 {
			t.Errorf("%s: %d of %d within %v", ways, in, draws, want)
		}
	}
}

// A saving whose range includes zero is no clear one; the words follow the
// range and nothing else.
func TestVerdict(t *testing.T) {
	for _, c := range []struct {
		s    Estimate
		want Verdict
	}{
		{Estimate{Low: 0.01, Likely: 1, High: 2}, Saves},
		{Estimate{Low: 0, Likely: 1, High: 2}, NoClear},
		{Estimate{Low: -0.01, Likely: 1, High: 2}, NoClear},
		{Estimate{Low: -2, Likely: -1, High: 0}, NoClear},
		{Estimate{Low: -2, Likely: -1, High: -0.01}, CostsMore},
	} {
		if got := verdict(c.s); got != c.want {
			t.Errorf("%v: %s, want %s", c.s, got, c.want)
		}
	}
}

// demoSystems draws one system of the demo range.
func demoSystems(t *rapid.T) *system.System {
	r := system.Demo()
	return &r.Systems[rapid.IntRange(0, len(r.Systems)-1).Draw(t, "system")]
}

// drawnPrices are the demo's, each moved by a factor from 0.2 to 5.
func drawnPrices(t *rapid.T) PriceList {
	l := DemoPrices()
	for _, id := range l.IDs() {
		if id == ItemYears || id == ItemInterest {
			continue
		}
		p, _ := l.Get(id)
		p.Estimate = p.Times(rapid.Float64Range(0.2, 5).Draw(t, string(id)))
		l = l.With(id, p)
	}
	return l
}

// Dearer gas never favours oxy-fuel: its metre gets no cheaper, a system saves
// no less against it, and it is cheaper from no thinner plate on.
func TestDearerGasNeverFavoursOxyFuel(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		prices, sys := drawnPrices(t), demoSystems(t)
		j := job(metal.MildSteel, unit.Millimetre(rapid.Float64Range(3, 12).Draw(t, "mm")), rules.OxyFuel)
		j.Prices.Fuel = unit.Known(rapid.SampledFrom([]rules.Fuel{rules.Acetylene, rules.Propane}).Draw(t, "fuel"))
		dearer := prices
		factor := rapid.Float64Range(1, 4).Draw(t, "dearer")
		for _, id := range []ItemID{ItemOxygen, ItemAcetylene, ItemPropane, ItemCylinders} {
			p, _ := prices.Get(id)
			p.Estimate = p.Times(factor)
			dearer = dearer.With(id, p)
		}
		a, b := Reckon(j, prices, []*system.System{sys}), Reckon(j, dearer, []*system.System{sys})
		const slack = 1e-9
		if b.Methods[0].PerMetre.Likely < a.Methods[0].PerMetre.Likely-slack {
			t.Fatalf("a metre: %v, dearer %v", a.Methods[0].PerMetre, b.Methods[0].PerMetre)
		}
		s1, ok1 := a.Offers[0].Saving.Get()
		s2, ok2 := b.Offers[0].Saving.Get()
		if ok1 != ok2 || s2.PerMetre.Likely < s1.PerMetre.Likely-slack {
			t.Fatalf("saving: %v, dearer %v", s1.PerMetre, s2.PerMetre)
		}
		c1, known1 := Cross(j, prices, sys).Likely.Get()
		c2, known2 := Cross(j, dearer, sys).Likely.Get()
		if known2 && (!known1 || c2 < c1-sharp) {
			t.Fatalf("crossing: %v %v, dearer %v %v", c1, known1, c2, known2)
		}
	})
}

// More metres never lengthen the payback, and none a year is never: also as
// the latest, the soonest and for every process.
func TestMoreMetresNeverLengthenPayback(t *testing.T) {
	ways := []rules.Process{rules.OxyFuel, rules.Abrasive, rules.BandSaw, rules.Shear, rules.Nibbler, rules.SentOut, rules.OtherPlasma}
	longer := func(a, b unit.Maybe[float64]) bool {
		x, pays1 := a.Get()
		y, pays2 := b.Get()
		return pays1 && (!pays2 || y > x*(1+1e-9))
	}
	rapid.Check(t, func(t *rapid.T) {
		prices, sys := drawnPrices(t), demoSystems(t)
		j := job(metal.MildSteel, unit.Millimetre(rapid.Float64Range(0.5, 12).Draw(t, "mm")), rapid.SampledFrom(ways).Draw(t, "today"))
		few := rapid.Float64Range(0, 500).Draw(t, "few")
		pays := func(week float64) (Payback, bool) {
			j.CutPerWeek = unit.Known(unit.Metre(week))
			s, ok := Reckon(j, prices, []*system.System{sys}).Offers[0].Saving.Get()
			if !ok {
				return Payback{}, false
			}
			return s.Pays.Get()
		}
		a, ok := pays(few)
		if !ok {
			return
		}
		b, _ := pays(few + rapid.Float64Range(0, 2000).Draw(t, "more"))
		none, _ := pays(0)
		if longer(a.Likely, b.Likely) {
			t.Fatalf("likely: %v, with more metres %v", a.Likely, b.Likely)
		}
		if none.Soonest.IsKnown() || none.Likely.IsKnown() || none.Latest.IsKnown() {
			t.Fatalf("no metres pay back: %+v", none)
		}
	})
}

// Whatever is told, no figure is infinite or no number, and low is no more
// than likely, likely no more than high.
func TestFiguresAreWhole(t *testing.T) {
	whole := func(t *rapid.T, s Estimate) {
		if !(s.Low <= s.Likely && s.Likely <= s.High) || math.IsInf(s.Low, 0) || math.IsInf(s.High, 0) {
			t.Fatal(s)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		j := job(rapid.SampledFrom([]metal.ID{metal.MildSteel, metal.Stainless, metal.Aluminium, metal.Copper, metal.Other}).Draw(t, "metal"),
			unit.Millimetre(rapid.Float64Range(0.3, 120).Draw(t, "mm")), rules.OxyFuel, rules.Abrasive, rules.BandSaw, rules.Shear, rules.SentOut)
		j.CutPerWeek = unit.Known(unit.Metre(rapid.SampledFrom([]float64{0, 1e-9, 1, 2e4}).Draw(t, "metres")))
		j.BusyLength = unit.Known(unit.Metre(rapid.SampledFrom([]float64{0, 0.005, 100}).Draw(t, "length")))
		if rapid.Bool().Draw(t, "bill") {
			j.Prices.GasYear = unit.Known(unit.Money(rapid.Float64Range(0, 1e6).Draw(t, "bill")))
		}
		a := Reckon(j, drawnPrices(t), []*system.System{demoSystems(t)})
		for _, w := range append(a.Methods, a.Offers[0].Method) {
			whole(t, w.PerMetre)
			year, _ := w.PerYear.Get()
			whole(t, year)
		}
		s, _ := a.Offers[0].Saving.Get()
		whole(t, s.PerMetre)
		p, _ := s.Pays.Get()
		whole(t, p.Worth)
	})
}

// A 45 A system and oxy-fuel cross near where trade practice has it, about 16
// mm for a small system (common practice, no source): within the range given.
func TestCrossingHoldsTradePractice(t *testing.T) {
	c := Cross(job(metal.MildSteel, 10, rules.OxyFuel), DemoPrices(), demo45(t))
	from, ok1 := c.From.Get()
	likely, ok2 := c.Likely.Get()
	surely, ok3 := c.Surely.Get()
	if !ok1 || !ok2 || from > 16 || likely < 16-3 || likely > 16+3 || ok3 && surely < 16 {
		t.Errorf("from %v, likely %v, surely %v (%v)", from, likely, surely, ok3)
	}
	if len(c.Points) < 5 {
		t.Errorf("%d points", len(c.Points))
	}
}

func BenchmarkReckon(b *testing.B) {
	j, prices, s := job(metal.MildSteel, 10, rules.OxyFuel, rules.Abrasive), DemoPrices(), []*system.System{demo45(b)}
	for b.Loop() {
		Reckon(j, prices, s)
	}
}

func BenchmarkCross(b *testing.B) {
	j, prices, s := job(metal.MildSteel, 10, rules.OxyFuel), DemoPrices(), demo45(b)
	for b.Loop() {
		Cross(j, prices, s)
	}
}

// A price with one value moves nothing, and yet nobody stands behind it: the
// account says that it is assumed.
func TestASurePriceThatIsInventedIsAssumed(t *testing.T) {
	l := PriceList{Currency: "EUR"}
	for id, v := range map[ItemID]float64{ItemLabour: 60, ItemElectricity: 0.2, ItemAirPower: 8, ItemSet: 12, ItemSetStarts: 300,
		ItemSetHours: 2, ItemSentOut: 20, ItemTransport: 50, ItemTransportLoad: 30} {
		l = l.With(id, Price{Estimate: Exact(v), Basis: BasisOwn})
	}
	job := rules.Job{Pieces: []rules.Piece{{Metal: metal.MildSteel, Everyday: unit.Known[unit.Millimetre](10)}}, Today: unit.Known([]rules.Process{rules.SentOut})}
	if a := Reckon(job, l, nil); a.Assumed {
		t.Errorf("the rep's own prices are called assumed: %+v", a.Methods)
	}
	l = l.With(ItemSentOut, Price{Estimate: Exact(20), Basis: BasisInvented})
	if a := Reckon(job, l, nil); !a.Assumed {
		t.Errorf("%+v", a.Methods)
	}
}
